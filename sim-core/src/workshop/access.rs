//! Names, places and hands: what a name means, where one stands to reach it, what bars it, who is bound.
//!
//! From where a thing of the car is reached, the car says ([`crate::reach`]).

use super::Workshop;
use crate::action::{PedalHold, Station};
use crate::assembly::PortRef;
use crate::instrument::InstrumentKind;
use crate::notice::{Quantity, Reason, Refusal, Sort, TheTool, Tool};
use crate::reach::Place;

/// A refusal for a reason.
pub(super) fn cannot(why: Reason) -> Refusal {
    Refusal::Cannot(why)
}

/// Refuses a number outside `min` to `max`.
pub(super) fn in_range(what: Quantity, value: f64, min: f64, max: f64) -> Result<(), Refusal> {
    if (min..=max).contains(&value) { Ok(()) } else { Err(Refusal::Range { what, min, max }) }
}

fn unknown<'a>(kind: Sort, name: &str, known: impl Iterator<Item = &'a str>) -> Refusal {
    const SHOWN: usize = 40;
    let all: Vec<&str> = known.collect();
    // Names that begin alike come first; the order is otherwise the file's.
    let stem: String = name.chars().take(3).collect();
    let (close, rest): (Vec<&str>, Vec<&str>) =
        all.iter().partition(|k| !stem.is_empty() && k.starts_with(&stem));
    let list: Vec<&str> = close.into_iter().chain(rest).take(SHOWN).collect();
    let more = if SHOWN < all.len() { ", …" } else { "" };
    Refusal::Unknown { kind, name: name.to_owned(), known: format!("{}{more}", list.join(", ")) }
}

impl Workshop {
    /// An instrument (index into the kit), to speak of.
    pub(super) fn tool(&self, card: usize) -> TheTool {
        self.setup.kit[card].id.as_str().into()
    }

    /// Number of parts of the car; instruments follow after them.
    pub(super) fn n_car_parts(&self) -> usize {
        self.setup.car.assembly.parts.len()
    }

    /// Number of joints of the car; joints of instruments follow after them.
    pub(super) fn n_car_joints(&self) -> usize {
        self.setup.car.assembly.joints.len()
    }

    /// The part of the car called `name`.
    pub(super) fn find_part(&self, name: &str) -> Result<u16, Refusal> {
        let parts = &self.setup.car.assembly.parts;
        parts
            .iter()
            .position(|p| p.id == name)
            .map(|i| i as u16)
            .ok_or_else(|| unknown(Sort::Part, name, parts.iter().map(|p| p.id.as_str())))
    }

    /// The port called `name`, of the car or of an instrument.
    pub(super) fn find_port(&self, name: &str) -> Result<PortRef, Refusal> {
        let assembly = self.circuit.assembly();
        assembly.port(name).ok_or_else(|| {
            let part = name.split('.').next().unwrap_or_default();
            let of_part: Vec<String> = assembly
                .ports()
                .filter(|p| assembly.parts[usize::from(p.part)].id == part)
                .map(|p| assembly.port_name(p))
                .collect();
            if of_part.is_empty() {
                let parts = self.setup.car.assembly.parts.iter();
                unknown(Sort::PartWithPorts, part, parts.map(|p| p.id.as_str()))
            } else {
                unknown(Sort::Port, name, of_part.iter().map(String::as_str))
            }
        })
    }

    /// The car's joint called `name`.
    pub(super) fn find_joint(&self, name: &str) -> Result<usize, Refusal> {
        let joints = &self.setup.car.assembly.joints;
        joints
            .iter()
            .position(|j| j.id == name)
            .ok_or_else(|| unknown(Sort::Joint, name, joints.iter().map(|j| j.id.as_str())))
    }

    /// The instrument called `name`, index into the kit.
    pub(super) fn find_card(&self, name: &str) -> Result<usize, Refusal> {
        let kit = &self.setup.kit;
        kit.iter()
            .position(|c| c.id == name)
            .ok_or_else(|| unknown(Sort::Instrument, name, kit.iter().map(|c| c.id.as_str())))
    }

    /// The repair unit called `name`.
    pub(super) fn find_unit(&self, name: &str) -> Result<usize, Refusal> {
        let units = &self.setup.car.units;
        units
            .iter()
            .position(|u| u.id == name)
            .ok_or_else(|| unknown(Sort::Unit, name, units.iter().map(|u| u.id.as_str())))
    }

    /// The cover called `name`.
    pub(super) fn find_cover(&self, name: &str) -> Result<usize, Refusal> {
        let covers = &self.setup.car.covers;
        covers
            .iter()
            .position(|c| c.id == name)
            .ok_or_else(|| unknown(Sort::Cover, name, covers.iter().map(|c| c.id.as_str())))
    }

