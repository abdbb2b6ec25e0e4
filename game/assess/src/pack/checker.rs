//! Checks values one by one and collects what is wrong: checks go on after a fault, so that a file's author sees all
//! of them.

use sim_core::parts::PartKind;

use super::block::Block;
use super::bounds::{self, MOST_ERRORS, SENTENCE};
use super::error::{BadCar, BadName, BadValue, Fault, Named, PackError};
use super::range::Range;
use super::wanted::Wanted;
use crate::locale::known::known;
use crate::locale::quote::{self, Lines};
use crate::locale::sentence::Value;

/// Faults of one file.
pub(crate) struct Checker<'a> {
    /// File as shown in messages.
    file: &'a str,
    /// Faults so far, at most [`MOST_ERRORS`].
    errors: Vec<PackError>,
    /// Faults beyond those.
    more: usize,
}

impl<'a> Checker<'a> {
    pub(crate) fn new(file: &'a str) -> Self {
        Self { file, errors: Vec::new(), more: 0 }
    }

    pub(crate) fn push(&mut self, fault: impl Into<Fault>) {
        if self.errors.len() < MOST_ERRORS {
            self.errors.push(PackError::new(self.file, fault));
        } else {
            self.more += 1;
        }
    }

    /// Holds the length of a list of the block `B`, which stands at `path`, against its bound; `false` when
    /// there are too many entries to go on with.
    pub(crate) fn most<B: Block>(&mut self, key: &'static str, path: &str, count: usize) -> bool {
        let Some(max) = bounds::of_list(B::NAME, key).filter(|max| *max < count) else { return true };
        self.push(BadValue::TooMany { path: path.to_owned(), what: key, count, max });
        false
    }

    /// Holds several lists of one block against their bounds.
    ///
    /// # Errors
    /// When one is too long: then nothing is computed from any.
    pub(crate) fn lengths<B: Block>(
        &mut self,
        lists: &[(&'static str, usize)],
    ) -> Result<(), Vec<PackError>> {
        let mut fine = true;
        for (key, count) in lists {
            fine &= self.most::<B>(key, key, *count);
        }
        if fine { Ok(()) } else { Err(self.all()) }
    }

    pub(crate) fn schema(&mut self, found: u32, expected: u32) {
        if found != expected {
            self.push(BadValue::Schema { found, expected });
        }
    }

    /// A finite number inside `range`; `false` when it is not.
    pub(crate) fn number(&mut self, path: impl Into<Value>, value: f64, range: Range) -> bool {
        if !value.is_finite() {
            self.push(BadValue::NotFinite { path: path.into(), value, range });
            return false;
        }
        if value < range.min || range.max < value {
            self.push(BadValue::OutOfRange { path: path.into(), value, range });
            return false;
        }
        true
    }

    /// Two numbers inside `range`, the low one first.
    pub(crate) fn pair(&mut self, path: &str, (low, high): (f64, f64), range: Range) -> bool {
        let ok = self.number(format!("{path}.0"), low, range) & self.number(format!("{path}.1"), high, range);
        if ok && high < low {
            self.push(BadValue::RangeReversed { path: path.to_owned(), low, high });
        }
        ok && low <= high
    }

    /// Every number of a part against its table.
    pub(crate) fn part(&mut self, path: &str, kind: &PartKind) {
        for def in kind.params().table() {
            if let Some(value) = kind.params().get(def.name) {
                self.number(format!("{path}.{}", def.name), value, Range::of(def));
            }
        }
        if let Some((cut_out, cut_in)) = kind.switch_points_kpa()
            && cut_in <= cut_out
        {
            self.push(BadCar::SwitchPointsReversed { path: path.to_owned(), cut_out, cut_in });
        }
    }

    /// A text: not empty, no longer than its key allows, and without controls (line feeds only where several
    /// lines are meant).
    pub(crate) fn text(&mut self, path: &str, text: &str, expected: Wanted) {
        let at = path.to_owned();
        if text.trim().is_empty() {
            self.push(BadValue::Empty { path: at, expected });
            return;
        }
        // `debrief[2]`, `parts[3].name`: the last key without its number.
        let key = path.rsplit('.').next().unwrap_or(path);
        let key = key.split('[').next().unwrap_or(key);
        let (max, many) = bounds::of_text(key).unwrap_or((SENTENCE, false));
        let count = text.chars().count();
        if max < count {
            self.push(BadValue::TooLong { path: at, count, max });
            return;
        }
        let lines = if many { Lines::Many } else { Lines::One };
        if let Some((place, found)) = quote::first_unsafe(text, lines) {
            self.push(BadValue::ControlCharacter { path: at, place, found, many });
        }
    }

    pub(crate) fn list<T>(&mut self, path: &str, list: &[T], expected: Wanted) {
        if list.is_empty() {
            self.push(BadValue::Empty { path: path.to_owned(), expected });
        }
    }

    /// A short name: letters, digits and the joiner.
    pub(crate) fn short_name(&mut self, path: &str, name: &str, joiner: char) {
        if !is_short_name(name, joiner) {
            self.push(BadName::NotShort { path: path.to_owned(), name: name.to_owned(), joiner });
        }
    }

    /// Every name of a list is a short name and stands once.
    pub(crate) fn names<'n>(
        &mut self,
        list: &str,
        what: Named,
        joiner: char,
        names: impl IntoIterator<Item = &'n str>,
    ) {
        let mut seen: Vec<&str> = Vec::new();
        for (i, name) in names.into_iter().enumerate() {
            let path = format!("{list}[{i}].id");
            self.short_name(&path, name, joiner);
            if let Some(first) = seen.iter().position(|s| *s == name) {
                self.push(BadName::Duplicate {
                    path,
                    what,
                    name: name.to_owned(),
                    first: format!("{list}[{first}].id"),
                });
            }
            seen.push(name);
        }
    }

    pub(crate) fn unknown<'n>(
        &mut self,
        path: &str,
        what: Named,
        name: &str,
        known: impl IntoIterator<Item = &'n str>,
    ) {
        self.push(BadName::Unknown {
            path: path.into(),
            what,
            name: name.to_owned(),
            known: known_for(name, known),
        });
    }

    /// Index of `name` among `known`; reports it when it is not there.
    pub(crate) fn index(&mut self, path: &str, what: Named, name: &str, known: &[&str]) -> Option<u16> {
        let found = known.iter().position(|k| *k == name);
        if found.is_none() {
            self.unknown(path, what, name, known.iter().copied());
        }
        found.map(|i| i as u16)
    }

    /// The checked value, unless anything was wrong.
    pub(crate) fn done<T>(mut self, value: T) -> Result<T, Vec<PackError>> {
        if self.errors.is_empty() { Ok(value) } else { Err(self.all()) }
    }

    fn all(&mut self) -> Vec<PackError> {
        let mut errors = std::mem::take(&mut self.errors);
        if 0 < self.more {
            errors.push(PackError::new(self.file, Fault::More { more: self.more }));
        }
        errors
    }
}

/// Whether `name` can stand in commands and paths: a letter, then letters, digits, single joiners.
pub(crate) fn is_short_name(name: &str, joiner: char) -> bool {
    name.len() <= bounds::SHORT_NAME
        && name.starts_with(|c: char| c.is_ascii_lowercase())
        && !name.ends_with(joiner)
        && name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == joiner)
}

/// Known names in a message about `name`, as many as fit.
pub(crate) fn known_for<'n>(name: &str, names: impl IntoIterator<Item = &'n str>) -> Value {
    known(name, &names.into_iter().collect::<Vec<_>>())
}
