//! No car is known by name in the program: cars, their parts, joints and covers are data.
//!
//! Every word of every text in the sources (strings, also those of macros and attributes, and doc comments) is held
//! against the names in `assets/vehicles`. A name that is a kind's word too (`battery`, `pump`) says nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use proc_macro2::{TokenStream, TokenTree};
use sim_core::parts::PartKind;
use syn::visit::{self, Visit};

use super::source::{CRATES, files_of, is_for_tests};
use crate::rig::library;

/// Words of the trade that a car's file happens to use as a name.
const TRADE: [&str; 2] = ["strap", "tank"];

/// Where names still stand, and why.
const REST: &[(&str, &str)] = &[
    (
        "game/assess/src/pack/keys.rs",
        "the model of a cover is called as the trade calls it, as one car's cover is",
    ),
    ("game/src/cli.rs", "an example of the command line has no car at hand and must name one that is there"),
];

/// Every name that a car's file gives to a thing, and what it is.
fn names() -> BTreeMap<String, &'static str> {
    let kinds: BTreeSet<String> = PartKind::NAMES
        .iter()
        .flat_map(|kind| [words_of_kind(kind), vec![kind.to_lowercase()]].concat())
        .collect();
    let library = library();
    let mut out = BTreeMap::new();
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let mut put = |name: &str, what| {
            if !kinds.contains(name) && !TRADE.contains(&name) {
                out.insert(name.to_owned(), what);
            }
        };
        put(&car.id, "a car");
        car.assembly.parts.iter().for_each(|p| put(&p.id, "a part"));
        car.assembly.joints.iter().for_each(|j| put(&j.id, "a joint"));
        car.covers.iter().for_each(|c| put(&c.id, "a cover"));
    }
    out
}

/// `VacuumPump` as `vacuum` and `pump`.
fn words_of_kind(kind: &str) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for c in kind.chars() {
        if c.is_uppercase() || out.is_empty() {
            out.push(String::new());
        }
        if let Some(word) = out.last_mut() {
            word.extend(c.to_lowercase());
        }
    }
    out
}

/// The words of all texts of a file.
#[derive(Default)]
struct Reader(BTreeSet<String>);

impl Reader {
    fn text(&mut self, text: &str) {
        let words = text.split(|c: char| !c.is_alphanumeric() && c != '_');
        self.0.extend(words.filter(|w| !w.is_empty()).map(str::to_lowercase));
    }

    fn tokens(&mut self, tokens: TokenStream) {
        for token in tokens {
            match token {
                TokenTree::Group(group) => self.tokens(group.stream()),
                TokenTree::Literal(literal) => self.text(&literal.to_string()),
                TokenTree::Ident(_) | TokenTree::Punct(_) => {}
            }
        }
    }
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        if !is_for_tests(super::source::attributes(item)) {
            visit::visit_item(self, item);
        }
    }

    fn visit_lit_str(&mut self, text: &'ast syn::LitStr) {
        self.text(&text.value());
    }

    fn visit_macro(&mut self, it: &'ast syn::Macro) {
        self.tokens(it.tokens.clone());
    }

    fn visit_meta_list(&mut self, it: &'ast syn::MetaList) {
        self.tokens(it.tokens.clone());
    }
}

fn words_of(text: &str) -> BTreeSet<String> {
    let mut reader = Reader::default();
    reader.visit_file(&syn::parse_file(text).unwrap());
    reader.0
}

#[test]
fn inv_no_car_is_known_by_name() {
    let names = names();
    assert!(40 < names.len(), "{names:?}");
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let (mut read, mut found, mut still) = (0, Vec::new(), BTreeSet::new());
    for file in CRATES.iter().flat_map(|(_, folder)| files_of(&root.join(folder))) {
        read += 1;
        let words = words_of(&std::fs::read_to_string(&file).unwrap());
        let file = file.strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
        for (name, what) in names.iter().filter(|(name, _)| words.contains(*name)) {
            match REST.iter().find(|(rest, _)| file.starts_with(rest)) {
                Some((rest, _)) => {
                    still.insert(*rest);
                }
                None => found.push(format!("{file}: {what}, {name}")),
            }
        }
    }
    assert!(250 < read, "{read}");
    assert!(found.is_empty(), "{} names: {found:#?}", found.len());
    for (rest, why) in REST {
        println!("{rest}: names {}: {why}", if still.contains(rest) { "still there" } else { "gone" });
    }
}

#[test]
fn a_name_is_found_in_strings_macros_attributes_and_docs_and_not_in_tests() {
    for text in [
        "const A: &str = \"at valve_m.store\";",
        "fn f() { format!(\"{} of valve_m\", 1); }",
        "#[arg(help = \"as valve_m\")] struct A;",
        "/// As `valve_m` is.\nstruct A;",
    ] {
        assert!(words_of(text).contains("valve_m"), "{text}");
    }
    for text in ["#[cfg(test)] mod tests { const A: &str = \"valve_m\"; }", "const VALVE_M: u8 = 1;"] {
        assert!(!words_of(text).contains("valve_m"), "{text}");
    }
    assert_eq!(words_of_kind("VacuumPump"), ["vacuum", "pump"]);
}
