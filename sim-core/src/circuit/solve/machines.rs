//! What moves and warms by forces and torques: pistons and rotors.

use super::model::{Model, Numbers};
use super::scratch::Scratch;
use super::sink::Sink;
use super::tangent::Piston;
use crate::air::GAMMA;
use crate::lanes::Real;

/// Speed at which the load has come up fully, so that a pump at rest is not driven backwards, rad/s.
pub(crate) const OMEGA_LOAD_SMALL: f64 = 5.0;

impl Model {
    #[inline(always)]
    pub(super) fn pistons<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let work_row = self.n + 3;
        for ((b, p), places) in self.pistons.iter().zip(&numbers.pistons).zip(&self.places.pistons) {
            let x = y[b.travel];
            let (area, c) = (p.area_m2, p.damping);
            let (pf, pr) = (scratch.gas[b.front].p, scratch.gas[b.rear].p);
            let (vf, vr) = (scratch.volume[b.front], scratch.volume[b.rear]);
            let (spring, d_spring) = p.spring_force(x);
            let (brake, d_brake) = p.brake_force(x);
            let (end, d_end) = p.end_stop(x);
            let force = scratch.held.pedal_n * p.pedal_ratio + area * (pr - pf) - spring - brake - end;
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
            let one = R::all(GAMMA - 1.0);
            let (pf_u, pr_u) = (one / vf, one / vr);
            let (pf_x, pr_x) = (pf * area / vf, -pr * area / vr);
            let zero = R::all(0.0);
            let slopes = [
                (uf, -area / c * pf_u * gain, pf_u, zero),
                (ur, area / c * pr_u * gain, zero, pr_u),
                (b.travel, (area * (pr_x - pf_x) - d_spring - d_brake - d_end) / c * gain, pf_x, pr_x),
            ];
            if scratch.tangent.kept {
                scratch.tangent.pistons.push(Piston { speed, p: [pf, pr], slopes });
            }
            for ((_, d_speed, d_pf, d_pr), [travel, front, rear, work]) in slopes.into_iter().zip(*places) {
                sink.add(travel, d_speed);
                sink.add(front, area * (d_pf * speed + pf * d_speed));
                sink.add(rear, -area * (d_pr * speed + pr * d_speed));
                sink.add(work, area * ((d_pr - d_pf) * speed + (pr - pf) * d_speed));
            }
        }
    }

    #[inline(always)]
    pub(super) fn rotors<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        for ((pump, rotor), at) in self.rotors.iter().zip(&numbers.rotors).zip(&self.places.rotors) {
            let p = &rotor.motor;
            let omega = y[pump.speed];
            let (tw, tc) = (y[pump.winding], y[pump.case]);
            let s = scratch.poles[pump.pole];
            let (_, i) = self.at_pole(Some(pump.pole), scratch);
            let k = p.motor_constant(tw);
            let gas = scratch.gas[pump.inlet];
            let compression_p = rotor.compression_p;
            let compression = rotor.compression + compression_p * gas.p;
            let (friction, friction_w) = p.friction_torque(omega);
            let th = crate::math::tanh(omega / OMEGA_LOAD_SMALL);
            let th_w = (R::all(1.0) - th * th) / OMEGA_LOAD_SMALL;
            let inertia = p.inertia;
            f[pump.speed] += (k * i - compression * th - friction) / inertia;
            let conducts = s.g.larger(R::all(1e-12));
            let copper = i * i / conducts;
            let half = compression * 0.5;
            let shaft = friction * omega + half * th * omega;
            let across = p.winding_w_per_k * (tw - tc);
            f[pump.winding] += (copper - across) / p.winding_j_per_k;
            f[pump.case] += (shaft + across - p.case_w_per_k * (tc - y[0])) / p.case_j_per_k;
            if !S::WANTED {
                continue;
            }
            // The network answers a change of the motor's own voltage k ω through its inner resistance.
            let Scratch { solved, poles, .. } = scratch;
            let seen = self.network.seen_from(poles, solved, pump.pole);
            let i_w = -s.g * k * (R::all(1.0) - s.g * seen);
            let iu = self.mass_at[pump.inlet] + 1;
            let p_u = gas.p / y[iu];
            sink.add(at.speed_by_speed, (k * i_w - compression * th_w - friction_w) / inertia);
            sink.add(at.speed_by_energy, -compression_p * p_u * th / inertia);
            sink.add(at.winding_by_speed, i * 2.0 * i_w / conducts / p.winding_j_per_k);
            sink.add(at.winding_by_winding, -p.winding_w_per_k / p.winding_j_per_k);
            sink.add(at.winding_by_case, p.winding_w_per_k / p.winding_j_per_k);
            let shaft_w = friction + friction_w * omega + half * (th + th_w * omega);
            sink.add(at.case_by_speed, shaft_w / p.case_j_per_k);
            sink.add(at.case_by_winding, p.winding_w_per_k / p.case_j_per_k);
            sink.add(at.case_by_case, -(p.winding_w_per_k + p.case_w_per_k) / p.case_j_per_k);
            sink.add(at.case_by_room, p.case_w_per_k / p.case_j_per_k);
        }
    }
}
