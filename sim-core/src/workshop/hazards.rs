//! What can hurt somebody: breaches of safety, each recorded and explained at once.
//!
//! The rules are the trade's (common practice, no source) except the touch limits: row 5.1 of the check
//! values (IEC 62368-1 table 42, after ISO 13732-1). The vehicle maker's data and local rules come first.

use super::Workshop;
use super::graph;
use super::state::{Doing, Slope};
use crate::action::{Action, PedalHold, Sense};
use crate::assembly::PortRef;
use crate::circuit::Event;
use crate::instrument::Held;
use crate::notice::{Hazard, Left, Notice, Word};
use crate::parts::engine::EngineState;
use crate::parts::{Domain, PartKind};

/// Gauge pressure below which a joint of the store is "under vacuum", kPa.
const STORE_EMPTY_KPA: f64 = -10.0;
/// Bare metal touched for 1–10 s, °C (row 5.1).
pub(super) const METAL_10_S_C: f64 = 60.0;
/// Bare metal touched for less than a second, °C (row 5.1).
const METAL_1_S_C: f64 = 70.0;
/// Rubber or plastic touched for 1–10 s, °C (row 5.2).
pub(super) const RUBBER_10_S_C: f64 = 77.0;
/// Rubber or plastic touched for less than a second, °C (row 5.2).
const RUBBER_1_S_C: f64 = 94.0;
/// Minutes of engine indoors after which the exhaust is spoken of.
const EXHAUST_MIN: u64 = 5;

impl Doing<'_> {
    /// Records a breach.
    pub(super) fn breach(&mut self, hazard: Hazard) {
        self.breaches.push(hazard);
    }
}

impl Workshop {
    /// The first electric vacuum pump of the car.
    pub(super) fn pump(&self) -> Option<u16> {
        graph::first_part(self.circuit.assembly(), |k| matches!(k, PartKind::VacuumPump(_)))
    }

    /// Whether the pump can be heard.
    pub(super) fn pump_hums(&self) -> bool {
        self.pump().is_some_and(|p| self.circuit.hums(p))
    }

    /// Gauge pressure in the booster's front chamber, kPa.
    pub(super) fn store_kpa(&self) -> f64 {
        let assembly = self.circuit.assembly();
        graph::first_part(assembly, |k| matches!(k, PartKind::Booster(_)))
            .and_then(|b| graph::port_of(assembly, b, "vacuum"))
            .map_or(0.0, |p| self.circuit.pressure(p).gauge(self.circuit.ambient()).kpa())
    }

    /// Whether anything a hand could have undone keeps the pump from starting by itself.
    fn pump_can_start(&self, pump: u16) -> bool {
        let assembly = self.circuit.assembly();
        let pulled = self.setup.car.units.iter().zip(&self.state.pulled).any(|(unit, pulled)| {
            pulled.is_some()
                && unit.parts.iter().any(|p| {
                    matches!(assembly.parts[usize::from(*p)].kind, PartKind::Fuse(_) | PartKind::Relay(_))
                })
        });
        let wired = |part: u16| {
            assembly
                .ports()
                .filter(|p| p.part == part && assembly.domain(*p) == Domain::Electrical)
                .all(|p| !graph::joined(assembly, p).is_empty())
        };
        let battery = graph::first_part(assembly, |k| matches!(k, PartKind::Battery(_)));
        !pulled && wired(pump) && battery.is_some_and(wired)
    }

    /// Hands go to the pump: breach when it runs, or can start by itself.
    pub(super) fn hands_at_pump(&self, doing: &mut Doing<'_>, parts: &[u16]) {
        let Some(pump) = self.pump() else { return };
        if !parts.contains(&pump) || !self.pump_can_start(pump) {
            return;
        }
        if self.circuit.hums(pump) {
            doing.breach(Hazard::RunningPump);
        } else if self.circuit.inputs().key_on {
            doing.breach(Hazard::MayStart);
        }
    }

