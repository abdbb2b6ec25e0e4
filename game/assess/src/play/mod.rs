//! A workshop with its attempt: what is done goes onto the disk, a script does it line by line, and the marker does it
//! again.

mod begin;
pub mod course;
mod error;
mod replay;
pub mod script;
mod session;

pub(crate) use self::begin::truth;
pub use self::begin::{Begin, workshop};
pub use self::error::{Difference, Differing, NoHint, SessionError, Uncomputed, computed};
pub use self::replay::replay;
pub(crate) use self::replay::{Watch, replay_watched};
pub use self::session::Session;
