//! The network's two-poles with the values the state gives them.

use super::air_net::AtHand;
use super::layout::{Chamber, Layout, Var};
use super::model::{Given, Model, Numbers, PumpAt, Scratch};
use super::wiring::{Pole, PoleKind, PoleState};
use crate::assembly::Assembly;
use crate::lanes::Real;
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

impl PoleLaw {
    /// Whether its worth follows the state while nothing is switched.
    pub(super) fn is_lively(&self) -> bool {
        matches!(self, Self::Battery { .. } | Self::Motor(_) | Self::Track { .. } | Self::Lamp { .. })
    }

    /// What it is worth while `given` holds; of a lively one only what does not follow the state.
    fn held(&self, part: usize, given: Given<'_>) -> PoleState {
        let Given { inputs, flags } = given;
        let while_on = |on: bool, s: PoleState| PoleState { g: if on { s.g } else { 0.0 }, ..s };
        let plain = |g: f64| PoleState { g, emf: 0.0 };
        match self {
            Self::Fixed(s) => *s,
            Self::Contact { g, weld } => plain(if flags[part].closed { *g } else { 0.0 } + weld),
            Self::Intact(g) => while_on(!flags[part].melted, plain(*g)),
            Self::Powered(s) => while_on(flags[part].powered, *s),
            Self::KeyOn(g) => while_on(inputs.key_on, plain(*g)),
            Self::EngineRuns(s) => while_on(inputs.engine != EngineState::Stopped, *s),
            Self::Battery { g, .. } => plain(*g),
            Self::Motor(_) | Self::Track { .. } | Self::Lamp { .. } => PoleState::default(),
            Self::Meter { volt, ohm, ampere } => match inputs.hands[part].mode {
                MeterMode::Off => plain(0.0),
                MeterMode::Volt => plain(*volt),
                MeterMode::Ohm => *ohm,
                MeterMode::Ampere => while_on(!flags[part].melted, plain(*ampere)),
            },
            Self::Pressed(g) => while_on(inputs.hands[part].pressed && !flags[part].melted, plain(*g)),
        }
    }
}

impl Model {
    /// Number of the (first) two-pole of a part.
    pub(crate) fn pole_index(&self, part: u16) -> Option<usize> {
        self.wiring.poles.iter().position(|p| p.part == part)
    }

    /// Voltage across and current through two-pole number `pole`; nothing for none.
    #[inline]
    pub(crate) fn at_pole<R: Real>(&self, pole: Option<usize>, scratch: &Scratch<R>) -> (R, R) {
        let Some(i) = pole else { return (R::all(0.0), R::all(0.0)) };
        let (p, s) = (&self.wiring.poles[i], scratch.poles[i]);
        let v = scratch.solved.v[usize::from(p.node_a)] - scratch.solved.v[usize::from(p.node_b)];
        (v, s.g * (v - s.emf))
    }

    /// Takes down in one lane what `given` holds fixed from now on; this is the model of the circuit there.
    pub(super) fn hold<R: Real>(&self, given: Given<'_>, lane: usize, scratch: &mut Scratch<R>) {
        let Given { inputs, .. } = given;
        let zero = R::all(0.0);
        let held = &mut scratch.held;
        held.pedal_n.put(lane, inputs.pedal_n);
        held.engine_runs.put(lane, f64::from(u8::from(inputs.engine != EngineState::Stopped)));
        held.hands.resize(self.in_hands.len(), AtHand::default());
        for (at, part) in held.hands.iter_mut().zip(&self.in_hands) {
            let hand = inputs.hands[usize::from(*part)];
            at.strokes_per_s.put(lane, hand.strokes_per_s);
            at.pressed.put(lane, f64::from(u8::from(hand.pressed)));
        }
        held.followers.resize(self.followers.len(), [zero; 2]);
        for (all, (_, follower)) in held.followers.iter_mut().zip(&self.followers) {
            for (all, one) in all.iter_mut().zip(follower.held(given, self.numbers.p_atm)) {
                all.put(lane, one);
            }
        }
        held.lively.resize(self.lively.len() * R::LANES, PoleLaw::Intact(0.0));
        for (k, i) in self.lively.iter().enumerate() {
            held.lively[k * R::LANES + lane] = self.pole_laws[*i];
        }
        // The first time nothing is known in any lane.
        let mut changed = scratch.poles.len() != self.pole_laws.len();
        scratch.poles.resize(self.pole_laws.len(), PoleState::default());
        for ((pole, law), s) in self.wiring.poles.iter().zip(&self.pole_laws).zip(&mut scratch.poles) {
            let now = law.held(usize::from(pole.part), given);
            if !pole.kind.varies() {
                changed |= s.g.lane(lane).to_bits() != now.g.to_bits();
                s.g.put(lane, now.g);
            }
            if !law.is_lively() {
                scratch.known &= s.emf.lane(lane).to_bits() == now.emf.to_bits();
                s.emf.put(lane, now.emf);
            }
        }
        if changed {
            scratch.known = false;
            self.wiring.work_out(&scratch.poles, lane, &mut scratch.solved);
        }
    }

    /// Solves the network for a state whose air is in `scratch`; what it was last solved for is not solved
    /// again, which gives the same bits.
    pub(crate) fn solve_wiring<R: Real>(&self, numbers: &Numbers<R>, y: &[R], scratch: &mut Scratch<R>) {
        let zero = R::all(0.0);
        let value = |index: Option<usize>| index.map_or(zero, |i| y[i]);
        let mut known = scratch.known;
        for (k, i) in self.lively.iter().enumerate() {
            let laws = &scratch.held.lively[k * R::LANES..(k + 1) * R::LANES];
            let mut now = scratch.poles[*i];
            match &self.pole_laws[*i] {
                PoleLaw::Battery { charge, .. } => now.emf = Battery::open_circuit_v(value(*charge)),
                PoleLaw::Motor(pump) => {
                    let (at, motor) = (&self.pumps[*pump], &numbers.rotors[*pump].motor);
                    let t = y[at.winding];
                    now.g = R::all(1.0) / motor.resistance_ohm(t);
                    now.emf = motor.motor_constant(t) * y[at.speed];
                }
                PoleLaw::Track { volume, .. } => {
                    let below = volume.map_or(zero, |k| numbers.p_atm - scratch.gas[k].p);
                    now.g = R::from_lanes(|lane| match &laws[lane] {
                        PoleLaw::Track { numbers, lower, .. } => {
                            let share = numbers.share(below.lane(lane));
                            let of_track = if *lower { share } else { 1.0 - share };
                            1.0 / (numbers.track_ohm * of_track)
                        }
                        _ => 0.0,
                    });
                }
                PoleLaw::Lamp { filament, .. } => {
                    let t = value(*filament);
                    now.g = R::from_lanes(|lane| match &laws[lane] {
                        PoleLaw::Lamp { numbers, .. } => 1.0 / numbers.resistance_ohm(t.lane(lane)).0,
                        _ => 0.0,
                    });
                }
                _ => {}
            }
            known = known && scratch.poles[*i].is(now);
            scratch.poles[*i] = now;
        }
        scratch.known = true;
        if !known {
            self.wiring.solve(&scratch.poles, &mut scratch.solved);
        }
    }
}
