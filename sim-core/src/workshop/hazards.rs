//! What can hurt somebody: breaches of safety, each recorded and explained at once.
//!
//! The rules are the trade's (common practice, no source) except the touch limits: row 5.1 of the check
//! values (IEC 62368-1 table 42, after ISO 13732-1). The vehicle maker's data and local rules come first.

use super::graph;
use super::state::Doing;
use super::{Breach, Gravity, Workshop};
use crate::action::PedalHold;
use crate::assembly::PortRef;
use crate::circuit::Event;
use crate::instrument::Held;
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
    pub(super) fn breach(&mut self, rule: &str, gravity: Gravity, text: impl Into<String>) {
        self.breaches.push(Breach { rule: rule.to_owned(), gravity, text: text.into() });
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
            doing.breach(
                "hands_at_running_pump",
                Gravity::Major,
                "You worked at the pump while it was running. Switch off and pull its fuse before hands go in.",
            );
        } else if self.circuit.inputs().key_on {
            doing.breach(
                "pump_may_start",
                Gravity::Minor,
                "You worked at the pump with the ignition on: it starts by itself when the vacuum falls. \
                 Switch off and pull its fuse before hands go in.",
            );
        }
    }

    /// A surface is touched for a few seconds.
    pub(super) fn touches(&self, doing: &mut Doing<'_>, part: u16) {
        let c = self.circuit.surface_c(part);
        let rubber = self.setup.car.stands[usize::from(part)].rubber;
        let (few_seconds, instant) =
            if rubber { (RUBBER_10_S_C, RUBBER_1_S_C) } else { (METAL_10_S_C, METAL_1_S_C) };
        let text = "You touched a surface above the burn limit for a touch of this length. Hold the back of \
                    the hand near it first, or use the infrared thermometer.";
        if instant < c {
            doing.breach("hot_surface", Gravity::Major, text);
        } else if few_seconds < c {
            doing.breach("hot_surface", Gravity::Minor, text);
        }
    }

    /// A pneumatic joint is opened, or a tee put into it.
    pub(super) fn opens_store(&self, doing: &mut Doing<'_>, ports: &[PortRef]) {
        let store = graph::store(self.circuit.assembly());
        let ambient = self.circuit.ambient();
        let under_vacuum = |p: &PortRef| self.circuit.pressure(*p).gauge(ambient).kpa() < STORE_EMPTY_KPA;
        if ports.iter().any(|p| store.contains(p) && under_vacuum(p)) {
            doing.breach(
                "joint_under_vacuum",
                Gravity::Minor,
                "You opened a joint of the vacuum store while it was under vacuum: dirt is drawn in and the \
                 hose end can snap back. With the ignition off, pump the brake pedal until it is hard first.",
            );
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
            let what = if opening { "undid" } else { "made" };
            doing.breach(
                "battery_order",
                Gravity::Major,
                format!(
                    "You {what} a terminal at battery plus with the earth connected: a spanner that slips \
                     shorts the battery. Earth comes off first and goes on last."
                ),
            );
        }
    }

    /// The engine is about to start.
    pub(super) fn engine_starts(&self, doing: &mut Doing<'_>) {
        match graph::open_manifold(self.circuit.assembly()) {
            Some(true) => doing.breach(
                "open_manifold",
                Gravity::Major,
                "You started the engine with the manifold's nipple open: it may race and it draws in whatever \
                 lies near. Plug the port before starting.",
            ),
            Some(false) => doing.breach(
                "open_manifold",
                Gravity::Minor,
                "You started the engine with an open end on the manifold: it may race and it draws in \
                 whatever lies near. Join or plug it before starting.",
            ),
            None => {}
        }
        if !self.state.chocked {
            doing.breach(
                "no_chocks",
                Gravity::Minor,
                "You started the engine without chocks at the wheels. Chock the car before an engine runs in \
                 the workshop.",
            );
        }
        if !self.state.extracted {
            doing.breach(
                "no_extraction",
                Gravity::Minor,
                "You started the engine indoors without extraction. Hang the extraction on the exhaust before \
                 an engine runs in the workshop.",
            );
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
                    let name = card.map_or("instrument", |c| self.setup.kit[c].name.as_str());
                    doing.breach(
                        "melted_fuse",
                        Gravity::Minor,
                        format!(
                            "The fuse in the {name} has melted: more current went through it than it is made \
                             for. Think where the current will go before you connect."
                        ),
                    );
                }
                Event::PumpStarted(_) => pump.push("The pump starts."),
                Event::PumpStopped(_) => pump.push("The pump stops."),
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
            for text in pump {
                doing.say(text);
            }
        } else {
            doing.say(format!("The pump starts or stops {} times meanwhile.", pump.len()));
        }
        let running = self.circuit.inputs().engine != EngineState::Stopped;
        let since = self.state.engine_event.map_or(0, |e| self.circuit.tick().0.saturating_sub(e.tick));
        let before = since.saturating_sub(self.circuit.tick().0 - doing.start);
        let long = super::timing::s(EXHAUST_MIN * 60);
        if running && !self.state.extracted && before < long && long <= since {
            doing.say(
                "The engine has run for some minutes indoors: hang the extraction on the exhaust and open the gate.",
            );
        }
    }

    /// Things left on the car, in words; instruments that only touch wires too, if `wires` asks.
    pub(super) fn left_on_car(&self, wires: bool) -> Vec<String> {
        let assembly = self.circuit.assembly();
        let mut left = Vec::new();
        for (port, stop) in &assembly.stops {
            let what = match stop {
                crate::assembly::Stop::Plug => "plug",
                crate::assembly::Stop::Clamp => "clamp",
            };
            left.push(format!("a {what} at {}", assembly.port_name(*port)));
        }
        let car = self.setup.car.assembly.joints.iter().enumerate();
        for (joint, as_came) in car {
            if as_came.made && !assembly.joints[joint].made && !self.is_pulled_joint(joint) {
                left.push(format!("open joint {}", as_came.id));
            }
        }
        for (unit, pulled) in self.setup.car.units.iter().zip(&self.state.pulled) {
            if pulled.is_some() {
                left.push(format!("{} pulled out", unit.name));
            }
        }
        for (card, at) in self.setup.kit.iter().zip(&self.state.fits) {
            let on_car = match card.kind.nature().held {
                Held::AtPart | Held::OnHose => false,
                Held::OnLine => true,
                Held::OnWires | Held::AroundWire | Held::Nowhere => wires,
            };
            if on_car && !at.is_empty() {
                left.push(format!("the {} connected", card.name));
            }
        }
        if matches!(self.state.pedal, PedalHold::Prop { .. }) {
            left.push("the pedal prop in place".to_owned());
        }
        left
    }

    /// Whether a joint stands open because a plug-in unit is pulled out.
    pub(super) fn is_pulled_joint(&self, joint: usize) -> bool {
        self.state.pulled.iter().flatten().flatten().any(|j| usize::from(*j) == joint)
    }
}
