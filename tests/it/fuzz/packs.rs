//! Data files altered at random: refused with their place, or a car that can be worked at.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use assess::attempt::Seed;
use assess::pack::Library;
use assess::play::script::{self, ScriptError};
use assess::play::{Begin, Session, SessionError};

use super::run::Fate;
use crate::bench::{bad_input::copy_tree, root};
use dice::Dice;

/// What is done with a car that was loaded whole.
const TRIAL: &str = "try chocks on\ntry key on\ntry wait 30\ntry engine idle\ntry wait 20\ntry pedal press 200\n\
     try pedal release\ntry engine stop\ntry key off\ntry pedal pump 6 200\ntry wait 600\n";

/// A copy of the data files.
struct Data {
    root: tempfile::TempDir,
    files: Vec<PathBuf>,
}

impl Data {
    fn new() -> Self {
        let copy = tempfile::tempdir().unwrap();
        for folder in [
            "assets/vehicles",
            "assets/instruments",
            "assets/spares",
            "assets/tests",
            "assets/diagrams",
            "assets/rooms",
            "scenarios",
        ] {
            copy_tree(&root().join(folder), &copy.path().join(folder));
        }
        let mut files = Vec::new();
        list(copy.path(), &mut files);
        files.sort();
        Self { root: copy, files }
    }
}

fn list(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            list(&path, files);
        } else {
            files.push(path);
        }
    }
}

pub(super) fn altered() -> impl FnMut(&mut Dice) -> Fate {
    let data = Data::new();
    move |dice| {
        let file = dice.pick(&data.files);
        let good = std::fs::read(file).unwrap();
        let mut text = good.clone();
        for _ in 0..=dice.below(2) {
            alter(&mut text, dice);
        }
        std::fs::write(file, &text).unwrap();
        let fate = load(data.root.path(), file, dice);
        std::fs::write(file, &good).unwrap();
        fate
    }
}

/// Loads everything that hangs on the file, and works at the car.
fn load(root: &Path, file: &Path, dice: &mut Dice) -> Fate {
    let library = match Library::open(root) {
        Ok(library) => library,
        Err(error) => return refused(&error.to_string()),
    };
    let stem = file.file_stem().and_then(|s| s.to_str()).unwrap_or_default();
    if let Err(error) = library.cars().and_then(|cars| match cars.iter().find(|c| *c == stem) {
        Some(id) => library.car(id).and_then(|car| {
            library.spares(&car)?;
            library.tests(&car)?;
            if library.has_room(&car.id) {
                library.room(&car)?;
            }
            library.diagram(&car).map(|_| ())
        }),
        None => Ok(()),
    }) {
        return refused(&error.to_string());
    }
    let jobs = [
        "hum-at-the-lights",
        "flat-after-the-weekend",
        "hard-first-press",
        "new-in-the-mountains",
        "before-the-bread-round",
    ];
    let name = jobs.iter().find(|j| **j == stem).unwrap_or_else(|| dice.pick(&jobs));
    let job = match library.job(&format!("first-shift/{name}")) {
        Ok(job) => job,
        Err(error) => return refused(&error.to_string()),
    };
    let mut session = Session::rehearse(Arc::new(job), &Begin::rehearsal(Seed(u128::from(dice.bits()))));
    match script::play(&mut session, TRIAL, |_, _, _, _| {}) {
        Ok(()) => Fate::Whole,
        // What cannot be computed is said, not shown.
        Err(ScriptError::Session { source, .. }) if matches!(*source, SessionError::Fault(_)) => {
            Fate::Refused
        }
        // A car without that part, a kit without that tool.
        Err(ScriptError::Words { .. }) => Fate::Whole,
        Err(error) => panic!("{error}"),
    }
}

fn refused(text: &str) -> Fate {
    assert!(!text.is_empty());
    Fate::Refused
}

/// Alters a file as text: numbers, words, lines, bytes.
fn alter(text: &mut Vec<u8>, dice: &mut Dice) {
    if text.is_empty() {
        return;
    }
    match dice.below(9) {
        0 => {
            let at = dice.below(text.len());
            text[at] ^= 1 << dice.below(8);
        }
        1 => text.truncate(dice.below(text.len())),
        2 => {
            let at = dice.below(text.len());
            let noise: Vec<u8> = (0..dice.below(20)).map(|_| dice.bits() as u8).collect();
            text.splice(at..at, noise);
        }
        3 | 4 => lines(text, dice),
        _ => numbers(text, dice),
    }
}

fn lines(text: &mut Vec<u8>, dice: &mut Dice) {
    let mut all: Vec<Vec<u8>> = text.split_inclusive(|b| *b == b'\n').map(<[u8]>::to_vec).collect();
    let (a, b) = (dice.below(all.len()), dice.below(all.len()));
    match dice.below(4) {
        0 => {
            all.remove(a);
        }
        1 => all.swap(a, b),
        2 => {
            let copy = all[a].clone();
            all.insert(b, copy);
        }
        _ => {
            let copy = all[a].clone();
            let many = 1 + dice.below(3000);
            all.splice(a..a, std::iter::repeat_n(copy, many));
        }
    }
    *text = all.concat();
}

/// Another number in the place of one.
fn numbers(text: &mut Vec<u8>, dice: &mut Dice) {
    let starts: Vec<usize> = (0..text.len())
        .filter(|i| {
            text[*i].is_ascii_digit() && (*i == 0 || !matches!(text[*i - 1], b'0'..=b'9' | b'.' | b'_'))
        })
        .filter(|i| *i == 0 || !text[*i - 1].is_ascii_alphabetic())
        .collect();
    if starts.is_empty() {
        return;
    }
    let start = *dice.pick(&starts);
    let length = text[start..].iter().take_while(|b| b.is_ascii_digit() || **b == b'.').count();
    let old: f64 = std::str::from_utf8(&text[start..start + length]).unwrap_or("1").parse().unwrap_or(1.0);
    let factor = *dice.pick(&[0.0, 1e-12, 1e-3, 0.1, 0.5, 0.9, 0.97, 1.03, 1.1, 2.0, 10.0, 1e3, 1e9, 1e300]);
    let new = match dice.below(12) {
        0 => "NaN".to_owned(),
        1 => "inf".to_owned(),
        2 => "-1.0".to_owned(),
        3 => "9".repeat(1 + dice.below(400)),
        4 => "65536".to_owned(),
        _ => format!("{:?}", old * factor),
    };
    text.splice(start..start + length, new.into_bytes());
}
