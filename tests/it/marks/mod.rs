//! The marker: published and worked examples run through the functions it uses itself.
mod attempts;
mod bayes;
mod kept;
mod languages;
mod scores;
