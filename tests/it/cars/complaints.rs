//! Each job's complaint comes true in its car, whatever the tolerances, and not in a sound one.

use assess::infer::complaint::store_port;
use assess::pack::job::{Job, Symptom};
use sim_core::parts::engine::EngineState;

use super::{Bench, library};

/// Whether this car would raise the complaint.
fn complains(b: &mut Bench, symptom: Symptom, night_drop_k: f64) -> bool {
    match symptom {
        Symptom::ShortRest { below_s } => {
            b.first_run();
            b.until(true, 0.5, below_s).is_some()
        }
        Symptom::HumsKeyOff => {
            b.run(5.0);
            b.hums()
        }
        Symptom::LongRun { above_s } => b.first_run().is_none_or(|s| above_s < s),
        Symptom::HardPedalAfterNight { above_kpa_gauge } => {
            b.key(true);
            b.filled_and_settled();
            b.key(false);
            b.engine(EngineState::Stopped);
            let day_c = b.circuit.inputs().surroundings_c;
            b.circuit.inputs_mut().surroundings_c = day_c - night_drop_k;
            b.run(12.0 * 3600.0);
            above_kpa_gauge < b.gauge(&store_port(b.circuit.assembly()))
        }
    }
}

fn raised(job: &Job, faults: &[(u16, f64)], seed: u64) -> bool {
    let mut b = Bench::drawn(&job.car, job.day, seed, faults);
    complains(&mut b, job.symptom, job.day.night_drop_k)
}

#[test]
fn inv_hidden_faults_raise_their_complaint() {
    let library = library();
    for pack in library.packs().unwrap() {
        for id in &pack.jobs {
            let job = library.job(&format!("{}/{id}", pack.id)).unwrap();
            for seed in 1..=6 {
                assert!(raised(&job, job.answer(), seed), "{} does not complain in car {seed}", job.name());
                // A healthy car that is brought in complains as it is; the others must not without fault.
                let sound = raised(&job, &[], seed);
                assert_eq!(sound, job.answer().is_empty(), "{}: sound car {seed}", job.name());
            }
        }
    }
}
