//! Which condition of a line of the record a reading did not meet, with the numbers a person in the workshop
//! could have counted himself. Nothing hidden is in it: no pressure, no fault, only what stood, ran, was held
//! or was set, and for how long.

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

impl std::fmt::Display for Wanted {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Barometer => "the barometer",
            Self::Battery => "a multimeter across the posts of the battery",
            Self::Store => "a gauge at the vacuum store",
            Self::Run => "the stopwatch over a run of the pump",
            Self::Rest => "the stopwatch over a rest of the pump",
            Self::PedalMoved => "the foot: whether the held pedal moved",
            Self::Applications => "the foot: how many applications were assisted",
            Self::YardDrive => "the drive in the yard",
        })
    }
}

/// The first condition that was not met: what was asked for, and what it was. Times in whole seconds, forces
/// in N.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
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

impl std::fmt::Display for Unmet {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match *self {
            Self::OtherReading(wanted) => write!(f, "the reading must come from {wanted}"),
            Self::KeyOff => f.write_str("the key must be on; it was off"),
            Self::KeyOn => f.write_str("the key must be off; it was on"),
            Self::EngineRan => f.write_str("the engine must stand; it ran"),
            Self::FootOnPedal { force_n } => {
                write!(f, "nobody may touch the pedal; the foot held it with {force_n} N")
            }
            Self::PropOnPedal { force_n } => {
                write!(f, "nobody may touch the pedal; the prop held it with {force_n} N")
            }
            Self::Meter(mode) => {
                let set = match mode {
                    MeterMode::Off => "off",
                    MeterMode::Volt => "volts",
                    MeterMode::Ohm => "ohms",
                    MeterMode::Ampere => "amperes",
                };
                write!(f, "the multimeter must be set to volts; it stood at {set}")
            }
            Self::NothingTimed => f.write_str("the watch must run over a run or a rest; nothing was timed"),
            Self::WatchLate { after_s: Some(after_s), within_s } => write!(
                f,
                "the watch must be started within {within_s} s of the pump's own start or stop; it was {after_s} s"
            ),
            Self::WatchLate { after_s: None, within_s } => write!(
                f,
                "the watch must be started within {within_s} s of the pump's own start or stop; there was none \
                 since the car came in"
            ),
            Self::StartedByItself { after_s, within_s } => write!(
                f,
                "the pump must start with the key, within {within_s} s of it; it was {after_s} s after the last \
                 thing was switched"
            ),
            Self::StoreNotEmpty => f.write_str(
                "the store must be empty when the pump is switched on; it was not: with the key off, pump the \
                 pedal until it is hard",
            ),
            Self::NeverSwitched => {
                f.write_str("the pump must just have switched; it has not since the car came in")
            }
            Self::PumpRan { for_s } => {
                write!(f, "the pump must just have stopped; it had been running for {for_s} s")
            }
            Self::PumpRested { for_s } => {
                write!(f, "the pump must just have started; it had been resting for {for_s} s")
            }
            Self::SwitchedByHand { after_s, beyond_s } => write!(
                f,
                "the pump must switch by itself, more than {beyond_s} s after hands switched anything; it was \
                 {after_s} s"
            ),
            Self::HandsSince { before_s } => write!(
                f,
                "between the pump's switching and the reading hands may switch nothing; something was switched \
                 {before_s} s before it"
            ),
            Self::Late { after_s, within_s } => {
                write!(f, "within {within_s} s of the pump's switching; it was {after_s} s")
            }
            Self::EngineStoppedLast => f.write_str(
                "the engine must be started while the pedal is held; what was done last was to stop it",
            ),
            Self::EngineStartedLast => f.write_str(
                "the engine must be stopped while the pedal is held; what was done last was to start it",
            ),
            Self::HeldTooShort { for_s, least_s } => write!(
                f,
                "the pedal must be held for {least_s} s after the engine was stopped; it was {for_s} s"
            ),
            Self::NotStanding => f.write_str(
                "key and engine must be off for every application; they were not for all that were counted",
            ),
            Self::ChangedSince { times } => write!(
                f,
                "nothing on the car may be changed after the check; changed since: {times}"
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reason_says_what_was_asked_and_what_it_was() {
        let said = |unmet: Unmet| unmet.to_string();
        assert_eq!(
            said(Unmet::Late { after_s: 37, within_s: 5 }),
            "within 5 s of the pump's switching; it was 37 s"
        );
        assert_eq!(said(Unmet::KeyOff), "the key must be on; it was off");
        assert_eq!(
            said(Unmet::OtherReading(Wanted::Store)),
            "the reading must come from a gauge at the vacuum store"
        );
    }
}
