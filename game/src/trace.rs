//! `pinhole trace`: runs the model with the hood open and writes every port's values as a table.
//!
//! The car is as new, apart from the faults named; instruments have no error. Not an attempt.

use std::io::Write;
use std::path::PathBuf;
use std::sync::Arc;

use anyhow::{Context as _, bail};
use assess::locale::quote;
use assess::locale::{Naming, Speech};
use assess::pack::Library;
use assess::words::{self as plain, Ask, Said, Vocabulary};
use sim_core::Opened;
use sim_core::action::Action;
use sim_core::air::Day;
use sim_core::notice::Refusal;
use sim_core::units::TICKS_PER_SECOND;
use sim_core::workshop::{Arrival, Setup, TraceRow};
use sim_core::world::World;

use crate::Verdict;
use crate::cli::TraceArgs;
use crate::replay::find_faults;
use crate::tongue::say;
use crate::trace_plot::Plot;
use front::output::{Draft, Kind, Output, Outputs};
use front::places::Places;
use front::words::Words;

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &TraceArgs,
) -> anyhow::Result<Verdict> {
    let data = front::places::data(at)?;
    let library = Library::open(&data)?;
    let car = library.car(&args.car)?;
    let faults = find_faults(words, &car, &args.fault)?;
    allowed(words, args)?;
    let mut outputs = Outputs::beside(&args.script);
    let mut plan = |flag, path: &Option<PathBuf>, kind| {
        path.as_ref().map(|path| outputs.plan(flag, path, kind)).transpose()
    };
    let plot = match &args.plot {
        Some(path) => plan("--plot", &args.plot, Plot::kind(path).map_err(|e| e.sentence())?)?,
        None => None,
    };
    let csv = plan("--csv", &args.csv, Kind::TraceTable)?;
    let circuit = plan("--circuit", &args.circuit, Kind::Circuit)?;
    let script = match &args.script {
        Some(file) => front::script::read(file)?,
        None => "key on".to_owned(),
    };
    let kit = Arc::clone(library.kit());
    let spares = library.spares(&car)?;
    let names = Vocabulary::of(&car, &kit, &spares);
    let world = World {
        params: faults
            .iter()
            .map(|(f, severity)| (car.faults[usize::from(*f)].param.clone(), *severity))
            .collect(),
        instrument_errors: vec![0.0; kit.len()],
    };
    let setup = Setup {
        car,
        kit,
        spares,
        day: Day { altitude_m: args.altitude, weather_kpa: 0.0, ambient_c: args.ambient, night_drop_k: 0.0 },
        arrival: Arrival { driven: false, stood_min: 0, on_slope: false },
        card: Vec::new(),
    };
    let mut workshop = Opened::of(setup, world);
    let every = (args.every * TICKS_PER_SECOND as f64).round().max(1.0) as u64;
    let columns = workshop.trace_columns();
    let plot = plot.map(|output| Plot::of(words, output, &args.show, &columns)).transpose();
    let plot = plot.map_err(|e| e.sentence())?;
    let silent = csv.as_ref().is_some_and(Output::is_standard_output);
    let csv = csv.map(|output| Table::of(words, output, &columns)).transpose()?;
    let mut takers = Takers { csv, plot };
    if takers.want_rows() {
        workshop.record_every(every);
    }
    if args.circuit.is_some() {
        workshop.watch();
    }
    play(words, args, &script, &names, &mut workshop, &mut takers)?;
    if args.circuit_after_script {
        workshop.watch();
    }
    run_on(words, args.for_s, &mut workshop, &mut takers)?;
    let computed = assess::play::computed(&workshop);
    if let Some(table) = takers.csv {
        let rows = table.rows;
        let file = quote::path(&table.end(words)?).to_string();
        let columns = columns.len() + 1;
        // The table must stay one that another program can read.
        if !silent {
            writeln!(out, "{}", say!(words, "trace-rows", file = file, rows = rows, columns = columns))?;
        }
    }
    if let Some(plot) = takers.plot {
        let (path, curves) = plot.end(&data).map_err(|e| e.sentence())?;
        let file = quote::path(&path).to_string();
        writeln!(out, "{}", say!(words, "trace-curves", file = file, curves = curves))?;
    }
    if let (Some(output), Some(watch)) = (circuit, workshop.watched()) {
        crate::trace_circuit::write(out, words, output, watch, workshop.circuit().tick())?;
    }
    // What was written until then stays.
    computed?;
    Ok(Verdict::Pass)
}

/// The day's numbers, if they can be.
fn allowed(words: &Words, args: &TraceArgs) -> anyhow::Result<()> {
    for (flag, value, min, max) in
        [("--altitude", args.altitude, -400.0, 4500.0), ("--ambient", args.ambient, -30.0, 45.0)]
    {
        if !(min..=max).contains(&value) {
            let typed = quote::number(value).to_string();
            bail!("{}", say!(words, "trace-allowed", flag = flag, typed = typed, min = min, max = max));
        }
    }
    Ok(())
}

