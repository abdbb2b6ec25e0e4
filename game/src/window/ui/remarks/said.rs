//! Readings and senses in words, without a number that an eye has to read.

use sim_core::action::{Cycle, Sense};
use sim_core::observe::{Observed, Reading, Scale, ShownValue};

use super::super::super::hands::{self, Thing};
use super::super::super::shop::Shop;
use super::super::super::words::Words;
use super::super::dial::display;

/// What was looked at: "tee-in vacuum gauge at the four-way piece".
#[must_use]
pub fn observed(shop: &Shop, words: &Words, what: &Observed) -> String {
    let part =
        |id: &str| hands::place(shop, id).map_or_else(|| id.to_owned(), |thing| words.name(shop, thing));
    match what {
        Observed::Instrument { instrument, at, .. } => {
            let name = instrument_name(shop, words, instrument);
            if at.is_empty() {
                return name;
            }
            let places: Vec<String> = at.iter().map(|(_, at)| part(at)).collect();
            let values = [("name", name.into()), ("at", places.join(", ").into())];
            words.say_with("observed-at", &values)
        }
        Observed::Interval { cycle, .. } => words.say(match cycle {
            Cycle::PumpRun => "observed-run",
            Cycle::PumpRest => "observed-rest",
        }),
        Observed::Sense(sense) => {
            let (key, it) = match sense {
                Sense::Hiss { part: id } => ("observed-hiss", part(id)),
                Sense::Hum => ("observed-hum", String::new()),
                Sense::Touch { part: id } => ("observed-touch", part(id)),
                Sense::PedalTravel => ("observed-travel", String::new()),
                Sense::PedalMoved => ("observed-moved", String::new()),
                Sense::Applications => ("observed-applications", String::new()),
                Sense::Lamp { instrument } => ("observed-lamp", instrument_name(shop, words, instrument)),
                Sense::BaseBrakes => ("observed-base-brakes", String::new()),
                Sense::YardDrive => ("observed-yard", String::new()),
            };
            words.say_with(key, &[("it", it.into())])
        }
    }
}

fn instrument_name(shop: &Shop, words: &Words, id: &str) -> String {
    let kit = shop.session().map(|s| &s.workshop().setup().kit);
    let card = kit.and_then(|kit| kit.iter().position(|c| c.id == id));
    card.map_or_else(|| id.to_owned(), |i| words.name(shop, Thing::Instrument(i as u16)))
}

/// What was felt, heard or shown in words; `None` for what an eye reads from a dial or display.
#[must_use]
pub fn perceived(shop: &Shop, words: &Words, reading: &Reading) -> Option<String> {
    let scale = shop.session()?.workshop().scale(&reading.what);
    match (&reading.what, reading.shown, &scale) {
        (_, ShownValue::Level(level), Scale::Ordinal { levels, .. }) => {
            let level = *levels.get(usize::from(level))?;
            Some(words.say_or(&format!("level-{}", slug(level)), level))
        }
        (Observed::Sense(_), ShownValue::Steps(n), Scale::Numeric { unit, resolution, .. }) => {
            Some(format!("{} {unit}", display::digits(n, *resolution)))
        }
        (Observed::Interval { max_s, .. }, ShownValue::Off(_), _) => {
            Some(words.say_with("observed-given-up", &[("s", f64::from(*max_s).into())]))
        }
        (_, ShownValue::Blank, _) => Some(words.say("face-dark")),
        _ => None,
    }
}

/// The name of a level as a key of the words.
fn slug(level: &str) -> String {
    let plain = level.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' });
    let text: String = plain.collect();
    text.split('-').filter(|w| !w.is_empty()).collect::<Vec<_>>().join("-")
}

/// A reading as a remark: what was looked at, and what was perceived if it is no number to read.
pub(super) fn read(shop: &Shop, words: &Words, reading: &Reading) -> String {
    let what = observed(shop, words, &reading.what);
    match perceived(shop, words, reading) {
        Some(text) => words.say_with("remark-perceived", &[("what", what.into()), ("text", text.into())]),
        None => words.say_with("remark-read", &[("what", what.into())]),
    }
}
