//! Par time: the plan and the lines of the record that it does not fill, each once.

use assess::plan::test::{Step, Test};
use assess::planner::par::{minutes, with_record};

use crate::rig::library;

fn fills(test: &Test, item: &str) -> usize {
    let is = |step: &Step| matches!(step, Step::Note { record: Some(line), .. } if line == item);
    test.lines().filter(|(_, line)| is(&line.step)).count()
}

#[test]
fn par_fills_every_line_of_the_record_that_comes_before_the_repair() {
    let job = library().job("first-shift/hum-at-the-lights").unwrap_or_else(|e| panic!("{e}"));
    let test = |id: &str| job.tests.iter().find(|test| test.id == id).expect("a test of the car");
    for plan in [vec![], vec![test("run-and-rest")], vec![test("switch-points"), test("run-and-rest")]] {
        let row = with_record(&job, &plan);
        assert_eq!(row[..plan.len()], plan[..], "the plan comes first");
        for item in job.car.record.iter().filter(|item| !item.kind.is_release()) {
            let filled: usize = row.iter().map(|test| fills(test, &item.id)).sum();
            assert!(0 < filled, "{} stays empty after {} tests", item.id, row.len());
        }
        let more: Vec<&&Test> = row[plan.len()..].iter().collect();
        assert!(more.iter().all(|test| !plan.contains(test)), "nothing is done twice");
    }
}

/// What a plan fills of the record it need not fill again.
#[test]
fn a_plan_that_fills_lines_costs_less_than_itself_and_the_record_apart() {
    let job = library().job("first-shift/hum-at-the-lights").unwrap_or_else(|e| panic!("{e}"));
    let run = job.tests.iter().find(|test| test.id == "run-and-rest").expect("a test of the car");
    let (record, both) = (minutes(&job, &[]), minutes(&job, &[run]));
    assert!(0.0 < record.attended);
    assert!(both.attended < record.attended + 0.01, "{both:?} against {record:?}");
}
