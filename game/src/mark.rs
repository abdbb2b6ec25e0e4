//! `pinhole mark`: marks attempts, and writes the sheets for people and for other programs.

use std::io::Write;
use std::path::Path;

use anyhow::bail;
use assess::attempt::mark_line::MarkLine;
use assess::attempt::marked::{self, Kept};
use assess::attempt::{Attempt, AttemptError, SeedFrom};
use assess::locale::quote;
use assess::locale::{Locale, Naming};
use assess::marks::sheet::MarkSheet;
use assess::marks::when::utc;
use assess::pack::Library;
use assess::pack::job::AfterHandBack;
use assess::report;

use front::marking::{evaluation_at, job_of, told};
use front::message::{about, message, message_in};

use crate::Verdict;
use crate::cli::MarkArgs;
use crate::text::show;
use crate::tongue::{decimal, say};
use front::output::{Kind, Outputs, cell};
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
        // A pack that tells nothing after the hand-back has no mark in a file that the trainee holds.
        let kept = match job.after_hand_back {
            AfterHandBack::Everything => marked::keep_in(path, &attempt, &sheet),
            AfterHandBack::Nothing => Ok(None),
        };
        Ok(Marked { sheet, english, kept })
    };
    Row { path, marked: mark() }
}

/// Pass when everyone is competent.
pub(crate) fn verdict<'a>(sheets: impl IntoIterator<Item = &'a MarkSheet>) -> Verdict {
    let competent = |s: &MarkSheet| s.marks.as_ref().is_some_and(|m| m.competent);
    if sheets.into_iter().all(competent) { Verdict::Pass } else { Verdict::Fail }
}

pub(crate) fn in_a_line(words: &Words, sheet: &MarkSheet) -> String {
    let Some(marks) = &sheet.marks else { return words.say("mark-line-unfinished") };
    let total = decimal(words, format!("{:.1}", marks.total));
    match marks.competent {
        true => say!(words, "mark-line-competent", total = total),
        false => say!(words, "mark-line-not-yet", total = total),
    }
}

/// Letters of the parts, in the order of the table.
const LETTERS: [&str; 5] = ["V", "E", "R", "Q", "D"];

/// Heads of the table.
pub(crate) fn head() -> Vec<&'static str> {
    let mut head = vec!["attempt", "job", "seat", "finished", "competent", "total", "cut"];
    head.extend(LETTERS);
    head.extend(["deducted", "attended_min", "unattended_min", "job_digest", "mark_in_file"]);
    head.extend(["begun", "ended", "wall_min", "scripted", "scripted_actions", "actions", "seed_given"]);
    head.extend(["sittings", "mended", "error"]);
    head
}

/// Cells of an attempt that was marked.
pub(crate) fn cells_of(name: &str, sheet: &MarkSheet, in_file: &str) -> Vec<String> {
    let mut row = vec![cell(name)];
    row.extend(marks(sheet, in_file));
    row.extend(when(sheet));
    row.push(String::new());
    row
}

/// Cells of one that could not be: the last says why.
pub(crate) fn cells_of_error(name: &str, why: &str) -> Vec<String> {
    let mut row = vec![cell(name)];
    row.extend(std::iter::repeat_n(String::new(), head().len() - 2));
    row.push(cell(why));
    row
}

/// Whether the file carries this mark, another, or none, where nothing is written into it.
pub(crate) fn in_file(attempt: &Attempt, sheet: &MarkSheet) -> &'static str {
    match &attempt.mark {
        None => "none",
        found if *found == MarkLine::of(sheet) => "same",
        Some(_) => "differs",
    }
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

/// Cells from the job to the mark in the file.
fn marks(sheet: &MarkSheet, in_file: &str) -> Vec<String> {
    let mut row = vec![
        cell(&sheet.job),
        cell(sheet.seat.as_deref().unwrap_or_default()),
        sheet.marks.is_some().to_string(),
    ];
    match &sheet.marks {
        Some(m) => {
            row.extend([m.competent.to_string(), m.total.to_string(), m.cut.to_string()]);
            for letter in LETTERS {
                let part = m.parts.iter().find(|p| p.letter == letter);
                row.push(part.map_or_else(String::new, |p| p.points.to_string()));
            }
            row.push(m.deducted.to_string());
        }
        None => row.extend(std::iter::repeat_n(String::new(), 3 + LETTERS.len() + 1)),
    }
    row.extend([
        sheet.attended_min.to_string(),
        sheet.unattended_min.to_string(),
        cell(&sheet.job_digest),
        in_file.to_owned(),
    ]);
    row
}

/// Cells of the wall clock and of how it was done; empty where it is not recorded.
fn when(sheet: &MarkSheet) -> Vec<String> {
    let when = &sheet.when;
    let or_empty = |text: Option<String>| text.unwrap_or_default();
    vec![
        utc(when.begun_unix_ms),
        or_empty(when.ended_unix_ms.map(utc)),
        or_empty(when.wall_s.map(|s| (s / 60.0).to_string())),
        or_empty(when.played_actions.map(|n| (0 < n).to_string())),
        or_empty(when.played_actions.map(|n| n.to_string())),
        when.actions.to_string(),
        or_empty(when.seed_from.map(|from| (from == SeedFrom::Given).to_string())),
        or_empty(when.sittings.map(|n| n.to_string())),
        when.repairs.len().to_string(),
    ]
}
