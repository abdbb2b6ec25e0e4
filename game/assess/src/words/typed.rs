//! Numbers as people type them, on the command line and at the prompt: what is none, what is too long and what is
//! too large is refused with the reason.

use crate::locale::quote::{bare, quoted};
use crate::locale::sentence::Sentence;
use crate::sentence;

/// Longest number that is read, characters: more digits than any instrument shows or any model keeps.
pub const LONGEST: usize = 40;
/// Largest number that means anything here, in any unit.
pub const LARGEST: f64 = 1e9;

/// Why something typed is no number that can be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum NumberError {
    /// No digits, or something between them.
    NoNumber {
        /// As typed.
        typed: String,
    },
    /// Not finite.
    NotFinite {
        /// As typed.
        typed: String,
    },
    /// To another base than ten.
    NotInTens {
        /// As typed.
        typed: String,
    },
    /// Too many characters.
    TooLong {
        /// As typed.
        typed: String,
        /// How many.
        count: usize,
    },
    /// Beyond everything that can be meant.
    TooLarge {
        /// As typed.
        typed: String,
    },
    /// No whole number.
    NotWhole {
        /// As typed.
        typed: String,
        /// What may be typed.
        low: u32,
        /// What may be typed.
        high: u32,
    },
    /// Not finite, where a whole number is wanted.
    NotFiniteNorWhole {
        /// As typed.
        typed: String,
        /// What may be typed.
        low: u32,
        /// What may be typed.
        high: u32,
    },
    /// A whole number outside its range.
    Outside {
        /// As typed.
        typed: String,
        /// What may be typed.
        low: u32,
        /// What may be typed.
        high: u32,
    },
}

impl NumberError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::NoNumber { typed } => sentence!(
                "number-none",
                "{typed} is no number; write it in digits, for example 12.5",
                typed = quoted(typed)
            ),
            Self::NotFinite { typed } => sentence!(
                "number-not-finite",
                "{typed} is not a finite number; write one in digits, for example 12.5",
                typed = quoted(typed)
            ),
            Self::NotInTens { typed } => sentence!(
                "number-not-in-tens",
                "{typed} is not written in tens; use the digits 0 to 9, for example 16",
                typed = quoted(typed)
            ),
            Self::TooLong { typed, count } => sentence!(
                "number-too-long",
                "{typed} is a number of {count} characters; at most {most} are read",
                typed = bare(typed),
                count = *count,
                most = LONGEST
            ),
            Self::TooLarge { typed } => sentence!(
                "number-too-large",
                "{typed} is too large; numbers here go up to {most}",
                typed = quoted(typed),
                most = LARGEST
            ),
            Self::NotWhole { typed, low, high } => sentence!(
                "number-not-whole",
                "{typed} is no whole number; write one from {low} to {high}",
                typed = quoted(typed),
                low = *low,
                high = *high
            ),
            Self::NotFiniteNorWhole { typed, low, high } => sentence!(
                "number-not-finite-nor-whole",
                "{typed} is not a finite number; write a whole one from {low} to {high}",
                typed = quoted(typed),
                low = *low,
                high = *high
            ),
            Self::Outside { typed, low, high } => sentence!(
                "number-outside",
                "{typed} is outside {low} to {high}",
                typed = bare(typed),
                low = *low,
                high = *high
            ),
        }
    }
}

/// Reads a number: a sign of any kind, a comma for the point, an exponent.
///
/// # Errors
/// When it is no finite number from −[`LARGEST`] to [`LARGEST`] in at most [`LONGEST`] characters.
pub fn number(typed: &str) -> Result<f64, NumberError> {
    let typed = typed.trim();
    let keep = || typed.to_owned();
    let plain = typed.replace(['−', '–'], "-").replace(',', ".").to_lowercase();
    let digits = plain.trim_start_matches(['-', '+']);
    if digits.starts_with("nan") || digits.starts_with("inf") {
        return Err(NumberError::NotFinite { typed: keep() });
    }
    if ["0x", "0b", "0o"].iter().any(|base| digits.starts_with(base)) {
        return Err(NumberError::NotInTens { typed: keep() });
    }
    if !digits.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
        return Err(NumberError::NoNumber { typed: keep() });
    }
    let count = typed.chars().count();
    if LONGEST < count {
        return Err(NumberError::TooLong { typed: keep(), count });
    }
    let value: f64 = plain.parse().map_err(|_| NumberError::NoNumber { typed: keep() })?;
    if LARGEST < value.abs() {
        return Err(NumberError::TooLarge { typed: keep() });
    }
    // A zero has no sign.
    Ok(value + 0.0)
}

