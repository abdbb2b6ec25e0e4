//! Vacuum hose: one volume between two half-restrictions, with the ways a hose ages.
//!
//! Sonic conductance and critical ratio of a tube by bore and length after ISO 6358-3 practice:
//! C = 0.029 d² / √(L/d^1.25 + 510) (SI), b = 474 C / d² (from memory). Each half has √2 C, so that the
//! two in series give C again. Ageing: pinhole, porous wall (seep, laminar), narrowing by sludge or a
//! kink, and a bend that has moved: an end out of line with its fitting leaks through the gap it leaves.
//! Not modelled: collapse under vacuum, wave travel, the hose's own elasticity.

use crate::flow::iso6358::Iso6358;
use crate::math;
use crate::params::part_params;

part_params! {
    /// A hose or pipe; ports `a` and `b`, both pneumatic.
    pub struct Hose {
        /// Inner diameter, mm.
        bore_mm: 2.0 ..= 30.0,
        /// Length along the centre line, m.
        length_m: 0.02 ..= 5.0,
        /// Seep of the sound wall and its two joints into a perfect vacuum, cm³ of free air a minute.
        seep_cm3_per_min: 0.0 ..= 20.0,
        /// Angle of the moulded bend that fits the fittings, degrees.
        bend_fit_deg: 0.0 ..= 180.0,
        /// Angle of the bend as it is, degrees.
        bend_deg: 0.0 ..= 180.0,
        faults {
            /// Diameter of a hole in the wall, mm.
            pinhole_mm: 0.0 ..= 5.0,
            /// Share of the cross-section that is lost to a kink or sludge.
            blocked: 0.0 ..= 1.0,
            /// Bend moved from where it was made, degrees; adds to the angle of the bend.
            bend_moved_deg: -60.0 ..= 60.0,
        }
    }
}

impl Hose {
    /// Volume of the air inside, m³ (2 cm³ at least).
    #[must_use]
    pub fn volume_m3(&self) -> f64 {
        let d = self.bore_mm * 1e-3;
        (std::f64::consts::FRAC_PI_4 * d * d * self.length_m).max(2e-6)
    }

    /// Inner surface, m².
    #[must_use]
    pub fn surface_m2(&self) -> f64 {
        std::f64::consts::PI * self.bore_mm * 1e-3 * self.length_m
    }

    /// One half of the hose's resistance.
    #[must_use]
    pub fn half(&self) -> Iso6358 {
        let d = self.bore_mm * 1e-3;
        let c = 0.029 * d * d / (self.length_m / math::pow(d, 1.25) + 510.0).sqrt();
        let b = (474.0 * c / (d * d)).clamp(0.05, 0.6);
        Iso6358 { c: c * std::f64::consts::SQRT_2 * (1.0 - self.blocked).max(0.0), b }
    }

    /// The angle an angle finder would show, degrees.
    #[must_use]
    pub fn bend_now_deg(&self) -> f64 {
        self.bend_deg + self.bend_moved_deg
    }

    /// Area of the gap that a bend out of line leaves at the fitting, mm²; the first degrees are taken
    /// up by the rubber, and a shaking engine opens the gap half as far again.
    #[must_use]
    pub fn gap_mm2(&self, engine_shakes: bool) -> f64 {
        /// Degrees the rubber takes up without a gap (common practice, no source).
        const TAKEN_UP_DEG: f64 = 6.0;
        /// Gap per further degree, mm² (common practice, no source).
        const GAP_MM2_PER_DEG: f64 = 0.006;
        let off = ((self.bend_now_deg() - self.bend_fit_deg).abs() - TAKEN_UP_DEG).max(0.0);
        off * GAP_MM2_PER_DEG * if engine_shakes { 1.5 } else { 1.0 }
    }
}
