//! What window and text bench share, knowing neither: the list of jobs, the job at hand with its pace and its
//! remarks ([`shop`]), what hands can take hold of and do ([`hands`]), words in every language ([`words`]), where
//! files are ([`places`]) and how they are written ([`output`]). Tested without Bevy and egui.

pub mod ask;
pub mod deed;
pub mod hands;
pub mod held;
pub mod marking;
pub mod message;
pub mod output;
#[cfg(test)]
mod outputs;
pub mod places;
pub mod prefs;
#[cfg(test)]
mod rehearsal;
pub mod screen;
pub mod script;
pub mod shop;
pub mod words;
