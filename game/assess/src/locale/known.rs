//! Known names in a message about one that is not.

use super::quote::fitting;
use super::sentence::{Sentence, Value};
use crate::sentence;

/// Known names for a message about `typed`: all that fit, and the nearest when it is not among them.
#[must_use]
pub fn known(typed: &str, known: &[&str]) -> Value {
    let said: Sentence = match fitting(typed, known) {
        _ if known.is_empty() => sentence!("plain-list-none", "none"),
        (names, 0) => return names.into(),
        (names, left) => sentence!("plain-list-more", "{names} and {left} more", names = names, left = left),
    };
    said.into()
}

#[cfg(test)]
mod tests {
    use super::known;

    #[test]
    fn all_names_that_fit_are_told_and_the_nearest() {
        assert_eq!(known("x", &[]).to_string(), "none");
        assert_eq!(known("x", &["a", "b"]).to_string(), "a, b");
        let many: Vec<String> = (0..9_000).map(|i| format!("name_{i}")).collect();
        let many: Vec<&str> = many.iter().map(String::as_str).collect();
        let said = known("name_8999", &many).to_string();
        assert!(said.starts_with("name_8999; name_0") && said.ends_with(" more"), "{said}");
        assert!(said.chars().count() < 260, "{said}");
    }
}
