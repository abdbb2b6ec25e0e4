//! What moves and warms in the circuit: pistons, rotors, and everything that follows with a lag.

use super::Inputs;
use super::layout::{Chamber, Layout, Var};
use super::model::{Given, Model, Scratch, Sink};
use super::tangent::Piston;
use super::wiring::Wiring;
use crate::air::{GAMMA, ZERO_CELSIUS_K};
use crate::assembly::Assembly;
use crate::parts::PartKind;
use crate::parts::booster::Booster;
use crate::parts::controller::Controller;
use crate::parts::electrical::Battery;
use crate::parts::engine::Engine;
use crate::parts::engine_pump::EnginePump;
use crate::parts::instruments::{MeterMode, TestLamp};

/// Speed at which the load has come up fully, so that a pump at rest is not driven backwards, rad/s.
pub(super) const OMEGA_SMALL: f64 = 5.0;
/// Time in which the workshop takes on the air temperature outside, s.
pub(super) const ROOM_TAU_S: f64 = 5_400.0;
/// Stiffness of the wall at the end of the piston's way, N/m; the rest stop has the same.
pub(super) const STOP_N_PER_M: f64 = crate::parts::booster::STOP_N_PER_M;

impl Model {
    pub(super) fn pistons<S: Sink>(
        &self,
        inputs: &Inputs,
        y: &[f64],
        f: &mut [f64],
        sink: &mut S,
        scratch: &mut Scratch,
    ) {
        let work_row = self.n + 3;
        for b in &self.boosters {
            let p = &b.numbers;
            let x = y[b.travel];
            let (area, c) = (p.area_m2(), p.damping_kns_per_m * 1e3);
            let (pf, pr) = (scratch.gas[b.front].p, scratch.gas[b.rear].p);
            let (vf, vr) = (scratch.volume[b.front], scratch.volume[b.rear]);
            let (spring, d_spring) = p.spring_force(x);
            let (brake, d_brake) = p.brake_force(x);
            let (end, d_end) = end_stop(p, x);
            let force = inputs.pedal_n * p.pedal_ratio + area * (pr - pf) - spring - brake - end;
            let (left, gain) = p.unstuck(force);
            let speed = left / c;
            let (uf, ur) = (self.mass_at[b.front] + 1, self.mass_at[b.rear] + 1);
            f[b.travel] += speed;
            f[uf] += pf * area * speed;
            f[ur] -= pr * area * speed;
            f[work_row] += (pr - pf) * area * speed;
            if !S::WANTED {
                continue;
            }
            let (pf_u, pr_u) = ((GAMMA - 1.0) / vf, (GAMMA - 1.0) / vr);
            let (pf_x, pr_x) = (pf * area / vf, -pr * area / vr);
            let slopes = [
                (uf, -area / c * pf_u * gain, pf_u, 0.0),
                (ur, area / c * pr_u * gain, 0.0, pr_u),
                (b.travel, (area * (pr_x - pf_x) - d_spring - d_brake - d_end) / c * gain, pf_x, pr_x),
            ];
            scratch.tangent.pistons.push(Piston { speed, p: [pf, pr], slopes });
            for (column, d_speed, d_pf, d_pr) in slopes {
                sink.add(b.travel, column, d_speed);
                sink.add(uf, column, area * (d_pf * speed + pf * d_speed));
                sink.add(ur, column, -area * (d_pr * speed + pr * d_speed));
                sink.add(work_row, column, area * ((d_pr - d_pf) * speed + (pr - pf) * d_speed));
            }
        }
    }

