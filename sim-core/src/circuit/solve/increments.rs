//! What the linearised flows make of an increment of the state: each flow once, given to one side and taken from
//! the other.

use super::flow_path::From;
use super::linear::Column;
use super::model::{Model, Numbers};
use super::tangent::{Follows, Tangent};
use crate::air::CP;
use crate::lanes::Real;

impl Model {
    /// What the increment `k` of the state makes of the rates of mass, energy and balances, into those rows of
    /// `out`; each flow once.
    pub(crate) fn along<R: Real>(
        &self,
        numbers: &Numbers<R>,
        tangent: &Tangent<R>,
        k: &Column<R>,
        out: &mut Column<R>,
    ) {
        R::within(
            #[inline(always)]
            || {
                let zero = R::all(0.0);
                for (path, at) in tangent.flow_paths.iter().zip(&self.flow_paths) {
                    let [end_a, end_b] = &at.ends;
                    let a = change(end_a.from, &tangent.follows, k);
                    let b = change(end_b.from, &tangent.follows, k);
                    let by_state = match at.state {
                        Some((i, _)) => path.slope * k[usize::from(i)],
                        None => zero,
                    };
                    let f = &path.flow;
                    let dm = f.dpa * a.0 + f.dpb * b.0 + f.dta * a.1 + f.dtb * b.1 + by_state;
                    let t_up = R::choose(path.up_is_a, a.1, b.1);
                    let dh = (path.t_up * dm + t_up * f.m) * CP;
                    out[usize::from(end_a.mass)] -= dm;
                    out[usize::from(end_b.mass)] += dm;
                    out[usize::from(end_a.enthalpy)] -= dh;
                    out[usize::from(end_b.enthalpy)] += dh;
                }
                for ((body, follows), im) in numbers.bodies.iter().zip(&tangent.follows).zip(&self.mass_at) {
                    let dq = body.h_a * (k[0] - (follows.t_m * k[*im] + follows.t_u * k[im + 1]));
                    out[im + 1] += dq;
                    out[self.n + 2] += dq;
                }
                for ((piston, at), law) in tangent.pistons.iter().zip(&self.pistons).zip(&numbers.pistons) {
                    let area = law.area_m2;
                    let mut d = [zero; 3];
                    for (column, speed, front, rear) in piston.slopes {
                        for (d, slope) in d.iter_mut().zip([speed, front, rear]) {
                            *d += slope * k[column];
                        }
                    }
                    let [d_speed, d_front, d_rear] = d;
                    let front = area * (d_front * piston.speed + piston.p[0] * d_speed);
                    let rear = area * (d_rear * piston.speed + piston.p[1] * d_speed);
                    out[self.mass_at[at.front] + 1] += front;
                    out[self.mass_at[at.rear] + 1] -= rear;
                    out[self.n + 3] += rear - front;
                }
            },
        );
    }
}

/// Change of pressure and temperature with the increment `k` of the state.
#[inline(always)]
fn change<R: Real>(from: From, follows: &[Follows<R>], k: &Column<R>) -> (R, R) {
    let zero = R::all(0.0);
    match from {
        From::Volume { k: body, mass, travel, .. } => {
            let Follows { p_u, p_x, t_m, t_u } = follows[usize::from(body)];
            let by_travel = match travel {
                Some((i, _)) => p_x * k[usize::from(i)],
                None => zero,
            };
            let (mass, energy) = (k[usize::from(mass)], k[usize::from(mass) + 1]);
            (p_u * energy + by_travel, t_m * mass + t_u * energy)
        }
        From::Room(_) => (zero, k[0]),
        From::Manifold { pressure, .. } => (k[usize::from(pressure)], k[0]),
    }
}