/// Reads a whole number inside `range`.
///
/// # Errors
/// When it is none, or outside.
pub fn whole(typed: &str, range: std::ops::RangeInclusive<u32>) -> Result<u32, NumberError> {
    let (low, high) = (*range.start(), *range.end());
    let none = || NumberError::NotWhole { typed: typed.to_owned(), low, high };
    let value = match number(typed) {
        Err(NumberError::NoNumber { .. }) => return Err(none()),
        Err(NumberError::NotFinite { typed }) => {
            return Err(NumberError::NotFiniteNorWhole { typed, low, high });
        }
        other => other?,
    };
    if value.fract().abs() > 0.0 {
        return Err(none());
    }
    if (f64::from(low)..=f64::from(high)).contains(&value) {
        return Ok(value as u32);
    }
    Err(NumberError::Outside { typed: typed.to_owned(), low, high })
}

/// A number and what is written behind it: `-58kPa` is `-58` and `kPa`, `1e3s` is `1e3` and `s`. What does not
/// begin as a number is all number, so that [`number`] says what is wrong with it.
pub fn split_unit(token: &str) -> (&str, &str) {
    let is_sign = |c: char| matches!(c, '-' | '+' | '−' | '–');
    let unsigned = token.trim_start_matches(is_sign);
    let begin = token.len() - unsigned.len();
    let mantissa =
        unsigned.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','))).unwrap_or(unsigned.len());
    if mantissa == 0 || ["0x", "0X", "0b", "0B", "0o", "0O"].iter().any(|base| unsigned.starts_with(base)) {
        return (token, "");
    }
    let mut end = begin + mantissa;
    let behind = &token[end..];
    if let Some(exponent) = behind.strip_prefix(['e', 'E']) {
        let sign = exponent.len() - exponent.trim_start_matches(['-', '+']).len();
        let digits = exponent[sign..].find(|c: char| !c.is_ascii_digit()).unwrap_or(exponent.len() - sign);
        if 0 < digits {
            end += 1 + sign + digits;
        }
    }
    token.split_at(end)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_and_the_rest_is_told_apart() {
        for (typed, value) in
            [("12.5", 12.5), ("−58", -58.0), ("3,5", 3.5), ("1e3", 1000.0), ("+7", 7.0), (".5", 0.5)]
        {
            assert_eq!(number(typed), Ok(value), "{typed}");
        }
        assert_eq!(number("-0").unwrap().to_bits(), 0f64.to_bits());
        for typed in ["nan", "NaN", "inf", "-inf", "infinity", "+Infinity"] {
            assert!(matches!(number(typed), Err(NumberError::NotFinite { .. })), "{typed}");
        }
        for typed in ["0x10", "-0X1f", "0b1"] {
            assert!(matches!(number(typed), Err(NumberError::NotInTens { .. })), "{typed}");
        }
        for typed in ["", "x", "1.2.3", "--", "12a", "1e", "e5", "½"] {
            assert!(matches!(number(typed), Err(NumberError::NoNumber { .. })), "{typed}");
        }
        for typed in ["1e999", "-1e300", "2000000000"] {
            assert!(matches!(number(typed), Err(NumberError::TooLarge { .. })), "{typed}");
        }
        let long = "1".repeat(301);
        let text = number(&long).unwrap_err().to_string();
        assert!(text.contains("301 characters") && text.contains("at most 40") && text.len() < 160, "{text}");
        assert_eq!(whole("12", 1..=30), Ok(12));
        for typed in ["0", "31", "1.5", "x", "99999999999"] {
            assert!(whole(typed, 1..=30).is_err(), "{typed}");
        }
    }

    #[test]
    fn a_unit_is_what_stands_behind_the_number() {
        for (token, split) in [
            ("-58kPa", ("-58", "kPa")),
            ("1e3s", ("1e3", "s")),
            ("5e", ("5", "e")),
            ("90", ("90", "")),
            ("nan", ("nan", "")),
            ("-inf", ("-inf", "")),
            ("0x10", ("0x10", "")),
            ("12.4V", ("12.4", "V")),
            ("", ("", "")),
        ] {
            assert_eq!(split_unit(token), split, "{token}");
        }
    }
}
