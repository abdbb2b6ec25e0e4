//! How many lanes there are, and in which registers.

use crate::lanes::{Eight, Four, Real as _};

/// How many lanes there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Width {
    /// One after the other.
    One,
    /// [`Four`].
    Four,
    /// [`Eight`].
    Eight,
}

impl Width {
    pub(super) const MOST: usize = Eight::LANES;

    pub(super) fn lanes(self) -> usize {
        match self {
            Self::One => f64::LANES,
            Self::Four => Four::LANES,
            Self::Eight => Eight::LANES,
        }
    }

    /// For so many circuits of one shape: as wide as they fill at least half.
    pub(super) fn fit_for(circuits: usize) -> Self {
        match circuits {
            0..=1 => Self::One,
            2..=4 => Self::Four,
            _ => Self::Eight,
        }
    }
}

/// In which registers the lanes stand. No bit depends on it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Registers {
    /// The widest that this machine has.
    #[default]
    Widest,
    /// Those that every machine of its kind has.
    Plain,
}
