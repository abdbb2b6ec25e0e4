//! Words on the screen: the language ([`assess::locale`]) at the job that is open in the shop.

use std::ops::Deref;
use std::path::Path;

use assess::locale::quote;
pub use assess::locale::{FALLBACK, pretty_unit};
use assess::locale::{Locale, Naming, Speech};
use assess::marks::sheet::MarkSheet;
use sim_core::notice;

use crate::shop::{Remark, Shop, Told};

mod deeds;
mod names;
#[cfg(test)]
mod tests;
mod values;

pub use names::station_key;

/// The words of a language, English behind it.
#[derive(Debug)]
pub struct Words(Locale);

impl Deref for Words {
    type Target = Locale;

    fn deref(&self) -> &Locale {
        &self.0
    }
}

impl Words {
    /// Reads the language that fits `wanted` (tags such as `de-AT`, best first) from `root/assets/locales`.
    ///
    /// # Errors
    /// The folder or the English files are missing, or a file does not parse (says which, and where).
    pub fn open(root: &Path, wanted: &[String]) -> anyhow::Result<Self> {
        Ok(Self(Locale::open(root, wanted)?))
    }

    /// The English that is in the program, and nothing else.
    #[must_use]
    pub fn built_in() -> Self {
        Self(Locale::built_in())
    }

    /// The language at the job that is open, things called as people call them.
    #[must_use]
    pub fn speech<'a>(&'a self, shop: &'a Shop) -> Option<Speech<'a>> {
        shop.job().map(|job| Speech::new(&self.0, job, Naming::Called))
    }

    /// A remark as a sentence; what tells itself otherwise has none.
    #[must_use]
    pub fn remark(&self, shop: &Shop, remark: &Remark) -> String {
        self.told(shop, &remark.told)
    }

    /// What was told, as a sentence.
    #[must_use]
    pub fn told(&self, shop: &Shop, told: &Told) -> String {
        let tell = |told: &dyn notice::Told| {
            self.speech(shop).map_or_else(String::new, |s| s.telling(&told.telling()))
        };
        match told {
            Told::Nothing => String::new(),
            Told::Said(said) => quote::escaped(&self.sentence(said)),
            Told::Keyed(key, gaps) => {
                let gaps: Vec<_> = gaps.iter().map(|(name, value)| (*name, value.as_str().into())).collect();
                self.say_with(key, &gaps)
            }
            Told::Notice(notice) => tell(notice),
            Told::Refusal(refusal) => tell(refusal),
            Told::Hazard(hazard) => tell(hazard),
        }
    }

    /// The mark sheet of what was marked.
    #[must_use]
    pub fn sheet(&self, marked: &assess::marks::Evaluation) -> MarkSheet {
        marked.sheet(&self.0, Naming::Called)
    }
}