    /// The spare called `name`.
    pub(super) fn find_spare(&self, name: &str) -> Result<usize, Refusal> {
        let spares = &self.setup.spares;
        spares
            .iter()
            .position(|s| s.id == name)
            .ok_or_else(|| unknown(Sort::Spare, name, spares.iter().map(|s| s.id.as_str())))
    }

    /// The record line called `name`.
    pub(super) fn find_record(&self, name: &str) -> Result<usize, Refusal> {
        let record = &self.setup.car.record;
        record
            .iter()
            .position(|r| r.id == name)
            .ok_or_else(|| unknown(Sort::RecordLine, name, record.iter().map(|r| r.id.as_str())))
    }

    /// The first instrument of the kit that is of a kind, or a refusal that names what is missing.
    pub(super) fn need(&self, tool: Tool, is: impl Fn(&InstrumentKind) -> bool) -> Result<usize, Refusal> {
        self.setup.kit.iter().position(|c| is(&c.kind)).ok_or_else(|| cannot(Reason::NoTool { tool }))
    }

    /// Index of an instrument's own part in the circuit.
    pub(super) fn card_part(&self, card: usize) -> Option<u16> {
        self.card_parts[card]
    }

    /// Places from which a part can be reached.
    pub(super) fn places_of_part(&self, part: u16) -> Vec<Place> {
        if usize::from(part) < self.n_car_parts() {
            return self.setup.car.places_of_part(part);
        }
        // An instrument lies where its first end is, else in the hand.
        let card = self.card_parts.iter().position(|p| *p == Some(part));
        let first = card.and_then(|c| self.state.fits[c].first());
        match first.and_then(|(_, at)| self.circuit.assembly().port(at)) {
            Some(port) if usize::from(port.part) < self.n_car_parts() => self.places_of_port(port),
            _ => vec![(self.state.station, None)],
        }
    }

    /// Places from which a joint of the car can be reached.
    pub(super) fn places_of_joint(&self, joint: usize) -> Vec<Place> {
        self.setup.car.places_of_joint(joint)
    }

    /// Places from which a port can be reached.
    pub(super) fn places_of_port(&self, port: PortRef) -> Vec<Place> {
        if usize::from(port.part) < self.n_car_parts() {
            self.setup.car.places_of_port(port)
        } else {
            self.places_of_part(port.part)
        }
    }

    /// Where to stand for something that can be reached from `places`: here if possible.
    ///
    /// # Errors
    /// Refused when a cover bars every place, or when a foot on the pedal or a hand on a button binds
    /// the trainee somewhere else; nothing has changed then.
    pub(super) fn reach(&self, places: &[Place]) -> Result<Station, Refusal> {
        let free: Vec<Station> = places
            .iter()
            .filter(|(_, cover)| cover.is_none_or(|c| self.state.covers_off[c]))
            .map(|(station, _)| *station)
            .collect();
        if free.is_empty() {
            let cover = places.iter().find_map(|(_, cover)| *cover);
            let cover = cover.map(|c| &self.setup.car.covers[c]);
            return Err(cannot(cover.map_or(Reason::Unreachable, |c| Reason::CoverInTheWay {
                cover: c.id.as_str().into(),
                id: c.id.as_str().into(),
            })));
        }
        if free.contains(&self.state.station) {
            return Ok(self.state.station);
        }
        self.may_leave(free[0])?;
        Ok(free[0])
    }

    /// Refused when something binds the trainee to where he stands.
    pub(super) fn may_leave(&self, to: Station) -> Result<(), Refusal> {
        if to == self.state.station {
            return Ok(());
        }
        if matches!(self.state.pedal, PedalHold::Foot { .. }) {
            return Err(cannot(Reason::FootBinds { to }));
        }
        if let Some(card) = self.pressed_card() {
            return Err(cannot(Reason::HandBindsThere { tool: self.tool(card), to }));
        }
        Ok(())
    }

    /// The push-button lead or hand pump whose button or lever is held, if any.
    pub(super) fn pressed_card(&self) -> Option<usize> {
        (0..self.setup.kit.len()).find(|c| {
            self.card_parts[*c].is_some_and(|p| self.circuit.inputs().hands[usize::from(p)].pressed)
        })
    }

    /// Refused when a hand is on a button: for work that needs both hands.
    pub(super) fn hands_free(&self) -> Result<(), Refusal> {
        match self.pressed_card() {
            Some(card) => Err(cannot(Reason::HandBinds { tool: self.tool(card) })),
            None => Ok(()),
        }
    }

    /// Instruments fitted at any port of the parts given, or at the port given.
    pub(super) fn fitted_at(&self, is: impl Fn(PortRef) -> bool) -> Option<usize> {
        (0..self.setup.kit.len()).find(|card| {
            self.card_parts[*card].is_some()
                && self.state.fits[*card]
                    .iter()
                    .any(|(_, at)| self.circuit.assembly().port(at).is_some_and(&is))
        })
    }
}
