//! What a person sees of a part without any instrument: how its ports hang together, where it lies.

/// Where a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lies {
    /// In one place.
    InOnePlace,
    /// On a way between two fittings: its ends are where the parts are that it is joined to.
    Along,
    /// All over the car: whatever is joined to it is joined where that part is.
    AllOver,
}

/// What hands work at a part of the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ByHand {
    /// The key in the ignition switch.
    Key,
    /// The starter, and the accelerator with it.
    Starter,
    /// The brake pedal.
    Pedal,
}

/// How a part lies in the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seen {
    /// Where it is.
    pub lies: Lies,
    /// Whether air gets from one of its pneumatic ports to the others, both ways.
    pub joins_air: bool,
    /// Whether its electrical ports are one piece of metal.
    pub joins_current: bool,
    /// What hands work at it.
    pub by_hand: Option<ByHand>,
}

impl Seen {
    /// A thing in one place that lets air through, if it has air.
    pub const PIECE: Self =
        Self { lies: Lies::InOnePlace, joins_air: true, joins_current: false, by_hand: None };
    /// A thing in one place that lets air go one way, or draws it.
    pub const ONE_WAY: Self =
        Self { lies: Lies::InOnePlace, joins_air: false, joins_current: false, by_hand: None };
    /// A hose or a wire.
    pub const LINE: Self = Self { lies: Lies::Along, joins_air: true, joins_current: false, by_hand: None };
    /// Sheet metal all along the car.
    pub const SHEET: Self =
        Self { lies: Lies::AllOver, joins_air: false, joins_current: true, by_hand: None };
}
