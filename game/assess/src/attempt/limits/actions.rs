//! Limits of actions: how long one can take, with which numbers it can be done, what may be asked for at all, and
//! whether there is room for one more.

use sim_core::action::{Action, PedalHold, Sense};
use sim_core::parts::engine::EngineState;
use sim_core::units::{TICKS_PER_SECOND, Tick};

use super::beyond::{Beyond, Bound, at_most, short, within};
use super::quantity::Quantity;
use super::{
    HOUR, KEPT_ACTIONS, KEPT_TIME, LONGEST_ATTEMPT, LONGEST_FREE, LONGEST_LIST, LONGEST_NAME, LONGEST_PAUSE,
    LONGEST_TEXT, MOST_ACTIONS,
};

/// How long an action can take at most, ticks: the time that is asked for or that a pack may set, and what walking
/// and standing about come to.
#[must_use]
pub fn longest(action: &Action) -> u64 {
    /// From any place to any other, twice over, and settling.
    const ABOUT_S: u64 = 300;
    let s = match action {
        Action::Wait { s } => u64::from(*s),
        // First until the pump starts or stops, then for the run or the rest.
        Action::Time { max_s, .. } => 2 * u64::from(*max_s),
        Action::WaitUntil { max_s, .. } => u64::from(*max_s),
        Action::Overnight => 12 * 3600,
        Action::PumpPedal { times, .. } => 5 * u64::from(*times),
        Action::Stroke { times, .. } => 2 * u64::from(*times),
        // What a pack may set at most.
        Action::Cover { .. } => 120 * 60,
        Action::Swap { .. } => 600 * 60,
        Action::Fit { .. } | Action::Unfit { .. } => 30 * 60,
        Action::Clean { .. } | Action::Reform { .. } => 20 * 60,
        Action::Sense(_) | Action::HandBack => 10 * 60,
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Read { .. }
        | Action::Note { .. }
        | Action::Suspect { .. }
        | Action::Finding { .. } => 0,
    };
    s.saturating_add(ABOUT_S).saturating_mul(TICKS_PER_SECOND)
}

/// An action that was done has numbers with which it could be done.
pub(super) fn done(action: &Action, readings: u32) -> Result<(), Beyond> {
    let whole = |what, n: u32, max: f64| within(what, f64::from(n), 1.0, max);
    match action {
        Action::Wait { s } => whole(Quantity::Wait, *s, 43_200.0),
        Action::Time { max_s, .. } | Action::WaitUntil { max_s, .. } => {
            whole(Quantity::LongestWait, *max_s, 7_200.0)
        }
        Action::Stroke { times, .. } => whole(Quantity::Strokes, *times, 200.0),
        Action::PumpPedal { times, force_n } => {
            whole(Quantity::Applications, *times, 30.0)?;
            within(Quantity::PedalForce, *force_n, 1.0, 700.0)
        }
        Action::Pedal(PedalHold::Foot { force_n }) => within(Quantity::PedalForce, *force_n, 1.0, 700.0),
        Action::Pedal(PedalHold::Prop { force_n }) => within(Quantity::PropForce, *force_n, 1.0, 500.0),
        Action::Note { reading, .. } => {
            if readings == 0 {
                return Beyond::err(Quantity::Noted, *reading, Bound::NothingRead);
            }
            whole(Quantity::Noted, *reading, f64::from(readings))
        }
        Action::Finding { certainty, .. } => within(Quantity::Certainty, *certainty, 0.0, 0.95),
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(PedalHold::Released)
        | Action::Cover { .. }
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::Fit { .. }
        | Action::Unfit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Swap { .. }
        | Action::Clean { .. }
        | Action::Reform { .. }
        | Action::Read { .. }
        | Action::Sense(_)
        | Action::Overnight
        | Action::Suspect { .. }
        | Action::HandBack => Ok(()),
    }
}

