//! Buffers and by-products of an evaluation, and what is held fixed through it.

use super::law::AtHand;
use super::network::{PoleState, Solved};
use super::pole::PoleLaw;
use super::tangent::Tangent;
use crate::flow::Gas;
use crate::lanes::Real;

/// What is told holds fixed while the state moves, a lane for each circuit; set by `hold`.
#[derive(Clone, Debug, Default)]
pub(crate) struct Held<R: Real> {
    pub(crate) pedal_n: R,
    /// 1 = the engine runs, 0 = it does not.
    pub(crate) engine_runs: R,
    /// Per part that hands work.
    pub(crate) hands: Vec<AtHand<R>>,
    /// Per follower, the numbers of its law.
    pub(crate) followers: Vec<[R; 2]>,
    /// Per lively two-pole and lane, its law.
    pub(crate) lively: Vec<PoleLaw>,
}

/// Buffers and by-products of one evaluation.
#[derive(Clone, Debug, Default)]
pub(crate) struct Scratch<R: Real = f64> {
    /// Of every volume, then of the atmosphere, then of every manifold.
    pub(crate) gas: Vec<Gas<R>>,
    pub(crate) volume: Vec<R>,
    pub(crate) held: Held<R>,
    /// What `solved` was solved for, if `known`; what to solve for next.
    pub(crate) poles: Vec<PoleState<R>>,
    pub(crate) known: bool,
    pub(crate) solved: Solved<R>,
    /// Of the state at which slopes were last wanted.
    pub(crate) tangent: Tangent<R>,
    /// Mass flow of each edge, kg/s, positive from a to b.
    pub(crate) edge_m: Vec<R>,
}
