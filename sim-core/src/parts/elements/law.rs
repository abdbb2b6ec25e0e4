//! What lies between two bodies of air: the law, with its numbers.

use super::quantity::Quantity;
use crate::flow::iso6358::Iso6358;
use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;
use crate::lanes::{Real, Spread};

/// What lies between two bodies of air; positive from a to b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law<R = f64> {
    /// ISO 6358 restriction.
    Iso(Iso6358<R>),
    /// Sharp-edged hole.
    Hole(Pinhole<R>),
    /// Gap at a hose end: one area with the engine still, a wider one while it shakes.
    Gap {
        /// With the engine still.
        still: Pinhole<R>,
        /// While it runs.
        shaking: Pinhole<R>,
    },
    /// Laminar seep, k in kg/(s·Pa²).
    Seep(R),
    /// Check valve, forward from a to b.
    Check(CheckLaw<R>),
    /// Control valve of the part's piston, from the air to the rear chamber.
    Admit {
        /// Fully open.
        open: Iso6358<R>,
    },
    /// Control valve of the part's piston, from the rear to the front chamber.
    Equalise {
        /// Fully open.
        open: Iso6358<R>,
    },
    /// Suction of a rotary pump at the part's speed.
    Suction {
        /// Swept volume per radian, m³/rad.
        swept: R,
    },
    /// Suction of a pump stroked by hand.
    Strokes {
        /// Volume of a stroke, m³.
        stroke: R,
        /// Pressure it can reach, share of the day's pressure.
        ultimate: R,
    },
    /// A small hole to the open air while a lever is held.
    Vent {
        /// The hole.
        hole: Pinhole<R>,
    },
}

impl<R> Law<R> {
    /// The state of its part that it depends on besides the air.
    #[must_use]
    pub fn state(&self) -> Option<Quantity> {
        match self {
            Self::Admit { .. } | Self::Equalise { .. } => Some(Quantity::Travel),
            Self::Suction { .. } => Some(Quantity::Speed),
            Self::Iso(_)
            | Self::Hole(_)
            | Self::Gap { .. }
            | Self::Seep(_)
            | Self::Check(_)
            | Self::Strokes { .. }
            | Self::Vent { .. } => None,
        }
    }

    /// Whether the piston of its part lifts it.
    #[must_use]
    pub fn is_lifted(&self) -> bool {
        self.state() == Some(Quantity::Travel)
    }

    /// Whether hands work it.
    #[must_use]
    pub fn is_in_hands(&self) -> bool {
        matches!(self, Self::Strokes { .. } | Self::Vent { .. })
    }
}

impl Law {
    /// Whether another law differs in numbers only.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Hole(a), Self::Hole(b)) => a.ideal == b.ideal,
            (one, other) => std::mem::discriminant(one) == std::mem::discriminant(other),
        }
    }
}

impl<R: Real> Spread for Law<R> {
    type One = Law;
    fn all_of(one: &Law) -> Self {
        match one {
            Law::Iso(x) => Self::Iso(Spread::all_of(x)),
            Law::Hole(x) => Self::Hole(Spread::all_of(x)),
            Law::Gap { still, shaking } => {
                Self::Gap { still: Spread::all_of(still), shaking: Spread::all_of(shaking) }
            }
            Law::Seep(k) => Self::Seep(R::all(*k)),
            Law::Check(x) => Self::Check(Spread::all_of(x)),
            Law::Admit { open } => Self::Admit { open: Spread::all_of(open) },
            Law::Equalise { open } => Self::Equalise { open: Spread::all_of(open) },
            Law::Suction { swept } => Self::Suction { swept: R::all(*swept) },
            Law::Strokes { stroke, ultimate } => {
                Self::Strokes { stroke: R::all(*stroke), ultimate: R::all(*ultimate) }
            }
            Law::Vent { hole } => Self::Vent { hole: Spread::all_of(hole) },
        }
    }

    fn put_in(&mut self, lane: usize, one: &Law) {
        // By the one alone, so that a law that is forgotten does not compile.
        match one {
            Law::Iso(x) => {
                if let Self::Iso(all) = self {
                    return all.put_in(lane, x);
                }
            }
            Law::Hole(x) => {
                if let Self::Hole(all) = self {
                    return all.put_in(lane, x);
                }
            }
            Law::Gap { still: a, shaking: b } => {
                if let Self::Gap { still, shaking } = self {
                    still.put_in(lane, a);
                    return shaking.put_in(lane, b);
                }
            }
            Law::Seep(k) => {
                if let Self::Seep(all) = self {
                    return all.put(lane, *k);
                }
            }
            Law::Check(x) => {
                if let Self::Check(all) = self {
                    return all.put_in(lane, x);
                }
            }
            Law::Admit { open: x } => {
                if let Self::Admit { open } = self {
                    return open.put_in(lane, x);
                }
            }
            Law::Equalise { open: x } => {
                if let Self::Equalise { open } = self {
                    return open.put_in(lane, x);
                }
            }
            Law::Suction { swept: x } => {
                if let Self::Suction { swept } = self {
                    return swept.put(lane, *x);
                }
            }
            Law::Strokes { stroke: a, ultimate: b } => {
                if let Self::Strokes { stroke, ultimate } = self {
                    stroke.put(lane, *a);
                    return ultimate.put(lane, *b);
                }
            }
            Law::Vent { hole: x } => {
                if let Self::Vent { hole } = self {
                    return hole.put_in(lane, x);
                }
            }
        }
        unreachable!("circuits of one shape have the same laws: {self:?}, {one:?}")
    }
}
