//! H: hints that were asked for. Each costs a little, whatever it was worth: who finds it alone has shown more.

use super::score;
use super::sheet::PartLine;
use crate::attempt::hint_line::{Advice, HintLine};
use crate::locale::{FluentValue, Speech, test_name};
use crate::pack::job::Job;

/// The line on the sheet; `None` when none was asked for.
pub(super) fn line(job: &Job, hints: &[HintLine], s: &Speech<'_>) -> Option<PartLine> {
    if hints.is_empty() {
        return None;
    }
    let said: Vec<String> = hints.iter().map(|hint| advised(job, &hint.advice, s)).collect();
    let values = [
        ("n", FluentValue::from(hints.len())),
        ("off", s.locale.number(score::HINT_POINTS, 0).into()),
        ("said", said.join("; ").into()),
    ];
    Some(PartLine {
        letter: "H".to_owned(),
        name: s.say("told-part-H"),
        value: 0.0,
        weight: 0.0,
        points: -score::hints(hints.len()),
        why: s.say_with("told-hints", &values),
        fine: String::new(),
    })
}

/// What was said, in words.
fn advised(job: &Job, advice: &Advice, s: &Speech<'_>) -> String {
    match advice {
        Advice::Test(id) => test_name(job, id, s.locale),
        Advice::Enough => s.say("told-hint-enough"),
        Advice::Nothing => s.say("told-hint-nothing"),
    }
}
