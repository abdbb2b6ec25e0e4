//! True values leave the core through one type, [`sim_core::Opened`].
//!
//! The compiler holds that nobody gets at what is private; here it is held that the workshop makes nothing of it public
//! anywhere else.

use std::collections::BTreeSet;
use std::path::Path;

use proc_macro2::{TokenStream, TokenTree};
use quote::ToTokens;
use syn::visit::{self, Visit};

use super::source::{self, files_of};

/// What holds true values, or gives them.
const TRUE: [&str; 8] = ["Circuit", "Numbers", "Opened", "Predicted", "Seat", "TraceRow", "Watch", "World"];

/// The one file that may.
const OPENED: &str = "opened.rs";

/// Public ways out of a file, and which of them give true values.
#[derive(Default)]
struct Reader {
    ways: usize,
    leaks: Vec<String>,
}

fn words(tokens: TokenStream, into: &mut BTreeSet<String>) {
    for token in tokens {
        match token {
            TokenTree::Group(group) => words(group.stream(), into),
            TokenTree::Ident(ident) => {
                into.insert(ident.to_string());
            }
            TokenTree::Literal(_) | TokenTree::Punct(_) => {}
        }
    }
}

impl Reader {
    fn way(&mut self, public: &syn::Visibility, name: &str, gives: &impl ToTokens) {
        if !matches!(public, syn::Visibility::Public(_)) {
            return;
        }
        self.ways += 1;
        let mut given = BTreeSet::new();
        words(gives.to_token_stream(), &mut given);
        self.leaks.extend(TRUE.iter().filter(|t| given.contains(**t)).map(|t| format!("{name} gives {t}")));
    }
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        if !source::is_for_tests(source::attributes(item)) {
            visit::visit_item(self, item);
        }
    }

    fn visit_impl_item_fn(&mut self, it: &'ast syn::ImplItemFn) {
        self.way(&it.vis, &it.sig.ident.to_string(), &it.sig.output);
    }

    fn visit_item_fn(&mut self, it: &'ast syn::ItemFn) {
        self.way(&it.vis, &it.sig.ident.to_string(), &it.sig.output);
    }

    fn visit_item_struct(&mut self, it: &'ast syn::ItemStruct) {
        // What a trace consists of is given by `Opened` alone.
        if TRUE.contains(&it.ident.to_string().as_str()) {
            return;
        }
        for field in it.fields.iter().filter(|_| matches!(it.vis, syn::Visibility::Public(_))) {
            let name = field.ident.as_ref().map_or_else(|| "0".to_owned(), ToString::to_string);
            self.way(&field.vis, &format!("{}.{name}", it.ident), &field.ty);
        }
    }
}

fn read(text: &str) -> Reader {
    let mut reader = Reader::default();
    reader.visit_file(&syn::parse_file(text).unwrap());
    reader
}

#[test]
fn inv_true_values_leave_the_workshop_through_one_type() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let (mut ways, mut found, mut opened) = (0, Vec::new(), 0);
    for file in files_of(&root.join("sim-core/src/workshop")) {
        let reader = read(&std::fs::read_to_string(&file).unwrap());
        if file.ends_with(OPENED) {
            opened = reader.leaks.len();
            continue;
        }
        ways += reader.ways;
        let file = file.strip_prefix(&root).unwrap().display().to_string();
        found.extend(reader.leaks.into_iter().map(|leak| format!("{file}: {leak}")));
    }
    assert!(40 < ways, "{ways} ways out");
    assert!(4 < opened, "{opened} of them under the hood");
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn a_way_out_is_found() {
    for (text, leaks) in [
        ("impl W { pub fn circuit(&self) -> &Circuit { &self.0 } }", 1),
        ("impl W { pub(super) fn circuit(&self) -> &Circuit { &self.0 } }", 0),
        ("impl W { pub fn run(circuit: &Circuit) -> bool { true } }", 0),
        ("pub struct Outcome { pub a: u8, pub predicted: Option<Predicted>, world: World }", 1),
        ("pub struct Watch { pub start: Circuit }", 0),
    ] {
        assert_eq!(read(text).leaks.len(), leaks, "{text}");
    }
}
