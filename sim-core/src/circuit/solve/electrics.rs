//! The network's two-poles with the values that what is told and the state give them.

use super::given::Given;
use super::law::AtHand;
use super::model::{Model, Numbers};
use super::network::PoleState;
use super::pole::{PoleAt, PoleLaw};
use super::scratch::Scratch;
use crate::lanes::Real;
use crate::parts::elements::{EngineState, open_circuit_v};

impl Model {
    /// Number of the (first) two-pole of a part.
    pub(crate) fn pole_index(&self, part: u16) -> Option<usize> {
        self.poles.iter().position(|p| p.part == part)
    }

    /// Voltage over a pole in one lane, V; none over one that the part lacks.
    pub(crate) fn volts_at<R: Real>(&self, pole: Option<usize>, scratch: &Scratch<R>, lane: usize) -> f64 {
        pole.map_or(0.0, |i| self.network.across_in(i, &scratch.solved, lane))
    }

    /// Voltage across and current through two-pole number `pole`; nothing for none.
    #[inline(always)]
    pub(crate) fn at_pole<R: Real>(&self, pole: Option<usize>, scratch: &Scratch<R>) -> (R, R) {
        let Some(i) = pole else { return (R::all(0.0), R::all(0.0)) };
        let s = scratch.poles[i];
        let v = self.network.across(i, &scratch.solved);
        (v, s.g * (v - s.emf))
    }

    /// Takes down in one lane what `given` holds fixed from now on; this is the model of the circuit there.
    pub(crate) fn hold<R: Real>(&self, given: Given<'_>, lane: usize, scratch: &mut Scratch<R>) {
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
            for (all, one) in all.iter_mut().zip(follower.held(given)) {
                all.put(lane, one);
            }
        }
        held.lively.resize(self.lively.len() * R::LANES, PoleLaw::Intact(0.0));
        for (k, i) in self.lively.iter().enumerate() {
            held.lively[k * R::LANES + lane] = self.poles[*i].law;
        }
        // The first time nothing is known in any lane.
        let mut changed = scratch.poles.len() != self.poles.len();
        scratch.poles.resize(self.poles.len(), PoleState::default());
        for (PoleAt { part, law, varies }, s) in self.poles.iter().zip(&mut scratch.poles) {
            let now = law.held(usize::from(*part), given);
            if !varies {
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
            self.network.work_out(&scratch.poles, lane, &mut scratch.solved);
        }
    }

    /// Solves the network for a state whose air is in `scratch`; what it was last solved for is not solved
    /// again, which gives the same bits.
    #[inline(always)]
    pub(crate) fn solve_wiring<R: Real>(&self, numbers: &Numbers<R>, y: &[R], scratch: &mut Scratch<R>) {
        let zero = R::all(0.0);
        let value = |index: Option<usize>| index.map_or(zero, |i| y[i]);
        let mut known = scratch.known;
        for (k, i) in self.lively.iter().enumerate() {
            let laws = &scratch.held.lively[k * R::LANES..(k + 1) * R::LANES];
            let mut now = scratch.poles[*i];
            match &self.poles[*i].law {
                PoleLaw::Battery { charge, .. } => now.emf = open_circuit_v(value(*charge)),
                PoleLaw::Motor(rotor) => {
                    let (at, motor) = (&self.rotors[*rotor], &numbers.rotors[*rotor].motor);
                    let t = y[at.winding];
                    now.g = R::all(1.0) / motor.resistance_ohm(t);
                    now.emf = motor.motor_constant(t) * y[at.speed];
                }
                PoleLaw::Characteristic { volume, .. } => {
                    let below = match volume {
                        Some(k) => numbers.p_atm - scratch.gas[*k].p,
                        None => zero,
                    };
                    now.g = R::from_lanes(|lane| arm_s(&laws[lane], below.lane(lane)));
                }
                PoleLaw::Lamp { filament, .. } => {
                    let t = value(*filament);
                    now.g = R::from_lanes(|lane| filament_s(&laws[lane], t.lane(lane)));
                }
                PoleLaw::Steady(_)
                | PoleLaw::Contact { .. }
                | PoleLaw::Intact(_)
                | PoleLaw::Awake(_)
                | PoleLaw::KeyOn { .. }
                | PoleLaw::EngineRuns(_)
                | PoleLaw::Meter(_)
                | PoleLaw::Pressed(_) => {}
            }
            known = known && scratch.poles[*i].is(now);
            scratch.poles[*i] = now;
        }
        scratch.known = true;
        if !known {
            self.network.solve(&scratch.poles, &mut scratch.solved);
        }
    }
}

/// Conductance of the arm that a lane's law is, S; another law has none.
fn arm_s(law: &PoleLaw, below_pa: f64) -> f64 {
    if let PoleLaw::Characteristic { characteristic, lower, .. } = law {
        characteristic.arm_s(*lower, below_pa)
    } else {
        0.0
    }
}

/// Conductance of the filament that a lane's law is, S; another law has none.
fn filament_s(law: &PoleLaw, t_k: f64) -> f64 {
    if let PoleLaw::Lamp { law, .. } = law { 1.0 / law.resistance_ohm(t_k).0 } else { 0.0 }
}
