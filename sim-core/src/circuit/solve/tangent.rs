//! The linearised flows at the state a step begins from, kept flow by flow.
//!
//! A long step multiplies slopes of the smallest bodies of air, some 10⁴ 1/s, by hours: what the elimination
//! rounds off in a row is then no longer small beside what a leak lets in. So the increments of a long step
//! are taken once more from the flows themselves: every flow's increment is worked out once and given to one
//! side and taken from the other, and what the volumes lose is what the balances gain, whatever was rounded.

use crate::flow::Flow;
use crate::lanes::Real;

/// How pressure and temperature of a body of air follow from the state.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Follows<R> {
    /// ∂p/∂U, Pa/J.
    pub(crate) p_u: R,
    /// ∂p/∂x, Pa/m.
    pub(crate) p_x: R,
    /// ∂T/∂m, K/kg.
    pub(crate) t_m: R,
    /// ∂T/∂U, K/J.
    pub(crate) t_u: R,
}

/// A flow path, linearised.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FlowPath<R: Real> {
    pub(crate) flow: Flow<R>,
    /// Slope over the travel or speed it depends on besides the air.
    pub(crate) slope: R,
    pub(crate) t_up: R,
    pub(crate) up_is_a: R::Mask,
}

/// A power piston, linearised: slopes of its speed and of both pressures over rear, front and travel.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piston<R> {
    pub(crate) speed: R,
    pub(crate) p: [R; 2],
    /// Column, ∂speed, ∂p_front, ∂p_rear.
    pub(crate) slopes: [(usize, R, R, R); 3],
}

/// All flows of mass, heat and work, linearised.
#[derive(Clone, Debug, Default)]
pub(crate) struct Tangent<R: Real> {
    /// Whether ways and pistons are kept: for steps that are long enough to need them.
    pub(crate) kept: bool,
    pub(crate) flow_paths: Vec<FlowPath<R>>,
    /// Per volume.
    pub(crate) follows: Vec<Follows<R>>,
    pub(crate) pistons: Vec<Piston<R>>,
}

impl<R: Real> Tangent<R> {
    pub(crate) fn clear(&mut self) {
        self.flow_paths.clear();
        self.follows.clear();
        self.pistons.clear();
    }
}
