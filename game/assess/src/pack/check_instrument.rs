//! From an instrument as written to an [`InstrumentCard`]: display in range, circuit side of its kind.

use sim_core::instrument::{Dial, DigitalRange, Display, InstrumentCard, InstrumentKind, Measured};
use sim_core::parts::PartKind;

use super::block::Block;
use super::error::PackError;
use super::raw::{RawInstrument, SCHEMA, ranges};
use super::report::Report;

/// Checks an instrument whose file is called `id`.
pub(crate) fn card(raw: RawInstrument, id: &str, file: &str) -> Result<InstrumentCard, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    r.short_name("id", &raw.id, '_');
    if raw.id != id {
        r.push(PackError::IdFileMismatch { file: r.file(), id: raw.id.clone(), expected: id.to_owned() });
    }
    r.text("name", &raw.name, "write the instrument's name in words");
    r.text("help", &raw.help, "say in a sentence what it is for and what it cannot do");
    r.number("fit_min", raw.fit_min, RawInstrument::range("fit_min"));
    display(&mut r, &raw.kind);
    let nature = raw.kind.nature();
    let (kind, expected) = (nature.name, nature.part.unwrap_or("nothing"));
    let found = raw.part.as_ref().map_or("nothing", PartKind::name);
    if found != expected {
        r.push(PackError::WrongPart { file: r.file(), kind, expected, found });
    }
    if let Some(part) = &raw.part {
        r.part("part", part);
    }
    r.done(InstrumentCard {
        id: raw.id,
        name: raw.name,
        kind: raw.kind,
        part: raw.part,
        fit_min: raw.fit_min,
        help: raw.help,
    })
}

fn display(r: &mut Report<'_>, kind: &InstrumentKind) {
    for (name, display) in kind.nature().displays() {
        match display {
            Display::Dial(_, d) => dial(r, d),
            Display::Signed(_, d) | Display::Unsigned(_, d) => digital(r, &format!("kind.{name}"), d),
        }
    }
    match kind.nature().measured {
        Measured::Radiation { set, metal } => {
            r.number("kind.emissivity_set", set, ranges::EMISSIVITY);
            r.number("kind.emissivity_metal", metal, ranges::EMISSIVITY);
        }
        Measured::Time { reaction_s } => {
            r.number("kind.reaction_s", reaction_s, ranges::REACTION_S);
        }
        Measured::Nothing
        | Measured::Pointer
        | Measured::Meter
        | Measured::Current
        | Measured::Day
        | Measured::Room
        | Measured::Bend
        | Measured::PedalTravel
        | Measured::Glow => {}
    }
}

fn dial(r: &mut Report<'_>, d: &Dial) {
    let ok = r.number("kind.dial.min", d.min, ranges::DIAL) & r.number("kind.dial.max", d.max, ranges::DIAL);
    if ok && d.max <= d.min {
        r.push(PackError::RangeReversed {
            file: r.file(),
            path: "kind.dial".to_owned(),
            low: d.min,
            high: d.max,
        });
    }
    r.number("kind.dial.class", d.class, ranges::CLASS);
    r.number("kind.dial.division", d.division, ranges::DIVISION);
}

fn digital(r: &mut Report<'_>, path: &str, d: &DigitalRange) {
    r.number(&format!("{path}.max"), d.max, ranges::DISPLAY_MAX);
    r.number(&format!("{path}.resolution"), d.resolution, ranges::RESOLUTION);
    r.number(&format!("{path}.percent"), d.percent, ranges::PERCENT);
    r.number(&format!("{path}.counts"), d.counts, ranges::COUNTS);
}
