//! Standard output: what is shown to whoever reads it, if anybody does.
//!
//! A reader that has gone (`| head`), or a full disk behind `>`, is no reason to stop half way through a script or
//! a marking, and no verdict. So a [`Screen`] takes everything, remembers the first trouble and writes nothing
//! after it; the end of the program asks [`trouble`]. A closed reader is then no error, anything else is.
//!
//! Nothing that is shown holds a control character: names and texts of files could steer a terminal.

use std::io::{self, Write as _};
use std::sync::Mutex;

use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::sentence;

/// What became of standard output; it is one for the whole program.
static TROUBLE: Mutex<Option<io::Error>> = Mutex::new(None);

/// Standard output that never fails.
#[derive(Default, Clone, Copy, Debug)]
pub struct Screen {
    /// Takes bytes as they are: for a table or picture that was sent to standard output by name.
    raw: bool,
}

impl Screen {
    /// For people.
    pub const fn new() -> Self {
        Self { raw: false }
    }

    /// For files.
    pub const fn raw() -> Self {
        Self { raw: true }
    }

    /// Whether nothing is shown any more.
    pub fn is_gone(self) -> bool {
        TROUBLE.lock().is_ok_and(|trouble| trouble.is_some())
    }
}

/// Does something with standard output unless there was trouble before.
fn with_output(act: impl FnOnce(&mut io::Stdout) -> io::Result<()>) {
    let Ok(mut trouble) = TROUBLE.lock() else { return };
    if trouble.is_none() {
        *trouble = act(&mut io::stdout()).err();
    }
}

impl io::Write for Screen {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        with_output(|out| match std::str::from_utf8(bytes) {
            Ok(text) if !self.raw && text.contains(|c| c != '\n' && quote::is_unsafe(c)) => {
                out.write_all(quote::escaped(text).as_bytes())
            }
            _ => out.write_all(bytes),
        });
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        with_output(io::Write::flush);
        Ok(())
    }
}

/// What kept standard output from being written, a closed reader excepted: nobody is left there to miss it.
pub fn trouble() -> Option<Sentence> {
    // What still waits in the buffer is part of it.
    Screen::new().flush().ok()?;
    let trouble = TROUBLE.lock().ok()?;
    let error = trouble.as_ref().filter(|e| e.kind() != io::ErrorKind::BrokenPipe)?;
    Some(sentence!(
        "screen-trouble",
        "standard output cannot be written: {why}. What was to be done is done, but not all of it is shown",
        why = assess::files::refusal(error, assess::files::Doing::Write)
    ))
}