    pub(super) fn rotors<S: Sink>(&self, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &mut Scratch) {
        for pump in &self.pumps {
            let p = &pump.numbers;
            let omega = y[pump.speed];
            let (tw, tc) = (y[pump.winding], y[pump.case]);
            let pole = &self.wiring.poles[pump.pole];
            let s = scratch.poles[pump.pole];
            let v = scratch.solved.v[pole.node_a as usize] - scratch.solved.v[pole.node_b as usize];
            let i = s.g * (v - s.emf);
            let k = p.motor_constant(tw);
            let gas = scratch.gas[pump.inlet];
            let compression_p = pump.compression.1;
            let compression = pump.compression.0 + compression_p * gas.p;
            let (friction, friction_w) = p.friction_torque(omega);
            let th = crate::math::tanh(omega / OMEGA_SMALL);
            let th_w = (1.0 - th * th) / OMEGA_SMALL;
            let inertia = p.inertia_kgcm2 * 1e-4;
            f[pump.speed] += (k * i - compression * th - friction) / inertia;
            let copper = i * i / s.g.max(1e-12);
            let shaft = friction * omega + 0.5 * compression * th * omega;
            let across = p.winding_w_per_k * (tw - tc);
            f[pump.winding] += (copper - across) / p.winding_j_per_k;
            f[pump.case] += (shaft + across - p.case_w_per_k * (tc - y[0])) / p.case_j_per_k;
            if !S::WANTED {
                continue;
            }
            // The network answers a change of the motor's own voltage k ω through its inner resistance.
            let Scratch { solved, poles, .. } = scratch;
            let seen = self.wiring.seen_from(poles, solved, pump.pole);
            let i_w = -s.g * k * (1.0 - s.g * seen);
            let iu = self.mass_at[pump.inlet] + 1;
            let p_u = gas.p / y[iu];
            sink.add(pump.speed, pump.speed, (k * i_w - compression * th_w - friction_w) / inertia);
            sink.add(pump.speed, iu, -compression_p * p_u * th / inertia);
            sink.add(pump.winding, pump.speed, 2.0 * i * i_w / s.g.max(1e-12) / p.winding_j_per_k);
            sink.add(pump.winding, pump.winding, -p.winding_w_per_k / p.winding_j_per_k);
            sink.add(pump.winding, pump.case, p.winding_w_per_k / p.winding_j_per_k);
            let shaft_w = friction + friction_w * omega + 0.5 * compression * (th + th_w * omega);
            sink.add(pump.case, pump.speed, shaft_w / p.case_j_per_k);
            sink.add(pump.case, pump.winding, p.winding_w_per_k / p.case_j_per_k);
            sink.add(pump.case, pump.case, -(p.winding_w_per_k + p.case_w_per_k) / p.case_j_per_k);
            sink.add(pump.case, 0, p.case_w_per_k / p.case_j_per_k);
        }
    }

    /// Everything that follows something else with a lag and hardly acts back.
    pub(super) fn followers<S: Sink>(
        &self,
        given: Given<'_>,
        y: &[f64],
        f: &mut [f64],
        sink: &mut S,
        scratch: &Scratch,
    ) {
        let Given { inputs, flags } = given;
        for (row, follower) in &self.followers {
            let row = *row;
            match follower {
                Follower::Surroundings => {
                    f[row] += (inputs.surroundings_c + ZERO_CELSIUS_K - y[row]) / ROOM_TAU_S;
                    sink.add(row, row, -1.0 / ROOM_TAU_S);
                }
                Follower::Manifold(e) => {
                    f[row] += (e.target_pa(inputs.engine, self.p_atm) - y[row]) / e.lag_s;
                    sink.add(row, row, -1.0 / e.lag_s);
                }
                Follower::RunTime(part, c) => {
                    let (rate, slope) = c.run_rate(flags[*part].closed, y[row]);
                    f[row] += rate;
                    sink.add(row, row, slope);
                }
                Follower::Driven(p) => {
                    f[row] += (p.target_rad_per_s(inputs.engine) - y[row]) / p.lag_s;
                    sink.add(row, row, -1.0 / p.lag_s);
                }
                Follower::Pointer { lag_s, volume } => {
                    let k = *volume;
                    f[row] += (scratch.gas[k].p - self.p_atm - y[row]) / lag_s;
                    sink.add(row, row, -1.0 / lag_s);
                    sink.add(row, self.mass_at[k] + 1, (GAMMA - 1.0) / scratch.volume[k] / lag_s);
                }
                Follower::Filament { lamp, pole } => {
                    let (v, _) = self.at_pole(*pole, scratch);
                    let (r, r_t) = lamp.resistance_ohm(y[row]);
                    let (loss, loss_t) = lamp.radiated_w(y[row], y[0]);
                    let c = lamp.filament_j_per_k();
                    f[row] += (v * v / r - loss) / c;
                    sink.add(row, row, (-v * v / (r * r) * r_t - loss_t) / c);
                }
                Follower::Charge { battery, pole } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    f[row] += battery.charge_rate_per_s(y[row], i);
                    sink.add(row, row, 0.0);
                }
                Follower::FuseHeat { rated_a, pole, part, meter } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    let passes = !meter || inputs.hands[*part].mode == MeterMode::Ampere;
                    let load = if passes { i / rated_a } else { 0.0 };
                    let tau = crate::parts::electrical::FUSE_TAU_S;
                    f[row] += (load * load - y[row]) / tau;
                    sink.add(row, row, -1.0 / tau);
                }
            }
        }
    }
}