/// What may be asked for at all, done or refused: names and texts of a length that a person types.
///
/// # Errors
/// Which of its texts or lists is too long, or which number is none.
pub fn action(action: &Action) -> Result<(), Beyond> {
    let name = |text: &str| short(Quantity::Name, text, LONGEST_NAME);
    let number = |what, value: f64| {
        if value.is_finite() { Ok(()) } else { Beyond::err(what, value, Bound::Number) }
    };
    match action {
        Action::Suspect { text } => short(Quantity::Suspicion, text, LONGEST_TEXT),
        Action::Note { written, record, .. } => {
            if let Some(written) = written {
                number(Quantity::Written, written.value)?;
                name(&written.unit)?;
            }
            name(record.as_deref().unwrap_or_default())
        }
        Action::Finding { units, certainty } => {
            at_most(Quantity::Units, units.len() as u64, LONGEST_LIST as u64)?;
            number(Quantity::Certainty, *certainty)?;
            units.iter().try_for_each(|unit| name(unit))
        }
        Action::Fit { instrument, ends } => {
            name(instrument)?;
            at_most(Quantity::Ends, ends.len() as u64, LONGEST_LIST as u64)?;
            ends.iter().try_for_each(|(end, at)| name(end).and(name(at)))
        }
        Action::Pedal(PedalHold::Foot { force_n } | PedalHold::Prop { force_n })
        | Action::PumpPedal { force_n, .. } => number(Quantity::AnyPedalForce, *force_n),
        Action::Swap { unit, spare } => name(unit).and(name(spare)),
        Action::Cover { cover: one, .. }
        | Action::OpenJoint { joint: one }
        | Action::MakeJoint { joint: one }
        | Action::SetStop { port: one, .. }
        | Action::PullUnit { unit: one }
        | Action::PushUnit { unit: one }
        | Action::Clean { unit: one }
        | Action::Reform { unit: one }
        | Action::Unfit { instrument: one }
        | Action::SetMeter { instrument: one, .. }
        | Action::Press { instrument: one, .. }
        | Action::Stroke { instrument: one, .. }
        | Action::Read { instrument: one }
        | Action::Sense(
            Sense::Hiss { part: one } | Sense::Touch { part: one } | Sense::Lamp { instrument: one },
        ) => name(one),
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(PedalHold::Released)
        | Action::Sense(_)
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::HandBack => Ok(()),
    }
}

/// Whether one more action may be done at `now` after `actions` of them, the last of which ended at `end`: a little is
/// always kept for handing the car back.
///
/// # Errors
/// Which bound of an attempt has been reached.
pub fn room_for(action: &Action, actions: usize, now: Tick) -> Result<(), Beyond> {
    let ends = matches!(
        action,
        Action::HandBack
            | Action::Finding { .. }
            | Action::Note { .. }
            | Action::Key(false)
            | Action::Engine(EngineState::Stopped)
            | Action::Pedal(PedalHold::Released)
    );
    let (kept, time) = if ends { (0, 0) } else { (KEPT_ACTIONS, KEPT_TIME) };
    let (most, longest_end) = (MOST_ACTIONS - kept, LONGEST_ATTEMPT - time);
    let n = actions as u64 + 1;
    if u64::from(most) < n {
        return Beyond::err(Quantity::Actions, n, Bound::ThenHandBack(most.into()));
    }
    let end = now.0 + longest(action).min(12 * HOUR);
    if longest_end < end {
        let days = |ticks: u64| format!("{:.1}", ticks as f64 / (24 * HOUR) as f64);
        let bound = Bound::ThenHandBack(days(longest_end).into());
        return Beyond::err(Quantity::Days, days(end), bound);
    }
    Ok(())
}

/// Tick up to which the clock may run on by itself, when the last action ended at `end` and the clock had run on for
/// `free` ticks before.
#[must_use]
pub fn free_until(end: Tick, free: u64) -> Tick {
    // Free steps may end a little beyond what was asked for.
    const LONGEST_STEP: u64 = 8;
    let most = LONGEST_PAUSE.min(LONGEST_FREE.saturating_sub(free)).saturating_sub(LONGEST_STEP);
    Tick(end.0.saturating_add(most).min(LONGEST_ATTEMPT - KEPT_TIME))
}
