//! A number that cannot be: which one it is, what it is, what it could be.

use super::quantity::Quantity;
use crate::attempt::clock::LATEST_UNIX_MS;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// A number that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Beyond {
    /// Which number.
    pub what: Quantity,
    /// What it is.
    pub value: Value,
    /// What it could be.
    pub bound: Bound,
}

/// What a number could be.
#[derive(Clone, Debug, PartialEq)]
pub enum Bound {
    /// No more than this.
    AtMost(u64),
    /// No less than where the last action ended.
    FromLastEnd(u64),
    /// No less than where the action began.
    FromStart(u64),
    /// Just this.
    Just(u64),
    /// Between two.
    Between(f64, f64),
    /// Between two ticks.
    Ticks(u64, u64),
    /// Between the ticks at which the action began and ended.
    WhileDone(u64, u64),
    /// A time.
    UnixMs,
    /// A number at all.
    Number,
    /// Nothing was read yet.
    NothingRead,
    /// No more than this, and then the car is to be handed back.
    ThenHandBack(Value),
    /// A form of the file that is known.
    Schemas([&'static str; 3]),
    /// It belongs to one form of the file alone.
    OnlyIn(&'static str),
    /// It does not belong to one form of the file.
    NotIn(&'static str),
}

impl Beyond {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!(
            "beyond-bound",
            "{what} is {value}; {bound}",
            what = self.what.sentence(),
            value = &self.value,
            bound = self.bound.sentence()
        )
    }

    /// As an error.
    pub(super) fn err<T>(what: Quantity, value: impl Into<Value>, bound: Bound) -> Result<T, Self> {
        Err(Self { what, value: value.into(), bound })
    }
}

pub(super) fn within(what: Quantity, value: f64, min: f64, max: f64) -> Result<(), Beyond> {
    if (min..=max).contains(&value) { Ok(()) } else { Beyond::err(what, value, Bound::Between(min, max)) }
}

pub(super) fn at_most(what: Quantity, value: u64, most: u64) -> Result<(), Beyond> {
    if value <= most { Ok(()) } else { Beyond::err(what, value, Bound::AtMost(most)) }
}

pub(super) fn short(what: Quantity, text: &str, most: usize) -> Result<(), Beyond> {
    if text.len() <= most {
        return Ok(());
    }
    let long = sentence!("beyond-bytes", "{n} bytes long", n = text.len());
    Beyond::err(what, long, Bound::AtMost(most as u64))
}

pub(super) fn unix_ms(what: Quantity, ms: u64) -> Result<(), Beyond> {
    if ms <= LATEST_UNIX_MS { Ok(()) } else { Beyond::err(what, ms, Bound::UnixMs) }
}

impl Bound {
    /// In words.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::AtMost(most) => sentence!("bound-at-most", "at most {most}", most = *most),
            Self::FromLastEnd(least) => {
                sentence!("bound-from-last-end", "at least {least}, where the last ended", least = *least)
            }
            Self::FromStart(least) => {
                sentence!("bound-from-start", "at least {least}, where it began", least = *least)
            }
            Self::Just(n) => sentence!("bound-just", "expected {n}", n = *n),
            Self::Between(min, max) => {
                sentence!("bound-between", "expected {min} to {max}", min = *min, max = *max)
            }
            Self::Ticks(min, max) => {
                sentence!("bound-between", "expected {min} to {max}", min = *min, max = *max)
            }
            Self::WhileDone(min, max) => sentence!(
                "bound-while-done",
                "expected {min} to {max}, when the action was done",
                min = *min,
                max = *max
            ),
            Self::UnixMs => sentence!(
                "bound-unix-ms",
                "expected milliseconds since 1970, at most {most}",
                most = LATEST_UNIX_MS
            ),
            Self::Number => sentence!("bound-number", "expected a number"),
            Self::NothingRead => sentence!("bound-nothing-read", "nothing was read before"),
            Self::ThenHandBack(most) => sentence!(
                "bound-then-hand-back",
                "at most {most}: set the car right and hand it back",
                most = most
            ),
            Self::Schemas([first, second, third]) => sentence!(
                "bound-schemas",
                "expected {first}, {second} or {third}",
                first = format!("{first:?}"),
                second = format!("{second:?}"),
                third = format!("{third:?}")
            ),
            Self::OnlyIn(schema) => {
                sentence!("bound-only-in", "it belongs to {schema} alone", schema = format!("{schema:?}"))
            }
            Self::NotIn(schema) => {
                sentence!("bound-not-in", "it does not belong to {schema}", schema = format!("{schema:?}"))
            }
        }
    }
}
