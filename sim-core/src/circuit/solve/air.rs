//! Air: what the bodies hold, what flows through the flow paths, what the walls give.

use super::flow_path::{FlowPathPlaces, From};
use super::law::{Around, AtHand, Own, flow};
use super::model::{Model, Numbers};
use super::scratch::Scratch;
use super::sink::Sink;
use super::soft;
use super::tangent::{FlowPath, Follows};
use crate::air::{CP, CV, GAMMA};
use crate::flow::Gas;
use crate::lanes::Real;

impl Model {
    /// Pressure and temperature of all air.
    #[inline(always)]
    pub(crate) fn gases<R: Real>(&self, numbers: &Numbers<R>, y: &[R], scratch: &mut Scratch<R>) {
        scratch.gas.clear();
        scratch.volume.clear();
        for k in 0..self.mass_at.len() {
            let m3 = self.volume_m3(numbers, k, y);
            scratch.volume.push(m3);
            scratch.gas.push(self.gas_of(k, m3, y));
        }
        scratch.gas.push(Gas { p: numbers.p_atm, t: y[0] });
        scratch.gas.extend(self.manifolds.iter().map(|i| Gas { p: y[*i], t: y[0] }));
    }

    /// Pressure and temperature of body `k` of `m3` cubic metres.
    #[inline(always)]
    pub(crate) fn gas_of<R: Real>(&self, k: usize, m3: R, y: &[R]) -> Gas<R> {
        let (m, u) = (y[self.mass_at[k]], y[self.mass_at[k] + 1]);
        Gas { p: u * (GAMMA - 1.0) / m3, t: u / (m * CV) }
    }

    /// The volume of body `k` in state `y`, m³.
    #[inline(always)]
    pub(crate) fn volume_m3<R: Real>(&self, numbers: &Numbers<R>, k: usize, y: &[R]) -> R {
        let body = &numbers.bodies[k];
        match self.travel_at[k] {
            Some(i) => body.at_rest_m3 + body.per_travel_m2 * y[i],
            None => body.at_rest_m3,
        }
    }

    #[inline(always)]
    pub(super) fn edges<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let zero = R::all(0.0);
        let around = Around {
            engine_runs: zero.below(scratch.held.engine_runs),
            pedal_n: scratch.held.pedal_n,
            p_atm: numbers.p_atm,
        };
        scratch.edge_m.clear();
        for (law, path) in numbers.laws.iter().zip(&self.flow_paths) {
            let [end_a, end_b] = &path.ends;
            let [a, b] = path.ends.map(|end| scratch.gas[usize::from(end.gas)]);
            let (flow, slope) = match path.soft {
                Some(i) => (soft::flow(law, &numbers.soft[usize::from(i)], a, b, numbers.p_atm), zero),
                None => {
                    let own = Own {
                        state: path.state.map_or(zero, |(i, _)| y[usize::from(i)]),
                        hand: match path.hand {
                            Some(i) => scratch.held.hands[usize::from(i)],
                            None => AtHand { strokes_per_s: zero, pressed: zero },
                        },
                        piston: path.piston.map(|i| &numbers.pistons[usize::from(i)]),
                    };
                    flow(law, a, b, &around, own)
                }
            };
            scratch.edge_m.push(flow.m);
            let up_is_a = zero.at_most(flow.m);
            let t_up = R::choose(up_is_a, a.t, b.t);
            let h_up = t_up * CP;
            let h = h_up * flow.m;
            f[usize::from(end_a.mass)] -= flow.m;
            f[usize::from(end_b.mass)] += flow.m;
            f[usize::from(end_a.enthalpy)] -= h;
            f[usize::from(end_b.enthalpy)] += h;
            if !S::WANTED {
                continue;
            }
            if scratch.tangent.kept {
                scratch.tangent.flow_paths.push(FlowPath { flow, slope, t_up, up_is_a });
            }
            for (end, dp, dt, is_up) in
                [(end_a, flow.dpa, flow.dta, up_is_a), (end_b, flow.dpb, flow.dtb, !up_is_a)]
            {
                let (h_p, h_t) = (h_up * dp, (t_up * dt + R::choose(is_up, flow.m, zero)) * CP);
                match end.from {
                    From::Volume { k, travel, by_mass, by_energy, .. } => {
                        let Follows { p_u, p_x, t_m, t_u } = scratch.tangent.follows[usize::from(k)];
                        both(sink, by_mass, dt * t_m, h_t * t_m);
                        both(sink, by_energy, dp * p_u + dt * t_u, h_p * p_u + h_t * t_u);
                        if let Some((_, by_travel)) = travel {
                            both(sink, by_travel, dp * p_x, h_p * p_x);
                        }
                    }
                    From::Room(by_room) => both(sink, by_room, dt, h_t),
                    From::Manifold { by_room, by_pressure, .. } => {
                        both(sink, by_room, dt, h_t);
                        both(sink, by_pressure, dp, h_p);
                    }
                }
            }
            if let Some((_, by_state)) = path.state {
                both(sink, by_state, slope, h_up * slope);
            }
        }
    }

    #[inline(always)]
    pub(super) fn walls<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let heat_row = self.n + 2;
        for (k, (body, &im)) in numbers.bodies.iter().zip(&self.mass_at).enumerate() {
            let t = scratch.gas[k].t;
            let q = body.h_a * (y[0] - t);
            f[im + 1] += q;
            f[heat_row] += q;
            if S::WANTED {
                let lost = body.h_a * t;
                for [by_room, by_mass, by_energy] in self.places.walls[k] {
                    sink.add(by_room, body.h_a);
                    sink.add(by_mass, lost / y[im]);
                    sink.add(by_energy, -lost / y[im + 1]);
                }
            }
        }
    }
}

/// What flows out of side a flows into side b, so do its slopes.
#[inline(always)]
fn both<R: Real, S: Sink<R>>(sink: &mut S, at: FlowPathPlaces, dm: R, dh: R) {
    let [mass_a, mass_b, enthalpy_a, enthalpy_b] = at;
    sink.add(mass_a, -dm);
    sink.add(mass_b, dm);
    sink.add(enthalpy_a, -dh);
    sink.add(enthalpy_b, dh);
}
