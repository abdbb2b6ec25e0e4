//! Attempts with flipped bits, cut short, or altered and chained anew.

use assess::attempt::clock::Clock;
use assess::attempt::{Attempt, mend};
use assess::play;
use serde_json::{Map, Value, json};

use super::run::Fate;
use crate::bench::chain::{chained, job, made, values};
use dice::Dice;

/// A file to alter, in a folder of its own.
struct Bench {
    home: tempfile::TempDir,
    bytes: Vec<u8>,
    attempt: Attempt,
}

impl Bench {
    fn new() -> Self {
        let home = tempfile::tempdir().unwrap();
        let (path, attempt) = made(home.path());
        Self { bytes: std::fs::read(path).unwrap(), attempt, home }
    }

    fn read(&self, bytes: &[u8]) -> Option<Attempt> {
        let path = self.home.path().join("case.attempt");
        std::fs::write(&path, bytes).unwrap();
        match Attempt::read(&path) {
            Ok(attempt) => Some(attempt),
            Err(error) => {
                let text = error.to_string();
                assert!(text.contains("case.attempt") && text.lines().count() <= 3, "{text}");
                assert!(text.len() < 2_000, "{} bytes of message", text.len());
                None
            }
        }
    }

    /// What mending makes of a damaged file is whole as far as it goes.
    fn mended(&self) {
        let path = self.home.path().join("case.attempt");
        if let Ok(Some(mended)) = mend::mend(&path, &Clock::standing(1)) {
            let read = Attempt::read(&path).unwrap();
            assert_eq!(read.steps.len(), mended.actions);
            std::fs::remove_file(mended.original).unwrap();
        }
    }
}

pub(super) fn flipped() -> impl FnMut(&mut Dice) -> Fate {
    let bench = Bench::new();
    move |dice| {
        let mut bytes = bench.bytes.clone();
        for _ in 0..=dice.below(3) {
            let at = dice.below(bytes.len());
            bytes[at] ^= 1 << dice.below(8);
        }
        match bench.read(&bytes) {
            // Only a flipped end of the last line goes unseen: it is a torn line.
            Some(read) => {
                assert_eq!(read.steps[..], bench.attempt.steps[..read.steps.len()]);
                Fate::Whole
            }
            None => {
                if dice.one_in(4) {
                    bench.mended();
                    let read = Attempt::read(&bench.home.path().join("case.attempt"));
                    assert!(read.is_err() || read.unwrap().steps.len() <= bench.attempt.steps.len());
                }
                Fate::Refused
            }
        }
    }
}

pub(super) fn cut() -> impl FnMut(&mut Dice) -> Fate {
    let bench = Bench::new();
    move |dice| {
        let at = dice.below(bench.bytes.len());
        let mut bytes = bench.bytes[..at].to_vec();
        // A disk that failed may leave zeros or old text behind.
        match dice.below(4) {
            0 => bytes.resize(at + dice.below(4096), 0),
            1 => bytes.extend((0..dice.below(300)).map(|_| dice.bits() as u8)),
            _ => {}
        }
        match bench.read(&bytes) {
            Some(read) => {
                assert_eq!(read.steps[..], bench.attempt.steps[..read.steps.len()]);
                Fate::Whole
            }
            None => {
                bench.mended();
                Fate::Refused
            }
        }
    }
}

pub(super) fn rechained() -> impl FnMut(&mut Dice) -> Fate {
    let bench = Bench::new();
    let job = job();
    let good = values(&bench.bytes);
    move |dice| {
        let mut lines = good.clone();
        for _ in 0..=dice.below(2) {
            alter(&mut lines, dice);
        }
        let mut bodies: Vec<String> = lines.iter().map(Value::to_string).collect();
        if dice.one_in(8) {
            twice(&mut bodies, dice);
        }
        let Some(read) = bench.read(&chained(&bodies)) else { return Fate::Refused };
        match play::replay(&read, &job) {
            Ok(_) => Fate::Whole,
            Err(error) => {
                let text = error.to_string();
                assert!(text.len() < 20_000, "{} bytes of message", text.len());
                Fate::Refused
            }
        }
    }
}

