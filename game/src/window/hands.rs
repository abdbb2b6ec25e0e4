//! What hands can do with a thing: the offers of its menu.
//!
//! One place for the room, the line diagram and the keyboard: whatever can be picked is a [`Thing`], and
//! [`offers`] says what can be asked of it now. Nothing is left out because it would be refused: the
//! workshop says why, and that is how one learns it. Left out is only what makes no sense (to take off a
//! cover that is off).

use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::{PortRef, Stop};
use sim_core::instrument::InstrumentKind;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;
use sim_core::parts::{Domain, PartKind};

use super::shop::Shop;

/// Something that can be picked. Numbers are indices into the car, the kit, the spares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    /// A part of the car.
    Part(u16),
    /// A port of a part of the car.
    Port(PortRef),
    /// A joint of the car.
    Joint(u16),
    /// A cover of the car.
    Cover(u16),
    /// An instrument of the kit.
    Instrument(u16),
    /// A spare on the shelf.
    Spare(u16),
    /// The ignition key.
    Key,
    /// The accelerator and starter: what makes the engine run.
    Starter,
    /// The brake pedal.
    Pedal,
    /// The wheel chocks.
    Chocks,
    /// The job card on the desk.
    JobCard,
    /// The car's data sheet on the desk.
    DataSheet,
    /// The whole car: base brakes, yard drive, overnight.
    Car,
}

/// An instrument in the hand, some of its ends placed already.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carry {
    /// Index into the kit.
    pub card: u16,
    /// Ends that have a place: end, port or part.
    pub placed: Vec<(String, String)>,
    /// Ends that have none yet; the first is the one in the hand.
    pub left: Vec<String>,
}

/// A number that is asked for before the deed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Hold the pedal by foot: force.
    HoldByFoot,
    /// Hold the pedal by prop: force.
    HoldByProp,
    /// Pump the pedal: times, force.
    PumpPedal,
    /// Stroke a hand pump (index into the kit): times.
    Stroke(u16),
    /// Wait: minutes and seconds.
    Wait,
}

/// What happens when an offer is taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Then {
    /// Do it.
    Do(Action),
    /// Take an instrument in the hand.
    Carry(Carry),
    /// Ask for numbers first.
    Form(Form),
    /// Show what can be done with this.
    Turn(Thing),
    /// Put the instrument in the hand back.
    PutBack,
}

/// A line of a menu.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// Key of its words in the locale files, `offer-…`.
    pub key: &'static str,
    /// What the words are about, named by [`super::words::Words::name`] as `$it`.
    pub it: Option<Thing>,
    /// A second name, as `$end`: an instrument's end.
    pub end: Option<String>,
    /// What then.
    pub then: Then,
}

fn offer(key: &'static str, then: Then) -> Offer {
    Offer { key, it: None, end: None, then }
}

fn about(key: &'static str, it: Thing, then: Then) -> Offer {
    Offer { key, it: Some(it), end: None, then }
}

