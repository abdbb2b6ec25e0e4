//! Offers of the car: parts, ports, joints, covers, spares, key, starter, pedal.

use sim_core::action::{Action, PedalHold, Sense};
use sim_core::assembly::{PortRef, Stop};
use sim_core::car::RepairUnit;
use sim_core::parts::elements::ByHand;
use sim_core::parts::engine::EngineState;
use sim_core::parts::{Domain, PartKind};

use super::{Carry, Form, Group, Offer, Then, Thing, about, is_open, joints_at, offer};
use crate::shop::Shop;

pub(super) fn part_offers(shop: &Shop, part: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return };
    let Some(p) = car.assembly.parts.get(usize::from(part)) else { return };
    match p.kind.seen().by_hand {
        Some(ByHand::Key) => out.push(offer("offer-turn-key", Then::Turn(Thing::Key))),
        Some(ByHand::Starter) => out.push(offer("offer-turn-starter", Then::Turn(Thing::Starter))),
        Some(ByHand::Pedal) => out.push(offer("offer-turn-pedal", Then::Turn(Thing::Pedal))),
        None => {}
    }
    for port in car.assembly.ports().filter(|r| r.part == part) {
        let turn = about("offer-turn-port", Thing::Port(port), Then::Turn(Thing::Port(port)));
        out.push(turn.group(Group::Ends));
    }
    if p.kind.ports().iter().any(|d| d.domain == Domain::Pneumatic) {
        let hiss = Action::Sense(Sense::Hiss { part: p.id.clone() });
        out.push(offer("offer-hiss", Then::Do(hiss)).group(Group::Sense));
    }
    let touch = Action::Sense(Sense::Touch { part: p.id.clone() });
    out.push(offer("offer-touch", Then::Do(touch)).group(Group::Sense));
    point_offers(shop, part, out);
    let Some(unit) = car.units.iter().find(|u| u.parts.contains(&part)) else { return };
    unit_offers(shop, unit, out);
    let swaps: Vec<Offer> = session
        .workshop()
        .setup()
        .spares
        .iter()
        .enumerate()
        .filter(|(_, spare)| car.units.get(usize::from(spare.unit)).is_some_and(|u| u.id == unit.id))
        .map(|(i, spare)| {
            let swap = Action::Swap { unit: unit.id.clone(), spare: spare.id.clone() };
            about("offer-swap", Thing::Spare(i as u16), Then::Do(swap)).group(Group::Repair)
        })
        .collect();
    if !swaps.is_empty() {
        out.push(offer("offer-swaps", Then::More(swaps)).group(Group::Repair));
    }
}

/// Instruments that are pointed at a part or laid on it.
fn point_offers(shop: &Shop, part: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(view), Some(session)) = (shop.car(), shop.view(), shop.session()) else { return };
    let Some(p) = car.assembly.parts.get(usize::from(part)) else { return };
    for (card, c) in session.workshop().setup().kit.iter().enumerate() {
        let nature = c.kind.nature();
        let Some(end) = nature.ends.first().filter(|_| nature.held.part(&p.kind)) else { continue };
        let at = view.instruments.get(card).map(|i| i.at.as_slice()).unwrap_or_default();
        let it = Thing::Instrument(card as u16);
        if at.iter().any(|(_, at)| *at == p.id) {
            let off = Action::Unfit { instrument: c.id.clone() };
            out.push(about("offer-unfit", it, Then::Do(off)).group(Group::Sense));
        } else if at.is_empty() {
            let ends = vec![((*end).to_owned(), p.id.clone())];
            let fit = Action::Fit { instrument: c.id.clone(), ends };
            out.push(about("offer-point", it, Then::Do(fit)).group(Group::Sense));
        }
    }
}

fn unit_offers(shop: &Shop, unit: &RepairUnit, out: &mut Vec<Offer>) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    if unit.plug_in {
        let pulled = view.pulled.contains(&unit.id);
        let id = unit.id.clone();
        out.push(
            if pulled {
                offer("offer-push", Then::Do(Action::PushUnit { unit: id }))
            } else {
                offer("offer-pull", Then::Do(Action::PullUnit { unit: id }))
            }
            .group(Group::Work),
        );
    }
    // Whoever takes a battery off decides which pole comes first; nothing does that for him.
    let battery = unit.parts.iter().any(|p| {
        let part = car.assembly.parts.get(usize::from(*p));
        part.is_some_and(|p| matches!(p.kind, PartKind::Battery(_)))
    });
    let joints = car
        .assembly
        .joints
        .iter()
        .filter(|j| unit.parts.contains(&j.a.part) != unit.parts.contains(&j.b.part));
    let (open, made): (Vec<&str>, Vec<&str>) =
        joints.map(|j| j.id.as_str()).partition(|id| view.joints_open.iter().any(|o| o == id));
    if !battery && 2 <= made.len() {
        let all = made.iter().map(|id| Action::OpenJoint { joint: (*id).to_owned() }).collect();
        out.push(offer("offer-to-bench", Then::DoAll(all)).group(Group::Work));
    }
    if !battery && 2 <= open.len() {
        let all = open.iter().map(|id| Action::MakeJoint { joint: (*id).to_owned() }).collect();
        out.push(offer("offer-from-bench", Then::DoAll(all)).group(Group::Work));
    }
    if !unit.cleans.is_empty() {
        let clean = Action::Clean { unit: unit.id.clone() };
        out.push(offer("offer-clean", Then::Do(clean)).group(Group::Repair));
    }
    if unit.reforms {
        let reform = Action::Reform { unit: unit.id.clone() };
        out.push(offer("offer-reform", Then::Do(reform)).group(Group::Repair));
    }
}

