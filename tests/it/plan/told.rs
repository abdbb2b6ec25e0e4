//! `pinhole tests`: what it lists is what there is, with the minutes of the workshop.

use crate::bench::bad_input::{data, edit};
use crate::bench::{ends_with_code, pinhole, pinhole_with};

use super::Bay;

#[test]
fn every_test_of_a_car_stands_in_the_list_with_its_minutes_and_what_it_needs() {
    let home = tempfile::tempdir().unwrap();
    for bay in Bay::all() {
        let output = pinhole(home.path()).args(["tests", &bay.car.id]).output().unwrap();
        let said = ends_with_code(&output, 0);
        let came_in = bay.with(&[]);
        assert!(
            said.lines().next().is_some_and(|l| l.ends_with(&format!("{} tests", bay.tests.len()))),
            "{said}"
        );
        for test in bay.tests.iter() {
            let mut lines =
                said.lines().skip_while(|l| l.split_whitespace().next() != Some(test.id.as_str()));
            let line = lines.next().unwrap_or_else(|| panic!("{} is not in {said}", test.id));
            let mut done = came_in.clone();
            done.all(&[test]);
            let minutes = format!(" {:.1} ", done.minutes().attended);
            assert!(line.contains(&minutes) && line.ends_with(&test.name), "{line}: {minutes}");
            if 0.0 < done.minutes().unattended {
                assert!(line.contains(&format!("+ {:.1} ", done.minutes().unattended)), "{line}");
            }
            let needs = lines.take_while(|l| l.starts_with("      ")).collect::<String>();
            for need in test.access.covers.iter().chain(&test.access.joints).chain(&test.access.instruments) {
                assert!(needs.contains(need.as_str()), "{line}: {need} is not in {needs:?}");
            }
        }
    }
}

#[test]
fn a_test_for_which_a_job_lacks_something_says_so_and_has_no_minutes() {
    let (home, data) = (tempfile::tempdir().unwrap(), data());
    let job = "scenarios/first-shift/jobs/hum-at-the-lights.ron";
    let tools = "tools: Some([\"barometer\", \"gauge\", \"meter\", \"watch\"]), reference:";
    edit(data.path(), job, "reference:", tools);
    let run = |args: &[&str]| {
        let output = pinhole_with(home.path(), data.path()).arg("tests").args(args).output().unwrap();
        ends_with_code(&output, 0)
    };
    let said = run(&["first-shift/hum-at-the-lights"]);
    let of = |id: &str| -> Vec<&str> {
        said.lines().skip_while(|l| l.split_whitespace().next() != Some(id)).take(3).map(str::trim).collect()
    };
    let hold = of("hold");
    assert!(hold[0].contains(" + 10.0 ") && hold[1] == "with: gauge", "{said}");
    let halves = of("halves-at-tee").join(" ");
    assert!(halves.contains(" –  leak-down") && halves.contains("with: gauge"), "{said}");
    assert!(halves.contains("the tool board lacks: gauge_b, hose clamp"), "{said}");
    let one = run(&["first-shift/hum-at-the-lights", "halves-at-tee"]);
    assert!(!one.contains(" min\n") && one.contains("the tool board lacks: gauge_b, hose clamp"), "{one}");
    // Nobody has written any for a car without a file.
    std::fs::remove_file(data.path().join("assets/tests/birch.ron")).unwrap();
    let output = pinhole_with(home.path(), data.path()).args(["tests", "birch"]).output().unwrap();
    let said = ends_with_code(&output, 2);
    assert!(said.contains("assets/tests/birch.ron"), "{said}");
}

#[test]
fn what_there_is_not_ends_with_two_and_names_what_there_is() {
    let home = tempfile::tempdir().unwrap();
    for (args, wanted) in [
        (&["elder"][..], "there is no car called \"elder\"; known: alder"),
        (&["first-shift/x"], "there is no job called \"first-shift/x\""),
        (&["alder", "hodl"], "alder has no test called \"hodl\"; known: hold"),
        (&[], "pinhole tests"),
    ] {
        let output = pinhole(home.path()).arg("tests").args(args).output().unwrap();
        let said = ends_with_code(&output, 2);
        assert!(said.contains(wanted), "{args:?}: {said}");
    }
}