    /// A surface is touched for a few seconds.
    pub(super) fn touches(&self, doing: &mut Doing<'_>, part: u16) {
        let c = self.circuit.surface_c(part);
        let rubber = self.setup.car.stands[usize::from(part)].rubber;
        let (few_seconds, instant) =
            if rubber { (RUBBER_10_S_C, RUBBER_1_S_C) } else { (METAL_10_S_C, METAL_1_S_C) };
        if instant < c {
            doing.breach(Hazard::BurnAtOnce);
        } else if few_seconds < c {
            doing.breach(Hazard::Burn);
        }
    }

    /// A pneumatic joint is opened, or a tee put into it.
    pub(super) fn opens_store(&self, doing: &mut Doing<'_>, ports: &[PortRef]) {
        let store = graph::store(self.circuit.assembly());
        let ambient = self.circuit.ambient();
        let under_vacuum = |p: &PortRef| self.circuit.pressure(*p).gauge(ambient).kpa() < STORE_EMPTY_KPA;
        if ports.iter().any(|p| store.contains(p) && under_vacuum(p)) {
            doing.breach(Hazard::StoreOpen);
        }
    }

    /// A joint at the battery is undone or made: earth off first, on last.
    pub(super) fn battery_order(&self, doing: &mut Doing<'_>, a: PortRef, b: PortRef, opening: bool) {
        let assembly = self.circuit.assembly();
        let Some(battery) = graph::first_part(assembly, |k| matches!(k, PartKind::Battery(_))) else {
            return;
        };
        let port = |name| graph::port_of(assembly, battery, name);
        let at_plus = port("plus").is_some_and(|p| p == a || p == b);
        let earthed = port("minus").is_some_and(|p| !graph::joined(assembly, p).is_empty());
        if at_plus && earthed {
            doing.breach(Hazard::BatteryOrder { done: if opening { Word::Undid } else { Word::Made } });
        }
    }

    /// The engine is about to start.
    pub(super) fn engine_starts(&self, doing: &mut Doing<'_>) {
        match graph::open_manifold(self.circuit.assembly()) {
            Some(true) => doing.breach(Hazard::Nipple),
            Some(false) => doing.breach(Hazard::OpenEnd),
            None => {}
        }
        // On a slope the work itself is the breach (`works_on_slope`).
        if !self.state.chocked && !self.setup.arrival.on_slope {
            doing.breach(Hazard::NoChocks);
        }
        if !self.state.extracted {
            doing.breach(Hazard::NoExtraction);
        }
    }

    /// Hands on a car on a slope without chocks: said at once, and whoever goes on all the same might have killed somebody.
    /// Setting the chocks puts it right.
    pub(super) fn works_on_slope(&mut self, doing: &mut Doing<'_>, action: &Action) {
        if !self.setup.arrival.on_slope || self.state.chocked || !may_move_the_car(action) {
            return;
        }
        match self.state.slope {
            Slope::Untold => {
                self.state.slope = Slope::Told;
                doing.breach(Hazard::SlopeNoChocks);
            }
            Slope::Told => {
                self.state.slope = Slope::WentOn;
                doing.breach(Hazard::SlopeStillNoChocks);
            }
            Slope::WentOn => {}
        }
    }

