//! `pinhole prove`: what is wrong with the jobs of a pack, before anybody is marked on them.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::bail;
use assess::files;
use assess::pack::job::Job;
use assess::pack::{Library, plan_file};
use assess::prove::{self, Proof, Stage, plan_file};
use assess::report::proof;
use front::message::message_in;
use front::output::{Kind, Outputs};
use front::places::Places;
use front::words::Words;

use crate::Verdict;
use crate::cli::ProveArgs;
use crate::text::show::wrapped;
use crate::tongue::say;

/// Least share of healthy cars in a pack that is marked.
const HEALTHY: f64 = 0.15;
/// So many of the tests are said when one more is tried.
const TOLD_EVERY: usize = 10;

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &ProveArgs,
) -> anyhow::Result<Verdict> {
    let mut outputs = Outputs::default();
    let mut plan = |flag, path: &Option<PathBuf>, kind| {
        path.as_ref().map(|path| outputs.plan(flag, path, kind)).transpose()
    };
    let html = plan("--html", &args.html, Kind::ProofPage)?;
    let json = plan("--json", &args.json, Kind::Proofs)?;
    let library = Library::open(&front::places::data(at)?)?;
    let kept = match &args.results {
        Some(folder) => folder.clone(),
        None => front::places::proofs()?,
    };
    let names = names(&library, &args.of)?;
    let whole = !args.of.contains('/');
    let (mut proofs, mut broken) = (Vec::new(), 0);
    for name in &names {
        // A job whose files are wrong keeps none of the others from being proved.
        match library.job(name) {
            Ok(job) => {
                let found = of(out, words, &kept, &job, args.cars)?;
                tell(out, words, &job, &found)?;
                if args.write_plans {
                    write_plan(out, words, &library, &job, &found)?;
                }
                proofs.push((job, found));
            }
            Err(error) => {
                broken += 1;
                writeln!(out, "{}", say!(words, "prove-broken", job = name.as_str()))?;
                wrapped(out, "  ", &message_in(words, &error.into()))?;
            }
        }
    }
    let wrong = if whole { of_pack(words, &proofs) } else { Vec::new() };
    for line in &wrong {
        wrapped(out, "", &format!("✗ {line}"))?;
    }
    let both: Vec<(&Job, &Proof)> = proofs.iter().map(|(job, proof)| (job, proof)).collect();
    if let Some(output) = html {
        output.write(proof::render(&args.of, &wrong, &both, words).as_bytes())?;
    }
    if let Some(output) = json {
        let all: Vec<&Proof> = proofs.iter().map(|(_, proof)| proof).collect();
        output.write((serde_json::to_string_pretty(&all)? + "\n").as_bytes())?;
    }
    let passed = proofs.iter().filter(|(_, proof)| proof.passes()).count();
    writeln!(out, "{}", say!(words, "prove-sum", n = passed, all = names.len()))?;
    Ok(match passed {
        _ if 0 < broken => Verdict::Trouble,
        passed if passed == names.len() && wrong.is_empty() => Verdict::Pass,
        _ => Verdict::Fail,
    })
}

/// The jobs that are asked for.
fn names(library: &Library, of: &str) -> anyhow::Result<Vec<String>> {
    if of.contains('/') {
        return Ok(vec![of.to_owned()]);
    }
    Ok(library.pack(of)?.jobs.iter().map(|job| format!("{of}/{job}")).collect())
}

/// What is wrong with a pack as a whole.
fn of_pack(words: &Words, proofs: &[(Job, Proof)]) -> Vec<String> {
    let healthy = proofs.iter().filter(|(_, proof)| proof.truth.is_empty()).count();
    let few = (healthy as f64) < HEALTHY * proofs.len() as f64;
    let line = || say!(words, "prove-few-healthy", n = healthy, all = proofs.len());
    few.then(line).into_iter().collect()
}

