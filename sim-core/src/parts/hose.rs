//! Vacuum hose: one volume between two half-restrictions, with the ways in which a hose ages.
//!
//! Sonic conductance and critical ratio of a tube by bore and length after ISO 6358-3 practice:
//! C = 0.029 d² / √(L/d^1.25 + 510) (SI), b = 474 C / d² (from memory). Each half has √2 C, so that the
//! two in series give C again. How a hose ages, each by a number of its own:
//!
//! * a hole (sharp-edged) and a porous wall (seep, laminar);
//! * a kink: a share of C is lost at any pressure, the bore elsewhere is as it was;
//! * sludge: a lining along the whole length, so that bore, C and the volume shrink together;
//! * a soft wall: under vacuum it pulls in and C falls, and at rest the hose looks whole ([`open_share`]);
//! * hardening: the bend has moved, the end out of line with its fitting leaks through the gap it leaves,
//!   and more while the engine shakes.
//!
//! Not modelled: wave travel, the volume a wall gives up as it pulls in, a wall that stays flat.

use crate::flow::iso6358::Iso6358;
use crate::math;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Chamber, Depth, Electric, FlowPath, Gap, Mouth, Seen, Spec, Specified, Volume,
};

pub use crate::parts::elements::{SOFT_BEGINS_PA, SOFT_SPAN_PA, open_share};

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
            /// Share of the cross-section that is lost to a kink or a plug of dirt.
            blocked: 0.0 ..= 1.0,
            /// Thickness of a lining of oil sludge along the whole length, mm.
            sludge_mm: 0.0 ..= 10.0,
            /// Share of the conductance that a soft wall shuts off once vacuum has pulled it in.
            collapse: 0.0 ..= 0.999,
            /// Bend moved from where it was made, degrees; adds to the angle of the bend.
            bend_moved_deg: -60.0 ..= 60.0,
        }
    }
}

impl Hose {
    /// Volume of the air inside, m³ (2 cm³ at least).
    #[must_use]
    pub fn volume_m3(&self) -> f64 {
        let d = self.clear_m();
        (std::f64::consts::FRAC_PI_4 * d * d * self.length_m).max(2e-6)
    }

    /// Inner surface, m².
    #[must_use]
    pub fn surface_m2(&self) -> f64 {
        std::f64::consts::PI * self.bore_mm * 1e-3 * self.length_m
    }

    /// Bore that sludge leaves free, m; half a millimetre stays.
    #[must_use]
    pub fn clear_m(&self) -> f64 {
        (self.bore_mm - 2.0 * self.sludge_mm).max(0.5) * 1e-3
    }

    /// One half of the hose's resistance.
    #[must_use]
    pub fn half(&self) -> Iso6358 {
        let d = self.clear_m();
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

impl Specified for Hose {
    const SEEN: Seen = Seen::LINE;

    fn spec(&self, _: f64) -> Spec {
        let half = self.half();
        let end = |port| Mouth { collapse: Some(self.collapse), ..Mouth::body(port, half) };
        // The bend is at the end `a`.
        let still = self.gap_mm2(false);
        let gap = (0.0 < still).then(|| Gap { still: still * 1e-6, shaking: self.gap_mm2(true) * 1e-6 });
        let flow_paths = [
            FlowPath::hole(Chamber::Body, self.pinhole_mm),
            FlowPath::seep(Chamber::Body, self.seep_cm3_per_min),
        ];
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::body(Depth::Line, self.volume_m3(), self.surface_m2())],
                mouths: vec![Mouth { gap, ..end(0) }, end(1)],
                flow_paths: flow_paths.into_iter().flatten().collect(),
            },
            electric: Electric::NONE,
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