    /// What an action left behind in the circuit: melted fuses, noise, exhaust.
    pub(super) fn aftermath(&self, doing: &mut Doing<'_>) {
        let events = &self.circuit.events()[doing.events_before..];
        let mut pump = Vec::new();
        for (_, event) in events {
            match event {
                Event::FuseMelted(part) if self.n_car_parts() <= usize::from(*part) => {
                    let card = self.card_parts.iter().position(|p| *p == Some(*part));
                    let Some(card) = card else { continue };
                    let tool = self.tool(card);
                    doing.breach(Hazard::FuseMelted { tool });
                }
                Event::PumpStarted(_) => pump.push(Notice::PumpStarts),
                Event::PumpStopped(_) => pump.push(Notice::PumpStops),
                // Nobody hears or sees these.
                Event::FuseMelted(_)
                | Event::SwitchOpened(_)
                | Event::SwitchClosed(_)
                | Event::RelayPulled(_)
                | Event::RelayDropped(_)
                | Event::OutputOn(_)
                | Event::OutputOff(_)
                | Event::CodeStored(_)
                | Event::Fault => {}
            }
        }
        if doing.away {
            // What the pump did overnight nobody has heard.
        } else if pump.len() <= 4 {
            for notice in pump {
                doing.say(notice);
            }
        } else {
            doing.say(Notice::PumpCycles { times: pump.len() as u32 });
        }
        let running = self.circuit.inputs().engine != EngineState::Stopped;
        let since = self.state.engine_event.map_or(0, |e| self.circuit.tick().0.saturating_sub(e.tick));
        let before = since.saturating_sub(self.circuit.tick().0 - doing.start);
        let long = super::timing::s(EXHAUST_MIN * 60);
        if running && !self.state.extracted && before < long && long <= since {
            doing.say(Notice::Exhaust);
        }
    }

    /// Things left on the car; instruments that only touch wires too, if `wires` asks.
    pub(super) fn left_on_car(&self, wires: bool) -> Vec<Left> {
        let assembly = self.circuit.assembly();
        let mut left = Vec::new();
        for (port, stop) in &assembly.stops {
            let stop = match stop {
                crate::assembly::Stop::Plug => Word::Plug,
                crate::assembly::Stop::Clamp => Word::Clamp,
            };
            left.push(Left::Stop { stop, at: assembly.port_name(*port).into() });
        }
        let car = self.setup.car.assembly.joints.iter().enumerate();
        for (joint, as_came) in car {
            if as_came.made && !assembly.joints[joint].made && !self.is_pulled_joint(joint) {
                left.push(Left::Joint { joint: as_came.id.as_str().into() });
            }
        }
        for (unit, pulled) in self.setup.car.units.iter().zip(&self.state.pulled) {
            if pulled.is_some() {
                left.push(Left::Pulled { unit: unit.id.as_str().into() });
            }
        }
        for (card, at) in self.setup.kit.iter().zip(&self.state.fits) {
            let on_car = match card.kind.nature().held {
                Held::AtPart | Held::OnHose | Held::AtEar => false,
                Held::OnLine => true,
                Held::OnWires
                | Held::AroundWire
                | Held::Nowhere
                | Held::InOpening
                | Held::OverHose
                | Held::OnPedal => wires,
            };
            if on_car && !at.is_empty() {
                left.push(Left::Tool { tool: card.id.as_str().into() });
            }
        }
        if matches!(self.state.pedal, PedalHold::Prop { .. }) {
            left.push(Left::Prop);
        }
        left
    }

    /// Whether a joint stands open because a plug-in unit is pulled out.
    pub(super) fn is_pulled_joint(&self, joint: usize) -> bool {
        self.state.pulled.iter().flatten().flatten().any(|j| usize::from(*j) == joint)
    }
}

/// Whether somebody works at the car, so that it could begin to roll or somebody would be in its way. Looking, listening
/// and reading move nothing, the yard is driven in without chocks, and the key alone turns no wheel.
fn may_move_the_car(action: &Action) -> bool {
    match action {
        Action::Engine(state) => *state != EngineState::Stopped,
        Action::Pedal(_)
        | Action::PumpPedal { .. }
        | Action::Cover { .. }
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::Fit { .. }
        | Action::Swap { .. }
        | Action::Clean { .. }
        | Action::Reform { .. }
        | Action::Sense(Sense::BaseBrakes) => true,
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Unfit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Stroke { .. }
        | Action::Read { .. }
        | Action::Sense(
            Sense::Hiss { .. }
            | Sense::Hum
            | Sense::Touch { .. }
            | Sense::PedalTravel
            | Sense::PedalMoved
            | Sense::Applications
            | Sense::Lamp { .. }
            | Sense::YardDrive,
        )
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::Note { .. }
        | Action::Suspect { .. }
        | Action::Finding { .. }
        | Action::HandBack => false,
    }
}
