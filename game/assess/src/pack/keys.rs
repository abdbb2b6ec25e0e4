//! The reference page of every key with its form, unit and range, printed from the checker's own tables.

use std::fmt::Write as _;

use sim_core::instrument::InstrumentKind;
use sim_core::parts::ALL_TABLES;

use super::block::{Block, KeyDef};
use super::bounds;
use super::range::Range;
use super::raw::{
    RawBench, RawCompetence, RawCover, RawCoverStand, RawDiagram, RawFault, RawFixture, RawHidden,
    RawInstrument, RawJob, RawJoint, RawLimit, RawMouth, RawPack, RawParam, RawPart, RawPlace, RawPlan,
    RawPlanTest, RawRecord, RawRoom, RawSpare, RawSpares, RawSpot, RawStand, RawTest, RawTests, RawThinAir,
    RawTolerance, RawUnit, RawVehicle, RawWay, RawWeights, ranges,
};

/// Name, meaning and keys of a block.
type Entry = (&'static str, &'static str, &'static [KeyDef]);

const fn entry<B: Block>() -> Entry {
    (B::NAME, B::DOC, B::KEYS)
}

/// Every block of every file.
pub(crate) const BLOCKS: &[Entry] = &[
    entry::<RawVehicle>(),
    entry::<RawPart>(),
    entry::<RawJoint>(),
    entry::<RawTolerance>(),
    entry::<RawCover>(),
    entry::<RawUnit>(),
    entry::<RawFault>(),
    entry::<RawLimit>(),
    entry::<RawThinAir>(),
    entry::<RawRecord>(),
    entry::<RawInstrument>(),
    entry::<RawDiagram>(),
    entry::<RawPlace>(),
    entry::<RawRoom>(),
    entry::<RawStand>(),
    entry::<RawMouth>(),
    entry::<RawWay>(),
    entry::<RawCoverStand>(),
    entry::<RawSpot>(),
    entry::<RawFixture>(),
    entry::<RawSpares>(),
    entry::<RawSpare>(),
    entry::<RawParam>(),
    entry::<RawTests>(),
    entry::<RawTest>(),
    entry::<RawPack>(),
    entry::<RawWeights>(),
    entry::<RawCompetence>(),
    entry::<RawJob>(),
    entry::<RawHidden>(),
    entry::<RawPlan>(),
    entry::<RawPlanTest>(),
    entry::<RawBench>(),
];

/// Key, range, meaning.
type SharedKey = (&'static str, Range, &'static str);

/// Blocks whose types live in `sim-core` or in [`crate::pack::job`].
const SHARED: &[(&str, &[SharedKey])] = &[
    (
        "Day",
        &[
            (
                "altitude_m",
                ranges::ALTITUDE_M,
                "Altitude above sea level; also at most the car's altitude limit.",
            ),
            (
                "weather_kpa",
                ranges::WEATHER_KPA,
                "Departure of the day's pressure from the standard atmosphere.",
            ),
            ("ambient_c", ranges::AMBIENT_C, "Air temperature in the workshop."),
            ("night_drop_k", ranges::NIGHT_DROP_K, "How much colder it gets overnight; left out = 0."),
        ],
    ),
    (
        "Arrival",
        &[("stood_min", ranges::STOOD_MIN, "It has stood since, minutes; `driven` is true or false.")],
    ),
    (
        "Symptom",
        &[
            ("ShortRest.below_s", ranges::SYMPTOM_S, "The pump rests less than this, key on, engine off."),
            ("LongRun.above_s", ranges::SYMPTOM_S, "The pump runs longer than this from an empty store."),
            (
                "HardPedalAfterNight.above_kpa_gauge",
                ranges::SYMPTOM_KPA,
                "Store after a night is above this.",
            ),
        ],
    ),
    (
        "Dial",
        &[
            ("min", ranges::DIAL, "Lower end of the scale."),
            ("max", ranges::DIAL, "Upper end of the scale, above `min`."),
            ("class", ranges::CLASS, "Accuracy class (EN 837-1)."),
            ("division", ranges::DIVISION, "One division; read by eye to half of it."),
        ],
    ),
    (
        "DigitalRange",
        &[
            ("max", ranges::DISPLAY_MAX, "Largest magnitude shown; above it OL."),
            ("resolution", ranges::RESOLUTION, "Value of the last digit."),
            ("percent", ranges::PERCENT, "Error, percent of reading."),
            ("counts", ranges::COUNTS, "Error, counts of the last digit."),
        ],
    ),
    (
        "Covers and fixtures of a room",
        &[
            ("Scuttle.width_m", ranges::SIZE_M, "A louvred tray over the bulkhead; its length along x."),
            ("Scuttle.depth_m", ranges::SIZE_M, "Along z."),
            ("Scuttle.height_m", ranges::SIZE_M, "Of its walls."),
            ("Guard.width_m", ranges::SIZE_M, "A ribbed plate that looks along +z; along x."),
            ("Guard.height_m", ranges::SIZE_M, "Along y."),
            ("Lid.width_m", ranges::SIZE_M, "A padded lid on top of an engine; along x."),
            ("Lid.depth_m", ranges::SIZE_M, "Along z."),
            ("Lid.height_m", ranges::SIZE_M, "Along y."),
            (
                "Block.size_m",
                ranges::SIZE_M,
                "Three numbers: a block of painted sheet metal. Other fixtures: `Board(size_m)`, a board that \
                 things are laid out on, and without numbers `FuseBox`, `Bracket`, `Clip`, `Grommet`.",
            ),
        ],
    ),
    ("Stopwatch", &[("reaction_s", ranges::REACTION_S, "Scatter of the hand, one standard deviation.")]),
    (
        "IrThermometer",
        &[
            ("emissivity_set", ranges::EMISSIVITY, "Emissivity set on the instrument."),
            ("emissivity_metal", ranges::EMISSIVITY, "Emissivity of bright metal, which makes it read low."),
        ],
    ),
];

/// The whole page.
#[must_use]
pub fn reference_page() -> String {
    let mut out = String::from(
        "# Every key of every file\n\n\
         Printed from the tables that the checker reads; do not edit. After a change:\n\
         `PINHOLE_WRITE_KEYS=1 cargo test -p assess keys_page`.\n\n\
         Files are RON, UTF-8, at most 2 MB. Struct names may be written (`Part(…)`); unknown keys are\n\
         refused. The unit is the last word of a key: `_kpa` gauge pressure or difference in kPa,\n\
         `_kpa_abs` absolute, `_mm`, `_mm2`, `_cm3`, `_min` minutes, `_s` seconds, `_ohm`, `_mohm`\n\
         milliohm (megohm only in `input_megohm`), `_c` degrees Celsius, `_k` kelvin, `_deg` degrees.\n\n\
         Texts are one line each; `complaint` and `debrief` may have several. Control characters are refused.\n\
         A data folder holds at most 200 cars, 200 packs and 60 instruments; a link that leaves it is not read.\n",
    );
    for (name, doc, keys) in BLOCKS {
        heading(&mut out, name, doc);
        for k in *keys {
            let range = match k.range.map(span) {
                Some(range) if bounds::of_list(name, k.name).is_some() => {
                    format!("{}, each {range}", room(name, k))
                }
                Some(range) => range,
                None => room(name, k),
            };
            row(&mut out, k.name, &form(k.form), &range, k.doc);
        }
    }
    out.push_str("\n# Shared blocks and displays\n");
    for (name, keys) in SHARED {
        heading(&mut out, name, "");
        for (key, r, doc) in *keys {
            row(&mut out, key, "number", &span(*r), doc);
        }
    }
    out.push_str("\nAn instrument's `kind`, and what it is written with:\n\n");
    for (kind, fields) in InstrumentKind::WRITTEN {
        let with = if fields.is_empty() { String::new() } else { format!("({})", fields.join(", ")) };
        line(&mut out, format_args!("- `{kind}{with}`"));
    }
    out.push_str("\n# Parts\n\nNumbers marked *fault* are zero in a sound part and may be left out.\n");
    for (kind, table) in ALL_TABLES {
        heading(&mut out, kind, "");
        for d in *table {
            let form = if d.fault { "number, *fault*" } else { "number" };
            row(&mut out, d.name, form, &span(Range::of(d)), d.doc);
        }
    }
    out
}

fn heading(out: &mut String, name: &str, doc: &str) {
    let doc = doc.trim();
    let doc = if doc.is_empty() { String::new() } else { format!("{doc}\n\n") };
    line(out, format_args!("\n## {name}\n\n{doc}| key | form | range | meaning |\n|---|---|---|---|"));
}

fn row(out: &mut String, key: &str, form: &str, range: &str, doc: &str) {
    let doc = doc.trim().replace("  ", " ").replace('|', "\\|");
    line(out, format_args!("| `{key}` | {form} | {range} | {doc} |"));
}

fn line(out: &mut String, text: std::fmt::Arguments<'_>) {
    // Writing to a String cannot fail.
    out.write_fmt(text).unwrap_or_default();
    out.push('\n');
}

/// How many entries a list, and how many characters a text may have.
fn room(block: &str, key: &KeyDef) -> String {
    let entries = bounds::of_list(block, key.name).map(|most| format!("at most {most}"));
    let characters = bounds::of_text(key.name).filter(|_| key.form.contains("String"));
    let characters = characters.map(|(most, _)| format!("{most} characters"));
    match (entries, characters) {
        (Some(entries), Some(characters)) => format!("{entries}, each at most {characters}"),
        (Some(entries), None) => entries,
        (None, Some(characters)) => format!("at most {characters}"),
        (None, None) => "–".to_owned(),
    }
}

/// A range with all its digits.
fn span(range: Range) -> String {
    let numbers = format!("{} to {}", range.min, range.max);
    range.unit.sentence().map_or(numbers.clone(), |unit| format!("{numbers} {unit}"))
}

/// A form in plain words.
fn form(rust: &str) -> String {
    match rust.replace(' ', "").as_str() {
        "f64" => "number".to_owned(),
        "u32" => "whole number".to_owned(),
        "String" => "text".to_owned(),
        "bool" => "true or false".to_owned(),
        "(u32,u32)" => "(whole number, whole number)".to_owned(),
        "(f64,f64,f64)" => "(number, number, number)".to_owned(),
        "Option<(f64,f64,f64)>" => "(number, number, number), optional".to_owned(),
        "Vec<(f64,f64,f64)>" => "list of (number, number, number)".to_owned(),
        "Vec<(String,(u32,u32))>" => "list of (text, (whole number, whole number))".to_owned(),
        "(f64,f64)" => "(number, number)".to_owned(),
        "Option<f64>" => "number, optional".to_owned(),
        "Option<String>" => "text, optional".to_owned(),
        "Vec<String>" => "list of texts".to_owned(),
        "Option<Vec<String>>" => "list of texts, optional".to_owned(),
        other => {
            let inner = other.replace("Raw", "");
            if let Some(of) = inner.strip_prefix("Vec<") {
                format!("list of `{}`", of.trim_end_matches('>'))
            } else if let Some(of) = inner.strip_prefix("Option<") {
                format!("`{}`, optional", of.trim_end_matches('>'))
            } else {
                format!("`{inner}`")
            }
        }
    }
}
