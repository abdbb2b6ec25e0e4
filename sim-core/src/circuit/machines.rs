//! What moves and warms in the circuit: pistons, rotors, and everything that follows with a lag.

use super::layout::{Chamber, Layout, Var};
use super::model::{Given, Model, Numbers, Scratch, Sink};
use super::tangent::Piston;
use super::wiring::Wiring;
use crate::air::{GAMMA, ZERO_CELSIUS_K};
use crate::assembly::Assembly;
use crate::lanes::Real;
use crate::parts::PartKind;
use crate::parts::controller::Controller;
use crate::parts::electrical::Battery;
use crate::parts::engine::Engine;
use crate::parts::engine_pump::EnginePump;
use crate::parts::instruments::{MeterMode, TestLamp};

/// Speed at which the load has come up fully, so that a pump at rest is not driven backwards, rad/s.
pub(super) const OMEGA_SMALL: f64 = 5.0;
/// Time in which the workshop takes on the air temperature outside, s.
pub(super) const ROOM_TAU_S: f64 = 5_400.0;

impl Model {
    pub(super) fn pistons<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let work_row = self.n + 3;
        for ((b, p), places) in self.boosters.iter().zip(&numbers.boosters).zip(&self.places.pistons) {
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

    pub(super) fn rotors<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        for ((pump, rotor), at) in self.pumps.iter().zip(&numbers.rotors).zip(&self.places.rotors) {
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
            let th = crate::math::tanh(omega / OMEGA_SMALL);
            let th_w = (R::all(1.0) - th * th) / OMEGA_SMALL;
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
            let seen = self.wiring.seen_from(poles, solved, pump.pole);
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

    /// Everything that follows something else with a lag and hardly acts back.
    pub(super) fn followers<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &Scratch<R>,
    ) {
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let followers = self.followers.iter().zip(&self.places.followers);
        for (((row, follower), [by_itself, by_energy]), [a, b]) in followers.zip(&scratch.held.followers) {
            let (row, a, b) = (*row, *a, *b);
            let (rate, slope) = match follower {
                Follower::Surroundings | Follower::Manifold(_) | Follower::Driven(_) => {
                    ((a - y[row]) / b, -one / b)
                }
                Follower::RunTime(..) => {
                    let drives = zero.below(a);
                    let (rate, slope) = Controller::run_rate(b, y[row]);
                    (R::choose(drives, one, rate), R::choose(drives, zero, slope))
                }
                Follower::Pointer { volume: k, .. } => {
                    sink.add(*by_energy, R::all(GAMMA - 1.0) / scratch.volume[*k] / b);
                    ((scratch.gas[*k].p - numbers.p_atm - y[row]) / b, -one / b)
                }
                Follower::Filament { pole, .. } => {
                    let (v, _) = self.at_pole(*pole, scratch);
                    let (mut rate, mut slope) = (zero, zero);
                    for lane in 0..R::LANES {
                        let lamp = TestLamp { rated_w: a.lane(lane), rated_v: b.lane(lane) };
                        let (t, t_room) = (y[row].lane(lane), y[0].lane(lane));
                        let (dt, dt_t) = lamp.heating(v.lane(lane), t, t_room);
                        rate.put(lane, dt);
                        slope.put(lane, dt_t);
                    }
                    (rate, slope)
                }
                Follower::Charge { pole, .. } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    (Battery::charge_rate_per_s(a, y[row], i), zero)
                }
                Follower::FuseHeat { pole, .. } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    let load = R::choose(zero.below(a), i / b, zero);
                    let tau = crate::parts::electrical::FUSE_TAU_S;
                    ((load * load - y[row]) / tau, R::all(-1.0 / tau))
                }
            };
            f[row] += rate;
            sink.add(*by_itself, slope);
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
    /// The numbers of its law while `given` holds, on a day of pressure `p_atm`.
    pub(super) fn held(&self, given: Given<'_>, p_atm: f64) -> [f64; 2] {
        let Given { inputs, flags } = given;
        match self {
            Self::Surroundings => [inputs.surroundings_c + ZERO_CELSIUS_K, ROOM_TAU_S],
            Self::Manifold(e) => [e.target_pa(inputs.engine, p_atm), e.lag_s],
            Self::Driven(p) => [p.target_rad_per_s(inputs.engine), p.lag_s],
            Self::RunTime(part, c) => [f64::from(u8::from(flags[*part].closed)), c.rest_tau_s],
            Self::Pointer { lag_s, .. } => [0.0, *lag_s],
            Self::Filament { lamp, .. } => [lamp.rated_w, lamp.rated_v],
            Self::Charge { battery, .. } => [battery.capacity_ah, 0.0],
            Self::FuseHeat { rated_a, part, meter, .. } => {
                let passes = !meter || inputs.hands[*part].mode == MeterMode::Ampere;
                [f64::from(u8::from(passes)), *rated_a]
            }
        }
    }

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

/// Rated current of the fuse in a part, A.
pub(super) fn fuse_rating_a(kind: &PartKind) -> f64 {
    match kind {
        PartKind::Fuse(p) => p.rating_a,
        PartKind::Multimeter(p) => p.fuse_a,
        PartKind::PushLead(p) => p.fuse_a,
        _ => f64::INFINITY,
    }
}
