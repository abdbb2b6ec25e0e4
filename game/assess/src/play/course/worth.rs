//! What the notes are worth: how often a reading may be written, and which of what was written counts.
//!
//! A notebook is corrected by striking out and writing anew, and everybody misreads once. Three rules keep that free and
//! guessing worthless:
//! * what stands **last** for a reading counts: a right number that was overwritten with a wrong one is gone. The finding
//!   locks what stood then; what is overwritten after it was there for the finding;
//! * who wrote one look down **wrong twice** has not read it: a third value for it is guessed and counts for nothing.
//!   Another look at the same thing is the same look as long as nothing was done in between or it shows the same within a
//!   minute;
//! * the same look noted again counts once.

use sim_core::observe::Reading;
use sim_core::units::TICKS_PER_SECOND;
use sim_core::workshop::RecordEntry;

use super::Looked;

/// A look at the same thing that shows the same within this many ticks (a minute) tells nothing new.
const SAME_AGAIN: u64 = 60 * TICKS_PER_SECOND;

/// So many wrong values for one look are slips; what is written after them is guessed.
const SLIPS: usize = 2;

/// What a note is worth to the evidence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worth {
    /// It counts.
    Counts,
    /// The number or unit written is not what was shown.
    Misread,
    /// Right, after so many wrong values for the same look that it was hit upon, not read.
    Guessed,
    /// Right, and later overwritten with something that is not.
    StruckOut,
    /// The same thing was noted before in an unchanged state (index into [`super::Course::notes`]).
    Repeat(usize),
}

/// A line of the notebook.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Index of the deed that wrote it.
    pub deed: usize,
    /// Index into [`super::Course::looked`].
    pub looked: usize,
    /// What was written is what was shown.
    pub right: bool,
    /// It is right, and nothing wrong was written over it later.
    pub stands: bool,
    /// What it is worth.
    pub worth: Worth,
    /// How it filled the record, if it was meant to.
    pub record: Option<RecordEntry>,
}

impl Note {
    /// Whether it was read and still stands, whatever it adds to the evidence: what fills a line of the record.
    #[must_use]
    pub fn fills(&self) -> bool {
        match self.worth {
            Worth::Counts | Worth::Repeat(_) => self.stands,
            Worth::Misread | Worth::Guessed | Worth::StruckOut => false,
        }
    }
}

/// Settles what each of `notes` is worth, with the finding or first repair at deed `locked`.
pub(super) fn worths(notes: &mut [Note], looked: &[Looked], locked: usize) {
    let reading = |note: &Note| &looked[note.looked].reading;
    for index in 0..notes.len() {
        let (before, rest) = notes.split_at(index);
        let Some((note, after)) = rest.split_first() else { continue };
        let new = reading(note);
        let wrong = before.iter().filter(|old| !old.right && is_same_look(reading(old), new)).count();
        let locked_by_then = |later: &Note| note.deed < locked && locked <= later.deed;
        let over = |later: &&Note| later.looked == note.looked && !later.right;
        let stands = note.right && !after.iter().any(|later| over(&later));
        let worth = if !note.right {
            Worth::Misread
        } else if SLIPS <= wrong {
            Worth::Guessed
        } else if after.iter().filter(over).any(|later| !locked_by_then(later)) {
            Worth::StruckOut
        } else {
            let counted = |old: &Note| old.worth == Worth::Counts && is_same_look(reading(old), new);
            before.iter().position(counted).map_or(Worth::Counts, Worth::Repeat)
        };
        (notes[index].worth, notes[index].stands) = (worth, stands);
    }
}

/// Whether two readings are of the same thing in an unchanged state, or show the same within a minute.
fn is_same_look(old: &Reading, new: &Reading) -> bool {
    let same_state = old.id == new.id || old.epoch == new.epoch;
    let same_again = old.shown == new.shown && new.tick.0.abs_diff(old.tick.0) < SAME_AGAIN;
    old.what == new.what && (same_state || same_again)
}
