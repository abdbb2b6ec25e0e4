//! How long a step may be: chosen from the state alone.
//!
//! A step is 2^e ticks, −14 ≤ e ≤ 20. It shrinks when the estimated error is too large or when something
//! would switch within it, and grows when the error is small. The exponent it remembers is part of the
//! state and of the digest.

/// Smallest step: 2⁻¹⁴ of a tick, 0.6 µs. Rarely needed, but needed: a wide port that opens on a few cubic
/// centimetres of deep vacuum fills them in some 20 µs, and a step of 1/64 tick ends in the impossible.
pub(crate) const E_MIN: i8 = -14;
/// Largest step: 1 048 576 ticks, some three hours.
pub(crate) const E_MAX: i8 = 20;
/// Largest step while the clock runs free: 8 ticks.
pub(crate) const E_FREE: i8 = 3;
/// Below this error the next step is twice as long: a third-order error grows eightfold, with room.
const GROW_BELOW: f64 = 0.08;

/// At most so many doublings at once: the estimate is one of the step just made, not of the next.
const MOST_DOUBLINGS: i8 = 3;

/// Largest e with 2^e ≤ `ticks` (`ticks` ≥ 1), at most [`E_MAX`].
pub(crate) fn exponent_within(ticks: u64) -> i8 {
    (63 - ticks.max(1).leading_zeros() as i8).min(E_MAX)
}

/// How often the next step is doubled after one of error `err`: each doubling makes the error eightfold. After
/// something has happened steps begin small; when it dies away they need not grow one by one.
pub(crate) fn doublings(err: f64) -> i8 {
    const EIGHTFOLD: f64 = 0.125;
    let mut n = 0;
    let mut bound = GROW_BELOW;
    while err < bound && n < MOST_DOUBLINGS {
        n += 1;
        bound *= EIGHTFOLD;
    }
    n
}

/// By how many halvings a step of error `err` (> 1) has to shrink.
pub(crate) fn halvings(err: f64) -> i8 {
    let (mut n, mut rest) = (1, err);
    while 8.0 < rest && n < 8 {
        n += 1;
        rest *= 0.125;
    }
    n
}
