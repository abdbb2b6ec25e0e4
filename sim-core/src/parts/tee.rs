//! Distribution piece: one small volume with up to four nipples.

use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;

part_params! {
    /// A tee or four-way piece; ports `1` to `4`, all pneumatic.
    pub struct Tee {
        /// Bore of each nipple, mm.
        bore_mm: 1.0 ..= 30.0,
        /// Volume of the air inside, cm³.
        volume_cm3: 2.0 ..= 500.0,
        faults {
            /// Diameter of a crack in the body, as a hole, mm.
            crack_mm: 0.0 ..= 5.0,
        }
    }
}

impl Tee {
    /// The resistance of one nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}
