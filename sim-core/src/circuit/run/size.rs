//! How much there is to compute, before it is.

use super::super::compile;
use crate::assembly::{Assembly, PortRef};
use crate::parts::Domain;

/// How much there is to compute.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Variables of air, heat, speed and charge.
    pub states: usize,
    /// Electrical ports: as many nodes as there can be once every connector is apart.
    pub terminals: usize,
}

impl Size {
    /// What a car may come to: 252 states and 256 nodes can be computed, and instruments in use bring theirs.
    pub const MOST: Self = Self { states: 200, terminals: 200 };

    /// Of an assembly.
    #[must_use]
    pub fn of(assembly: &Assembly) -> Self {
        let electrical = |p: &PortRef| assembly.domain(*p) == Domain::Electrical;
        Self { states: compile::n_states(assembly), terminals: assembly.ports().filter(electrical).count() }
    }
}
