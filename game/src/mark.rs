//! `pinhole mark`: marks attempts, and writes the sheets for people and for other programs.

use std::io::Write;
use std::path::Path;

use anyhow::bail;
use assess::attempt::marked::{self, Kept};
use assess::attempt::{Attempt, AttemptError};
use assess::locale::quote;
use assess::locale::{Locale, Naming};
use assess::marks::sheet::MarkSheet;
use assess::pack::Library;
use assess::pack::job::AfterHandBack;
use assess::report;

use front::marking::{evaluation_at, job_of, told};
use front::message::{about, message, message_in};

use crate::Verdict;
use crate::cli::MarkArgs;
use crate::mark_table::{cells_of, cells_of_error, head, in_a_line};
use crate::text::show;
use crate::tongue::say;
use front::output::{Kind, Outputs};
use front::places::Places;
use front::words::Words;

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &MarkArgs,
) -> anyhow::Result<Verdict> {
    if let Some(folder) = &args.collect {
        return crate::many::collect(out, words, args, folder);
    }
    match args.attempts.as_slice() {
        [folder] if folder.is_dir() => {
            if args.html.is_some() {
                bail!("{}", words.say("mark-folder-page"));
            }
            return crate::many::run(out, words, at, args, folder);
        }
        _ if args.shard.is_some() || args.results.is_some() => {
            bail!("{}", words.say("mark-folder-alone"));
        }
        _ => {}
    }
    if args.html.is_some() && 1 < args.attempts.len() {
        bail!("{}", say!(words, "mark-one-page", n = args.attempts.len()));
    }
    // Whether the outputs may go where they shall is known before anybody waits for a mark.
    let mut outputs = Outputs::beside(&args.attempts);
    let mut plan = |flag, path: &Option<std::path::PathBuf>, kind| {
        path.as_ref().map(|path| outputs.plan(flag, path, kind)).transpose()
    };
    let html = plan("--html", &args.html, Kind::Sheet)?;
    let json = plan("--json", &args.json, Kind::Marks)?;
    let csv = plan("--csv", &args.csv, Kind::MarkTable)?;
    let library = Library::open(&front::places::data(at)?)?;
    // All files first: whoever waits for the marking of a class should not wait for a slip in the last name.
    let attempts: Vec<Result<Attempt, AttemptError>> =
        args.attempts.iter().map(|p| Attempt::read(p)).collect();
    let many = 1 < attempts.len();
    let mut rows: Vec<Row> = Vec::new();
    for (path, attempt) in args.attempts.iter().zip(attempts) {
        if many {
            let (n, all) = (rows.len() + 1, args.attempts.len());
            writeln!(out, "{}", say!(words, "mark-at-work", file = name(path), n = n, all = all))?;
            out.flush()?;
        }
        rows.push(row(&library, words, path, attempt));
    }
    let sheets: Vec<&MarkSheet> =
        rows.iter().filter_map(|row| Some(&row.marked.as_ref().ok()?.sheet)).collect();
    // A full disk keeps no mark from being shown.
    let mut written = Vec::new();
    if let Some(output) = html
        && let Some(sheet) = sheets.first()
    {
        written.push(output.write(report::html::render(sheet, words).as_bytes()));
    }
    if let Some(output) = json {
        let said: Vec<Said<'_>> = rows.iter().map(Said::of).collect();
        let text = match said.as_slice() {
            [one] => serde_json::to_string_pretty(one)?,
            all => serde_json::to_string_pretty(all)?,
        };
        written.push(output.write((text + "\n").as_bytes()));
    }
    if let Some(output) = csv {
        written.push(output.write(&table(&rows)?));
    }
    let (finished, all) = (sheets.len(), rows.len());
    let verdict = verdict(sheets);
    let mut alone = None;
    for Row { path, marked } in rows {
        let (sheet, kept) = match &marked {
            Ok(marked) => (&marked.sheet, &marked.kept),
            Err(error) if many => {
                writeln!(out, "{}", say!(words, "mark-not-marked", file = name(path)))?;
                let what = say!(words, "error-is", what = message_in(words, error));
                // Standard error may be closed; then the exit code alone must do.
                drop(writeln!(std::io::stderr(), "{what}"));
                continue;
            }
            Err(_) => {
                alone = marked.err();
                continue;
            }
        };
        if many {
            let mark = in_a_line(words, sheet);
            writeln!(out, "{}", say!(words, "mark-line", file = name(path), mark = mark))?;
        } else {
            write!(out, "{}", report::terminal::render(sheet, words))?;
        }
        if let Some(told) = told(kept) {
            show::wrapped(out, if many { "  " } else { "" }, &words.sentence(&told))?;
        }
    }
    written.into_iter().collect::<Result<(), _>>()?;
    if let Some(error) = alone {
        return Err(error);
    }
    Ok(if finished < all { Verdict::Trouble } else { verdict })
}

