//! The file of results of one shard: a line of JSON an attempt, written as it comes and on the disk before the next
//! is begun, so that whoever is stopped goes on where he was. The last line of a shard that is done lists its rows.

use std::collections::BTreeMap;
use std::fs::{File, OpenOptions, TryLockError};
use std::io::{self, BufRead as _, BufReader, Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use assess::attempt::ENGINE;
use assess::files::{self, Doing};
use assess::locale::quote;
use assess::sentence;

use crate::cli::Shard;

/// How the first line begins; by this a file of results is told from a stranger's.
const FORM: &str = "pinhole-results/2";

#[derive(serde::Serialize, serde::Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
struct Head {
    results: String,
    shard: u32,
    of: u32,
}

/// What became of one attempt, as it stands in the file.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Row {
    /// Name of the file.
    pub(super) attempt: String,
    /// blake3 over the attempt's bytes, the job's digest and the program's version.
    pub(super) key: String,
    /// Cells of the table.
    pub(super) cells: Vec<String>,
    /// Competent, by what holds; `None` when it is not finished or could not be marked.
    pub(super) competent: Option<bool>,
    /// The sheet in English; none where it could not be marked.
    pub(super) sheet: Option<assess::marks::sheet::MarkSheet>,
    /// Why it could not be marked.
    pub(super) error: Option<String>,
}

#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Done {
    done: Vec<(String, String)>,
    engine: String,
}

/// What is read first of a line, to know what it is.
#[derive(serde::Deserialize)]
struct Name {
    attempt: String,
    key: String,
    error: Option<String>,
}

/// Where a row stands.
#[derive(Clone, Copy, Debug)]
struct Place {
    at: u64,
    len: usize,
}

/// A file of results.
#[derive(Debug)]
pub(super) struct Results {
    path: PathBuf,
    file: File,
    len: u64,
    places: BTreeMap<(String, String), Place>,
    failed: BTreeMap<(String, String), ()>,
    done: Option<Vec<(String, String)>>,
    engine: String,
}

/// The file of a shard.
pub(super) fn file_of(folder: &Path, shard: Shard) -> PathBuf {
    folder.join(format!("marks-{}-of-{}.results", shard.k, shard.n))
}

fn cannot(path: &Path, doing: Doing) -> impl Fn(io::Error) -> anyhow::Error + '_ {
    move |e| {
        anyhow::Error::new(sentence!(
            "results-trouble",
            "{file}: {why}; what is marked already is kept, run it again to go on",
            file = quote::path(path),
            why = files::refusal(&e, doing)
        ))
    }
}

