//! The line of the mark: what is kept of its mark sheet. [`crate::attempt::marked`] writes it.

/// What is kept of a mark sheet.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MarkLine {
    /// Version of the scheme.
    pub scheme: String,
    /// Version of the program that marked.
    pub engine: String,
    /// blake3 of all files behind the job, hexadecimal.
    pub job_digest: String,
    /// Total, 0 to 100.
    pub total: f64,
    /// Competent, or not yet.
    pub competent: bool,
    /// The parts in the order of the sheet.
    pub parts: Vec<PartPoints>,
    /// Points taken off for breaches of safety.
    pub deducted: f64,
}

/// Points of one part of the mark.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartPoints {
    /// Letter: V, E, R, Q, D.
    pub part: String,
    /// Points.
    pub points: f64,
}
