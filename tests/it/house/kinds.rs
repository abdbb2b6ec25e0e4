//! A kind that is forgotten must not compile: what tells kinds apart names every one.
//!
//! In `sim-core` a lint of the compiler's holds this. Above it, matches over egui's own long lists need a last arm for
//! the rest, so here only those over our kinds are read.

use std::path::Path;

use syn::visit::{self, Visit};

use super::source::files_of;

/// Lists of kinds that must be named one by one.
const KINDS: [&str; 3] = ["PartKind", "InstrumentKind", "Action"];

/// Folders in which they are.
const FOLDERS: [&str; 2] = ["game/window/src/ui", "game/assess/src/diagram"];

/// Matches with an arm for the rest, and which kinds they tell apart.
#[derive(Default)]
struct Reader {
    matches: usize,
    hidden: Vec<String>,
}

/// The list that a pattern names a kind of.
fn named(pattern: &syn::Pat) -> Option<String> {
    let path = match pattern {
        syn::Pat::TupleStruct(p) => &p.path,
        syn::Pat::Struct(p) => &p.path,
        syn::Pat::Path(p) => &p.path,
        syn::Pat::Or(p) => return p.cases.iter().find_map(named),
        syn::Pat::Tuple(p) => return p.elems.iter().find_map(named),
        syn::Pat::Reference(p) => return named(&p.pat),
        syn::Pat::Paren(p) => return named(&p.pat),
        _ => return None,
    };
    let list = path.segments.iter().nth_back(1)?.ident.to_string();
    KINDS.contains(&list.as_str()).then_some(list)
}

/// Whether it takes whatever is left, in the place where `at` names a kind.
fn takes_the_rest(pattern: &syn::Pat) -> bool {
    match pattern {
        syn::Pat::Wild(_) => true,
        syn::Pat::Ident(p) => p.subpat.is_none(),
        syn::Pat::Tuple(p) => p.elems.iter().all(takes_the_rest),
        syn::Pat::Reference(p) => takes_the_rest(&p.pat),
        syn::Pat::Paren(p) => takes_the_rest(&p.pat),
        _ => false,
    }
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_expr_match(&mut self, it: &'ast syn::ExprMatch) {
        if let Some(list) = it.arms.iter().find_map(|arm| named(&arm.pat)) {
            self.matches += 1;
            if it.arms.iter().any(|arm| arm.guard.is_none() && takes_the_rest(&arm.pat)) {
                self.hidden.push(list);
            }
        }
        visit::visit_expr_match(self, it);
    }
}

fn read(text: &str) -> Reader {
    let mut reader = Reader::default();
    reader.visit_file(&syn::parse_file(text).unwrap());
    reader
}

#[test]
fn inv_no_arm_for_the_rest_hides_a_kind() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let all = FOLDERS.iter().flat_map(|folder| files_of(&root.join(folder)));
    let (mut matches, mut found) = (0, Vec::new());
    for file in all {
        let reader = read(&std::fs::read_to_string(&file).unwrap());
        matches += reader.matches;
        let file = file.strip_prefix(&root).unwrap().display().to_string();
        found.extend(reader.hidden.into_iter().map(|list| format!("{file}: the rest of {list}")));
    }
    assert!(10 < matches, "{matches}");
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn an_arm_for_the_rest_is_found_and_one_with_a_condition_is_none() {
    let hidden = |arms: &str| read(&format!("fn f() {{ match k {{ {arms} }} }}")).hidden.len();
    for arms in [
        "PartKind::Hose(_) => 1, _ => 2",
        "(PartKind::Hose(_), true) => 1, (_, _) => 2",
        "&Action::Key(on) => 1, other => 2",
        "Some(1) => match k { InstrumentKind::Lamp => 1, _ => 2 }, None => 3",
    ] {
        assert_eq!(hidden(arms), 1, "{arms}");
    }
    for arms in [
        "PartKind::Hose(_) => 1, PartKind::Tee(_) => 2",
        "Key::A => 1, _ => 2",
        "PartKind::Hose(_) => 1, k if k.old() => 2, PartKind::Tee(_) => 3",
    ] {
        assert_eq!(hidden(arms), 0, "{arms}");
    }
}