/// What can be done with `thing` now, likeliest first. Empty when no job is open or the car has been
/// handed back.
#[must_use]
pub fn offers(shop: &Shop, carrying: Option<&Carry>, thing: Thing) -> Vec<Offer> {
    let (Some(_), Some(view)) = (shop.car(), shop.view()) else { return Vec::new() };
    if view.handed_back {
        return Vec::new();
    }
    let mut out = Vec::new();
    if let Some(carry) = carrying {
        out.extend(places_for(shop, carry, thing));
        out.push(about("offer-put-back", Thing::Instrument(carry.card), Then::PutBack));
        return out;
    }
    match thing {
        Thing::Part(part) => part_offers(shop, part, &mut out),
        Thing::Port(port) => port_offers(shop, port, &mut out),
        Thing::Joint(joint) => joint_offers(shop, joint, &mut out),
        Thing::Cover(cover) => cover_offers(shop, cover, &mut out),
        Thing::Instrument(card) => instrument_offers(shop, card, &mut out),
        Thing::Spare(spare) => spare_offers(shop, spare, &mut out),
        Thing::Key => out.push(if view.key_on {
            offer("offer-key-off", Then::Do(Action::Key(false)))
        } else {
            offer("offer-key-on", Then::Do(Action::Key(true)))
        }),
        Thing::Starter => starter_offers(view.engine, &mut out),
        Thing::Pedal => pedal_offers(view.pedal, &mut out),
        Thing::Chocks => out.push(if view.chocked {
            offer("offer-chocks-away", Then::Do(Action::Chocks(false)))
        } else {
            offer("offer-chocks-set", Then::Do(Action::Chocks(true)))
        }),
        Thing::JobCard => out.push(offer("offer-read-card", Then::Do(Action::ReadCard))),
        Thing::DataSheet => out.push(offer("offer-read-sheet", Then::Do(Action::ReadSheet))),
        Thing::Car => out.extend([
            offer("offer-listen-hum", Then::Do(Action::Sense(Sense::Hum))),
            offer("offer-base-brakes", Then::Do(Action::Sense(Sense::BaseBrakes))),
            offer("offer-yard-drive", Then::Do(Action::Sense(Sense::YardDrive))),
            offer("offer-overnight", Then::Do(Action::Overnight)),
            offer("offer-hand-back", Then::Do(Action::HandBack)),
        ]),
    }
    out
}

/// Joints of the car at `port`, by index.
#[must_use]
pub fn joints_at(shop: &Shop, port: PortRef) -> Vec<u16> {
    let Some(car) = shop.car() else { return Vec::new() };
    let joints = car.assembly.joints.iter().enumerate();
    joints.filter(|(_, j)| j.a == port || j.b == port).map(|(i, _)| i as u16).collect()
}

/// Whether a joint of the car is open.
#[must_use]
pub fn is_open(shop: &Shop, joint: u16) -> bool {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return false };
    car.assembly.joints.get(usize::from(joint)).is_some_and(|j| view.joints_open.contains(&j.id))
}

fn part_offers(shop: &Shop, part: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(view), Some(session)) = (shop.car(), shop.view(), shop.session()) else { return };
    let Some(p) = car.assembly.parts.get(usize::from(part)) else { return };
    match p.kind {
        PartKind::KeySwitch(_) => out.push(offer("offer-turn-key", Then::Turn(Thing::Key))),
        PartKind::Engine(_) => out.push(offer("offer-turn-starter", Then::Turn(Thing::Starter))),
        PartKind::Booster(_) => out.push(offer("offer-turn-pedal", Then::Turn(Thing::Pedal))),
        _ => {}
    }
    let ports = car.assembly.ports().filter(|r| r.part == part);
    out.extend(ports.map(|r| about("offer-turn-port", Thing::Port(r), Then::Turn(Thing::Port(r)))));
    if p.kind.ports().iter().any(|d| d.domain == Domain::Pneumatic) {
        out.push(offer("offer-hiss", Then::Do(Action::Sense(Sense::Hiss { part: p.id.clone() }))));
    }
    out.push(offer("offer-touch", Then::Do(Action::Sense(Sense::Touch { part: p.id.clone() }))));
    for (card, c) in session.workshop().setup().kit.iter().enumerate() {
        let end = match c.kind {
            InstrumentKind::IrThermometer { .. } => "beam",
            InstrumentKind::AngleFinder { .. } if matches!(p.kind, PartKind::Hose(_)) => "arm",
            _ => continue,
        };
        if view.instruments.get(card).is_some_and(|i| !i.at.is_empty()) {
            continue;
        }
        let ends = vec![(end.to_owned(), p.id.clone())];
        let fit = Action::Fit { instrument: c.id.clone(), ends };
        out.push(about("offer-point", Thing::Instrument(card as u16), Then::Do(fit)));
    }
    let Some(unit) = car.units.iter().find(|u| u.parts.contains(&part)) else { return };
    if unit.plug_in {
        out.push(if view.pulled.contains(&unit.id) {
            offer("offer-push", Then::Do(Action::PushUnit { unit: unit.id.clone() }))
        } else {
            offer("offer-pull", Then::Do(Action::PullUnit { unit: unit.id.clone() }))
        });
    }
    if !unit.cleans.is_empty() {
        out.push(offer("offer-clean", Then::Do(Action::Clean { unit: unit.id.clone() })));
    }
    if unit.reforms {
        out.push(offer("offer-reform", Then::Do(Action::Reform { unit: unit.id.clone() })));
    }
    for (i, spare) in session.workshop().setup().spares.iter().enumerate() {
        if car.units.get(usize::from(spare.unit)).is_some_and(|u| u.id == unit.id) {
            let swap = Action::Swap { unit: unit.id.clone(), spare: spare.id.clone() };
            out.push(about("offer-swap", Thing::Spare(i as u16), Then::Do(swap)));
        }
    }
}

