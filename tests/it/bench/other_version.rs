//! Files of another version of the program, in every form there was, marked by the built program.

use assess::attempt::{Attempt, ENGINE, SCHEMA, SCHEMA_1, SCHEMA_2};
use serde_json::{Value, json};

use super::chain::{chained_values, values};
use super::outputs::finished;
use super::{ends_with_code, pinhole};

/// The bodies of a finished attempt without its mark, as another version wrote them in one of the forms; in one action the
/// state was another one, and in another somebody did something dangerous.
fn made_before(bytes: &[u8], schema: &str, engine: &str) -> Vec<Value> {
    let mut lines = values(bytes);
    lines.retain(|line| line.get("mark").is_none());
    if schema == SCHEMA_1 {
        lines.retain(|line| line.get("sitting").is_none());
    }
    lines[0]["schema"] = json!(schema);
    lines[0]["engine"] = json!(engine);
    for line in &mut lines {
        if line.get("sitting").is_some() {
            line["sitting"]["engine"] = json!(engine);
        }
    }
    if schema == SCHEMA_1 {
        let header = lines[0].as_object_mut().unwrap();
        header.remove("seed_from");
        header.insert("scripted".to_owned(), json!(true));
        for line in &mut lines[1..] {
            let step = line.as_object_mut().unwrap();
            step.remove("by");
            step.remove("at_unix_ms");
        }
    }
    let step = |lines: &[Value], n: u64| lines.iter().position(|line| line["n"] == json!(n)).unwrap();
    let (sixth, seventh) = (step(&lines, 6), step(&lines, 7));
    lines[sixth]["digest"] = json!("00000000000000ff");
    let breach = json!({"rule": "old_rule", "gravity": "minor", "text": "Told <in> a sentence."});
    lines[seventh].as_object_mut().unwrap().insert("breaches".to_owned(), json!([breach]));
    lines
}

#[test]
fn every_form_of_file_is_marked_from_its_recording_and_says_so() {
    let home = finished();
    let home = home.path();
    let bytes = std::fs::read(home.join("a.attempt")).unwrap();
    let own = Attempt::read(&home.join("a.attempt")).unwrap().mark.unwrap();
    for schema in [SCHEMA_1, SCHEMA_2, SCHEMA] {
        let path = home.join("old.attempt");
        std::fs::write(&path, chained_values(&made_before(&bytes, schema, "0.0.9"))).unwrap();
        let args = ["mark", "old.attempt", "--json", "o.json", "--csv", "o.csv", "--html", "o.html"];
        let text = ends_with_code(&pinhole(home).args(args).output().unwrap(), 0);
        let sheet = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for said in
            ["made with version 0.0.9", "from action 6 on", "From the recording:", "From today's model,"]
        {
            assert!(sheet.contains(said), "{schema}: {said:?}: {sheet}");
        }
        assert!(sheet.contains("minor: Told <in> a sentence."), "{schema}: {sheet}");
        let page = std::fs::read_to_string(home.join("o.html")).unwrap();
        assert!(
            page.contains("Told &lt;in&gt; a sentence.") && page.contains("From the recording:"),
            "{schema}"
        );
        let json: Value = serde_json::from_slice(&std::fs::read(home.join("o.json")).unwrap()).unwrap();
        assert_eq!(json["recording"]["differs_at"], json!(6), "{schema}");
        let total = json["marks"]["total"].as_f64().unwrap();
        assert!(
            (total - (own.total - 5.0)).abs() < 1e-9,
            "{schema}: five points for the breach, nothing else: {total}"
        );
        let table = std::fs::read_to_string(home.join("o.csv")).unwrap();
        let column =
            table.lines().next().unwrap().split(',').position(|name| name == "from_recording").unwrap();
        assert_eq!(table.lines().nth(1).unwrap().split(',').nth(column), Some("true"), "{schema}: {table}");
        // The mark is kept, and the next marking comes to the same.
        let kept = Attempt::read(&path).unwrap().mark.expect("it is kept");
        assert_eq!((kept.engine.as_str(), kept.total.to_bits()), (ENGINE, total.to_bits()), "{schema}");
        let again = ends_with_code(&pinhole(home).args(["mark", "old.attempt"]).output().unwrap(), 0);
        assert!(!again.contains("another mark"), "{again}");
        // The same by this version was altered.
        std::fs::write(&path, chained_values(&made_before(&bytes, schema, ENGINE))).unwrap();
        let error = ends_with_code(&pinhole(home).args(["mark", "old.attempt"]).output().unwrap(), 2);
        assert!(error.contains("action 6") && error.contains("cannot be marked"), "{schema}: {error}");
    }
}
