//! A car as the workshop needs it: parts and joints, limits, repair units, faults, covers, record.
//!
//! Checked data, made by `assess::pack` from `assets/vehicles/*.ron`. Every name in it resolves, every
//! number lies in its range. **Sound is not perfect**: sound parts are drawn inside *serviceable*, and a
//! fault's lowest severity breaches *limit*.

use crate::action::Station;
use crate::air::P_SEA_LEVEL_PA;
use crate::assembly::Assembly;
use crate::parts::PartKind;
use crate::units::AbsPressure;

/// A car.
#[derive(Clone, Debug, PartialEq)]
pub struct Car {
    /// Short name, that of its file.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Parts and joints with the numbers of a new car.
    pub assembly: Assembly,
    /// Where each part of `assembly.parts` is, same order.
    pub stands: Vec<Standing>,
    /// Numbers that differ between sound cars.
    pub tolerances: Vec<Tolerance>,
    /// What is replaced or mended as one.
    pub units: Vec<RepairUnit>,
    /// What can be wrong.
    pub faults: Vec<FaultDef>,
    /// What bars access.
    pub covers: Vec<Cover>,
    /// The data sheet: limits a reading is held against.
    pub limits: Vec<Limit>,
    /// The record that every job of this car asks for.
    pub record: Vec<RecordItem>,
    /// Altitude up to which the pump can reach its cut-out, m.
    pub altitude_limit_m: f64,
    /// Cautions on the data sheet, in sentences.
    pub cautions: Vec<String>,
}

impl Car {
    /// Up to which altitude its electric pump reaches its cut-out, m; `None` for a car whose pump has none to reach.
    #[must_use]
    pub fn cut_out_height_m(&self) -> Option<f64> {
        let electric = self.assembly.parts.iter().any(|part| matches!(part.kind, PartKind::VacuumPump(_)));
        electric.then_some(self.altitude_limit_m)
    }
}

/// Where a part is and what it is called.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Name in words: "hose from the manifold valve to the engine".
    pub name: String,
    /// Where one stands to reach it.
    pub station: Station,
    /// Short name of the cover that bars it, if any.
    pub behind: Option<String>,
    /// Bright metal, on which an infrared thermometer reads low.
    pub bright_metal: bool,
    /// Rubber, which may be clamped (hard pipe cracks).
    pub rubber: bool,
    /// Has a surface whose temperature the model knows (pump case).
    pub warm: bool,
}

/// A number that differs between sound cars.
#[derive(Clone, Debug, PartialEq)]
pub struct Tolerance {
    /// `part.param`.
    pub param: String,
    /// Value of a new part.
    pub new: f64,
    /// Range in which a used part still serves; sound cars are drawn from it.
    pub serviceable: (f64, f64),
    /// Range beyond which the part is outside its limit.
    pub limit: (f64, f64),
}

/// What is replaced or mended as one; the class of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairUnit {
    /// Short name: `pump`, `relay`.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Parts it consists of, indices into `assembly.parts`.
    pub parts: Vec<u16>,
    /// Price of a new one, in the shop's money.
    pub price: f64,
    /// Minutes to replace it, access not included.
    pub swap_min: f64,
    /// A plug-in unit that can be pulled by hand (relay, fuse).
    pub plug_in: bool,
    /// Parameters that cleaning sets back to their new value (`part.param`), if any.
    pub cleans: Vec<String>,
    /// Re-forming is possible (a rubber hose with a moulded bend).
    pub reforms: bool,
}

/// Something that can be wrong: one parameter of one part, outside its limit.
#[derive(Clone, Debug, PartialEq)]
pub struct FaultDef {
    /// Short name: `valve_m_leaks_back`.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Repair unit that cures it (index into `units`).
    pub unit: u16,
    /// Parameter it changes, `part.param`; the severity is its value.
    pub param: String,
    /// Lowest severity: just outside the limit.
    pub severity_min: f64,
    /// Highest severity in the catalogue.
    pub severity_max: f64,
    /// How common it is against the others, relative weight > 0.
    pub commonness: f64,
}

