//! The belief as arithmetic on forecasts: from what was shown to the mass of every cell.
//!
//! All cars have been run by then. So the same table also says what would be believed had the instruments scattered
//! otherwise.
//!
//! Notes are taken in the order in which the car's state changed, then by what was looked at: notes of one unchanged state
//! may be written in any order. A note at which all cars stand at one place cannot tell any from another and is passed over,
//! unless it says something of an instrument that elsewhere shows what differs.
//!
//! A hypothesis whose forecast ends before the last note stands still: it keeps its share of the belief from there on.

use rayon::prelude::*;
use sim_core::observe::Observed;

use crate::infer::belief::Belief;
use crate::infer::chain::Chain;
use crate::infer::forecast::Forecast;
use crate::infer::marginal::Marginal;
use crate::infer::numeric::{ln, log_sum_exp};
use crate::infer::reading::Noted;
use crate::infer::told::{Path, tells};

/// A note that counts.
#[derive(Clone, Debug)]
pub struct Item {
    /// What was shown.
    pub noted: Noted,
    /// What any car would show.
    pub marginal: Marginal,
    /// Correlation with each note before it that is common to all faults.
    pub common: Vec<f64>,
    /// Correlation with each note before it among sound cars.
    pub of_sound: Vec<f64>,
    /// Number of changes of the car's state before the look, and what was looked at.
    pub order: (u32, Observed),
}

/// A hypothesis in the table.
#[derive(Clone, Debug)]
pub struct View {
    /// Index of its class.
    pub class: usize,
    /// Natural log of the weight of each cell after the complaint.
    pub start: Vec<f64>,
    /// What it expects; `None` for *other*.
    pub forecast: Option<Forecast>,
    /// How far each cell has gone along what was shown.
    walks: Vec<Walk>,
}

impl View {
    /// A hypothesis that has taken no note yet: natural log of the weight of each cell after the complaint.
    #[must_use]
    pub fn new(class: usize, start: Vec<f64>, forecast: Option<Forecast>) -> Self {
        let mut view = Self { class, start, forecast, walks: Vec::new() };
        view.turn_back();
        view
    }

    /// Where each cell stands after the notes that it took; `None` for *other*.
    pub fn chains(&self) -> impl Iterator<Item = Option<&Chain>> {
        self.walks.iter().map(|walk| walk.chain.as_ref())
    }

    /// Lets every cell begin anew.
    fn turn_back(&mut self) {
        self.walks = (0..self.start.len()).map(|node| Walk::new(self, node)).collect();
    }
}

/// A cell on its way along the notes.
#[derive(Clone, Debug)]
struct Walk {
    /// The notes so far, in the order in which they are taken.
    order: Vec<usize>,
    chain: Option<Chain>,
    /// Natural log of the likelihood of each note in that order.
    told: Vec<f64>,
    /// Natural log of the weight of the cell before the first note and after each.
    logs: Vec<f64>,
    /// Per note: from which place on `told` became another one with it, and what it became; `None` where it was passed over.
    became: Vec<Option<(usize, Vec<f64>)>>,
}

impl Walk {
    fn new(view: &View, node: usize) -> Self {
        let chain = view.forecast.as_ref().map(|forecast| Chain::new(forecast, node));
        Self { order: Vec::new(), chain, told: Vec::new(), logs: vec![view.start[node]], became: Vec::new() }
    }

    /// Goes on to the last of `noted`, or as far as the forecast goes.
    fn go_on(&mut self, view_start: f64, forecast: Option<&Forecast>, shown: &Shown<'_>) {
        let many = forecast.map_or(shown.noted.len(), |forecast| forecast.notes.len().min(shown.noted.len()));
        for note in self.logs.len() - 1..many {
            let mut became = None;
            if !shown.idle[note] {
                let key = &shown.items[note].order;
                let place = self.order.partition_point(|before| shown.items[*before].order <= *key);
                self.order.insert(place, note);
                self.told.truncate(place);
                if let Some(chain) = &mut self.chain {
                    chain.truncate(place);
                }
                for &n in &self.order[place..] {
                    self.told.push(match (&mut self.chain, forecast) {
                        (Some(chain), Some(forecast)) => {
                            chain.take(forecast, n, shown.noted[n], shown.anywhere[n])
                        }
                        _ => ln(shown.anywhere[n]),
                    });
                }
                became = Some((place, self.told[place..].to_vec()));
            }
            self.became.push(became);
            self.logs.push(view_start + self.told.iter().sum::<f64>());
        }
    }
}

