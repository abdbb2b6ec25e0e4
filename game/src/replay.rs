//! `pinhole replay`: does a recorded attempt again and compares; or asks what the same actions would have
//! shown had something else been wrong.

use std::io::Write;

use anyhow::bail;
use assess::attempt::{Attempt, Seed};
use assess::locale::known::known as known_names;
use assess::locale::quote;
use assess::pack::Library;
use assess::pack::job::{AfterHandBack, Job};
use assess::play::{self, SessionError};
use sim_core::workshop::Workshop;

use crate::Verdict;
use crate::cli::ReplayArgs;
use crate::text::show;
use crate::tongue::{decimal, say};
use front::places::Places;
use front::words::Words;

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &ReplayArgs,
) -> anyhow::Result<Verdict> {
    let attempt = Attempt::read(&args.attempt)?;
    let name = || quote::path(&args.attempt).to_string();
    let library = Library::open(&front::places::data(at)?)?;
    let job = library.job(&attempt.header.job).map_err(front::message::about(&args.attempt))?;
    let what_if = args.sound || !args.fault.is_empty();
    if what_if && !attempt.is_finished() {
        bail!("{}", say!(words, "replay-no-what-if", file = name()));
    }
    let workshop = match play::replay(&attempt, &job) {
        Ok(workshop) => workshop,
        Err(SessionError::Differs(difference)) => {
            let place = words.sentence(&difference.sentence());
            writeln!(
                out,
                "{}",
                words.say_with("replay-differs", &[("file", name().into()), ("where", place.into())])
            )?;
            return Ok(Verdict::Fail);
        }
        Err(error) => return Err(front::message::about(&args.attempt)(error)),
    };
    if what_if && job.after_hand_back == AfterHandBack::Nothing {
        bail!("{}", say!(words, "replay-handed-in", file = name(), pack = job.pack_id));
    }
    if what_if {
        let faults = find_faults(words, &job.car, &args.fault)?;
        return what_if_shown(out, words, &attempt, job, &faults, &workshop);
    }
    let minutes: usize = attempt.steps.iter().map(|s| s.minutes.len()).sum();
    let readings = attempt.steps.iter().filter(|s| s.reading.is_some()).count();
    let actions = attempt.steps.len();
    let same = say!(
        words,
        "replay-same",
        file = name(),
        actions = say!(words, "count-actions", n = actions),
        readings = say!(words, "count-readings", n = readings),
        minutes = say!(words, "count-minute-digests", n = minutes),
        digests = say!(words, "count-action-digests", n = actions)
    );
    writeln!(out, "{same}")?;
    let digest = format!("{:016x}", workshop.digest());
    let time = show::clock(words, workshop.tick());
    writeln!(out, "{}", say!(words, "replay-digest", digest = digest, time = time))?;
    if !attempt.is_finished() {
        writeln!(out, "{}", words.say("replay-unfinished"))?;
    }
    Ok(Verdict::Pass)
}

/// Faults named on the command line as the car has them.
pub(crate) fn find_faults(
    words: &Words,
    car: &sim_core::car::Car,
    named: &[(String, f64)],
) -> anyhow::Result<Vec<(u16, f64)>> {
    let plain = |s: &str| s.to_lowercase().replace('-', "_");
    named
        .iter()
        .map(|(id, severity)| {
            let Some(index) = car.faults.iter().position(|f| plain(&f.id) == plain(id)) else {
                let known: Vec<&str> = car.faults.iter().map(|f| f.id.as_str()).collect();
                let known = words.value(&known_names(id, &known));
                let fault = quote::quoted(id).to_string();
                bail!("{}", say!(words, "replay-no-fault", car = &car.id, fault = fault, known = known));
            };
            let fault = &car.faults[index];
            // What the parameter can take, not only what the catalogue uses: a what-if may ask for less.
            let (min, max) =
                parameter_range(car, &fault.param).unwrap_or((fault.severity_min, fault.severity_max));
            if !(min..=max).contains(severity) {
                let number = |value: f64| decimal(words, value);
                let why = say!(
                    words,
                    "replay-severity",
                    fault = id,
                    typed = quote::number(*severity).to_string(),
                    param = &fault.param,
                    min = number(min),
                    max = number(max),
                    least = number(fault.severity_min),
                    most = number(fault.severity_max)
                );
                bail!("{why}");
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

/// The same actions in another world, reading by reading.
fn what_if_shown(
    out: &mut dyn Write,
    words: &Words,
    attempt: &Attempt,
    mut job: Job,
    faults: &[(u16, f64)],
    as_it_was: &Workshop,
) -> anyhow::Result<Verdict> {
    let seed: Seed = attempt.header.seed;
    job.set_answer(faults.to_vec());
    let mut workshop = play::workshop(&job, seed);
    let names: Vec<String> = faults
        .iter()
        .map(|(f, severity)| {
            let (car, fault) = (&job.car, &job.car.faults[usize::from(*f)]);
            let name = words.say_or(&format!("{}-fault-{}", car.id, fault.id), &fault.name);
            format!("{name} ({})", decimal(words, severity))
        })
        .collect();
    let and = format!(" {} ", words.say("bench-and"));
    let world = if names.is_empty() { words.say("replay-sound") } else { names.join(&and) };
    writeln!(out, "{}\n", say!(words, "replay-what-if", world = world))?;
    let [no, reading, was, now] =
        ["replay-no", "replay-reading", "replay-was", "replay-now"].map(|key| words.say(key));
    writeln!(out, "  {no:>3}  {reading:<34} {was:>18} {now:>18}")?;
    let mut changed = 0;
    for step in &attempt.steps {
        if workshop.tick() < step.start {
            workshop.run_free_cut(step.start);
        }
        let outcome = workshop.replay(&step.action, step.end);
        // What cannot be computed is no reading.
        play::computed(&workshop)?;
        let (Some(was), Some(now)) = (&step.reading, &outcome.reading) else { continue };
        let scale = as_it_was.scale(&was.what);
        let (before, after) = (show::shown(words, was, &scale), show::shown(words, now, &scale));
        let mark = if before == after { ' ' } else { '*' };
        changed += usize::from(before != after);
        writeln!(out, "{mark} {:>3}  {:<34} {before:>18} {after:>18}", was.id, show::what(words, &was.what))?;
    }
    let readings = say!(words, "count-readings", n = changed);
    writeln!(out, "\n{}", say!(words, "replay-changed", readings = readings))?;
    let finding = attempt.steps.iter().find(|s| matches!(s.action, sim_core::action::Action::Finding { .. }));
    if let Some(step) = finding {
        let finding = assess::words::say(&step.action);
        writeln!(out, "{}", say!(words, "replay-finding", finding = finding))?;
    }
    Ok(Verdict::Pass)
}
