//! The mark sheet for people: in a terminal ([`terminal`]) and as one self-contained page ([`html`]).
//!
//! Both show the same numbers and the same sentences; neither computes any mark.

mod air;
pub mod curves;
pub mod html;
mod plan_path;
mod plots;
pub mod proof;
pub mod terminal;

use sim_core::notice::Gravity;

use crate::attempt::override_line::OverrideLine;
use crate::locale::Locale;
use crate::marks::sheet::{EvidenceSheet, Holds, Marks, NoteWorth, PlanLine, ReadingLine};
use crate::marks::when::utc;

/// A probability as it is read: whole percents, the ends named.
pub(crate) fn percent(p: f64) -> String {
    if p < 0.005 {
        "<1 %".to_owned()
    } else if 0.995 <= p {
        ">99 %".to_owned()
    } else {
        format!("{:.0} %", 100.0 * p)
    }
}

/// Bits with their sign; what rounds to nothing has none.
pub(crate) fn signed(bits: f64, words: &Locale) -> String {
    if 0.05 <= bits { format!("+{}", fixed(bits, 1, words)) } else { fixed(bits, 1, words) }
}

/// A count with its noun, by the noun's key: `1 note`, `7 notes`.
pub(crate) fn counted(n: usize, key: &str, words: &Locale) -> String {
    words.say_with(key, &[("n", n.into())])
}

/// The reference plan as sentences: what each test takes, and how probable it makes what is true.
#[must_use]
pub fn plan(marks: &Marks, words: &Locale) -> Vec<String> {
    let line = |line: &PlanLine| {
        let values = [
            ("test", line.test.as_str().into()),
            ("work", fixed(line.worked_min, 1, words).into()),
            ("wait", fixed(line.waited_min, 0, words).into()),
            ("p", percent(line.p_true).into()),
        ];
        let key = if line.waited_min < 0.5 { "paper-plan-line" } else { "paper-plan-line-wait" };
        words.say_with(key, &values)
    };
    marks.plan.iter().map(line).collect()
}

/// Whole minutes: `1 minute`, `42 minutes`.
pub(crate) fn minutes(min: f64, words: &Locale) -> String {
    counted(min.round().max(0.0) as usize, "paper-minutes", words)
}

/// A number with so many decimals; what rounds to nothing has no sign, and a minus is the one that is typed.
pub(crate) fn fixed(value: f64, decimals: usize, words: &Locale) -> String {
    words.number(value, decimals).replace('−', "-")
}

/// Points taken off, as a negative number; nothing is 0.
pub(crate) fn taken_off(points: f64, words: &Locale) -> String {
    fixed(-points.max(0.0), 0, words)
}

/// Units named in a row; none means that nothing is wrong.
pub(crate) fn units(names: &[String], words: &Locale) -> String {
    let and = format!(" {} ", words.say("word-and"));
    if names.is_empty() { words.say("told-sound") } else { names.join(&and) }
}

/// What was looked at, and what was plugged and clamped for it.
pub(crate) fn looked(line: &ReadingLine, words: &Locale) -> String {
    if line.with.is_empty() {
        return line.what.clone();
    }
    let and = format!(" {} ", words.say("word-and"));
    let values = [("what", line.what.as_str().into()), ("stops", line.with.join(&and).into())];
    words.say_with("look-with", &values)
}

