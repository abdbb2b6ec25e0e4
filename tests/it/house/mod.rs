//! The house itself: which file uses which, read from the sources.

mod cars;
mod dependencies;
mod layers;
mod rings;
mod source;
