//! The flow that each law makes of the air on both sides, with its slopes.

use crate::flow::iso6358::Iso6358;
use crate::flow::pinhole::Pinhole;
use crate::flow::{Flow, Gas, laminar};
use crate::lanes::{Mask as _, Real};
use crate::parts::elements::{Law, PistonLaw};

/// What a law needs to know besides the air on both sides.
pub(crate) struct Around<R: Real> {
    pub(crate) engine_runs: R::Mask,
    pub(crate) pedal_n: R,
    pub(crate) p_atm: R,
}

/// What hands do to a way: strokes per second, and where a lever is held.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct AtHand<R> {
    pub(crate) strokes_per_s: R,
    /// 1 = held, 0 = let go.
    pub(crate) pressed: R,
}

/// What a flow path's own part does to it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Own<'a, R> {
    /// The state that it depends on besides the air: travel, m, or speed, rad/s; else nought.
    pub(crate) state: R,
    /// Hands.
    pub(crate) hand: AtHand<R>,
    /// The piston that lifts it.
    pub(crate) piston: Option<&'a PistonLaw<R>>,
}

/// Flow with its slope over the one further state it depends on: travel, m, or speed, rad/s.
///
/// Always inlined: a stage that wants no slopes then works none out.
#[inline(always)]
pub(crate) fn flow<R: Real>(
    law: &Law<R>,
    a: Gas<R>,
    b: Gas<R>,
    around: &Around<R>,
    own: Own<'_, R>,
) -> (Flow<R>, R) {
    let zero = R::all(0.0);
    let Own { state, hand, piston } = own;
    match law {
        Law::Iso(iso) => (iso.flow(a, b), zero),
        Law::Hole(hole) => (hole.flow(a, b), zero),
        Law::Gap { still, shaking } => {
            let area = R::choose(around.engine_runs, shaking.area, still.area);
            (Pinhole { area, ..*still }.flow(a, b), zero)
        }
        Law::Seep(k) => (laminar::flow(*k, a, b), zero),
        Law::Check(check) => (check.flow(a, b), zero),
        Law::Admit { open } => lifted::<ADMITS, R>(piston, open, a, b, around.pedal_n, state),
        Law::Equalise { open } => lifted::<JOINS, R>(piston, open, a, b, around.pedal_n, state),
        Law::Suction { swept } => {
            // Displaced mass: swept volume times the density at the inlet.
            let rho = a.p / (a.t * crate::air::R_AIR);
            let q = *swept * state.larger(zero);
            let m = q * rho;
            let slope = R::choose(zero.below(state), *swept * rho, zero);
            (Flow { m, dpa: m / a.p, dpb: zero, dta: -m / a.t, dtb: zero }, slope)
        }
        Law::Vent { hole } => {
            let released = zero.below(hand.pressed);
            let flow = if released.any() { hole.flow(a, b) } else { Flow::default() };
            (Flow::choose(released, flow, Flow::default()), zero)
        }
        Law::Strokes { stroke, ultimate } => {
            let q = *stroke * hand.strokes_per_s;
            let over_p = a.p - *ultimate * around.p_atm;
            let rt = a.t * crate::air::R_AIR;
            let m = q * over_p / rt;
            let flow = Flow { m, dpa: q / rt, dpb: zero, dta: -m / a.t, dtb: zero };
            (Flow::choose(over_p.at_most(zero), Flow::default(), flow), zero)
        }
    }
}

/// The seat that lets air in.
const ADMITS: bool = true;
/// The seat that joins the chambers.
const JOINS: bool = false;

#[inline(always)]
fn lifted<const SEAT: bool, R: Real>(
    piston: Option<&PistonLaw<R>>,
    open: &Iso6358<R>,
    a: Gas<R>,
    b: Gas<R>,
    pedal_n: R,
    travel: R,
) -> (Flow<R>, R) {
    let zero = R::all(0.0);
    let Some(law) = piston else { return (Flow::default(), zero) };
    let (e, de_dx) = law.valve_force(pedal_n, travel);
    let (s, ds_de) = if SEAT == ADMITS { law.admit_lift(e) } else { law.equalise_lift(e) };
    let open_there = zero.below(s);
    if !open_there.any() {
        return (Flow::default(), zero);
    }
    let full = open.flow(a, b);
    let flow = Flow::choose(open_there, full.scaled(s), Flow::default());
    (flow, R::choose(open_there, full.m * ds_de * de_dx, zero))
}
