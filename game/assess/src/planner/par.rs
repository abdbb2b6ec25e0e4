//! Par time: what a reference plan takes, with the lines of the car's record that it does not fill.
//!
//! The record is asked for in every job of a car, whatever is wrong; who fills it while he looks for the fault should not
//! be held against somebody who does not. Release checks come after the repair and are not counted.

use crate::pack::job::Job;
use crate::plan::cost::{Minutes, Rehearsal, alone};
use crate::plan::test::{Step, Test};

/// Whether a test fills a line of the record.
fn fills(test: &Test, item: &str) -> bool {
    test.lines().any(|(_, line)| matches!(&line.step, Step::Note { record: Some(line), .. } if line == item))
}

/// The tests of a plan, then the cheapest ones for the lines of the record that are still empty.
#[must_use]
pub fn with_record<'a>(job: &'a Job, plan: &[&'a Test]) -> Vec<&'a Test> {
    let mut row = plan.to_vec();
    for item in job.car.record.iter().filter(|item| !item.kind.is_release()) {
        if row.iter().any(|test| fills(test, &item.id)) {
            continue;
        }
        let filling = job.tests_here().filter(|test| fills(test, &item.id));
        let costs = filling.map(|test| (alone(&job.setup(), test).weighed(), test));
        row.extend(costs.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, test)| test));
    }
    row
}

/// Minutes of a plan in a sound car, with the record and everything put away.
#[must_use]
pub fn minutes(job: &Job, plan: &[&Test]) -> Minutes {
    let mut work = Rehearsal::sound(job.setup());
    work.all(&with_record(job, plan));
    work.minutes()
}
