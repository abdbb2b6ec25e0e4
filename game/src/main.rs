//! `pinhole`: the one binary.

use std::process::ExitCode;

/// In hours of use the window's lists, layouts and glyphs come and go on many threads; an allocator that
/// gives pages back keeps what the program holds level.
#[cfg(feature = "window")]
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    game::main()
}
