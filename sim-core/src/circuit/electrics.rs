//! The network's two-poles with the values the state gives them.

use super::layout::{Chamber, Layout, Var};
use super::model::{Given, Model, PumpAt, Scratch};
use super::wiring::{Pole, PoleKind, PoleState};
use crate::assembly::Assembly;
use crate::parts::PartKind;
use crate::parts::controller;
use crate::parts::electrical::Battery;
use crate::parts::engine::EngineState;
use crate::parts::instruments::{MeterMode, TestLamp};
use crate::parts::vacuum_sensor::VacuumSensor;

/// What decides the worth of a two-pole, its numbers looked up once. Conductances in S.
#[derive(Clone, Copy, Debug)]
pub(super) enum PoleLaw {
    /// Always the same.
    Fixed(PoleState),
    /// While the part's contact is closed or its output driven; and what a weld passes besides.
    Contact { g: f64, weld: f64 },
    /// While the part's fuse has not melted.
    Intact(f64),
    /// While the part is awake.
    Powered(PoleState),
    /// While the key is on.
    KeyOn(f64),
    /// While the engine runs.
    EngineRuns(PoleState),
    /// A battery, its charge at this index.
    Battery { g: f64, charge: Option<usize> },
    /// The motor of the pump of this number.
    Motor(usize),
    /// One arm of a sensor's track, by the air of this volume.
    Track { numbers: VacuumSensor, volume: Option<usize>, lower: bool },
    /// A lamp, its filament's temperature at this index.
    Lamp { numbers: TestLamp, filament: Option<usize> },
    /// A meter in its three modes that connect anything.
    Meter { volt: f64, ohm: PoleState, ampere: f64 },
    /// While the button is held and the fuse whole.
    Pressed(f64),
}

impl PoleLaw {
    pub(super) fn of(pole: &Pole, assembly: &Assembly, layout: &Layout, pumps: &[PumpAt]) -> Self {
        let plain = |g: f64| Self::Fixed(PoleState { g, emf: 0.0 });
        let part = pole.part;
        match (&assembly.parts[usize::from(part)].kind, pole.kind) {
            (PartKind::Battery(b), _) => Self::Battery {
                g: 1e3 / (b.internal_mohm + b.aged_mohm),
                charge: layout.index(Var::Charge(part)),
            },
            (PartKind::Supply(s), _) => Self::Fixed(PoleState { g: 1e3 / s.source_mohm, emf: s.volt }),
            (PartKind::Engine(e), _) => {
                Self::EngineRuns(PoleState { g: 1.0 / e.alternator_ohm, emf: e.alternator_v })
            }
            (PartKind::Fuse(p), _) => Self::Intact(1.0 / (p.mohm * 1e-3 + p.corroded_ohm)),
            (PartKind::Relay(p), PoleKind::RelayContact) => {
                Self::Contact { g: 1.0 / (p.contact_mohm * 1e-3 + p.burnt_ohm), weld: p.weld_s }
            }
            (PartKind::Relay(p), _) => plain(1.0 / (p.coil_ohm + p.coil_open_ohm)),
            (PartKind::KeySwitch(p), _) => Self::KeyOn(1.0 / (p.contact_mohm * 1e-3)),
            (PartKind::Wire(p), _) => plain(1.0 / p.resistance_ohm()),
            (PartKind::VacuumSwitch(p), _) => {
                Self::Contact { g: 1.0 / (p.contact_ohm + p.burnt_ohm), weld: p.weld_s }
            }
            (PartKind::VacuumPump(_), _) => {
                let speed = layout.index(Var::Speed(part));
                pumps.iter().position(|p| Some(p.speed) == speed).map_or(plain(0.0), Self::Motor)
            }
            (PartKind::VacuumSensor(p), kind) => Self::Track {
                numbers: *p,
                volume: layout.volume_of(part, Chamber::Body),
                lower: kind == PoleKind::SensorLower,
            },
            (PartKind::Controller(_), PoleKind::ControllerFeed) => {
                Self::Powered(PoleState { g: 1.0 / controller::FEED_OHM, emf: controller::FEED_V })
            }
            (PartKind::Controller(p), PoleKind::ControllerInput) => plain(1e-3 / p.input_kohm),
            (PartKind::Controller(_), PoleKind::ControllerGround) => plain(1.0 / controller::GROUND_OHM),
            (PartKind::Controller(p), PoleKind::ControllerOut) => {
                Self::Contact { g: 1.0 / (p.out_mohm * 1e-3 + p.out_burnt_ohm), weld: p.out_shorted_s }
            }
            (PartKind::Controller(p), _) => plain(1.0 / p.supply_ohm),
            (PartKind::TestLamp(p), _) => {
                Self::Lamp { numbers: *p, filament: layout.index(Var::Filament(part)) }
            }
            (PartKind::Multimeter(p), _) => Self::Meter {
                volt: 1e-6 / p.input_megohm,
                ohm: PoleState { g: 1e-3 / p.ohm_source_kohm, emf: p.ohm_source_v },
                ampere: 1.0 / (p.shunt_mohm * 1e-3 + p.leads_ohm),
            },
            (PartKind::PushLead(p), _) => Self::Pressed(1.0 / (p.mohm * 1e-3)),
            _ => plain(0.0),
        }
    }
}