fn port_offers(shop: &Shop, port: PortRef, out: &mut Vec<Offer>) {
    let (Some(car), Some(view), Some(session)) = (shop.car(), shop.view(), shop.session()) else { return };
    if car.assembly.parts.len() <= usize::from(port.part) {
        return;
    }
    let name = car.assembly.port_name(port);
    let domain = car.assembly.domain(port);
    let workshop = session.workshop();
    // What sits here already comes off first.
    for (card, i) in view.instruments.iter().enumerate() {
        if i.at.iter().any(|(_, at)| *at == name) {
            let off = Action::Unfit { instrument: i.id.clone() };
            out.push(about("offer-unfit", Thing::Instrument(card as u16), Then::Do(off)));
        }
    }
    for (card, c) in workshop.setup().kit.iter().enumerate() {
        let ends = workshop.ends_of(card);
        if ends.is_empty() || view.instruments.get(card).is_some_and(|i| !i.at.is_empty()) {
            continue;
        }
        let air = matches!(c.kind, InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. });
        let pointed =
            matches!(c.kind, InstrumentKind::IrThermometer { .. } | InstrumentKind::AngleFinder { .. });
        if pointed || air != (domain == Domain::Pneumatic) {
            continue;
        }
        let it = Thing::Instrument(card as u16);
        match ends.as_slice() {
            [end] => {
                let ends = vec![((*end).to_owned(), name.clone())];
                let fit = Action::Fit { instrument: c.id.clone(), ends };
                out.push(about("offer-fit", it, Then::Do(fit)));
            }
            [first, rest @ ..] => {
                let carry = Carry {
                    card: card as u16,
                    placed: vec![((*first).to_owned(), name.clone())],
                    left: rest.iter().map(|e| (*e).to_owned()).collect(),
                };
                let end = Some((*first).to_owned());
                out.push(Offer { key: "offer-fit-end", it: Some(it), end, then: Then::Carry(carry) });
            }
            [] => {}
        }
    }
    for joint in joints_at(shop, port) {
        let id = car.assembly.joints[usize::from(joint)].id.clone();
        out.push(if is_open(shop, joint) {
            about("offer-make", Thing::Joint(joint), Then::Do(Action::MakeJoint { joint: id }))
        } else {
            about("offer-open", Thing::Joint(joint), Then::Do(Action::OpenJoint { joint: id }))
        });
    }
    if domain == Domain::Pneumatic {
        match view.stops.iter().find(|(at, _)| *at == name) {
            Some((_, Stop::Plug)) => {
                out.push(offer("offer-unplug", Then::Do(Action::SetStop { port: name, stop: None })));
            }
            Some((_, Stop::Clamp)) => {
                out.push(offer("offer-unclamp", Then::Do(Action::SetStop { port: name, stop: None })));
            }
            None => {
                let plug = Action::SetStop { port: name.clone(), stop: Some(Stop::Plug) };
                out.push(offer("offer-plug", Then::Do(plug)));
                let clamp = Action::SetStop { port: name, stop: Some(Stop::Clamp) };
                out.push(offer("offer-clamp", Then::Do(clamp)));
            }
        }
    }
    out.push(about("offer-turn-part", Thing::Part(port.part), Then::Turn(Thing::Part(port.part))));
}

