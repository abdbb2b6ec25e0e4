//! `pinhole replay`: does a recorded attempt again and compares; or asks what the same actions would have
//! shown had something else been wrong.

use std::io::Write;

use anyhow::bail;
use assess::attempt::{Attempt, Seed};
use assess::job::{AfterHandBack, Job};
use assess::pack::Library;
use assess::quote;
use assess::report::counted;
use assess::session::{self, SessionError};
use assess::words;
use sim_core::workshop::Workshop;

use crate::Verdict;
use crate::cli::ReplayArgs;
use crate::text::show;
use front::places::Places;

/// Runs the command.
pub(crate) fn run(out: &mut dyn Write, at: &Places, args: &ReplayArgs) -> anyhow::Result<Verdict> {
    let attempt = Attempt::read(&args.attempt)?;
    let name = || quote::path(&args.attempt);
    let library = Library::open(&front::places::data(at)?)?;
    let mut job = library.job(&attempt.header.job).map_err(front::message::about(&args.attempt))?;
    let what_if = args.sound || !args.fault.is_empty();
    if what_if && !attempt.is_finished() {
        bail!(
            "{}: the car has not been handed back; a what-if is shown only for finished attempts. Carry it on \
             with: pinhole text --attempt {} --resume",
            name(),
            name()
        );
    }
    let workshop = match session::replay(&attempt, &job) {
        Ok(workshop) => workshop,
        Err(SessionError::Differs(difference)) => {
            writeln!(out, "{}: differs at {difference}", name())?;
            return Ok(Verdict::Fail);
        }
        Err(error) => return Err(front::message::about(&args.attempt)(error)),
    };
    if what_if && job.after_hand_back == AfterHandBack::Nothing {
        bail!(
            "{}: handed in. The pack {} tells nothing after the hand-back, so there is no what-if",
            name(),
            job.pack_id
        );
    }
    if what_if {
        job.faults = faults(&job, &args.fault)?;
        return what_if_shown(out, &attempt, &job, &workshop);
    }
    let minutes: usize = attempt.steps.iter().map(|s| s.minutes.len()).sum();
    let readings = attempt.steps.iter().filter(|s| s.reading.is_some()).count();
    writeln!(
        out,
        "{}: {}, {}, {} and {} are the same, bit for bit.",
        name(),
        counted(attempt.steps.len(), "action"),
        counted(readings, "reading"),
        counted(minutes, "minute digest"),
        counted(attempt.steps.len(), "action digest")
    )?;
    writeln!(out, "state digest {:016x} at {}", workshop.digest(), show::clock(workshop.tick()))?;
    if !attempt.is_finished() {
        writeln!(out, "The car has not been handed back; this attempt can be carried on.")?;
    }
    Ok(Verdict::Pass)
}

/// Faults named on the command line as the car has them.
pub(crate) fn find_faults(
    car: &sim_core::car::Car,
    named: &[(String, f64)],
) -> anyhow::Result<Vec<(u16, f64)>> {
    let plain = |s: &str| s.to_lowercase().replace('-', "_");
    named
        .iter()
        .map(|(id, severity)| {
            let Some(index) = car.faults.iter().position(|f| plain(&f.id) == plain(id)) else {
                let known: Vec<&str> = car.faults.iter().map(|f| f.id.as_str()).collect();
                let known = quote::listed(id, &known);
                bail!("{} has no fault {}; known: {known}", car.id, quote::quoted(id));
            };
            let fault = &car.faults[index];
            // What the parameter can take, not only what the catalogue uses: a what-if may ask for less.
            let (min, max) = parameter_range(car, &fault.param).unwrap_or((fault.severity_min, fault.severity_max));
            if !(min..=max).contains(severity) {
                bail!(
                    "--fault {id}={}: {} is allowed from {min} to {max} (the catalogue of faults has {} to {})",
                    quote::number(*severity),
                    fault.param,
                    fault.severity_min,
                    fault.severity_max
                );
            }
            Ok((index as u16, *severity))
        })
        .collect()
}

fn parameter_range(car: &sim_core::car::Car, param: &str) -> Option<(f64, f64)> {
    let (part, name) = param.split_once('.')?;
    let part = car.assembly.part_index(part)?;
    let table = car.assembly.parts[usize::from(part)].kind.params().table();
    table.iter().find(|d| d.name == name).map(|d| (d.min, d.max))
}

fn faults(job: &Job, named: &[(String, f64)]) -> anyhow::Result<Vec<(u16, f64)>> {
    find_faults(&job.car, named)
}

/// The same actions in another world, reading by reading.
fn what_if_shown(
    out: &mut dyn Write,
    attempt: &Attempt,
    job: &Job,
    as_it_was: &Workshop,
) -> anyhow::Result<Verdict> {
    let seed: Seed = attempt.header.seed;
    let mut workshop = session::workshop(job, seed);
    let names: Vec<String> = job
        .faults
        .iter()
        .map(|(f, severity)| format!("{} ({severity})", job.car.faults[usize::from(*f)].name))
        .collect();
    let world =
        if names.is_empty() { "everything inside its limits".to_owned() } else { names.join(" and ") };
    writeln!(out, "What if: {world}. The same actions, the same tolerances and instruments.\n")?;
    writeln!(out, "  {:>3}  {:<34} {:>18} {:>18}", "no.", "reading", "was shown", "would have shown")?;
    let mut changed = 0;
    for step in &attempt.steps {
        if workshop.tick() < step.start {
            workshop.run_free_cut(step.start);
        }
        let outcome = workshop.replay(&step.action, step.end);
        // What cannot be computed is no reading.
        session::computed(&workshop)?;
        let (Some(was), Some(now)) = (&step.reading, &outcome.reading) else { continue };
        let scale = as_it_was.scale(&was.what);
        let (before, after) = (show::shown(was, &scale), show::shown(now, &scale));
        let mark = if before == after { ' ' } else { '*' };
        changed += usize::from(before != after);
        writeln!(out, "{mark} {:>3}  {:<34} {before:>18} {after:>18}", was.id, show::what(&was.what))?;
    }
    writeln!(out, "\n{} would have been different (*).", counted(changed, "reading"))?;
    let finding = attempt.steps.iter().find(|s| matches!(s.action, sim_core::action::Action::Finding { .. }));
    if let Some(step) = finding {
        writeln!(out, "The finding was: {}", words::say(&step.action))?;
    }
    Ok(Verdict::Pass)
}
