//! A workshop with its attempt: what is done goes onto the disk, a script does it line by line, and the marker does it
//! again.

pub mod course;
pub mod script;
pub mod session;