pub(super) fn port_offers(shop: &Shop, port: PortRef, out: &mut Vec<Offer>) {
    let Some(car) = shop.car() else { return };
    if car.assembly.parts.len() <= usize::from(port.part) {
        return;
    }
    let name = car.assembly.port_name(port);
    let domain = car.assembly.domain(port);
    fit_offers(shop, &name, domain, out);
    for joint in joints_at(shop, port) {
        let id = car.assembly.joints[usize::from(joint)].id.clone();
        let line = if is_open(shop, joint) {
            about("offer-make", Thing::Joint(joint), Then::Do(Action::MakeJoint { joint: id }))
        } else {
            about("offer-open", Thing::Joint(joint), Then::Do(Action::OpenJoint { joint: id }))
        };
        out.push(line.group(Group::Work));
    }
    if domain == Domain::Pneumatic {
        stop_offers(shop, &name, out);
    }
    let part = Thing::Part(port.part);
    out.push(about("offer-turn-part", part, Then::Turn(part)).group(Group::Ends));
}

/// What sits at a port comes off first; then what can be connected there.
fn fit_offers(shop: &Shop, name: &str, domain: Domain, out: &mut Vec<Offer>) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let workshop = session.workshop();
    for (card, i) in view.instruments.iter().enumerate() {
        if i.at.iter().any(|(_, at)| at == name) {
            let it = Thing::Instrument(card as u16);
            out.push(about("offer-turn-fitted", it, Then::Turn(it)));
            let off = Action::Unfit { instrument: i.id.clone() };
            out.push(about("offer-unfit", it, Then::Do(off)));
        }
    }
    for (card, c) in workshop.setup().kit.iter().enumerate() {
        let ends = workshop.ends_of(card);
        if view.instruments.get(card).is_some_and(|i| !i.at.is_empty()) {
            continue;
        }
        if c.kind.nature().held.port() != Some(domain) {
            continue;
        }
        let it = Thing::Instrument(card as u16);
        match ends.as_slice() {
            [end] => {
                let ends = vec![((*end).to_owned(), name.to_owned())];
                let fit = Action::Fit { instrument: c.id.clone(), ends };
                out.push(about("offer-fit", it, Then::Do(fit)));
            }
            [first, rest @ ..] => {
                let carry = Carry {
                    card: card as u16,
                    placed: vec![((*first).to_owned(), name.to_owned())],
                    left: rest.iter().map(|e| (*e).to_owned()).collect(),
                };
                let end = Some((*first).to_owned());
                let then = Then::Carry(carry);
                out.push(Offer { key: "offer-fit-end", it: Some(it), end, group: Group::First, then });
            }
            [] => {}
        }
    }
}

fn stop_offers(shop: &Shop, port: &str, out: &mut Vec<Offer>) {
    let Some(view) = shop.view() else { return };
    let stop = |stop| Then::Do(Action::SetStop { port: port.to_owned(), stop });
    match view.stops.iter().find(|(at, _)| at == port) {
        Some((_, Stop::Plug)) => out.push(offer("offer-unplug", stop(None)).group(Group::Work)),
        Some((_, Stop::Clamp)) => out.push(offer("offer-unclamp", stop(None)).group(Group::Work)),
        None => {
            out.push(offer("offer-plug", stop(Some(Stop::Plug))).group(Group::Work));
            out.push(offer("offer-clamp", stop(Some(Stop::Clamp))).group(Group::Work));
        }
    }
}

