//! A line diagram as written.

use crate::diagram::Sheet;
use crate::diagram::Side;

raw! {
    /// Where the parts of a car stand on its line diagram: `assets/diagrams/<vehicle>.ron`.
    struct RawDiagram = "Diagram" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name of the car, the same as the file's.
        vehicle: String,
        /// Every part on every sheet it belongs to, in the order in which a hand would follow the circuit.
        places: Vec<RawPlace>,
    }
}

raw! {
    /// A part on a sheet; in `Diagram.places`. Its symbol, its ports and its lines follow by themselves.
    struct RawPlace = "Place" {
        /// Short name of the part.
        part: String,
        /// The sheet: air, wiring. A part with air and current has a place on both.
        sheet: Sheet,
        /// Middle of its symbol, steps to the right and down; a step is half a finger's width (12 points);
        /// 0 to 400.
        at: (u32, u32),
        /// Quarter turns clockwise, 0 to 3; left out = 0.
        #[serde(default)]
        turn: u32,
        /// Where its name is written: above, below, left, right, above_left, above_right, below_left,
        /// below_right.
        side: Side,
        /// Its name in a word or two.
        label: String,
        /// A car body's earth points: port and place, `("31a", (60, 28))`; left out = none.
        #[serde(default)]
        points: Vec<(String, (u32, u32))>,
    }
}
