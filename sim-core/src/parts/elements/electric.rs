//! Two-poles of a part: i = g (v_a − v_b − emf) flows into its port `a`. Conductances in S.

use super::characteristic::Characteristic;
use super::filament::Filament;

/// A two-pole between two ports of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pole {
    /// Port a.
    pub a: u8,
    /// Port b.
    pub b: u8,
    /// What it is, in the exported equations.
    pub name: &'static str,
    /// What it is worth.
    pub worth: Worth,
}

/// What decides the worth of a two-pole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Worth {
    /// A conductance, always the same.
    Steady(f64),
    /// A source, always the same.
    Source {
        /// Conductance, S.
        g: f64,
        /// Voltage behind it, V.
        emf: f64,
    },
    /// While the part's contact is closed or its output driven; and what a weld passes besides.
    Contact {
        /// Closed, S.
        g: f64,
        /// Weld, S.
        weld: f64,
    },
    /// While the part's fuse has not melted.
    Intact(f64),
    /// A source while the part is awake.
    Awake {
        /// Conductance, S.
        g: f64,
        /// Voltage behind it, V.
        emf: f64,
    },
    /// While the key is on; and what a contact that sticks passes besides.
    KeyOn {
        /// Closed, S.
        g: f64,
        /// Sticking, S.
        weld: f64,
    },
    /// A source while the engine runs.
    EngineRuns {
        /// Conductance, S.
        g: f64,
        /// Voltage behind it, V.
        emf: f64,
    },
    /// A battery, by its charge ([`super::Quantity::Charge`]).
    Battery(f64),
    /// The motor of the part's rotor.
    Motor,
    /// One arm of a sensor's track.
    Characteristic {
        /// The track.
        characteristic: Characteristic,
        /// The arm between signal and ground.
        lower: bool,
    },
    /// A lamp, by its filament ([`super::Quantity::Filament`]).
    Lamp(Filament),
    /// A meter, as its dial is set.
    Meter(Meter),
    /// While the button is held and the fuse whole.
    Pressed(f64),
}

impl Worth {
    /// Whether the conductance follows the state continuously.
    #[must_use]
    pub fn varies(&self) -> bool {
        match self {
            Self::Motor | Self::Characteristic { .. } | Self::Lamp(_) => true,
            Self::Steady(_)
            | Self::Source { .. }
            | Self::Contact { .. }
            | Self::Intact(_)
            | Self::Awake { .. }
            | Self::KeyOn { .. }
            | Self::EngineRuns { .. }
            | Self::Battery(_)
            | Self::Meter(_)
            | Self::Pressed(_) => false,
        }
    }

    /// Whether there can be a voltage behind a steady conductance.
    #[must_use]
    pub fn is_source(&self) -> bool {
        match self {
            Self::Source { .. }
            | Self::Awake { .. }
            | Self::EngineRuns { .. }
            | Self::Battery(_)
            | Self::Meter(_) => true,
            Self::Steady(_)
            | Self::Contact { .. }
            | Self::Intact(_)
            | Self::KeyOn { .. }
            | Self::Motor
            | Self::Characteristic { .. }
            | Self::Lamp(_)
            | Self::Pressed(_) => false,
        }
    }
}

/// A meter in its three modes that connect anything.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meter {
    /// Conductance when measuring voltage, S.
    pub volt: f64,
    /// Conductance of its own source, S.
    pub ohm: f64,
    /// Voltage of its own source, V.
    pub source_v: f64,
    /// Resistance of its own source, ohm.
    pub source_ohm: f64,
    /// Resistance of its leads, ohm.
    pub leads_ohm: f64,
    /// Conductance of the shunt with its leads, S.
    pub ampere: f64,
}

impl Meter {
    /// The resistance that it shows with `v` across it: what it sees divided by the current its own source drives;
    /// none where that is infinite.
    #[must_use]
    pub fn shown_ohm(&self, v: f64) -> Option<f64> {
        let out = (self.source_v - v) / self.source_ohm;
        let share = v / self.source_v;
        (share < 0.9999).then(|| v / out + self.leads_ohm)
    }
}

/// All current of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Electric {
    /// Two-poles.
    pub poles: Vec<Pole>,
    /// Whether all its ports are one piece of metal, the body that voltages are told against.
    pub earth: bool,
}

impl Electric {
    /// Carries no current.
    pub const NONE: Self = Self { poles: Vec::new(), earth: false };

    /// Two-poles, none of them the body.
    #[must_use]
    pub fn of(poles: Vec<Pole>) -> Self {
        Self { poles, earth: false }
    }

    /// One two-pole between two ports.
    #[must_use]
    pub fn one(name: &'static str, a: u8, b: u8, worth: Worth) -> Self {
        Self::of(vec![Pole { a, b, name, worth }])
    }
}
