//! A lamp's filament: C dT/dt = v²/R(T) − k (T⁴ − T_a⁴), R ∝ T^1.2 (tungsten, from memory).
//!
//! In balance that gives I ∝ V^0.54, P ∝ V^1.54, T ∝ V^0.38, near the re-rating exponents of row 6.10.
//! Between 16 °C and the rated 2 750 K the resistance grows 14.9 times; the textbook of row 6.11 has
//! 12.95 because it carries the coefficient measured near 0 °C on to 2 750 °C, where tungsten bends up.

use crate::math;

/// Filament temperature at rated voltage, K.
pub const FILAMENT_RATED_K: f64 = 2_750.0;

/// A filament by its rating.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filament {
    /// Rated power, W.
    pub rated_w: f64,
    /// Rated voltage, V.
    pub rated_v: f64,
}

impl Filament {
    /// Filament resistance at `t_k`, ohm, and its slope.
    #[must_use]
    pub fn resistance_ohm(&self, t_k: f64) -> (f64, f64) {
        let hot = self.rated_v * self.rated_v / self.rated_w;
        let r = hot * math::pow(t_k / FILAMENT_RATED_K, 1.2);
        (r, 1.2 * r / t_k)
    }

    /// Heat capacity of the filament, J/K: it reaches half light in some 60 ms (from memory).
    #[must_use]
    pub fn filament_j_per_k(&self) -> f64 {
        self.rated_w * 0.06 / FILAMENT_RATED_K * 2.0
    }

    /// Power radiated at `t_k` in surroundings of `t_amb_k`, W, and its slope over t_k.
    #[must_use]
    pub fn radiated_w(&self, t_k: f64, t_amb_k: f64) -> (f64, f64) {
        let q = |t: f64| t * t * t * t;
        let k = self.rated_w / q(FILAMENT_RATED_K);
        (k * (q(t_k) - q(t_amb_k)), 4.0 * k * t_k * t_k * t_k)
    }

    /// How fast the filament at `t_k` warms with `v` volts across the lamp, K/s, and the slope over `t_k`.
    #[must_use]
    pub fn heating(&self, v: f64, t_k: f64, t_amb_k: f64) -> (f64, f64) {
        let (r, r_t) = self.resistance_ohm(t_k);
        let (loss, loss_t) = self.radiated_w(t_k, t_amb_k);
        let c = self.filament_j_per_k();
        ((v * v / r - loss) / c, (-v * v / (r * r) * r_t - loss_t) / c)
    }
}
