//! What is measured when the model's speed is measured, from `assets/bench.ron`.

use super::error::PackError;
use super::raw::{RawBench, SCHEMA};
use super::report::Report;
use crate::speed::Bench;

/// Checks it; whether the words fit the car is seen when they are done.
pub(crate) fn bench(raw: RawBench, file: &str) -> Result<Bench, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    r.lengths::<RawBench>(&[("connected", raw.connected.len()), ("attempt", raw.attempt.len())])?;
    r.text("job", &raw.job, "write the job as pack/job");
    for (key, lines) in [("connected", &raw.connected), ("attempt", &raw.attempt)] {
        for (i, line) in lines.iter().enumerate() {
            r.text(&format!("{key}[{i}]"), line, "write a line of plain words, as at the prompt");
        }
    }
    r.done(Bench { job: raw.job, connected: raw.connected, attempt: raw.attempt })
}
