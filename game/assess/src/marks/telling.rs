//! Which readings settled it: by what each made unlikely, what it left, what it raised.
//!
//! A reading's weight is how far it moved the belief, the sum of the squares of what each possibility rose or
//! fell by. Whoever rules out something that was held for likely moves it far; whoever halves twenty possibilities
//! that nobody believed moves it little, though both may be worth a bit to what was really wrong. The belief is
//! that of the evidence chart, so the sentences say what the chart shows.

use super::sheet::{EvidenceSheet, NoteWorth, ReadingLine};
use super::words;
use crate::locale::{FluentValue, Naming, Speech};

/// Readings told of.
const MOST: usize = 3;
/// Least weight that earns a sentence: one possibility moved by a tenth.
const LEAST: f64 = 0.01;
/// Below this a possibility is unlikely.
const UNLIKELY: f64 = 0.05;
/// Least rise that is told of.
const RISE: f64 = 0.08;
/// What is left holds at least this much together.
const LEFT: f64 = 0.90;
/// What is left is at most so many possibilities.
const LEFT_MOST: usize = 2;
/// Possibilities made unlikely that are named; the others are counted.
const NAMED: usize = 2;

/// What a reading did to a possibility.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    /// Index into the sheet's classes.
    pub class: usize,
    /// Probability before the note.
    pub before: f64,
    /// Probability after it.
    pub after: f64,
}

/// A reading that moved the belief.
#[derive(Clone, Debug, PartialEq)]
pub struct Telling<'s> {
    /// The reading.
    pub line: &'s ReadingLine,
    /// How far it moved the belief, 0 to 2.
    pub weight: f64,
    /// What it made unlikely, the likeliest before first.
    pub ruled_out: Vec<Move>,
    /// What it left as good as alone: one or two possibilities, and more before it.
    pub left: Vec<Move>,
    /// What rose most, when nothing is left alone.
    pub raised: Option<Move>,
}

/// The readings before the finding that settled it, in the order in which they were noted.
#[must_use]
pub fn telling(sheet: &EvidenceSheet) -> Vec<Telling<'_>> {
    let start: Vec<f64> = sheet.classes.iter().map(|class| class.start).collect();
    let mut before: &[f64] = &start;
    let mut all = Vec::new();
    for line in &sheet.readings {
        let NoteWorth::Counts { classes, for_finding, .. } = &line.worth else { continue };
        if *for_finding {
            all.push(told(line, before, classes));
        }
        before = classes;
    }
    let mut order: Vec<usize> = (0..all.len()).filter(|&i| LEAST <= all[i].weight).collect();
    order.sort_by(|&a, &b| all[b].weight.total_cmp(&all[a].weight).then(a.cmp(&b)));
    order.truncate(MOST);
    all.into_iter().enumerate().filter(|(i, _)| order.contains(i)).map(|(_, told)| told).collect()
}

fn told<'s>(line: &'s ReadingLine, before: &[f64], after: &[f64]) -> Telling<'s> {
    let moves: Vec<Move> = before
        .iter()
        .zip(after)
        .enumerate()
        .map(|(class, (&before, &after))| Move { class, before, after })
        .collect();
    let weight = moves.iter().map(|m| (m.after - m.before) * (m.after - m.before)).sum();
    let mut ruled_out: Vec<Move> = moves
        .iter()
        .filter(|m| UNLIKELY <= m.before && m.after < UNLIKELY && 2.0 * m.after <= m.before)
        .copied()
        .collect();
    ruled_out.sort_by(|a, b| b.before.total_cmp(&a.before).then(a.class.cmp(&b.class)));
    let was = alone(before).map_or(usize::MAX, |classes| classes.len());
    let left: Vec<Move> = alone(after)
        .filter(|classes| classes.len() < was)
        .map_or_else(Vec::new, |classes| classes.into_iter().map(|class| moves[class]).collect());
    let raised = moves
        .iter()
        .filter(|m| RISE <= m.after - m.before)
        .max_by(|a, b| (a.after - a.before).total_cmp(&(b.after - b.before)).then(b.class.cmp(&a.class)))
        .filter(|_| left.is_empty())
        .copied();
    Telling { line, weight, ruled_out, left, raised }
}

/// The one or two possibilities that hold nearly everything, likeliest first.
fn alone(p: &[f64]) -> Option<Vec<usize>> {
    let mut order: Vec<usize> = (0..p.len()).collect();
    order.sort_by(|&a, &b| p[b].total_cmp(&p[a]).then(a.cmp(&b)));
    (1..=LEFT_MOST.min(order.len()))
        .find(|&n| LEFT <= order[..n].iter().map(|&class| p[class]).sum::<f64>())
        .map(|n| order[..n].to_vec())
}

/// A sentence for each reading that settled something; what moved without a name of its own has none.
#[must_use]
pub fn sentences(sheet: &EvidenceSheet, s: &Speech<'_>) -> Vec<String> {
    telling(sheet).iter().filter_map(|told| sentence(sheet, told, s)).collect()
}

