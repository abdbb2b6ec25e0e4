//! The mark sheet, marked in earnest: a guess of the right part, well repaired and released.

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;

use super::bench::{Bench, JOB, carry_out, press, tree, window_with};
use crate::shown::Page;

fn marked(lang: &str) -> Harness<'static, Bench> {
    let script = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/scripts/guess.script");
    let script = std::fs::read_to_string(script).unwrap();
    window_with(Page::MarkSheet, lang, (1280.0, 720.0), |bench| {
        bench.shop.play(&script).unwrap();
        bench.shop.wait_for_mark();
    })
}

#[test]
fn the_mark_sheet_says_in_words_what_its_charts_show() {
    let window = marked("en");
    window.get_by_label_contains("Not yet competent");
    window.get_by_label_contains("It was: check valve towards the engine.");
    window.get_by_label("✖ not met: evidence at least 80\u{a0}%");
    // The path of certainty, its true class named.
    window.get_by_label_contains("check valve towards the engine (it was this): 14 % on the complaint alone");
    // A cell of the chart as a sentence.
    assert!(window.query_all_by_label_contains("took it from").count() > 8);
    window.get_by_label_contains("What the air was really doing");
    press_and_leave(window);
}

fn press_and_leave(mut window: Harness<'static, Bench>) {
    press(&mut window, "mark-workshop");
    assert_eq!(window.state().ui.page, Page::Workshop);
    window.state_mut().ui.page = Page::MarkSheet;
    window.run_steps(2);
    press(&mut window, "mark-back");
    carry_out(&mut window);
    assert_eq!(window.state().ui.page, Page::FrontDesk);
    assert!(window.state().shop.session().is_none());
}

#[test]
fn in_german_only_the_packs_own_text_is_english() {
    let window = marked("de");
    let debrief = window.state().shop.job().unwrap().debrief.clone();
    let sheet = tree(&window);
    window.get_by_label_contains("Befund „Rückschlagventil zum Motor“, zu 95\u{a0}% sicher");
    let english: Vec<&String> = sheet
        .iter()
        .filter(|line| [" the ", " and ", " of ", " your "].iter().any(|w| line.contains(w)))
        .filter(|line| !debrief.lines().any(|d| !d.is_empty() && line.contains(d)))
        .collect();
    assert!(english.is_empty(), "{JOB}: {english:#?}");
}

#[test]
fn one_looks_round_after_the_hand_back_and_comes_back() {
    for lang in ["en", "de"] {
        let mut window = marked(lang);
        press(&mut window, "mark-workshop");
        assert_eq!(window.state().ui.page, Page::Workshop);
        let look = window.state().words.say("over-look");
        window.get_by_label(&look);
        // Whoever clicks a thing is told that this is all.
        window.state_mut().ui.open_menu(front::hands::Thing::Key, egui::pos2(500.0, 300.0));
        window.run_steps(3);
        let over = window.state().words.say("menu-over");
        window.get_by_label(&over);
        window.key_press(egui::Key::Escape);
        window.run_steps(3);
        assert!(window.state().ui.menu.is_none());
        press(&mut window, "over-back");
        assert_eq!(window.state().ui.page, Page::MarkSheet);
    }
}

#[test]
fn the_page_beside_the_attempt_is_opened_or_says_why_not_and_its_path_is_copied() {
    let script = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/scripts/guess.script");
    let script = std::fs::read_to_string(script).unwrap();
    let mut page = std::path::PathBuf::new();
    let mut window = window_with(Page::MarkSheet, "de", (1280.0, 720.0), |bench| {
        let file = bench.folder().join("x.attempt");
        page = file.with_extension("html");
        bench.shop.begin(JOB, Some(&file), Some(assess::attempt::Seed(1))).unwrap();
        bench.shop.play(&script).unwrap();
        bench.shop.wait_for_mark();
    });
    let said = page.display().to_string();
    window.get_by_label(&said);
    let copy = window.state().words.say("mark-page-copy");
    let button = window.get_by_label(&copy);
    button.scroll_to_me();
    window.run_steps(10);
    window.get_by_label(&copy).click();
    window.run_steps(1);
    let copied = |window: &Harness<'_, Bench>| {
        let commands = &window.output().platform_output.commands;
        commands.iter().any(|c| matches!(c, egui::OutputCommand::CopyText(text) if *text == said))
    };
    let mut seen = copied(&window);
    for _ in 0..3 {
        window.run_steps(1);
        seen |= copied(&window);
    }
    assert!(seen, "the path is copied");
    // Nothing is opened in a test: the file is gone, and that is said.
    std::fs::remove_file(&page).unwrap();
    press(&mut window, "mark-page-open");
    let why = window.state().words.say("mark-page-missing");
    window.get_by_label(&why);
}

/// Where the pack tells nothing after the hand-back, the page says that it was handed in, and nothing else.
#[test]
fn handed_in_is_all_that_the_page_says() {
    let script = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/scripts/guess.script");
    let script = std::fs::read_to_string(script).unwrap();
    for lang in ["en", "de"] {
        let window = window_with(Page::MarkSheet, lang, (1280.0, 720.0), |bench| {
            let mut job = (**bench.shop.job().unwrap()).clone();
            job.after_hand_back = assess::pack::job::AfterHandBack::Nothing;
            bench.shop.rehearse_as(job, assess::attempt::Seed(0x5eed));
            bench.shop.play(&script).unwrap();
            bench.shop.wait_for_mark();
        });
        assert!(window.state().shop.session().is_some_and(|s| s.is_handed_in()));
        let words = &window.state().words;
        window.get_by_label(&words.say("mark-handed-in"));
        window.get_by_label(&words.say("mark-handed-in-what"));
        let page = tree(&window).join("\n");
        for key in
            ["mark-competent", "mark-not-yet", "mark-parts", "mark-debrief", "mark-chart", "mark-running"]
        {
            assert!(!page.contains(&words.say(key)), "{lang}: {key}: {page}");
        }
    }
}

/// An instructor's override stands over the program's own mark, and it is clear which holds.
#[test]
fn an_override_is_shown_with_the_programs_own_mark_below() {
    let script = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/scripts/guess.script");
    let script = std::fs::read_to_string(script).unwrap();
    let window = window_with(Page::MarkSheet, "de", (1280.0, 720.0), |bench| {
        let seed = assess::attempt::Seed(1);
        let file = bench.folder().join("x.attempt");
        bench.shop.begin(JOB, Some(&file), Some(seed)).unwrap();
        bench.shop.play(&script).unwrap();
        bench.shop.wait_for_mark();
        // Another job lets the file go.
        bench.shop.rehearse(JOB, seed).unwrap();
        let ruling = assess::attempt::overrule::Ruling {
            total: Some(81.5),
            competent: Some(true),
            reason: "am Fahrzeug gezeigt".to_owned(),
            by: "K. M.".to_owned(),
        };
        let clock = assess::attempt::clock::Clock::standing(0);
        assess::attempt::overrule::overrule(&file, &ruling, &clock).unwrap();
        bench.shop.carry_on(&file).unwrap();
        bench.shop.wait_for_mark();
    });
    window.get_by_label_contains("81,5 von 100, bestanden: das gilt, so hat K. M. entschieden");
    window.get_by_label_contains("am Fahrzeug gezeigt");
    window.get_by_label("Bewertung des Programms");
    window.get_by_label_contains("Noch nicht bestanden");
}
