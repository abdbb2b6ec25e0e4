//! The file of a reference plan, as `Library::job` reads it.

use super::{Planned, Proof};
use crate::marks::score::SCHEME;

/// How it begins.
pub const BEGINS: &str = "// Written by `pinhole prove`";

#[derive(serde::Serialize)]
#[serde(rename = "Plan")]
struct Written<'a> {
    schema: u32,
    digest: &'a str,
    scheme: &'a str,
    tests: Vec<WrittenTest<'a>>,
}

#[derive(serde::Serialize)]
#[serde(rename = "PlanTest")]
struct WrittenTest<'a> {
    test: &'a str,
    worked_min: f64,
    waited_min: f64,
    p_true: f64,
}

/// Thousandths are enough for people.
fn short(x: f64) -> f64 {
    (1000.0 * x).round() / 1000.0
}

/// The text of the file.
///
/// # Errors
/// None that could come about: a plan holds nothing that cannot be written.
pub fn text(proof: &Proof) -> Result<String, ron::Error> {
    let test = |planned| {
        let &Planned { ref test, minutes, p_true, .. } = planned;
        let (worked_min, waited_min) = (short(minutes.attended), short(minutes.unattended));
        WrittenTest { test, worked_min, waited_min, p_true: short(p_true) }
    };
    let tests = proof.plan.iter().map(test).collect();
    let written = Written { schema: 1, digest: &proof.digest, scheme: SCHEME, tests };
    let form = ron::ser::PrettyConfig::default().struct_names(true);
    let plan = ron::ser::to_string_pretty(&written, form)?;
    Ok(format!("{BEGINS} {}: it names the tests that find the fault.\n{plan}\n", proof.job))
}
