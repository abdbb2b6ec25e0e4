//! Laws over every shipped job: its reference attempt, played from the car's coming in to its handing back.

use std::sync::Arc;

use assess::attempt::Seed;
use assess::play::script;
use assess::play::{Begin, Session};
use sim_core::Opened;
use sim_core::circuit::{Circuit, Event};

use crate::rig::{library, world};

/// What is inside the volumes plus what has gone, kg and J.
fn total(c: &Circuit) -> (f64, f64) {
    let l = c.balances();
    (c.air_mass_kg() + l.mass_out_kg, c.air_energy_j() + l.enthalpy_out_j + l.work_out_j - l.heat_in_j)
}

/// Looks at the circuit after every action of every reference.
fn over_every_job(mut look: impl FnMut(&str, usize, &Circuit)) {
    let jobs = library().check_all().unwrap_or_else(|e| panic!("{e}"));
    assert!(4 <= jobs.len());
    for job in jobs {
        let job = Arc::new(job);
        let text = job.reference.clone().expect("every job has a reference");
        let begin = Begin::rehearsal(Seed(0x5eed));
        let mut session = Session::rehearse(Arc::clone(&job), &begin);
        script::play(&mut session, &text, |_, _, _, _| {}).unwrap_or_else(|e| panic!("{}: {e}", job.id));
        // The same actions once more, with a look after each.
        let mut workshop = Opened::of(job.setup(), world(session.attempt(), &job));
        look(&job.id, 0, workshop.circuit());
        for step in &session.attempt().steps {
            workshop.act(&step.action);
            look(&job.id, step.n as usize, workshop.circuit());
        }
        assert_eq!(
            workshop.digest(),
            session.workshop().digest(),
            "{}: what was looked at is what was done",
            job.id
        );
    }
}

#[test]
fn inv_mass_and_energy_close_over_every_job() {
    /// Acceptance: relative to what is in the volumes when the car has come in.
    const CLOSED: f64 = 1e-9;
    let mut began = (String::new(), 0.0, 0.0, 0.0, 0.0);
    let mut worst = (0.0_f64, 0.0_f64);
    over_every_job(|job, line, c| {
        let (kg, joule) = total(c);
        if began.0 != job {
            began = (job.to_owned(), c.air_mass_kg(), c.air_energy_j(), kg, joule);
        }
        let (mass, energy) = ((kg - began.3).abs() / began.1, (joule - began.4).abs() / began.2);
        worst = (worst.0.max(mass), worst.1.max(energy));
        assert!(mass <= CLOSED, "{job} action {line}: mass off by {mass:e}");
        assert!(energy <= CLOSED, "{job} action {line}: energy off by {energy:e}");
    });
    println!("mass {:e}, energy {:e} at worst", worst.0, worst.1);
}

#[test]
fn inv_air_stays_possible_over_every_job() {
    /// A foot may press a closed front chamber above the day's pressure, no more than this share.
    const PRESSED: f64 = 1.4;
    let mut seen = 0;
    over_every_job(|job, line, c| {
        for (name, p, t) in c.bodies_of_air() {
            assert!(
                0.0 < p.pa() && p.pa() <= PRESSED * c.ambient().pa(),
                "{job} action {line}: {name} at {p:?}"
            );
            assert!(180.0 < t && t < 450.0, "{job} action {line}: {name} at {t} K");
            seen += 1;
        }
        assert!(!c.events().iter().any(|(_, e)| *e == Event::Fault), "{job} action {line}: a step failed");
    });
    assert!(1_000 < seen);
}
