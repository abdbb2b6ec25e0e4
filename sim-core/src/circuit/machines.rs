//! What moves and warms in the circuit: pistons, rotors, and everything that follows with a lag.

use super::Inputs;
use super::layout::{Chamber, Var};
use super::model::{Given, Model, Scratch, Sink};
use crate::air::{GAMMA, ZERO_CELSIUS_K};
use crate::parts::PartKind;
use crate::parts::booster::Booster;
use crate::parts::instruments::MeterMode;

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
        scratch: &Scratch,
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
            let seen = self.wiring.seen_from(&scratch.solved, pole.node_a, pole.node_b, &mut scratch.seen);
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
        let Given { assembly, inputs, .. } = given;
        for (row, var) in self.layout.vars.iter().enumerate() {
            match *var {
                Var::Surroundings => {
                    f[row] += (inputs.surroundings_c + ZERO_CELSIUS_K - y[row]) / ROOM_TAU_S;
                    sink.add(row, row, -1.0 / ROOM_TAU_S);
                }
                Var::Manifold(part) => {
                    let PartKind::Engine(e) = &assembly.parts[part as usize].kind else { continue };
                    f[row] += (e.target_pa(inputs.engine, self.p_atm) - y[row]) / e.lag_s;
                    sink.add(row, row, -1.0 / e.lag_s);
                }
                Var::RunTime(part) => {
                    let PartKind::Controller(c) = &assembly.parts[part as usize].kind else { continue };
                    let (rate, slope) = c.run_rate(given.flags[part as usize].closed, y[row]);
                    f[row] += rate;
                    sink.add(row, row, slope);
                }
                Var::Speed(part) => {
                    // An electric pump's speed is in `rotors`.
                    let PartKind::EnginePump(p) = &assembly.parts[part as usize].kind else { continue };
                    f[row] += (p.target_rad_per_s(inputs.engine) - y[row]) / p.lag_s;
                    sink.add(row, row, -1.0 / p.lag_s);
                }
                Var::Pointer(part) => {
                    let lag = match &assembly.parts[part as usize].kind {
                        PartKind::VacuumGauge(g) => g.lag_s,
                        PartKind::HandPump(h) => h.lag_s,
                        _ => continue,
                    };
                    let Some(k) = self.layout.volume_of(part, Chamber::Body) else { continue };
                    f[row] += (scratch.gas[k].p - self.p_atm - y[row]) / lag;
                    sink.add(row, row, -1.0 / lag);
                    sink.add(row, self.mass_at[k] + 1, (GAMMA - 1.0) / scratch.volume[k] / lag);
                }
                Var::Filament(part) => {
                    let PartKind::TestLamp(lamp) = &assembly.parts[part as usize].kind else { continue };
                    let (v, _) = self.pole_of(part, scratch);
                    let (r, r_t) = lamp.resistance_ohm(y[row]);
                    let (loss, loss_t) = lamp.radiated_w(y[row], y[0]);
                    let c = lamp.filament_j_per_k();
                    f[row] += (v * v / r - loss) / c;
                    sink.add(row, row, (-v * v / (r * r) * r_t - loss_t) / c);
                }
                Var::Charge(part) => {
                    let PartKind::Battery(b) = &assembly.parts[part as usize].kind else { continue };
                    let (_, i) = self.pole_of(part, scratch);
                    f[row] += b.charge_rate_per_s(y[row], i);
                    sink.add(row, row, 0.0);
                }
                Var::FuseHeat(part) => {
                    let rated = fuse_rating_a(&assembly.parts[part as usize].kind);
                    let (_, i) = self.pole_of(part, scratch);
                    let passes = match &assembly.parts[part as usize].kind {
                        PartKind::Multimeter(_) => inputs.hands[part as usize].mode == MeterMode::Ampere,
                        _ => true,
                    };
                    let load = if passes { i / rated } else { 0.0 };
                    let tau = crate::parts::electrical::FUSE_TAU_S;
                    f[row] += (load * load - y[row]) / tau;
                    sink.add(row, row, -1.0 / tau);
                }
                Var::Winding(_) | Var::Case(_) => {}
                Var::Mass(_) | Var::Energy(_) | Var::Travel(_) => {}
            }
        }
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
