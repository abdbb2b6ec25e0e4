//! The catalogue of a car as written: tolerances, repair units, faults, data sheet, record, spares.

use sim_core::car::RecordKind;

raw! {
    /// How far a number may lie from new; in `Vehicle.tolerances`. New is the part's own number.
    struct RawTolerance = "Tolerance" {
        /// The number: `part.param`.
        param: String,
        /// Range in which a used part still serves; sound cars are drawn from it. In the unit of the number.
        serviceable: (f64, f64),
        /// Range beyond which the part is outside its limit. In the unit of the number.
        limit: (f64, f64),
    }
}

raw! {
    /// What is replaced or mended as one, the class of a finding; in `Vehicle.units`.
    struct RawUnit = "Unit" {
        /// Short name.
        id: String,
        /// Name in words.
        name: String,
        /// Short names of its parts; a part is in one unit at most.
        parts: Vec<String>,
        /// Price of a new one, shop money.
        price: f64 [0.0, 10000.0, ShopMoney],
        /// Minutes to replace it, access not included.
        swap_min: f64 [0.0, 600.0, InName],
        /// Can be pulled by hand; left out = no.
        #[serde(default)]
        plug_in: bool,
        /// Numbers that cleaning sets back to new (`part.param`); left out = none.
        #[serde(default)]
        cleans: Vec<String>,
        /// A moulded hose that can be re-formed; left out = no.
        #[serde(default)]
        reforms: bool,
    }
}

raw! {
    /// Something that can be wrong; in `Vehicle.faults`. The severity is the value of one number.
    struct RawFault = "Fault" {
        /// Short name.
        id: String,
        /// Name in words.
        name: String,
        /// Short name of the repair unit that cures it.
        unit: String,
        /// The number it changes: `part.param`.
        param: String,
        /// Lowest severity, just outside the limit. In the unit of the number.
        severity_min: f64,
        /// Highest severity, further out on the same side. In the unit of the number.
        severity_max: f64,
        /// How common it is against the others.
        commonness: f64 [0.01, 100.0, Weight],
    }
}

raw! {
    /// A line of the data sheet; in `Vehicle.limits`. At least one of `min` and `max`.
    struct RawLimit = "Limit" {
        /// Short name.
        id: String,
        /// What is measured and how, in a sentence.
        text: String,
        /// Smallest value allowed, in `unit`; left out = none.
        #[serde(default)]
        min: Option<f64>,
        /// Largest value allowed, in `unit`; left out = none.
        #[serde(default)]
        max: Option<f64>,
        /// Unit: kPa, V, A, ohm, C, s, deg, mm, times.
        unit: String,
        /// Both bounds scale with the day's pressure over 101.325 kPa; left out = no.
        #[serde(default)]
        scales_with_day: bool,
        /// A largest value that grows in thin air; left out = it does not.
        #[serde(default)]
        max_in_thin_air: Option<RawThinAir>,
    }
}

raw! {
    /// The largest value at a low day's pressure; straight line up to `max` at 101.325 kPa.
    struct RawThinAir = "ThinAir" {
        /// The day's pressure, kPa absolute.
        p_kpa_abs: f64 [50.0, 100.0, InName],
        /// Largest value allowed there, in the unit of the limit.
        max: f64,
    }
}

raw! {
    /// A line of the record; in `Vehicle.record`.
    struct RawRecord = "Record" {
        /// Short name the trainee uses: `cut-out`.
        id: String,
        /// In words, with the condition.
        text: String,
        /// What must have been done: day_pressure, battery_voltage, pump_run, pump_rest, cut_out, cut_in,
        /// release_build_up, release_drop, release_reserve, release_no_rise, release_rest, release_yard.
        kind: RecordKind,
        /// Short name of the limit it is held against; left out = none.
        #[serde(default)]
        limit: Option<String>,
    }
}

raw! {
    /// The spares for a car: `assets/spares/<vehicle>.ron`.
    struct RawSpares = "Spares" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name of the car, the same as the file's.
        vehicle: String,
        /// The spares.
        spares: Vec<RawSpare>,
    }
}

raw! {
    /// A spare in the store; in `Spares.spares`.
    struct RawSpare = "Spare" {
        /// Short name.
        id: String,
        /// Name in words.
        name: String,
        /// Short name of the repair unit it replaces.
        unit: String,
        /// Price, shop money.
        price: f64 [0.0, 10000.0, ShopMoney],
        /// Numbers that differ from new: a used part. Left out = new.
        #[serde(default)]
        params: Vec<RawParam>,
    }
}

raw! {
    /// One number; in `Spare.params`.
    struct RawParam = "Param" {
        /// The number: `part.param`.
        param: String,
        /// Its value, in the unit and range of the number.
        value: f64,
    }
}
