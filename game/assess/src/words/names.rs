//! Names of a car, its tools and its spares, found forgivingly: `-` or `_`, capitals, a joint by one of
//! its ports, a port by its part when there is only one.

use crate::sentence;
use sim_core::assembly::PortRef;
use sim_core::car::{Car, Spare};
use sim_core::instrument::{InstrumentCard, InstrumentKind};
use sim_core::parts::{Domain, PartKind};

use super::examples::Examples;
use super::{Kind, WordsError};
use crate::locale::known;
use crate::locale::quote::LONGEST_QUOTE;
use crate::locale::sentence::Sentence;

/// Every name a line may use. Built once a job.
#[derive(Clone, Debug)]
pub struct Vocabulary {
    parts: Vec<String>,
    ports: Vec<Port>,
    joints: Vec<(String, PortRef, PortRef)>,
    units: Vec<String>,
    covers: Vec<String>,
    spares: Vec<(String, String)>,
    records: Vec<String>,
    instruments: Vec<(String, InstrumentKind)>,
    examples: Examples,
    /// How sure a finding is taken to be, where the school fixes it.
    certainty: Option<f64>,
}

#[derive(Clone, Debug)]
struct Port {
    at: PortRef,
    name: String,
    electrical: bool,
    of_wire: bool,
}

/// A name as it is compared: small letters, without `-` and `_`.
fn plain(name: &str) -> String {
    name.trim().to_lowercase().replace(['-', '_'], "")
}

/// Names close enough to be meant, closest first.
pub(super) fn similar<'a>(typed: &str, known: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    const CLOSE: f64 = 0.78;
    // What is longer than any name is like none.
    if LONGEST_QUOTE < typed.chars().count() {
        return Vec::new();
    }
    let typed = plain(typed);
    let mut scored: Vec<(f64, &str)> = known
        .map(|k| (strsim::jaro_winkler(&typed, &plain(k)), k))
        .filter(|(score, k)| CLOSE <= *score || (3 <= typed.len() && plain(k).contains(&typed)))
        .collect();
    scored.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(b.1)));
    scored.into_iter().take(4).map(|(_, k)| k).collect()
}

/// The names that are near, as a question.
pub(super) fn did_you_mean(near: &[&str]) -> Sentence {
    match near {
        [first, second, third, fourth, ..] => sentence!(
            "plain-did-you-mean-four",
            "did you mean {first} or {second} or {third} or {fourth}?",
            first = *first,
            second = *second,
            third = *third,
            fourth = *fourth
        ),
        [first, second, third] => sentence!(
            "plain-did-you-mean-three",
            "did you mean {first} or {second} or {third}?",
            first = *first,
            second = *second,
            third = *third
        ),
        [first, second] => sentence!(
            "plain-did-you-mean-two",
            "did you mean {first} or {second}?",
            first = *first,
            second = *second
        ),
        near => sentence!("plain-did-you-mean", "did you mean {near}?", near = near.concat()),
    }
}

fn lookup<'a>(kind: Kind, typed: &str, known: &[&'a str]) -> Result<&'a str, WordsError> {
    let wanted = plain(typed);
    if let Some(found) = known.iter().find(|k| plain(k) == wanted) {
        return Ok(found);
    }
    Err(unknown(kind, typed, known))
}

fn unknown(kind: Kind, typed: &str, known: &[&str]) -> WordsError {
    let near = similar(typed, known.iter().copied());
    let hint = if near.is_empty() {
        let all = known.join(", ");
        if all.is_empty() {
            kind.none()
        } else if all.len() <= 200 {
            sentence!("plain-known", "known: {names}", names = all)
        } else {
            sentence!("plain-known", "known: {names}", names = known::known(typed, known))
        }
    } else {
        did_you_mean(&near)
    };
    WordsError::NoSuch { kind, name: typed.to_owned(), hint }
}

impl Vocabulary {
    /// The names of a car with its tools and spares.
    #[must_use]
    pub fn of(car: &Car, kit: &[InstrumentCard], spares: &[Spare]) -> Self {
        let assembly = &car.assembly;
        let ports = assembly
            .ports()
            .map(|at| Port {
                at,
                name: assembly.port_name(at),
                electrical: assembly.domain(at) == Domain::Electrical,
                of_wire: matches!(assembly.parts[at.part as usize].kind, PartKind::Wire(_)),
            })
            .collect();
        Self {
            parts: assembly.parts.iter().map(|p| p.id.clone()).collect(),
            ports,
            joints: assembly.joints.iter().map(|j| (j.id.clone(), j.a, j.b)).collect(),
            units: car.units.iter().map(|u| u.id.clone()).collect(),
            covers: car.covers.iter().map(|c| c.id.clone()).collect(),
            spares: spares
                .iter()
                .map(|s| {
                    (s.id.clone(), car.units.get(s.unit as usize).map_or_else(String::new, |u| u.id.clone()))
                })
                .collect(),
            records: car.record.iter().map(|r| r.id.clone()).collect(),
            instruments: kit.iter().map(|c| (c.id.clone(), c.kind)).collect(),
            examples: Examples::of(car, spares),
            certainty: None,
        }
    }

