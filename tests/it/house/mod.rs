//! The house itself: which file uses which, read from the sources.

mod cars;
mod dependencies;
mod hidden;
mod kinds;
mod layers;
mod names;
mod rings;
mod source;