fn sentence(sheet: &EvidenceSheet, told: &Telling<'_>, s: &Speech<'_>) -> Option<String> {
    let raised: Vec<Move> = told.raised.into_iter().collect();
    let key = match (told.ruled_out.is_empty(), told.left.is_empty(), raised.is_empty()) {
        (false, false, _) => "told-settled-left",
        (false, true, false) => "told-settled-raised",
        (false, true, true) => "told-settled",
        (true, false, _) => "told-left",
        (true, true, false) => "told-raised",
        (true, true, true) => return None,
    };
    let values: [(&str, FluentValue<'_>); 5] = [
        ("n", told.line.number.into()),
        ("looked", looked(told.line, s).into()),
        ("ruled", moves(sheet, &told.ruled_out, s).into()),
        ("left", moves(sheet, &told.left, s).into()),
        ("raised", moves(sheet, &raised, s).into()),
    ];
    Some(s.say_with(key, &values))
}

/// What was looked at, how the car was set up for it, and what was shown.
pub(super) fn looked(line: &ReadingLine, s: &Speech<'_>) -> String {
    format!("{}, {}", s.with_stops(&line.what, &line.with), line.shown)
}

/// `“the vacuum switch” (41 % → 3 %) and “the hose” (20 % → 1 %)`; further ones only counted.
fn moves(sheet: &EvidenceSheet, moves: &[Move], s: &Speech<'_>) -> String {
    let named = if moves.len() <= NAMED + 1 { moves.len() } else { NAMED };
    let arrow = match s.naming {
        Naming::Typed => " → ",
        Naming::Called => "\u{a0}→\u{a0}",
    };
    let mut items: Vec<String> = moves[..named]
        .iter()
        .map(|m| {
            let name = sheet.classes.get(m.class).map_or("?", |class| class.name.as_str());
            let name = s.say_with("card-quote", &[("text", name.into())]);
            format!("{name} ({}{arrow}{})", words::whole(s, m.before), words::whole(s, m.after))
        })
        .collect();
    if named < moves.len() {
        items.push(s.say_with("mark-others", &[("n", (moves.len() - named).into())]));
    }
    s.row(&items)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::marks::sheet::ClassLine;

    /// A made-up table: what each note left of the possibilities, in percent.
    fn sheet(start: &[f64], rows: &[&[f64]]) -> EvidenceSheet {
        let names = ["vacuum switch", "hose B", "check valve", "pump", "tee", "other"];
        let share = |p: &f64| p / 100.0;
        EvidenceSheet {
            classes: start
                .iter()
                .zip(names)
                .map(|(p, name)| ClassLine { name: name.to_owned(), start: share(p) })
                .collect(),
            true_class: Some(1),
            start_entropy: 2.0,
            readings: rows
                .iter()
                .enumerate()
                .map(|(i, row)| ReadingLine {
                    number: i as u32 + 1,
                    at_min: i as f64,
                    what: "pump's rest by watch".to_owned(),
                    with: if i == 1 { vec!["a clamp at hose_m.a".to_owned()] } else { Vec::new() },
                    shown: format!("{} s", 50 + i),
                    value: None,
                    of_store: false,
                    before_lock: true,
                    worth: NoteWorth::Counts {
                        for_finding: true,
                        classes: row.iter().map(share).collect(),
                        entropy: 1.0,
                        gain: 0.0,
                        toward_truth: 0.0,
                    },
                })
                .collect(),
            reference: None,
        }
    }

    /// In English, at some job.
    fn said(sheet: &EvidenceSheet) -> Vec<String> {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let job = crate::pack::Library::open(&root).unwrap().job("first-shift/hum-at-the-lights").unwrap();
        sentences(sheet, &Speech::new(&crate::locale::Locale::built_in(), &job, Naming::Typed))
    }

    #[test]
    fn what_was_ruled_out_tells_more_than_bits_of_the_truth() {
        // Reading 1 doubles the truth (a bit) and moves nothing that was held for likely; the clamps settle it.
        let sheet = sheet(
            &[38.0, 6.0, 36.0, 7.0, 7.0, 6.0],
            &[
                &[40.0, 12.0, 38.0, 3.5, 3.5, 3.0],
                &[3.0, 30.0, 57.0, 4.0, 3.0, 3.0],
                &[2.0, 93.0, 2.0, 1.0, 1.0, 1.0],
            ],
        );
        let said = said(&sheet);
        assert_eq!(
            said,
            [
                "Reading 2 (pump's rest by watch with a clamp at hose_m.a, 51 s) made “vacuum switch” (40 % → 3 %) \
                 unlikely and “check valve” (38 % → 57 %) likelier.",
                "Reading 3 (pump's rest by watch, 52 s) made “check valve” (57 % → 2 %) unlikely and left only \
                 “hose B” (30 % → 93 %)."
            ]
        );
    }

    #[test]
    fn many_that_fall_are_counted_and_few_are_named() {
        let sheet = sheet(&[18.0, 20.0, 17.0, 16.0, 15.0, 14.0], &[&[1.0, 95.0, 1.0, 1.0, 1.0, 1.0]]);
        assert_eq!(
            said(&sheet),
            [
                "Reading 1 (pump's rest by watch, 50 s) made “vacuum switch” (18 % → 1 %), “check valve” (17 % → 1 %) \
              and 3 others unlikely and left only “hose B” (20 % → 95 %)."
            ]
        );
    }

    #[test]
    fn a_reading_that_moved_nothing_is_not_told_of() {
        let sheet = sheet(&[50.0, 50.0], &[&[52.0, 48.0], &[49.0, 51.0]]);
        assert!(said(&sheet).is_empty());
    }
}