/// What was shown.
struct Shown<'a> {
    items: &'a [Item],
    noted: Vec<&'a Noted>,
    /// Chance of it in any car.
    anywhere: Vec<f64>,
    /// Notes that are passed over.
    idle: Vec<bool>,
}

/// Everything that the belief is computed from.
#[derive(Clone, Debug)]
pub struct Table {
    /// Number of classes.
    pub n_classes: usize,
    /// The notes so far.
    pub items: Vec<Item>,
    /// The hypotheses.
    pub views: Vec<View>,
    /// Notes that were passed over when the cells last went on.
    idle: Vec<bool>,
}

impl Table {
    /// Before the first note.
    #[must_use]
    pub fn new(n_classes: usize) -> Self {
        Self { n_classes, items: Vec::new(), views: Vec::new(), idle: Vec::new() }
    }

    /// Which notes cannot tell any car from another, whatever is shown.
    fn idle(&self) -> Vec<bool> {
        let alone = |item: &Item| {
            let same = |other: &&Item| other.noted.instrument == item.noted.instrument;
            let tells = |other: &Item| !other.marginal.is_one_place();
            item.noted.instrument.is_none() || !self.items.iter().filter(same).any(tells)
        };
        self.items.iter().map(|item| item.marginal.is_one_place() && alone(item)).collect()
    }

    /// The belief along the notes.
    #[must_use]
    pub fn path(&mut self) -> Path {
        let shown = shown(&self.items, self.items.iter().map(|item| &item.noted).collect(), self.idle());
        let turned = !shown.idle.starts_with(&self.idle);
        self.views.par_iter_mut().with_max_len(1).for_each(|view| {
            if turned {
                view.turn_back();
            }
            for (walk, start) in view.walks.iter_mut().zip(&view.start) {
                walk.go_on(*start, view.forecast.as_ref(), &shown);
            }
        });
        self.idle = shown.idle;
        self.assembled(&self.views.iter().map(|view| &view.walks[..]).collect::<Vec<_>>(), self.items.len())
    }

    /// What would be told had something else been shown at the first notes.
    #[must_use]
    pub fn had_shown(&self, noted: Vec<&Noted>) -> Vec<Belief> {
        let many = noted.len();
        let shown = shown(&self.items, noted, self.idle());
        let of = |view: &View| {
            let walks = view.start.iter().enumerate().map(|(node, start)| {
                let mut walk = Walk::new(view, node);
                walk.go_on(*start, view.forecast.as_ref(), &shown);
                walk
            });
            walks.collect()
        };
        let all: Vec<Vec<Walk>> = self.views.par_iter().with_max_len(1).map(of).collect();
        self.assembled(&all.iter().map(|walks| &walks[..]).collect::<Vec<_>>(), many).told()
    }

    /// Natural log of how much better the cell that foresaw a note best did so than `belief` does, which is that after the
    /// first `many` notes: the largest among these. Each note is taken given those before it.
    #[must_use]
    pub fn surprise(&self, belief: &Belief, many: usize) -> f64 {
        let walks: Vec<&Walk> = self.views.iter().flat_map(|view| &view.walks).collect();
        let running: Vec<usize> = (0..walks.len()).filter(|cell| many < walks[*cell].logs.len()).collect();
        let mass = |cell: usize| ln(belief.mass_in(cell..cell + 1));
        let all = log_sum_exp(running.iter().map(|cell| mass(*cell)));
        let at = |note: usize| {
            let told = |cell: usize| walks[cell].logs[note + 1] - walks[cell].logs[note];
            let best = running.iter().map(|cell| told(*cell)).fold(f64::NEG_INFINITY, f64::max);
            best - (log_sum_exp(running.iter().map(|cell| mass(*cell) + told(*cell))) - all)
        };
        (0..many).map(at).fold(0.0, f64::max)
    }

