//! A pack from elsewhere: it reads nothing outside of its folder, tells nothing of what it finds there, holds no more
//! than can be used, and steers no terminal.

use std::path::Path;
use std::process::{Command, Stdio};

use super::bad_input::{data, edit};
use super::{ends_with_code, program};

const CAR: &str = "assets/vehicles/alder.ron";
const JOB: &str = "scenarios/first-shift/jobs/hum-at-the-lights.ron";

/// Opens the first job of a data folder; what was said with exit code 2.
fn refused(data: &Path) -> String {
    let home = tempfile::tempdir().unwrap();
    let output = Command::new(program())
        .current_dir(home.path())
        .env("HOME", home.path())
        .arg("--data")
        .arg(data)
        .args(["text", "first-shift/hum-at-the-lights"])
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let text = ends_with_code(&output, 2);
    assert!(!text.contains(|c: char| c.is_control() && c != '\n'), "{text:?}");
    assert!(text.lines().all(|l| l.chars().count() <= 300), "{text}");
    text
}

#[cfg(unix)]
#[test]
fn links_that_leave_the_folder_are_refused_and_nothing_of_their_ends_is_told() {
    const SECRET: &str = "root-hunter2";
    let outside = tempfile::tempdir().unwrap();
    let secret = outside.path().join("secret");
    std::fs::write(&secret, format!("{SECRET}:x:0:0\nVehicle({SECRET}: 1)\n")).unwrap();
    for file in [
        CAR,
        JOB,
        "assets/spares/alder.ron",
        "assets/instruments/gauge.ron",
        "scenarios/first-shift/pack.ron",
        "scenarios/first-shift/reference/hum-at-the-lights.script",
    ] {
        let data = data();
        let path = data.path().join(file);
        std::fs::remove_file(&path).unwrap();
        std::os::unix::fs::symlink(&secret, &path).unwrap();
        let text = refused(data.path());
        assert!(text.contains(file) && text.contains("leaves the data folder"), "{file}: {text}");
        assert!(!text.contains(SECRET), "{file}: {text}");
    }
    // A folder that leads out is no better.
    let data_folder = data();
    let jobs = data_folder.path().join("scenarios/first-shift/jobs");
    std::fs::rename(&jobs, outside.path().join("jobs")).unwrap();
    std::os::unix::fs::symlink(outside.path().join("jobs"), &jobs).unwrap();
    assert!(refused(data_folder.path()).contains("leaves the data folder"));
    // A link inside is followed: the job opens.
    let data = data();
    let path = data.path().join(CAR);
    std::fs::rename(&path, data.path().join("assets/real-alder")).unwrap();
    std::os::unix::fs::symlink("../real-alder", &path).unwrap();
    let home = tempfile::tempdir().unwrap();
    let output = Command::new(program())
        .current_dir(home.path())
        .env("HOME", home.path())
        .arg("--data")
        .arg(data.path())
        .args(["text", "first-shift/hum-at-the-lights"])
        .stdin(Stdio::null())
        .output()
        .unwrap();
    ends_with_code(&output, 0);
}

#[test]
fn what_is_no_ron_is_not_read_out() {
    let data = data();
    std::fs::write(data.path().join(CAR), "secret_token_of_someone_else_abcdef:x:0:0\n").unwrap();
    let text = refused(data.path());
    assert!(text.contains("alder.ron:1:") && !text.contains("someone_else"), "{text}");
}

#[test]
fn a_car_of_nine_thousand_faults_is_refused_with_place_and_bound() {
    let data = data();
    let fault = |i: usize| {
        format!(
            "Fault(id: \"f_{i}\", name: \"f\", unit: \"pump\", param: \"pump.wear_mm2\", severity_min: 0.3, severity_max: 1.5, \
             commonness: 1.0),\n"
        )
    };
    let many: String = (0..9_000).map(fault).collect();
    edit(data.path(), CAR, "    faults: [\n", &format!("    faults: [\n{many}"));
    let text = refused(data.path());
    assert!(text.contains("alder.ron: faults: 90") && text.contains("at most 200"), "{text}");
}

#[test]
fn every_kind_of_list_and_text_has_its_bound() {
    let sentences = |n: usize| "\"Mind your fingers.\",".repeat(n);
    for (file, from, to, wanted) in [
        (JOB, "hazards: [", format!("hazards: [{}", sentences(40)), "hazards: "),
        (JOB, "debrief: [", format!("debrief: [{}", sentences(60)), "debrief: "),
        (
            JOB,
            "complaint: [",
            format!("complaint: [\"{}\",", "x".repeat(5_000)),
            "complaint[0]: 5000 characters",
        ),
        ("scenarios/first-shift/pack.ron", "jobs: [", format!("jobs: [{}", "\"hum\",".repeat(200)), "jobs: "),
        (CAR, "cautions: [", format!("cautions: [{}", sentences(40)), "cautions: "),
    ] {
        let data = data();
        edit(data.path(), file, from, &to);
        let text = refused(data.path());
        assert!(text.contains(wanted) && text.contains("at most"), "{file}: {text}");
    }
    // And the folders themselves.
    let data = data();
    for i in 0..100 {
        std::fs::write(data.path().join(format!("assets/instruments/more_{i}.ron")), "").unwrap();
    }
    let text = refused(data.path());
    assert!(text.contains("assets/instruments") && text.contains("at most 60"), "{text}");
}

#[test]
fn controls_in_texts_and_names_are_refused_where_they_are_read() {
    for (file, from, to) in [
        (CAR, "name: \"Alder", "name: \"Al\\u{1b}[2Jder"),
        (JOB, "title: \"", "title: \"\\u{1b}]0;mine\\u{7}"),
        (JOB, "title: \"", "title: \"\u{202e}"),
        (JOB, "complaint: [", "complaint: [\"a\\tb\","),
        ("scenarios/first-shift/pack.ron", "title: \"", "title: \"two\\nlines "),
        ("assets/instruments/gauge.ron", "help: \"", "help: \"\\u{9b}31m"),
        ("assets/spares/alder.ron", "name: \"", "name: \"\\u{7f}"),
    ] {
        let data = data();
        edit(data.path(), file, from, to);
        let text = refused(data.path());
        let name = Path::new(file).file_name().unwrap().to_str().unwrap();
        assert!(text.contains(name) && text.contains("control"), "{file}: {text}");
    }
    #[cfg(unix)]
    {
        let data = data();
        std::fs::write(data.path().join("assets/instruments/ga\u{1b}[2Juge.ron"), "").unwrap();
        assert!(refused(data.path()).contains("ga\\u{1b}[2Juge.ron"));
    }
}
