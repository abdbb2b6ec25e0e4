//! The built program from outside: jobs from card to mark sheet, kills, bad input.

mod back_faulty;
pub(crate) mod bad_input;
pub(crate) mod chain;
mod crowd;
mod csv;
mod exit_codes;
mod fixed_certainty;
mod folder;
mod folder_trouble;
mod handed_in;
mod jobs;
mod killed;
mod marked;
mod mended;
mod messages;
mod numbers;
mod other_version;
mod outputs;
mod overridden;
mod pack_limits;
mod readme;
mod sittings;
mod special_files;
mod speed;
mod torn;
mod trace;
mod uncomputed;

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::sync::OnceLock;

/// The repository.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The program, built by cargo in the profile of this test. `CARGO_BIN_EXE_…` is known only inside the
/// package of the program, and this package may be tested alone. `PINHOLE_TEST_PROGRAM=…` names a program
/// that is built already, for example one without the window.
pub(super) fn program() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        if let Some(built) = std::env::var_os("PINHOLE_TEST_PROGRAM").map(PathBuf::from) {
            assert!(built.is_absolute(), "PINHOLE_TEST_PROGRAM={}: expected a whole path", built.display());
            return built;
        }
        // …/target/<profile>/deps/it-<hash>
        let test = std::env::current_exe().unwrap();
        let profile_dir = test.ancestors().nth(2).unwrap();
        let profile = match profile_dir.file_name().unwrap().to_str().unwrap() {
            "debug" => "dev",
            other => other,
        };
        let output = Command::new(env!("CARGO"))
            .current_dir(root())
            .args([
                "build",
                "--quiet",
                "-p",
                "game",
                "--bin",
                "pinhole",
                "--profile",
                profile,
                "--target-dir",
            ])
            .arg(profile_dir.parent().unwrap())
            .output()
            .unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        profile_dir.join(format!("pinhole{}", std::env::consts::EXE_SUFFIX))
    })
}

/// The program with a folder of its own for attempts and everything else it keeps.
pub(crate) fn pinhole(home: &Path) -> Command {
    pinhole_with(home, &root())
}

/// The same with another folder of data.
pub(crate) fn pinhole_with(home: &Path, data: &Path) -> Command {
    let mut command = Command::new(program());
    command
        .current_dir(home)
        .env("HOME", home)
        .env_remove("XDG_DATA_HOME")
        .env_remove("PINHOLE_DATA")
        // English, whatever the developer speaks.
        .env("LC_ALL", "C")
        .env("RUST_BACKTRACE", "1")
        .arg("--data")
        .arg(data)
        .stdin(Stdio::null());
    command
}

/// What it wrote, both streams.
pub(super) fn said(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

/// Asserts an exit code and that nothing panicked.
pub(crate) fn ends_with_code(output: &Output, code: i32) -> String {
    let text = said(output);
    assert!(!text.contains("panicked") && !text.contains("stack backtrace"), "{text}");
    assert_eq!(output.status.code(), Some(code), "{text}");
    text
}
