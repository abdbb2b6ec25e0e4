//! Instrument cards: what an instrument shows of what it feels, and how far it errs.
//!
//! Checked data, made by `assess::pack` from `assets/instruments/*.ron`. The physical side (volume,
//! resistance, lag) is a part ([`crate::parts::instruments`]); the card adds class, span, resolution.
//! Every error is drawn once an attempt and then stays: a comparison of two parts with one gauge
//! cancels the gauge's error.
//!
//! A kind says in one entry of [`Nature`] what it is and what it shows its value on; everybody else asks there.

mod display;
mod held;
mod kind;
mod nature;

pub use display::Display;
pub use held::Held;
pub use kind::{Dial, DigitalRange, InstrumentCard, InstrumentKind};
pub use nature::{Measured, Nature, ReadFrom, Worked};
