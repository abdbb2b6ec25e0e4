//! Offers of instruments and tools, and where what is in the hand can go.

use sim_core::action::{Action, Cue, Cycle, Sense};
use sim_core::assembly::Stop;
use sim_core::instrument::{Held, InstrumentCard, Measured, Worked};
use sim_core::parts::instruments::MeterMode;
use sim_core::workshop::InstrumentView;

use super::{Carry, Form, Group, Offer, Then, Thing, about, offer};
use crate::shop::Shop;

/// The one thing that a tool without ends of its own is taken in the hand for.
fn bare_end(held: Held) -> Option<&'static str> {
    match held {
        Held::InOpening => Some("plug"),
        Held::OverHose => Some("clamp"),
        Held::AtEar => Some("tube"),
        Held::OnPedal => Some("prop"),
        Held::Nowhere | Held::OnLine | Held::OnWires | Held::AroundWire | Held::AtPart | Held::OnHose => None,
    }
}

pub(super) fn instrument_offers(shop: &Shop, card: u16, out: &mut Vec<Offer>) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let workshop = session.workshop();
    let Some(c) = workshop.setup().kit.get(usize::from(card)) else { return };
    let Some(seen) = view.instruments.get(usize::from(card)) else { return };
    let mut ends: Vec<String> = workshop.ends_of(usize::from(card)).iter().map(|e| (*e).to_owned()).collect();
    let nature = c.kind.nature();
    ends.extend(bare_end(nature.held).map(str::to_owned));
    let fitted = !seen.at.is_empty();
    let id = || c.id.clone();
    if fitted || ends.is_empty() {
        match nature.measured {
            Measured::Time { .. } => {
                for (key, cycle) in [("offer-time-run", Cycle::PumpRun), ("offer-time-rest", Cycle::PumpRest)]
                {
                    out.push(offer(key, Then::Form(Form::Time(cycle))));
                }
            }
            Measured::Nothing => {}
            Measured::Pointer
            | Measured::Meter
            | Measured::Current
            | Measured::Radiation { .. }
            | Measured::Day
            | Measured::Room
            | Measured::Bend
            | Measured::PedalTravel
            | Measured::Glow => out.push(offer("offer-read", Then::Do(Action::Read { instrument: id() }))),
        }
    }
    if !ends.is_empty() && !fitted {
        out.push(offer("offer-take", Then::Carry(Carry { card, placed: Vec::new(), left: ends })));
    }
    match nature.worked {
        Worked::Set => meter_offers(seen, out),
        Worked::Pressed if fitted => {
            let (key, down) =
                if seen.pressed { ("offer-button-up", false) } else { ("offer-button-down", true) };
            out.push(offer(key, Then::Do(Action::Press { instrument: id(), down })));
        }
        Worked::Stroked if fitted => {
            out.push(offer("offer-stroke", Then::Form(Form::Stroke(card))));
            let (key, down) =
                if seen.pressed { ("offer-lever-up", false) } else { ("offer-lever-down", true) };
            out.push(offer(key, Then::Do(Action::Press { instrument: id(), down })));
        }
        Worked::Pressed | Worked::Stroked | Worked::Not => {}
    }
    if nature.measured == Measured::Glow && fitted {
        for (key, cue) in [("offer-wait-lamp-out", Cue::LampOut), ("offer-wait-lamp-on", Cue::LampOn)] {
            out.push(offer(key, Then::Form(Form::WaitUntil(cue))).group(Group::Sense));
        }
    }
    for (_, at) in &seen.at {
        if let Some(thing) = place(shop, at) {
            out.push(about("offer-turn-port", thing, Then::Turn(thing)).group(Group::Ends));
        }
    }
    if fitted {
        out.push(offer("offer-unfit-this", Then::Do(Action::Unfit { instrument: id() })).group(Group::Away));
    }
}

fn meter_offers(seen: &InstrumentView, out: &mut Vec<Offer>) {
    for (key, mode) in [
        ("offer-meter-volt", MeterMode::Volt),
        ("offer-meter-ohm", MeterMode::Ohm),
        ("offer-meter-ampere", MeterMode::Ampere),
        ("offer-meter-off", MeterMode::Off),
    ] {
        if seen.mode != Some(mode) {
            let set = Action::SetMeter { instrument: seen.id.clone(), mode };
            out.push(offer(key, Then::Do(set)).group(Group::Work));
        }
    }
}

