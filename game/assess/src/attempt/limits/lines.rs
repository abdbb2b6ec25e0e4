//! Limits of the lines that are no action's: header, sittings, repairs, hints, mark, overrides.

use super::beyond::{Beyond, Bound, at_most, short, unix_ms, within};
use super::quantity::Quantity;
use super::{LONGEST_NAME, LONGEST_TEXT, MOST_HINTS, MOST_OVERRIDES, MOST_SITTINGS};
use crate::attempt::clock::LATEST_UNIX_MS;
use crate::attempt::hint_line::{Advice, HintLine};
use crate::attempt::mark_line::MarkLine;
use crate::attempt::override_line::OverrideLine;
use crate::attempt::record::{Header, Repair, SCHEMA, SCHEMA_1, SCHEMA_2, Sitting};

pub(in crate::attempt) fn header(header: &Header) -> Result<(), Beyond> {
    if ![SCHEMA, SCHEMA_2, SCHEMA_1].contains(&header.schema.as_str()) {
        let schema: String = header.schema.chars().take(40).collect();
        return Beyond::err(
            Quantity::Schema,
            format!("{schema:?}"),
            Bound::Schemas([SCHEMA, SCHEMA_2, SCHEMA_1]),
        );
    }
    let is_first = header.schema == SCHEMA_1;
    if header.scripted.is_some() != is_first {
        return Beyond::err(Quantity::Scripted, format!("{:?}", header.scripted), Bound::OnlyIn(SCHEMA_1));
    }
    if header.seed_from.is_some() == is_first {
        return Beyond::err(Quantity::SeedFrom, format!("{:?}", header.seed_from), Bound::NotIn(SCHEMA_1));
    }
    for (what, text) in [
        (Quantity::Engine, &header.engine),
        (Quantity::Pack, &header.pack),
        (Quantity::Job, &header.job),
        (Quantity::JobDigest, &header.job_digest),
    ] {
        short(what, text, LONGEST_NAME)?;
    }
    short(Quantity::Seat, header.seat.as_deref().unwrap_or_default(), 4 * 64)?;
    at_most(Quantity::Begun, header.created_unix_s, LATEST_UNIX_MS / 1000)
}

pub(in crate::attempt) fn sitting(sitting: &Sitting, done: u32, before: usize) -> Result<(), Beyond> {
    if sitting.after != done {
        return Beyond::err(Quantity::BeforeSitting, sitting.after, Bound::Just(done.into()));
    }
    at_most(Quantity::Sittings, before as u64 + 1, MOST_SITTINGS as u64)?;
    short(Quantity::Engine, &sitting.engine, LONGEST_NAME)?;
    unix_ms(Quantity::SittingTime, sitting.at_unix_ms)
}

pub(in crate::attempt) fn repair(repair: &Repair, done: u32, before: usize) -> Result<(), Beyond> {
    if repair.after != done {
        return Beyond::err(Quantity::BeforeRepair, repair.after, Bound::Just(done.into()));
    }
    at_most(Quantity::Repairs, before as u64 + 1, MOST_SITTINGS as u64)?;
    short(Quantity::Engine, &repair.engine, LONGEST_NAME)?;
    at_most(Quantity::DroppedBytes, repair.dropped_bytes, 1 << 40)?;
    at_most(Quantity::DroppedLines, repair.dropped_lines, 1 << 40)?;
    unix_ms(Quantity::RepairTime, repair.at_unix_ms)
}

pub(in crate::attempt) fn hint(hint: &HintLine, done: u32, before: usize) -> Result<(), Beyond> {
    if hint.after != done {
        return Beyond::err(Quantity::BeforeHint, hint.after, Bound::Just(done.into()));
    }
    at_most(Quantity::Hints, before as u64 + 1, MOST_HINTS as u64)?;
    if let Advice::Test(test) = &hint.advice {
        short(Quantity::Name, test, LONGEST_NAME)?;
    }
    unix_ms(Quantity::HintTime, hint.at_unix_ms)
}

pub(in crate::attempt) fn mark(mark: &MarkLine) -> Result<(), Beyond> {
    within(Quantity::Total, mark.total, 0.0, 100.0)?;
    within(Quantity::Deduction, mark.deducted, 0.0, 1e6)?;
    at_most(Quantity::MarkParts, mark.parts.len() as u64, 20)?;
    for part in &mark.parts {
        within(Quantity::Points, part.points, -100.0, 100.0)?;
    }
    [&mark.scheme, &mark.engine, &mark.job_digest]
        .into_iter()
        .try_for_each(|text| short(Quantity::MarkName, text, LONGEST_NAME))
}

pub(in crate::attempt) fn override_line(line: &OverrideLine, before: usize) -> Result<(), Beyond> {
    at_most(Quantity::Overrides, before as u64 + 1, MOST_OVERRIDES as u64)?;
    within(Quantity::OverrideTotal, line.total.unwrap_or(0.0), 0.0, 100.0)?;
    short(Quantity::OverrideReason, &line.reason, LONGEST_TEXT)?;
    short(Quantity::OverrideName, &line.by, 4 * 64)?;
    short(Quantity::Engine, &line.engine, LONGEST_NAME)?;
    unix_ms(Quantity::OverrideTime, line.at_unix_ms)
}
