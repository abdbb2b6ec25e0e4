//! What follows something else with a lag: its rate and its slope.

use super::follower::Follower;
use super::model::{Model, Numbers};
use super::scratch::Scratch;
use super::sink::Sink;
use crate::air::GAMMA;
use crate::lanes::Real;
use crate::parts::elements::{Control, FUSE_TAU_S, Filament, charge_rate_per_s};

impl Model {
    /// Everything that follows something else with a lag and hardly acts back.
    #[inline(always)]
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
                Follower::Surroundings | Follower::Engine { .. } => ((a - y[row]) / b, -one / b),
                Follower::RunTime { .. } => {
                    let drives = zero.below(a);
                    let (rate, slope) = Control::run_rate(b, y[row]);
                    (R::choose(drives, one, rate), R::choose(drives, zero, slope))
                }
                Follower::Pressure { volume: k, .. } => {
                    sink.add(*by_energy, R::all(GAMMA - 1.0) / scratch.volume[*k] / b);
                    ((scratch.gas[*k].p - numbers.p_atm - y[row]) / b, -one / b)
                }
                Follower::Filament { pole, .. } => {
                    let (v, _) = self.at_pole(*pole, scratch);
                    let (mut rate, mut slope) = (zero, zero);
                    for lane in 0..R::LANES {
                        let lamp = Filament { rated_w: a.lane(lane), rated_v: b.lane(lane) };
                        let (t, t_room) = (y[row].lane(lane), y[0].lane(lane));
                        let (dt, dt_t) = lamp.heating(v.lane(lane), t, t_room);
                        rate.put(lane, dt);
                        slope.put(lane, dt_t);
                    }
                    (rate, slope)
                }
                Follower::Charge { pole, .. } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    (charge_rate_per_s(a, y[row], i), zero)
                }
                Follower::FuseHeat { pole, .. } => {
                    let (_, i) = self.at_pole(*pole, scratch);
                    let load = R::choose(zero.below(a), i / b, zero);
                    let tau = FUSE_TAU_S;
                    ((load * load - y[row]) / tau, R::all(-1.0 / tau))
                }
            };
            f[row] += rate;
            sink.add(*by_itself, slope);
        }
    }
}
