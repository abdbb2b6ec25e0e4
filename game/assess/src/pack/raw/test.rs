//! The tests of a car as written.

use crate::plan::test::Kind;

raw! {
    /// What technicians can try at a car: `assets/tests/<vehicle>.ron`. A car may have none.
    struct RawTests = "Tests" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name of the car, the same as the file's.
        vehicle: String,
        /// The tests.
        tests: Vec<RawTest>,
    }
}

raw! {
    /// A test; in `Tests.tests`. Its lines are those of the text bench, done one after the other in four parts. By
    /// itself it begins with a car as it came in, shows the same whatever was done before, and leaves the car as it was:
    /// what lasts (key, engine, pedal, chocks, extraction, covers, joints, stops, pulled units, fitted instruments, the
    /// dial of a meter) is undone by its end. What it needs of car and tool board is taken from its lines.
    struct RawTest = "Test" {
        /// Short name: small letters, digits and `-`.
        id: String,
        /// Name in words.
        name: String,
        /// What it is about: condition, air, electric, by_ear, by_eye.
        kind: Kind,
        /// What has to be so before. What comes first in it and only lasts (`cover … off`, `open …`) is shared with the
        /// test before; left out = nothing.
        #[serde(default)]
        set_up: Vec<String>,
        /// What is done to the car; left out = nothing.
        #[serde(default)]
        stimulus: Vec<String>,
        /// What is looked at; `note shown` notes the last reading, `note 1 shown` the first of this test, `note shown for`
        /// fills a line of the record. A line that the car may refuse begins with `try`.
        readings: Vec<String>,
        /// What makes the car as it was; left out = nothing.
        #[serde(default)]
        undo: Vec<String>,
    }
}
