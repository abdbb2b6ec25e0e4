//! Files exactly as written: strings and bare numbers, unknown keys refused.
//!
//! The macro gives each struct its file name and a table of its keys with their ranges. The checker
//! reads ranges from that table and the reference page is printed from it, so that neither can drift.

use serde::Deserialize;
use sim_core::action::Station;
use sim_core::air::Day;
use sim_core::car::RecordKind;
use sim_core::instrument::InstrumentKind;
use sim_core::parts::PartKind;
use sim_core::workshop::Arrival;

use super::block::{Block, KeyDef};
use super::range::{Range, Unit};
use crate::diagram::{Sheet, Side};
use crate::pack::job::{AfterHandBack, Symptom};
use crate::room::{Colour, CoverShape, End, FixtureShape, Shell};

/// Version of the form of every file.
pub(crate) const SCHEMA: u32 = 1;

macro_rules! raw {
    (@range) => { None };
    (@range $min:literal, $max:literal, $unit:ident) => { Some(Range::new($min, $max, Unit::$unit)) };
    (
        $(#[doc = $doc:literal])+
        struct $name:ident = $file:literal {
            $(
                $(#[doc = $fdoc:literal])+
                $(#[serde($attr:ident)])?
                $field:ident: $ty:ty $([$min:literal, $max:literal, $unit:ident])?,
            )*
        }
    ) => {
        $(#[doc = $doc])+
        #[derive(Debug, Deserialize)]
        #[serde(rename = $file, deny_unknown_fields)]
        pub(crate) struct $name {
            $( $(#[doc = $fdoc])+ $(#[serde($attr)])? pub(crate) $field: $ty, )*
        }

        impl Block for $name {
            const NAME: &'static str = $file;
            const DOC: &'static str = concat!($($doc),+);
            const KEYS: &'static [KeyDef] = &[
                $( KeyDef {
                    name: stringify!($field),
                    form: stringify!($ty),
                    range: raw!(@range $($min, $max, $unit)?),
                    doc: concat!($($fdoc),+),
                }, )*
            ];
        }
    };
}

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

raw! {
    /// What is measured when the model's speed is measured: `assets/bench.ron`.
    struct RawBench = "Bench" {
        /// Version of the format: 1.
        schema: u32,
        /// The job whose car is measured: pack/job.
        job: String,
        /// What is done to the car first, in plain words.
        connected: Vec<String>,
        /// The attempt at the job whose runs under hypotheses are counted, in plain words.
        attempt: Vec<String>,
    }
}

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

raw! {
    /// Where a car stands in the room: `assets/rooms/<vehicle>.ron`. Metres; x to the right, y up, z towards the
    /// visitor; the car's nose looks along +z. Turns are degrees about y, then x, then z.
    struct RawRoom = "Room" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name of the car, the same as the file's.
        vehicle: String,
        /// The body round it: saloon, wedge.
        shell: Shell,
        /// Where the brake pedal turns.
        pedal: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Middle of the accelerator's pad.
        accelerator: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Every part that is no hose and no wire, once.
        parts: Vec<RawStand>,
        /// Every hose, every wire and every joint between two terminals, once.
        ways: Vec<RawWay>,
        /// Every cover, once.
        covers: Vec<RawCoverStand>,
        /// What else stands there; left out = nothing.
        #[serde(default)]
        fixtures: Vec<RawFixture>,
    }
}

raw! {
    /// A part in the room; in `Room.parts`. Its shape follows from its kind and its numbers.
    struct RawStand = "Stand" {
        /// Short name of the part.
        part: String,
        /// Middle of its body.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
        /// Where it is pointed at, from its middle and turned with it; left out = its middle.
        #[serde(default)]
        hold: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Every port of it, once.
        ports: Vec<RawMouth>,
    }
}

raw! {
    /// A fitting or terminal; in `Stand.ports`. From the part's middle, and turned with it.
    struct RawMouth = "Mouth" {
        /// The port's name within the part.
        port: String,
        /// Where it ends.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// The way in which a hose or wire leaves it; any length but none.
        out: (f64, f64, f64) [-10.0, 10.0, InName],
        /// The way in which the fitting itself stands, where a wire leaves it sideways; left out = the way out.
        #[serde(default)]
        axis: Option<(f64, f64, f64)> [-10.0, 10.0, InName],
    }
}

raw! {
    /// The way of a hose or wire; in `Room.ways`. How thick it looks follows from its bore or its area.
    struct RawWay = "Way" {
        /// Short name of the hose or wire, or of a joint between two terminals (a wire that is no part).
        line: String,
        /// Points it passes between its fittings, from its port a to its port b; left out = it goes straight.
        #[serde(default)]
        points: Vec<(f64, f64, f64)> [-4.0, 4.0, Metre],
        /// Colour of a wire: black, red, brown, green, blue, yellow, white, braid (flat, bare copper); left out
        /// = black. A hose has none.
        #[serde(default)]
        colour: Option<Colour>,
        /// How a wire ends: plug, eye (a ring under a nut); left out = plug. A hose has none.
        #[serde(default)]
        end: Option<End>,
        /// Cross-section of a joint's wire; a part has its own.
        #[serde(default)]
        area_mm2: Option<f64> [0.35, 50.0, InName],
    }
}

raw! {
    /// A cover in the room; in `Room.covers`.
    struct RawCoverStand = "CoverStand" {
        /// Short name of the cover.
        cover: String,
        /// What it looks like, as under "Covers and fixtures of a room" below.
        shape: CoverShape,
        /// Where it is, fitted.
        on: RawSpot,
        /// Where it lies, taken off.
        off: RawSpot,
    }
}

raw! {
    /// Where something stands and how it is turned.
    struct RawSpot = "Spot" {
        /// Its middle.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
    }
}

raw! {
    /// What stands in the car without being a part of its circuits; in `Room.fixtures`.
    struct RawFixture = "Fixture" {
        /// What it is, as under "Covers and fixtures of a room" below.
        shape: FixtureShape,
        /// Its middle.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
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

raw! {
    /// A pack: `scenarios/<pack>/pack.ron`.
    struct RawPack = "Pack" {
        /// Version of the format: 1.
        schema: u32,
        /// Title.
        title: String,
        /// Who wrote it.
        author: String,
        /// Licence of the texts.
        licence: String,
        /// Language of the texts, as a tag: `en`.
        language: String,
        /// Least total for *competent*.
        cut_score: f64 [1.0, 100.0, OfHundred],
        /// Weights of the mark's parts; rescaled to 100.
        weights: RawWeights,
        /// Instruments allowed, short names.
        tools: Vec<String>,
        /// What the pack exercises; may be empty.
        competences: Vec<RawCompetence>,
        /// What is told once a car is handed back: `Everything`, or `Nothing` (only that it was handed in; whoever
        /// holds the pack marks it with `pinhole mark`); left out = Everything.
        #[serde(default)]
        after_hand_back: AfterHandBack,
        /// Jobs in order, short names of `jobs/<job>.ron`.
        jobs: Vec<String>,
    }
}

raw! {
    /// Weights of the parts of the mark; in `Pack.weights`.
    struct RawWeights = "Weights" {
        /// V: verdict with certainty.
        verdict: f64 [0.0, 100.0, InName],
        /// E: evidence.
        evidence: f64 [0.0, 100.0, InName],
        /// F: economy; 0 in `score/1` so far.
        economy: f64 [0.0, 100.0, InName],
        /// R: parts.
        parts: f64 [0.0, 100.0, InName],
        /// Q: release checks.
        release: f64 [0.0, 100.0, InName],
        /// D: record.
        record: f64 [0.0, 100.0, InName],
    }
}

raw! {
    /// A competence; in `Pack.competences`.
    struct RawCompetence = "Competence" {
        /// Name of the framework.
        framework: String,
        /// Its edition.
        edition: String,
        /// Code within it.
        code: String,
    }
}

raw! {
    /// A job: `scenarios/<pack>/jobs/<job>.ron`.
    struct RawJob = "Job" {
        /// Version of the format: 1.
        schema: u32,
        /// Title on the card.
        title: String,
        /// Short name of the car.
        vehicle: String,
        /// The customer's words, line by line.
        complaint: Vec<String>,
        /// The complaint as something simulated: `ShortRest(below_s: …)`, `HumsKeyOff`,
        /// `HardPedalAfterNight(above_kpa_gauge: …)`, `LongRun(above_s: …)`.
        symptom: Symptom,
        /// The hidden faults; empty = everything inside its limits.
        hidden: Vec<RawHidden>,
        /// The day: `Day(altitude_m: …, weather_kpa: …, ambient_c: …, night_drop_k: …)`.
        day: Day,
        /// How the car came in: `Arrival(driven: …, stood_min: …)`.
        arrival: Arrival,
        /// Spares in store, short names; left out = all of the car's.
        #[serde(default)]
        spares: Option<Vec<String>>,
        /// Instruments allowed, short names; left out = all of the pack's.
        #[serde(default)]
        tools: Option<Vec<String>>,
        /// Longest time allowed, attended minutes.
        time_limit_min: f64 [5.0, 600.0, InName],
        /// Cautions for this job, in sentences; at least one.
        hazards: Vec<String>,
        /// What is told after the hand-back, in paragraphs.
        debrief: Vec<String>,
        /// File name of the scripted reference attempt in `reference/`; it may not exist yet.
        reference: String,
    }
}

raw! {
    /// A hidden fault; in `Job.hidden`.
    struct RawHidden = "Hidden" {
        /// Short name of the fault in the car's catalogue.
        fault: String,
        /// Severity, inside the catalogue's range, in the unit of the fault's number.
        severity: f64,
    }
}

/// Ranges of the blocks whose types live in other crates.
pub(crate) mod ranges {
    use super::{Range, Unit};

    /// `Day.altitude_m`.
    pub(crate) const ALTITUDE_M: Range = Range::new(-400.0, 4500.0, Unit::InName);
    /// `Day.weather_kpa`.
    pub(crate) const WEATHER_KPA: Range = Range::new(-6.0, 5.0, Unit::InName);
    /// `Day.ambient_c`.
    pub(crate) const AMBIENT_C: Range = Range::new(-30.0, 45.0, Unit::InName);
    /// `Day.night_drop_k`.
    pub(crate) const NIGHT_DROP_K: Range = Range::new(0.0, 25.0, Unit::InName);
    /// `Arrival.stood_min`.
    pub(crate) const STOOD_MIN: Range = Range::new(0.0, 10_000.0, Unit::InName);
    /// `ShortRest.below_s`, `LongRun.above_s`.
    pub(crate) const SYMPTOM_S: Range = Range::new(1.0, 43_200.0, Unit::InName);
    /// `HardPedalAfterNight.above_kpa_gauge`.
    pub(crate) const SYMPTOM_KPA: Range = Range::new(-100.0, 0.0, Unit::InName);
    /// `Place.at`, `Place.points`.
    pub(crate) const GRID: Range = Range::new(0.0, 400.0, Unit::GridStep);
    /// `Place.turn`.
    pub(crate) const TURN: Range = Range::new(0.0, 3.0, Unit::QuarterTurn);
    /// Sizes of `CoverShape` and `FixtureShape`.
    pub(crate) const SIZE_M: Range = Range::new(0.005, 3.0, Unit::InName);
    /// `Dial.class`.
    pub(crate) const CLASS: Range = Range::new(0.05, 10.0, Unit::OfSpan);
    /// `Dial.min`, `Dial.max`.
    pub(crate) const DIAL: Range = Range::new(-1e4, 1e4, Unit::Instrument);
    /// `Dial.division`.
    pub(crate) const DIVISION: Range = Range::new(1e-4, 1e3, Unit::Instrument);
    /// `DigitalRange.max`.
    pub(crate) const DISPLAY_MAX: Range = Range::new(1e-3, 1e9, Unit::Instrument);
    /// `DigitalRange.resolution`.
    pub(crate) const RESOLUTION: Range = Range::new(1e-6, 1e3, Unit::Instrument);
    /// `DigitalRange.percent`.
    pub(crate) const PERCENT: Range = Range::new(0.0, 20.0, Unit::OfReading);
    /// `DigitalRange.counts`.
    pub(crate) const COUNTS: Range = Range::new(0.0, 100.0, Unit::Count);
    /// `Stopwatch.reaction_s`.
    pub(crate) const REACTION_S: Range = Range::new(0.0, 2.0, Unit::InName);
    /// `IrThermometer.emissivity_set`, `emissivity_metal`.
    pub(crate) const EMISSIVITY: Range = Range::new(0.05, 1.0, Unit::InName);
}
