//! Instrument cards: what an instrument shows of what it feels, and how far it errs.
//!
//! Checked data, made by `assess::pack` from `assets/instruments/*.ron`. The physical side (volume,
//! resistance, lag) is a part ([`crate::parts::instruments`]); the card adds class, span, resolution.
//! Every error is drawn once an attempt and then stays: a comparison of two parts with one gauge
//! cancels the gauge's error.

//!
//! A kind says what it is in one line of [`nature`] and what it shows its value on in [`display`]; everybody else
//! asks those.

mod display;
mod kind;
mod nature;

pub use display::Display;
pub use kind::{Dial, DigitalRange, InstrumentCard, InstrumentKind};
pub use nature::{Held, Measured, Nature, ReadFrom, Worked};
