//! The mark sheet in every language: numbers are the same, sentences are not.

use std::collections::BTreeSet;

use assess::locale::{Locale, Naming};
use assess::report;

use super::attempts::{evaluation, sheet};

/// Lines that hold a sentence: at least four words that begin with a small letter and are no names to type.
fn sentences(page: &str) -> BTreeSet<&str> {
    let is_word = |w: &&str| w.len() > 2 && w.chars().all(|c| c.is_lowercase());
    page.lines().map(str::trim).filter(|line| 3 < line.split(' ').filter(is_word).count()).collect()
}

#[test]
fn inv_a_sheet_says_the_same_numbers_in_every_language_and_no_english_sentence() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let english = sheet();
    let page = report::terminal::render(english, &Locale::built_in());
    let html = report::html::render(english, &Locale::built_in());
    let tags = Locale::open(&root, &[]).unwrap().tags().to_vec();
    for tag in tags {
        let words = Locale::open(&root, std::slice::from_ref(&tag)).unwrap();
        for naming in [Naming::Typed, Naming::Called] {
            let said = evaluation().sheet(&words, naming);
            let (ours, theirs) = (said.marks.as_ref().unwrap(), english.marks.as_ref().unwrap());
            let numbers = |m: &assess::marks::sheet::Marks| {
                (m.total, m.competent, m.deducted, m.parts.iter().map(|p| p.points).collect::<Vec<_>>())
            };
            assert_eq!(numbers(ours), numbers(theirs), "{tag}");
            assert_eq!(words.missing(), Vec::<String>::new(), "{tag} lacks keys");
            if tag == "en" {
                continue;
            }
            for (ours, theirs) in ours.parts.iter().zip(&theirs.parts) {
                assert_ne!(ours.why, theirs.why, "{tag}: {} is said in English", ours.letter);
            }
            let ours = report::terminal::render(&said, &words);
            let same: Vec<_> = sentences(&ours).intersection(&sentences(&page)).copied().collect();
            assert!(same.is_empty(), "{tag}: left in English on the page:\n{}", same.join("\n"));
            let ours = report::html::render(&said, &words).replace('>', ">\n");
            let theirs = html.replace('>', ">\n");
            // The style sheet is no sentence.
            let text = |line: &&str| !line.contains(['{', ';', '=']);
            let same: Vec<_> =
                sentences(&ours).intersection(&sentences(&theirs)).copied().filter(text).collect();
            assert!(same.is_empty(), "{tag}: left in English in the page's file:\n{}", same.join("\n"));
        }
    }
}
