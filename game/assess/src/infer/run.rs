//! An attempt on its way through all cars, from one counted note to the next.

use crate::infer::belief::Belief;
use crate::infer::draws::DRAWS;
use crate::infer::forecast::Forecast;
use crate::infer::guests::{Asked, Guest, Guests};
use crate::infer::heard::heard;
use crate::infer::hypotheses::{Entry, Hypotheses, Hypothesis, severity_of};
use crate::infer::marginal::Marginal;
use crate::infer::reading::{Noted, Place};
use crate::infer::rows::{self, Car};
use crate::infer::table::{Item, Table, View};
use crate::infer::told::Path;
use crate::pack::job::Job;
use crate::play::course::Course;

/// Sound cars.
pub const SOUND: usize = 64;
/// The cars of one hypothesis.
#[derive(Debug)]
pub(super) struct Player {
    pub(super) hypothesis: Hypothesis,
    /// None for *other*.
    pub(super) guests: Vec<Guest>,
    pub(super) stands: Option<Standing>,
}

impl Player {
    /// Has cars, and they go on.
    pub(super) fn is_on_its_way(&self) -> bool {
        self.stands.is_none() && !self.guests.is_empty()
    }
}

/// Cars of a hypothesis, by their numbers.
pub(super) fn first_cars(hypothesis: Hypothesis, numbers: std::ops::Range<usize>) -> Vec<Asked> {
    numbers.map(|draw| Asked { hypothesis, draw, at: severity_of(draw) }).collect()
}

/// A hypothesis that stands still.
#[derive(Clone, Copy, Debug)]
pub(super) struct Standing {
    /// Its share when it stopped.
    pub(super) share: f64,
    /// After how many notes.
    pub(super) after: usize,
}

/// An attempt on its way through all cars.
pub(super) struct Run<'a> {
    pub(super) job: &'a Job,
    pub(super) course: &'a Course,
    pub(super) hypotheses: Hypotheses,
    pub(super) host: &'a mut dyn Guests,
    /// One a hypothesis.
    pub(super) players: Vec<Player>,
    pub(super) table: Table,
    /// Index into the course's notes of each note taken.
    pub(super) taken: Vec<usize>,
    pub(super) path: Path,
    /// Deeds that were done in cars.
    pub(super) deeds: usize,
}

impl<'a> Run<'a> {
    pub(super) fn begin(
        job: &'a Job,
        hypotheses: &'a Hypotheses,
        course: &'a Course,
        host: &'a mut dyn Guests,
    ) -> Self {
        let asked = |entry: &Entry| {
            let cars = match entry.hypothesis {
                Hypothesis::Inside => SOUND * hypotheses.times,
                Hypothesis::Fault(_) | Hypothesis::Pair(..) => DRAWS * hypotheses.times,
                Hypothesis::Other => 0,
            };
            first_cars(entry.hypothesis, 0..cars)
        };
        let asked: Vec<Vec<Asked>> = hypotheses.list.iter().map(asked).collect();
        let mut guests = host.bring_in(&asked.concat()).into_iter();
        let players = hypotheses
            .list
            .iter()
            .zip(&asked)
            .map(|(entry, asked)| Player {
                hypothesis: entry.hypothesis,
                guests: guests.by_ref().take(asked.len()).collect(),
                stands: None,
            })
            .collect();
        let table = Table::new(hypotheses.classes.len());
        let mut run = Self {
            job,
            course,
            hypotheses: hypotheses.clone(),
            host,
            players,
            table,
            taken: Vec::new(),
            path: Path::default(),
            deeds: 0,
        };
        run.table.views = (0..hypotheses.list.len()).map(|h| run.view(h)).collect();
        run.look();
        run
    }

    /// A hypothesis that has heard the complaint and taken no note yet.
    pub(super) fn view(&self, h: usize) -> View {
        let guests = &self.players[h].guests;
        let shows: Vec<bool> = guests.iter().map(|guest| guest.car.shows).collect();
        let at: Vec<f64> = guests.iter().map(|guest| guest.at).collect();
        heard(self.hypotheses.list[h], &shows, &at)
    }

    /// The last belief.
    pub(super) fn last(&self) -> &Belief {
        self.path.last()
    }

    /// Which hypotheses are on their way.
    pub(super) fn running(&self) -> Vec<usize> {
        (0..self.players.len()).filter(|h| self.players[*h].is_on_its_way()).collect()
    }

