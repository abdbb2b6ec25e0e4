//! The file of a reference plan, as `Library::job` reads it.

use super::Proof;
use crate::marks::score::SCHEME;

/// How it begins.
pub const BEGINS: &str = "// Written by `pinhole prove`";

#[derive(serde::Serialize)]
#[serde(rename = "Plan")]
struct Written<'a> {
    schema: u32,
    digest: &'a str,
    scheme: &'a str,
    tests: Vec<&'a str>,
}

/// The text of the file.
///
/// # Errors
/// None that could come about: a plan holds nothing that cannot be written.
pub fn text(proof: &Proof) -> Result<String, ron::Error> {
    let tests = proof.plan.iter().map(|planned| planned.test.as_str()).collect();
    let written = Written { schema: 1, digest: &proof.digest, scheme: SCHEME, tests };
    let form = ron::ser::PrettyConfig::default().struct_names(true);
    let plan = ron::ser::to_string_pretty(&written, form)?;
    Ok(format!("{BEGINS} {}: it names the tests that find the fault.\n{plan}\n", proof.job))
}
