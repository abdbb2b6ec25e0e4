//! Offers of instruments and tools, and where what is in the hand can go.

use sim_core::action::{Action, Cue, Cycle, Sense};
use sim_core::assembly::Stop;
use sim_core::instrument::InstrumentKind;
use sim_core::parts::instruments::MeterMode;
use sim_core::parts::{Domain, PartKind};
use sim_core::workshop::InstrumentView;

use super::{Carry, Form, Group, Offer, Then, Thing, about, offer};
use crate::shop::Shop;

/// The one thing that a tool without ends of its own is taken in the hand for.
fn bare_end(kind: &InstrumentKind) -> Option<&'static str> {
    match kind {
        InstrumentKind::Plugs => Some("plug"),
        InstrumentKind::Clamps => Some("clamp"),
        InstrumentKind::ListeningTube => Some("tube"),
        InstrumentKind::PedalProp => Some("prop"),
        _ => None,
    }
}

pub(super) fn instrument_offers(shop: &Shop, card: u16, out: &mut Vec<Offer>) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let workshop = session.workshop();
    let Some(c) = workshop.setup().kit.get(usize::from(card)) else { return };
    let Some(seen) = view.instruments.get(usize::from(card)) else { return };
    let mut ends: Vec<String> = workshop.ends_of(usize::from(card)).iter().map(|e| (*e).to_owned()).collect();
    ends.extend(bare_end(&c.kind).map(str::to_owned));
    let fitted = !seen.at.is_empty();
    let id = || c.id.clone();
    if fitted || ends.is_empty() {
        match c.kind {
            InstrumentKind::Stopwatch { .. } => {
                for (key, cycle) in [("offer-time-run", Cycle::PumpRun), ("offer-time-rest", Cycle::PumpRest)]
                {
                    out.push(offer(key, Then::Form(Form::Time(cycle))));
                }
            }
            InstrumentKind::PushLead => {}
            _ => out.push(offer("offer-read", Then::Do(Action::Read { instrument: id() }))),
        }
    }
    if !ends.is_empty() && !fitted {
        out.push(offer("offer-take", Then::Carry(Carry { card, placed: Vec::new(), left: ends })));
    }
    match c.kind {
        InstrumentKind::Multimeter { .. } => meter_offers(seen, out),
        InstrumentKind::PushLead if fitted => {
            let (key, down) =
                if seen.pressed { ("offer-button-up", false) } else { ("offer-button-down", true) };
            out.push(offer(key, Then::Do(Action::Press { instrument: id(), down })));
        }
        InstrumentKind::HandPump { .. } if fitted => {
            out.push(offer("offer-stroke", Then::Form(Form::Stroke(card))));
            let (key, down) =
                if seen.pressed { ("offer-lever-up", false) } else { ("offer-lever-down", true) };
            out.push(offer(key, Then::Do(Action::Press { instrument: id(), down })));
        }
        InstrumentKind::Lamp if fitted => {
            for (key, cue) in [("offer-wait-lamp-out", Cue::LampOut), ("offer-wait-lamp-on", Cue::LampOn)] {
                out.push(offer(key, Then::Form(Form::WaitUntil(cue))).group(Group::Sense));
            }
        }
        _ => {}
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
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let Some(c) = session.workshop().setup().kit.get(usize::from(carry.card)) else { return Vec::new() };
    let Some(end) = carry.left.first() else { return Vec::new() };
    if matches!(c.kind, InstrumentKind::PedalProp) {
        let booster = |p: u16| {
            let part = car.assembly.parts.get(usize::from(p));
            part.is_some_and(|p| matches!(p.kind, PartKind::Booster(_)))
        };
        return match thing {
            Thing::Pedal => vec![offer("offer-prop", Then::Form(Form::HoldByProp))],
            Thing::Part(p) if booster(p) => vec![offer("offer-prop", Then::Form(Form::HoldByProp))],
            _ => Vec::new(),
        };
    }
    let spots = spots(shop, &c.kind, thing);
    let free = spots.into_iter().filter(|(_, name)| carry.placed.iter().all(|(_, at)| at != name));
    free.map(|(spot, name)| {
        let then = match c.kind {
            InstrumentKind::Plugs => Then::Do(Action::SetStop { port: name, stop: Some(Stop::Plug) }),
            InstrumentKind::Clamps => Then::Do(Action::SetStop { port: name, stop: Some(Stop::Clamp) }),
            InstrumentKind::ListeningTube => Then::Do(Action::Sense(Sense::Hiss { part: name })),
            _ => {
                let mut placed = carry.placed.clone();
                placed.push((end.clone(), name));
                let left = carry.left[1..].to_vec();
                if left.is_empty() {
                    Then::Do(Action::Fit { instrument: c.id.clone(), ends: placed })
                } else {
                    Then::Carry(Carry { card: carry.card, placed, left })
                }
            }
        };
        Offer { key: "offer-place-end", it: Some(spot), end: Some(end.clone()), group: Group::First, then }
    })
    .collect()
}

/// Ports or parts at `thing` that an end of this kind of instrument fits, with their short names.
fn spots(shop: &Shop, kind: &InstrumentKind, thing: Thing) -> Vec<(Thing, String)> {
    let Some(car) = shop.car() else { return Vec::new() };
    let assembly = &car.assembly;
    let on_part = matches!(
        kind,
        InstrumentKind::IrThermometer { .. }
            | InstrumentKind::AngleFinder { .. }
            | InstrumentKind::ListeningTube
    );
    if on_part {
        let part = match thing {
            Thing::Part(p) => p,
            Thing::Port(r) => r.part,
            _ => return Vec::new(),
        };
        let Some(p) = assembly.parts.get(usize::from(part)) else { return Vec::new() };
        let fits = match kind {
            InstrumentKind::AngleFinder { .. } => matches!(p.kind, PartKind::Hose(_)),
            InstrumentKind::ListeningTube => p.kind.ports().iter().any(|d| d.domain == Domain::Pneumatic),
            _ => true,
        };
        return if fits { vec![(Thing::Part(part), p.id.clone())] } else { Vec::new() };
    }
    let ports = match thing {
        Thing::Part(p) => assembly.ports().filter(|r| r.part == p).collect(),
        Thing::Port(r) if usize::from(r.part) < assembly.parts.len() => vec![r],
        Thing::Joint(j) => assembly.joints.get(usize::from(j)).map_or_else(Vec::new, |j| vec![j.a, j.b]),
        _ => Vec::new(),
    };
    let air = matches!(
        kind,
        InstrumentKind::Gauge { .. }
            | InstrumentKind::HandPump { .. }
            | InstrumentKind::Plugs
            | InstrumentKind::Clamps
    );
    ports
        .into_iter()
        .filter(|r| air == (assembly.domain(*r) == Domain::Pneumatic))
        .map(|r| (Thing::Port(r), assembly.port_name(r)))
        .collect()
}
