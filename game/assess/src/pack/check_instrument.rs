//! From an instrument as written to an [`InstrumentCard`]: display in range, circuit side of its kind.

use sim_core::instrument::{Dial, DigitalRange, InstrumentCard, InstrumentKind};
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
    let (kind, expected) = needs(&raw.kind);
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

/// The kind's name and the part the circuit must feel of it.
pub(crate) fn needs(kind: &InstrumentKind) -> (&'static str, &'static str) {
    match kind {
        InstrumentKind::Gauge { .. } => ("Gauge", "VacuumGauge"),
        InstrumentKind::HandPump { .. } => ("HandPump", "HandPump"),
        InstrumentKind::Lamp => ("Lamp", "TestLamp"),
        InstrumentKind::Multimeter { .. } => ("Multimeter", "Multimeter"),
        InstrumentKind::PushLead => ("PushLead", "PushLead"),
        InstrumentKind::ClampAmmeter { .. } => ("ClampAmmeter", "nothing"),
        InstrumentKind::IrThermometer { .. } => ("IrThermometer", "nothing"),
        InstrumentKind::Stopwatch { .. } => ("Stopwatch", "nothing"),
        InstrumentKind::Barometer { .. } => ("Barometer", "nothing"),
        InstrumentKind::WallThermometer { .. } => ("WallThermometer", "nothing"),
        InstrumentKind::AngleFinder { .. } => ("AngleFinder", "nothing"),
        InstrumentKind::PedalRule { .. } => ("PedalRule", "nothing"),
        InstrumentKind::PedalProp => ("PedalProp", "nothing"),
        InstrumentKind::Plugs => ("Plugs", "nothing"),
        InstrumentKind::Clamps => ("Clamps", "nothing"),
        InstrumentKind::ListeningTube => ("ListeningTube", "nothing"),
    }
}

fn display(r: &mut Report<'_>, kind: &InstrumentKind) {
    match kind {
        InstrumentKind::Gauge { dial: d }
        | InstrumentKind::HandPump { dial: d }
        | InstrumentKind::Barometer { dial: d }
        | InstrumentKind::WallThermometer { dial: d }
        | InstrumentKind::AngleFinder { dial: d }
        | InstrumentKind::PedalRule { dial: d } => dial(r, d),
        InstrumentKind::Multimeter { volt, ohm, ampere } => {
            digital(r, "kind.volt", volt);
            digital(r, "kind.ohm", ohm);
            digital(r, "kind.ampere", ampere);
        }
        InstrumentKind::ClampAmmeter { ampere } => digital(r, "kind.ampere", ampere),
        InstrumentKind::IrThermometer { celsius, emissivity_set, emissivity_metal } => {
            digital(r, "kind.celsius", celsius);
            r.number("kind.emissivity_set", *emissivity_set, ranges::EMISSIVITY);
            r.number("kind.emissivity_metal", *emissivity_metal, ranges::EMISSIVITY);
        }
        InstrumentKind::Stopwatch { second, reaction_s } => {
            digital(r, "kind.second", second);
            r.number("kind.reaction_s", *reaction_s, ranges::REACTION_S);
        }
        InstrumentKind::Lamp
        | InstrumentKind::PushLead
        | InstrumentKind::PedalProp
        | InstrumentKind::Plugs
        | InstrumentKind::Clamps
        | InstrumentKind::ListeningTube => {}
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
