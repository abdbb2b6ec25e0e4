//! What things are called beside the short names that are typed: as the language calls them, else as the data files do.

use assess::pack::job::Job;
use front::words::Words;
use sim_core::car::{Car, Cover, RepairUnit, Spare};
use sim_core::instrument::InstrumentCard;

/// A part by its short name; `name` is the car file's.
pub(super) fn part(words: &Words, car: &Car, id: &str, name: &str) -> String {
    words.say_or(&format!("{}-part-{id}", car.id), name)
}

/// A cover.
pub(super) fn cover(words: &Words, car: &Car, cover: &Cover) -> String {
    words.say_or(&format!("{}-cover-{}", car.id, cover.id), &cover.name)
}

/// A repair unit.
pub(super) fn unit(words: &Words, car: &Car, unit: &RepairUnit) -> String {
    words.say_or(&format!("{}-unit-{}", car.id, unit.id), &unit.name)
}

/// A spare.
pub(super) fn spare(words: &Words, car: &Car, spare: &Spare) -> String {
    words.say_or(&format!("{}-spare-{}", car.id, spare.id), &spare.name)
}

/// An instrument.
pub(super) fn instrument(words: &Words, card: &InstrumentCard) -> String {
    words.say_or(&format!("instrument-{}", card.id), &card.name)
}

/// What an instrument is for, and what it cannot do.
pub(super) fn instrument_help(words: &Words, card: &InstrumentCard) -> String {
    words.say_or(&format!("instrument-{}-help", card.id), &card.help)
}

/// The lines of the job card: what the customer says, then the cautions.
pub(super) fn card_lines(words: &Words, job: &Job) -> Vec<String> {
    let name = job.name();
    let says = job.customer_says().enumerate().map(|(n, line)| words.job_says(&name, n, line));
    let cautions = job.cautions().enumerate().map(|(n, line)| {
        let text = match line == assess::pack::job::DEFER {
            true => words.say("bench-defer"),
            false => words.job_caution(&name, n, line),
        };
        words.say_with("bench-caution", &[("text", text.into())])
    });
    says.chain(cautions).collect()
}
