//! Numbers side by side: the model is written once, over a number that is one `f64` or four or eight of
//! them.
//!
//! A lane is one circuit's number; every operation works on each lane by itself with the rounding of IEEE 754,
//! so a circuit gets the same bits alone or beside others. What branches in one circuit is a [`Mask`] here: both
//! sides are computed where any lane needs them, and each lane takes its own ([`Real::choose`]). Functions that
//! are not exactly rounded go through `libm` lane by lane ([`Real::each`]).

mod baseline;
mod beside;
#[cfg(target_arch = "x86_64")]
mod broad;
mod spread;

use std::fmt::Debug;
use std::ops::{Add, AddAssign, BitAnd, BitOr, Div, Mul, MulAssign, Neg, Not, Sub, SubAssign};

pub use baseline::{Eight, Four};
#[cfg(target_arch = "x86_64")]
pub use broad::{BroadEight, BroadFour, is_broad};
pub use spread::Spread;
pub(crate) use spread::spread;

/// One yes or no a lane.
pub trait Mask:
    Copy + Debug + BitAnd<Output = Self> + BitOr<Output = Self> + Not<Output = Self> + 'static
{
    /// The same in every lane.
    fn all(yes: bool) -> Self;
    /// Yes in any lane.
    fn any(self) -> bool;
    /// Yes in every lane.
    fn every(self) -> bool;
    /// What stands in `lane`.
    fn lane(self, lane: usize) -> bool;
    /// Lane by lane.
    fn from_lanes(of: impl FnMut(usize) -> bool) -> Self;
}

/// One number a lane.
pub trait Real:
    Copy
    + Debug
    + Default
    + PartialEq
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
    + AddAssign
    + SubAssign
    + MulAssign
    + Spread<One = f64>
    + 'static
{
    /// One yes or no a lane.
    type Mask: Mask;
    /// How many stand side by side.
    const LANES: usize;
    /// The same in every lane.
    fn all(x: f64) -> Self;
    /// What stands in `lane`, from 0 to [`Real::LANES`] − 1.
    fn lane(self, lane: usize) -> f64;
    /// Writes one lane.
    fn put(&mut self, lane: usize, x: f64);
    /// Lane by lane.
    fn from_lanes(of: impl FnMut(usize) -> f64) -> Self;
    /// Square root, exactly rounded.
    fn sqrt(self) -> Self;
    /// Without its sign.
    fn abs(self) -> Self;
    /// Where it is below `other`; nowhere beside NaN.
    fn below(self, other: Self) -> Self::Mask;
    /// Where it is at most `other`; nowhere beside NaN.
    fn at_most(self, other: Self) -> Self::Mask;
    /// `yes` where the mask says so, `no` elsewhere.
    fn choose(mask: Self::Mask, yes: Self, no: Self) -> Self;
    /// Whether it is `other` to the last bit, the sign of nought included, in every lane.
    #[must_use]
    #[inline]
    fn is(self, other: Self) -> bool {
        (0..Self::LANES).all(|lane| self.lane(lane).to_bits() == other.lane(lane).to_bits())
    }
    /// A function of one number, lane by lane.
    #[must_use]
    #[inline]
    fn each(self, mut of: impl FnMut(f64) -> f64) -> Self {
        Self::from_lanes(|lane| of(self.lane(lane)))
    }
    /// Does `what` with every instruction that this number is made for. A loop over such numbers stands in here; what
    /// it calls is either inlined into it or stands in here itself.
    #[inline(always)]
    fn within<T>(what: impl FnOnce() -> T) -> T {
        what()
    }
    /// The larger of both; itself beside NaN.
    #[must_use]
    #[inline]
    fn larger(self, other: Self) -> Self {
        Self::choose(self.below(other), other, self)
    }
}

impl Mask for bool {
    #[inline]
    fn all(yes: bool) -> Self {
        yes
    }
    #[inline]
    fn any(self) -> bool {
        self
    }
    #[inline]
    fn every(self) -> bool {
        self
    }
    #[inline]
    fn lane(self, _: usize) -> bool {
        self
    }
    #[inline]
    fn from_lanes(mut of: impl FnMut(usize) -> bool) -> Self {
        of(0)
    }
}