/// A file as it is shown.
fn name(path: &Path) -> String {
    quote::path(path).to_string()
}

/// What became of one file.
struct Row<'a> {
    path: &'a Path,
    /// What came of it; or why it could not be marked.
    marked: anyhow::Result<Marked>,
}

/// A marked file.
struct Marked {
    /// The sheet in the language that is spoken.
    sheet: MarkSheet,
    /// The sheet as other programs get it: in the English that is in the program.
    english: MarkSheet,
    /// Whether the mark is kept in the file.
    kept: Result<Option<Kept>, AttemptError>,
}

/// One file as other programs get it, in English whoever asks.
#[derive(serde::Serialize)]
#[serde(untagged)]
enum Said<'a> {
    Sheet(&'a MarkSheet),
    Error { attempt: String, error: String },
}

impl<'a> Said<'a> {
    fn of(row: &'a Row<'_>) -> Self {
        match &row.marked {
            Ok(marked) => Self::Sheet(&marked.english),
            Err(error) => Self::Error { attempt: name(row.path), error: message(error) },
        }
    }
}

/// Marks one file; what is wrong with it must not keep the others from being marked.
fn row<'a>(
    library: &Library,
    words: &Words,
    path: &'a Path,
    attempt: Result<Attempt, AttemptError>,
) -> Row<'a> {
    let mark = || -> anyhow::Result<_> {
        let attempt = attempt?;
        let job = job_of(library, &attempt).map_err(about(path))?;
        let evaluation = evaluation_at(&attempt, &job).map_err(about(path))?;
        let sheet = evaluation.sheet(words, Naming::Typed);
        let english = evaluation.sheet(&Locale::built_in(), Naming::Typed);
        // A pack that tells nothing after the hand-back has no mark in a file that the trainee holds, unless an
        // instructor has overridden it.
        let kept = match job.after_hand_back {
            AfterHandBack::Nothing if attempt.mark.is_none() => Ok(None),
            AfterHandBack::Everything | AfterHandBack::Nothing => marked::keep_in(path, &attempt, &sheet),
        };
        Ok(Marked { sheet, english, kept })
    };
    Row { path, marked: mark() }
}

/// Pass when everyone is competent, by what holds.
pub(crate) fn verdict<'a>(sheets: impl IntoIterator<Item = &'a MarkSheet>) -> Verdict {
    let competent = |s: &MarkSheet| s.competent() == Some(true);
    if sheets.into_iter().all(competent) { Verdict::Pass } else { Verdict::Fail }
}

/// One line an attempt; one that could not be marked says why in its last cell.
fn table(rows: &[Row<'_>]) -> anyhow::Result<Vec<u8>> {
    let mut csv = csv::Writer::from_writer(Vec::new());
    csv.write_record(head())?;
    for Row { path, marked } in rows {
        let name = path.to_string_lossy();
        csv.write_record(match marked {
            Ok(Marked { english: sheet, kept, .. }) => cells_of(&name, sheet, after_keeping(kept)),
            Err(error) => cells_of_error(&name, &message(error)),
        })?;
    }
    Ok(csv.into_inner()?)
}

fn after_keeping(kept: &Result<Option<Kept>, AttemptError>) -> &'static str {
    match kept {
        Ok(Some(Kept::Written | Kept::Same)) => "same",
        Ok(Some(_)) => "differs",
        Ok(None) | Err(_) => "none",
    }
}
