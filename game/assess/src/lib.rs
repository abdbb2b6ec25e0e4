//! Packs, attempts, evidence, marks and reports of pinhole.
pub mod attempt;
pub mod belief;
pub mod draws;
pub mod job;
pub mod likelihood;
pub mod numeric;
pub mod pack;
pub mod repair_order;
pub mod score;
pub mod script;
pub mod session;
pub mod words;
