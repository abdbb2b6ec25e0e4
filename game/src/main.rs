//! `pinhole`: the one binary.

use std::process::ExitCode;

fn main() -> ExitCode {
    game::main()
}
