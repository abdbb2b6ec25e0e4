//! A hint that was asked for: a line of the attempt behind the actions that had been done by then.

/// What the bench said would tell most.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Advice {
    /// This test (short name in the car's list).
    Test(String),
    /// The notes say enough already.
    Enough,
    /// No test that could be done here would tell anything worth its minutes.
    Nothing,
}

/// A hint.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HintLine {
    /// Actions in the file before it.
    pub after: u32,
    /// What was said.
    pub advice: Advice,
    /// When, ms since 1970 (UTC). A label: nothing is computed from it.
    pub at_unix_ms: u64,
}
