//! The network's two-poles with the values the state gives them.

use super::layout::{Chamber, Var};
use super::model::{Given, Model, Scratch};
use super::wiring::{PoleKind, PoleState};
use crate::parts::PartKind;
use crate::parts::controller;
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;

impl Model {
    /// Voltage across and current through the (first) two-pole of a part.
    pub(crate) fn pole_of(&self, part: u16, scratch: &Scratch) -> (f64, f64) {
        self.wiring.poles.iter().zip(&scratch.poles).find(|(p, _)| p.part == part).map_or(
            (0.0, 0.0),
            |(p, s)| {
                let v = scratch.solved.v[p.node_a as usize] - scratch.solved.v[p.node_b as usize];
                (v, s.g * (v - s.emf))
            },
        )
    }

    pub(crate) fn solve_wiring(&self, given: Given<'_>, y: &[f64], scratch: &mut Scratch) {
        let Given { assembly, inputs, flags } = given;
        scratch.poles.clear();
        for pole in &self.wiring.poles {
            let part = pole.part as usize;
            let value = |var| self.layout.index(var).map_or(0.0, |i| y[i]);
            let flag = flags[part];
            let hand = inputs.hands[part];
            let closed = |is: bool, ohm: f64| if is { 1.0 / ohm } else { 0.0 };
            let (g, emf) = match (&assembly.parts[part].kind, pole.kind) {
                (PartKind::Battery(b), _) => (
                    1e3 / (b.internal_mohm + b.aged_mohm),
                    crate::parts::electrical::Battery::open_circuit_v(value(Var::Charge(pole.part))),
                ),
                (PartKind::Supply(s), _) => (1e3 / s.source_mohm, s.volt),
                (PartKind::Engine(e), _) => {
                    (closed(inputs.engine != EngineState::Stopped, e.alternator_ohm), e.alternator_v)
                }
                (PartKind::Fuse(p), _) => (closed(!flag.melted, p.mohm * 1e-3 + p.corroded_ohm), 0.0),
                (PartKind::Relay(p), PoleKind::RelayContact) => {
                    (closed(flag.closed, p.contact_mohm * 1e-3 + p.burnt_ohm) + p.weld_s, 0.0)
                }
                (PartKind::Relay(p), _) => (1.0 / (p.coil_ohm + p.coil_open_ohm), 0.0),
                (PartKind::KeySwitch(p), _) => (closed(inputs.key_on, p.contact_mohm * 1e-3), 0.0),
                (PartKind::Wire(p), _) => (1.0 / p.resistance_ohm(), 0.0),
                (PartKind::VacuumSwitch(p), _) => {
                    (closed(flag.closed, p.contact_ohm + p.burnt_ohm) + p.weld_s, 0.0)
                }
                (PartKind::VacuumPump(p), _) => {
                    let t = value(Var::Winding(pole.part));
                    (1.0 / p.resistance_ohm(t), p.motor_constant(t) * value(Var::Speed(pole.part)))
                }
                (PartKind::VacuumSensor(p), kind) => {
                    let inside = self.layout.volume_of(pole.part, Chamber::Body);
                    let share = p.share(inside.map_or(0.0, |k| self.p_atm - scratch.gas[k].p));
                    let part_of_track = if kind == PoleKind::SensorLower { share } else { 1.0 - share };
                    (1.0 / (p.track_ohm * part_of_track), 0.0)
                }
                (PartKind::Controller(_), PoleKind::ControllerFeed) => {
                    (closed(flag.powered, controller::FEED_OHM), controller::FEED_V)
                }
                (PartKind::Controller(p), PoleKind::ControllerInput) => (1e-3 / p.input_kohm, 0.0),
                (PartKind::Controller(_), PoleKind::ControllerGround) => (1.0 / controller::GROUND_OHM, 0.0),
                (PartKind::Controller(p), PoleKind::ControllerOut) => {
                    (closed(flag.closed, p.out_mohm * 1e-3 + p.out_burnt_ohm) + p.out_shorted_s, 0.0)
                }
                (PartKind::Controller(p), _) => (1.0 / p.supply_ohm, 0.0),
                (PartKind::TestLamp(p), _) => {
                    (1.0 / p.resistance_ohm(value(Var::Filament(pole.part))).0, 0.0)
                }
                (PartKind::Multimeter(p), _) => match hand.mode {
                    MeterMode::Off => (0.0, 0.0),
                    MeterMode::Volt => (1e-6 / p.input_megohm, 0.0),
                    MeterMode::Ohm => (1e-3 / p.ohm_source_kohm, p.ohm_source_v),
                    MeterMode::Ampere => (closed(!flag.melted, p.shunt_mohm * 1e-3 + p.leads_ohm), 0.0),
                },
                (PartKind::PushLead(p), _) => (closed(hand.pressed && !flag.melted, p.mohm * 1e-3), 0.0),
                _ => (0.0, 0.0),
            };
            scratch.poles.push(PoleState { g, emf });
        }
        self.wiring.solve(&scratch.poles, &mut scratch.solved);
    }
}
