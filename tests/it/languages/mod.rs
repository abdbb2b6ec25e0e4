//! Every language: a whole job at the text bench, and files of words that say what the program says.

mod broken;
mod english;
mod job;
