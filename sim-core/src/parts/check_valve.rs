//! Check valve in a line: lets air out of the store to the source, not back.
//!
//! The body's volume lies on the source side; the seat is at the port `store`.
//! Not modelled: flutter, wear by count of strokes.

use crate::flow::iso6358::{C_PER_MM2, Iso6358};
use crate::flow::nipple::{self, B_SHORT_WAY};
use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Behind, Chamber, Depth, Electric, Mouth, Passage, Seen, Spec, Specified, Volume,
};

part_params! {
    /// A check valve; ports `store` (towards the booster) and `source` (towards pump or manifold).
    pub struct CheckValve {
        /// Bore when fully open, mm.
        bore_mm: 2.0 ..= 30.0,
        /// Volume of the body, cm³.
        volume_cm3: 2.0 ..= 50.0,
        /// Pressure difference at which it begins to open, kPa.
        crack_kpa: 0.1 ..= 20.0,
        /// Leak past the closed seat of a sound valve, as a hole, mm.
        seat_leak_mm: 0.0 ..= 0.2,
        faults {
            /// Leak back past a dirty or worn seat, as a hole, mm.
            back_leak_mm: 0.0 ..= 8.0,
            /// Share of the opening that is lost; 1 = stuck shut.
            blocked: 0.0 ..= 1.0,
            /// Least lift of a plate held off its seat, share of full lift.
            held_open: 0.0 ..= 1.0,
        }
    }
}

impl CheckValve {
    /// The seat's law, forward from store to source.
    #[must_use]
    pub fn law(&self) -> CheckLaw {
        let area = |d: f64| std::f64::consts::FRAC_PI_4 * d * d;
        let leak_mm2 = area(self.seat_leak_mm) + area(self.back_leak_mm);
        CheckLaw {
            open: Iso6358 { c: 0.7 * area(self.bore_mm) * C_PER_MM2 * (1.0 - self.blocked), b: B_SHORT_WAY },
            p_crack: self.crack_kpa * 1e3,
            // Full lift at 2 kPa above cracking (common practice, no source).
            p_span: 2_000.0,
            leak: Pinhole { area: leak_mm2 * 1e-6, ideal: false },
            lift_min: self.held_open,
        }
    }

    /// Resistance of the open nipple on the source side.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for CheckValve {
    const SEEN: Seen = Seen::ONE_WAY;

    fn spec(&self, _: f64) -> Spec {
        let store = Mouth::to(0, Behind::Chamber(Chamber::Body), Passage::Seat(self.law()));
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::Valve, self.volume_cm3)],
                mouths: vec![store, Mouth::body(1, self.nipple())],
                flow_paths: vec![],
            },
            electric: Electric::NONE,
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
