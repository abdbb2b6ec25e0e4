//! What is measured when the model's speed is measured, from `assets/bench.ron`.

use super::checker::Checker;
use super::error::PackError;
use super::raw::{RawBench, SCHEMA};
use super::wanted::Wanted;
use crate::speed::Bench;

/// Checks it; whether the words fit the car is seen when they are done.
pub(crate) fn bench(raw: RawBench, file: &str) -> Result<Bench, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.lengths::<RawBench>(&[("connected", raw.connected.len()), ("attempt", raw.attempt.len())])?;
    check.text("job", &raw.job, Wanted::Job);
    for (key, lines) in [("connected", &raw.connected), ("attempt", &raw.attempt)] {
        for (i, line) in lines.iter().enumerate() {
            check.text(&format!("{key}[{i}]"), line, Wanted::Line);
        }
    }
    check.done(Bench { job: raw.job, connected: raw.connected, attempt: raw.attempt })
}
