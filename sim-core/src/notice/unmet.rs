//! Which condition of a line of the record a reading did not meet, with the numbers a person in the workshop
//! could have counted himself. Nothing hidden is in it: no pressure, no fault, only what stood, ran, was held
//! or was set, and for how long.

use super::words::Word;
use super::{Gap, InGap, Telling, Told};
use crate::parts::instruments::MeterMode;

/// What a line of the record wants looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wanted {
    /// The barometer.
    Barometer,
    /// A multimeter across the battery.
    Battery,
    /// A gauge at the vacuum store.
    Store,
    /// The pump's run, by stopwatch.
    Run,
    /// The pump's rest, by stopwatch.
    Rest,
    /// Whether the held pedal moved.
    PedalMoved,
    /// How many applications were assisted.
    Applications,
    /// The drive in the yard.
    YardDrive,
}

impl Wanted {
    /// Key of every one, without `word-`.
    pub(super) const KEYS: &'static [&'static str] = &[
        "the-barometer",
        "a-multimeter-across-the-posts-of-the-battery",
        "a-gauge-at-the-vacuum-store",
        "the-stopwatch-over-a-run-of-the-pump",
        "the-stopwatch-over-a-rest-of-the-pump",
        "the-foot-whether-the-held-pedal-moved",
        "the-foot-how-many-applications-were-assisted",
        "the-drive-in-the-yard",
    ];
}

impl InGap for Wanted {
    fn gap(&self) -> Gap {
        let [barometer, battery, store, run, rest, moved, applications, yard] = Self::KEYS else {
            return Gap::Verbatim(String::new());
        };
        Gap::Word(match self {
            Self::Barometer => barometer,
            Self::Battery => battery,
            Self::Store => store,
            Self::Run => run,
            Self::Rest => rest,
            Self::PedalMoved => moved,
            Self::Applications => applications,
            Self::YardDrive => yard,
        })
    }
}

/// The first condition that was not met: what was asked for, and what it was. Times in whole seconds, forces
/// in N.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Unmet {
    /// The reading is of something else.
    OtherReading(Wanted),
    /// The key had to be on; it was off.
    KeyOff,
    /// The key had to be off; it was on.
    KeyOn,
    /// The engine had to stand; it ran.
    EngineRan,
    /// The foot held the pedal that nobody may touch.
    FootOnPedal {
        /// With this force, N.
        force_n: f64,
    },
    /// The prop held the pedal that nobody may touch.
    PropOnPedal {
        /// With this force, N.
        force_n: f64,
    },
    /// The multimeter was not set to volts.
    Meter(MeterMode),
    /// The watch stopped over nothing.
    NothingTimed,
    /// The watch was started this long after the pump had started or stopped.
    WatchLate {
        /// It was, s; `None` when the pump has done neither since the car came in.
        after_s: Option<u32>,
        /// Asked for, s.
        within_s: u32,
    },
    /// The pump did not start with the key, but by itself.
    StartedByItself {
        /// This long after the last thing was switched by hand, s.
        after_s: u32,
        /// Asked for, s.
        within_s: u32,
    },
    /// The store was not empty when the pump was switched on.
    StoreNotEmpty,
    /// The pump has neither started nor stopped since the car came in.
    NeverSwitched,
    /// The pump had to have stopped; it ran.
    PumpRan {
        /// For this long, s.
        for_s: u32,
    },
    /// The pump had to have started; it rested.
    PumpRested {
        /// For this long, s.
        for_s: u32,
    },
    /// The pump did not switch by itself, but with a hand.
    SwitchedByHand {
        /// This long after something was switched, s.
        after_s: u32,
        /// Asked for: longer than this, s.
        beyond_s: u32,
    },
    /// Hands switched something between the pump's switching and the reading.
    HandsSince {
        /// So long before the reading, s.
        before_s: u32,
    },
    /// The reading came too late after the pump had switched.
    Late {
        /// It was, s.
        after_s: u32,
        /// Asked for, s.
        within_s: u32,
    },
    /// The engine had to be started while the pedal was held; last it was stopped.
    EngineStoppedLast,
    /// The engine had to be stopped while the pedal was held; last it was started.
    EngineStartedLast,
    /// The watch was given up before the time that the line asks for.
    GivenUpEarly {
        /// Waited, s.
        after_s: u32,
        /// Asked for at least, s.
        least_s: u32,
    },
    /// The pedal was not held long enough after the engine had been stopped.
    HeldTooShort {
        /// It was, s.
        for_s: u32,
        /// Asked for, s.
        least_s: u32,
    },
    /// Some of the applications were made with the key on or the engine running.
    NotStanding,
    /// Something on the car was changed after the reading: a release check lapses.
    ChangedSince {
        /// So many changes.
        times: u32,
    },
}