impl Model {
    /// Number of the (first) two-pole of a part.
    pub(crate) fn pole_index(&self, part: u16) -> Option<usize> {
        self.wiring.poles.iter().position(|p| p.part == part)
    }

    /// Voltage across and current through two-pole number `pole`; nothing for none.
    pub(crate) fn at_pole(&self, pole: Option<usize>, scratch: &Scratch) -> (f64, f64) {
        let Some(i) = pole else { return (0.0, 0.0) };
        let (p, s) = (&self.wiring.poles[i], scratch.poles[i]);
        let v = scratch.solved.v[usize::from(p.node_a)] - scratch.solved.v[usize::from(p.node_b)];
        (v, s.g * (v - s.emf))
    }

    /// Solves the network for a state whose air is in `scratch`; what it was last solved for is not solved
    /// again, which gives the same bits.
    pub(crate) fn solve_wiring(&self, given: Given<'_>, y: &[f64], scratch: &mut Scratch) {
        let Given { inputs, flags } = given;
        let while_on = |on: bool, s: PoleState| PoleState { g: if on { s.g } else { 0.0 }, ..s };
        let plain = |g: f64| PoleState { g, emf: 0.0 };
        let value = |index: Option<usize>| index.map_or(0.0, |i| y[i]);
        scratch.next_poles.clear();
        for (pole, law) in self.wiring.poles.iter().zip(&self.pole_laws) {
            let part = usize::from(pole.part);
            scratch.next_poles.push(match law {
                PoleLaw::Fixed(s) => *s,
                PoleLaw::Contact { g, weld } => plain(if flags[part].closed { *g } else { 0.0 } + weld),
                PoleLaw::Intact(g) => while_on(!flags[part].melted, plain(*g)),
                PoleLaw::Powered(s) => while_on(flags[part].powered, *s),
                PoleLaw::KeyOn(g) => while_on(inputs.key_on, plain(*g)),
                PoleLaw::EngineRuns(s) => while_on(inputs.engine != EngineState::Stopped, *s),
                PoleLaw::Battery { g, charge } => {
                    PoleState { g: *g, emf: Battery::open_circuit_v(value(*charge)) }
                }
                PoleLaw::Motor(pump) => {
                    let at = &self.pumps[*pump];
                    let t = y[at.winding];
                    PoleState {
                        g: 1.0 / at.numbers.resistance_ohm(t),
                        emf: at.numbers.motor_constant(t) * y[at.speed],
                    }
                }
                PoleLaw::Track { numbers, volume, lower } => {
                    let share = numbers.share(volume.map_or(0.0, |k| self.p_atm - scratch.gas[k].p));
                    let of_track = if *lower { share } else { 1.0 - share };
                    plain(1.0 / (numbers.track_ohm * of_track))
                }
                PoleLaw::Lamp { numbers, filament } => {
                    plain(1.0 / numbers.resistance_ohm(value(*filament)).0)
                }
                PoleLaw::Meter { volt, ohm, ampere } => match inputs.hands[part].mode {
                    MeterMode::Off => plain(0.0),
                    MeterMode::Volt => plain(*volt),
                    MeterMode::Ohm => *ohm,
                    MeterMode::Ampere => while_on(!flags[part].melted, plain(*ampere)),
                },
                PoleLaw::Pressed(g) => while_on(inputs.hands[part].pressed && !flags[part].melted, plain(*g)),
            });
        }
        let Scratch { poles, next_poles, .. } = scratch;
        let known = poles.len() == next_poles.len() && poles.iter().zip(&*next_poles).all(|(a, b)| a.is(*b));
        if known && !poles.is_empty() {
            return;
        }
        std::mem::swap(&mut scratch.poles, &mut scratch.next_poles);
        self.wiring.solve(&scratch.poles, &mut scratch.solved);
    }
}