/// What is known of a job: as it was kept, or proved now and kept.
fn of(out: &mut dyn Write, words: &Words, kept: &Path, job: &Job, cars: usize) -> anyhow::Result<Proof> {
    let file = kept.join(format!("{}-{}.json", job.pack_id, job.id));
    if let Some(proof) = read(&file).filter(|proof| proof.is_of(job, cars)) {
        return Ok(proof);
    }
    std::fs::create_dir_all(kept).map_err(|e| {
        anyhow::Error::new(assess::sentence!(
            "prove-no-folder",
            "the folder {folder} for what is proved cannot be made: {why}; name another with --results",
            folder = assess::locale::quote::path(kept),
            why = files::refusal(&e, files::Doing::Write)
        ))
    })?;
    // Whether it can be kept is known before anybody waits for it.
    let output = Outputs::default().plan("--results", &file, Kind::Proofs)?;
    writeln!(out, "{}", say!(words, "prove-at-work", job = job.name()))?;
    let mut trouble = Ok(());
    let proof = prove::prove(job, cars, &mut |stage| {
        trouble = say_stage(out, words, stage);
        trouble.is_ok()
    });
    trouble?;
    let Some(proof) = proof else { bail!("{}", say!(words, "prove-cannot", job = job.name())) };
    output.write((serde_json::to_string_pretty(&proof)? + "\n").as_bytes())?;
    Ok(proof)
}

/// A proof that was kept; one that cannot be read, or has another form, is made anew.
fn read(file: &Path) -> Option<Proof> {
    let text = files::read_text(file, files::DATA).ok()?;
    serde_json::from_str(&text).ok()
}

/// How far it is, now and then.
fn say_stage(out: &mut dyn Write, words: &Words, stage: Stage) -> std::io::Result<()> {
    match stage {
        Stage::Tried(n, all) if n % TOLD_EVERY == 0 || n == all => {
            writeln!(out, "  {}", say!(words, "prove-tried", n = n, all = all))?;
        }
        Stage::Tried(..) | Stage::Planned(_) => {}
        Stage::Done(n, all) if n % TOLD_EVERY == 0 || n == all => {
            writeln!(out, "  {}", say!(words, "prove-done", n = n, all = all))?;
        }
        Stage::Done(..) => {}
        Stage::Played(n, all) => {
            writeln!(out, "  {}", say!(words, "prove-played", n = n, all = all))?;
        }
    }
    out.flush()
}

/// What was found about a job.
fn tell(out: &mut dyn Write, words: &Words, job: &Job, found: &Proof) -> anyhow::Result<()> {
    let verdict = words.say(if found.passes() { "prove-passes" } else { "prove-fails" });
    writeln!(out, "{}: {verdict}", found.job)?;
    for line in proof::lines(job, found, words) {
        wrapped(out, "  ", &line)?;
    }
    for planned in &found.plan {
        wrapped(out, "    ", &proof::planned(job, planned, words))?;
    }
    for flaw in &found.flaws {
        wrapped(out, "  ", &format!("✗ {}", words.sentence(&flaw.sentence(words))))?;
    }
    writeln!(out)?;
    Ok(())
}

/// Writes the reference plan of a job that passes where the marker finds it.
fn write_plan(
    out: &mut dyn Write,
    words: &Words,
    library: &Library,
    job: &Job,
    found: &Proof,
) -> anyhow::Result<()> {
    let name = plan_file(job);
    if found.plan.is_empty() {
        return Ok(());
    }
    let path = library.root().join(&name);
    if let Some(folder) = path.parent()
        && let Err(e) = std::fs::create_dir_all(folder)
    {
        return Err(anyhow::Error::new(assess::sentence!(
            "prove-no-plans",
            "the folder {folder} for reference plans cannot be made: {why}",
            folder = assess::locale::quote::path(folder),
            why = files::refusal(&e, files::Doing::Write)
        )));
    }
    let output = Outputs::default().plan("--write-plans", &path, Kind::Plan)?;
    output.write(plan_file::text(found)?.as_bytes())?;
    writeln!(out, "  {}", say!(words, "prove-plan-written", file = name))?;
    Ok(())
}
