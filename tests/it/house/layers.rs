//! What each crate may use, as DEVELOPERS.md says. Cargo holds part of it; the rest is held here.

use super::source::{self, CRATES};

/// Crates that draw.
const DRAWING: [&str; 6] = ["bevy", "bevy_egui", "egui", "egui_plot", "egui_kittest", "wgpu"];

/// What a crate must not name.
struct Ban {
    folder: &'static str,
    crates: &'static [&'static str],
    /// Paths, by their first names.
    paths: &'static [&'static [&'static str]],
    methods: &'static [&'static str],
}

/// The circuit and what is hidden in a car: true values leave the core through instruments and senses, and through
/// `Opened` when there is no secret any more.
const HIDDEN: &[&[&str]] = &[&["sim_core", "circuit"], &["sim_core", "world"]];

/// Methods that ask for it: the circuit of an open hood, what is wrong with a job's car.
const ASKING: &[&str] = &["circuit", "answer"];

const BANS: [Ban; 5] = [
    Ban {
        folder: "sim-core/src",
        crates: &["assess", "front", "window", "game", "serde_json", "ron", "anyhow", "rayon"],
        paths: &[&["std", "fs"], &["std", "time"], &["std", "thread"], &["std", "env"], &["std", "process"]],
        methods: &[],
    },
    Ban { folder: "game/assess/src", crates: &["front", "window", "game"], paths: &[], methods: &[] },
    Ban { folder: "game/front/src", crates: &["window", "game"], paths: HIDDEN, methods: ASKING },
    Ban { folder: "game/window/src", crates: &["game"], paths: HIDDEN, methods: ASKING },
    Ban { folder: "game/src", crates: &DRAWING, paths: &[], methods: &[] },
];

/// Everything that a file names and must not.
fn breaches(ban: &Ban, draws: bool, paths: &[Vec<String>], methods: &[String]) -> Vec<String> {
    let begins = |path: &[String], with: &[&str]| {
        path.len() >= with.len() && path.iter().zip(with).all(|(a, b)| a == b)
    };
    let named = paths.iter().filter(|path| {
        // A name by itself is a variable or something that a `use` above has brought.
        let first = path.first().filter(|_| 1 < path.len()).map(String::as_str).unwrap_or_default();
        ban.crates.contains(&first)
            || (!draws && DRAWING.contains(&first))
            || ban.paths.iter().any(|banned| begins(path, banned))
    });
    let called = methods.iter().filter(|name| ban.methods.contains(&name.as_str()));
    named.map(|path| path.join("::")).chain(called.map(|name| format!(".{name}()"))).collect()
}

#[test]
fn inv_no_crate_names_what_stands_above_it_or_is_hidden_from_it() {
    assert_eq!(BANS.map(|ban| ban.folder), CRATES.map(|(_, folder)| folder));
    let mut found = Vec::new();
    for ban in &BANS {
        for source in source::of_crate(ban.folder).into_values() {
            let (paths, methods): (Vec<_>, Vec<_>) =
                (source.paths.into_iter().collect(), source.methods.into_iter().collect());
            let broken = breaches(ban, ban.folder == "game/window/src", &paths, &methods);
            found.extend(broken.into_iter().map(|what| format!("{}: {what}", source.file.display())));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn what_is_forbidden_is_found() {
    let front = &BANS[2];
    let paths = ["egui::Pos2", "sim_core::circuit::Circuit", "sim_core::car::Car", "window::ui"]
        .map(|p| p.split("::").map(str::to_owned).collect());
    let found = breaches(front, false, &paths, &["circuit".to_owned(), "view".to_owned()]);
    assert_eq!(found, ["egui::Pos2", "sim_core::circuit::Circuit", "window::ui", ".circuit()"]);
}

#[test]
fn every_crate_stands_in_the_table_of_developers() {
    let table = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../DEVELOPERS.md")).unwrap();
    for (_, folder) in CRATES {
        let row = format!("| `{}/` |", folder.trim_end_matches("/src"));
        assert!(table.contains(&row), "DEVELOPERS.md has no row {row}");
    }
}
