//! A car as written: its parts, joints and covers.

use sim_core::action::Station;
use sim_core::parts::PartKind;

use super::catalogue::RawFault;
use super::catalogue::RawLimit;
use super::catalogue::RawRecord;
use super::catalogue::RawTolerance;
use super::catalogue::RawUnit;

raw! {
    /// A car: `assets/vehicles/<id>.ron`.
    struct RawVehicle = "Vehicle" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name, the same as the file's.
        id: String,
        /// Name in words.
        name: String,
        /// Altitude up to which the pump reaches its cut-out, m.
        altitude_limit_m: f64 [0.0, 5000.0, InName],
        /// Parts in fixed order; the order is part of every state digest.
        parts: Vec<RawPart>,
        /// Joints in fixed order.
        joints: Vec<RawJoint>,
        /// Numbers that differ between sound cars, with the limit a fault must breach.
        tolerances: Vec<RawTolerance>,
        /// What bars access.
        covers: Vec<RawCover>,
        /// What is replaced or mended as one.
        units: Vec<RawUnit>,
        /// What can be wrong.
        faults: Vec<RawFault>,
        /// The data sheet.
        limits: Vec<RawLimit>,
        /// The record that every job of this car asks for.
        record: Vec<RawRecord>,
        /// Cautions on the data sheet, in sentences.
        cautions: Vec<String>,
    }
}

raw! {
    /// A part with its place; in `Vehicle.parts`.
    struct RawPart = "Part" {
        /// Short name: small letters, digits and `_`.
        id: String,
        /// Name in words.
        name: String,
        /// Where one stands to reach it: desk, cab, bay, front, bench.
        station: Station,
        /// Short name of the cover that bars it; left out = none.
        #[serde(default)]
        behind: Option<String>,
        /// Bright metal, on which an infrared thermometer reads low; left out = no.
        #[serde(default)]
        bright_metal: bool,
        /// Rubber, which may be clamped; left out = no.
        #[serde(default)]
        rubber: bool,
        /// Has a surface whose temperature the model knows; left out = no.
        #[serde(default)]
        warm: bool,
        /// Kind and numbers of the new part, as under "Parts" below: `Hose((bore_mm: 8.0, …))`.
        kind: PartKind,
    }
}

raw! {
    /// Two ports that belong together; in `Vehicle.joints`. An air port has one joint at most.
    struct RawJoint = "Joint" {
        /// Short name: small letters, digits and `_`.
        id: String,
        /// One port: `part.port`.
        a: String,
        /// The other port, carrying the same.
        b: String,
    }
}

raw! {
    /// What bars access; in `Vehicle.covers`.
    struct RawCover = "Cover" {
        /// Short name.
        id: String,
        /// Name in words.
        name: String,
        /// Where one stands to work on it.
        station: Station,
        /// Minutes to remove it.
        off_min: f64 [0.0, 120.0, InName],
        /// Minutes to refit it.
        on_min: f64 [0.0, 120.0, InName],
    }
}
