//! `pinhole prove` from outside: what is kept, what is written, what is wrong with what is asked.

use std::path::Path;

use assess::pack::Library;
use assess::pack::job::ReferencePlan;

use crate::bench::bad_input::{copy_tree, data, edit};
use crate::bench::{ends_with_code, pinhole_with, root};

const JOB: &str = "planted/no-script";
const FILE: &str = "scenarios/planted/jobs/no-script.ron";

/// The data files with the pack of planted flaws.
fn planted() -> tempfile::TempDir {
    let data = data();
    copy_tree(&root().join("tests/prover/planted"), &data.path().join("scenarios/planted"));
    data
}

fn proved(home: &Path, data: &Path, args: &[&str], code: i32) -> String {
    let output = pinhole_with(home, data).arg("prove").args(args).output().unwrap();
    ends_with_code(&output, code)
}

#[test]
fn what_was_proved_is_kept_until_its_files_change_and_its_plan_is_written() {
    let (data, home) = (planted(), tempfile::tempdir().unwrap());
    let args = [JOB, "--cars", "1", "--results", "kept", "--html", "p.html", "--json", "p.json"];
    let first = proved(home.path(), data.path(), &args, 1);
    assert!(first.contains("tests tried in every car") && first.contains("does not pass"), "{first}");
    let (html, json) = (home.path().join("p.html"), home.path().join("p.json"));
    let page = std::fs::read_to_string(&html).unwrap();
    assert!(page.contains("there is no reference attempt") && !page.contains("<script"), "{page}");
    let text = std::fs::read_to_string(&json).unwrap();
    let proofs: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!(proofs[0]["flaws"][0], "no_script", "{text}");

    let mut again = args.to_vec();
    again.push("--write-plans");
    let second = proved(home.path(), data.path(), &again, 1);
    assert!(!second.contains("tests tried in every car"), "it is known: {second}");
    assert_eq!(std::fs::read_to_string(&json).unwrap(), text, "to the byte");
    let job = || Library::open(data.path()).unwrap().job(JOB).unwrap();
    let planned: Vec<String> = job().planned().expect("a plan").iter().map(|test| test.id.clone()).collect();
    assert_eq!(planned, ["run", "rest-engine-clamped", "run-and-rest"]);

    edit(data.path(), FILE, "ambient_c: 19.0", "ambient_c: 18.0");
    assert_eq!(job().plan, ReferencePlan::OutOfDate, "of other files");
    edit(data.path(), FILE, "ambient_c: 18.0", "ambient_c: 19.0");
    let plan = "scenarios/planted/plans/no-script.ron";
    edit(data.path(), plan, "\"run-and-rest\"", "\"run-and-hide\"");
    let error = Library::open(data.path()).unwrap().job(JOB).unwrap_err().to_string();
    assert!(error.contains("no-script.ron") && error.contains("run-and-hide"), "{error}");
}

#[test]
fn a_broken_job_keeps_no_other_from_being_proved() {
    let (data, home) = (planted(), tempfile::tempdir().unwrap());
    let pack = "scenarios/planted/pack.ron";
    let text = std::fs::read_to_string(data.path().join(pack)).unwrap();
    let (before, _) = text.split_once("    jobs: [").unwrap();
    std::fs::write(data.path().join(pack), format!("{before}    jobs: [\"no-spare\", \"no-script\"],\n)\n"))
        .unwrap();
    edit(data.path(), "scenarios/planted/jobs/no-spare.ron", "severity: 0.25", "severity: 250.0");
    let said = proved(home.path(), data.path(), &["planted", "--cars", "1", "--results", "kept"], 2);
    assert!(said.contains("planted/no-spare: not proved") && said.contains("no-spare.ron"), "{said}");
    assert!(said.contains("planted/no-script: does not pass"), "{said}");
    assert!(said.contains("Healthy cars: 0 of 1"), "{said}");
}

#[test]
fn what_cannot_be_proved_is_said_before_anything_is_tried() {
    let (data, home) = (planted(), tempfile::tempdir().unwrap());
    for (args, wanted) in [
        (vec!["nowhere"], "first-shift"),
        (vec!["planted/nothing"], "planted/no-script"),
        (vec![JOB, "--cars", "0"], "--cars"),
        (vec![JOB, "--cars", "many"], "--cars"),
        (vec![JOB, "--html", "no/such/folder/p.html"], "--html"),
    ] {
        let said = proved(home.path(), data.path(), &args, 2);
        assert!(said.contains(wanted) && !said.contains("tests tried"), "{args:?}: {said}");
    }
    std::fs::write(home.path().join("kept"), "mine").unwrap();
    let said = proved(home.path(), data.path(), &[JOB, "--results", "kept"], 2);
    assert!(said.contains("--results") && !said.contains("tests tried"), "{said}");
    assert_eq!(std::fs::read(home.path().join("kept")).unwrap(), b"mine");
}
