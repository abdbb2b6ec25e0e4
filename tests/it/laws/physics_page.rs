//! `sim-core/docs/physics.md` names only what exists, and leaves out no flow law and no part.

use std::path::Path;

fn source() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../sim-core/src")
}

fn page() -> String {
    std::fs::read_to_string(source().join("../docs/physics.md")).unwrap()
}

/// What the page puts between backquotes: `file.rs` or `file.rs: name`.
fn named() -> Vec<(String, Option<String>)> {
    let page = page();
    let quoted = page.split('`').skip(1).step_by(2);
    quoted
        .filter(|q| q.contains(".rs"))
        .map(|q| match q.split_once(": ") {
            Some((file, name)) => (file.to_owned(), Some(name.to_owned())),
            None => (q.to_owned(), None),
        })
        .collect()
}

#[test]
fn every_equation_names_code_that_exists() {
    let named = named();
    assert!(40 < named.len(), "only {} names found", named.len());
    for (file, name) in named {
        let text = std::fs::read_to_string(source().join(&file))
            .unwrap_or_else(|e| panic!("docs/physics.md names {file}: {e}"));
        let Some(name) = name else { continue };
        let known = ["fn ", "const ", "struct ", "enum ", "trait "].iter().any(|kind| {
            text.match_indices(&format!("{kind}{name}")).any(|(at, found)| {
                let next = text[at + found.len()..].chars().next();
                !next.is_some_and(|c| c.is_alphanumeric() || c == '_')
            })
        });
        assert!(known, "docs/physics.md names {name} in {file}, where there is no such thing");
    }
}

#[test]
fn every_law_and_part_is_on_the_page() {
    let named = named();
    /// Files of `parts/elements` that say only what there can be, and hold no law.
    const SHAPES: [&str; 9] = ["mod", "law", "electric", "lag", "machine", "seen", "state", "switch", "told"];
    let shape = |file: &str| SHAPES.iter().any(|s| file == format!("parts/elements/{s}.rs"));
    for folder in ["flow", "parts", "parts/elements"] {
        for entry in std::fs::read_dir(source().join(folder)).unwrap() {
            let file = format!("{folder}/{}", entry.unwrap().file_name().to_string_lossy());
            if shape(&file) || !file.ends_with(".rs") {
                continue;
            }
            assert!(named.iter().any(|(f, _)| *f == file), "docs/physics.md says nothing of {file}");
        }
    }
}
