//! What things are called: by their short names in the files of words, else as the data files call them.

use sim_core::assembly::PortRef;
use sim_core::car::RecordKind;
use sim_core::notice::Thing;

use super::{Naming, Speech};

/// A short name as a key may be written: letters, digits, `-` and `_`.
#[must_use]
pub fn key_part(name: &str) -> String {
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

impl Speech<'_> {
    /// A thing by its short name: as it is typed or as it is called.
    #[must_use]
    pub fn named(&self, thing: Thing, name: &str) -> String {
        match self.naming {
            Naming::Typed => name.to_owned(),
            Naming::Called => self.called(thing, name),
        }
    }

    /// What a thing is called, by its short name; a name that nothing has stands as it is.
    #[must_use]
    pub fn called(&self, thing: Thing, name: &str) -> String {
        let (car, locale) = (self.car, self.locale);
        let of_car = |what: &str, told: Option<&String>| {
            told.map_or_else(
                || name.to_owned(),
                |told| locale.say_or(&format!("{}-{what}-{name}", car.id), told),
            )
        };
        match thing {
            Thing::Part => match car.assembly.part_index(name) {
                Some(part) => self.part(part),
                None => name.to_owned(),
            },
            Thing::Port => car.assembly.port(name).map_or_else(|| name.to_owned(), |port| self.port(port)),
            Thing::Joint => match car.assembly.joints.iter().find(|j| j.id == name) {
                Some(joint) => {
                    let (a, b) = (self.port(joint.a), self.port(joint.b));
                    locale.say_with("name-joint", &[("a", a.into()), ("b", b.into())])
                }
                None => name.to_owned(),
            },
            Thing::Cover => of_car("cover", car.covers.iter().find(|c| c.id == name).map(|c| &c.name)),
            Thing::Unit => of_car("unit", car.units.iter().find(|u| u.id == name).map(|u| &u.name)),
            Thing::Spare => of_car("spare", self.spares.iter().find(|s| s.id == name).map(|s| &s.name)),
            Thing::Instrument => {
                let card = self.kit.iter().find(|c| c.id == name);
                locale.say_or(&format!("instrument-{name}"), card.map_or(name, |c| c.name.as_str()))
            }
            Thing::End => locale.say_or(&format!("lead-{name}"), name),
        }
    }

    /// What a part of the car is called, by its index.
    #[must_use]
    pub fn part(&self, part: u16) -> String {
        let (car, i) = (self.car, usize::from(part));
        let (Some(part), Some(stands)) = (car.assembly.parts.get(i), car.stands.get(i)) else {
            return String::new();
        };
        self.locale.say_or(&format!("{}-part-{}", car.id, part.id), &stands.name)
    }

    /// What a port of the car is called: its part, and its end, terminal or branch.
    #[must_use]
    pub fn port(&self, port: PortRef) -> String {
        let Some(part) = self.car.assembly.parts.get(usize::from(port.part)) else {
            return String::new();
        };
        let Some(end) = part.kind.ports().get(usize::from(port.port)) else { return String::new() };
        let part_name = self.part(port.part);
        let kind = part.kind.name().to_lowercase();
        let end_name = self.locale.say_or(&format!("end-{kind}-{}", end.name), end.name);
        self.locale.say_with("name-port", &[("part", part_name.into()), ("end", end_name.into())])
    }

    /// What a place is called that is named as in an attempt: `part.port`, or a part.
    #[must_use]
    pub fn place(&self, place: &str) -> String {
        let thing = if self.car.assembly.port(place).is_some() { Thing::Port } else { Thing::Part };
        self.named(thing, place)
    }

    /// Repair units by their indices, in a row: `the pump, the relay and the earth`; none means that nothing is wrong.
    #[must_use]
    pub fn units(&self, units: &[u16]) -> String {
        let of = |unit: &u16| self.car.units.get(usize::from(*unit));
        let names: Vec<String> =
            units.iter().filter_map(of).map(|u| self.called(Thing::Unit, &u.id)).collect();
        if names.is_empty() { self.say("told-sound") } else { self.row(&names) }
    }

    /// Things in a row: `a, b and c`.
    #[must_use]
    pub fn row(&self, names: &[String]) -> String {
        match names {
            [] => String::new(),
            [one] => one.clone(),
            [head @ .., last] => format!("{} {} {last}", head.join(", "), self.word("and")),
        }
    }

    /// A line of the car's record, with its condition.
    #[must_use]
    pub fn record_line(&self, id: &str) -> String {
        let car = self.car;
        let text = car.record.iter().find(|r| r.id == id).map_or(id, |r| r.text.as_str());
        self.locale.say_or(&format!("{}-record-{id}", car.id), text)
    }

    /// A line of the car's record in a word or two; by its short name where names are typed.
    #[must_use]
    pub fn record_short(&self, id: &str) -> String {
        match self.naming {
            Naming::Typed => id.to_owned(),
            Naming::Called => {
                let line = self.car.record.iter().find(|r| r.id == id);
                line.map_or_else(|| id.to_owned(), |line| self.locale.say_or(line_key(line.kind), id))
            }
        }
    }
}

/// Key of a line of the record in a word or two: of its kind, the same for every car.
const fn line_key(kind: RecordKind) -> &'static str {
    match kind {
        RecordKind::DayPressure => "line-day",
        RecordKind::BatteryVoltage => "line-battery",
        RecordKind::PumpRun => "line-run",
        RecordKind::PumpRest => "line-rest",
        RecordKind::CutOut => "line-cut-out",
        RecordKind::CutIn => "line-cut-in",
        RecordKind::ReleaseBuildUp => "line-build-up",
        RecordKind::ReleaseDrop => "line-drop",
        RecordKind::ReleaseReserve => "line-reserve",
        RecordKind::ReleaseNoRise => "line-no-rise",
        RecordKind::ReleaseRest => "line-rest-after",
        RecordKind::ReleaseYard => "line-yard",
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