/// Does the lines of the script, one after the other.
fn play(
    words: &Words,
    args: &TraceArgs,
    script: &str,
    names: &Vocabulary,
    workshop: &mut Opened,
    takers: &mut Takers,
) -> anyhow::Result<()> {
    for (i, line) in script.lines().enumerate() {
        let place = || match &args.script {
            Some(file) => {
                let (file, text) = (quote::path(file).to_string(), quote::bare(line.trim()).to_string());
                say!(words, "trace-line", file = file, line = i + 1, text = text)
            }
            None => line.to_owned(),
        };
        let action = match plain::parse(line, names, &workshop.view().readings).with_context(place)? {
            Said::Do(action) => action,
            Said::Ask(Ask::Quit) => break,
            Said::Nothing | Said::Ask(_) | Said::NoteShown { .. } => continue,
        };
        let outcome = workshop.act(&action);
        if let Some(why) = outcome.refused {
            return Err(refused(words, workshop, &why).context(place()));
        }
        takers.take(words, workshop)?;
    }
    Ok(())
}

/// Lets time run on, s.
fn run_on(words: &Words, for_s: u32, workshop: &mut Opened, takers: &mut Takers) -> anyhow::Result<()> {
    // In stretches, so that the rows need no room.
    const STRETCH_S: u32 = 600;
    let mut left = for_s;
    while 0 < left {
        let s = left.min(STRETCH_S);
        let outcome = workshop.act(&Action::Wait { s });
        if let Some(why) = outcome.refused {
            return Err(refused(words, workshop, &why));
        }
        takers.take(words, workshop)?;
        left -= s;
    }
    Ok(())
}

/// Who gets the rows.
struct Takers {
    csv: Option<Table>,
    plot: Option<Plot>,
}

impl Takers {
    const fn want_rows(&self) -> bool {
        self.csv.is_some() || self.plot.is_some()
    }

    fn take(&mut self, words: &Words, workshop: &mut Opened) -> anyhow::Result<()> {
        if !self.want_rows() {
            return Ok(());
        }
        let Some(rows) = workshop.take_rows() else {
            bail!("{}", words.say("trace-too-many"));
        };
        for row in rows {
            if let Some(plot) = &mut self.plot {
                plot.take(row.tick.s(), &row.values);
            }
            if let Some(table) = &mut self.csv {
                table.take(words, row)?;
            }
        }
        Ok(())
    }
}

struct Table {
    csv: csv::Writer<Draft>,
    rows: usize,
}

impl Table {
    fn of(words: &Words, output: Output, columns: &[String]) -> anyhow::Result<Self> {
        let mut table = Self { csv: csv::Writer::from_writer(output.begin()?), rows: 0 };
        table.row(
            words,
            std::iter::once("t_s").chain(columns.iter().map(String::as_str)).map(str::to_owned),
        )?;
        Ok(table)
    }

    fn row(&mut self, words: &Words, cells: impl Iterator<Item = String>) -> anyhow::Result<()> {
        self.csv.write_record(cells).map_err(|e| self.error(words, e))
    }

    /// What the table's writer says, in plain words.
    fn error(&self, words: &Words, error: csv::Error) -> anyhow::Error {
        let file = quote::path(self.csv.get_ref().path()).to_string();
        match error.into_kind() {
            csv::ErrorKind::Io(e) => {
                let why = words.value(&assess::files::refusal(&e, assess::files::Doing::Write));
                anyhow::anyhow!(say!(words, "trace-not-written-why", file = file, why = why))
            }
            _ => anyhow::anyhow!(say!(words, "trace-not-written", file = file)),
        }
    }

    fn take(&mut self, words: &Words, row: TraceRow) -> anyhow::Result<()> {
        let cells = std::iter::once(row.tick.s()).chain(row.values);
        self.row(words, cells.map(|v| format!("{}", (v * 1e9).round() / 1e9)))?;
        self.rows += 1;
        Ok(())
    }

    /// Puts it in its place, and says where.
    fn end(mut self, words: &Words) -> anyhow::Result<PathBuf> {
        self.csv.flush().map_err(|e| self.error(words, e.into()))?;
        let path = self.csv.get_ref().path().to_owned();
        match self.csv.into_inner() {
            Ok(draft) => draft.end(Ok(()))?,
            Err(error) => {
                let file = quote::path(&path).to_string();
                let why = words.value(&assess::files::refusal(error.error(), assess::files::Doing::Write));
                bail!("{}", say!(words, "trace-not-written-why", file = file, why = why))
            }
        }
        Ok(path)
    }
}

/// Why an action of the script cannot be done.
fn refused(words: &Words, workshop: &Opened, why: &Refusal) -> anyhow::Error {
    anyhow::Error::msg(Speech::at(words, workshop.setup(), Naming::Typed).tell(why))
}
