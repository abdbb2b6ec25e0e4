//! What the panels and the room ask for. They change nothing themselves.

use std::path::PathBuf;

use sim_core::action::Action;

/// How fast time runs in the workshop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pace {
    /// Time stands; only what one does takes time.
    #[default]
    Hold,
    /// As on the wall clock.
    Live,
    /// Ten times as fast.
    Ten,
    /// Sixty times as fast: a minute a second.
    Sixty,
}

impl Pace {
    /// Every pace, slowest first.
    pub const ALL: [Self; 4] = [Self::Hold, Self::Live, Self::Ten, Self::Sixty];

    /// Seconds in the workshop for a second on the wall clock.
    #[must_use]
    pub fn factor(self) -> u32 {
        match self {
            Self::Hold => 0,
            Self::Live => 1,
            Self::Ten => 10,
            Self::Sixty => 60,
        }
    }
}

/// Something asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask {
    /// Do this in the workshop.
    Do(Action),
    /// Do these one after the other; stop at the first that is refused.
    DoAll(Vec<Action>),
    /// Let time run at this pace.
    Pace(Pace),
    /// Look away from what was read: its instrument and time go on.
    LetGo,
    /// Begin this job (`pack/job`).
    Begin(String),
    /// Carry this attempt on.
    CarryOn(PathBuf),
    /// Work out which test would tell most now.
    Hint,
    /// Leave the job and go back to the front desk.
    Leave,
}