    /// Beliefs from how far each hypothesis' cells have gone along the notes.
    fn assembled(&self, walks: &[&[Walk]], notes: usize) -> Path {
        let logs: &[Vec<Vec<f64>>] = &walks.iter().map(|walks| logs(walks)).collect::<Vec<_>>();
        let class_of: Vec<usize> =
            self.views.iter().flat_map(|view| view.start.iter().map(|_| view.class)).collect();
        let mut beliefs: Vec<Belief> = Vec::new();
        let mut could_gain = Vec::new();
        let mut masses: Vec<Vec<f64>> = self.views.iter().map(|view| view.start.clone()).collect();
        for note in 0..=notes {
            let runs = |h: usize| note < logs[h].len();
            let running = |masses: &dyn Fn(usize) -> Vec<f64>| {
                let all: Vec<f64> = (0..logs.len()).filter(|h| runs(*h)).flat_map(masses).collect();
                log_sum_exp(all.iter().copied())
            };
            if 0 < note {
                could_gain.push(could_gain_at(logs, &masses, note));
            }
            let standing: f64 = (0..logs.len())
                .filter(|h| !runs(*h))
                .flat_map(|h| masses[h].iter().map(|m| sim_core::math::exp(*m)))
                .sum();
            let scale = ln((1.0 - standing).max(f64::MIN_POSITIVE)) - running(&|h| logs[h][note].clone());
            for h in (0..logs.len()).filter(|h| runs(*h)) {
                masses[h] = logs[h][note].iter().map(|log| log + scale).collect();
            }
            beliefs.push(Belief::of_masses(self.n_classes, class_of.clone(), &masses.concat()));
        }
        let walks: Vec<&Walk> = walks.iter().copied().flatten().collect();
        Path { beliefs, tellings: tellings(&walks, notes), could_gain }
    }
}

/// How many notes that tell stand behind the belief on the complaint alone and after each note.
fn tellings(walks: &[&Walk], notes: usize) -> Vec<f64> {
    let (mut each, mut all): (Vec<f64>, Vec<f64>) = (Vec::new(), vec![0.0]);
    for note in 0..notes {
        let running = walks.iter().filter_map(|walk| Some((walk.logs[0], walk.became.get(note)?.as_ref()?)));
        let running: Vec<(f64, &(usize, Vec<f64>))> =
            running.map(|(start, became)| (sim_core::math::exp(start), became)).collect();
        // All cells take the notes in the same order.
        if let Some((_, (place, became))) = running.first() {
            each.truncate(*place);
            each.extend(
                (0..became.len()).map(|n| tells(variance(running.iter().map(|(w, b)| (*w, b.1[n]))))),
            );
        }
        all.push(each.iter().sum());
    }
    all
}

/// Variance of weighed numbers.
fn variance(numbers: impl Iterator<Item = (f64, f64)> + Clone) -> f64 {
    let sum = |of: &dyn Fn(f64) -> f64| numbers.clone().map(|(weight, x)| weight * of(x)).sum::<f64>();
    let weights = sum(&|_| 1.0).max(f64::MIN_POSITIVE);
    let mean = sum(&|x| x) / weights;
    sum(&|x| (x - mean) * (x - mean)) / weights
}

fn shown<'a>(items: &'a [Item], noted: Vec<&'a Noted>, idle: Vec<bool>) -> Shown<'a> {
    let anywhere = noted.iter().zip(items).map(|(noted, item)| item.marginal.chance(noted.seen)).collect();
    Shown { items, noted, anywhere, idle }
}

/// Logs along the notes, each of all cells.
fn logs(walks: &[Walk]) -> Vec<Vec<f64>> {
    let many = walks.first().map_or(0, |walk| walk.logs.len());
    (0..many).map(|note| walks.iter().map(|walk| walk.logs[note]).collect()).collect()
}

/// How much the cell that foresaw a note best gained on the mean of all, natural log.
fn could_gain_at(logs: &[Vec<Vec<f64>>], masses: &[Vec<f64>], note: usize) -> f64 {
    let (mut best, mut all, mut before) = (f64::NEG_INFINITY, Vec::new(), Vec::new());
    for (logs, masses) in logs.iter().zip(masses).filter(|(logs, _)| note < logs.len()) {
        for (node, mass) in masses.iter().enumerate() {
            let told = logs[note][node] - logs[note - 1][node];
            best = best.max(told);
            all.push(mass + told);
            before.push(*mass);
        }
    }
    best - (log_sum_exp(all.iter().copied()) - log_sum_exp(before.iter().copied()))
}
