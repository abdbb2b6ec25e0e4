//! Words as nobody would type them: lines of the grammar with wrong names and numbers, and noise.

use assess::attempt::Seed;
use assess::play::script;
use assess::play::{Begin, Session, SessionError};
use assess::words::{self, Said};
use sim_core::action::Action;

use super::run::Fate;
use crate::bench::chain::job;
use dice::Dice;

/// Lines in one attempt.
const LINES: usize = 80;

/// Waits longer than this are done once in a while only: they are not what is tested.
const LONG_S: u32 = 300;

/// First words and what may follow them: N a number, S a time, J a joint, P a port, T a part, U a unit, I an
/// instrument, C a cover, R a line of the record, W a spare; anything else as it stands.
const SHAPES: &[&str] = &[
    "card",
    "sheet",
    "chocks on",
    "chocks off",
    "key on",
    "key off",
    "engine idle",
    "engine stop",
    "engine cold",
    "engine cruise",
    "pedal press N",
    "pedal prop N",
    "pedal release",
    "pedal pump N N",
    "cover C off",
    "cover C on",
    "open J",
    "join J",
    "plug P",
    "clamp P",
    "free P",
    "pull U",
    "push U",
    "fit I P",
    "fit I red=P black=P",
    "fit I a=P b=P",
    "unfit I",
    "meter I volt",
    "meter volt",
    "meter ohm",
    "meter amp",
    "press I",
    "let I",
    "stroke I N",
    "stroke N",
    "swap U",
    "swap U with W",
    "clean U",
    "reform U",
    "read I",
    "listen T",
    "hum",
    "touch T",
    "feel pedal",
    "feel moved",
    "feel applications",
    "lamp I",
    "look brakes",
    "drive",
    "time run S",
    "time rest S",
    "wait S",
    "wait until pump stops S",
    "wait until lamp on S",
    "overnight",
    "note",
    "note N",
    "note N kPa",
    "note N N V",
    "note N s for R",
    "note shown for R",
    "suspect T U N",
    "finding U sure N",
    "finding none sure N",
    "finding U and U sure N%",
    "finding unknown",
    "help",
    "look",
    "look T",
    "car",
    "tools",
    "tools I",
    "store",
    "notebook",
    "list",
    "record",
];

const NUMBERS: &[&str] = &[
    "0",
    "1",
    "2",
    "7",
    "12",
    "60",
    "80",
    "0.4",
    "0.8",
    "0.95",
    "95",
    "200",
    "700",
    "701",
    "-58",
    "−58",
    "1e3",
    "1e400",
    "NaN",
    "inf",
    "-inf",
    "-0",
    "0x10",
    "4294967296",
    "99999999999999999999",
    "1,5",
    "1.2.3",
    "٣",
    "",
];

pub(super) fn line() -> impl FnMut(&mut Dice) -> Fate {
    let job = job();
    let start = move || Session::rehearse(std::sync::Arc::clone(&job), &Begin::rehearsal(Seed(0x5eed)));
    let mut session = start();
    let mut lines = 0;
    move |dice| {
        lines += 1;
        if LINES < lines || session.attempt().is_finished() {
            session = start();
            lines = 0;
        }
        let line = some_line(&session, dice);
        let names = script::vocabulary(&session);
        let said = match words::parse(&line, &names, &session.view().readings) {
            Ok(said) => said,
            Err(error) => {
                assert!(!error.to_string().is_empty());
                return Fate::Refused;
            }
        };
        let Some(action) = script::action_of(&session, &said) else {
            return if matches!(said, Said::Nothing) { Fate::Refused } else { Fate::Whole };
        };
        let is_long = match action {
            Action::Wait { s } | Action::Time { max_s: s, .. } | Action::WaitUntil { max_s: s, .. } => {
                LONG_S < s
            }
            Action::Overnight => true,
            _ => false,
        };
        if is_long && !dice.one_in(20) {
            return Fate::Whole;
        }
        // What was understood can be said, and means the same again.
        let again = words::parse(&words::say(&action), &names, &session.view().readings);
        if let (Ok(Said::Do(again)), Said::Do(once)) = (&again, &said) {
            assert_eq!(again, once, "{line:?}");
        }
        match session.act(&action) {
            Ok(outcome) if outcome.refused.is_none() => Fate::Whole,
            Ok(_) | Err(SessionError::Beyond(_)) => Fate::Refused,
            Err(error) => panic!("{line:?}: {error}"),
        }
    }
}

fn some_line(session: &Session, dice: &mut Dice) -> String {
    match dice.below(10) {
        0 => {
            let bytes: Vec<u8> = (0..dice.below(60)).map(|_| dice.bits() as u8).collect();
            String::from_utf8_lossy(&bytes).into_owned()
        }
        1 => (0..dice.below(40)).filter_map(|_| char::from_u32(dice.below(0x2_0000) as u32)).collect(),
        2 => dice.pick(SHAPES).repeat(1 + dice.below(300)),
        _ => {
            let shape = *dice.pick(SHAPES);
            let mut words: Vec<String> = shape.split(' ').map(|w| filled(session, w, dice)).collect();
            match dice.below(8) {
                0 => {
                    words.remove(dice.below(words.len()));
                }
                1 => words.reverse(),
                2 => {
                    let stray = *dice.pick(&["N", "U", "P", "\"", "'", "for", "sure", "#"]);
                    let word = filled(session, stray, dice);
                    words.insert(dice.below(words.len() + 1), word);
                }
                _ => {}
            }
            words.join(*dice.pick(&[" ", " ", " ", "  ", "\t", "\u{a0}"]))
        }
    }
}

/// A letter of a shape filled in; now and then with a name of the wrong kind.
fn filled(session: &Session, word: &str, dice: &mut Dice) -> String {
    let job = session.job();
    let car = &job.car;
    let kind =
        if dice.one_in(10) { *dice.pick(&["J", "P", "T", "U", "I", "C", "R", "W", "N"]) } else { word };
    let kind = if word.len() == 1 { kind } else { word };
    match kind {
        "N" => (*dice.pick(NUMBERS)).to_owned(),
        "S" => format!("{}{}", dice.pick(NUMBERS), dice.pick(&["", "s", " min", "h", "d"])),
        "J" => dice.pick(&car.assembly.joints).id.clone(),
        "P" | "red=P" | "black=P" | "a=P" | "b=P" => {
            let part = dice.pick(&car.assembly.parts);
            let ports = part.kind.ports();
            if ports.is_empty() {
                return part.id.clone();
            }
            let prefix = kind.strip_suffix('P').unwrap_or_default();
            format!("{prefix}{}.{}", part.id, dice.pick(ports).name)
        }
        "T" => dice.pick(&car.assembly.parts).id.clone(),
        "U" => dice.pick(&car.units).id.clone(),
        "I" => dice.pick(&job.kit).id.clone(),
        "C" => {
            car.covers.get(dice.below(car.covers.len())).map_or_else(|| "cover".to_owned(), |c| c.id.clone())
        }
        "R" => dice.pick(&car.record).id.clone(),
        "W" => dice.pick(&job.spares).id.clone(),
        other => other.to_owned(),
    }
}
