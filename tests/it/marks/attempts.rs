//! Whole attempts through the marker: same bytes whatever the threads, nothing told before the hand-back,
//! altered attempts refused, reports that stand on their own.

use std::path::Path;
use std::sync::{Arc, OnceLock};

use assess::attempt::{Attempt, Seed};
use assess::locale::Naming;
use assess::marks::sheet::{MarkSheet, NoteWorth};
use assess::marks::{Evaluation, MarkError, mark};
use assess::pack::Library;
use assess::pack::job::{Job, ReferencePlan};
use assess::play::course::{Course, Deed, Worth};
use assess::play::script;
use assess::play::{Begin, Session};
use assess::report;
use sim_core::observe::ShownValue;

/// The job whose marking is quickest: one reading tells nearly all.
const JOB: &str = "first-shift/flat-after-the-weekend";

pub(super) fn job() -> Arc<Job> {
    static JOB_FILE: OnceLock<Arc<Job>> = OnceLock::new();
    let open = || {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        Arc::new(Library::open(&root).expect("the packs are sound").job(JOB).expect("the job is there"))
    };
    Arc::clone(JOB_FILE.get_or_init(open))
}

pub(super) fn play(text: &str) -> Attempt {
    play_with(text, 0x5eed)
}

fn play_with(text: &str, seed: u128) -> Attempt {
    play_in(&job(), text, seed)
}

pub(super) fn play_in(job: &Arc<Job>, text: &str, seed: u128) -> Attempt {
    let begin = Begin::rehearsal(Seed(seed));
    let mut session = Session::rehearse(Arc::clone(job), &begin);
    script::play(&mut session, text, |_, _, _, _| {}).expect("the script plays");
    session.into_attempt()
}

fn reference() -> Attempt {
    play(job().reference.as_deref().expect("the job has a reference attempt"))
}

fn with_threads<T: Send>(threads: usize, work: impl FnOnce() -> T + Send) -> T {
    rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("threads").install(work)
}

pub(super) fn evaluation() -> &'static Evaluation {
    static MARKED: OnceLock<Evaluation> = OnceLock::new();
    MARKED.get_or_init(|| mark(&reference(), &job()).expect("it marks"))
}

/// Its sheet in English, as other programs get it.
pub(super) fn sheet() -> &'static MarkSheet {
    static SHEET: OnceLock<MarkSheet> = OnceLock::new();
    SHEET.get_or_init(|| evaluation().sheet(&crate::told::english(), Naming::Typed))
}

#[test]
fn inv_threads_do_not_change_a_byte() {
    let attempt = reference();
    let bytes = |threads| {
        let sheet = with_threads(threads, || crate::told::sheet(mark(&attempt, &job()).expect("it marks")));
        serde_json::to_string(&sheet).expect("it is written")
    };
    let one = bytes(1);
    assert_eq!(one, bytes(3));
    assert_eq!(one, serde_json::to_string(sheet()).expect("it is written"));
    let again: MarkSheet = serde_json::from_str(&one).expect("it is read");
    assert_eq!(again, *sheet(), "and it comes back from the file as it went in");
}

#[test]
fn inv_the_order_of_marking_changes_no_byte() {
    // Five attempts in order; then a fifth of them and one more, in another order, from a fresh copy.
    let job = job();
    let text = job.reference.as_deref().expect("the job has a reference attempt");
    let attempts: Vec<Attempt> = (1..=5).map(|seed| play_with(text, seed)).collect();
    let bytes = |a: &Attempt| {
        serde_json::to_string(&crate::told::sheet(mark(a, &job).expect("it marks"))).expect("it is written")
    };
    let first: Vec<String> = attempts.iter().map(bytes).collect();
    assert!(first.windows(2).any(|w| w[0] != w[1]), "cars of other tolerances give other sheets");
    for i in [3, 0] {
        assert_eq!(bytes(&attempts[i]), first[i], "attempt {i}");
    }
}

#[test]
fn reg_reference_attempt_is_competent_and_every_number_has_its_sentence() {
    let marks = sheet().marks.as_ref().expect("it is finished");
    assert!(marks.competent, "{marks:#?}");
    assert!(95.0 < marks.total, "{}", marks.total);
    assert_eq!(marks.parts.len(), 6, "economy too: the job has a reference plan");
    assert!(marks.parts.iter().all(|part| 20 < part.why.len()));
    let points: f64 = marks.parts.iter().map(|part| part.points).sum();
    assert!((points - marks.deducted - marks.total).abs() < 1e-9);
    for line in &marks.evidence.readings {
        let NoteWorth::Counts { classes, .. } = &line.worth else { continue };
        assert!((classes.iter().sum::<f64>() - 1.0).abs() < 1e-9, "reading {}", line.number);
    }
}

pub(super) fn course(attempt: &Attempt) -> Course {
    course_in(&job(), attempt)
}

