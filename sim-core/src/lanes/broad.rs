//! Four and eight numbers in the wider registers of AVX2, on machines that have them.
//!
//! The program is built for every machine of its kind and finds out when it starts; a school's new machine is then
//! half as fast again as its old one can be, and nobody needs a build of their own. The same bits: what is wider is the
//! register, not the number, and nothing is fused.

use fearless_simd::{Avx2, Level, Select as _, Simd as _, SimdBase as _, SimdFloat as _, SimdMask as _};
use fearless_simd::{f64x4, f64x8, mask64x4, mask64x8};

use super::beside::{Beside, Choice, Vector};

/// Four numbers side by side, in one register.
pub type BroadFour = Beside<f64x4<Avx2>>;
/// Eight numbers side by side, in two registers.
pub type BroadEight = Beside<f64x8<Avx2>>;

#[expect(
    clippy::disallowed_types,
    reason = "what a machine can do is asked once and is no state of any circuit"
)]
static AVX2: std::sync::LazyLock<Option<Avx2>> = std::sync::LazyLock::new(|| Level::new().as_avx2());

/// Whether this machine has them.
#[must_use]
pub fn is_broad() -> bool {
    AVX2.is_some()
}

/// The proof that this machine has them. Whoever makes a first number without having asked [`is_broad`] is wrong.
#[inline(always)]
fn avx2() -> Avx2 {
    match *AVX2 {
        Some(avx2) => avx2,
        None => unreachable!("is_broad is asked before the first of these numbers is made"),
    }
}

macro_rules! vector {
    ($vector:ident, $mask:ident, $lanes:literal) => {
        impl Choice for $mask<Avx2> {
            #[inline(always)]
            fn from_lanes(mut of: impl FnMut(usize) -> bool) -> Self {
                Self::from_fn(avx2(), |l| if of(l) { -1 } else { 0 })
            }
            #[inline(always)]
            fn lane(self, lane: usize) -> bool {
                self.as_slice()[lane] != 0
            }
            #[inline(always)]
            fn any(self) -> bool {
                self.any_true()
            }
            #[inline(always)]
            fn every(self) -> bool {
                self.all_true()
            }
            #[inline(always)]
            fn and(self, other: Self) -> Self {
                self & other
            }
            #[inline(always)]
            fn or(self, other: Self) -> Self {
                self | other
            }
            #[inline(always)]
            fn not(self) -> Self {
                !self
            }
        }

        impl Vector for $vector<Avx2> {
            type Choice = $mask<Avx2>;
            const LANES: usize = $lanes;
            #[inline(always)]
            fn splat(x: f64) -> Self {
                fearless_simd::SimdBase::splat(avx2(), x)
            }
            #[inline(always)]
            fn alike(self, x: f64) -> Self {
                fearless_simd::SimdBase::splat(self.simd, x)
            }
            #[inline(always)]
            fn from_lanes(of: impl FnMut(usize) -> f64) -> Self {
                Self::from_fn(avx2(), of)
            }
            #[inline(always)]
            fn lanes(&self) -> &[f64] {
                self.as_slice()
            }
            #[inline(always)]
            fn lanes_mut(&mut self) -> &mut [f64] {
                self.as_mut_slice()
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
            fn below(self, other: Self) -> Self::Choice {
                self.simd_lt(other)
            }
            #[inline(always)]
            fn at_most(self, other: Self) -> Self::Choice {
                self.simd_le(other)
            }
            #[inline(always)]
            fn choose(choice: Self::Choice, yes: Self, no: Self) -> Self {
                choice.select(yes, no)
            }
            #[inline(always)]
            fn within<T>(what: impl FnOnce() -> T) -> T {
                avx2().vectorize(what)
            }
        }
    };
}

vector! { f64x4, mask64x4, 4 }
vector! { f64x8, mask64x8, 8 }
