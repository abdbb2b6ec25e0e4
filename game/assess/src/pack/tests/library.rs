//! Everything together: what loads, the reference page, digests.

use super::{change, copy, library, root};
use crate::pack::{Library, reference_page};

#[test]
fn everything_under_assets_and_scenarios_loads() {
    let library = library();
    let jobs = library.check_all().unwrap_or_else(|e| panic!("{e}"));
    let listed: usize = library.packs().unwrap().iter().map(|p| p.jobs.len()).sum();
    assert_eq!(jobs.len(), listed);
    for job in &jobs {
        assert_ne!(job.digest, [0; 32], "{}", job.name());
        assert!(job.card.last().unwrap().contains("maker's data"), "{}", job.name());
    }
}

#[test]
fn keys_page_is_in_step() {
    let path = root().join("assets/KEYS.md");
    let page = reference_page();
    if std::env::var_os("PINHOLE_WRITE_KEYS").is_some() {
        std::fs::write(&path, &page).unwrap();
    }
    let written = std::fs::read_to_string(&path).unwrap_or_default().replace("\r\n", "\n");
    assert!(
        written == page,
        "assets/KEYS.md is not what the tables say: PINHOLE_WRITE_KEYS=1 cargo test -p assess keys_page"
    );
}

#[test]
fn the_digest_covers_every_file_behind_a_job() {
    const JOB: &str = "first-shift/hum-at-the-lights";
    let before = library().job(JOB).unwrap().digest;
    assert_eq!(library().job(JOB).unwrap().digest, before);
    for (file, from, to) in [
        ("scenarios/first-shift/jobs/hum-at-the-lights.ron", "severity: 0.23", "severity: 0.26"),
        ("scenarios/first-shift/pack.ron", "cut_score: 70.0", "cut_score: 71.0"),
        ("scenarios/first-shift/pack.ron", "schema: 1,", "schema: 1, certainty: 0.80,"),
        ("assets/vehicles/alder.ron", "price: 320.0", "price: 321.0"),
        ("assets/instruments/gauge.ron", "class: 1.6", "class: 1.0"),
        ("assets/spares/alder.ron", "price: 90.0", "price: 91.0"),
        ("assets/tests/alder.ron", "stroke handpump 10", "stroke handpump 12"),
    ] {
        let dir = tempfile::tempdir().unwrap();
        copy(&root().join("assets"), &dir.path().join("assets"));
        copy(&root().join("scenarios"), &dir.path().join("scenarios"));
        let path = dir.path().join(file);
        std::fs::write(&path, change(&std::fs::read_to_string(&path).unwrap(), from, to)).unwrap();
        let after = Library::open(dir.path()).unwrap().job(JOB).unwrap().digest;
        assert_ne!(before, after, "{file}");
    }
}

#[test]
fn a_car_that_nobody_has_drawn_gets_its_parts_in_rows() {
    use crate::diagram::{Origin, Sheet};
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    for car in library().cars().unwrap() {
        let file = dir.path().join(format!("assets/diagrams/{car}.ron"));
        if file.exists() {
            std::fs::remove_file(&file).unwrap();
        }
        let bare = Library::open(dir.path()).unwrap();
        let car = bare.car(&car).unwrap();
        let diagram = bare.diagram(&car).unwrap_or_else(|e| panic!("{e}"));
        assert_eq!(diagram.origin, Origin::Rows, "{}", car.id);
        let belong = |sheet: Sheet| {
            let parts = car.assembly.parts.iter();
            parts.filter(|p| p.kind.ports().iter().any(|d| d.domain == sheet.domain())).count()
        };
        assert_eq!(diagram.places.len(), Sheet::ALL.map(belong).iter().sum::<usize>(), "{}", car.id);
        // A file that is there and wrong is still said to be wrong.
        std::fs::write(&file, "Diagram(").unwrap();
        assert!(bare.diagram(&car).is_err());
    }
    assert_eq!(library().diagram(&library().car("alder").unwrap()).unwrap().origin, Origin::Drawn);
}

/// The digest of a job of a copy of our files, while no car had tests.
fn without_tests(root: &std::path::Path, job: &str) -> [u8; 32] {
    let (tests, aside) = (root.join("assets/tests"), root.join("aside"));
    std::fs::rename(&tests, &aside).unwrap();
    let job = Library::open(root).unwrap().job(job).unwrap();
    std::fs::rename(&aside, &tests).unwrap();
    assert_eq!(*job.tests, []);
    job.digest
}

#[test]
fn tests_belong_to_what_an_attempt_is_held_against_and_what_was_made_before_there_were_any_stays_valid() {
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    for job in library().check_all().unwrap() {
        let before = without_tests(dir.path(), &job.name());
        assert_ne!(before, job.digest, "{}", job.name());
        assert!(job.is_of(&hex::encode(before)), "{}", job.name());
        assert!(30 <= job.tests_here().count(), "{}", job.name());
    }
}

#[test]
fn a_job_added_at_the_end_of_a_pack_leaves_what_was_made_before_valid() {
    const JOB: &str = "first-shift/hum-at-the-lights";
    // The digest of an attempt that was made while the pack ended at its fourth job, with the other files as they are since
    // the 30th of November 2026 (then Alder got a socket for its relay, and every job on it another digest).
    const OF_FOUR: &str = "012f17d28e8f9cb8ea0522489f8c1cdfe1bbd92685b17988ff7223986d08fb07";
    assert!(library().job(JOB).unwrap().is_of(OF_FOUR));
    let now = library().job(JOB).unwrap();
    assert!(now.is_of(&hex::encode(now.digest)));
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    let jobs = dir.path().join("scenarios/first-shift/jobs");
    std::fs::copy(jobs.join("hum-at-the-lights.ron"), jobs.join("one-more.ron")).unwrap();
    let path = dir.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&path).unwrap();
    let last = library().pack("first-shift").unwrap().jobs.pop().unwrap();
    let longer = change(&text, &format!("\"{last}\""), &format!("\"{last}\", \"one-more\""));
    std::fs::write(&path, &longer).unwrap();
    let grown = Library::open(dir.path()).unwrap().job(JOB).unwrap();
    assert_ne!(grown.digest, now.digest);
    assert!(grown.is_of(&hex::encode(now.digest)) && grown.is_of(OF_FOUR));
    // The job that is new has no time before; and nothing else of the pack may have changed.
    let newest = Library::open(dir.path()).unwrap().job("first-shift/one-more").unwrap();
    assert_eq!(newest.digests_before, [without_tests(dir.path(), "first-shift/one-more")]);
    std::fs::write(&path, change(&longer, "cut_score: 70.0", "cut_score: 71.0")).unwrap();
    assert!(!Library::open(dir.path()).unwrap().job(JOB).unwrap().is_of(&hex::encode(now.digest)));
}
