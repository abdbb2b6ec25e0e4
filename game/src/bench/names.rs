//! What the rows of the table are called: in English in the file for other programs, in the language shown for people.

use assess::locale::sentence::Sentence;
use assess::sentence;

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Case {
    Driving,
    PullDown,
    Hold,
    ManyCars,
    Hypotheses,
    Memory,
}

/// How it is done, or what it is beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum How {
    AsInUse,
    OneTick,
    Fine,
    OneByOne,
    InLanes,
    InPlainLanes,
    OnAllThreads,
    SideBySide,
    SideBySideOnOneThread,
    SideBySideOnAllThreads,
    WithBuffers,
    StateAlone,
}

/// Of what there is so much.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Quantity {
    ByProcessor,
    ByTheClock,
    RunsByProcessor,
    RunsByTheClock,
    Bytes,
}

impl Case {
    pub(super) fn sentence(self) -> Sentence {
        match self {
            Self::Driving => sentence!("speed-driving", "driving"),
            Self::PullDown => sentence!("speed-pull-down", "pull-down"),
            Self::Hold => sentence!("speed-hold", "overnight hold"),
            Self::ManyCars => sentence!("speed-many-cars", "{n} cars driving", n = super::CARS),
            Self::Hypotheses => sentence!("speed-hypotheses", "hypothesis runs"),
            Self::Memory => sentence!("speed-memory", "memory"),
        }
    }
}

impl How {
    pub(super) fn sentence(self) -> Sentence {
        match self {
            Self::AsInUse => sentence!("speed-as-in-use", "steps as in use"),
            Self::OneTick => sentence!("speed-one-tick", "steps of one tick"),
            Self::Fine => sentence!("speed-fine", "a hundredth of the error"),
            Self::OneByOne => sentence!("speed-one-by-one", "one after the other"),
            Self::InLanes => sentence!("speed-in-lanes", "side by side in lanes"),
            Self::InPlainLanes => {
                sentence!("speed-in-plain-lanes", "side by side in lanes of plain registers")
            }
            Self::OnAllThreads => sentence!("speed-on-all-threads", "on all threads"),
            Self::SideBySide => sentence!("speed-side-by-side", "side by side"),
            Self::SideBySideOnOneThread => sentence!("speed-side-on-one", "side by side on one thread"),
            Self::SideBySideOnAllThreads => sentence!("speed-side-on-all", "side by side on all threads"),
            Self::WithBuffers => sentence!("speed-with-buffers", "a circuit with its buffers"),
            Self::StateAlone => sentence!("speed-state-alone", "its state variables alone"),
        }
    }
}

impl Quantity {
    pub(super) fn sentence(self) -> Sentence {
        match self {
            Self::ByProcessor => sentence!("speed-by-processor", "simulated s per processor s"),
            Self::ByTheClock => sentence!("speed-by-the-clock", "simulated s per s by the clock"),
            Self::RunsByProcessor => sentence!("speed-runs-by-processor", "runs per processor s"),
            Self::RunsByTheClock => sentence!("speed-runs-by-the-clock", "runs per s by the clock"),
            Self::Bytes => sentence!("speed-bytes", "bytes"),
        }
    }
}
