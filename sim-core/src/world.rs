//! One possible state of affairs: which faults, which tolerances, which instrument errors.
//!
//! The truth of an attempt and every hypothesis of the marker are made by the same function.

/// The hidden numbers behind an attempt (or behind a hypothesis).
#[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct World {
    /// Parameter values that differ from the vehicle file's new car (`part.param`, value), in the order
    /// they are set: tolerances first, then faults.
    pub params: Vec<(String, f64)>,
    /// Per instrument card, its constant error as a share (−1 to 1) of what its class allows.
    pub instrument_errors: Vec<f64>,
}