/// The thing that an end of an instrument is at: a port or part of the car, or another instrument.
#[must_use]
pub fn place(shop: &Shop, at: &str) -> Option<Thing> {
    let (car, session) = (shop.car()?, shop.session()?);
    if let Some(port) = car.assembly.port(at) {
        return Some(Thing::Port(port));
    }
    if let Some(part) = car.assembly.part_index(at) {
        return Some(Thing::Part(part));
    }
    let tool = at.split('.').next()?;
    let kit = &session.workshop().setup().kit;
    kit.iter().position(|c| c.id == tool).map(|i| Thing::Instrument(i as u16))
}

/// Whether what is in the hand can go to `thing`: to mark it in room and diagram.
#[must_use]
pub fn can_take(shop: &Shop, carry: &Carry, thing: Thing) -> bool {
    !places_for(shop, carry, thing).is_empty()
}

/// Where the end in the hand can go at `thing`.
pub(super) fn places_for(shop: &Shop, carry: &Carry, thing: Thing) -> Vec<Offer> {
    let Some(session) = shop.session() else { return Vec::new() };
    let Some(c) = session.workshop().setup().kit.get(usize::from(carry.card)) else { return Vec::new() };
    let Some(end) = carry.left.first() else { return Vec::new() };
    let held = c.kind.nature().held;
    spots(shop, held, thing)
        .into_iter()
        .filter(|(_, name)| carry.placed.iter().all(|(_, at)| at != name))
        .map(|(spot, name)| placing(carry, c, held, end, spot, name))
        .collect()
}

/// The offer to put an end to `spot`, called `name`.
fn placing(carry: &Carry, card: &InstrumentCard, held: Held, end: &str, spot: Thing, name: String) -> Offer {
    let then = match held {
        Held::OnPedal => return offer("offer-prop", Then::Form(Form::HoldByProp)),
        Held::InOpening => Then::Do(Action::SetStop { port: name, stop: Some(Stop::Plug) }),
        Held::OverHose => Then::Do(Action::SetStop { port: name, stop: Some(Stop::Clamp) }),
        Held::AtEar => Then::Do(Action::Sense(Sense::Hiss { part: name })),
        Held::Nowhere | Held::OnLine | Held::OnWires | Held::AroundWire | Held::AtPart | Held::OnHose => {
            let mut placed = carry.placed.clone();
            placed.push((end.to_owned(), name));
            let left = carry.left[1..].to_vec();
            if left.is_empty() {
                Then::Do(Action::Fit { instrument: card.id.clone(), ends: placed })
            } else {
                Then::Carry(Carry { card: carry.card, placed, left })
            }
        }
    };
    Offer { key: "offer-place-end", it: Some(spot), end: Some(end.to_owned()), group: Group::First, then }
}

/// Ports or parts at `thing` to which an end that is held so goes, with their short names. A menu offers them though a
/// plug be in one: the workshop says why it refuses.
fn spots(shop: &Shop, held: Held, thing: Thing) -> Vec<(Thing, String)> {
    let Some(car) = shop.car() else { return Vec::new() };
    let assembly = &car.assembly;
    if held.to_parts() {
        let part = match thing {
            Thing::Pedal if held == Held::OnPedal => return vec![(thing, String::new())],
            Thing::Part(part) => part,
            Thing::Port(port) if held != Held::OnPedal => port.part,
            _ => return Vec::new(),
        };
        let part_there = assembly.parts.get(usize::from(part)).filter(|p| held.part(&p.kind));
        return part_there.map(|p| (Thing::Part(part), p.id.clone())).into_iter().collect();
    }
    let ports = match thing {
        Thing::Part(p) => assembly.ports().filter(|r| r.part == p).collect(),
        Thing::Port(r) if usize::from(r.part) < assembly.parts.len() => vec![r],
        Thing::Joint(j) => assembly.joints.get(usize::from(j)).map_or_else(Vec::new, |j| vec![j.a, j.b]),
        _ => Vec::new(),
    };
    ports
        .into_iter()
        .filter(|r| held.port() == Some(assembly.domain(*r)))
        .map(|r| (Thing::Port(r), assembly.port_name(r)))
        .collect()
}
