//! The lumped elements a part can be made of: bodies of air, mouths, ways, states, two-poles, machines, switches.
//!
//! Plain data with the laws that go with it, one subject a file. A kind of part says in its own file which of
//! these it has ([`Specified`]); the circuit compiles what it is told and knows no kind. Nothing here knows a
//! circuit or a kind of part.

mod air;
mod battery;
mod characteristic;
mod control;
mod electric;
mod filament;
mod fuse;
mod lag;
mod law;
mod machine;
mod motor;
mod piston;
mod quantity;
mod seen;
mod state;
mod switch;
mod told;
mod vane;
mod wall;

pub use air::{Air, Behind, Chamber, Depth, FlowPath, Gap, Mouth, Passage, Place, Volume, wall_w_per_k};
pub use battery::{charge_rate_per_s, open_circuit_v};
pub use characteristic::{Characteristic, RAIL};
pub use control::{CODES, Control, Decision, FEED_OHM, FEED_V, GROUND_OHM, TroubleCode};
pub use electric::{Electric, Meter, Pole, Worth};
pub use filament::{FILAMENT_RATED_K, Filament};
pub use fuse::{FUSE_MELTS_AT, FUSE_TAU_S, SLACK_CLOSES_AT, SLACK_OPENS_AT};
pub use lag::Lag;
pub use law::Law;
pub use machine::Machine;
pub use motor::{ALPHA_COPPER, ALPHA_FERRITE, MotorLaw, OMEGA_SMALL};
pub use piston::{PistonLaw, STOP_N_PER_M, UNSTICKS_N};
pub use quantity::{Allowance, Bounds, Quantity};
pub use seen::{ByHand, Lies, Seen};
pub use state::{Start, State};
pub use switch::Switch;
pub use told::{EngineState, MeterMode};
pub use vane::{slip, swept_m3_per_rad};
pub use wall::{SOFT_BEGINS_PA, SOFT_SPAN_PA, open_share};

/// Everything of a part that takes part in a circuit. Every field is named by every kind: what a part does not
/// have is said, not left out.
#[derive(Clone, Debug, PartialEq)]
pub struct Spec {
    /// Whether it takes part only while something is joined to it: an instrument that hangs on the board
    /// otherwise.
    pub hangs: bool,
    /// Bodies of air, mouths, ways within.
    pub air: Air,
    /// Two-poles.
    pub electric: Electric,
    /// State variables besides the air's.
    pub states: Vec<State>,
    /// What moves and warms by forces and torques.
    pub machines: Vec<Machine>,
    /// What truly switches.
    pub switches: Vec<Switch>,
}

/// Says what a part is made of. Every kind of part does: the table of kinds asks for it, and one that lacks it does
/// not compile.
pub trait Specified {
    /// How it lies in the car.
    const SEEN: Seen;

    /// Its specification on a day of pressure `p_atm`, Pa.
    fn spec(&self, p_atm: f64) -> Spec;
}
