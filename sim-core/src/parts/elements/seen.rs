//! What a person sees of a part without any instrument: how its ports hang together, where it lies.

/// How a part lies in the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seen {
    /// Whether it runs from one place to another: its ends are where the parts are that it is joined to.
    pub is_line: bool,
    /// Whether air gets from one of its pneumatic ports to the others, both ways.
    pub joins_air: bool,
    /// Whether its electrical ports are one piece of metal.
    pub joins_current: bool,
}

impl Seen {
    /// A thing in one place that lets air through, if it has air.
    pub const PIECE: Self = Self { is_line: false, joins_air: true, joins_current: false };
    /// A thing in one place that lets air go one way, or draws it.
    pub const ONE_WAY: Self = Self { is_line: false, joins_air: false, joins_current: false };
    /// A hose or a wire.
    pub const LINE: Self = Self { is_line: true, joins_air: true, joins_current: false };
    /// Sheet metal all along the car.
    pub const SHEET: Self = Self { is_line: true, joins_air: false, joins_current: true };
}
