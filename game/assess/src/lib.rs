//! Packs, attempts, evidence, marks and reports of pinhole.

pub mod attempt;
pub mod belief;
pub mod clock;
pub mod complaint;
pub mod course;
pub mod diagram;
pub mod draws;
pub mod evidence;
pub mod files;
pub mod hypotheses;
pub mod job;
pub mod joint;
mod json_words;
pub mod likelihood;
pub mod marked;
pub mod marks;
pub mod numeric;
pub mod pack;
pub mod quote;
pub mod repair_order;
pub mod report;
pub mod score;
pub mod script;
pub mod session;
pub mod speed;
pub mod typed;
pub mod words;