impl Real for f64 {
    type Mask = bool;
    const LANES: usize = 1;
    #[inline]
    fn all(x: f64) -> Self {
        x
    }
    #[inline]
    fn lane(self, _: usize) -> f64 {
        self
    }
    #[inline]
    fn put(&mut self, _: usize, x: f64) {
        *self = x;
    }
    #[inline]
    fn from_lanes(mut of: impl FnMut(usize) -> f64) -> Self {
        of(0)
    }
    #[inline]
    fn sqrt(self) -> Self {
        self.sqrt()
    }
    #[inline]
    fn abs(self) -> Self {
        self.abs()
    }
    #[inline]
    fn below(self, other: Self) -> bool {
        self < other
    }
    #[inline]
    fn at_most(self, other: Self) -> bool {
        self <= other
    }
    #[inline]
    fn choose(mask: bool, yes: Self, no: Self) -> Self {
        if mask { yes } else { no }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ODD: [f64; 8] = [1.5, -0.0, f64::NAN, f64::INFINITY, -3.0, 0.1, f64::NEG_INFINITY, 1e-310];
    const OTHER: [f64; 8] = [-2.25, 0.0, 1.0, 3.0, -3.0, 0.3, f64::NAN, -1e-310];

    fn of<R: Real>(x: [f64; 8]) -> R {
        R::from_lanes(|l| x[l])
    }

    fn has_the_bits_it_would_have_alone<R: Real>() {
        type Pair<R> = (fn(R, R) -> R, fn(f64, f64) -> f64);
        let pairs: [Pair<R>; 8] = [
            (|a, b| a + b, |a, b| a + b),
            (|a, b| a - b, |a, b| a - b),
            (|a, b| a * b, |a, b| a * b),
            (|a, b| a / b, |a, b| a / b),
            (|a, _| -a, |a, _| -a),
            (|a, _| Real::abs(a), |a, _| Real::abs(a)),
            (|_, b| Real::sqrt(Real::abs(b)), |_, b| Real::sqrt(Real::abs(b))),
            (|a, b| a.larger(b), |a, b| a.larger(b)),
        ];
        for (wide, one) in pairs {
            let got = wide(of(ODD), of(OTHER));
            for l in 0..R::LANES {
                let (got, want) = (got.lane(l), one(ODD[l], OTHER[l]));
                let same = got.to_bits() == want.to_bits() || got.is_nan() && want.is_nan();
                assert!(same, "lane {l} of {}: {got} against {want}", R::LANES);
            }
        }
    }

    fn masks_say_what_one_would_say<R: Real>() {
        let (a, b): (R, R) = (of(ODD), of(OTHER));
        for l in 0..R::LANES {
            assert_eq!(a.below(b).lane(l), ODD[l] < OTHER[l]);
            assert_eq!(a.at_most(b).lane(l), ODD[l] <= OTHER[l]);
            assert_ne!((!a.below(b)).lane(l), ODD[l] < OTHER[l]);
            let chosen = R::choose(a.at_most(b), a, b).lane(l);
            assert_eq!(chosen.to_bits(), if ODD[l] <= OTHER[l] { ODD[l] } else { OTHER[l] }.to_bits());
        }
        assert!(!R::Mask::all(false).any() && R::Mask::all(true).every());
        assert!(a.at_most(b).any() && !a.at_most(b).every());
    }

    #[test]
    fn inv_a_lane_has_the_bits_it_would_have_alone() {
        has_the_bits_it_would_have_alone::<Four>();
        has_the_bits_it_would_have_alone::<Eight>();
        #[cfg(target_arch = "x86_64")]
        if is_broad() {
            has_the_bits_it_would_have_alone::<BroadFour>();
            has_the_bits_it_would_have_alone::<BroadEight>();
        }
    }

    #[test]
    fn inv_masks_say_lane_by_lane_what_one_would_say() {
        masks_say_what_one_would_say::<Four>();
        masks_say_what_one_would_say::<Eight>();
        #[cfg(target_arch = "x86_64")]
        if is_broad() {
            masks_say_what_one_would_say::<BroadFour>();
            masks_say_what_one_would_say::<BroadEight>();
        }
    }
}
