//! Times a piece of work: often enough to be longer than the clock's grain, and several times over.

use std::time::{Duration, Instant};

use cpu_time::ThreadTime;

/// A sample lasts at least this long.
const SAMPLE: Duration = Duration::from_millis(20);

/// What is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Clock {
    /// Processor time of this thread.
    Thread,
    /// The clock on the wall.
    Wall,
}

/// Best and median, either of times (s) or of rates (1/s).
#[derive(Clone, Copy, Debug)]
pub(super) struct Measured {
    pub(super) best: f64,
    pub(super) median: f64,
}

impl Measured {
    /// A number that was taken once.
    pub(super) const fn once(value: f64) -> Self {
        Self { best: value, median: value }
    }

    /// Times as rates: how much of `amount` a second.
    pub(super) fn rate_of(self, amount: f64) -> Self {
        Self { best: amount / self.best, median: amount / self.median }
    }
}

/// Time of one `work`, s: best and median of `samples` samples. One more goes before, to warm up and to find
/// how many repetitions fill a sample.
pub(super) fn measure(clock: Clock, samples: usize, mut work: impl FnMut()) -> Measured {
    let mut timed = |times: u32| {
        let (thread, wall) = (ThreadTime::now(), Instant::now());
        for _ in 0..times {
            work();
        }
        match clock {
            Clock::Thread => thread.elapsed(),
            Clock::Wall => wall.elapsed(),
        }
    };
    let first = timed(1).max(Duration::from_nanos(1));
    let times = (SAMPLE.as_nanos() / first.as_nanos() + 1).min(100_000) as u32;
    let mut each: Vec<f64> =
        (0..samples.max(1)).map(|_| timed(times).as_secs_f64() / f64::from(times)).collect();
    each.sort_by(f64::total_cmp);
    Measured { best: each[0], median: each[each.len() / 2] }
}