/// What follows something else with a lag and hardly acts back, its numbers looked up once.
#[derive(Clone, Copy, Debug)]
pub(super) enum Follower {
    /// The workshop's temperature.
    Surroundings,
    /// Manifold pressure of an engine.
    Manifold(Engine),
    /// The running time that the controller of this part reckons with.
    RunTime(usize, Controller),
    /// Speed of an engine-driven pump.
    Driven(EnginePump),
    /// Pointer of a gauge over the air of a volume.
    Pointer { lag_s: f64, volume: usize },
    /// Filament of a lamp.
    Filament { lamp: TestLamp, pole: Option<usize> },
    /// Charge of a battery.
    Charge { battery: Battery, pole: Option<usize> },
    /// Heat of a fuse; that of a meter carries current in one mode only.
    FuseHeat { rated_a: f64, pole: Option<usize>, part: usize, meter: bool },
}

impl Follower {
    /// All of an assembly, each with its row.
    pub(super) fn all(assembly: &Assembly, layout: &Layout, wiring: &Wiring) -> Vec<(usize, Self)> {
        let of = |var: &Var| {
            let kind = |part: u16| &assembly.parts[usize::from(part)].kind;
            let pole = |part: u16| wiring.poles.iter().position(|p| p.part == part);
            Some(match *var {
                Var::Surroundings => Self::Surroundings,
                Var::Manifold(part) => match kind(part) {
                    PartKind::Engine(e) => Self::Manifold(*e),
                    _ => return None,
                },
                Var::RunTime(part) => match kind(part) {
                    PartKind::Controller(c) => Self::RunTime(usize::from(part), *c),
                    _ => return None,
                },
                // An electric pump's speed is in `rotors`.
                Var::Speed(part) => match kind(part) {
                    PartKind::EnginePump(p) => Self::Driven(*p),
                    _ => return None,
                },
                Var::Pointer(part) => {
                    let lag_s = match kind(part) {
                        PartKind::VacuumGauge(g) => g.lag_s,
                        PartKind::HandPump(h) => h.lag_s,
                        _ => return None,
                    };
                    Self::Pointer { lag_s, volume: layout.volume_of(part, Chamber::Body)? }
                }
                Var::Filament(part) => match kind(part) {
                    PartKind::TestLamp(lamp) => Self::Filament { lamp: *lamp, pole: pole(part) },
                    _ => return None,
                },
                Var::Charge(part) => match kind(part) {
                    PartKind::Battery(b) => Self::Charge { battery: *b, pole: pole(part) },
                    _ => return None,
                },
                Var::FuseHeat(part) => Self::FuseHeat {
                    rated_a: fuse_rating_a(kind(part)),
                    pole: pole(part),
                    part: usize::from(part),
                    meter: matches!(kind(part), PartKind::Multimeter(_)),
                },
                Var::Winding(_) | Var::Case(_) | Var::Mass(_) | Var::Energy(_) | Var::Travel(_) => {
                    return None;
                }
            })
        };
        layout.vars.iter().enumerate().filter_map(|(row, var)| Some((row, of(var)?))).collect()
    }
}

/// Force of the wall the piston meets when the front chamber is all but used up, N, and its slope.
fn end_stop(p: &Booster, x: f64) -> (f64, f64) {
    let over = x - 0.92 * p.front_l * 1e-3 / p.area_m2();
    if 0.0 < over { (STOP_N_PER_M * over, STOP_N_PER_M) } else { (0.0, 0.0) }
}

/// Rated current of the fuse in a part, A.
pub(super) fn fuse_rating_a(kind: &PartKind) -> f64 {
    match kind {
        PartKind::Fuse(p) => p.rating_a,
        PartKind::Multimeter(p) => p.fuse_a,
        PartKind::PushLead(p) => p.fuse_a,
        _ => f64::INFINITY,
    }
}
