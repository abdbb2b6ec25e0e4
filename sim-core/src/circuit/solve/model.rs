//! A compiled circuit's equations: structure and numbers, no state.

use super::flow_path::{FlowPathAt, OtherPlaces};
use super::follower::Follower;
use super::linear::Plan;
use super::network::Network;
use super::pole::PoleAt;
use super::soft::Soft;
use crate::lanes::spread;
use crate::parts::elements::{Allowance, Law, MotorLaw, PistonLaw};

/// Rows behind the state: mass out, enthalpy out, heat in, work out.
pub(crate) const N_BALANCES: usize = 4;

/// Where a rotor's states, air and two-pole stand.
#[derive(Clone, Debug)]
pub(crate) struct RotorAt {
    pub(crate) winding: usize,
    pub(crate) case: usize,
    pub(crate) speed: usize,
    pub(crate) inlet: usize,
    pub(crate) pole: usize,
}

/// Where a piston's travel and chambers stand.
#[derive(Clone, Debug)]
pub(crate) struct PistonAt {
    pub(crate) part: u16,
    pub(crate) travel: usize,
    pub(crate) front: usize,
    pub(crate) rear: usize,
}

/// A body of air in numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Body<R = f64> {
    /// Volume at rest, m³.
    pub(crate) at_rest_m3: R,
    /// Change per metre of travel, m².
    pub(crate) per_travel_m2: R,
    /// Heat transfer to the wall, W/K.
    pub(crate) h_a: R,
}

spread!(Body { at_rest_m3, per_travel_m2, h_a });

/// A rotor in numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rotor<R = f64> {
    pub(crate) motor: MotorLaw<R>,
    /// Compression torque against the atmosphere with a perfect vacuum at the inlet, N·m.
    pub(crate) compression: R,
    /// Its slope over the inlet pressure, N·m/Pa.
    pub(crate) compression_p: R,
}

spread!(Rotor { motor, compression, compression_p });

/// The numbers of a circuit's laws, or of several circuits of one shape side by side.
#[derive(Clone, Debug, Default)]
pub(crate) struct Numbers<R = f64> {
    /// Pressure of the day, Pa.
    pub(crate) p_atm: R,
    pub(crate) bodies: Vec<Body<R>>,
    /// Per flow path.
    pub(crate) laws: Vec<Law<R>>,
    /// Per flow path with soft ends, those.
    pub(crate) soft: Vec<[Soft<R>; 2]>,
    pub(crate) pistons: Vec<PistonLaw<R>>,
    pub(crate) rotors: Vec<Rotor<R>>,
}

spread!(Numbers { p_atm, bodies, laws, soft, pistons, rotors });

/// The equations. Numbers that differ between two circuits of one shape are in [`Numbers`].
#[derive(Clone, Debug, Default)]
pub(crate) struct Model {
    pub(crate) numbers: Numbers,
    /// Number of state variables.
    pub(crate) n: usize,
    /// What each state variable must be above: nought, or nothing.
    pub(crate) least: Vec<f64>,
    /// The error a step may make in each state variable.
    pub(crate) allowances: Vec<Allowance>,
    /// Rows of mass, energy and balances.
    pub(crate) conserved: Vec<usize>,
    /// Index of the mass in the state, per volume; its energy follows.
    pub(crate) mass_at: Vec<usize>,
    /// Index of the travel that moves a volume's wall, per volume.
    pub(crate) travel_at: Vec<Option<usize>>,
    pub(crate) rotors: Vec<RotorAt>,
    pub(crate) pistons: Vec<PistonAt>,
    /// Parts that hands work, a way each.
    pub(crate) in_hands: Vec<u16>,
    /// Index of each manifold pressure.
    pub(crate) manifolds: Vec<usize>,
    /// Flow paths.
    pub(crate) flow_paths: Vec<FlowPathAt>,
    /// Where all other slopes stand.
    pub(crate) places: OtherPlaces,
    /// How slopes are kept and eliminated.
    pub(crate) plan: Plan,
    /// Nodes and what links them.
    pub(crate) network: Network,
    /// Per two-pole, whose it is and what it is worth.
    pub(crate) poles: Vec<PoleAt>,
    /// Numbers of the two-poles whose worth follows the state.
    pub(crate) lively: Vec<usize>,
    /// What follows something else with a lag, with its row.
    pub(crate) followers: Vec<(usize, Follower)>,
}
