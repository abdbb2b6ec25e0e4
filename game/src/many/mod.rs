//! `pinhole mark FOLDER`: a folder of attempts, on all cores, stopped and gone on with, alone or in shards.
//!
//! Attempts are marked side by side, each on a core of its own: what one attempt's hypotheses spread over many cores
//! lose, many attempts beside each other do not. The last ones, as many as there are cores, share all cores, so that none
//! is idle while the slowest attempt is not done. Nothing is written into the attempts, so that the folder may be
//! read-only and many machines may read it. Rows go to the shard's file as they come ([`results`]) and are read back one
//! by one, so memory does not grow with the folder.

mod results;

use std::collections::BTreeMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};

use assess::attempt::{Attempt, ENGINE};
use assess::files::{self, Doing};
use assess::locale::{Locale, Naming, quote};
use assess::marks::sheet::MarkSheet;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::sentence;
use front::marking::{evaluation_at, job_of};
use front::message::{about, message};
use front::output::{Kind, Output, Outputs};
use front::places::Places;
use front::words::Words;

use self::results::{Collected, Results, Row};
use crate::Verdict;
use crate::cli::{MarkArgs, Shard};
use crate::mark_table::{self, in_a_line};
use crate::tongue::say;

/// Where tables go.
struct To {
    csv: Option<Output>,
    json: Option<Output>,
}

fn planned(args: &MarkArgs, inputs: &[PathBuf]) -> anyhow::Result<To> {
    let mut outputs = Outputs::beside(inputs);
    let csv = args.csv.as_ref().map(|p| outputs.plan("--csv", p, Kind::MarkTable)).transpose()?;
    let json = args.json.as_ref().map(|p| outputs.plan("--json", p, Kind::Marks)).transpose()?;
    Ok(To { csv, json })
}

/// Puts the shards of a folder together.
pub(crate) fn collect(
    out: &mut dyn Write,
    words: &Words,
    args: &MarkArgs,
    folder: &Path,
) -> anyhow::Result<Verdict> {
    let to = planned(args, &[])?;
    tell(out, words, to, Collected::read(folder)?)
}

/// Marks a folder, or one shard of it.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &MarkArgs,
    folder: &Path,
) -> anyhow::Result<Verdict> {
    let shard = args.shard.unwrap_or(Shard { k: 1, n: 1 });
    let names = attempts(folder)?;
    let paths: Vec<PathBuf> = names.iter().map(|name| folder.join(name)).collect();
    let to = planned(args, &paths)?;
    let library = Library::open(&front::places::data(at)?)?;
    let kept = args.results.clone().unwrap_or_else(|| folder.join("marks"));
    let mut results = Results::open(&kept, shard)?;
    let mine: Vec<String> = names
        .into_iter()
        .enumerate()
        .filter(|(i, _)| *i as u64 % u64::from(shard.n) == u64::from(shard.k) - 1)
        .map(|(_, name)| name)
        .collect();
    let rows = mark_all(&library, words, folder, &mine, &mut results)?;
    results.end(rows)?;
    tell(out, words, to, Collected::of(vec![results]))
}

/// Names of the attempts in a folder, sorted.
fn attempts(folder: &Path) -> anyhow::Result<Vec<String>> {
    let unread = |e: std::io::Error| {
        anyhow::Error::new(sentence!(
            "many-folder",
            "the folder {folder} cannot be read: {why}",
            folder = quote::path(folder),
            why = files::refusal(&e, Doing::Read)
        ))
    };
    let mut names = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unread)? {
        let name = entry.map_err(unread)?.file_name();
        let shown = quote::path(Path::new(&name)).to_string();
        match name.into_string() {
            Ok(name) if name.starts_with('.') || !name.ends_with(".attempt") => {}
            Ok(name) => names.push(name),
            Err(_) if shown.ends_with(".attempt") => {
                return Err(anyhow::Error::new(sentence!(
                    "many-name",
                    "{file}: the name is not UTF-8 text; rename the file",
                    file = shown
                )));
            }
            Err(_) => {}
        }
    }
    names.sort_unstable();
    if names.is_empty() {
        return Err(anyhow::Error::new(sentence!(
            "many-none",
            "{folder} holds no file that ends in .attempt",
            folder = quote::path(folder)
        )));
    }
    Ok(names)
}