/// What an override says: `75.0 of 100, competent`, or only one of the two.
#[must_use]
pub fn ruling(line: &OverrideLine, words: &Locale) -> String {
    let total = |total| words.say_with("override-of-100", &[("total", fixed(total, 1, words).into())]);
    let said = [line.total.map(total), line.competent.map(|competent| verdict(competent, words))];
    said.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// Competent, or not yet.
fn verdict(competent: bool, words: &Locale) -> String {
    words.say(if competent { "paper-competent" } else { "paper-not-yet" })
}

/// What holds, in a sentence that names who said so.
#[must_use]
pub fn holding(holds: &Holds, words: &Locale) -> String {
    let values = [
        ("total", fixed(holds.total, 1, words).into()),
        ("verdict", verdict(holds.competent, words).into()),
        ("by", holds.by.as_str().into()),
    ];
    words.say_with("override-holds", &values)
}

/// All overrides of a mark, each in a sentence, in the order of time; which of them holds is said of the last.
#[must_use]
pub fn overrides(lines: &[OverrideLine], words: &Locale) -> Vec<String> {
    let last = lines.len().saturating_sub(1);
    let said = |(i, line): (usize, &OverrideLine)| {
        let key = if i == last { "override-line-last" } else { "override-line" };
        let values = [
            ("t", utc(line.at_unix_ms).into()),
            ("by", line.by.as_str().into()),
            ("said", ruling(line, words).into()),
            ("reason", line.reason.as_str().into()),
        ];
        words.say_with(key, &values)
    };
    lines.iter().enumerate().map(said).collect()
}

/// How grave a breach was.
pub(crate) fn gravity(gravity: Gravity, words: &Locale) -> String {
    words.say(match gravity {
        Gravity::Minor => "paper-minor",
        Gravity::Major => "paper-major",
        Gravity::Critical => "paper-critical",
    })
}

/// Classes worth a line of their own: the true one and those that ever had `least`, likeliest at the end
/// first; at most `most`.
pub fn classes_to_show(evidence: &EvidenceSheet, least: f64, most: usize) -> Vec<usize> {
    let steps: Vec<&[f64]> = evidence.readings.iter().filter_map(classes_after).collect();
    let start: Vec<f64> = evidence.classes.iter().map(|class| class.start).collect();
    let last = steps.last().copied().unwrap_or(&start);
    let ever = |class: usize| steps.iter().map(|p| p[class]).fold(start[class], f64::max);
    let mut show: Vec<usize> = (0..start.len())
        .filter(|&class| least <= ever(class) || evidence.true_class == Some(class))
        .collect();
    // The true class always has a line; the others by what they ended with, then by their best.
    show.sort_by(|&a, &b| {
        let truth = |class: usize| evidence.true_class == Some(class);
        truth(b)
            .cmp(&truth(a))
            .then(last[b].total_cmp(&last[a]))
            .then(ever(b).total_cmp(&ever(a)))
            .then(a.cmp(&b))
    });
    show.truncate(most);
    show
}

/// Probabilities after a note, if it counts.
pub fn classes_after(line: &ReadingLine) -> Option<&[f64]> {
    match &line.worth {
        NoteWorth::Counts { classes, .. } => Some(classes),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{counted, fixed, minutes, signed, taken_off};
    use crate::locale::Locale;

    fn words(tag: &str) -> Locale {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        Locale::open(&root, &[tag.to_owned()]).unwrap()
    }

    #[test]
    fn one_of_a_thing_is_not_many() {
        let en = words("en");
        assert_eq!(counted(1, "paper-notes", &en), "1 note");
        assert_eq!(counted(0, "paper-notes", &en), "0 notes");
        assert_eq!(minutes(1.2, &en), "1 minute");
        assert_eq!(minutes(41.6, &en), "42 minutes");
        assert_eq!(minutes(41.6, &words("de")), "42 Minuten");
    }

    #[test]
    fn nothing_has_no_sign() {
        let en = words("en");
        assert_eq!(fixed(-0.0, 1, &en), "0.0");
        assert_eq!(fixed(-0.04, 1, &en), "0.0");
        assert_eq!(fixed(-0.06, 1, &en), "-0.1");
        assert_eq!(fixed(-0.06, 1, &words("de")), "-0,1");
        assert_eq!(fixed(-10.0, 0, &en), "-10");
        assert_eq!(fixed(0.004, 2, &en), "0.00");
        assert_eq!(taken_off(0.0, &en), "0");
        assert_eq!(taken_off(-0.0, &en), "0");
        assert_eq!(taken_off(15.0, &en), "-15");
        assert_eq!(signed(-0.01, &en), "0.0");
    }
}
