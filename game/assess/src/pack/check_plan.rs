//! From a reference plan as written to a checked one.

use super::block::Block as _;
use super::checker::{Checker, known_for};
use super::error::{BadName, Named, PackError};
use super::raw::{RawPlan, RawPlanTest, SCHEMA};
use crate::pack::job::{Job, PlanStep, ReferencePlan};

/// Checks the reference plan of `job`, whose digest is known. One that was made of other files is out of date, whatever
/// stands in it.
pub(crate) fn plan(
    raw: RawPlan,
    job: &Job,
    scheme: &str,
    file: &str,
) -> Result<ReferencePlan, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.lengths::<RawPlan>(&[("tests", raw.tests.len())])?;
    if raw.digest != hex::encode(job.digest) || raw.scheme != scheme {
        return check.done(ReferencePlan::OutOfDate);
    }
    let mut tests = Vec::new();
    for (i, raw) in raw.tests.into_iter().enumerate() {
        let name = &raw.test;
        let (worked_min, waited_min, p_true) = (raw.worked_min, raw.waited_min, raw.p_true);
        for (key, value) in [("worked_min", worked_min), ("waited_min", waited_min), ("p_true", p_true)] {
            check.number(format!("tests[{i}].{key}"), value, RawPlanTest::range(key));
        }
        match job.tests.iter().position(|test| test.id == *name) {
            Some(test) => tests.push(PlanStep { test, worked_min, waited_min, p_true }),
            None => check.push(BadName::Unknown {
                path: format!("tests[{i}].test").into(),
                what: Named::Test,
                name: name.clone(),
                known: known_for(name, job.tests.iter().map(|test| test.id.as_str())),
            }),
        }
    }
    check.done(ReferencePlan::Tests(tests))
}
