//! The house itself: which file uses which, read from the sources.

mod dependencies;
mod layers;
mod rings;
mod source;
