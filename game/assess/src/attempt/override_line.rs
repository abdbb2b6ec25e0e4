//! An instructor's override: a line behind the mark, which says that another total or verdict holds, and why. The mark
//! stays what it is. [`crate::attempt::overrule`] writes it.

/// What an instructor says of a marked attempt. What it leaves open stays as the program's mark has it.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OverrideLine {
    /// The total that holds, 0 to 100; none = the mark's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub total: Option<f64>,
    /// Whether competent holds, or not yet; none = the mark's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub competent: Option<bool>,
    /// Why.
    pub reason: String,
    /// Name or initials of whoever says so.
    pub by: String,
    /// When, ms since 1970 (UTC). A label: nothing is computed from it.
    pub at_unix_ms: u64,
    /// Version of the program.
    pub engine: String,
}

impl OverrideLine {
    /// Whether it says anything at all, and who and why.
    pub(super) fn is_whole(&self) -> bool {
        let says = self.total.is_some() || self.competent.is_some();
        says && !self.reason.trim().is_empty() && !self.by.trim().is_empty()
    }
}
