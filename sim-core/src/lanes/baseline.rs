//! Four and eight numbers on what every machine of its kind has (SSE2, NEON).

use wide::{f64x4, f64x8};

use super::beside::{Beside, Choice, Vector};

/// Four numbers side by side.
pub type Four = Beside<f64x4>;
/// Eight numbers side by side. What a loop needs besides the numbers (where they stand, where it ends) is then paid
/// for half as often as with four, which is worth it even where they fill two registers or four.
pub type Eight = Beside<f64x8>;

macro_rules! vector {
    ($vector:ident, $mask:ident, $lanes:literal) => {
        /// A mask is a vector of which each lane has all bits or none.
        #[derive(Clone, Copy, Debug)]
        pub struct $mask($vector);

        impl Choice for $mask {
            #[inline(always)]
            fn from_lanes(mut of: impl FnMut(usize) -> bool) -> Self {
                let bits = |yes: bool| f64::from_bits(if yes { u64::MAX } else { 0 });
                Self($vector::new(std::array::from_fn(|l| bits(of(l)))))
            }
            #[inline(always)]
            fn lane(self, lane: usize) -> bool {
                self.0.to_bitmask() >> lane & 1 == 1
            }
            #[inline(always)]
            fn any(self) -> bool {
                self.0.any()
            }
            #[inline(always)]
            fn every(self) -> bool {
                self.0.all()
            }
            #[inline(always)]
            fn and(self, other: Self) -> Self {
                Self(self.0 & other.0)
            }
            #[inline(always)]
            fn or(self, other: Self) -> Self {
                Self(self.0 | other.0)
            }
            #[inline(always)]
            fn not(self) -> Self {
                Self(!self.0)
            }
        }

        impl Vector for $vector {
            type Choice = $mask;
            const LANES: usize = $lanes;
            #[inline(always)]
            fn splat(x: f64) -> Self {
                $vector::splat(x)
            }
            #[inline(always)]
            fn alike(self, x: f64) -> Self {
                $vector::splat(x)
            }
            #[inline(always)]
            fn from_lanes(of: impl FnMut(usize) -> f64) -> Self {
                $vector::new(std::array::from_fn(of))
            }
            #[inline(always)]
            fn lanes(&self) -> &[f64] {
                self.as_array()
            }
            #[inline(always)]
            fn lanes_mut(&mut self) -> &mut [f64] {
                self.as_mut_array()
            }
            #[inline(always)]
            fn root(self) -> Self {
                self.sqrt()
            }
            #[inline(always)]
            fn size(self) -> Self {
                self.abs()
            }
            #[inline(always)]
            fn below(self, other: Self) -> $mask {
                $mask(self.simd_lt(other))
            }
            #[inline(always)]
            fn at_most(self, other: Self) -> $mask {
                $mask(self.simd_le(other))
            }
            #[inline(always)]
            fn choose(choice: $mask, yes: Self, no: Self) -> Self {
                choice.0.select(yes, no)
            }
            #[inline(always)]
            fn within<T>(what: impl FnOnce() -> T) -> T {
                what()
            }
        }
    };
}

vector! { f64x4, FourMask, 4 }
vector! { f64x8, EightMask, 8 }
