//! What was looked at and what was shown, in words.

use sim_core::action::{Cycle, Sense};
use sim_core::assembly::Stop;
use sim_core::notice::Thing;
use sim_core::observe::{Observed, Scale, ShownValue};
use sim_core::parts::instruments::MeterMode;

use super::{FluentValue, Naming, Speech, pretty_unit};

/// Key of a meter's setting.
#[must_use]
pub fn mode_key(mode: MeterMode) -> &'static str {
    match mode {
        MeterMode::Off => "mode-off",
        MeterMode::Volt => "mode-volt",
        MeterMode::Ohm => "mode-ohm",
        MeterMode::Ampere => "mode-ampere",
    }
}

impl Speech<'_> {
    /// What was looked at, in a few words.
    #[must_use]
    pub fn observed(&self, what: &Observed) -> String {
        match what {
            Observed::Instrument { instrument, mode, at } => {
                let name = self.named(Thing::Instrument, instrument);
                let name = match (mode, self.naming) {
                    (Some(mode), Naming::Called) => {
                        let mode = self.say(mode_key(*mode));
                        self.say_with("seen-mode", &[("it", name.into()), ("mode", mode.into())])
                    }
                    (Some(mode), Naming::Typed) => {
                        let mode = self.say(&format!("look-{}", mode_key(*mode)));
                        self.say_with("look-mode", &[("it", name.into()), ("mode", mode.into())])
                    }
                    (None, _) => name,
                };
                let places: Vec<String> = at.iter().map(|(_, place)| self.place(place)).collect();
                self.at_places(name, &places)
            }
            Observed::Interval { cycle, instrument, .. } => {
                let it = self.named(Thing::Instrument, instrument);
                let key = match (cycle, self.naming) {
                    (Cycle::PumpRun, Naming::Called) => "seen-run",
                    (Cycle::PumpRest, Naming::Called) => "seen-rest",
                    (Cycle::PumpRun, Naming::Typed) => "look-run",
                    (Cycle::PumpRest, Naming::Typed) => "look-rest",
                };
                self.say_with(key, &[("it", it.into())])
            }
            Observed::Sense(sense) => self.sense(sense),
        }
    }

    fn at_places(&self, it: String, places: &[String]) -> String {
        let value = |name: &'static str, text: &str| (name, FluentValue::from(text.to_owned()));
        match (places, self.naming) {
            ([], _) => it,
            (places, Naming::Typed) => {
                let and = format!(" {} ", self.word("and"));
                self.say_with("look-at", &[("it", it.into()), value("place", &places.join(&and))])
            }
            ([one], Naming::Called) => self.say_with("seen-at", &[("it", it.into()), value("place", one)]),
            ([first, second, ..], Naming::Called) => self.say_with(
                "seen-between",
                &[("it", it.into()), value("place", first), value("other", second)],
            ),
        }
    }

    fn sense(&self, sense: &Sense) -> String {
        let (key, it) = match sense {
            Sense::Hiss { part } => ("hiss", self.place(part)),
            Sense::Touch { part } => ("touch", self.place(part)),
            Sense::Lamp { instrument } => ("lamp", self.named(Thing::Instrument, instrument)),
            Sense::Hum => ("hum", String::new()),
            Sense::PedalTravel => ("travel", String::new()),
            Sense::PedalMoved => ("moved", String::new()),
            Sense::Applications => ("applications", String::new()),
            Sense::BaseBrakes => ("base-brakes", String::new()),
            Sense::YardDrive => ("yard", String::new()),
        };
        let key = match self.naming {
            Naming::Typed => format!("look-{key}"),
            Naming::Called => format!("seen-{key}"),
        };
        self.say_with(&key, &[("it", it.into())])
    }

    /// Plugs and clamps on the car, each at its port.
    #[must_use]
    pub fn stops(&self, stops: &[(String, Stop)]) -> Vec<String> {
        let stop = |(port, stop): &(String, Stop)| {
            let word = self.word(match stop {
                Stop::Plug => "plug",
                Stop::Clamp => "clamp",
            });
            let at = self.named(Thing::Port, port);
            self.say_with("told-left-stop", &[("stop", word.into()), ("at", at.into())])
        };
        stops.iter().map(stop).collect()
    }

    /// What was looked at with what was plugged and clamped for it, both in words.
    #[must_use]
    pub fn with_stops(&self, what: &str, stops: &[String]) -> String {
        if stops.is_empty() {
            return what.to_owned();
        }
        match self.naming {
            Naming::Called => format!("{what}; {}", stops.join("; ")),
            Naming::Typed => {
                let and = format!(" {} ", self.word("and"));
                self.say_with("look-with", &[("what", what.into()), ("stops", stops.join(&and).into())])
            }
        }
    }

    /// A level of a sense, by its key.
    #[must_use]
    pub fn level(&self, key: &str) -> String {
        self.locale.say(&format!("level-{key}"))
    }

    /// What was shown; `number` is the number a person would write down with its unit, if there is one.
    #[must_use]
    pub fn shown(
        &self,
        what: &Observed,
        shown: ShownValue,
        scale: &Scale,
        number: Option<(f64, &str)>,
    ) -> String {
        let typed = self.naming == Naming::Typed;
        let either = |look: &str, seen: &str| self.say(if typed { look } else { seen });
        match (what, shown, scale) {
            (_, ShownValue::Level(level), Scale::Ordinal { levels, .. }) => {
                levels.get(usize::from(level)).map_or_else(|| "?".to_owned(), |key| self.level(key))
            }
            (Observed::Interval { max_s, .. }, ShownValue::Off(true), _) => {
                let key = if typed { "look-longer" } else { "shown-longer" };
                self.say_with(key, &[("s", self.locale.number(f64::from(*max_s), 0).into())])
            }
            (_, ShownValue::Off(true), _) => either("look-off-high", "shown-off-high"),
            (_, ShownValue::Off(false), _) => either("look-off-low", "shown-off-low"),
            (_, ShownValue::Blank, _) => either("look-nothing", "shown-dark"),
            (_, ShownValue::Steps(_) | ShownValue::Level(_), _) => match number {
                Some((value, unit)) if typed => format!("{} {unit}", self.typed(value)),
                Some((value, unit)) => format!("{} {}", self.locale.plain(value), pretty_unit(unit)),
                None => "?".to_owned(),
            },
        }
    }

    /// A number as it would be typed, with the language's decimal mark.
    fn typed(&self, value: f64) -> String {
        value.to_string().replace('.', &self.locale.say("decimal-mark"))
    }
}
