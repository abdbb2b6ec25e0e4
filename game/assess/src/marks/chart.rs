//! The evidence chart of the mark sheet: how each note moved each class, and readings in words.

use sim_core::instrument::Measured;
use sim_core::observe::Observed;
use sim_core::parts::PartKind;

use super::Computed;
use super::sheet::{ClassLine, EvidenceSheet, NoteWorth, ReadingLine};
use super::truth::true_classes;
use crate::infer::hypotheses::Class;
use crate::locale::Speech;
use crate::marks::score;
use crate::play::course::{Looked, Worth};

/// The chart: how each note moved each class.
pub(super) fn evidence_sheet(c: &Computed<'_>, lock: usize, s: &Speech<'_>) -> EvidenceSheet {
    let start = c.followed.start.classes();
    let classes = (0..c.followed.hypotheses.classes.len())
        .map(|class| ClassLine {
            name: class_name(c.followed.hypotheses.classes[class], s),
            start: start[class],
        })
        .collect();
    let truth = true_classes(&c.followed.hypotheses, c.course);
    let mass = |p: &[f64]| truth.iter().map(|&class| p[class]).sum::<f64>();
    let mut before = mass(&start);
    let mut links = c.followed.links.iter().peekable();
    let mut readings = Vec::new();
    for (index, note) in c.course.notes.iter().enumerate() {
        let looked = &c.course.looked[note.looked];
        let worth = match (note.worth, links.peek()) {
            (Worth::Counts, Some(link)) if link.note == index => {
                let link = *link;
                links.next();
                let after_note = link.belief.classes();
                let after = mass(&after_note);
                let toward_truth = score::bits(before, after);
                before = after;
                NoteWorth::Counts {
                    for_finding: note.deed < lock,
                    classes: after_note,
                    entropy: link.entropy,
                    gain: link.gain,
                    toward_truth,
                }
            }
            (Worth::Repeat(of), _) => {
                NoteWorth::Repeat { of: c.course.looked[c.course.notes[of].looked].reading.id }
            }
            (Worth::Guessed, _) => NoteWorth::Guessed,
            (Worth::StruckOut, _) => NoteWorth::StruckOut,
            (Worth::Misread | Worth::Counts, _) => NoteWorth::Misread,
        };
        readings.push(ReadingLine {
            number: looked.reading.id,
            at_min: c.course.at_min(looked.deed),
            what: s.observed(&looked.reading.what),
            with: s.stops(&looked.stops),
            shown: shown(looked, s),
            value: number(looked),
            of_store: is_of_store(c, &looked.reading.what),
            before_lock: note.deed < lock,
            worth,
        });
    }
    EvidenceSheet {
        classes,
        true_class: match truth.as_slice() {
            [one] => Some(*one),
            _ => None,
        },
        start_entropy: c.followed.start.entropy(),
        readings,
        reference: c.reference.map(|r| (r.p_true, r.notes)),
    }
}

/// A class in words.
fn class_name(class: Class, s: &Speech<'_>) -> String {
    match class {
        Class::Inside => s.say("told-sound"),
        Class::Unit(unit) => s.units(&[unit]),
        Class::Other => s.say("told-other"),
        Class::Pair(a, b) => s.units(&[a, b]),
    }
}

/// What was shown, as a person would say it.
fn shown(looked: &Looked, s: &Speech<'_>) -> String {
    let number = number(looked);
    let number = number.as_ref().map(|(value, unit)| (*value, unit.as_str()));
    s.shown(&looked.reading.what, looked.reading.shown, &looked.scale, number)
}

/// The number shown, rounded to what its scale can tell, with its unit.
fn number(looked: &Looked) -> Option<(f64, String)> {
    looked.scale.written(looked.reading.shown).map(|written| (written.value, written.unit))
}

/// A gauge that stands in the store: at a port from which the air can reach the booster freely.
fn is_of_store(c: &Computed<'_>, what: &Observed) -> bool {
    let Observed::Instrument { instrument, at, .. } = what else { return false };
    let card = c.job.kit.iter().find(|card| card.id == *instrument);
    let gauge = card.is_some_and(|card| card.kind.nature().measured == Measured::Pointer);
    let in_store = |place: &str| {
        let part = place.split('.').next().unwrap_or_default();
        let kind = c.job.car.assembly.parts.iter().find(|p| p.id == part).map(|p| &p.kind);
        place.ends_with(".store")
            || matches!(kind, Some(PartKind::Booster(_) | PartKind::Tee(_) | PartKind::VacuumSwitch(_)))
    };
    gauge && at.iter().any(|(_, place)| in_store(place))
}
