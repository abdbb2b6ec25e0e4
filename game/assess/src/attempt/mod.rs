//! The `.attempt` file: a header line, then one line of JSON for each action, each chained to the one
//! before by blake3 and on the disk before the next action begins.
//!
//! * A program killed at any moment leaves a file that opens again; at most the action in hand is lost
//!   (a torn last line is dropped).
//! * Anything else that does not fit is an error with its line: an attempt is either whole or refused. [`mend`] keeps
//!   what is whole of a damaged one, and the file says so from then on.
//! * Every number is checked against what its kind can be before anything is done again ([`limits`]).
//! * While a file is in use it is locked, so that two programs cannot write it.
//! * Each opening of the file is a *sitting* and has a line of its own; each action says by which way it came and when
//!   ([`crate::attempt::clock`]). These are labels: no digest, replay or mark looks at them. Files of the form
//!   before (`pinhole-attempt/1`) have none; they are read, and carried on with lines of today.
//! * The line behind the hand-back of a marked attempt holds its mark ([`crate::attempt::marked`]); a file without one is
//!   as good. Behind the mark stand what instructors said of it later ([`overrule`]) and repairs, nothing else.
//! * The chain shows changes made by accident or in passing. It does not stop someone who rewrites the
//!   whole file with this program, or cuts lines off its end; sealed packs (not built yet) are for that.

mod chain;
pub mod clock;
mod error;
pub mod hint_line;
mod json_words;
pub mod limits;
mod lines;
mod litter;
pub mod mark_line;
pub mod marked;
pub mod mend;
pub mod override_line;
pub mod overrule;
mod record;
mod seed;
mod told;
mod writer;

pub use self::error::{AttemptError, Task};
pub use self::record::{
    Attempt, ENGINE, Header, LONGEST_SEAT, Repair, SCHEMA, SCHEMA_1, SCHEMA_2, SeedFrom, Sitting,
    StateDigest, Step,
};
pub use self::seed::{Seed, SeedError};
pub use self::told::{Breached, Refused};
pub use self::writer::{Writer, is_free};