    /// The same where a finding is taken to be so sure, whoever gives it.
    #[must_use]
    pub fn with_certainty(self, certainty: Option<f64>) -> Self {
        Self { certainty, ..self }
    }

    /// How sure a finding is taken to be, where the school fixes it.
    pub(super) fn certainty(&self) -> Option<f64> {
        self.certainty
    }

    /// A help text with the names of this car in it.
    pub(super) fn example(&self, text: &str) -> String {
        self.examples.fill(text)
    }

    /// All names, for completion at the prompt.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.parts
            .iter()
            .chain(self.ports.iter().map(|p| &p.name))
            .chain(self.joints.iter().map(|j| &j.0))
            .chain(&self.units)
            .chain(&self.covers)
            .chain(self.spares.iter().map(|s| &s.0))
            .chain(&self.records)
            .chain(self.instruments.iter().map(|i| &i.0))
            .map(String::as_str)
    }

    /// What a name is that was typed as if it were a word, and what could be done with it.
    pub(super) fn as_first_word(&self, typed: &str) -> Option<(Kind, String)> {
        let known = |list: &[String]| list.iter().any(|k| plain(k) == plain(typed));
        if self.instrument(typed).is_ok() {
            return Some((Kind::Instrument, format!("read {typed}")));
        }
        if known(&self.parts) {
            return Some((Kind::Part, format!("touch {typed}")));
        }
        if known(&self.covers) {
            return Some((Kind::Cover, format!("cover {typed} off")));
        }
        if self.joint(typed).is_ok() {
            return Some((Kind::Joint, format!("open {typed}")));
        }
        None
    }

    pub(super) fn part(&self, typed: &str) -> Result<String, WordsError> {
        let known: Vec<&str> = self.parts.iter().map(String::as_str).collect();
        // A port was named where a part is meant: `touch pump.inlet`.
        let name = typed.split_once('.').map_or(typed, |(part, _)| part);
        lookup(Kind::Part, name, &known).map(str::to_owned)
    }

    /// Whether a part of the car is called exactly this.
    pub(super) fn has_part(&self, typed: &str) -> bool {
        let plain = typed.to_lowercase().replace('-', "_");
        self.parts.contains(&plain)
    }

    pub(super) fn unit(&self, typed: &str) -> Result<String, WordsError> {
        let known: Vec<&str> = self.units.iter().map(String::as_str).collect();
        lookup(Kind::Unit, typed, &known).map(str::to_owned)
    }

    pub(super) fn cover(&self, typed: &str) -> Result<String, WordsError> {
        let known: Vec<&str> = self.covers.iter().map(String::as_str).collect();
        lookup(Kind::Cover, typed, &known).map(str::to_owned)
    }

    pub(super) fn record(&self, typed: &str) -> Result<String, WordsError> {
        let known: Vec<&str> = self.records.iter().map(String::as_str).collect();
        lookup(Kind::Record, typed, &known).map(str::to_owned)
    }

    /// A spare by name; or, by its unit, when the store has just one for it.
    pub(super) fn spare(&self, unit: &str, typed: Option<&str>) -> Result<String, WordsError> {
        let fitting: Vec<&str> = self.spares.iter().filter(|s| s.1 == unit).map(|s| s.0.as_str()).collect();
        match typed {
            Some(name) => {
                let known: Vec<&str> = self.spares.iter().map(|s| s.0.as_str()).collect();
                lookup(Kind::Spare, name, &known).map(str::to_owned)
            }
            None => match fitting.as_slice() {
                [only] => Ok((*only).to_owned()),
                [] => {
                    let problem =
                        sentence!("plain-store-none", "the store has no spare for {unit}", unit = unit);
                    Err(WordsError::shape(problem, "store"))
                }
                many => {
                    let problem = sentence!(
                        "plain-store-several",
                        "the store has several spares for {unit}: {names}",
                        unit = unit,
                        names = many.join(", ")
                    );
                    Err(WordsError::shape(problem, format!("swap {unit} with {}", many[0])))
                }
            },
        }
    }

    pub(super) fn instrument(&self, typed: &str) -> Result<(String, InstrumentKind), WordsError> {
        let known: Vec<&str> = self.instruments.iter().map(|i| i.0.as_str()).collect();
        let name = match lookup(Kind::Instrument, typed, &known) {
            Ok(name) => name,
            // Not by its own name: by what the trade calls such a thing, if there is one.
            Err(error) => {
                match self.instruments.iter().find(|i| i.1.nature().also.contains(&plain(typed).as_str())) {
                    Some(found) => found.0.as_str(),
                    None => return Err(error),
                }
            }
        };
        self.instruments
            .iter()
            .find(|i| i.0 == name)
            .cloned()
            .ok_or_else(|| unknown(Kind::Instrument, typed, &known))
    }

    /// The instrument called `typed`; without a name, the first of a kind.
    pub(super) fn instrument_or_first(
        &self,
        typed: Option<&str>,
        none: Sentence,
        of_kind: impl Fn(&InstrumentKind) -> bool,
    ) -> Result<String, WordsError> {
        match typed {
            Some(name) => self.instrument(name).map(|i| i.0),
            None => {
                let first = self.instruments.iter().find(|i| of_kind(&i.1)).map(|i| i.0.clone());
                first.ok_or_else(|| WordsError::shape(none, "tools"))
            }
        }
    }

    /// A port by its name; or by its part, when that has just one (or, for a wire, its first end).
    pub(super) fn port(&self, typed: &str) -> Result<String, WordsError> {
        let wanted = plain(typed);
        if let Some(port) = self.ports.iter().find(|p| plain(&p.name) == wanted) {
            return Ok(port.name.clone());
        }
        let of_part: Vec<&Port> = self
            .ports
            .iter()
            .filter(|p| p.name.split_once('.').is_some_and(|(part, _)| plain(part) == wanted))
            .collect();
        match of_part.as_slice() {
            [only] => Ok(only.name.clone()),
            [first, _] if first.of_wire => Ok(first.name.clone()),
            [] => {
                // Of a known part, its own ports are the best hint.
                let part = wanted.split('.').next().unwrap_or_default().to_owned() + ".";
                let own: Vec<&str> = self
                    .ports
                    .iter()
                    .map(|p| p.name.as_str())
                    .filter(|n| plain(n).starts_with(&part))
                    .collect();
                if own.is_empty() {
                    let known: Vec<&str> = self.ports.iter().map(|p| p.name.as_str()).collect();
                    Err(unknown(Kind::Port, typed, &known))
                } else {
                    Err(WordsError::NoSuch {
                        kind: Kind::Port,
                        name: typed.to_owned(),
                        hint: that_part_has(&own),
                    })
                }
            }
            many => {
                let names: Vec<&str> = many.iter().map(|p| p.name.as_str()).collect();
                Err(WordsError::NoSuch {
                    kind: Kind::Port,
                    name: typed.to_owned(),
                    hint: that_part_has(&names),
                })
            }
        }
    }

    /// Whether a port carries current.
    pub(super) fn is_electrical(&self, port: &str) -> bool {
        self.ports.iter().any(|p| p.name == port && p.electrical)
    }

    /// A joint by its name (with or without `j_`/`e_`), or by a port that belongs to just one.
    pub(super) fn joint(&self, typed: &str) -> Result<String, WordsError> {
        let wanted = plain(typed);
        let by_name = |name: &str| self.joints.iter().find(|j| plain(&j.0) == name).map(|j| j.0.clone());
        if let Some(found) = by_name(&wanted)
            .or_else(|| by_name(&format!("j_{wanted}")))
            .or_else(|| by_name(&format!("e_{wanted}")))
        {
            return Ok(found);
        }
        if let Some(port) = self.ports.iter().find(|p| plain(&p.name) == wanted) {
            let at: Vec<&str> = self
                .joints
                .iter()
                .filter(|j| j.1 == port.at || j.2 == port.at)
                .map(|j| j.0.as_str())
                .collect();
            return match at.as_slice() {
                [only] => Ok((*only).to_owned()),
                [] => Err(WordsError::NoSuch {
                    kind: Kind::Joint,
                    name: typed.to_owned(),
                    hint: sentence!("plain-nothing-joined", "nothing is joined there"),
                }),
                many => Err(WordsError::NoSuch {
                    kind: Kind::Joint,
                    name: typed.to_owned(),
                    hint: sentence!(
                        "plain-several-joints",
                        "several joints meet there: {names}",
                        names = many.join(", ")
                    ),
                }),
            };
        }
        // A part was named: its joints are the hint.
        let of_part: Vec<&str> = self
            .joints
            .iter()
            .filter(|j| {
                [j.1, j.2]
                    .iter()
                    .any(|p| self.parts.get(p.part as usize).is_some_and(|id| plain(id) == wanted))
            })
            .map(|j| j.0.as_str())
            .collect();
        match of_part.as_slice() {
            [] => {
                let known: Vec<&str> = self.joints.iter().map(|j| j.0.as_str()).collect();
                Err(unknown(Kind::Joint, typed, &known))
            }
            [only] => Ok((*only).to_owned()),
            many => Err(WordsError::NoSuch {
                kind: Kind::Joint,
                name: typed.to_owned(),
                hint: sentence!(
                    "plain-part-joints",
                    "that part has the joints {names}",
                    names = many.join(", ")
                ),
            }),
        }
    }
}

fn that_part_has(ports: &[&str]) -> Sentence {
    sentence!("plain-part-ports", "that part has {names}", names = ports.join(", "))
}
