//! Economy: minutes to the finding against the reference plan's; without a plan it is left out.

use assess::attempt::Attempt;
use assess::marks::mark;
use assess::marks::sheet::{MarkSheet, PartLine};
use assess::pack::job::{Job, PlanStep, ReferencePlan};

use super::attempts::{job, play};

/// Shares of the mark are written with all digits; sums of weights are not.
const ROUNDING: f64 = 1e-9;

fn with_plan(plan: ReferencePlan) -> Job {
    let mut job = (*job()).clone();
    job.plan = plan;
    job
}

fn planned(ids: &[&str]) -> Job {
    let job = job();
    let step = |id: &&str| {
        let test = job.tests.iter().position(|test| test.id == **id).expect("a test of the car");
        PlanStep { test, worked_min: 1.0, waited_min: 0.0, p_true: 0.5 }
    };
    with_plan(ReferencePlan::Tests(ids.iter().map(step).collect()))
}

fn sheet(attempt: &Attempt, job: &Job) -> MarkSheet {
    crate::told::sheet(mark(attempt, job).expect("it marks"))
}

fn part<'s>(sheet: &'s MarkSheet, letter: &str) -> Option<&'s PartLine> {
    sheet.marks.as_ref().expect("it is finished").parts.iter().find(|part| part.letter == letter)
}

/// Hears it, sees that the coil has no current, says so and hands the car back as it is: enough for economy, not for more.
fn quick(waited: &str) -> Attempt {
    play(&format!(
        "hum\nnote\nmeter volt\nfit meter red=relay.86 black=battery.minus\nread meter\nnote shown\n{waited}finding relay sure 0.95\nhand back\n"
    ))
}

#[test]
fn without_a_plan_economy_is_left_out_and_the_rest_makes_a_hundred() {
    let attempt = quick("");
    for (plan, told) in [(ReferencePlan::Missing, false), (ReferencePlan::OutOfDate, true)] {
        let sheet = sheet(&attempt, &with_plan(plan));
        assert_eq!(part(&sheet, "F"), None);
        let weights: f64 = sheet.marks.as_ref().unwrap().parts.iter().map(|part| part.weight).sum();
        assert!((weights - 100.0).abs() < ROUNDING, "{weights}");
        let says = sheet.notices.iter().any(|notice| notice.contains("was made of other files"));
        assert_eq!(says, told, "{:?}", sheet.notices);
    }
}

#[test]
fn economy_counts_minutes_to_the_finding_and_only_what_was_found() {
    let job = planned(&["hum-key-off", "relay-in-hand"]);
    let (fast, slow) = (sheet(&quick(""), &job), sheet(&quick("wait 43200\n"), &job));
    let (fast, slow) = (part(&fast, "F").expect("a plan"), part(&slow, "F").expect("a plan"));
    assert_eq!(fast.value, 1.0, "quicker than par: {}", fast.why);
    assert!(
        0.0 < slow.value && slow.value < fast.value,
        "twelve hours of waiting cost something: {}",
        slow.why
    );
    assert!(slow.why.contains("720"), "{}", slow.why);
    let wrong = sheet(&play("hum\nnote\nfinding pump sure 0.6\nhand back\n"), &job);
    let wrong = part(&wrong, "F").expect("a plan");
    assert_eq!(wrong.value, 0.0);
    assert!(wrong.why.contains("Only a right finding"), "{}", wrong.why);
}

/// Who stays below τ is asked for no more than what the plan reaches in this very car.
#[test]
fn what_is_asked_is_what_the_better_of_plan_and_script_reaches() {
    let attempt = play("hum\nnote\nfinding relay sure 0.6\nhand back\n");
    let reached = |job: &Job| {
        let sheet = sheet(&attempt, job);
        sheet.marks.expect("it is finished").evidence.reference.expect("it stayed below").0
    };
    let without_script = |ids: &[&str]| {
        let mut job = planned(ids);
        job.reference = None;
        job
    };
    let (by_little, by_script) =
        (reached(&without_script(&["hum-key-off"])), reached(&planned(&["hum-key-off"])));
    let by_plan = reached(&without_script(&["hum-key-off", "relay-in-hand"]));
    assert!(by_little < 0.9, "hearing it is not all: {by_little}");
    assert!(0.9 <= by_script && 0.9 <= by_plan, "{by_script} by the script, {by_plan} by the plan");
}
