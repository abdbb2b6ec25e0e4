//! What each two-pole is worth, its numbers looked up once.

use super::given::Given;
use super::network::PoleState;
use crate::parts::elements::{Characteristic, EngineState, Filament, Meter, MeterMode};

/// A two-pole of a part.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PoleAt {
    /// The part.
    pub(crate) part: u16,
    /// What decides its worth.
    pub(crate) law: PoleLaw,
    /// Whether the conductance follows the state continuously.
    pub(crate) varies: bool,
}

/// What decides the worth of a two-pole. Conductances in S.
#[derive(Clone, Copy, Debug)]
pub(crate) enum PoleLaw {
    /// Always the same.
    Steady(PoleState),
    /// While the part's contact is closed or its output driven; and what a weld passes besides.
    Contact { g: f64, weld: f64 },
    /// While the part's fuse has not melted.
    Intact(f64),
    /// While the part is awake.
    Awake(PoleState),
    /// While the key is on; and what a contact that sticks passes besides.
    KeyOn { g: f64, weld: f64 },
    /// While the engine runs.
    EngineRuns(PoleState),
    /// A battery, its charge at this index.
    Battery { g: f64, charge: Option<usize> },
    /// The motor of the rotor of this number.
    Motor(usize),
    /// One arm of a sensor's track, by the air of this volume.
    Characteristic { characteristic: Characteristic, volume: Option<usize>, lower: bool },
    /// A lamp, its filament's temperature at this index.
    Lamp { law: Filament, filament: Option<usize> },
    /// A meter, as its dial is set.
    Meter(Meter),
    /// While the button is held and the fuse whole.
    Pressed(f64),
}

impl PoleLaw {
    /// Whether its worth follows the state while nothing is switched.
    pub(crate) fn is_lively(&self) -> bool {
        match self {
            Self::Battery { .. } | Self::Motor(_) | Self::Characteristic { .. } | Self::Lamp { .. } => true,
            Self::Steady(_)
            | Self::Contact { .. }
            | Self::Intact(_)
            | Self::Awake(_)
            | Self::KeyOn { .. }
            | Self::EngineRuns(_)
            | Self::Meter(_)
            | Self::Pressed(_) => false,
        }
    }

    /// What it is worth while `given` holds; of a lively one only what does not follow the state.
    pub(crate) fn held(&self, part: usize, given: Given<'_>) -> PoleState {
        let Given { inputs, flags } = given;
        let while_on = |on: bool, s: PoleState| PoleState { g: if on { s.g } else { 0.0 }, ..s };
        let plain = |g: f64| PoleState { g, emf: 0.0 };
        match self {
            Self::Steady(s) => *s,
            Self::Contact { g, weld } => plain(if flags[part].closed { *g } else { 0.0 } + weld),
            Self::Intact(g) => while_on(!flags[part].melted, plain(*g)),
            Self::Awake(s) => while_on(flags[part].powered, *s),
            Self::KeyOn { g, weld } => plain(if inputs.key_on { *g } else { 0.0 } + weld),
            Self::EngineRuns(s) => while_on(inputs.engine != EngineState::Stopped, *s),
            Self::Battery { g, .. } => plain(*g),
            Self::Motor(_) | Self::Characteristic { .. } | Self::Lamp { .. } => PoleState::default(),
            Self::Meter(m) => match inputs.hands[part].mode {
                MeterMode::Off => plain(0.0),
                MeterMode::Volt => plain(m.volt),
                MeterMode::Ohm => PoleState { g: m.ohm, emf: m.source_v },
                MeterMode::Ampere => while_on(!flags[part].melted, plain(m.ampere)),
            },
            Self::Pressed(g) => while_on(inputs.hands[part].pressed && !flags[part].melted, plain(*g)),
        }
    }
}
