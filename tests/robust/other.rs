//! Other coefficients that a model of the same laws could have been given.

use dice::Dice;
use sim_core::coefficients::Coefficients;
use sim_core::math;

/// Stream of the random numbers of this program.
const STREAM: u128 = 0x726f_6275_7374;

/// Standard deviation of ln h for the heat transfer to a wall: free convection in a small housing is told from 2 to
/// 10 W/(m²·K), which is a factor of two either way (common practice, no source).
const WALL_HEAT: f64 = 0.35;
/// Of ln `C_d` of a sharp-edged hole: 0.60 to 0.65 near rest, 0.82 to 0.88 choked, by author and edge (from memory).
const HOLE: f64 = 0.04;
/// Of ln C of a nipple, hose or opening: two in which nobody has measured C differ by so much (common practice, no source).
const WAY: f64 = 0.06;
/// Of ln of a friction (common practice, no source).
const FRICTION: f64 = 0.15;

/// Those of this number.
pub(crate) fn coefficients(number: u64) -> Coefficients {
    let mut dice = Dice::new(u128::from(number), STREAM);
    // Twelve even numbers are near enough to a normal one, and never far out.
    let mut factor = |width: f64| math::exp(width * ((0..12).map(|_| dice.unit()).sum::<f64>() - 6.0));
    Coefficients {
        wall_heat: factor(WALL_HEAT),
        hole: factor(HOLE),
        way: factor(WAY),
        friction: factor(FRICTION),
    }
}
