//! Packs: RON in, checked data out. The only place that knows the file format.
//!
//! A file is trusted in two steps: raw (as written, [`raw`]) then checked (typed, cross-referenced, in
//! range). The checker reports every fault of a file, each with place, value and expectation
//! ([`PackError`]). `assets/KEYS.md` lists every key; a test keeps it in step ([`keys`]).
//! Not here: variants dealt per seat, sealed packs.

mod block;
mod bounds;
mod check_bench;
mod check_car;
mod check_catalogue;
mod check_diagram;
mod check_instrument;
mod check_job;
mod check_plan;
mod check_room;
mod check_sheet;
mod check_tests;
mod checker;
pub mod error;
mod grown;
pub mod job;
mod keys;
mod library;
mod range;
mod raw;
mod read;
#[cfg(test)]
mod tests;
mod trial;
mod wanted;

pub use check_job::Pack;
pub use check_sheet::UNITS;
pub use error::{Fault, Named, PackError, PackErrors};
pub use keys::reference_page;
pub use library::{Library, plan_file};
pub use range::{Range, Unit};
pub use read::MAX_BYTES;
pub use wanted::Wanted;
