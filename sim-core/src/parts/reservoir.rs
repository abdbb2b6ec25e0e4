//! Vacuum reservoir: one volume with two nipples, of sheet metal or plastic, between source and booster.
//!
//! It keeps vacuum for a few applications more; tees beside it are parts of their own. Not modelled: water that gathers in it, the give of its shell.

use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;

part_params! {
    /// A reservoir; ports `1` and `2`, both pneumatic.
    pub struct Reservoir {
        /// Volume of the air inside, L.
        volume_l: 0.1 ..= 40.0,
        /// Inner surface that warms the air, m².
        surface_m2: 0.01 ..= 5.0,
        /// Bore of each nipple, mm.
        bore_mm: 1.0 ..= 30.0,
        /// Seep of a sound reservoir into a perfect vacuum, cm³ of free air a minute.
        seep_cm3_per_min: 0.0 ..= 20.0,
        faults {
            /// Diameter of a hole rusted through, mm.
            rust_mm: 0.0 ..= 5.0,
        }
    }
}

impl Reservoir {
    /// The resistance of one nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}
