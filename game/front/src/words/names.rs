//! What things are called: by their short names in the locale files, else as the data files call them.

use fluent_bundle::FluentValue;
use sim_core::action::{Cycle, Sense, Station};
use sim_core::assembly::PortRef;
use sim_core::observe::{Observed, Reading, Scale, ShownValue};
use sim_core::parts::instruments::MeterMode;

use super::Words;
use crate::hands::{Offer, Thing};
use crate::shop::Shop;

/// A short name as a locale key may be written: letters, digits, `-` and `_`.
pub(super) fn key_part(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_ascii_alphanumeric() || c == '_' {
            out.push(c.to_ascii_lowercase());
        } else if !out.ends_with('-') && !out.is_empty() {
            out.push('-');
        }
    }
    out.trim_end_matches('-').to_owned()
}

impl Words {
    /// What a thing is called.
    #[must_use]
    pub fn name(&self, shop: &Shop, thing: Thing) -> String {
        let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return String::new() };
        let setup = session.workshop().setup();
        match thing {
            Thing::Part(i) => {
                let (part, stands) = (car.assembly.parts.get(usize::from(i)), car.stands.get(usize::from(i)));
                let (Some(part), Some(stands)) = (part, stands) else { return String::new() };
                self.say_or(&format!("{}-part-{}", car.id, part.id), &stands.name)
            }
            Thing::Port(port) => self.port(shop, port),
            Thing::Joint(i) => {
                let Some(joint) = car.assembly.joints.get(usize::from(i)) else { return String::new() };
                let (a, b) = (self.port(shop, joint.a), self.port(shop, joint.b));
                self.say_with("name-joint", &[("a", a.into()), ("b", b.into())])
            }
            Thing::Cover(i) => {
                let Some(cover) = car.covers.get(usize::from(i)) else { return String::new() };
                self.say_or(&format!("{}-cover-{}", car.id, cover.id), &cover.name)
            }
            Thing::Instrument(i) => {
                let Some(card) = setup.kit.get(usize::from(i)) else { return String::new() };
                self.say_or(&format!("instrument-{}", card.id), &card.name)
            }
            Thing::Spare(i) => {
                let Some(spare) = setup.spares.get(usize::from(i)) else { return String::new() };
                self.say_or(&format!("{}-spare-{}", car.id, spare.id), &spare.name)
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

    /// What a repair unit is called.
    #[must_use]
    pub fn unit(&self, shop: &Shop, id: &str) -> String {
        let Some(car) = shop.car() else { return id.to_owned() };
        let name = car.units.iter().find(|u| u.id == id).map_or(id, |u| u.name.as_str());
        self.say_or(&format!("{}-unit-{id}", car.id), name)
    }

    /// What a port of the car is called: its part, and its end, terminal or branch.
    fn port(&self, shop: &Shop, port: PortRef) -> String {
        let Some(car) = shop.car() else { return String::new() };
        let Some(part) = car.assembly.parts.get(usize::from(port.part)) else { return String::new() };
        let Some(end) = part.kind.ports().get(usize::from(port.port)) else { return String::new() };
        let part_name = self.name(shop, Thing::Part(port.part));
        let kind = part.kind.name().to_lowercase();
        let end_name = self.say_or(&format!("end-{kind}-{}", end.name), end.name);
        self.say_with("name-port", &[("part", part_name.into()), ("end", end_name.into())])
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

    /// What a repair unit is called that a mark sheet names in the words of the car's file.
    #[must_use]
    pub fn unit_by_name(&self, shop: &Shop, name: &str) -> String {
        let unit = shop.car().and_then(|car| car.units.iter().find(|u| u.name == name));
        unit.map_or_else(|| name.to_owned(), |u| self.unit(shop, &u.id))
    }

    /// What a class of the evidence is called.
    #[must_use]
    pub fn class(&self, shop: &Shop, name: &str) -> String {
        match name {
            "everything inside its limits" => self.say("finding-sound"),
            "something not in the catalogue" => self.say("mark-other"),
            unit => self.unit_by_name(shop, unit),
        }
    }

    /// A condition of *competent*: what is asked and, at its end, the number.
    #[must_use]
    pub fn condition(&self, asked: &str) -> String {
        let (head, number) = match asked.rsplit_once(' ') {
            Some((head, last)) if last.parse::<f64>().is_ok() => (head, last),
            _ => (asked, ""),
        };
        // Up to one it is a share of the points.
        let share = number
            .parse()
            .ok()
            .filter(|n| *n <= 1.0)
            .map(|n: f64| format!("{} %", self.number(100.0 * n, 0)));
        let number = share.unwrap_or_else(|| number.replace('.', &self.say("decimal-mark")));
        let key = format!("condition-{}", key_part(head));
        self.find(&key, &[("n", number.into())]).unwrap_or_else(|| asked.to_owned())
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
        let Some(car) = shop.car() else { return id.to_owned() };
        let text = car.record.iter().find(|r| r.id == id).map_or(id, |r| r.text.as_str());
        self.say_or(&format!("{}-record-{id}", car.id), text)
    }

    /// A line of the car's record in a word or two.
    #[must_use]
    pub fn record_short(&self, shop: &Shop, id: &str) -> String {
        let Some(car) = shop.car() else { return id.to_owned() };
        self.say_or(&format!("{}-line-{id}", car.id), id)
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
        let kit = shop.session().map(|s| &s.workshop().setup().kit);
        let name = kit.and_then(|kit| kit.iter().find(|c| c.id == id)).map_or(id, |c| c.name.as_str());
        self.say_or(&format!("instrument-{id}"), name)
    }

    /// What a place is called that is named as in an attempt: `part.port`, or a part.
    #[must_use]
    pub fn place(&self, shop: &Shop, place: &str) -> String {
        let Some(car) = shop.car() else { return place.to_owned() };
        if let Some(port) = car.assembly.port(place) {
            return self.port(shop, port);
        }
        match car.assembly.part_index(place) {
            Some(part) => self.name(shop, Thing::Part(part)),
            None => place.to_owned(),
        }
    }

    /// What was looked at, in a few words.
    #[must_use]
    pub fn observed(&self, shop: &Shop, what: &Observed) -> String {
        match what {
            Observed::Instrument { instrument, mode, at } => {
                let name = self.instrument(shop, instrument);
                let name = match mode {
                    Some(mode) => {
                        let mode = self.say(mode_key(*mode));
                        self.say_with("seen-mode", &[("it", name.into()), ("mode", mode.into())])
                    }
                    None => name,
                };
                let places: Vec<String> = at.iter().map(|(_, place)| self.place(shop, place)).collect();
                match places.as_slice() {
                    [] => name,
                    [one] => self.say_with("seen-at", &[("it", name.into()), ("place", one.as_str().into())]),
                    [first, second, ..] => self.say_with(
                        "seen-between",
                        &[
                            ("it", name.into()),
                            ("place", first.as_str().into()),
                            ("other", second.as_str().into()),
                        ],
                    ),
                }
            }
            Observed::Interval { cycle: Cycle::PumpRun, .. } => self.say("seen-run"),
            Observed::Interval { cycle: Cycle::PumpRest, .. } => self.say("seen-rest"),
            Observed::Sense(sense) => {
                let of = |key: &str, it: String| self.say_with(key, &[("it", it.into())]);
                match sense {
                    Sense::Hiss { part } => of("seen-hiss", self.place(shop, part)),
                    Sense::Touch { part } => of("seen-touch", self.place(shop, part)),
                    Sense::Lamp { instrument } => of("seen-lamp", self.instrument(shop, instrument)),
                    Sense::Hum => self.say("seen-hum"),
                    Sense::PedalTravel => self.say("seen-travel"),
                    Sense::PedalMoved => self.say("seen-moved"),
                    Sense::Applications => self.say("seen-applications"),
                    Sense::BaseBrakes => self.say("seen-base-brakes"),
                    Sense::YardDrive => self.say("seen-yard"),
                }
            }
        }
    }

    /// A level of a sense, by the English words the workshop has for it.
    #[must_use]
    pub fn level(&self, english: &str) -> String {
        self.say_or(&format!("level-{}", key_part(english)), english)
    }

    /// What a reading showed, when it has no number the trainee must read by himself: a sense, a time
    /// that was given up, a needle at its stop, a dark display. `None` when it has one.
    #[must_use]
    pub fn shown(&self, shop: &Shop, reading: &Reading) -> Option<String> {
        let scale = shop.session()?.workshop().scale(&reading.what);
        Some(match (&reading.what, reading.shown, &scale) {
            (_, ShownValue::Level(level), Scale::Ordinal { levels, .. }) => {
                levels.get(usize::from(level)).map_or_else(String::new, |text| self.level(text))
            }
            (Observed::Sense(_), ShownValue::Steps(n), Scale::Numeric { unit, resolution, .. }) => {
                format!("{} {unit}", self.number(n as f64 * resolution, 0))
            }
            (_, ShownValue::Steps(_), _) => return None,
            (Observed::Interval { max_s, .. }, ShownValue::Off(_), _) => {
                self.say_with("shown-longer", &[("s", self.number(f64::from(*max_s), 0).into())])
            }
            (_, ShownValue::Off(true), _) => self.say("shown-off-high"),
            (_, ShownValue::Off(false), _) => self.say("shown-off-low"),
            _ => self.say("shown-dark"),
        })
    }
}

/// Key of a meter's setting.
pub(super) fn mode_key(mode: MeterMode) -> &'static str {
    match mode {
        MeterMode::Off => "mode-off",
        MeterMode::Volt => "mode-volt",
        MeterMode::Ohm => "mode-ohm",
        MeterMode::Ampere => "mode-ampere",
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

#[cfg(test)]
mod tests {
    use super::key_part;

    #[test]
    fn a_key_holds_letters_digits_and_dashes() {
        assert_eq!(key_part("first-shift/hum-at-the-lights"), "first-shift-hum-at-the-lights");
        assert_eq!(
            key_part("fluid, hoses, discs and pads in order, pedal firm"),
            "fluid-hoses-discs-and-pads-in-order-pedal-firm"
        );
        assert_eq!(key_part("hose_b"), "hose_b");
    }
}
