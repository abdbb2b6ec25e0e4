//! What README.md shows is what the program does.

use super::{ends_with_code, pinhole, root};

#[test]
fn the_photograph_in_the_readme_is_what_the_program_prints() {
    let home = tempfile::tempdir().unwrap();
    let output = pinhole(home.path())
        .args([
            "text",
            "first-shift/hum-at-the-lights",
            "--seed",
            "5eed",
            "--attempt",
            "a.attempt",
            "--script",
        ])
        .arg(root().join("tests/scripts/photograph.script"))
        .output()
        .unwrap();
    // Not handed back: not finished, hence 1.
    let text = ends_with_code(&output, 1);
    let session: Vec<&str> = text
        .lines()
        .skip_while(|l| !l.starts_with('└'))
        .skip(1)
        .take_while(|l| !l.starts_with("The car is not handed back"))
        .collect();
    let session = session.join("\n");
    assert!(session.contains('▲'), "{text}");
    let readme = std::fs::read_to_string(root().join("README.md")).unwrap();
    assert!(readme.contains(&session), "put this between the ```text lines of README.md:\n{session}");
}

#[test]
fn the_commands_in_the_readme_exist() {
    let home = tempfile::tempdir().unwrap();
    for command in ["text", "mark", "replay", "trace"] {
        let output = pinhole(home.path()).args([command, "--help"]).output().unwrap();
        let text = ends_with_code(&output, 0);
        assert!(text.contains("Example"), "{command} --help has an example: {text}");
    }
    let readme = std::fs::read_to_string(root().join("README.md")).unwrap();
    for line in ["    cargo run", "    cargo test"] {
        assert!(readme.lines().any(|l| l == line), "README.md has the line {line:?}");
    }
}
