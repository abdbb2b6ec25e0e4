//! The evidence chart of the mark sheet: how each note moved each class, and readings in words.

use sim_core::assembly::Stop;
use sim_core::instrument::InstrumentKind;
use sim_core::observe::{Observed, Scale, ShownValue};
use sim_core::parts::PartKind;

use super::Computed;
use super::sheet::{ClassLine, EvidenceSheet, NoteWorth, ReadingLine};
use super::truth::true_classes;
use crate::course::{Looked, Worth, describe};
use crate::score;

/// The chart: how each note moved each class.
pub(super) fn evidence_sheet(c: &Computed<'_>, lock: usize) -> EvidenceSheet {
    let start = c.followed.start.classes();
    let classes = (0..c.hypotheses.classes.len())
        .map(|class| ClassLine { name: c.hypotheses.class_name(&c.job.car, class), start: start[class] })
        .collect();
    let truth = true_classes(c.hypotheses, c.course);
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
                    dropped: link.dropped,
                    toward_truth,
                }
            }
            (Worth::Repeat(of), _) => {
                NoteWorth::Repeat { of: c.course.looked[c.course.notes[of].looked].reading.id }
            }
            _ => NoteWorth::Misread,
        };
        readings.push(ReadingLine {
            number: looked.reading.id,
            at_min: c.course.at_min(looked.deed),
            what: describe(&looked.reading.what),
            with: stops_in_words(looked),
            shown: shown_in_words(looked),
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

/// Plugs and clamps in words, as the workshop says them.
fn stops_in_words(looked: &Looked) -> Vec<String> {
    let word = |stop: &Stop| match stop {
        Stop::Plug => "plug",
        Stop::Clamp => "clamp",
    };
    looked.stops.iter().map(|(port, stop)| format!("a {} at {port}", word(stop))).collect()
}

/// What was shown, as a person would say it.
fn shown_in_words(looked: &Looked) -> String {
    match (&looked.scale, looked.reading.shown) {
        (Scale::Ordinal { levels, .. }, ShownValue::Level(level)) => {
            levels.get(usize::from(level)).map_or_else(|| "?".to_owned(), |name| (*name).to_owned())
        }
        (_, ShownValue::Off(true)) => match looked.reading.what {
            Observed::Interval { max_s, .. } => format!("longer than {max_s} s"),
            _ => "beyond the upper end".to_owned(),
        },
        (_, ShownValue::Off(false)) => "beyond the lower end".to_owned(),
        (_, ShownValue::Blank) => "nothing".to_owned(),
        _ => number(looked).map_or_else(|| "?".to_owned(), |(value, unit)| format!("{value} {unit}")),
    }
}

/// The number shown, rounded to what its scale can tell, with its unit.
fn number(looked: &Looked) -> Option<(f64, String)> {
    crate::words::as_shown(looked.reading.shown, &looked.scale).map(|written| (written.value, written.unit))
}

/// A gauge that stands in the store: at a port from which the air can reach the booster freely.
fn is_of_store(c: &Computed<'_>, what: &Observed) -> bool {
    let Observed::Instrument { instrument, at, .. } = what else { return false };
    let card = c.job.kit.iter().find(|card| card.id == *instrument);
    let gauge = card.is_some_and(|card| {
        matches!(card.kind, InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. })
    });
    let in_store = |place: &str| {
        let part = place.split('.').next().unwrap_or_default();
        let kind = c.job.car.assembly.parts.iter().find(|p| p.id == part).map(|p| &p.kind);
        place.ends_with(".store")
            || matches!(kind, Some(PartKind::Booster(_) | PartKind::Tee(_) | PartKind::VacuumSwitch(_)))
    };
    gauge && at.iter().any(|(_, place)| in_store(place))
}