    /// Takes the next note in.
    pub(super) fn take(&mut self, note: usize) {
        let running = self.running();
        self.advance(&running, self.course.notes[note].deed);
        self.taken.push(note);
        let looked = &self.course.looked[self.course.notes[note].looked];
        let noted = Noted::of(self.job, looked);
        let item = self.taken.len() - 1;
        self.forecast(&running, item, &noted);
        let faults = running.iter().filter(|h| 0 < **h);
        let forecasts: Vec<&Forecast> =
            faults.filter_map(|h| self.table.views[*h].forecast.as_ref()).collect();
        let common = Forecast::common(&forecasts, item);
        let order = (looked.reading.epoch, looked.reading.what.clone());
        let marginal = self.marginal(&running, &noted, item);
        let mut of_sound: Option<Vec<f64>> = None;
        // Sound cars come first.
        for h in &running {
            if let Some(forecast) = &mut self.table.views[*h].forecast {
                let drawn = forecast.draw_towards(&common, of_sound.as_deref());
                of_sound.get_or_insert_with(|| drawn.to_vec());
            }
        }
        let of_sound = of_sound.unwrap_or_default();
        self.table.items.push(Item { noted, marginal, common, of_sound, order });
        self.look();
        while self.rouse() {}
        self.stand_still();
    }

    /// Does the deeds before `until` in the cars of some hypotheses.
    pub(super) fn advance(&mut self, which: &[usize], until: usize) {
        let players = self.players.iter_mut().enumerate().filter(|(h, _)| which.contains(h));
        let mut cars: Vec<&mut Car> =
            players.flat_map(|(_, player)| player.guests.iter_mut().map(|guest| &mut guest.car)).collect();
        self.deeds += rows::advance(self.course, &mut cars, until);
    }

    /// Where the cars of a hypothesis stand at a note, with the instrument's error there.
    fn places(&self, h: usize, item: usize, noted: &Noted) -> Vec<(Place, f64)> {
        let looked = self.course.notes[self.taken[item]].looked;
        let place = |guest: &Guest| noted.place(guest.car.told.get(looked).copied().flatten());
        self.players[h].guests.iter().map(place).collect()
    }

    /// Lets the forecasts of some hypotheses take a note in.
    pub(super) fn forecast(&mut self, which: &[usize], item: usize, noted: &Noted) {
        let of_sound: Vec<Place> = self.places(0, item, noted).into_iter().map(|(place, _)| place).collect();
        let of_draw = |guest: &Guest| of_sound.get(guest.draw).copied().unwrap_or(Place::Nowhere);
        let places: Vec<Vec<(Place, f64)>> = which.iter().map(|h| self.places(*h, item, noted)).collect();
        // Sound cars are always among those who are there, or were before: they never stand still.
        let (sound, faults) = self.table.views.split_at_mut(1);
        let Some(sound) = sound.first_mut().and_then(|view| view.forecast.as_mut()) else { return };
        for (h, places) in which.iter().zip(&places) {
            match h.checked_sub(1) {
                None => sound.take(noted, places, None),
                Some(fault) => {
                    let beside: Vec<Place> = self.players[*h].guests.iter().map(of_draw).collect();
                    if let Some(forecast) = faults.get_mut(fault).and_then(|view| view.forecast.as_mut()) {
                        forecast.take(noted, places, Some((sound, &beside)));
                    }
                }
            }
        }
    }

    fn marginal(&self, running: &[usize], noted: &Noted, item: usize) -> Marginal {
        let cars = running.iter().flat_map(|h| {
            let places = self.places(*h, item, noted);
            let weight = self.hypotheses.list[*h].prior / places.len() as f64;
            places.into_iter().map(move |(place, error)| (weight, place, error))
        });
        Marginal::of(noted, cars.collect())
    }

    /// Looks at the belief along all notes.
    pub(super) fn look(&mut self) {
        self.path = self.table.path();
    }

    /// The share of each hypothesis in a belief.
    pub(super) fn shares(&self, belief: &Belief) -> Vec<f64> {
        let mut shares = vec![0.0; self.hypotheses.list.len()];
        for (cell, (h, _)) in self.hypotheses.cells().enumerate() {
            shares[h] += belief.mass_in(cell..cell + 1);
        }
        shares
    }
}
