//! What hands and feet tell a part.

/// What the engine does.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
pub enum EngineState {
    /// Standing still.
    #[default]
    Stopped,
    /// Fast idle of a cold engine.
    ColdIdle,
    /// Idle of a warm engine.
    WarmIdle,
    /// Steady road speed.
    Cruise,
    /// Throttle closed at speed.
    Overrun,
    /// Throttle wide open.
    WideOpen,
}

impl EngineState {
    /// All of them, in declared order.
    pub const ALL: [Self; 6] =
        [Self::Stopped, Self::ColdIdle, Self::WarmIdle, Self::Cruise, Self::Overrun, Self::WideOpen];

    /// Its place in [`EngineState::ALL`].
    #[must_use]
    pub fn index(self) -> usize {
        self as usize
    }
}

/// What a multimeter is set to.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
pub enum MeterMode {
    /// Off: an open circuit.
    #[default]
    Off,
    /// DC volts.
    Volt,
    /// Resistance, from its own source.
    Ohm,
    /// DC amperes through the fused socket.
    Ampere,
}
