//! The house itself: which file uses which, read from the sources.

mod layers;
mod rings;
mod source;
