//! No crate asks for a library that it does not use.

use std::path::Path;

use serde_json::Value;

/// All Rust text in a folder.
fn text(folder: &Path, out: &mut String) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for path in entries.map(|e| e.unwrap().path()) {
        if path.is_dir() && path.file_name().is_some_and(|n| n != "target") {
            // A crate below is its own.
            if !path.join("Cargo.toml").exists() {
                text(&path, out);
            }
        } else if path.extension().is_some_and(|x| x == "rs") {
            out.push_str(&std::fs::read_to_string(&path).unwrap());
        }
    }
}

#[test]
fn inv_every_library_that_is_asked_for_is_used() {
    let cargo = std::process::Command::new(env!("CARGO"))
        .args(["metadata", "--no-deps", "--format-version", "1", "--manifest-path"])
        .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/../Cargo.toml"))
        .output()
        .unwrap();
    assert!(cargo.status.success(), "{}", String::from_utf8_lossy(&cargo.stderr));
    let told: Value = serde_json::from_slice(&cargo.stdout).unwrap();
    let packages = told["packages"].as_array().unwrap();
    assert_eq!(packages.len(), 7);
    let (mut asked, mut idle) = (0, Vec::new());
    for package in packages {
        let name = package["name"].as_str().unwrap();
        let folder = Path::new(package["manifest_path"].as_str().unwrap()).parent().unwrap();
        let mut sources = String::new();
        text(folder, &mut sources);
        for dependency in package["dependencies"].as_array().unwrap() {
            let library = dependency["name"].as_str().unwrap();
            let called = library.replace('-', "_");
            let used = [format!("{called}::"), format!("{called}!"), format!("use {called};")];
            asked += 1;
            if !used.iter().any(|u| sources.contains(u.as_str())) {
                idle.push(format!("{name}: {library}"));
            }
        }
    }
    assert!(50 < asked, "{asked} libraries asked for");
    assert!(idle.is_empty(), "nobody uses {idle:?}");
}
