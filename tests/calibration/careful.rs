//! Careful attempts: is what is wrong found by somebody who leaves nothing out, on the jobs as they are shipped, and what is
//! said of leaks so small that little tells them apart?

use std::sync::Arc;

use anyhow::Context as _;
use assess::attempt::Seed;
use assess::infer::hypotheses::Class;
use assess::marks;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::plan::test::Test;
use assess::play::{Begin, Session};
use dice::Dice;
use rayon::prelude::*;

use crate::attempt::{JOBS, work};
use crate::technician::Technician;

/// Stream of the random numbers of these attempts.
const STREAM: u128 = 0x0063_6172_6566_756c;
/// Enough to be told (issue of the marks).
const TOLD: f64 = 0.8;
/// Faults that leak alike while small, and bores of hole, mm, at which they are asked about.
const LEAKS: [&str; 2] = ["hose_b_pinhole", "tee_crack"];
const BORES: [f64; 4] = [0.09, 0.12, 0.15, 0.18];
/// The job that such a leak comes in with.
const LEAKS_AT: &str = "first-shift/flat-after-the-weekend";

/// Ways to work on a car.
#[derive(Clone, Copy, Debug)]
enum Way {
    /// Along the job's reference plan.
    Plan,
    /// Every test there is.
    Thorough,
    /// By the book: conditions, and six tests of the air and three of the current drawn by lot, whatever they show.
    ByTheBook,
}

impl Way {
    const ALL: [Self; 3] = [Self::Plan, Self::Thorough, Self::ByTheBook];

    fn name(self) -> &'static str {
        match self {
            Self::Plan => "reference plan",
            Self::Thorough => "every test there is",
            Self::ByTheBook => "by the book",
        }
    }

    /// Whether the matter can be settled in this way: tests that are drawn by lot may miss the one that tells.
    fn is_careful(self) -> bool {
        match self {
            Self::Plan | Self::Thorough => true,
            Self::ByTheBook => false,
        }
    }
}

/// What is believed at the end of one attempt.
struct End {
    truth: f64,
    likeliest: (String, f64),
}

/// Every job as it is shipped, in so many cars, in each of the ways to work. `tell` is given a line as soon as it is known.
///
/// # Errors
/// A job cannot be read, or an attempt cannot be played.
pub(crate) fn jobs(
    library: &Library,
    seed: u64,
    cars: u64,
    tell: &mut dyn FnMut(&str),
) -> anyhow::Result<()> {
    let (mut told, mut all) = (0, 0);
    for name in JOBS {
        let job = library.job(name)?;
        for way in Way::ALL {
            let ends = ends(&job, seed, cars, way)?;
            let enough = ends.iter().filter(|end| TOLD <= end.truth).count();
            let least = ends.iter().map(|end| end.truth).fold(1.0, f64::min);
            let how = way.name();
            tell(&format!("{name}, {how}: {enough} of {cars} at {TOLD} or more, least {least:.3}"));
            if way.is_careful() {
                told += enough as u64;
                all += cars;
            }
        }
    }
    tell(&format!("careful, in all {told} of {all} ({:.1} %)", told as f64 / all as f64 * 100.0));
    Ok(())
}

/// Small leaks, with every test there is: what is believed of them in the end.
///
/// # Errors
/// As [`jobs`].
pub(crate) fn leaks(
    library: &Library,
    seed: u64,
    cars: u64,
    tell: &mut dyn FnMut(&str),
) -> anyhow::Result<()> {
    let mut job = library.job(LEAKS_AT)?;
    let mut wronged = 0;
    for fault in LEAKS {
        let index = job.car.faults.iter().position(|def| def.id == fault).context("a fault of the car")?;
        for bore in BORES {
            job.set_answer(vec![(index as u16, bore)]);
            for end in ends(&job, seed, cars, Way::Thorough)? {
                let (likeliest, p) = &end.likeliest;
                // Sure of something that is not so: neither told nor left open.
                let wrong = end.truth < *p && TOLD <= *p;
                wronged += u32::from(wrong);
                let verdict = if wrong {
                    "WRONG"
                } else if TOLD <= end.truth {
                    "told"
                } else {
                    "left open"
                };
                let truth = end.truth;
                tell(&format!("{fault} {bore} mm: true {truth:.3}, likeliest {likeliest} {p:.3}: {verdict}"));
            }
        }
    }
    tell(&format!("sure of something else: {wronged}"));
    Ok(())
}

/// So many cars of a job, side by side.
fn ends(job: &Job, seed: u64, cars: u64, way: Way) -> anyhow::Result<Vec<End>> {
    let one = |car: u64| {
        let mut dice = Dice::new(u128::from(seed) << 64 | u128::from(car), STREAM);
        end(job, &mut dice, way)
    };
    (0..cars).collect::<Vec<_>>().into_par_iter().with_max_len(1).map(one).collect()
}

fn end(job: &Job, dice: &mut Dice, way: Way) -> anyhow::Result<End> {
    let seed = Seed(u128::from(dice.bits()) << 64 | u128::from(dice.bits()));
    let here: Vec<&Test> = job.tests_here().collect();
    let order = match way {
        Way::Plan => job.planned().with_context(|| format!("{} has no plan", job.name()))?,
        Way::Thorough => Technician::Thorough.order(&here, dice),
        Way::ByTheBook => Technician::ByTheBook.order(&here, dice),
    };
    let mut session = Session::rehearse(Arc::new(job.clone()), &Begin::rehearsal(seed));
    work(&mut session, Technician::ByTheBook, &order, dice)?;
    let followed = marks::followed(&session.into_attempt(), job)?;
    let belief = followed.links.last().map_or(&followed.start, |link| &link.belief).classes();
    let mut units: Vec<u16> =
        job.answer().iter().map(|(fault, _)| job.car.faults[usize::from(*fault)].unit).collect();
    units.dedup();
    let classes = &followed.hypotheses.classes;
    let named = |class: &Class| match class {
        Class::Inside => "nothing".to_owned(),
        Class::Other => "other".to_owned(),
        Class::Unit(unit) => job.car.units[usize::from(*unit)].id.clone(),
        Class::Pair(a, b) => {
            format!("{} and {}", job.car.units[usize::from(*a)].id, job.car.units[usize::from(*b)].id)
        }
    };
    let truth = classes.iter().zip(&belief).filter(|(c, _)| c.is_exactly(&units)).map(|(_, p)| p).sum();
    let (likeliest, p) =
        classes.iter().zip(&belief).max_by(|a, b| a.1.total_cmp(b.1)).context("a class of the car")?;
    Ok(End { truth, likeliest: (named(likeliest), *p) })
}
