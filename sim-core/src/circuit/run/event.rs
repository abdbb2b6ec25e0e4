//! What happens inside a circuit: something switches, or the model cannot go on.

use crate::units::Tick;

/// Something that happened inside the circuit, at a step's end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Event {
    /// The pump of this part began to run audibly.
    PumpStarted(u16),
    /// The pump of this part stopped.
    PumpStopped(u16),
    /// A vacuum switch opened.
    SwitchOpened(u16),
    /// A vacuum switch closed.
    SwitchClosed(u16),
    /// A relay pulled in.
    RelayPulled(u16),
    /// A relay dropped out.
    RelayDropped(u16),
    /// A controller began to drive its output.
    OutputOn(u16),
    /// A controller's output fell.
    OutputOff(u16),
    /// A controller stored a code it had not stored before.
    CodeStored(u16),
    /// A fuse (also of a meter or a push-button lead) melted.
    FuseMelted(u16),
    /// A step could not be taken even at the smallest size, or only such steps could, for ever: nothing is computed from
    /// here on ([`Circuit::fault`]).
    Fault,
}

/// Where the model could not go on: some number of the car is beyond what can be computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Tick of the circuit's clock.
    pub tick: Tick,
    /// The part whose air, heat, speed or charge changes fastest there, as an index into the assembly; its numbers
    /// are the first to look at.
    pub part: Option<u16>,
}