impl Results {
    /// Opens the file of a shard to go on in it, or makes it. A torn last line is cut off.
    pub(super) fn open(folder: &Path, shard: Shard) -> anyhow::Result<Self> {
        std::fs::create_dir_all(folder).map_err(cannot(folder, Doing::Write))?;
        let path = file_of(folder, shard);
        let mut options = OpenOptions::new();
        options.read(true).write(true).create(true).truncate(false);
        if path.metadata().is_ok_and(|meta| !meta.is_file()) {
            return Err(strange(&path));
        }
        let file = options.open(&path).map_err(cannot(&path, Doing::Write))?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                return Err(anyhow::Error::new(sentence!(
                    "results-in-use",
                    "{file} is in use: this shard is being marked already",
                    file = quote::path(&path)
                )));
            }
            Err(TryLockError::Error(e)) if e.kind() == io::ErrorKind::Unsupported => {}
            Err(TryLockError::Error(e)) => return Err(cannot(&path, Doing::Write)(e)),
        }
        let mut results = Self::index(path, file, Some(shard))?;
        results.file.set_len(results.len).map_err(cannot(&results.path, Doing::Write))?;
        if results.len == 0 {
            let head = Head { results: FORM.to_owned(), shard: shard.k, of: shard.n };
            results.line(&serde_json::to_string(&head)?)?;
        }
        Ok(results)
    }

    /// Reads a shard that is done.
    fn read(path: PathBuf) -> anyhow::Result<Self> {
        let file = files::open(&path)?;
        let results = Self::index(path, file, None)?;
        if results.done.is_none() {
            return Err(anyhow::Error::new(sentence!(
                "results-unfinished",
                "{file}: this shard is not done; run it again to go on",
                file = quote::path(&results.path)
            )));
        }
        Ok(results)
    }

    /// Notes where each row stands; the rows themselves stay on the disk.
    fn index(path: PathBuf, file: File, shard: Option<Shard>) -> anyhow::Result<Self> {
        let mut reader = BufReader::new(&file);
        let (mut len, mut places, mut failed, mut done) = (0, BTreeMap::new(), BTreeMap::new(), None);
        let mut engine = ENGINE.to_owned();
        let mut line = Vec::new();
        loop {
            line.clear();
            let n = reader.read_until(b'\n', &mut line).map_err(cannot(&path, Doing::Read))?;
            // A torn line is one that was being written when the program was stopped.
            if n == 0 || line.last() != Some(&b'\n') {
                if len == 0 && 0 < n {
                    return Err(strange(&path));
                }
                break;
            }
            if len == 0 {
                let head: Head = serde_json::from_slice(&line).map_err(|_| strange(&path))?;
                let mine = shard.is_none_or(|s| (head.shard, head.of) == (s.k, s.n));
                if head.results != FORM || !mine {
                    return Err(strange(&path));
                }
            } else if line.starts_with(b"{\"done\":") {
                let end: Done = serde_json::from_slice(&line).map_err(|_| strange(&path))?;
                (done, engine) = (Some(end.done), end.engine);
            } else {
                let name: Name = serde_json::from_slice(&line).map_err(|_| strange(&path))?;
                let of = (name.attempt, name.key);
                if name.error.is_some() {
                    failed.insert(of.clone(), ())
                } else {
                    failed.remove(&of)
                };
                places.insert(of, Place { at: len, len: n });
                done = None;
            }
            len += n as u64;
        }
        Ok(Self { path, file, len, places, failed, done, engine })
    }

    /// Whether a row of this key stands there. What could not be marked is tried again.
    pub(super) fn has(&self, attempt: &str, key: &str) -> bool {
        let of = (attempt.to_owned(), key.to_owned());
        self.places.contains_key(&of) && !self.failed.contains_key(&of)
    }

    /// Whether some row of this attempt stands there, of these bytes or of others.
    pub(super) fn knows(&self, attempt: &str) -> bool {
        let from = (attempt.to_owned(), String::new());
        self.places.range(from..).next().is_some_and(|((name, _), _)| name == attempt)
    }

    fn line(&mut self, text: &str) -> anyhow::Result<()> {
        let text = format!("{text}\n");
        let mut write = || {
            self.file.seek(SeekFrom::Start(self.len))?;
            self.file.write_all(text.as_bytes())?;
            self.file.sync_data()
        };
        if let Err(e) = write() {
            // Best effort: if even this fails, the torn line is dropped when the file is opened again.
            drop(self.file.set_len(self.len));
            return Err(cannot(&self.path, Doing::Write)(e));
        }
        self.len += text.len() as u64;
        Ok(())
    }

    /// Appends a row and waits until it is on the disk.
    pub(super) fn append(&mut self, row: &Row) -> anyhow::Result<()> {
        let text = serde_json::to_string(row)?;
        let place = Place { at: self.len, len: text.len() + 1 };
        self.line(&text)?;
        self.places.insert((row.attempt.clone(), row.key.clone()), place);
        Ok(())
    }

    /// Writes down that these are all rows of the shard, unless it stands there.
    pub(super) fn end(&mut self, rows: Vec<(String, String)>) -> anyhow::Result<()> {
        if self.done.as_ref() == Some(&rows) && self.engine == ENGINE {
            return Ok(());
        }
        let end = Done { done: rows.clone(), engine: ENGINE.to_owned() };
        self.line(&serde_json::to_string(&end)?)?;
        self.done = Some(rows);
        Ok(())
    }

    fn row(&mut self, of: &(String, String)) -> anyhow::Result<Row> {
        let place = *self.places.get(of).ok_or_else(|| strange(&self.path))?;
        self.file.seek(SeekFrom::Start(place.at)).map_err(cannot(&self.path, Doing::Read))?;
        let mut bytes = vec![0; place.len];
        self.file.read_exact(&mut bytes).map_err(cannot(&self.path, Doing::Read))?;
        serde_json::from_slice(&bytes).map_err(|_| strange(&self.path))
    }
}