/// What all workers share.
struct Work<'a> {
    library: &'a Library,
    words: &'a Words,
    folder: &'a Path,
    names: &'a [&'a String],
    cores: usize,
    next: AtomicUsize,
    stopped: AtomicBool,
    jobs: Mutex<BTreeMap<String, Arc<Job>>>,
    state: Mutex<State<'a>>,
}

struct State<'a> {
    results: &'a mut Results,
    rows: Vec<(String, String)>,
    trouble: Option<anyhow::Error>,
    finished: usize,
}

/// Marks what is not marked yet; gives the key of every row.
fn mark_all(
    library: &Library,
    words: &Words,
    folder: &Path,
    names: &[String],
    results: &mut Results,
) -> anyhow::Result<Vec<(String, String)>> {
    let cores = rayon::current_num_threads().max(1);
    let mut names: Vec<&String> = names.iter().collect();
    // What probably stands there takes no time: it comes first, so that the last are attempts still to be marked.
    names.sort_by_key(|name| !results.knows(name));
    let workers = cores.min(names.len());
    let state = State { results, rows: Vec::new(), trouble: None, finished: 0 };
    let work = Work {
        library,
        words,
        folder,
        names: &names,
        cores,
        next: AtomicUsize::new(0),
        stopped: AtomicBool::new(false),
        jobs: Mutex::new(BTreeMap::new()),
        state: Mutex::new(state),
    };
    let one = |_| rayon::ThreadPoolBuilder::new().num_threads(1).build();
    let own: Vec<rayon::ThreadPool> = (0..workers).map(one).collect::<Result<_, _>>()?;
    std::thread::scope(|scope| {
        for core in &own {
            scope.spawn(|| work.go(core));
        }
    });
    let mut state = work.state.into_inner().map_err(|_| stopped())?;
    if let Some(error) = state.trouble {
        return Err(error);
    }
    state.rows.sort_unstable();
    Ok(state.rows)
}

fn stopped() -> anyhow::Error {
    anyhow::Error::new(sentence!(
        "marker-stopped",
        "the marker stopped in the middle, which is a mistake of this program; report it with the file"
    ))
}

impl Work<'_> {
    /// Marks one attempt after the other, on the core `own` while there is at least one more for every other core.
    fn go(&self, own: &rayon::ThreadPool) {
        while !self.stopped.load(Ordering::Relaxed) {
            let index = self.next.fetch_add(1, Ordering::Relaxed);
            let Some(name) = self.names.get(index) else { return };
            // The last ones go to the pool of all cores, loop by loop: this thread is none of the pool's and only waits.
            // Were the whole attempt handed to that pool, a thread of it that waits for a loop would begin another attempt.
            let last = self.names.len() - index <= self.cores;
            let marked = if last { self.one(name) } else { own.install(|| self.one(name)) };
            if let Err(error) = marked {
                self.stopped.store(true, Ordering::Relaxed);
                if let Ok(mut state) = self.state.lock() {
                    state.trouble.get_or_insert(error);
                }
            }
        }
    }

    /// Marks one attempt unless its row stands there; an error is one of the file of results.
    fn one(&self, name: &str) -> anyhow::Result<()> {
        let path = self.folder.join(name);
        // What cannot be read has no bytes; why is told below.
        let bytes = files::read(&path, files::ATTEMPT).unwrap_or_default();
        let attempt = Attempt::read(&path).map_err(anyhow::Error::new);
        let job = match &attempt {
            Ok(attempt) => self.job(attempt).map_err(about(&path)).map(Some),
            Err(_) => Ok(None),
        };
        let mut hasher = blake3::Hasher::new();
        hasher.update(&bytes);
        hasher.update(&job.as_ref().ok().and_then(Option::as_ref).map_or([0; 32], |job| job.digest));
        hasher.update(ENGINE.as_bytes());
        let key = hasher.finalize().to_hex().to_string();
        let stands = self.state.lock().map_err(|_| stopped())?.results.has(name, &key);
        if stands {
            return self.finish(name, key, None);
        }
        let marked = || -> anyhow::Result<(Attempt, MarkSheet)> {
            let attempt = attempt?;
            let Some(job) = job? else { return Err(stopped()) };
            let sheet = evaluation_at(&attempt, &job)
                .map_err(about(&path))?
                .sheet(&Locale::built_in(), Naming::Typed);
            Ok((attempt, sheet))
        };
        let row = match marked() {
            Ok((attempt, sheet)) => Row {
                attempt: name.to_owned(),
                key: key.clone(),
                cells: mark_table::cells_of(name, &sheet, mark_table::in_file(&attempt, &sheet)),
                competent: sheet.competent(),
                sheet: Some(sheet),
                error: None,
            },
            Err(error) => {
                let why =
                    sentence!("many-cannot", "cannot be marked: {why}", why = message(&error)).to_string();
                Row {
                    attempt: name.to_owned(),
                    key: key.clone(),
                    cells: mark_table::cells_of_error(name, &why),
                    competent: None,
                    sheet: None,
                    error: Some(why),
                }
            }
        };
        self.finish(name, key, Some(&row))
    }

    fn finish(&self, name: &str, key: String, row: Option<&Row>) -> anyhow::Result<()> {
        let mut state = self.state.lock().map_err(|_| stopped())?;
        if let Some(row) = row {
            state.results.append(row)?;
        }
        state.rows.push((name.to_owned(), key));
        state.finished += 1;
        let what = match row {
            None => self.words.say("many-stands"),
            Some(Row { sheet: Some(sheet), .. }) => in_a_line(self.words, sheet),
            Some(Row { error, .. }) => error.clone().unwrap_or_default(),
        };
        let (n, all) = (state.finished, self.names.len());
        let shown = quote::path(Path::new(name)).to_string();
        // Standard error may be closed; the results are kept all the same.
        drop(writeln!(
            std::io::stderr(),
            "{}",
            say!(self.words, "many-progress", n = n, all = all, file = shown, what = what)
        ));
        Ok(())
    }

    /// The job of an attempt, read once.
    fn job(&self, attempt: &Attempt) -> anyhow::Result<Arc<Job>> {
        let mut jobs = self.jobs.lock().map_err(|_| stopped())?;
        if let Some(job) = jobs.get(&attempt.header.job) {
            return Ok(Arc::clone(job));
        }
        let job = Arc::new(job_of(self.library, attempt)?);
        jobs.insert(attempt.header.job.clone(), Arc::clone(&job));
        Ok(job)
    }
}

