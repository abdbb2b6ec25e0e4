//! An instrument as written.

use sim_core::instrument::InstrumentKind;
use sim_core::parts::PartKind;

raw! {
    /// An instrument: `assets/instruments/<id>.ron`.
    struct RawInstrument = "Instrument" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name, the same as the file's.
        id: String,
        /// Name in words.
        name: String,
        /// Kind and display, as under "Displays" below.
        kind: InstrumentKind,
        /// What the circuit feels of it (volume, resistance, lag); left out = nothing.
        #[serde(default)]
        part: Option<PartKind>,
        /// Minutes to connect it.
        fit_min: f64 [0.0, 30.0, InName],
        /// One sentence about what it is for and what it cannot do.
        help: String,
    }
}
