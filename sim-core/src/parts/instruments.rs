//! The physical side of what a hand connects, under one name: each is a volume, a resistance or a source of its own.
//!
//! Errors, spans and dials live in the instrument's card ([`crate::instrument`]); here is only what
//! the circuit feels.

pub use super::elements::{FILAMENT_RATED_K, MeterMode};
pub use super::hand_pump::{HAND_PUMP_VENT_MM, HandPump};
pub use super::multimeter::Multimeter;
pub use super::push_lead::PushLead;
pub use super::test_lamp::TestLamp;
pub use super::vacuum_gauge::VacuumGauge;
