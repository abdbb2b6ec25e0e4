//! What the window writes: as careful as the command line.

use crate::places::Places;
use crate::shop::{Marking, RemarkKind, Shop};

const JOB: &str = "first-shift/flat-after-the-weekend";

fn shop(home: &std::path::Path) -> Shop {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    Shop::open(&Places { data: Some(root), attempts: Some(home.to_owned()) }).unwrap()
}

#[test]
fn an_attempt_is_not_called_as_its_sheet() {
    let home = tempfile::tempdir().unwrap();
    let mut shop = shop(home.path());
    for name in ["a.html", "a.csv", "a.PNG"] {
        let error = shop.begin(JOB, Some(&home.path().join(name)), None).unwrap_err();
        assert!(error.to_string().contains(".attempt"), "{error:#}");
        assert!(!home.path().join(name).exists());
    }
}

#[test]
fn a_sheet_that_cannot_be_written_costs_no_mark_and_no_strangers_page() {
    let home = tempfile::tempdir().unwrap();
    let mut shop = shop(home.path());
    shop.begin(JOB, Some(&home.path().join("a.attempt")), Some("5eed".parse().unwrap())).unwrap();
    std::fs::write(home.path().join("a.html"), "<p>mine").unwrap();
    let script = shop.root().join("scenarios/first-shift/reference/flat-after-the-weekend.script");
    shop.play(&std::fs::read_to_string(script).unwrap()).unwrap();
    shop.wait_for_mark();
    assert!(matches!(shop.marking(), Marking::Done(_)), "{:?}", shop.marking());
    let words = crate::words::Words::built_in();
    let trouble: Vec<String> = shop
        .remarks()
        .iter()
        .filter(|r| r.kind == RemarkKind::Trouble)
        .map(|r| words.remark(&shop, r))
        .collect();
    assert!(trouble.iter().any(|t| t.contains("a.html") && t.contains("move it away")), "{trouble:?}");
    assert_eq!(std::fs::read(home.path().join("a.html")).unwrap(), b"<p>mine");
}
