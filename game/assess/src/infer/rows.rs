//! Cars in which an attempt is done again: what each would have shown, reading by reading.
//!
//! **Clock.** Every action takes as long as it took the trainee, except those that end with a cue (wait until
//! the pump stops, time its rest): they end, in each car, when that car gives the cue. What the trainee did
//! was to wait for the pump and then look; cut at the recorded tick, a car whose pump runs a little shorter would
//! be looked at in the wrong moment of its cycle, and the true hypothesis would suffer most. How long a wait
//! took is evidence only when it was timed and noted, like everything else.
//!
//! Cars run side by side and on all threads; what each shows does not depend on which others run.

use rayon::prelude::*;
use sim_core::Opened;
use sim_core::observe::{Observed, Predicted};
use sim_core::workshop::exchange::{Beside, side_by_side};
use sim_core::world::World;

use crate::infer::complaint;
use crate::pack::job::Job;
use crate::play::course::{Course, Deed, Worth};

/// Cars that one thread plays side by side. Neighbours are draws of one hypothesis, so most circuits find others of
/// their shape; few enough that every thread has some.
pub(crate) const BESIDE: usize = 96;

/// What a car would have shown at a reading, before the instrument's constant error and scatter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// What the model says, no instrument between.
    pub predicted: Predicted,
    /// The instrument's error at the end of its class, in the scale's unit; 0 for senses.
    pub error: f64,
}

/// A car with an attempt done in it, as far as it was done.
#[derive(Clone, Debug)]
pub struct Car {
    /// `None` once the model cannot go on with it.
    workshop: Option<Opened>,
    /// Whether it shows the job's complaint.
    pub shows: bool,
    /// Per reading of the course (index into `Course::looked`): `None` where it was not reached, could not have come
    /// about, or is not wanted.
    pub told: Vec<Option<Told>>,
    /// Per swap of the course, as far as it was done: whether the unit taken out was outside its limits.
    pub swapped_faulty: Vec<bool>,
    /// Deeds that were done.
    done: usize,
}

impl Car {
    /// A car of which nothing is left but what it showed at each reading of the course.
    #[must_use]
    pub fn of_record(shows: bool, told: Vec<Option<Told>>) -> Self {
        Self { workshop: None, shows, told, swapped_faulty: Vec::new(), done: 0 }
    }

    /// Whether no unit is outside its limits now; `None` when the model could not go on.
    #[must_use]
    pub fn is_well(&self) -> Option<bool> {
        self.workshop.as_ref().map(|workshop| workshop.units_outside_limits().is_empty())
    }

    /// Whether the model could not go on with it.
    #[must_use]
    pub fn is_set_aside(&self) -> bool {
        self.workshop.is_none()
    }

    fn stop_if_unsound(&mut self) {
        if self.workshop.as_ref().is_some_and(|workshop| workshop.fault().is_some()) {
            self.workshop = None;
        }
    }
}

/// Brings cars in, and acts the complaint out in each.
#[must_use]
pub fn arrive(job: &Job, worlds: &[World]) -> Vec<Car> {
    let mut cars: Vec<Option<Car>> = worlds.iter().map(|_| None).collect();
    let mut seats: Vec<(&mut Option<Car>, &World)> = cars.iter_mut().zip(worlds).collect();
    seats.par_chunks_mut(beside(worlds.len())).with_max_len(1).for_each(|together| {
        side_by_side(&mut *together, async |(car, world), beside| {
            let workshop = Opened::of_beside(job.setup(), (*world).clone(), beside).await;
            **car = Some(Car {
                workshop: Some(workshop),
                shows: false,
                told: Vec::new(),
                swapped_faulty: Vec::new(),
                done: 0,
            });
        });
        // A round of their own: the complaint is acted out in copies.
        let cars = together.iter_mut().filter_map(|(car, _)| car.as_mut());
        side_by_side(cars, async |car, beside| {
            if let Some(workshop) = &car.workshop {
                car.shows = complaint::shows_beside(job, workshop.circuit().clone(), beside).await;
            }
            car.stop_if_unsound();
        });
    });
    cars.into_iter().flatten().collect()
}

