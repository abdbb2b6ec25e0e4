//! The linearised flows at the state a step begins from, kept flow by flow.
//!
//! A long step multiplies slopes of the smallest bodies of air, some 10⁴ 1/s, by hours: what the elimination
//! rounds off in a row is then no longer small beside what a leak lets in. So the increments of a long step
//! are taken once more from the flows themselves: every flow's increment is worked out once and given to one
//! side and taken from the other, and what the volumes lose is what the ledgers gain, whatever was rounded.

use super::linear::Column;
use super::model::{Model, Numbers};
use crate::air::CP;
use crate::flow::Flow;
use crate::lanes::Real;

/// How pressure and temperature of a body of air follow from the state.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Follows<R> {
    /// ∂p/∂U, Pa/J.
    pub(super) p_u: R,
    /// ∂p/∂x, Pa/m.
    pub(super) p_x: R,
    /// ∂T/∂m, K/kg.
    pub(super) t_m: R,
    /// ∂T/∂U, K/J.
    pub(super) t_u: R,
}

/// A way for air, linearised.
#[derive(Clone, Copy, Debug)]
pub(super) struct Way<R: Real> {
    pub(super) flow: Flow<R>,
    /// Slope over the travel or speed it depends on besides the air.
    pub(super) slope: R,
    pub(super) t_up: R,
    pub(super) up_is_a: R::Mask,
}

/// A booster's piston, linearised: slopes of its speed and of both pressures over rear, front and travel.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piston<R> {
    pub(super) speed: R,
    pub(super) p: [R; 2],
    /// Column, ∂speed, ∂p_front, ∂p_rear.
    pub(super) slopes: [(usize, R, R, R); 3],
}

/// All flows of mass, heat and work, linearised.
#[derive(Clone, Debug, Default)]
pub(crate) struct Tangent<R: Real> {
    /// Whether ways and pistons are kept: for steps that are long enough to need them.
    pub(super) kept: bool,
    pub(super) ways: Vec<Way<R>>,
    /// Per volume.
    pub(super) follows: Vec<Follows<R>>,
    pub(super) pistons: Vec<Piston<R>>,
}

impl<R: Real> Tangent<R> {
    pub(super) fn clear(&mut self) {
        self.ways.clear();
        self.follows.clear();
        self.pistons.clear();
    }
}

impl Model {
    /// What the increment `k` of the state makes of the rates of mass, energy and ledgers, into those rows of
    /// `out`; each flow once.
    pub(crate) fn along<R: Real>(
        &self,
        numbers: &Numbers<R>,
        tangent: &Tangent<R>,
        k: &Column<R>,
        out: &mut Column<R>,
    ) {
        let zero = R::all(0.0);
        for (way, at) in tangent.ways.iter().zip(&self.ways) {
            let [a, b] = at.ends.map(|end| end.change(&tangent.follows, k));
            let by_state = at.state.map_or(zero, |(i, _)| way.slope * k[usize::from(i)]);
            let f = &way.flow;
            let dm = f.dpa * a.0 + f.dpb * b.0 + f.dta * a.1 + f.dtb * b.1 + by_state;
            let t_up = R::choose(way.up_is_a, a.1, b.1);
            let dh = (way.t_up * dm + t_up * f.m) * CP;
            let [end_a, end_b] = &at.ends;
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
        for ((piston, at), law) in tangent.pistons.iter().zip(&self.boosters).zip(&numbers.boosters) {
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
    }
}