fn joint_offers(shop: &Shop, joint: u16, out: &mut Vec<Offer>) {
    let Some(car) = shop.car() else { return };
    let Some(j) = car.assembly.joints.get(usize::from(joint)) else { return };
    out.push(if is_open(shop, joint) {
        offer("offer-make-this", Then::Do(Action::MakeJoint { joint: j.id.clone() }))
    } else {
        offer("offer-open-this", Then::Do(Action::OpenJoint { joint: j.id.clone() }))
    });
    for port in [j.a, j.b] {
        out.push(about("offer-turn-port", Thing::Port(port), Then::Turn(Thing::Port(port))));
    }
}

fn cover_offers(shop: &Shop, cover: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    let Some(c) = car.covers.get(usize::from(cover)) else { return };
    let off = view.covers_off.contains(&c.id);
    let key = if off { "offer-cover-on" } else { "offer-cover-off" };
    out.push(offer(key, Then::Do(Action::Cover { cover: c.id.clone(), off: !off })));
}

fn instrument_offers(shop: &Shop, card: u16, out: &mut Vec<Offer>) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let workshop = session.workshop();
    let Some(c) = workshop.setup().kit.get(usize::from(card)) else { return };
    let Some(seen) = view.instruments.get(usize::from(card)) else { return };
    let id = || c.id.clone();
    let ends = workshop.ends_of(usize::from(card));
    let fitted = !seen.at.is_empty();
    if !ends.is_empty() && !fitted {
        let left = ends.iter().map(|e| (*e).to_owned()).collect();
        let carry = Carry { card, placed: Vec::new(), left };
        out.push(offer("offer-take", Then::Carry(carry)));
    }
    if fitted || ends.is_empty() {
        match c.kind {
            InstrumentKind::Stopwatch { .. } => {
                for (key, cycle) in [("offer-time-run", Cycle::PumpRun), ("offer-time-rest", Cycle::PumpRest)]
                {
                    out.push(offer(key, Then::Do(Action::Time { cycle, max_s: LONGEST_TIMED_S })));
                }
            }
            InstrumentKind::PedalProp => out.push(offer("offer-prop", Then::Form(Form::HoldByProp))),
            InstrumentKind::Plugs
            | InstrumentKind::Clamps
            | InstrumentKind::ListeningTube
            | InstrumentKind::PushLead => {}
            _ => out.push(offer("offer-read", Then::Do(Action::Read { instrument: id() }))),
        }
    }
    match c.kind {
        InstrumentKind::Multimeter { .. } => {
            for (key, mode) in [
                ("offer-meter-volt", MeterMode::Volt),
                ("offer-meter-ohm", MeterMode::Ohm),
                ("offer-meter-ampere", MeterMode::Ampere),
                ("offer-meter-off", MeterMode::Off),
            ] {
                out.push(offer(key, Then::Do(Action::SetMeter { instrument: id(), mode })));
            }
        }
        InstrumentKind::PushLead if fitted => {
            out.push(offer("offer-button-down", Then::Do(Action::Press { instrument: id(), down: true })));
            out.push(offer("offer-button-up", Then::Do(Action::Press { instrument: id(), down: false })));
        }
        InstrumentKind::HandPump { .. } if fitted => {
            out.push(offer("offer-stroke", Then::Form(Form::Stroke(card))));
            out.push(offer("offer-lever-down", Then::Do(Action::Press { instrument: id(), down: true })));
            out.push(offer("offer-lever-up", Then::Do(Action::Press { instrument: id(), down: false })));
        }
        InstrumentKind::Lamp if fitted => {
            for (key, cue) in [("offer-wait-lamp-out", Cue::LampOut), ("offer-wait-lamp-on", Cue::LampOn)] {
                out.push(offer(key, Then::Do(Action::WaitUntil { cue, max_s: LONGEST_CUE_S })));
            }
        }
        _ => {}
    }
    if fitted {
        out.push(offer("offer-unfit-this", Then::Do(Action::Unfit { instrument: id() })));
    }
}

/// How long a stopwatch is held on a pump that does not do what is waited for, s.
pub const LONGEST_TIMED_S: u32 = 900;
/// How long a cue is waited for from a menu, s; the time control takes any.
pub const LONGEST_CUE_S: u32 = 120;

