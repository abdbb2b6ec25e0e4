//! From the tests of a car as written to checked ones: every line means something at this car, and what lasts is undone.

use std::sync::Arc;

use sim_core::action::{Action, Sense};
use sim_core::car::{Car, Spare};
use sim_core::instrument::{InstrumentCard, Measured};
use sim_core::observe::{Observed, Reading, ShownValue};
use sim_core::parts::instruments::MeterMode;
use sim_core::units::Tick;

use super::checker::Checker;
use super::error::{BadName, BadTest, Named, PackError};
use super::raw::{RawTest, RawTests, SCHEMA};
use super::wanted::Wanted;
use crate::plan::standing::Standing;
use crate::plan::test::{Access, Line, Phase, Step, Test};
use crate::words::{self, Said, Vocabulary, say};

/// Checks the tests of `car`, whose file is called `id`; `kit` are all instruments that there are.
pub(crate) fn tests(
    raw: RawTests,
    id: &str,
    (car, kit, spares): (&Car, &[InstrumentCard], &[Spare]),
    file: &str,
) -> Result<Arc<Vec<Test>>, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    if raw.vehicle != id {
        check.push(BadName::NotTheFile { id: raw.vehicle, expected: id.to_owned() });
    }
    check.lengths::<RawTests>(&[("tests", raw.tests.len())])?;
    check.list("tests", &raw.tests, Wanted::Tests);
    check.names("tests", Named::Test, '-', raw.tests.iter().map(|t| t.id.as_str()));
    let names = Vocabulary::of(car, kit, spares);
    let tests = raw.tests.into_iter().enumerate();
    let tests = tests.map(|(i, raw)| test(&mut check, &format!("tests[{i}]"), raw, &names, kit)).collect();
    check.done(Arc::new(tests))
}

fn test(
    check: &mut Checker<'_>,
    path: &str,
    raw: RawTest,
    names: &Vocabulary,
    kit: &[InstrumentCard],
) -> Test {
    check.text(&format!("{path}.name"), &raw.name, Wanted::TestName);
    let written = [&raw.set_up, &raw.stimulus, &raw.readings, &raw.undo];
    let fits = Phase::ALL.into_iter().zip(written).fold(true, |fits, (phase, lines)| {
        let key = phase.key();
        fits & check.most::<RawTest>(key, &format!("{path}.{key}"), lines.len())
    });
    let mut doing = Doing {
        names,
        kit,
        standing: Standing::as_it_came(),
        access: Access::default(),
        read: Vec::new(),
        broken: false,
    };
    doing.broken = !fits;
    let mut noted = false;
    let mut parts = [const { Vec::new() }; 4];
    for ((phase, lines), part) in Phase::ALL.into_iter().zip(written).zip(&mut parts).take_while(|_| fits) {
        for (k, text) in lines.iter().enumerate() {
            let path = format!("{path}.{}[{k}]", phase.key());
            check.text(&path, text, Wanted::Line);
            match doing.line(path, phase, text) {
                Ok(line) => {
                    noted |= matches!(line.step, Step::Note { .. });
                    part.push(line);
                }
                Err(bad) => {
                    // What may only follow from a line before is not told.
                    let follows = matches!(bad, BadTest::Idle { .. } | BadTest::NothingToNote { .. });
                    if !(follows && doing.broken) {
                        check.push(bad);
                    }
                    doing.broken = true;
                }
            }
        }
    }
    if !doing.broken && !noted {
        check.push(BadTest::NoReading { path: format!("{path}.readings") });
    }
    for thing in doing.standing.things().rev().filter(|_| !doing.broken) {
        check.push(BadTest::NotUndone { path: format!("{path}.undo"), line: say(&thing.undo()) });
    }
    let [set_up, stimulus, readings, undo] = parts;
    let (id, name, kind, access) = (raw.id, raw.name, raw.kind, doing.access);
    Test { id, name, kind, set_up, stimulus, readings, undo, access }
}