pub(super) fn joint_offers(shop: &Shop, joint: u16, out: &mut Vec<Offer>) {
    let Some(car) = shop.car() else { return };
    let Some(j) = car.assembly.joints.get(usize::from(joint)) else { return };
    out.push(if is_open(shop, joint) {
        offer("offer-make-this", Then::Do(Action::MakeJoint { joint: j.id.clone() }))
    } else {
        offer("offer-open-this", Then::Do(Action::OpenJoint { joint: j.id.clone() }))
    });
    for port in [j.a, j.b] {
        let turn = about("offer-turn-port", Thing::Port(port), Then::Turn(Thing::Port(port)));
        out.push(turn.group(Group::Ends));
    }
}

pub(super) fn cover_offers(shop: &Shop, cover: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    let Some(c) = car.covers.get(usize::from(cover)) else { return };
    let off = view.covers_off.contains(&c.id);
    let key = if off { "offer-cover-on" } else { "offer-cover-off" };
    out.push(offer(key, Then::Do(Action::Cover { cover: c.id.clone(), off: !off })));
}

pub(super) fn spare_offers(shop: &Shop, spare: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return };
    let Some(s) = session.workshop().setup().spares.get(usize::from(spare)) else { return };
    let Some(unit) = car.units.get(usize::from(s.unit)) else { return };
    let swap = Action::Swap { unit: unit.id.clone(), spare: s.id.clone() };
    out.push(offer("offer-swap-this", Then::Do(swap)));
    if let Some(part) = unit.parts.first() {
        let turn = about("offer-turn-part", Thing::Part(*part), Then::Turn(Thing::Part(*part)));
        out.push(turn.group(Group::Ends));
    }
}

pub(super) fn key_offers(on: bool, out: &mut Vec<Offer>) {
    let key = if on { "offer-key-off" } else { "offer-key-on" };
    out.push(offer(key, Then::Do(Action::Key(!on))));
    out.push(offer("offer-turn-starter", Then::Turn(Thing::Starter)).group(Group::Ends));
}

pub(super) fn starter_offers(engine: EngineState, out: &mut Vec<Offer>) {
    let stopped = engine == EngineState::Stopped;
    if !stopped {
        out.push(offer("offer-engine-stop", Then::Do(Action::Engine(EngineState::Stopped))));
    }
    let states: &[(&str, EngineState)] = if stopped {
        &[("offer-engine-start", EngineState::WarmIdle), ("offer-engine-start-cold", EngineState::ColdIdle)]
    } else {
        &[
            ("offer-engine-idle", EngineState::WarmIdle),
            ("offer-engine-idle-cold", EngineState::ColdIdle),
            ("offer-engine-cruise", EngineState::Cruise),
            ("offer-engine-overrun", EngineState::Overrun),
            ("offer-engine-wide-open", EngineState::WideOpen),
        ]
    };
    for (key, state) in states.iter().filter(|(_, s)| *s != engine) {
        out.push(offer(key, Then::Do(Action::Engine(*state))).group(if stopped {
            Group::First
        } else {
            Group::Work
        }));
    }
    out.push(offer("offer-turn-key", Then::Turn(Thing::Key)).group(Group::Ends));
    out.push(offer("offer-turn-extraction", Then::Turn(Thing::Extraction)).group(Group::Ends));
}

pub(super) fn pedal_offers(pedal: PedalHold, out: &mut Vec<Offer>) {
    let held = pedal != PedalHold::Released;
    if held {
        out.push(offer("offer-pedal-release", Then::Do(Action::Pedal(PedalHold::Released))));
        let feel = [("offer-pedal-travel", Sense::PedalTravel), ("offer-pedal-moved", Sense::PedalMoved)];
        for (key, sense) in feel {
            out.push(offer(key, Then::Do(Action::Sense(sense))).group(Group::Sense));
        }
    }
    let hold = if held { "offer-pedal-hold-other" } else { "offer-pedal-hold" };
    out.push(offer(hold, Then::Form(Form::HoldByFoot)).group(Group::Work));
    out.push(offer("offer-prop", Then::Form(Form::HoldByProp)).group(Group::Work));
    out.push(offer("offer-pedal-pump", Then::Form(Form::PumpPedal)).group(Group::Work));
    let count = Then::Do(Action::Sense(Sense::Applications));
    out.push(offer("offer-applications", count).group(Group::Sense));
}

pub(super) fn car_offers(out: &mut Vec<Offer>) {
    for (key, sense) in [
        ("offer-listen-hum", Sense::Hum),
        ("offer-base-brakes", Sense::BaseBrakes),
        ("offer-yard-drive", Sense::YardDrive),
    ] {
        out.push(offer(key, Then::Do(Action::Sense(sense))).group(Group::Sense));
    }
    out.push(offer("offer-turn-extraction", Then::Turn(Thing::Extraction)).group(Group::Ends));
    out.push(offer("offer-turn-clock", Then::Turn(Thing::Clock)).group(Group::Ends));
    out.push(offer("offer-hand-back", Then::Form(Form::HandBack)).group(Group::Away));
}
