//! The seed of an attempt: what its tolerances and instrument errors are drawn from.

use super::error::AttemptError;
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// The 128 bits from which tolerances and instrument errors of an attempt are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seed(pub u128);

/// What the reader of a seed in a file says of one that is none; [`super::json_words`] says it in every language.
pub(super) const NO_SEED: &str = "no seed";

/// Why a seed was refused.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct SeedError(pub String);

impl SeedError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!(
            "slip-seed",
            "{typed} is no seed: expected 1 to 32 hexadecimal digits, for example 5eed",
            typed = quote::quoted(&self.0)
        )
    }
}

impl Seed {
    /// From the operating system's randomness.
    ///
    /// # Errors
    /// When the system gives none.
    pub fn random() -> Result<Self, AttemptError> {
        let mut bytes = [0; 16];
        getrandom::fill(&mut bytes).map_err(|source| AttemptError::NoRandomness { source })?;
        Ok(Self(u128::from_le_bytes(bytes)))
    }
}

impl std::str::FromStr for Seed {
    type Err = SeedError;
    fn from_str(text: &str) -> Result<Self, SeedError> {
        let digits = text.trim().trim_start_matches("0x");
        // `from_str_radix` takes a leading plus sign; a seed has none.
        if digits.starts_with('+') {
            return Err(SeedError(text.to_owned()));
        }
        u128::from_str_radix(digits, 16).map(Self).map_err(|_| SeedError(text.to_owned()))
    }
}

impl std::fmt::Display for Seed {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:032x}", self.0)
    }
}

impl serde::Serialize for Seed {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Seed {
    fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(d)?;
        text.parse().map_err(|_: SeedError| serde::de::Error::custom(NO_SEED))
    }
}
