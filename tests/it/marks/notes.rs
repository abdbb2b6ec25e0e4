//! What is written into the notebook: slips are free, guesses and overwritten values are worth nothing.

use assess::marks::mark;
use assess::marks::sheet::RecordLine;
use assess::play::course::Worth;

use super::attempts::{course, job, play};

fn worths(text: &str) -> Vec<Worth> {
    course(&play(text)).notes.iter().map(|note| note.worth).collect()
}

/// A line of the record as the sheet has it; the car need not be handed back for that.
fn record_line(text: &str, item: &str) -> RecordLine {
    let sheet = crate::told::sheet(mark(&play(text), &job()).unwrap());
    sheet.record.into_iter().find(|line| line.item == item).expect("a line of the record")
}

/// Every whole kPa that a barometer can show, and the one it shows somewhere among them.
fn every_value() -> String {
    let guesses: Vec<String> = (60..=110).map(|kpa| format!("note 1 {kpa} kPa for day\n")).collect();
    format!("read barometer\n{}note 1 shown for day\n", guesses.concat())
}

#[test]
fn inv_a_hundred_values_for_one_reading_are_a_guess() {
    let worths = worths(&every_value());
    assert!(50 < worths.len());
    assert!(worths.iter().all(|worth| matches!(worth, Worth::Misread | Worth::Guessed)), "{worths:?}");
    assert_eq!(worths.last(), Some(&Worth::Guessed), "the last one was right");
    let line = record_line(&every_value(), "day");
    assert!(!line.filled && line.why.contains("guessed"), "{line:?}");
}

#[test]
fn inv_another_look_in_an_unchanged_state_gives_no_new_guesses() {
    let text = "read barometer\nnote 60 kPa\nread barometer\nnote 70 kPa\nread barometer\nnote shown\n";
    assert_eq!(worths(text), [Worth::Misread, Worth::Misread, Worth::Guessed]);
    let later = "read barometer\nnote 60 kPa\nnote 70 kPa\nwait 100\nread barometer\nnote shown\n";
    assert_eq!(worths(later), [Worth::Misread, Worth::Misread, Worth::Counts], "it was read anew");
}

#[test]
fn inv_who_misreads_once_and_corrects_it_loses_nothing() {
    let text = "read barometer\nnote 60 kPa for day\nnote 1 shown for day\n";
    assert_eq!(worths(text), [Worth::Misread, Worth::Counts]);
    assert!(record_line(text, "day").filled);
    // Nor need the correction name the line again.
    let line = record_line("read barometer\nnote 60 kPa for day\nnote 1 shown\n", "day");
    assert!(line.filled, "{line:?}");
    // Twice is forgiven to whoever had it right in between.
    let text = "read barometer\nnote 60 kPa\nnote 1 shown\nnote 1 70 kPa\n";
    assert_eq!(worths(text), [Worth::Misread, Worth::StruckOut, Worth::Misread]);
}

#[test]
fn inv_what_stands_last_counts() {
    let wrong = "read barometer\nnote shown for day\nnote 1 9 kPa for day\n";
    assert_eq!(worths(wrong), [Worth::StruckOut, Worth::Misread]);
    let line = record_line(wrong, "day");
    assert!(!line.filled && line.why.contains("misread"), "{line:?}");
    let line = record_line("read barometer\nnote shown for day\nnote 1 9 kPa\n", "day");
    assert!(!line.filled && line.why.contains("overwritten"), "{line:?}");
    let mended = format!("{wrong}note 1 shown for day\n");
    assert_eq!(worths(&mended), [Worth::StruckOut, Worth::Misread, Worth::Counts]);
    assert!(record_line(&mended, "day").filled);
}

#[test]
fn inv_the_finding_locks_what_stood_in_the_notebook() {
    let text = "read barometer\nnote shown for day\nfinding relay sure 0.80\nnote 1 9 kPa for day\n";
    assert_eq!(worths(text), [Worth::Counts, Worth::Misread], "it stood there when the finding was given");
    assert!(!record_line(text, "day").filled, "but the record has the wrong one now");
    let text = "read barometer\nnote 9 kPa\nfinding relay sure 0.80\nnote 1 shown\n";
    let course = course(&play(text));
    let counts = course.notes.iter().filter(|note| note.worth == Worth::Counts);
    assert!(counts.into_iter().all(|note| course.lock() < note.deed), "corrected too late for the finding");
}

#[test]
fn inv_a_struck_out_note_does_not_make_the_next_look_a_repeat() {
    let text = "read barometer\nnote shown\nnote 1 9 kPa\nread barometer\nnote shown\n";
    assert_eq!(worths(text), [Worth::StruckOut, Worth::Misread, Worth::Counts]);
}
