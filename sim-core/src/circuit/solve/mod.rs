//! Solve: the equations of a compiled circuit, their slopes, and one step of the method.
//!
//! State y in the order of the circuit's layout; behind it four balance rows (mass and enthalpy given to the
//! outside, heat taken from walls, work done by the air) that obey the same step, so that what the volumes lose is
//! what the balances gain to the last bits, however well the step converged. What is data stands in `model` and below;
//! each part of the right-hand side is a file above it.

mod air;
mod attempt;
mod electrics;
mod eval;
mod flow_path;
mod follow;
mod follower;
mod given;
mod increments;
mod law;
pub(super) mod linear;
mod machines;
mod model;
mod network;
mod pole;
mod rosenbrock;
mod scratch;
mod sink;
mod soft;
mod tangent;

pub use given::{Hand, Inputs};
pub use rosenbrock::{Coefficients, RODAS3};

pub(super) use flow_path::{
    End, FlowPathAt, FlowPathPlaces, From, OtherPlaces, Place, RotorPlaces, at_first,
};
pub(super) use follower::{Follower, ROOM_TAU_S};
pub(super) use given::{Flags, Given};
pub(super) use machines::OMEGA_LOAD_SMALL;
pub(super) use model::{Body, Model, N_BALANCES, Numbers, PistonAt, Rotor, RotorAt};
pub(super) use network::{Branch, G_LOOSE, Network, PoleState};
pub(super) use pole::{PoleAt, PoleLaw};
pub(super) use rosenbrock::{From as StepFrom, Work};
pub(super) use scratch::Scratch;
#[cfg(test)]
pub(super) use sink::Entries;
pub(super) use sink::NoSlopes;
pub(super) use soft::Soft;
