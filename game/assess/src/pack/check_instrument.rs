//! From an instrument as written to an [`InstrumentCard`]: display in range, circuit side of its kind.

use sim_core::instrument::{Dial, DigitalRange, Display, InstrumentCard, InstrumentKind, Measured};
use sim_core::parts::PartKind;

use super::block::Block;
use super::checker::Checker;
use super::error::{BadCar, BadName, BadValue, PackError};
use super::raw::{RawInstrument, SCHEMA, ranges};
use super::wanted::Wanted;

/// Checks an instrument whose file is called `id`.
pub(crate) fn card(raw: RawInstrument, id: &str, file: &str) -> Result<InstrumentCard, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.short_name("id", &raw.id, '_');
    if raw.id != id {
        check.push(BadName::NotTheFile { id: raw.id.clone(), expected: id.to_owned() });
    }
    check.text("name", &raw.name, Wanted::InstrumentName);
    check.text("help", &raw.help, Wanted::InstrumentHelp);
    check.number("fit_min", raw.fit_min, RawInstrument::range("fit_min"));
    display(&mut check, &raw.kind);
    let nature = raw.kind.nature();
    let (kind, expected) = (nature.name, nature.part);
    let found = raw.part.as_ref().map(PartKind::name);
    if found != expected {
        check.push(BadCar::WrongPart { kind, expected, found });
    }
    if let Some(part) = &raw.part {
        check.part("part", part);
    }
    check.done(InstrumentCard {
        id: raw.id,
        name: raw.name,
        kind: raw.kind,
        part: raw.part,
        fit_min: raw.fit_min,
        help: raw.help,
    })
}

fn display(check: &mut Checker<'_>, kind: &InstrumentKind) {
    for (name, display) in kind.nature().displays() {
        match display {
            Display::Dial(_, d) => dial(check, d),
            Display::Signed(_, d) | Display::Unsigned(_, d) => digital(check, &format!("kind.{name}"), d),
        }
    }
    match kind.nature().measured {
        Measured::Radiation { set, metal } => {
            check.number("kind.emissivity_set", set, ranges::EMISSIVITY);
            check.number("kind.emissivity_metal", metal, ranges::EMISSIVITY);
        }
        Measured::Time { reaction_s } => {
            check.number("kind.reaction_s", reaction_s, ranges::REACTION_S);
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

fn dial(check: &mut Checker<'_>, d: &Dial) {
    let ok = check.number("kind.dial.min", d.min, ranges::DIAL)
        & check.number("kind.dial.max", d.max, ranges::DIAL);
    if ok && d.max <= d.min {
        check.push(BadValue::RangeReversed { path: "kind.dial".to_owned(), low: d.min, high: d.max });
    }
    check.number("kind.dial.class", d.class, ranges::CLASS);
    check.number("kind.dial.division", d.division, ranges::DIVISION);
}

fn digital(check: &mut Checker<'_>, path: &str, d: &DigitalRange) {
    check.number(format!("{path}.max"), d.max, ranges::DISPLAY_MAX);
    check.number(format!("{path}.resolution"), d.resolution, ranges::RESOLUTION);
    check.number(format!("{path}.percent"), d.percent, ranges::PERCENT);
    check.number(format!("{path}.counts"), d.counts, ranges::COUNTS);
}