pub(super) fn course_in(job: &Job, attempt: &Attempt) -> Course {
    let deed = |step: &assess::attempt::Step| Deed {
        action: step.action.clone(),
        start: step.start,
        end: step.end,
        refused: step.refused.is_some(),
    };
    let deeds = attempt.steps.iter().map(deed).collect();
    Course::play(job, &crate::rig::world(attempt, job), deeds)
}

#[test]
fn inv_what_is_misread_enters_nothing() {
    let course = course(&play("read barometer\nnote 60 kPa\nread barometer\nnote shown\n"));
    let worth: Vec<Worth> = course.notes.iter().map(|note| note.worth).collect();
    assert_eq!(worth, [Worth::Misread, Worth::Counts], "and the right reading after it still counts");
}

#[test]
fn inv_the_finding_locks_and_so_does_the_first_repair() {
    let found = course(&play("hum\nnote\nfinding relay sure 0.8\nread barometer\nnote shown\n"));
    assert_eq!(found.lock(), 2);
    let repaired =
        course(&play("hum\nnote\npull relay\nswap relay with relay_new\nfinding relay sure 0.8\n"));
    assert_eq!(repaired.lock(), repaired.first_repair.expect("there was a repair"));
    assert!(repaired.lock() < repaired.findings[0].deed);
}

#[test]
fn inv_an_altered_attempt_is_refused_and_says_where() {
    let mut attempt = reference();
    let step = attempt.steps.iter_mut().find(|step| step.reading.is_some()).expect("it has readings");
    let number = step.n;
    if let Some(reading) = &mut step.reading
        && let ShownValue::Steps(shown) = &mut reading.shown
    {
        *shown += 1;
    } else {
        panic!("the first reading is the barometer's");
    }
    match mark(&attempt, &job()) {
        Err(MarkError::DoesNotReplay(error)) => {
            assert!(error.to_string().contains(&format!("action {number}")), "{error}");
        }
        other => panic!("{other:?}"),
    }
}

/// A pack's broken reference script must not cost a trainee his mark.
#[test]
fn inv_a_reference_script_that_stops_is_said_and_marking_goes_on() {
    let text = "chocks on\nhum\nfinding none sure 0.4\nhand back\n";
    let mut broken = (*job()).clone();
    broken.reference = Some("hum\nnote\nread nonsense\n".to_owned());
    // Where a plan says what can be reached nobody asks the script.
    broken.plan = ReferencePlan::Missing;
    let sheet = crate::told::sheet(mark(&play(text), &broken).expect("it marks"));
    assert!(
        sheet.notices.iter().any(|n| n.contains("line 3") && n.contains("nonsense")),
        "{:?}",
        sheet.notices
    );
    let marks = sheet.marks.expect("it is finished");
    assert_eq!(marks.evidence.reference, None);
    let part = |letter: &str| marks.parts.iter().find(|p| p.letter == letter).expect("it is there").value;
    assert_eq!(part("E"), 0.0, "nothing was noted");
    assert!((part("V") + 0.16).abs() < 1e-12, "wrong with 0.40");
    assert_eq!(part("Q"), 0.0, "the car went back as it came");
    assert!(!marks.competent);
}

#[test]
fn inv_nothing_is_told_before_the_hand_back() {
    let text = "hum\nnote\nread barometer\nfinding relay sure 0.95\n";
    let sheet = crate::told::sheet(mark(&play(text), &job()).expect("it is looked at"));
    assert!(sheet.marks.is_none());
    let all = [
        serde_json::to_string(&sheet).expect("it is written"),
        report::terminal::render(&sheet, &crate::told::english()),
        report::html::render(&sheet, &crate::told::english()),
    ];
    for text in all {
        assert!(text.contains("Not finished"));
        assert!(!text.to_lowercase().contains("relay"), "the fault must not be named: {text}");
    }
    assert_eq!(sheet.not_noted, ["barometer"]);
}

#[test]
fn inv_reports_stand_on_their_own() {
    let text = report::terminal::render(sheet(), &crate::told::english());
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
        assert!(!line.contains('\u{1b}'), "no control characters: {line}");
    }
    let page = report::html::render(sheet(), &crate::told::english());
    // The namespace of SVG is a name, not an address that is fetched.
    let fetched = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
    for outside in ["http:", "https:", "src=", "url(", "@import", "<script", "<link"] {
        assert!(!fetched.contains(outside), "the page must not need {outside}");
    }
    assert_eq!(page.matches("<svg").count(), 3, "path of certainty, the plan beside it, and the air");
    let marks = sheet().marks.as_ref().expect("it is finished");
    for report in [&text, &page] {
        let plain: String = report.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(plain.contains("local rules"), "the maker's data come first");
        for part in &marks.parts {
            let start: String = part.why.chars().take(30).collect();
            assert!(plain.contains(&start), "{start}");
        }
    }
}
