//! The window knows no car: where a car stands and what it looks like is data.

use std::collections::BTreeSet;

use assess::pack::Library;

use super::source;
use crate::bench::root;

/// Names that a part has, and something of the window too: an argument of a sentence.
const ALSO_OTHERS: [&str; 2] = ["engine", "key"];

#[test]
fn inv_the_window_names_no_car_and_nothing_of_one() {
    let library = Library::open(&root()).unwrap_or_else(|e| panic!("{e}"));
    let mut names = BTreeSet::new();
    for id in library.cars().unwrap_or_else(|e| panic!("{e}")) {
        let car = library.car(&id).unwrap_or_else(|e| panic!("{e}"));
        names.extend(car.assembly.parts.iter().map(|p| p.id.clone()));
        names.extend(car.assembly.ports().map(|port| car.assembly.port_name(port)));
        names.extend(car.assembly.joints.iter().map(|j| j.id.clone()));
        names.extend(car.covers.iter().map(|c| c.id.clone()));
        names.insert(id);
    }
    assert!(60 < names.len(), "{} names", names.len());
    let (mut texts, mut found) = (0, Vec::new());
    for file in source::of_crate("game/window/src").into_values() {
        texts += file.texts.len();
        let named = file.texts.iter().filter(|t| names.contains(*t) && !ALSO_OTHERS.contains(&t.as_str()));
        found.extend(named.map(|text| format!("{}: {text:?}", file.file.display())));
    }
    // What reads nothing finds nothing.
    assert!(500 < texts, "{texts} texts");
    assert!(found.is_empty(), "{found:#?}");
}