/// A cover that bars access.
#[derive(Clone, Debug, PartialEq)]
pub struct Cover {
    /// Short name.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Where one stands to work on it.
    pub station: Station,
    /// Minutes to remove it.
    pub off_min: f64,
    /// Minutes to refit it.
    pub on_min: f64,
}

/// A line of the data sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// Short name.
    pub id: String,
    /// What is measured and how, in a sentence.
    pub text: String,
    /// Smallest value allowed, if any.
    pub min: Option<f64>,
    /// Largest value allowed, if any.
    pub max: Option<f64>,
    /// Unit.
    pub unit: String,
    /// Both bounds scale with the day's pressure over 101.325 kPa.
    pub scales_with_day: bool,
    /// A largest value that grows in thin air: at this day's pressure (kPa absolute) it is the second
    /// number; between there and 101.325 kPa it lies on a straight line, above it is `max`.
    pub max_in_thin_air: Option<(f64, f64)>,
}

impl Limit {
    /// Smallest and largest value allowed on a day of pressure `day`.
    #[must_use]
    pub fn bounds(&self, day: AbsPressure) -> (Option<f64>, Option<f64>) {
        const SEA_KPA: f64 = P_SEA_LEVEL_PA * 1e-3;
        let scale = if self.scales_with_day { day.kpa() / SEA_KPA } else { 1.0 };
        let max = match (self.max, self.max_in_thin_air) {
            (Some(max), Some((thin_kpa, thin_max))) => {
                let share = ((SEA_KPA - day.kpa()) / (SEA_KPA - thin_kpa)).clamp(0.0, 1.0);
                Some(max + (thin_max - max) * share)
            }
            (max, _) => max.map(|v| v * scale),
        };
        (self.min.map(|v| v * scale), max)
    }
}

/// What a record line asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RecordKind {
    /// Barometer reading of the day.
    DayPressure,
    /// Voltage across the battery, key off.
    BatteryVoltage,
    /// Time the pump runs from a store at the day's pressure until it stops.
    PumpRun,
    /// Time the pump rests with nobody touching the pedal.
    PumpRest,
    /// Gauge at the store just after the pump has stopped (within 5 s): the switch's opening point.
    CutOut,
    /// Gauge at the store just after the pump has started by itself (within 5 s): the closing point.
    CutIn,
    /// Release: time to build up vacuum from an empty store.
    ReleaseBuildUp,
    /// Release: the held pedal drops when the engine starts.
    ReleaseDrop,
    /// Release: at least two assisted applications with the engine off.
    ReleaseReserve,
    /// Release: the pedal held 30 s after switching off does not rise.
    ReleaseNoRise,
    /// Release: pump stops and rests as long as the limit asks.
    ReleaseRest,
    /// Release: slow brake test in the yard.
    ReleaseYard,
}

impl RecordKind {
    /// Whether the line belongs to the release checks, done after the last change.
    #[must_use]
    pub fn is_release(self) -> bool {
        matches!(
            self,
            Self::ReleaseBuildUp
                | Self::ReleaseDrop
                | Self::ReleaseReserve
                | Self::ReleaseNoRise
                | Self::ReleaseRest
                | Self::ReleaseYard
        )
    }
}

/// A line of the record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordItem {
    /// Short name the trainee uses: `day`, `battery`, `run`, `rest`, `cut-out`.
    pub id: String,
    /// In words, with the condition.
    pub text: String,
    /// What must have been done for it to count.
    pub kind: RecordKind,
    /// Limit it is held against (index into `Car::limits`), if any.
    pub limit: Option<u16>,
}

/// A spare in the store.
#[derive(Clone, Debug, PartialEq)]
pub struct Spare {
    /// Short name: `valve_m_new`.
    pub id: String,
    /// Name in words.
    pub name: String,
    /// Repair unit it replaces (index into `Car::units`).
    pub unit: u16,
    /// Price.
    pub price: f64,
    /// Numbers that differ from new (`part.param`, value): a used part of unknown wear.
    pub params: Vec<(String, f64)>,
}
