//! What notes that have not been taken yet would tell, on average over what they might show.
//!
//! The notes that may come are taken in behind those that were: every hypothesis then foresees them *given what was noted
//! before*, so that a gauge that was read once is expected to show the same again. What they might show is drawn from that
//! forecast itself, cell by cell as probable as the cells are, the draws the same for whatever may come. What is left of
//! the entropy over the classes, on average, against what it is now: the expected information (Lindley, Annals of
//! Mathematical Statistics 27, 1956).

use sim_core::observe::Observed;

use crate::infer::belief::{Belief, entropy};
use crate::infer::chain::Chain;
use crate::infer::draws::Draw;
use crate::infer::forecast::Forecast;
use crate::infer::marginal::Marginal;
use crate::infer::numeric::{ln, log_sum_exp};
use crate::infer::reading::{Noted, Place, Seen};
use crate::infer::table::{Item, Table};

/// Cells with less than this count for nothing here.
const LEAST: f64 = 1e-4;

/// A note that may come, or came: what every car shows there.
#[derive(Clone, Debug)]
pub struct Coming {
    /// How it is looked at; what was seen means nothing until it was.
    pub noted: Noted,
    /// Number of changes of the car's state before the look, and what is looked at.
    pub order: (u32, Observed),
    /// Per hypothesis: where its cars stand; `None` for one that stands still, and for *other*.
    pub places: Vec<Option<Vec<(Place, f64)>>>,
}

impl Table {
    /// Takes a note in. `priors`: weight of each hypothesis before the complaint. The first hypothesis, sound cars, must be
    /// on its way.
    pub fn take_in(&mut self, coming: &Coming, priors: &[f64]) {
        let Coming { noted, order, places } = coming;
        let item = self.items.len();
        let beside: Vec<Place> = places.first().into_iter().flatten().flatten().map(|(at, _)| *at).collect();
        let (sound, faults) = self.views.split_at_mut(1);
        let Some(sound) = sound.first_mut().and_then(|view| view.forecast.as_mut()) else { return };
        if let Some(places) = places.first().and_then(Option::as_ref) {
            sound.take(noted, places, None);
        }
        for (view, places) in faults.iter_mut().zip(places.iter().skip(1)) {
            if let (Some(forecast), Some(places)) = (&mut view.forecast, places) {
                forecast.take(noted, places, Some((sound, &beside)));
            }
        }
        let running = |h: &usize| places.get(*h).is_some_and(Option::is_some);
        let of_faults: Vec<&Forecast> =
            (1..self.views.len()).filter(running).filter_map(|h| self.views[h].forecast.as_ref()).collect();
        let common = Forecast::common(&of_faults, item);
        let cars = places.iter().zip(priors).filter_map(|(places, prior)| Some((places.as_ref()?, prior)));
        let cars = cars.flat_map(|(places, prior)| {
            let weight = prior / places.len() as f64;
            places.iter().map(move |(place, error)| (weight, *place, *error))
        });
        let marginal = Marginal::of(noted, cars.collect());
        let mut of_sound: Option<Vec<f64>> = None;
        for h in (0..self.views.len()).filter(running) {
            if let Some(forecast) = &mut self.views[h].forecast {
                let drawn = forecast.draw_towards(&common, of_sound.as_deref());
                of_sound.get_or_insert_with(|| drawn.to_vec());
            }
        }
        let of_sound = of_sound.unwrap_or_default();
        self.items.push(Item { noted: noted.clone(), marginal, common, of_sound, order: order.clone() });
    }
}

/// A cell that still matters.
struct Cell {
    /// Index of its hypothesis.
    view: usize,
    class: usize,
    mass: f64,
    log_mass: f64,
    chain: Option<Chain>,
}

/// Bits that the notes `coming` would take away from the entropy over the classes, on average over `samples` drawings of
/// what they might show. `belief` is the table's last, and its cells have gone all the way.
#[must_use]
pub fn expected_gain(
    table: &Table,
    belief: &Belief,
    priors: &[f64],
    coming: &[Coming],
    samples: usize,
) -> f64 {
    let mut table = table.clone();
    let first = table.items.len();
    for coming in coming {
        table.take_in(coming, priors);
    }
    let mut cells = cells(&table, belief);
    let all: f64 = cells.iter().map(|cell| cell.mass).sum();
    let now = class_entropy(&table, &cells, &cells.iter().map(|cell| cell.log_mass).collect::<Vec<_>>());
    let mut left = 0.0;
    for sample in 0..samples {
        let mut draw = Draw::new(sample);
        let place = all * (sample as f64 + 0.5) / samples as f64;
        let mut logs: Vec<f64> = cells.iter().map(|cell| cell.log_mass).collect();
        let shown = drawn(&table, &mut cells, first, place, &mut draw);
        for (note, seen) in shown {
            let noted = table.items[note].noted.having_seen(seen);
            let anywhere = table.items[note].marginal.chance(seen);
            for (cell, log) in cells.iter_mut().zip(&mut logs) {
                *log += match (&mut cell.chain, &table.views[cell.view].forecast) {
                    (Some(chain), Some(forecast)) => chain.take(forecast, note, &noted, anywhere),
                    _ => ln(anywhere),
                };
            }
        }
        cells.iter_mut().filter_map(|cell| cell.chain.as_mut()).for_each(Chain::turn_back);
        left += class_entropy(&table, &cells, &logs);
    }
    now - left / samples as f64
}

/// What a car of the cell at `place` of all mass might show at the notes from `first` on.
fn drawn(table: &Table, cells: &mut [Cell], first: usize, place: f64, draw: &mut Draw) -> Vec<(usize, Seen)> {
    let mut before = 0.0;
    let found = cells.iter_mut().find(|cell| {
        before += cell.mass;
        place < before
    });
    let mut shown = Vec::new();
    let Some(Cell { view, chain: Some(chain), .. }) = found else { return shown };
    let Some(forecast) = &table.views[*view].forecast else { return shown };
    for note in first..table.items.len() {
        let item = &table.items[note];
        let seen = chain.draw(forecast, note, &item.noted, &mut || draw.next_u());
        if let Some(seen) = seen {
            let noted = item.noted.having_seen(seen);
            let _ = chain.take(forecast, note, &noted, item.marginal.chance(seen));
            shown.push((note, seen));
        }
    }
    chain.turn_back();
    shown
}

/// The cells that still matter, each where it stands after the notes that were taken.
fn cells(table: &Table, belief: &Belief) -> Vec<Cell> {
    let mut cells = Vec::new();
    let mut index = 0;
    for (view, hypothesis) in table.views.iter().enumerate() {
        // One that stands still foresees nothing any more.
        let whole = hypothesis.forecast.as_ref().is_none_or(|f| f.notes.len() == table.items.len());
        for chain in hypothesis.chains() {
            let mass = belief.mass_in(index..index + 1);
            index += 1;
            if LEAST <= mass {
                let chain = chain.filter(|_| whole).cloned().map(Chain::marked);
                cells.push(Cell { view, class: hypothesis.class, mass, log_mass: ln(mass), chain });
            }
        }
    }
    cells
}

/// Entropy over the classes, bits.
fn class_entropy(table: &Table, cells: &[Cell], logs: &[f64]) -> f64 {
    let all = log_sum_exp(logs.iter().copied());
    let mut classes = vec![0.0; table.n_classes];
    for (cell, log) in cells.iter().zip(logs) {
        classes[cell.class] += sim_core::math::exp(log - all);
    }
    entropy(&classes)
}
