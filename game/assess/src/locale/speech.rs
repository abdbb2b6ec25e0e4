//! What is told, in a language: typed notices become sentences, short names become what things are called.

use sim_core::car::{Car, Spare};
use sim_core::instrument::InstrumentCard;
use sim_core::notice::{Gap, Paper, Telling, Told};
use sim_core::workshop::Setup;

use super::{FluentValue, Locale};
use crate::pack::job::{CAUTION, DEFER, Job};

/// How things are named in sentences.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Naming {
    /// By the short names that are typed: at the text bench, in sheets and files.
    Typed,
    /// As people call them: where things are pointed at.
    Called,
}

/// A language at a job.
#[derive(Clone, Copy, Debug)]
pub struct Speech<'a> {
    /// The language.
    pub locale: &'a Locale,
    /// The car: its parts, covers and units have names.
    pub car: &'a Car,
    /// Tools.
    pub kit: &'a [InstrumentCard],
    /// Spares.
    pub spares: &'a [Spare],
    /// The job, where there is one: its papers have words.
    pub job: Option<&'a Job>,
    /// How things are named.
    pub naming: Naming,
}

/// A test of a job (short name in its car's list) in words.
#[must_use]
pub fn test_name(job: &Job, id: &str, words: &Locale) -> String {
    let name = job.tests.iter().find(|test| test.id == id).map_or(id, |test| test.name.as_str());
    words.say_or(&format!("{}-test-{id}", job.car.id), name)
}

/// A number and its sign of per cent stay on one line.
fn unbroken(text: &str) -> String {
    text.replace(" %", "\u{a0}%")
}

impl<'a> Speech<'a> {
    /// A language at a job.
    #[must_use]
    pub fn new(locale: &'a Locale, job: &'a Job, naming: Naming) -> Self {
        Self { locale, car: &job.car, kit: &job.kit, spares: &job.spares, job: Some(job), naming }
    }

    /// A language at a car that came without a job.
    #[must_use]
    pub fn at(locale: &'a Locale, setup: &'a Setup, naming: Naming) -> Self {
        Self { locale, car: &setup.car, kit: &setup.kit, spares: &setup.spares, job: None, naming }
    }

    /// What is told, as a sentence.
    #[must_use]
    pub fn tell(&self, told: &dyn Told) -> String {
        self.telling(&told.telling())
    }

    /// A key with what stands in its gaps, as a sentence.
    #[must_use]
    pub fn telling(&self, telling: &Telling) -> String {
        let gaps: Vec<(&str, FluentValue<'_>)> =
            telling.gaps.iter().map(|(name, gap)| (*name, self.gap(gap).into())).collect();
        self.say_with(telling.key, &gaps)
    }

    /// The words of `key` with values put in; `$naming` is `typed` or `called`. Where things are called as people do, a number and its sign of per
    /// cent stay on one line.
    #[must_use]
    pub fn say_with(&self, key: &str, values: &[(&str, FluentValue<'_>)]) -> String {
        let naming = match self.naming {
            Naming::Typed => "typed",
            Naming::Called => "called",
        };
        let mut values = values.to_vec();
        values.push(("naming", naming.into()));
        let said = self.locale.say_with(key, &values);
        match self.naming {
            Naming::Typed => said,
            Naming::Called => unbroken(&said),
        }
    }

    /// The words of `key`.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.say_with(key, &[])
    }

    /// A word that stands inside sentences, by its key without `word-`.
    #[must_use]
    pub fn word(&self, key: &str) -> String {
        self.locale.say(&format!("word-{key}"))
    }

    fn gap(&self, gap: &Gap) -> String {
        match gap {
            Gap::Typed(thing, name) => self.named(*thing, name),
            Gap::Called(thing, name) => self.called(*thing, name),
            Gap::Word(key) => self.word(key),
            Gap::Number(value) => self.locale.plain(*value),
            Gap::Verbatim(text) => text.escape_debug().to_string(),
            Gap::Paper(paper, text) => self.paper(paper, text),
            Gap::Telling(telling) => self.telling(telling),
            Gap::List(list) => list.iter().map(|t| self.telling(t)).collect::<Vec<_>>().join("; "),
        }
    }

    /// A line of the papers that the workshop reads out.
    fn paper(&self, paper: &Paper, text: &str) -> String {
        let (locale, car) = (self.locale, self.car);
        match paper {
            Paper::Limit(id) => locale.say_or(&format!("{}-limit-{id}", car.id), text),
            Paper::Caution(n) => locale.say_or(&format!("{}-caution-{}", car.id, n + 1), text),
            Paper::Card(n) => match text.strip_prefix(CAUTION) {
                Some(DEFER) if self.naming == Naming::Called => locale.say("card-defer"),
                Some(DEFER) => locale.say("told-defer"),
                Some(caution) => {
                    let n = n.saturating_sub(self.job.map_or(0, |job| job.customer_says().count()));
                    let caution = self.job_line("caution", n, caution);
                    self.say_with("told-caution", &[("text", caution.into())])
                }
                None => self.job_line("says", *n, text),
            },
        }
    }

    /// A line of the job's own text, counted from 0, by what it is.
    fn job_line(&self, what: &str, n: usize, text: &str) -> String {
        let Some(job) = self.job else { return text.to_owned() };
        self.locale.say_or(&format!("job-{}-{what}-{}", super::key_part(&job.name()), n + 1), text)
    }

    /// What the job was, told after the hand-back: its paragraphs.
    #[must_use]
    pub fn debrief(&self) -> Vec<String> {
        let text = self.job.map_or("", |job| job.debrief.as_str());
        let lines = text.lines().filter(|l| !l.is_empty()).enumerate();
        lines.map(|(n, line)| self.job_line("debrief", n, line)).collect()
    }

    /// What the job is called.
    #[must_use]
    pub fn title(&self) -> String {
        let Some(job) = self.job else { return String::new() };
        self.locale.say_or(&format!("job-{}", super::key_part(&job.name())), &job.title)
    }
}
