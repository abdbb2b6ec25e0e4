//! An attempt of another version of the program that comes out otherwise today is marked from its recording, and the sheet
//! says what is the recording's and what is today's; of this version it was altered, and is refused.

use std::sync::OnceLock;

use assess::attempt::clock::By;
use assess::attempt::{Attempt, Breached, ENGINE, Sitting, StateDigest, Step};
use assess::locale::{Locale, Naming};
use assess::marks::sheet::{MarkSheet, NoteWorth};
use assess::marks::{MarkError, mark};
use assess::play::SessionError;
use sim_core::action::Action;
use sim_core::notice::{Gravity, Hazard};
use sim_core::observe::ShownValue;

use super::attempts::{job, play, sheet};

const THEN: &str = "0.0.9";

/// The attempt that [`sheet`] marks, as another version made it.
fn old() -> Attempt {
    static PLAYED: OnceLock<Attempt> = OnceLock::new();
    let made = |engine: &mut String| *engine = THEN.to_owned();
    let played = PLAYED.get_or_init(|| {
        let mut attempt = play(job().reference.as_deref().unwrap());
        made(&mut attempt.header.engine);
        attempt.sittings.iter_mut().for_each(|sitting| made(&mut sitting.engine));
        attempt
    });
    played.clone()
}

fn marked(attempt: &Attempt) -> MarkSheet {
    crate::told::sheet(mark(attempt, &job()).expect("it is marked"))
}

fn refused(attempt: &Attempt) -> String {
    match mark(attempt, &job()) {
        Err(MarkError::DoesNotReplay(error)) => {
            assert!(matches!(*error, SessionError::Differs(_)), "{error}");
            error.to_string()
        }
        other => panic!("{other:?}"),
    }
}

/// A model that is another one shows in the digests first.
fn other_digest(attempt: &mut Attempt, index: usize) {
    attempt.steps[index].digest = StateDigest(attempt.steps[index].digest.0 ^ 1);
}

fn index_of(attempt: &Attempt, is: impl Fn(&Step) -> bool) -> usize {
    attempt.steps.iter().position(is).expect("the reference does it")
}

#[test]
fn what_replays_alike_is_marked_from_the_replay() {
    let now = marked(&old());
    assert_eq!((&now.recording, &now.marks), (&None, &sheet().marks));
    assert!(now.notices.iter().any(|n| n.contains("it replays alike")), "{:?}", now.notices);
}

#[test]
fn inv_where_only_the_state_differs_the_marks_are_the_same() {
    let mut attempt = old();
    other_digest(&mut attempt, 4);
    let now = marked(&attempt);
    let recording = now.recording.as_ref().expect("it says so");
    assert_eq!((recording.engines.as_slice(), recording.differs_at), (&[THEN.to_owned()][..], 5));
    assert!(recording.refused_today.is_empty());
    let said = now.notices.join(" ");
    for words in [
        &format!("made with version {THEN}"),
        &format!("with this one ({ENGINE}) it comes out otherwise from action 5 on"),
        "From the recording: what was done",
        "From today's model",
    ] {
        assert!(said.contains(words), "{words:?}: {said}");
    }
    assert!(!said.contains("it replays alike"), "{said}");
    assert_eq!(now.marks, sheet().marks);
    assert_eq!((&now.record, &now.breaches), (&sheet().record, &sheet().breaches));
    assert_eq!(now.attended_min.to_bits(), sheet().attended_min.to_bits());
}

#[test]
fn readings_refusals_and_record_are_those_of_the_recording() {
    let mut attempt = old();
    // The barometer, one step higher than today's would show, noted as it was shown.
    let read = index_of(
        &attempt,
        |step| matches!(&step.action, Action::Read { instrument } if instrument == "barometer"),
    );
    let reading = attempt.steps[read].reading.as_mut().unwrap();
    let number = reading.id;
    let ShownValue::Steps(shown) = &mut reading.shown else { panic!("the barometer shows a number") };
    *shown += 3;
    // A note that was misread then, though today it would be right; and what it filled.
    let noted = |step: &Step, of: u32| matches!(&step.action, Action::Note { reading, .. } if *reading == of);
    let misread = index_of(&attempt, |step| {
        step.read_right == Some(true) && !noted(step, number) && step.record.is_some()
    });
    attempt.steps[misread].read_right = Some(false);
    let line = attempt.steps[misread].record.clone().unwrap();
    let then = attempt.steps[misread].action.clone();
    let Action::Note { reading: misread_number, .. } = then else { panic!("{then:?}") };

    let now = marked(&attempt);
    assert_eq!(now.recording.as_ref().unwrap().differs_at, read as u32 + 1);
    let of = |sheet: &MarkSheet, n: u32| {
        let marks = sheet.marks.clone().unwrap();
        marks.evidence.readings.into_iter().find(|reading| reading.number == n).unwrap()
    };
    let (was, is) = (of(sheet(), number).value.unwrap(), of(&now, number).value.unwrap());
    assert!(was.0 < is.0 && was.1 == is.1, "{was:?} {is:?}");
    assert_ne!(of(sheet(), misread_number).worth, NoteWorth::Misread);
    assert_eq!(of(&now, misread_number).worth, NoteWorth::Misread);
    let filled = |sheet: &MarkSheet| sheet.record.iter().find(|l| l.item == line.item).unwrap().filled;
    assert!(filled(sheet()) && !filled(&now), "{}", line.item);
    assert!(now.marks.unwrap().total < sheet().marks.as_ref().unwrap().total);
}