/// A test on its way through its lines.
struct Doing<'a> {
    names: &'a Vocabulary,
    kit: &'a [InstrumentCard],
    standing: Standing,
    access: Access,
    /// What was read: whether it may be refused, and whether it is noted.
    read: Vec<(bool, bool)>,
    /// A line was wrong.
    broken: bool,
}

impl Doing<'_> {
    fn line(&mut self, path: String, phase: Phase, text: &str) -> Result<Line, BadTest> {
        let (plain, may_be_refused) = match text.trim().strip_prefix("try ") {
            Some(rest) => (rest.trim(), true),
            None => (text.trim(), false),
        };
        let text = || text.to_owned();
        // The line that is wrong may have been a reading.
        let more = u32::from(self.broken);
        let taken: Vec<Reading> = (1..=self.read.len() as u32 + more).map(any_reading).collect();
        let said = words::parse(plain, self.names, &taken).map_err(|why| BadTest::Line {
            path: path.clone(),
            text: text(),
            why: Box::new(why),
        })?;
        match said {
            Said::NoteShown { reading, record }
            | Said::Do(Action::Note { reading, written: None, record }) => {
                self.note(path, phase, reading, record)
            }
            Said::Do(Action::Note { .. }) => Err(BadTest::NoteKnows { path, text: text() }),
            Said::Do(action) if is_testing(&action) => {
                let step = self.action(path, text(), action)?;
                let line = Line { step, may_be_refused };
                self.read.extend(line.reads().then_some((may_be_refused, false)));
                Ok(line)
            }
            Said::Do(_) | Said::Nothing | Said::Ask(_) => Err(BadTest::NoTesting { path, text: text() }),
        }
    }

    fn note(
        &mut self,
        path: String,
        phase: Phase,
        reading: u32,
        record: Option<String>,
    ) -> Result<Line, BadTest> {
        if phase != Phase::Readings {
            return Err(BadTest::NoteElsewhere { path });
        }
        match self.read.get_mut(reading as usize - 1) {
            Some((may_be_refused, noted)) if !*noted => {
                *noted = true;
                Ok(Line { step: Step::Note { reading, record }, may_be_refused: *may_be_refused })
            }
            _ => Err(BadTest::NothingToNote { path }),
        }
    }

    fn action(&mut self, path: String, text: String, action: Action) -> Result<Step, BadTest> {
        match self.standing.after(&action) {
            Some(next) => self.standing = next,
            None => return Err(BadTest::Idle { path, text }),
        }
        if let Action::Read { instrument } = &action {
            let card = self.kit.iter().find(|card| card.id == *instrument);
            let meter = card.is_some_and(|card| card.kind.nature().measured == Measured::Meter);
            if meter && self.standing.dial(instrument) == MeterMode::Off {
                return Err(BadTest::DialOff { path, instrument: instrument.clone() });
            }
        }
        self.access.needs(&action);
        Ok(Step::Do(action))
    }
}

/// Whether an action is what tests are made of.
fn is_testing(action: &Action) -> bool {
    match action {
        Action::ReadCard
        | Action::ReadSheet
        | Action::Swap { .. }
        | Action::Clean { .. }
        | Action::Reform { .. }
        | Action::Note { .. }
        | Action::Suspect { .. }
        | Action::Finding { .. }
        | Action::HandBack => false,
        Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::PumpPedal { .. }
        | Action::Cover { .. }
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::Fit { .. }
        | Action::Unfit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Stroke { .. }
        | Action::Read { .. }
        | Action::Sense(_)
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight => true,
    }
}

/// A reading of which nothing is known yet, as the words of a note ask for it.
fn any_reading(id: u32) -> Reading {
    Reading { id, tick: Tick(0), what: Observed::Sense(Sense::Hum), shown: ShownValue::Blank, epoch: 0 }
}