/// Does the deeds before `until` in every car that has not done them yet.
pub fn advance(course: &Course, cars: &mut [&mut Car], until: usize) -> usize {
    let deeds = cars.iter().map(|car| until.saturating_sub(car.done)).sum();
    for car in cars.iter_mut().filter(|car| car.workshop.is_none()) {
        car.done = until.max(car.done);
    }
    let wanted = wanted(course);
    let mut alive: Vec<&mut &mut Car> =
        cars.iter_mut().filter(|car| car.workshop.is_some() && car.done < until).collect();
    let together = beside(alive.len());
    alive.par_chunks_mut(together).with_max_len(1).for_each(|together| {
        side_by_side(together, async |car, beside| {
            car.told.resize(course.looked.len(), None);
            for index in car.done..until {
                one(car, course, index, &wanted, beside).await;
            }
            car.done = until;
        });
    });
    deeds
}

/// Cars side by side on one thread when there are so many: as many as [`BESIDE`], fewer when all threads would not have
/// some.
fn beside(cars: usize) -> usize {
    cars.div_ceil(rayon::current_num_threads().max(1)).clamp(1, BESIDE)
}

/// One deed in one car.
async fn one(car: &mut Car, course: &Course, index: usize, wanted: &[bool], beside: Beside<'_>) {
    let Some(workshop) = &mut car.workshop else { return };
    let deed = &course.deeds[index];
    if deed.refused {
        return;
    }
    idle_before(workshop, &course.deeds, index, beside).await;
    if let Some(swap) = course.swaps.get(car.swapped_faulty.len()).filter(|swap| swap.deed == index) {
        car.swapped_faulty.push(workshop.units_outside_limits().contains(&swap.unit));
    }
    done_again(workshop, deed, beside).await;
    let looked = course.looked.binary_search_by_key(&index, |looked| looked.deed);
    if let (Ok(looked), Some(value)) = (looked, workshop.predicted())
        && wanted[looked]
        && workshop.fault().is_none()
    {
        let what = &course.looked[looked].reading.what;
        car.told[looked] = Some(told(workshop, what, value));
    }
    car.stop_if_unsound();
}

fn told(workshop: &Opened, what: &Observed, predicted: Predicted) -> Told {
    let error = match (predicted, what) {
        (Predicted::Value(value), Observed::Instrument { .. } | Observed::Interval { .. }) => {
            workshop.instrument_error(what, value, 1.0)
        }
        (Predicted::Value(_), Observed::Sense(_)) | (Predicted::Beyond(_) | Predicted::Blank, _) => 0.0,
    };
    Told { predicted, error }
}

/// Which readings are noted and count.
fn wanted(course: &Course) -> Vec<bool> {
    let mut wanted = vec![false; course.looked.len()];
    for note in course.notes.iter().filter(|note| note.worth == Worth::Counts) {
        wanted[note.looked] = true;
    }
    wanted
}

/// Does deed number `index` in a car, with the pause before it.
pub(crate) async fn deed_in(workshop: &mut Opened, deeds: &[Deed], index: usize, beside: Beside<'_>) {
    idle_before(workshop, deeds, index, beside).await;
    done_again(workshop, &deeds[index], beside).await;
}

/// Lets the time pass in which nothing was done before deed number `index`.
async fn idle_before(workshop: &mut Opened, deeds: &[Deed], index: usize, beside: Beside<'_>) {
    let start = deeds[index].start.0;
    let idle = start - deeds[..index].last().map_or(start, |last| last.end.0);
    if 0 < idle {
        workshop.run_free_beside(workshop.tick().plus(idle), beside).await;
    }
}

/// A deed in another car: it takes as long as it took, unless it ends with a cue.
async fn done_again(workshop: &mut Opened, deed: &Deed, beside: Beside<'_>) {
    if deed.action.ends_with_a_cue() {
        workshop.act_beside(&deed.action, beside).await;
    } else {
        let end = workshop.tick().plus(deed.end.0 - deed.start.0);
        workshop.replay_beside(&deed.action, end, beside).await;
    }
}
