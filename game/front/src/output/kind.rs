//! The kinds of files that are written, and how an old one is told from a stranger's.

use assess::locale::sentence::Sentence;
use assess::sentence;

/// How a drawing of ours begins: by this an old one is told from another drawing before it is replaced.
pub const DRAWING_BEGINS: &str = "<!-- pinhole trace -->\n";

/// How an attempt begins.
pub(super) const ATTEMPT_BEGINS: &[u8] = b"{\"schema\":\"pinhole-attempt";
/// Bytes of an old file that are looked at to tell its kind.
pub(super) const SNIFFED: u64 = 4_096;

/// What is written, so that an old one can be told from a stranger's file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The mark sheet as a page.
    Sheet,
    /// Mark sheets as JSON.
    Marks,
    /// What was found about the jobs of a pack, as a page.
    ProofPage,
    /// The same as JSON.
    Proofs,
    /// The reference plan of a job.
    Plan,
    /// A line an attempt.
    MarkTable,
    /// Ports over time.
    TraceTable,
    /// Ports over time as a drawing.
    Drawing,
    /// A picture in points.
    Picture,
    /// A circuit's equations in numbers.
    Circuit,
    /// What `bench` measured.
    SpeedTable,
    /// The accessible tree.
    Tree,
    /// Settings: a broken file of them is replaced at the next change.
    Settings,
}

impl Kind {
    /// In a message.
    pub(super) fn what(self) -> Sentence {
        match self {
            Self::Sheet => sentence!("kind-sheet", "a mark sheet"),
            Self::Marks => sentence!("kind-marks", "a file of marks in JSON"),
            Self::ProofPage => sentence!("kind-proof-page", "a page of proofs"),
            Self::Proofs => sentence!("kind-proofs", "a file of proofs in JSON"),
            Self::Plan => sentence!("kind-plan", "a reference plan"),
            Self::MarkTable => sentence!("kind-mark-table", "a table of marks"),
            Self::TraceTable => sentence!("kind-trace-table", "a table of a trace"),
            Self::Drawing => sentence!("kind-drawing", "a drawing of a trace"),
            Self::Picture => sentence!("kind-picture", "a PNG picture"),
            Self::Circuit => sentence!("kind-circuit", "a circuit in JSON"),
            Self::SpeedTable => sentence!("kind-speed-table", "a table of speeds"),
            Self::Tree => sentence!("kind-tree", "an accessible tree"),
            Self::Settings => sentence!("kind-settings", "a settings file"),
        }
    }

    /// Whether a file that begins so is one of these, written by this program.
    pub(super) fn is(self, begins: &[u8]) -> bool {
        // JSON may stand in a list, and on lines of its own.
        let json = |key: &str| {
            let rest = begins.iter().skip_while(|b| b.is_ascii_whitespace() || b"[{".contains(b));
            rest.copied().take(key.len()).eq(key.bytes())
        };
        let page = |generator: &str| {
            let text = String::from_utf8_lossy(begins);
            begins.starts_with(b"<!DOCTYPE html>") && text.contains(&format!("content=\"{generator}\""))
        };
        match self {
            Self::Sheet => page(assess::report::html::GENERATOR),
            Self::ProofPage => page(assess::report::proof::GENERATOR),
            // Where no job could be proved the list is empty.
            Self::Proofs => json("\"job\"") || begins == b"[]\n",
            Self::Plan => begins.starts_with(assess::prove::plan_file::BEGINS.as_bytes()),
            Self::Marks => json("\"scheme\"") || json("\"attempt\""),
            Self::MarkTable => begins.starts_with(b"attempt,job,"),
            Self::TraceTable => begins.starts_with(b"t_s,"),
            Self::Drawing => begins.starts_with(DRAWING_BEGINS.as_bytes()),
            Self::Picture => begins.starts_with(b"\x89PNG\r\n\x1a\n"),
            Self::Circuit => json("\"circuit\""),
            Self::SpeedTable => begins.starts_with(b"case,how,"),
            Self::Tree => json("\"heard\""),
            Self::Settings => true,
        }
    }
}
