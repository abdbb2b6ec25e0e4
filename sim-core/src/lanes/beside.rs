//! Several numbers side by side, over a vector of any library.

use std::fmt::Debug;
use std::ops::{Add, AddAssign, BitAnd, BitOr, Div, Mul, MulAssign, Neg, Not, Sub, SubAssign};

use super::{Mask, Real, Spread};

/// A vector of numbers, as a library has it: each operation rounds lane by lane as IEEE 754 says.
pub trait Vector:
    Copy
    + Debug
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + 'static
{
    /// Its yes and no.
    type Choice: Choice;
    /// How many.
    const LANES: usize;
    /// The same in every lane.
    fn splat(x: f64) -> Self;
    /// The same in every lane, of this vector's kind: what proves that the machine has it need not be asked for again.
    fn alike(self, x: f64) -> Self;
    /// Lane by lane.
    fn from_lanes(of: impl FnMut(usize) -> f64) -> Self;
    /// The lanes.
    fn lanes(&self) -> &[f64];
    /// The lanes.
    fn lanes_mut(&mut self) -> &mut [f64];
    /// Square root.
    fn root(self) -> Self;
    /// Without its sign.
    fn size(self) -> Self;
    /// Where it is below `other`.
    fn below(self, other: Self) -> Self::Choice;
    /// Where it is at most `other`.
    fn at_most(self, other: Self) -> Self::Choice;
    /// `yes` where chosen, `no` elsewhere.
    fn choose(choice: Self::Choice, yes: Self, no: Self) -> Self;
    /// Does `what` with the instructions that the vector needs.
    fn within<T>(what: impl FnOnce() -> T) -> T;
}

/// A vector of yes and no.
pub trait Choice: Copy + Debug + 'static {
    /// Lane by lane.
    fn from_lanes(of: impl FnMut(usize) -> bool) -> Self;
    /// What stands in `lane`.
    fn lane(self, lane: usize) -> bool;
    /// Yes in any lane.
    fn any(self) -> bool;
    /// Yes in every lane.
    fn every(self) -> bool;
    /// Both.
    fn and(self, other: Self) -> Self;
    /// Either.
    fn or(self, other: Self) -> Self;
    /// The contrary.
    fn not(self) -> Self;
}

/// Numbers side by side.
#[derive(Clone, Copy, Debug)]
pub struct Beside<V>(V);

/// Yes and no side by side.
#[derive(Clone, Copy, Debug)]
pub struct BesideMask<C>(C);

impl<C: Choice> Mask for BesideMask<C> {
    #[inline(always)]
    fn all(yes: bool) -> Self {
        Self(C::from_lanes(|_| yes))
    }
    #[inline(always)]
    fn any(self) -> bool {
        self.0.any()
    }
    #[inline(always)]
    fn every(self) -> bool {
        self.0.every()
    }
    #[inline(always)]
    fn lane(self, lane: usize) -> bool {
        self.0.lane(lane)
    }
    #[inline(always)]
    fn from_lanes(of: impl FnMut(usize) -> bool) -> Self {
        Self(C::from_lanes(of))
    }
}

impl<C: Choice> BitAnd for BesideMask<C> {
    type Output = Self;
    #[inline(always)]
    fn bitand(self, other: Self) -> Self {
        Self(self.0.and(other.0))
    }
}

impl<C: Choice> BitOr for BesideMask<C> {
    type Output = Self;
    #[inline(always)]
    fn bitor(self, other: Self) -> Self {
        Self(self.0.or(other.0))
    }
}

impl<C: Choice> Not for BesideMask<C> {
    type Output = Self;
    #[inline(always)]
    fn not(self) -> Self {
        Self(self.0.not())
    }
}

impl<V: Vector> Real for Beside<V> {
    type Mask = BesideMask<V::Choice>;
    const LANES: usize = V::LANES;
    #[inline(always)]
    fn all(x: f64) -> Self {
        Self(V::splat(x))
    }
    #[inline(always)]
    fn lane(self, lane: usize) -> f64 {
        self.0.lanes()[lane]
    }
    #[inline(always)]
    fn put(&mut self, lane: usize, x: f64) {
        self.0.lanes_mut()[lane] = x;
    }
    #[inline(always)]
    fn from_lanes(of: impl FnMut(usize) -> f64) -> Self {
        Self(V::from_lanes(of))
    }
    #[inline(always)]
    fn sqrt(self) -> Self {
        Self(self.0.root())
    }
    #[inline(always)]
    fn abs(self) -> Self {
        Self(self.0.size())
    }
    #[inline(always)]
    fn below(self, other: Self) -> Self::Mask {
        BesideMask(self.0.below(other.0))
    }
    #[inline(always)]
    fn at_most(self, other: Self) -> Self::Mask {
        BesideMask(self.0.at_most(other.0))
    }
    #[inline(always)]
    fn choose(mask: Self::Mask, yes: Self, no: Self) -> Self {
        Self(V::choose(mask.0, yes.0, no.0))
    }
    #[inline(always)]
    fn within<T>(what: impl FnOnce() -> T) -> T {
        V::within(what)
    }
}

impl<V: Vector> Default for Beside<V> {
    #[inline(always)]
    fn default() -> Self {
        Self::all(0.0)
    }
}

impl<V: Vector> PartialEq for Beside<V> {
    fn eq(&self, other: &Self) -> bool {
        self.0.lanes() == other.0.lanes()
    }
}

impl<V: Vector> Neg for Beside<V> {
    type Output = Self;
    #[inline(always)]
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

macro_rules! operators {
    ($($trait:ident $name:ident $op:tt;)*) => { $(
        impl<V: Vector> $trait for Beside<V> {
            type Output = Self;
            #[inline(always)]
            fn $name(self, other: Self) -> Self {
                Self(self.0 $op other.0)
            }
        }
        impl<V: Vector> $trait<f64> for Beside<V> {
            type Output = Self;
            #[inline(always)]
            fn $name(self, other: f64) -> Self {
                Self(self.0 $op self.0.alike(other))
            }
        }
    )* };
}
operators! { Add add +; Sub sub -; Mul mul *; Div div /; }

macro_rules! assignments {
    ($($trait:ident $name:ident $op:tt;)*) => { $(
        impl<V: Vector> $trait for Beside<V> {
            #[inline(always)]
            fn $name(&mut self, other: Self) {
                *self = *self $op other;
            }
        }
    )* };
}
assignments! { AddAssign add_assign +; SubAssign sub_assign -; MulAssign mul_assign *; }

impl<V: Vector> Spread for Beside<V> {
    type One = f64;
    #[inline(always)]
    fn all_of(one: &f64) -> Self {
        Self::all(*one)
    }
    #[inline(always)]
    fn put_in(&mut self, lane: usize, one: &f64) {
        self.put(lane, *one);
    }
}
