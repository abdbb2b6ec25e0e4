//! What things cost in time, and how time passes while they are done.
//!
//! Work: its time passes first, then the state changes. Lasting states: the change comes at once, then a
//! second passes. Walking between two stations takes 20 s. Waits of more than two minutes count as
//! unattended: the trainee can do something else meanwhile. All times are common practice, no source.

use super::Workshop;
use super::exchange::Beside;
use super::state::Doing;
use crate::action::Station;
use crate::circuit::Pace;
use crate::units::{TICKS_PER_SECOND, Tick};

/// Ticks in `s` whole seconds.
pub(super) const fn s(s: u64) -> u64 {
    s * TICKS_PER_SECOND
}

/// Walking from one station to another.
pub(super) const WALK: u64 = s(20);
/// Reading the job card or the data sheet.
pub(super) const READ_PAPER: u64 = s(60);
/// Reaction of the car to a lasting state.
pub(super) const SETTLE: u64 = s(1);
/// Setting or taking away the wheel chocks.
pub(super) const CHOCKS: u64 = s(20);
/// Round to the tail of the car and back, with the hose of the exhaust extraction.
pub(super) const EXTRACTION: u64 = s(40);
/// Setting the pedal prop.
pub(super) const PROP: u64 = s(20);
/// Pedal down in an application.
pub(super) const PEDAL_DOWN: u64 = s(1);
/// Pedal up after an application.
pub(super) const PEDAL_UP: u64 = 150;
/// Pulling a hose off or pushing it on.
pub(super) const HOSE_JOINT: u64 = s(30);
/// Unplugging or plugging a connector, a terminal.
pub(super) const WIRE_JOINT: u64 = s(20);
/// Time a joint stands open while a tee-piece is put in, or while a unit is changed.
pub(super) const STANDS_OPEN: u64 = s(10);
/// Putting in or taking out a rubber plug or a clamp.
pub(super) const STOP: u64 = s(10);
/// Pulling a relay or fuse, or pushing it in.
pub(super) const PLUG_IN_UNIT: u64 = s(15);
/// Turning a meter's dial, pressing or letting go a button.
pub(super) const SWITCH_INSTRUMENT: u64 = s(2);
/// One stroke of a hand pump.
pub(super) const STROKE: u64 = s(1);
/// Cleaning contacts, an earth point, a seat.
pub(super) const CLEAN: u64 = s(10 * 60);
/// Re-forming a hose with hot air and letting it cool.
pub(super) const REFORM: u64 = s(20 * 60);
/// Reading an instrument.
pub(super) const READ: u64 = s(2);
/// Writing into the notebook.
pub(super) const NOTE: u64 = s(5);
/// Thinking over a finding and writing it down.
pub(super) const FINDING: u64 = s(30);
/// Handing the car back.
pub(super) const HAND_BACK: u64 = s(120);
/// Waits longer than this count as unattended.
pub(super) const LONG_WAIT: u64 = s(120);
/// Overnight.
pub(super) const NIGHT: u64 = s(12 * 3600);

/// Ticks in `min` minutes, at least one second.
pub(super) fn minutes(min: f64) -> u64 {
    Tick::from_s(min * 60.0).0.max(s(1))
}

impl Workshop {
    /// Lets `ticks` pass, or in replay whatever is left until the recorded end.
    pub(super) async fn pass(&mut self, doing: &Doing<'_>, ticks: u64) {
        let to = self.circuit.tick().0 + ticks;
        let to = doing.cut.map_or(to, |cut| to.min(cut));
        self.run_timed(doing, to).await;
    }

    /// Runs the circuit to exactly `to` (circuit tick) at the pace of a stated stretch of time.
    pub(super) async fn run_timed(&mut self, doing: &Doing<'_>, to: u64) {
        while self.circuit.tick().0 < to {
            self.run_on(doing.beside, to, Pace::Timed, false).await;
        }
    }

    /// Takes steps, at least one, towards `limit`; with `on_event` none after one in which something switched.
    pub(super) async fn run_on(&mut self, beside: Beside<'_>, limit: u64, pace: Pace, on_event: bool) {
        let Some(exchange) = beside.filter(|_| self.recorder.is_none() && self.watch.is_none()) else {
            self.step(limit, pace);
            return;
        };
        let pause = Tick(limit.min(self.next_minute + self.offset));
        self.circuit.run_abroad(exchange, Tick(limit), pace, pause, on_event).await;
        self.note_minute();
    }

    /// Takes the steps of a wait until `limit` as long as they do not go beyond `cut`.
    pub(super) fn steps_that_fit(&mut self, limit: u64, cut: u64) {
        while self.circuit.tick().0 < cut.min(limit) {
            let mut ahead = self.circuit.clone();
            ahead.step(Tick(limit), Pace::Timed);
            if cut < ahead.tick().0 {
                return;
            }
            self.step(limit, Pace::Timed);
        }
    }

    /// One step of the circuit; notes the minute's digest.
    pub(super) fn step(&mut self, limit: u64, pace: Pace) {
        self.look();
        let limit = self.recorder.as_ref().map_or(limit, |r| limit.min(r.next));
        self.circuit.step(Tick(limit), pace);
        self.record();
        self.note_minute();
    }

    /// Takes the minute's digest when it is due.
    fn note_minute(&mut self) {
        let now = self.circuit.tick().0 - self.offset;
        if self.next_minute <= now {
            self.minute_digests.push((Tick(now), self.digest()));
            self.next_minute = (now / s(60) + 1) * s(60);
        }
    }

    /// Walks to `station`.
    pub(super) async fn walk(&mut self, doing: &Doing<'_>, station: Station) {
        if self.state.station != station {
            self.state.station = station;
            self.pass(doing, WALK).await;
        }
    }
}
