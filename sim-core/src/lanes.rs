//! Numbers side by side: the model is written once, over a number that is one `f64` or four or eight of
//! them.
//!
//! A lane is one circuit's number; every operation works on each lane by itself with the rounding of IEEE 754,
//! so a circuit gets the same bits alone or beside others. What branches in one circuit is a [`Mask`] here: both
//! sides are computed where any lane needs them, and each lane takes its own ([`Real::choose`]). Functions that
//! are not exactly rounded go through `libm` lane by lane ([`Real::each`]).

use std::fmt::Debug;
use std::ops::{Add, AddAssign, BitAnd, BitOr, Div, Mul, MulAssign, Neg, Not, Sub, SubAssign};

use wide::{f64x4, f64x8};

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

/// A number type of several lanes, and its mask.
macro_rules! beside {
    ($(#[$about:meta])* $number:ident, $mask:ident, $inner:ident, $lanes:literal, [$($lane:literal),*]) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        pub struct $number($inner);

        /// Yes or no in every lane.
        #[derive(Clone, Copy, Debug)]
        pub struct $mask($inner);

        impl Mask for $mask {
            #[inline]
            fn all(yes: bool) -> Self {
                Self::from_lanes(|_| yes)
            }
            #[inline]
            fn any(self) -> bool {
                self.0.any()
            }
            #[inline]
            fn every(self) -> bool {
                self.0.all()
            }
            #[inline]
            fn lane(self, lane: usize) -> bool {
                self.0.to_bitmask() >> lane & 1 == 1
            }
            #[inline]
            fn from_lanes(mut of: impl FnMut(usize) -> bool) -> Self {
                let bits = |yes: bool| f64::from_bits(if yes { u64::MAX } else { 0 });
                Self($inner::new([$(bits(of($lane))),*]))
            }
        }

        impl BitAnd for $mask {
            type Output = Self;
            #[inline]
            fn bitand(self, other: Self) -> Self {
                Self(self.0 & other.0)
            }
        }

        impl BitOr for $mask {
            type Output = Self;
            #[inline]
            fn bitor(self, other: Self) -> Self {
                Self(self.0 | other.0)
            }
        }

        impl Not for $mask {
            type Output = Self;
            #[inline]
            fn not(self) -> Self {
                Self(!self.0)
            }
        }

        impl Real for $number {
            type Mask = $mask;
            const LANES: usize = $lanes;
            #[inline]
            fn all(x: f64) -> Self {
                Self($inner::splat(x))
            }
            #[inline]
            fn lane(self, lane: usize) -> f64 {
                self.0.as_array()[lane]
            }
            #[inline]
            fn put(&mut self, lane: usize, x: f64) {
                self.0.as_mut_array()[lane] = x;
            }
            #[inline]
            fn from_lanes(mut of: impl FnMut(usize) -> f64) -> Self {
                Self($inner::new([$(of($lane)),*]))
            }
            #[inline]
            fn sqrt(self) -> Self {
                Self(self.0.sqrt())
            }
            #[inline]
            fn abs(self) -> Self {
                Self(self.0.abs())
            }
            #[inline]
            fn below(self, other: Self) -> $mask {
                $mask(self.0.simd_lt(other.0))
            }
            #[inline]
            fn at_most(self, other: Self) -> $mask {
                $mask(self.0.simd_le(other.0))
            }
            #[inline]
            fn choose(mask: $mask, yes: Self, no: Self) -> Self {
                Self(mask.0.select(yes.0, no.0))
            }
        }

        operators! { $number, $inner,
            Add add AddAssign add_assign +;
            Sub sub SubAssign sub_assign -;
            Mul mul MulAssign mul_assign *;
        }
        operators! { $number, $inner, Div div /; }

        impl Neg for $number {
            type Output = Self;
            #[inline]
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
    };
}

macro_rules! operators {
    ($number:ident, $inner:ident, $($trait:ident $name:ident $assign:ident $assign_name:ident $op:tt;)*) => {
        operators! { $number, $inner, $($trait $name $op;)* }
        $(
            impl $assign for $number {
                #[inline]
                fn $assign_name(&mut self, other: Self) {
                    *self = *self $op other;
                }
            }
        )*
    };
    ($number:ident, $inner:ident, $($trait:ident $name:ident $op:tt;)*) => {
        $(
            impl $trait for $number {
                type Output = Self;
                #[inline]
                fn $name(self, other: Self) -> Self {
                    Self(self.0 $op other.0)
                }
            }
            impl $trait<f64> for $number {
                type Output = Self;
                #[inline]
                fn $name(self, other: f64) -> Self {
                    Self(self.0 $op $inner::splat(other))
                }
            }
        )*
    };
}

beside! {
    /// Four numbers side by side: one register of AVX2, two of SSE2.
    Four, FourMask, f64x4, 4, [0, 1, 2, 3]
}
beside! {
    /// Eight numbers side by side. What a loop needs besides the numbers (where they stand, where it ends) is then paid
    /// for half as often as with four, which is worth it even where they fill two registers or four.
    Eight, EightMask, f64x8, 8, [0, 1, 2, 3, 4, 5, 6, 7]
}

/// Something made of numbers, one of each a lane.
pub trait Spread: Sized {
    /// The same of one circuit.
    type One;
    /// `one` in every lane.
    fn all_of(one: &Self::One) -> Self;
    /// Puts `one` into a lane.
    fn put_in(&mut self, lane: usize, one: &Self::One);
}

macro_rules! spread_numbers {
    ($($number:ty),*) => { $(
        impl Spread for $number {
            type One = f64;
            #[inline]
            fn all_of(one: &f64) -> Self {
                Self::all(*one)
            }
            #[inline]
            fn put_in(&mut self, lane: usize, one: &f64) {
                self.put(lane, *one);
            }
        }
    )* };
}
spread_numbers!(f64, Four, Eight);

impl<T: Spread> Spread for Vec<T> {
    type One = Vec<T::One>;
    fn all_of(one: &Self::One) -> Self {
        one.iter().map(T::all_of).collect()
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        for (all, one) in self.iter_mut().zip(one) {
            all.put_in(lane, one);
        }
    }
}

impl<T: Spread> Spread for Option<T> {
    type One = Option<T::One>;
    fn all_of(one: &Self::One) -> Self {
        one.as_ref().map(T::all_of)
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        if let (Some(all), Some(one)) = (self, one) {
            all.put_in(lane, one);
        }
    }
}

impl<T: Spread> Spread for [T; 2] {
    type One = [T::One; 2];
    fn all_of(one: &Self::One) -> Self {
        [T::all_of(&one[0]), T::all_of(&one[1])]
    }
    fn put_in(&mut self, lane: usize, one: &Self::One) {
        for (all, one) in self.iter_mut().zip(one) {
            all.put_in(lane, one);
        }
    }
}

/// Implements [`Spread`] for a struct over [`Real`] by its fields.
macro_rules! spread {
    ($name:ident { $($field:ident),* $(,)? }) => {
        impl<R: $crate::lanes::Real> $crate::lanes::Spread for $name<R> {
            type One = $name;
            fn all_of(one: &$name) -> Self {
                Self { $( $field: $crate::lanes::Spread::all_of(&one.$field), )* }
            }
            fn put_in(&mut self, lane: usize, one: &$name) {
                $( $crate::lanes::Spread::put_in(&mut self.$field, lane, &one.$field); )*
            }
        }
    };
}
pub(crate) use spread;

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
    }

    #[test]
    fn inv_masks_say_lane_by_lane_what_one_would_say() {
        masks_say_what_one_would_say::<Four>();
        masks_say_what_one_would_say::<Eight>();
    }
}
