//! When and by which way an attempt was done: what its labels say, beside the mark. Nothing is marked by it.
//!
//! Wall time is counted sitting by sitting, from the opening of the file to the last action in it, so that a night
//! between two sittings is no work. What the file does not record is `None`, and is said to be so.

use std::time::{Duration, UNIX_EPOCH};

use crate::attempt::{Attempt, Repair, SCHEMA_1, SeedFrom};
use crate::locale::{FluentValue, Locale};

/// Labels of an attempt.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct When {
    /// When it was begun, ms since 1970 (UTC).
    pub begun_unix_ms: u64,
    /// When the last action was asked for, ms since 1970 (UTC).
    pub ended_unix_ms: Option<u64>,
    /// Wall clock that the sittings took, s; negative when the clock was set back in one.
    pub wall_s: Option<f64>,
    /// How often the file was opened to work in it. The first is among them, unless it is not recorded.
    pub sittings: Option<usize>,
    /// Actions.
    pub actions: usize,
    /// Those that came from a script or a pipe.
    pub played_actions: Option<usize>,
    /// Where the seed came from.
    pub seed_from: Option<SeedFrom>,
    /// By how much the clock went back at most from one label to the next, s.
    pub set_back_s: f64,
    /// When the file was mended, and what was dropped.
    pub repairs: Vec<Repair>,
}

impl When {
    /// What the labels of an attempt say.
    #[must_use]
    pub fn of(attempt: &Attempt) -> Self {
        let header = &attempt.header;
        // A file of the form before, carried on today, knows only its later sittings.
        let whole = header.schema != SCHEMA_1;
        let sittings = &attempt.sittings;
        let begun = sittings.first().filter(|_| whole).map(|s| s.at_unix_ms);
        let ends = sittings.iter().skip(1).map(|s| s.after as usize).chain([attempt.steps.len()]);
        let took = sittings.iter().zip(ends).map(|(sitting, end)| {
            let last = attempt.steps[..end.min(attempt.steps.len())]
                .get(sitting.after as usize..)
                .and_then(|steps| steps.last()?.at_unix_ms);
            seconds(sitting.at_unix_ms, last.unwrap_or(sitting.at_unix_ms))
        });
        Self {
            begun_unix_ms: begun.unwrap_or(header.created_unix_s.saturating_mul(1000)),
            ended_unix_ms: attempt.steps.last().and_then(|step| step.at_unix_ms),
            wall_s: whole.then(|| took.sum()),
            sittings: whole.then_some(sittings.len()),
            actions: attempt.steps.len(),
            played_actions: attempt.played_actions(),
            seed_from: header.seed_from,
            set_back_s: set_back(attempt),
            repairs: attempt.repairs.clone(),
        }
    }

    /// Whether anything in it was done by a script or a pipe.
    #[must_use]
    pub fn is_played(&self) -> bool {
        self.played_actions.is_some_and(|n| 0 < n)
    }

    /// In sentences, `work_min` of work and `wait_min` of waiting in the workshop beside them.
    #[must_use]
    pub fn sentences(&self, work_min: f64, wait_min: f64, words: &Locale) -> Vec<String> {
        let text = |text: String| FluentValue::from(text);
        let count = |n: usize| FluentValue::from(n.to_string());
        let begun = text(utc(self.begun_unix_ms));
        let mut said = vec![match self.ended_unix_ms {
            Some(ended) => words.say_with("told-when-begun", &[("t", begun), ("u", text(utc(ended)))]),
            None => words.say_with("told-when-begun-only", &[("t", begun)]),
        }];
        said.push(match (self.wall_s, self.sittings) {
            (Some(wall), Some(n)) => {
                let again = n.saturating_sub(1);
                let key = match again {
                    0 => "told-when-wall",
                    1 => "told-when-wall-once",
                    _ => "told-when-wall-often",
                };
                let values = [
                    ("n", text(words.number(work_min, 0))),
                    ("m", text(words.number(wait_min, 0))),
                    ("t", text(length(wall, words))),
                    ("k", count(again)),
                ];
                words.say_with(key, &values)
            }
            _ => words.say("told-when-unknown"),
        });
        said.push(match self.played_actions {
            Some(0) => words.say("told-when-hand"),
            Some(n) => words.say_with("told-when-played", &[("n", count(n)), ("m", count(self.actions))]),
            None => words.say("told-when-hand-unknown"),
        });
        said.push(words.say(match self.seed_from {
            Some(SeedFrom::Given) => "told-when-given",
            Some(SeedFrom::Drawn) => "told-when-drawn",
            None => "told-when-seed-unknown",
        }));
        if 1.0 <= self.set_back_s {
            let back = text(length(self.set_back_s, words));
            said.push(words.say_with("told-when-back", &[("t", back)]));
        }
        said.extend(self.repairs.iter().map(|r| {
            let values = [
                ("t", text(utc(r.at_unix_ms))),
                ("n", text(r.after.to_string())),
                ("m", text(r.dropped_lines.to_string())),
                ("k", text(r.dropped_bytes.to_string())),
            ];
            words.say_with("told-when-mended", &values)
        }));
        said
    }
}

fn seconds(from_ms: u64, to_ms: u64) -> f64 {
    (to_ms as f64 - from_ms as f64) / 1000.0
}

/// The longest step back from one label to the next, s.
fn set_back(attempt: &Attempt) -> f64 {
    let labels = in_order(attempt);
    labels.windows(2).map(|pair| seconds(pair[1], pair[0])).fold(0.0, f64::max)
}

/// Labels in the order of the file: action n, then the sittings after n actions.
fn in_order(attempt: &Attempt) -> Vec<u64> {
    let mut sittings = attempt.sittings.iter().peekable();
    let mut labels = Vec::new();
    let mut upto = |n: u32, labels: &mut Vec<u64>| {
        while let Some(sitting) = sittings.next_if(|s| s.after <= n) {
            labels.push(sitting.at_unix_ms);
        }
    };
    upto(0, &mut labels);
    for step in &attempt.steps {
        labels.extend(step.at_unix_ms);
        upto(step.n, &mut labels);
    }
    labels
}

/// A time of day, to the second.
#[must_use]
pub fn utc(unix_ms: u64) -> String {
    let at = UNIX_EPOCH + Duration::from_millis(unix_ms);
    humantime::format_rfc3339_seconds(at).to_string().replace('T', " ").replace('Z', " UTC")
}

/// A stretch of wall clock, as one would say it.
#[must_use]
pub fn length(s: f64, words: &Locale) -> String {
    let sign = if s < 0.0 { "−" } else { "" };
    let s = s.abs();
    let n = |value: f64, decimals| words.number(value, decimals);
    if s < 9.95 {
        format!("{sign}{} s", n(s, 1))
    } else if s < 120.0 {
        format!("{sign}{} s", n(s, 0))
    } else if s < 7200.0 {
        format!("{sign}{} min", n(s / 60.0, 0))
    } else {
        format!("{sign}{} h {} min", n((s / 3600.0).floor(), 0), n((s % 3600.0 / 60.0).floor(), 0))
    }
}