fn spare_offers(shop: &Shop, spare: u16, out: &mut Vec<Offer>) {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return };
    let Some(s) = session.workshop().setup().spares.get(usize::from(spare)) else { return };
    let Some(unit) = car.units.get(usize::from(s.unit)) else { return };
    let swap = Action::Swap { unit: unit.id.clone(), spare: s.id.clone() };
    out.push(offer("offer-swap-this", Then::Do(swap)));
    if let Some(part) = unit.parts.first() {
        out.push(about("offer-turn-part", Thing::Part(*part), Then::Turn(Thing::Part(*part))));
    }
}

fn starter_offers(engine: EngineState, out: &mut Vec<Offer>) {
    for (key, state) in
        [("offer-engine-start", EngineState::WarmIdle), ("offer-engine-stop", EngineState::Stopped)]
    {
        let running = engine != EngineState::Stopped;
        if running == (state == EngineState::Stopped) {
            out.push(offer(key, Then::Do(Action::Engine(state))));
        }
    }
}

fn pedal_offers(pedal: PedalHold, out: &mut Vec<Offer>) {
    if pedal == PedalHold::Released {
        out.push(offer("offer-pedal-hold", Then::Form(Form::HoldByFoot)));
        out.push(offer("offer-prop", Then::Form(Form::HoldByProp)));
        out.push(offer("offer-pedal-pump", Then::Form(Form::PumpPedal)));
        out.push(offer("offer-applications", Then::Do(Action::Sense(Sense::Applications))));
    } else {
        out.push(offer("offer-pedal-release", Then::Do(Action::Pedal(PedalHold::Released))));
        out.push(offer("offer-pedal-travel", Then::Do(Action::Sense(Sense::PedalTravel))));
        out.push(offer("offer-pedal-moved", Then::Do(Action::Sense(Sense::PedalMoved))));
    }
}

/// Where the end in the hand can go at `thing`.
fn places_for(shop: &Shop, carry: &Carry, thing: Thing) -> Vec<Offer> {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let workshop = session.workshop();
    let Some(c) = workshop.setup().kit.get(usize::from(carry.card)) else { return Vec::new() };
    let Some(end) = carry.left.first() else { return Vec::new() };
    let on_part = matches!(c.kind, InstrumentKind::IrThermometer { .. } | InstrumentKind::AngleFinder { .. });
    let spots: Vec<(Thing, String)> = match thing {
        Thing::Part(p) if on_part => {
            car.assembly.parts.get(usize::from(p)).map(|part| (thing, part.id.clone())).into_iter().collect()
        }
        Thing::Port(r) if on_part => {
            let part = car.assembly.parts.get(usize::from(r.part));
            part.map(|part| (Thing::Part(r.part), part.id.clone())).into_iter().collect()
        }
        Thing::Part(p) => car
            .assembly
            .ports()
            .filter(|r| r.part == p)
            .map(|r| (Thing::Port(r), car.assembly.port_name(r)))
            .collect(),
        Thing::Port(r) if usize::from(r.part) < car.assembly.parts.len() => {
            vec![(thing, car.assembly.port_name(r))]
        }
        Thing::Joint(j) => car.assembly.joints.get(usize::from(j)).map_or_else(Vec::new, |j| {
            [j.a, j.b].map(|r| (Thing::Port(r), car.assembly.port_name(r))).to_vec()
        }),
        _ => Vec::new(),
    };
    let air = matches!(c.kind, InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. });
    spots
        .into_iter()
        .filter(|(spot, _)| match spot {
            Thing::Port(r) => air == (car.assembly.domain(*r) == Domain::Pneumatic),
            _ => true,
        })
        .map(|(spot, name)| {
            let mut placed = carry.placed.clone();
            placed.push((end.clone(), name));
            let left = carry.left[1..].to_vec();
            let then = if left.is_empty() {
                Then::Do(Action::Fit { instrument: c.id.clone(), ends: placed })
            } else {
                Then::Carry(Carry { card: carry.card, placed, left })
            };
            Offer { key: "offer-place-end", it: Some(spot), end: Some(end.clone()), then }
        })
        .collect()
}
