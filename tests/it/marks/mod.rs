//! The marker: published and worked examples run through the functions it uses itself.
mod attacks;
mod attempts;
mod bayes;
mod economy;
mod evidence;
mod kept;
mod languages;
mod notes;
mod recorded;
mod scores;
