//! Numbers as people type them, on the command line and at the prompt: what is none, what is too long and what is
//! too large is refused with the reason.

use crate::quote::{bare, quoted};

/// Longest number that is read, characters: more digits than any instrument shows or any model keeps.
pub const LONGEST: usize = 40;
/// Largest number that means anything here, in any unit.
pub const LARGEST: f64 = 1e9;

/// Why something typed is no number that can be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum NumberError {
    /// No digits, or something between them.
    #[error("{} is no number; write it in digits, for example 12.5", quoted(typed))]
    NoNumber {
        /// As typed.
        typed: String,
    },
    /// Not finite.
    #[error("{} is not a finite number; write one in digits, for example 12.5", quoted(typed))]
    NotFinite {
        /// As typed.
        typed: String,
    },
    /// To another base than ten.
    #[error("{} is not written in tens; use the digits 0 to 9, for example 16", quoted(typed))]
    NotInTens {
        /// As typed.
        typed: String,
    },
    /// Too many characters.
    #[error("{} is a number of {count} characters; at most {LONGEST} are read", bare(typed))]
    TooLong {
        /// As typed.
        typed: String,
        /// How many.
        count: usize,
    },
    /// Beyond everything that can be meant.
    #[error("{} is too large; numbers here go up to {LARGEST}", quoted(typed))]
    TooLarge {
        /// As typed.
        typed: String,
    },
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
/// A sentence that says what is wrong, with the range.
pub fn whole(typed: &str, range: std::ops::RangeInclusive<u32>) -> Result<u32, String> {
    let (low, high) = (f64::from(*range.start()), f64::from(*range.end()));
    let none = || format!("{} is no whole number; write one from {low} to {high}", quoted(typed));
    let value = match number(typed) {
        Err(NumberError::NoNumber { .. }) => return Err(none()),
        Err(NumberError::NotFinite { typed }) => {
            return Err(format!(
                "{} is not a finite number; write a whole one from {low} to {high}",
                quoted(&typed)
            ));
        }
        other => other.map_err(|e| e.to_string())?,
    };
    if value.fract().abs() > 0.0 {
        return Err(none());
    }
    if (low..=high).contains(&value) {
        return Ok(value as u32);
    }
    Err(format!("{} is outside {low} to {high}", bare(typed)))
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
