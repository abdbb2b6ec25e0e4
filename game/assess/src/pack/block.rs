//! What the reference page and the checker know of a file's struct: its keys with their ranges.

use super::range::{Range, Unit};

/// One key of a file's struct.
#[derive(Clone, Copy, Debug)]
pub(crate) struct KeyDef {
    /// The key.
    pub(crate) name: &'static str,
    /// Its form in Rust's words.
    pub(crate) form: &'static str,
    /// Range of a number, if it is one.
    pub(crate) range: Option<Range>,
    /// What it means.
    pub(crate) doc: &'static str,
}

/// A struct of a file, with what the reference page says about it.
pub(crate) trait Block {
    /// Name in the file.
    const NAME: &'static str;
    /// What it is.
    const DOC: &'static str;
    /// Every key in declared order.
    const KEYS: &'static [KeyDef];

    /// The range of the number `key`; everything when the table has none.
    fn range(key: &str) -> Range {
        let def = Self::KEYS.iter().find(|k| k.name == key);
        def.and_then(|k| k.range).unwrap_or(Range::new(f64::MIN, f64::MAX, Unit::InName))
    }
}