/// The word for where a meter's dial stands.
fn setting(mode: MeterMode) -> Word {
    match mode {
        MeterMode::Off => Word::Off,
        MeterMode::Volt => Word::Volts,
        MeterMode::Ohm => Word::Ohms,
        MeterMode::Ampere => Word::Amperes,
    }
}

impl Unmet {
    /// Every key with the names of its gaps.
    pub const KEYS: &'static [(&'static str, &'static [&'static str])] = &[
        ("told-unmet-other", &["wanted"]),
        ("told-unmet-key-off", &[]),
        ("told-unmet-key-on", &[]),
        ("told-unmet-engine", &[]),
        ("told-unmet-foot", &["force"]),
        ("told-unmet-prop", &["force"]),
        ("told-unmet-meter", &["setting"]),
        ("told-unmet-nothing", &[]),
        ("told-unmet-watch-late", &["within", "was"]),
        ("told-unmet-watch-never", &["within"]),
        ("told-unmet-by-itself", &["within", "was"]),
        ("told-unmet-store", &[]),
        ("told-unmet-never", &[]),
        ("told-unmet-ran", &["was"]),
        ("told-unmet-rested", &["was"]),
        ("told-unmet-by-hand", &["beyond", "was"]),
        ("told-unmet-hands-since", &["before"]),
        ("told-unmet-late", &["within", "was"]),
        ("told-unmet-stopped-last", &[]),
        ("told-unmet-started-last", &[]),
        ("told-unmet-held", &["least", "was"]),
        ("told-unmet-given-up", &["least", "was"]),
        ("told-unmet-standing", &[]),
        ("told-unmet-changed", &["times"]),
    ];
}

impl Told for Unmet {
    fn telling(&self) -> Telling {
        let (key, gaps) = match self {
            Self::OtherReading(wanted) => ("told-unmet-other", vec![("wanted", wanted.gap())]),
            Self::KeyOff => ("told-unmet-key-off", vec![]),
            Self::KeyOn => ("told-unmet-key-on", vec![]),
            Self::EngineRan => ("told-unmet-engine", vec![]),
            Self::FootOnPedal { force_n } => ("told-unmet-foot", vec![("force", force_n.gap())]),
            Self::PropOnPedal { force_n } => ("told-unmet-prop", vec![("force", force_n.gap())]),
            Self::Meter(mode) => ("told-unmet-meter", vec![("setting", setting(*mode).gap())]),
            Self::NothingTimed => ("told-unmet-nothing", vec![]),
            Self::WatchLate { after_s: Some(after_s), within_s } => {
                ("told-unmet-watch-late", vec![("within", within_s.gap()), ("was", after_s.gap())])
            }
            Self::WatchLate { after_s: None, within_s } => {
                ("told-unmet-watch-never", vec![("within", within_s.gap())])
            }
            Self::StartedByItself { after_s, within_s } => {
                ("told-unmet-by-itself", vec![("within", within_s.gap()), ("was", after_s.gap())])
            }
            Self::StoreNotEmpty => ("told-unmet-store", vec![]),
            Self::NeverSwitched => ("told-unmet-never", vec![]),
            Self::PumpRan { for_s } => ("told-unmet-ran", vec![("was", for_s.gap())]),
            Self::PumpRested { for_s } => ("told-unmet-rested", vec![("was", for_s.gap())]),
            Self::SwitchedByHand { after_s, beyond_s } => {
                ("told-unmet-by-hand", vec![("beyond", beyond_s.gap()), ("was", after_s.gap())])
            }
            Self::HandsSince { before_s } => ("told-unmet-hands-since", vec![("before", before_s.gap())]),
            Self::Late { after_s, within_s } => {
                ("told-unmet-late", vec![("within", within_s.gap()), ("was", after_s.gap())])
            }
            Self::EngineStoppedLast => ("told-unmet-stopped-last", vec![]),
            Self::EngineStartedLast => ("told-unmet-started-last", vec![]),
            Self::HeldTooShort { for_s, least_s } => {
                ("told-unmet-held", vec![("least", least_s.gap()), ("was", for_s.gap())])
            }
            Self::GivenUpEarly { after_s, least_s } => {
                ("told-unmet-given-up", vec![("least", least_s.gap()), ("was", after_s.gap())])
            }
            Self::NotStanding => ("told-unmet-standing", vec![]),
            Self::ChangedSince { times } => ("told-unmet-changed", vec![("times", times.gap())]),
        };
        Telling { key, gaps }
    }
}
