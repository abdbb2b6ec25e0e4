//! Soft hoses in a flow path: its conductance falls as their walls pull in.
//!
//! A way through a joint is a row of restrictions, 1/C² = Σ 1/Cᵢ². With x the share that a soft half-hose
//! has left ([`open_share`]), α its part of the whole row's resistance at full opening and y, β those of a
//! second one, C falls to (1 + α (1/x² − 1) + β (1/y² − 1))^−½ of what it was. The critical ratio stays
//! that of the open row. Each wall answers to the air in its own hose, in the middle of which it is thinnest.

use crate::flow::iso6358::Iso6358;
use crate::flow::valve::CheckLaw;
use crate::flow::{Flow, Gas};
use crate::lanes::{Real, spread};
use crate::parts::elements::{Law, open_share};

/// A soft half-hose at one end of a flow path.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Soft<R = f64> {
    /// What its conductance loses once the wall has pulled in fully; 0 = a sound wall.
    pub(crate) collapse: R,
    /// Its share of the row's resistance while it is open.
    pub(crate) share: R,
}

spread!(Soft { collapse, share });

/// Flow through `law` from `a` to `b` with soft ends, on a day of pressure `p_atm`.
#[inline(always)]
pub(crate) fn flow<R: Real>(law: &Law<R>, soft: &[Soft<R>; 2], a: Gas<R>, b: Gas<R>, p_atm: R) -> Flow<R> {
    let one = R::all(1.0);
    let (x, dx) = open_share(soft[0].collapse, p_atm - a.p);
    let (y, dy) = open_share(soft[1].collapse, p_atm - b.p);
    let row = soft[0].share * (one / (x * x) - one) + one + soft[1].share * (one / (y * y) - one);
    let left = one / row.sqrt();
    let cube = left * left * left;
    // The pressure inside rises, the wall goes out: ∂(p_atm − p)/∂p = −1.
    let (left_a, left_b) =
        (-cube * soft[0].share / (x * x * x) * dx, -cube * soft[1].share / (y * y * y) * dy);
    let (mut total, open_m) = match law {
        Law::Iso(iso) => {
            let full = iso.flow(a, b);
            (full.scaled(left), full.m)
        }
        Law::Check(check) => {
            let shut = CheckLaw { open: Iso6358 { c: R::all(0.0), ..check.open }, ..*check };
            let (full, leak) = (check.flow(a, b), shut.flow(a, b));
            let open = full.plus(leak.scaled(-one));
            (open.scaled(left).plus(leak), open.m)
        }
        // Only these have soft ends.
        Law::Hole(_)
        | Law::Gap { .. }
        | Law::Seep(_)
        | Law::Admit { .. }
        | Law::Equalise { .. }
        | Law::Suction { .. }
        | Law::Strokes { .. }
        | Law::Vent { .. } => return Flow::default(),
    };
    total.dpa += open_m * left_a;
    total.dpb += open_m * left_b;
    total
}
