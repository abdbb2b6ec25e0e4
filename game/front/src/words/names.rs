//! What things are called: by their short names in the locale files, else as the data files call them.

use assess::locale::{FluentValue, key_part};
use sim_core::action::Station;
use sim_core::notice;
use sim_core::observe::{Observed, Reading, Scale, ShownValue};

use super::Words;
use crate::hands::{Offer, Thing};
use crate::shop::Shop;

impl Words {
    /// What a thing is called.
    #[must_use]
    pub fn name(&self, shop: &Shop, thing: Thing) -> String {
        let Some(s) = self.speech(shop) else { return String::new() };
        let (car, at) = (s.car, |i: u16| usize::from(i));
        match thing {
            Thing::Part(i) => s.part(i),
            Thing::Port(port) => s.port(port),
            Thing::Joint(i) => car
                .assembly
                .joints
                .get(at(i))
                .map_or_else(String::new, |joint| s.called(notice::Thing::Joint, &joint.id)),
            Thing::Cover(i) => {
                car.covers.get(at(i)).map_or_else(String::new, |c| s.called(notice::Thing::Cover, &c.id))
            }
            Thing::Instrument(i) => {
                s.kit.get(at(i)).map_or_else(String::new, |c| s.called(notice::Thing::Instrument, &c.id))
            }
            Thing::Spare(i) => {
                s.spares.get(at(i)).map_or_else(String::new, |c| s.called(notice::Thing::Spare, &c.id))
            }
            Thing::Key => self.say("name-key"),
            Thing::Starter => self.say("name-starter"),
            Thing::Pedal => self.say("name-pedal"),
            Thing::Chocks => self.say("name-chocks"),
            Thing::Extraction => self.say("name-extraction"),
            Thing::JobCard => self.say("name-job-card"),
            Thing::DataSheet => self.say("name-data-sheet"),
            Thing::Car => self.say("name-car"),
            Thing::Clock => self.say("name-clock"),
        }
    }

    /// What something is called, by its short name.
    #[must_use]
    pub fn called(&self, shop: &Shop, thing: notice::Thing, name: &str) -> String {
        self.speech(shop).map_or_else(|| name.to_owned(), |s| s.called(thing, name))
    }

    /// What a repair unit is called.
    #[must_use]
    pub fn unit(&self, shop: &Shop, id: &str) -> String {
        self.called(shop, notice::Thing::Unit, id)
    }

    /// The words of a menu's line.
    #[must_use]
    pub fn offer(&self, shop: &Shop, offer: &Offer) -> String {
        let mut values: Vec<(&str, FluentValue<'_>)> = Vec::new();
        if let Some(it) = offer.it {
            values.push(("it", self.name(shop, it).into()));
        }
        if let Some(end) = &offer.end {
            values.push(("end", self.say_or(&format!("lead-{end}"), end).into()));
        }
        self.say_with(offer.key, &values)
    }

    /// What a pack is called.
    #[must_use]
    pub fn pack(&self, id: &str, title: &str) -> String {
        self.say_or(&format!("pack-{}", key_part(id)), title)
    }

    /// What a job (`pack/job`) is called.
    #[must_use]
    pub fn job(&self, name: &str, title: &str) -> String {
        self.say_or(&format!("job-{}", key_part(name)), title)
    }

    /// What the customer of a job says: line `n`, from 0.
    #[must_use]
    pub fn job_says(&self, name: &str, n: usize, text: &str) -> String {
        self.say_or(&format!("job-{}-says-{}", key_part(name), n + 1), text)
    }

    /// A caution of a job: line `n`, from 0.
    #[must_use]
    pub fn job_caution(&self, name: &str, n: usize, text: &str) -> String {
        self.say_or(&format!("job-{}-caution-{}", key_part(name), n + 1), text)
    }

    /// What a job was, told after the hand-back: paragraph `n`, from 0.
    #[must_use]
    pub fn job_debrief(&self, name: &str, n: usize, text: &str) -> String {
        self.say_or(&format!("job-{}-debrief-{}", key_part(name), n + 1), text)
    }

    /// What a car is called.
    #[must_use]
    pub fn car(&self, id: &str, name: &str) -> String {
        self.say_or(&format!("{id}-name"), name)
    }

    /// A line of the car's record, with its condition.
    #[must_use]
    pub fn record_line(&self, shop: &Shop, id: &str) -> String {
        self.speech(shop).map_or_else(|| id.to_owned(), |s| s.record_line(id))
    }

    /// A line of the car's record in a word or two.
    #[must_use]
    pub fn record_short(&self, shop: &Shop, id: &str) -> String {
        self.speech(shop).map_or_else(|| id.to_owned(), |s| s.record_short(id))
    }

    /// A line of the car's data sheet.
    #[must_use]
    pub fn limit(&self, car: &str, id: &str, text: &str) -> String {
        self.say_or(&format!("{car}-limit-{id}"), text)
    }

    /// A caution of the car's data sheet, by its place in the file.
    #[must_use]
    pub fn caution(&self, car: &str, n: usize, text: &str) -> String {
        self.say_or(&format!("{car}-caution-{}", n + 1), text)
    }

    /// What an instrument of the kit is called, by its short name.
    #[must_use]
    pub fn instrument(&self, shop: &Shop, id: &str) -> String {
        self.called(shop, notice::Thing::Instrument, id)
    }

    /// What a place is called that is named as in an attempt: `part.port`, or a part.
    #[must_use]
    pub fn place(&self, shop: &Shop, place: &str) -> String {
        self.speech(shop).map_or_else(|| place.to_owned(), |s| s.place(place))
    }

    /// What was looked at, in a few words.
    #[must_use]
    pub fn observed(&self, shop: &Shop, what: &Observed) -> String {
        self.speech(shop).map_or_else(String::new, |s| s.observed(what))
    }

    /// What a reading showed, when it has no number the trainee must read by himself: a sense, a time
    /// that was given up, a needle at its stop, a dark display. `None` when it has one.
    #[must_use]
    pub fn shown(&self, shop: &Shop, reading: &Reading) -> Option<String> {
        let scale = shop.session()?.workshop().scale(&reading.what);
        let s = self.speech(shop)?;
        match (&reading.what, reading.shown, &scale) {
            (Observed::Sense(_), ShownValue::Steps(_), Scale::Numeric { unit, .. }) => {
                let number = scale.number(reading.shown)?;
                Some(format!("{} {unit}", self.number(number, scale.decimals())))
            }
            (_, ShownValue::Steps(_), _) => None,
            (what, shown, scale) => Some(s.shown(what, shown, scale, None)),
        }
    }
}

/// Key of a station's name.
#[must_use]
pub fn station_key(station: Station) -> &'static str {
    match station {
        Station::Desk => "station-desk",
        Station::Cab => "station-cab",
        Station::Bay => "station-bay",
        Station::Front => "station-front",
        Station::Bench => "station-bench",
    }
}
