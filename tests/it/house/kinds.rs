//! A kind that is forgotten must not compile: what tells kinds apart names every one.
//!
//! In `sim-core` a lint of the compiler's holds this for lists by themselves. In tuples and above it, where matches over
//! egui's own long lists need a last arm for the rest, those over our kinds are read here.

use std::path::Path;

use syn::visit::{self, Visit};

use super::source::{attributes, files_of, is_for_tests};

/// Lists of kinds that must be named one by one.
const KINDS: [&str; 20] = [
    // What there is, and what hands do with it.
    "PartKind",
    "InstrumentKind",
    "Held",
    "Measured",
    "ReadFrom",
    "Worked",
    "Action",
    "Sense",
    "Cue",
    "Cycle",
    "RecordKind",
    // What is said.
    "Notice",
    "Hazard",
    "Refusal",
    "Reason",
    "Unmet",
    "Wanted",
    "Left",
    "NoFit",
    "Misfit",
];

/// Folders in which they are.
const FOLDERS: [&str; 5] =
    ["sim-core/src", "game/assess/src", "game/front/src", "game/window/src", "game/src"];

/// Matches with an arm for the rest, and which kinds they tell apart.
#[derive(Default)]
struct Reader {
    matches: usize,
    hidden: Vec<String>,
}

/// Where in a pattern something stands: in which tuple or wrapper (`Some`, `Ok`), at which place, from outside in.
type At = Vec<(String, usize)>;

/// The lists that a pattern names a kind of, and where.
fn named(pattern: &syn::Pat, at: &At, out: &mut Vec<(At, String)>) {
    let path = match pattern {
        syn::Pat::TupleStruct(p) => &p.path,
        syn::Pat::Struct(p) => &p.path,
        syn::Pat::Path(p) => &p.path,
        syn::Pat::Or(p) => return p.cases.iter().for_each(|case| named(case, at, out)),
        syn::Pat::Tuple(p) => return inside(at, "", &p.elems).for_each(|(at, p)| named(p, &at, out)),
        syn::Pat::Reference(p) => return named(&p.pat, at, out),
        syn::Pat::Paren(p) => return named(&p.pat, at, out),
        _ => return,
    };
    let list = path.segments.iter().nth_back(1).map(|s| s.ident.to_string());
    if let Some(list) = list.filter(|list| KINDS.contains(&list.as_str())) {
        out.push((at.clone(), list));
    } else if let syn::Pat::TupleStruct(p) = pattern {
        inside(at, &last(&p.path), &p.elems).for_each(|(at, p)| named(p, &at, out));
    }
}

fn last(path: &syn::Path) -> String {
    path.segments.last().map(|s| s.ident.to_string()).unwrap_or_default()
}

fn inside<'a, P>(
    at: &'a At,
    wrapper: &'a str,
    elems: &'a syn::punctuated::Punctuated<syn::Pat, P>,
) -> impl Iterator<Item = (At, &'a syn::Pat)> {
    elems.iter().enumerate().map(move |(n, p)| ([at.as_slice(), &[(wrapper.to_owned(), n)]].concat(), p))
}

/// Whether it takes whatever is left where `at` names a kind, whatever it asks for beside it.
fn takes_the_rest(pattern: &syn::Pat, at: &[(String, usize)]) -> bool {
    match pattern {
        syn::Pat::Wild(_) => true,
        // `None` and a constant look like a name that is given.
        syn::Pat::Ident(p) => {
            p.subpat.is_none() && !p.ident.to_string().starts_with(|c: char| c.is_uppercase())
        }
        syn::Pat::Or(p) => p.cases.iter().any(|case| takes_the_rest(case, at)),
        syn::Pat::Tuple(p) => takes_inside("", &p.elems, at),
        syn::Pat::TupleStruct(p) => takes_inside(&last(&p.path), &p.elems, at),
        syn::Pat::Reference(p) => takes_the_rest(&p.pat, at),
        syn::Pat::Paren(p) => takes_the_rest(&p.pat, at),
        _ => false,
    }
}

fn takes_inside<P>(
    wrapper: &str,
    elems: &syn::punctuated::Punctuated<syn::Pat, P>,
    at: &[(String, usize)],
) -> bool {
    let [(named, n), rest @ ..] = at else { return false };
    named == wrapper && elems.iter().nth(*n).is_some_and(|p| takes_the_rest(p, rest))
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        if !is_for_tests(attributes(item)) {
            visit::visit_item(self, item);
        }
    }

    fn visit_expr_match(&mut self, it: &'ast syn::ExprMatch) {
        let mut all = Vec::new();
        it.arms.iter().for_each(|arm| named(&arm.pat, &At::new(), &mut all));
        self.matches += usize::from(!all.is_empty());
        let hides = |(at, _): &&(At, String)| {
            it.arms.iter().any(|arm| arm.guard.is_none() && takes_the_rest(&arm.pat, at))
        };
        self.hidden.extend(all.iter().find(hides).map(|(_, list)| list.clone()));
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
        "Some(PartKind::Hose(_)) => 1, _ => 2",
        "Some(PartKind::Hose(_)) => 1, Some(_) => 2, None => 3",
        "(Some(Held::AtPart), true) => 1, (Some(_), true) => 2, (Some(Held::OnHose) | None, _) => 3",
        "(1, Reason::Over) => 1, (_, _) => 2",
    ] {
        assert_eq!(hidden(arms), 1, "{arms}");
    }
    for arms in [
        "PartKind::Hose(_) => 1, PartKind::Tee(_) => 2",
        "Key::A => 1, _ => 2",
        "(Held::AtPart, 1) => 1, (Held::AtPart, _) => 2, (Held::OnHose, _) => 3",
        "Some(Reason::Over) => 1, Some(Reason::BackOff) => 2, None => 3",
        "Form::Until(Cue::LampOn) => 1, Form::Until(Cue::LampOut) => 2, Form::Stroke(_) => 3",
        "PartKind::Hose(_) => 1, k if k.old() => 2, PartKind::Tee(_) => 3",
    ] {
        assert_eq!(hidden(arms), 0, "{arms}");
    }
}
