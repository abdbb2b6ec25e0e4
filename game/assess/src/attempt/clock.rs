//! The wall clock, as a label: when something was done and by which way it came in. Nothing is computed from it.
//!
//! The binary passes a clock in, so that tests can fix it. A clock that goes backwards (set by hand, by the network)
//! is written down as it goes; whoever reads the attempt is told.

use std::fmt;
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

/// The end of the year 9999, ms since 1970: no later time is written or read.
pub const LATEST_UNIX_MS: u64 = 253_402_300_799_999;

/// Tells the time of day.
#[derive(Clone)]
pub struct Clock(Arc<dyn Fn() -> u64 + Send + Sync>);

impl Clock {
    /// From anything that says how many milliseconds have gone by since 1970 (UTC).
    pub fn new(now_ms: impl Fn() -> u64 + Send + Sync + 'static) -> Self {
        Self(Arc::new(now_ms))
    }

    /// The machine's own.
    #[must_use]
    pub fn system() -> Self {
        Self::new(|| {
            let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
            u64::try_from(since.as_millis()).unwrap_or(LATEST_UNIX_MS)
        })
    }

    /// One that stands still: for rehearsals and tests.
    #[must_use]
    pub fn standing(unix_ms: u64) -> Self {
        Self::new(move || unix_ms)
    }

    /// Milliseconds since 1970 (UTC), at most [`LATEST_UNIX_MS`].
    #[must_use]
    pub fn now_ms(&self) -> u64 {
        (self.0)().min(LATEST_UNIX_MS)
    }
}

impl fmt::Debug for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Clock")
    }
}

/// By which way an action came in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum By {
    /// Typed at a terminal.
    Hand,
    /// Read from a script's file.
    Script,
    /// Words that another program or a file sent.
    Pipe,
    /// Asked for in the window.
    Window,
}

impl By {
    /// Whether a person did it there and then.
    #[must_use]
    pub fn is_person(self) -> bool {
        matches!(self, Self::Hand | Self::Window)
    }
}

/// Who opens an attempt, and with which clock.
#[derive(Clone, Debug)]
pub struct Opening {
    /// The way its actions come in.
    pub by: By,
    /// Labels them.
    pub clock: Clock,
}

impl Opening {
    /// With the machine's clock.
    #[must_use]
    pub fn now(by: By) -> Self {
        Self { by, clock: Clock::system() }
    }
}