fn strange(path: &Path) -> anyhow::Error {
    anyhow::Error::new(sentence!(
        "results-strange",
        "{file} is no whole file of results written by pinhole mark; move it away",
        file = quote::path(path)
    ))
}

/// The results of all shards, in the order of the attempts' names.
#[derive(Debug)]
pub(super) struct Collected {
    shards: Vec<Results>,
    order: Vec<(usize, (String, String))>,
}

impl Collected {
    /// Of the shards that were just marked.
    pub(super) fn of(shards: Vec<Results>) -> Self {
        let rows = |(i, shard): (usize, &Results)| {
            shard.done.iter().flatten().map(move |of| (i, of.clone())).collect::<Vec<_>>()
        };
        let mut order: Vec<_> = shards.iter().enumerate().flat_map(rows).collect();
        order.sort_by(|a, b| a.1.cmp(&b.1));
        Self { shards, order }
    }

    /// Of a folder of shards: all of them, done, by one version of the program.
    pub(super) fn read(folder: &Path) -> anyhow::Result<Self> {
        let mut found: Vec<(Shard, PathBuf)> = Vec::new();
        for entry in std::fs::read_dir(folder).map_err(cannot(folder, Doing::Read))? {
            let path = entry.map_err(cannot(folder, Doing::Read))?.path();
            let stem =
                path.file_name().and_then(|n| n.to_str()?.strip_prefix("marks-")?.strip_suffix(".results"));
            let shard = stem.and_then(|s| {
                let (k, n) = s.split_once("-of-")?;
                Some(Shard { k: k.parse().ok()?, n: n.parse().ok()? })
            });
            found.extend(shard.map(|shard| (shard, path)));
        }
        found.sort();
        let Some(&(Shard { n, .. }, _)) = found.first() else {
            return Err(anyhow::Error::new(sentence!(
                "results-none",
                "{folder} holds no file of results (marks-1-of-4.results and so on)",
                folder = quote::path(folder)
            )));
        };
        let numbers: Vec<Shard> = found.iter().map(|(shard, _)| *shard).collect();
        if !numbers.iter().copied().eq((1..=n).map(|k| Shard { k, n })) {
            let here: Vec<String> = numbers.iter().map(ToString::to_string).collect();
            return Err(anyhow::Error::new(sentence!(
                "results-missing",
                "{folder} holds the shards {here}; expected each from 1/{n} to {n}/{n} once and no other",
                folder = quote::path(folder),
                here = here.join(", "),
                n = n
            )));
        }
        let shards = found.into_iter().map(|(_, path)| Results::read(path)).collect::<Result<Vec<_>, _>>()?;
        if let [first, rest @ ..] = shards.as_slice()
            && let Some(other) = rest.iter().find(|s| s.engine != first.engine)
        {
            return Err(anyhow::Error::new(sentence!(
                "results-versions",
                "{file} was marked by version {one}, {other} by {two}; mark all shards with one version",
                file = quote::path(&first.path),
                one = &first.engine,
                other = quote::path(&other.path),
                two = &other.engine
            )));
        }
        Ok(Self::of(shards))
    }

    /// Attempts.
    pub(super) fn len(&self) -> usize {
        self.order.len()
    }

    /// Each row in order, one at a time from the disk.
    pub(super) fn each(&mut self, mut take: impl FnMut(Row) -> anyhow::Result<()>) -> anyhow::Result<()> {
        for (shard, of) in &self.order {
            take(self.shards[*shard].row(of)?)?;
        }
        Ok(())
    }
}