/// One attempt as other programs get it.
#[derive(serde::Serialize)]
struct Said<'a> {
    attempt: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    sheet: Option<&'a MarkSheet>,
    #[serde(skip_serializing_if = "Option::is_none")]
    error: Option<&'a str>,
}

/// Writes the tables row by row, and says how it stands.
fn tell(out: &mut dyn Write, words: &Words, to: To, mut all: Collected) -> anyhow::Result<Verdict> {
    let (mut competent, mut not_yet, mut unfinished, mut failed) = (0usize, 0usize, 0usize, 0usize);
    all.each(|row| {
        match (&row.error, row.competent) {
            (Some(_), _) => failed += 1,
            (None, Some(true)) => competent += 1,
            (None, Some(false)) => not_yet += 1,
            (None, None) => unfinished += 1,
        }
        Ok(())
    })?;
    if let Some(output) = to.csv {
        let mut csv = csv::Writer::from_writer(output.begin()?);
        csv.write_record(mark_table::head())?;
        let written = all.each(|row| Ok(csv.write_record(&row.cells)?));
        let draft = csv.into_inner().map_err(|e| anyhow::Error::new(e.into_error()))?;
        written?;
        draft.end(Ok(()))?;
    }
    if let Some(output) = to.json {
        let mut draft = output.begin()?;
        let mut first = true;
        let mut written = Ok(());
        all.each(|row| {
            let said = Said { attempt: &row.attempt, sheet: row.sheet.as_ref(), error: row.error.as_deref() };
            let text = serde_json::to_string_pretty(&said)?;
            let before = if std::mem::take(&mut first) { "[\n" } else { ",\n" };
            if written.is_ok() {
                written = write!(draft, "{before}{text}");
            }
            Ok(())
        })?;
        if written.is_ok() {
            written = draft.write_all(if first { b"[]\n" } else { b"\n]\n" });
        }
        draft.end(written)?;
    }
    let n = all.len();
    writeln!(
        out,
        "{}",
        say!(
            words,
            "many-all",
            n = n,
            competent = competent,
            not_yet = not_yet,
            unfinished = unfinished,
            failed = failed
        )
    )?;
    Ok(match (failed, not_yet + unfinished) {
        (0, 0) => Verdict::Pass,
        (0, _) => Verdict::Fail,
        _ => Verdict::Trouble,
    })
}