#[test]
fn breaches_are_those_of_the_recording_typed_or_in_a_sentence() {
    let mut attempt = old();
    assert!(attempt.steps.iter().all(|step| step.breaches.is_empty()));
    let sentence =
        r#"{"rule":"old_rule","gravity":"critical","text":"Something dangerous, as it was told then."}"#;
    attempt.steps[3].breaches =
        vec![serde_json::from_str(sentence).unwrap(), Breached::Typed(Hazard::DroveUnproven)];
    let now = marked(&attempt);
    let lines: Vec<_> = now.breaches.iter().map(|b| (b.rule.as_str(), b.gravity)).collect();
    assert_eq!(
        lines,
        [("old_rule", Gravity::Critical), (Hazard::DroveUnproven.rule(), Hazard::DroveUnproven.gravity())]
    );
    assert_eq!(now.breaches[0].text, "Something dangerous, as it was told then.");
    let marks = now.marks.unwrap();
    assert!(!marks.competent && marks.total < marks.cut, "{}", marks.total);
    let was = sheet().marks.as_ref().unwrap();
    assert!(was.competent && marks.parts == was.parts, "the parts are the same, the gate is not");
}

#[test]
fn what_todays_workshop_refuses_is_named() {
    let mut attempt = old();
    let at = 3;
    let end = attempt.steps[at - 1].end;
    let refused = Action::Unfit { instrument: "gauge".to_owned() };
    let step = Step {
        action: refused,
        start: end,
        end,
        reading: None,
        record: None,
        read_right: None,
        ..attempt.steps[at].clone()
    };
    attempt.steps.insert(at, step);
    attempt.steps.iter_mut().zip(1..).for_each(|(step, n)| step.n = n);
    let now = marked(&attempt);
    let recording = now.recording.as_ref().unwrap();
    assert_eq!(
        (recording.differs_at, recording.refused_today.as_slice()),
        (at as u32 + 1, &[at as u32 + 1][..])
    );
    assert!(
        now.notices.iter().any(|n| n.contains("refuses actions that were done then (4)")),
        "{:?}",
        now.notices
    );
    // The same, refused then as well: nothing was done, and nothing differs.
    assert_eq!(now.marks.unwrap().truth, sheet().marks.as_ref().unwrap().truth);
}

/// Version in the header, then the sittings (actions before, version), and whether it is marked.
type Case<'a> = (&'a str, &'a [(usize, &'a str)], bool);

#[test]
fn inv_of_this_version_it_was_altered_and_is_refused() {
    // All of it by this version; begun by another and carried on by this one; opened by this one since.
    let sitting = |after: usize, engine: &str| Sitting {
        after: after as u32,
        by: By::Script,
        at_unix_ms: 0,
        engine: engine.to_owned(),
    };
    let n = old().steps.len();
    let cases: [Case<'_>; 6] = [
        (ENGINE, &[(0, ENGINE)], false),
        (THEN, &[(0, THEN), (3, ENGINE)], false),
        (THEN, &[(0, THEN), (20, ENGINE)], false),
        (THEN, &[(0, THEN), (20, ENGINE), (30, THEN)], false),
        (THEN, &[(0, THEN), (2, ENGINE), (3, THEN)], true),
        (THEN, &[(0, THEN), (n, "9.9.9")], true),
    ];
    for (header, sittings, is_marked) in cases {
        let mut attempt = old();
        attempt.header.engine = header.to_owned();
        attempt.sittings = sittings.iter().map(|(after, engine)| sitting(*after, engine)).collect();
        other_digest(&mut attempt, 9);
        if is_marked {
            let engines = marked(&attempt).recording.unwrap().engines;
            assert!(engines.contains(&THEN.to_owned()) && engines.len() == 2, "{engines:?}");
        } else {
            assert!(refused(&attempt).contains("action 10"), "{sittings:?}");
        }
    }
}

#[test]
fn in_german_all_of_it_is_german() {
    let mut attempt = old();
    other_digest(&mut attempt, 4);
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let german = Locale::open(&root, &["de".to_owned()]).unwrap();
    let said = mark(&attempt, &job()).unwrap().sheet(&german, Naming::Typed).notices.join(" ");
    assert!(
        said.contains("weicht er ab Handlung 5 ab") && said.contains("Aus dem heutigen Modell"),
        "{said}"
    );
}
