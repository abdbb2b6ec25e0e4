//! `pinhole tests`: what can be tried at a car, with its minutes and what it needs; or one test, line by line.

use std::io::Write;
use std::sync::Arc;

use anyhow::bail;
use assess::locale::known::known as known_names;
use assess::locale::quote;
use assess::pack::Library;
use assess::plan::cost::{Minutes, Rehearsal};
use assess::plan::test::{Kind, Phase, Test, card_for};
use sim_core::air::Day;
use sim_core::workshop::{Arrival, Setup};

use crate::Verdict;
use crate::cli::TestsArgs;
use crate::text::show::wrapped;
use crate::tongue::{decimal, say};
use front::places::Places;
use front::words::Words;

/// A car in the workshop, and what can be tried at it.
struct Bay {
    setup: Setup,
    tests: Arc<Vec<Test>>,
}

impl Bay {
    /// A job's car with the job's tool board and day; or a car by itself, with all there is, on an ordinary day.
    fn of(library: &Library, name: &str) -> anyhow::Result<Self> {
        if name.contains('/') {
            let job = library.job(name)?;
            return Ok(Self { setup: job.setup(), tests: job.tests });
        }
        let car = library.car(name)?;
        let (spares, tests) = (library.spares(&car)?, library.tests(&car)?);
        let arrival = Arrival { driven: true, stood_min: 30, on_slope: false };
        let (kit, card) = (Arc::clone(library.kit()), Vec::new());
        Ok(Self { setup: Setup { car, kit, spares, day: Day::STANDARD, arrival, card }, tests })
    }
}

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &TestsArgs,
) -> anyhow::Result<Verdict> {
    let library = Library::open(&front::places::data(at)?)?;
    let bay = Bay::of(&library, &args.of)?;
    let car = &bay.setup.car;
    if bay.tests.is_empty() {
        let file = format!("assets/tests/{}.ron", car.id);
        bail!("{}", say!(words, "tests-none", car = &car.id, file = file));
    }
    let came_in = Rehearsal::sound(bay.setup.clone());
    if let Some(id) = &args.test {
        let Some(test) = bay.tests.iter().find(|test| test.id == *id) else {
            let known: Vec<&str> = bay.tests.iter().map(|test| test.id.as_str()).collect();
            let known = words.value(&known_names(id, &known));
            let name = quote::quoted(id).to_string();
            bail!("{}", say!(words, "tests-no-such", car = &car.id, name = name, known = known));
        };
        one(out, words, &bay, test, &came_in)?;
        return Ok(Verdict::Pass);
    }
    let name = words.car(&car.id, &car.name);
    writeln!(out, "{}", say!(words, "tests-of", n = bay.tests.len(), car = name))?;
    wrapped(out, "", &words.say("tests-minutes"))?;
    for kind in Kind::ALL {
        let tests: Vec<&Test> = bay.tests.iter().filter(|test| test.kind == kind).collect();
        if tests.is_empty() {
            continue;
        }
        writeln!(out, "\n{}", words.say(kind_key(kind)))?;
        for test in tests {
            line(out, words, &bay, test, &came_in)?;
        }
    }
    Ok(Verdict::Pass)
}

/// A test with its minutes and what it needs.
fn line(
    out: &mut dyn Write,
    words: &Words,
    bay: &Bay,
    test: &Test,
    came_in: &Rehearsal,
) -> anyhow::Result<()> {
    let minutes = match test.fits(&bay.setup.kit) {
        true => told(words, minutes(test, came_in)),
        false => "–".to_owned(),
    };
    writeln!(out, "  {:<28} {minutes:>12}  {}", test.id, name(words, bay, test))?;
    let needs = needs(words, bay, test);
    if needs.is_empty() { Ok(()) } else { Ok(wrapped(out, "      ", &needs.join("; "))?) }
}

/// One test, line by line.
fn one(
    out: &mut dyn Write,
    words: &Words,
    bay: &Bay,
    test: &Test,
    came_in: &Rehearsal,
) -> anyhow::Result<()> {
    writeln!(out, "{} – {}", test.id, name(words, bay, test))?;
    writeln!(out, "{}", words.say(kind_key(test.kind)))?;
    if test.fits(&bay.setup.kit) {
        writeln!(out, "{}", say!(words, "tests-min", min = told(words, minutes(test, came_in))))?;
    }
    for need in needs(words, bay, test) {
        wrapped(out, "", &need)?;
    }
    for phase in Phase::ALL {
        let lines = test.lines_of(phase);
        if lines.is_empty() {
            continue;
        }
        let heading = words.say(match phase {
            Phase::SetUp => "tests-set-up",
            Phase::Stimulus => "tests-stimulus",
            Phase::Readings => "tests-readings",
            Phase::Undo => "tests-undo",
        });
        writeln!(out, "\n{heading}")?;
        lines.iter().try_for_each(|line| writeln!(out, "  {}", line.text()))?;
    }
    Ok(())
}

/// What a test costs by itself.
fn minutes(test: &Test, came_in: &Rehearsal) -> Minutes {
    let mut rehearsal = came_in.clone();
    rehearsal.all(&[test]);
    rehearsal.minutes()
}

/// Minutes worked, and minutes waited if there are any.
fn told(words: &Words, minutes: Minutes) -> String {
    let number = |min: f64| decimal(words, format!("{min:.1}"));
    match minutes.unattended {
        min if min < 0.05 => number(minutes.attended),
        _ => format!("{} + {}", number(minutes.attended), number(minutes.unattended)),
    }
}

fn name(words: &Words, bay: &Bay, test: &Test) -> String {
    words.say_or(&format!("{}-test-{}", bay.setup.car.id, test.id), &test.name)
}

/// What a test needs, by the names that are typed: covers, joints, units, instruments; and what the tool board lacks.
fn needs(words: &Words, bay: &Bay, test: &Test) -> Vec<String> {
    let (access, kit) = (&test.access, &bay.setup.kit);
    let tools = access.tools.iter().filter_map(|tool| card_for(kit, *tool)).map(|card| card.id.clone());
    let (instruments, lacking) = access.lacks(kit);
    let has = access.instruments.iter().filter(|id| !instruments.contains(id)).cloned();
    let with: Vec<String> = has.chain(tools).collect();
    let lacking = lacking.iter().map(|tool| words.say(&format!("word-{}", tool.key())));
    let lacks: Vec<String> = instruments.iter().cloned().chain(lacking).collect();
    [
        ("tests-covers", &access.covers),
        ("tests-joints", &access.joints),
        ("tests-units", &access.units),
        ("tests-with", &with),
        ("tests-lacks", &lacks),
    ]
    .into_iter()
    .filter(|(_, list)| !list.is_empty())
    .map(|(key, list)| words.say_with(key, &[("list", list.join(", ").into())]))
    .collect()
}

const fn kind_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Condition => "tests-condition",
        Kind::Air => "tests-air",
        Kind::Electric => "tests-electric",
        Kind::ByEar => "tests-by-ear",
        Kind::ByEye => "tests-by-eye",
    }
}