/// Alters lines: one value, one key, one line.
fn alter(lines: &mut Vec<Value>, dice: &mut Dice) {
    let at = dice.below(lines.len());
    if dice.one_in(6) {
        // A label: nothing is computed from it.
        for place in ["/at_unix_ms", "/sitting/at_unix_ms"] {
            if let Some(ms) = lines[at].pointer_mut(place) {
                *ms = json!(dice.bits() % 300_000_000_000_000);
            }
        }
        return;
    }
    match dice.below(12) {
        0 => {
            lines.remove(at);
            if lines.is_empty() {
                lines.push(json!({}));
            }
        }
        1 => {
            let copy = lines[at].clone();
            let to = dice.below(lines.len() + 1);
            lines.insert(to, copy);
        }
        2 => {
            let other = dice.below(lines.len());
            lines.swap(at, other);
        }
        _ => {
            let mut places = Vec::new();
            collect(&lines[at], String::new(), &mut places);
            let place = dice.pick(&places).clone();
            if let Some(value) = lines[at].pointer_mut(&place) {
                alter_value(value, dice);
            }
        }
    }
}

fn collect(value: &Value, at: String, places: &mut Vec<String>) {
    match value {
        Value::Object(fields) => {
            for (key, value) in fields {
                collect(value, format!("{at}/{key}"), places);
            }
        }
        Value::Array(items) => {
            for (i, value) in items.iter().enumerate() {
                collect(value, format!("{at}/{i}"), places);
            }
        }
        _ => {}
    }
    places.push(at);
}

fn alter_value(value: &mut Value, dice: &mut Dice) {
    if dice.one_in(12) {
        *value = any(dice);
        return;
    }
    match value {
        Value::Object(fields) => alter_object(fields, dice),
        Value::Array(items) => match dice.below(3) {
            0 => items.clear(),
            1 => {
                let copies = 1 + dice.below(2000);
                let item = items.first().cloned().unwrap_or(Value::Null);
                items.extend(std::iter::repeat_n(item, copies));
            }
            _ => items.reverse(),
        },
        Value::Number(n) => *value = number(n.as_f64().unwrap_or(0.0), dice),
        Value::String(text) => match dice.below(5) {
            0 => text.clear(),
            1 => *text = "x".repeat(1 + dice.below(5_000)),
            2 => text.push('\u{7}'),
            3 => {
                *text =
                    dice.pick(&["pump", "hose_m", "window", "pinhole-attempt/1", "\u{202e}", "0"]).to_string()
            }
            _ => *text = text.chars().rev().collect(),
        },
        Value::Bool(on) => *on = !*on,
        Value::Null => *value = any(dice),
    }
}

fn alter_object(fields: &mut Map<String, Value>, dice: &mut Dice) {
    let keys: Vec<String> = fields.keys().cloned().collect();
    match dice.below(3) {
        0 if !keys.is_empty() => {
            fields.remove(dice.pick(&keys));
        }
        1 => {
            fields.insert("colour".to_owned(), any(dice));
        }
        _ if !keys.is_empty() => {
            let from = fields.remove(dice.pick(&keys)).unwrap_or(Value::Null);
            fields.insert(dice.pick(&keys).clone(), from);
        }
        _ => {}
    }
}

fn number(n: f64, dice: &mut Dice) -> Value {
    match dice.below(10) {
        0 => json!(0),
        1 => json!(-1),
        2 => json!(u64::MAX),
        3 => json!(i64::MIN),
        4 => json!(1e15),
        5 => json!(1_000_000_000_000_000_u64),
        6 => json!(1e308),
        7 => json!(n + 1.0),
        8 => json!((n.abs() as u64).wrapping_add(1 + dice.below(100_000) as u64)),
        _ => json!(dice.bits()),
    }
}

fn any(dice: &mut Dice) -> Value {
    match dice.below(7) {
        0 => Value::Null,
        1 => json!(true),
        2 => json!([]),
        3 => json!({}),
        4 => json!("overnight"),
        5 => json!({"wait": {"s": 43_200}}),
        _ => number(1.0, dice),
    }
}

/// A key twice in one line.
fn twice(bodies: &mut [String], dice: &mut Dice) {
    let at = dice.below(bodies.len());
    let body = &bodies[at];
    if let Some((key, _)) = body.strip_prefix('{').and_then(|b| b.split_once(':')) {
        bodies[at] = format!("{{{key}:{},{}", dice.below(9), &body[1..]);
    }
}
