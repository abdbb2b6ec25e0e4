//! Sentences whose English stands in the program, in the language shown.

use super::{FALLBACK, Locale};
use crate::locale::sentence::{Sentence, Value};

impl Locale {
    /// The words of a key in a language other than English, whose words are in the program; `None` where it has none.
    #[must_use]
    pub fn translated(&self, key: &str, values: &[(&str, String)]) -> Option<String> {
        if self.tag() == FALLBACK {
            return None;
        }
        let values: Vec<_> = values.iter().map(|(name, value)| (*name, value.as_str().into())).collect();
        self.find(key, &values)
    }

    /// A part of a sentence in the language shown.
    #[must_use]
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Text(text) => text.clone(),
            Value::Said(sentence) => self.sentence(sentence),
        }
    }

    /// A sentence in the language shown.
    #[must_use]
    pub fn sentence(&self, sentence: &Sentence) -> String {
        let values: Vec<(&str, String)> =
            sentence.values().iter().map(|(name, v)| (*name, self.value(v))).collect();
        self.translated(sentence.key(), &values).unwrap_or_else(|| sentence.to_string())
    }
}
