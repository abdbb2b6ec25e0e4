//! A sentence that every language can say: its key in the files of words, the values it speaks of, and itself in
//! English.
//!
//! It is made with [`sentence!`], with the English beside the key, so that whoever reads the code reads what is said;
//! [`Locale::sentence`](crate::locale::Locale::sentence) says it in a language. `assets/locales/en` has the same words for whoever translates, and a test holds the two together. Where a language
//! has no words for a key, and wherever something is recorded, it is said in English.

use std::fmt;

use crate::locale::quote::{Number, Quoted, ShownPath};

/// A sentence or a part of one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    key: &'static str,
    english: String,
    values: Vec<(&'static str, Value)>,
}

/// What a sentence speaks of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// The same in every language: a name, a number, what was typed.
    Text(String),
    /// Said in the language itself.
    Said(Box<Sentence>),
}

impl Sentence {
    /// For [`sentence!`].
    #[must_use]
    pub fn new(key: &'static str, english: String, values: Vec<(&'static str, Value)>) -> Self {
        Self { key, english, values }
    }

    /// Key in the files of words.
    #[must_use]
    pub fn key(&self) -> &'static str {
        self.key
    }

    /// What it speaks of, by its name in the words.
    #[must_use]
    pub fn values(&self) -> &[(&'static str, Value)] {
        &self.values
    }
}

impl fmt::Display for Sentence {
    /// In English.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.english)
    }
}

/// As the reason why something typed cannot be used.
impl std::error::Error for Sentence {}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Text(text) => f.write_str(text),
            Self::Said(sentence) => sentence.fmt(f),
        }
    }
}

impl From<&Value> for Value {
    fn from(value: &Value) -> Self {
        value.clone()
    }
}

impl From<Sentence> for Value {
    fn from(sentence: Sentence) -> Self {
        Self::Said(Box::new(sentence))
    }
}

macro_rules! as_text {
    ($($of:ty),*) => {
        $(impl From<$of> for Value {
            fn from(value: $of) -> Self {
                Self::Text(value.to_string())
            }
        })*
    };
}
as_text!(String, &String, &str, usize, u32, u64, f64, Quoted<'_>, ShownPath<'_>, Number);

/// A sentence: `sentence!("plain-no-cover", "there is no cover called {name}", name = quoted(name))`.
#[macro_export]
macro_rules! sentence {
    ($key:literal, $english:literal $(, $name:ident = $value:expr)* $(,)?) => {
        // All values before any name is bound: one may be made of what another is named after.
        match ($($crate::locale::sentence::Value::from($value),)*) {
            ($($name,)*) => {
                let english = format!($english);
                $crate::locale::sentence::Sentence::new($key, english, vec![$((stringify!($name), $name)),*])
            }
        }
    };
}
