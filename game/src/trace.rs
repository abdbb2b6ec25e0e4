//! `pinhole trace`: runs the model with the hood open and writes every port's values as a table.
//!
//! The car is as new, apart from the faults named; instruments have no error. Not an attempt.

use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;
use std::sync::Arc;

use anyhow::{Context as _, bail};
use assess::pack::Library;
use assess::words::{self, Ask, Said, Vocabulary};
use sim_core::action::Action;
use sim_core::air::Day;
use sim_core::units::TICKS_PER_SECOND;
use sim_core::workshop::{Arrival, Setup, TraceRow, Workshop};
use sim_core::world::World;

use crate::Verdict;
use crate::cli::{Places, TraceArgs};
use crate::replay::find_faults;
use crate::trace_plot::Plot;

/// Runs the command.
pub(crate) fn run(out: &mut dyn Write, at: &Places, args: &TraceArgs) -> anyhow::Result<Verdict> {
    let data = crate::places::data(at)?;
    let library = Library::open(&data)?;
    let car = library.car(&args.car)?;
    let faults = find_faults(&car, &args.fault)?;
    for (flag, value, min, max) in
        [("--altitude", args.altitude, -400.0, 4500.0), ("--ambient", args.ambient, -30.0, 45.0)]
    {
        if !(min..=max).contains(&value) {
            bail!("{flag} {value}: allowed {min} to {max}");
        }
    }
    let script = match &args.script {
        Some(file) => std::fs::read_to_string(file)
            .with_context(|| format!("the script {} cannot be read", file.display()))?,
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
    let mut workshop = Workshop::new(Setup {
        car,
        kit,
        spares,
        day: Day { altitude_m: args.altitude, weather_kpa: 0.0, ambient_c: args.ambient, night_drop_k: 0.0 },
        arrival: Arrival { driven: false, stood_min: 0 },
        card: Vec::new(),
        world,
    });
    let every = (args.every * TICKS_PER_SECOND as f64).round().max(1.0) as u64;
    let columns = workshop.trace_columns();
    let plot = args.plot.as_ref().map(|path| Plot::of(path, &args.show, &columns)).transpose()?;
    let csv = args.csv.as_ref().map(|path| Table::of(path, &columns)).transpose()?;
    let mut takers = Takers { csv, plot };
    if takers.want_rows() {
        workshop.record_every(every);
    }
    if args.circuit.is_some() {
        workshop.watch();
    }
    for (i, line) in script.lines().enumerate() {
        let place = || match &args.script {
            Some(file) => format!("{}, line {} ({})", file.display(), i + 1, line.trim()),
            None => line.to_owned(),
        };
        let action = match words::parse(line, &names, &workshop.view().readings).with_context(place)? {
            Said::Do(action) => action,
            Said::Ask(Ask::Quit) => break,
            Said::Nothing | Said::Ask(_) | Said::NoteShown { .. } => continue,
        };
        let outcome = workshop.act(&action);
        if let Some(why) = outcome.refused {
            return Err(anyhow::Error::new(why).context(place()));
        }
        takers.take(&mut workshop)?;
    }
    if args.circuit_after_script {
        workshop.watch();
    }
    if 0 < args.for_s {
        // In stretches, so that progress is on the disk and the rows need no room.
        const STRETCH_S: u32 = 600;
        let mut left = args.for_s;
        while 0 < left {
            let s = left.min(STRETCH_S);
            let outcome = workshop.act(&Action::Wait { s });
            if let Some(why) = outcome.refused {
                return Err(why.into());
            }
            takers.take(&mut workshop)?;
            left -= s;
        }
    }
    let computed = assess::session::computed(&workshop);
    if let Some(table) = takers.csv {
        let (path, rows) = (table.path, table.rows);
        table.end()?;
        writeln!(out, "{}: {rows} rows, {} columns", path.display(), columns.len() + 1)?;
    }
    if let Some(plot) = takers.plot {
        let (path, curves) = plot.end(&data)?;
        writeln!(out, "{}: {curves} curves", path.display())?;
    }
    if let (Some(path), Some(watch)) = (&args.circuit, workshop.watched()) {
        crate::trace_circuit::write(out, path, watch, workshop.circuit().tick())?;
    }
    // What was written until then stays.
    computed?;
    Ok(Verdict::Pass)
}

/// Who gets the rows.
struct Takers<'a> {
    csv: Option<Table<'a>>,
    plot: Option<Plot>,
}

impl Takers<'_> {
    const fn want_rows(&self) -> bool {
        self.csv.is_some() || self.plot.is_some()
    }

    fn take(&mut self, workshop: &mut Workshop) -> anyhow::Result<()> {
        if !self.want_rows() {
            return Ok(());
        }
        let Some(rows) = workshop.take_rows() else {
            bail!("more than 100 000 rows in one action: choose a longer --every");
        };
        for row in rows {
            if let Some(plot) = &mut self.plot {
                plot.take(row.tick.s(), &row.values);
            }
            if let Some(table) = &mut self.csv {
                table.take(row)?;
            }
        }
        Ok(())
    }
}

struct Table<'a> {
    csv: csv::Writer<BufWriter<File>>,
    path: &'a Path,
    rows: usize,
}

impl<'a> Table<'a> {
    fn of(path: &'a Path, columns: &[String]) -> anyhow::Result<Self> {
        let file = File::create(path).with_context(|| format!("{} cannot be made", path.display()))?;
        let mut table = Self { csv: csv::Writer::from_writer(BufWriter::new(file)), path, rows: 0 };
        table.row(std::iter::once("t_s").chain(columns.iter().map(String::as_str)).map(str::to_owned))?;
        Ok(table)
    }

    fn row(&mut self, cells: impl Iterator<Item = String>) -> anyhow::Result<()> {
        self.csv.write_record(cells).with_context(|| format!("{} cannot be written", self.path.display()))
    }

    fn take(&mut self, row: TraceRow) -> anyhow::Result<()> {
        let cells = std::iter::once(row.tick.s()).chain(row.values);
        self.row(cells.map(|v| format!("{}", (v * 1e9).round() / 1e9)))?;
        self.rows += 1;
        Ok(())
    }

    fn end(mut self) -> anyhow::Result<()> {
        self.csv.flush().with_context(|| format!("{} cannot be written", self.path.display()))
    }
}
