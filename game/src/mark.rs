//! `pinhole mark`: marks attempts, and writes the sheets for people and for other programs.

use std::io::Write;

use anyhow::bail;
use assess::attempt::{Attempt, AttemptError};
use assess::marked::{self, Kept};
use assess::marks::sheet::MarkSheet;
use assess::pack::Library;
use assess::{quote, report};

use crate::Verdict;
use crate::cli::{MarkArgs, Places};
use crate::output::{Kind, Outputs, cell};
use crate::text::show;

/// Runs the command.
pub(crate) fn run(out: &mut dyn Write, at: &Places, args: &MarkArgs) -> anyhow::Result<Verdict> {
    if args.html.is_some() && 1 < args.attempts.len() {
        bail!("--html takes one attempt; {} are given. For many: --csv or --json", args.attempts.len());
    }
    // Whether the outputs may go where they shall is known before anybody waits for a mark.
    let mut outputs = Outputs::beside(&args.attempts);
    let mut plan = |flag, path: &Option<std::path::PathBuf>, kind| {
        path.as_ref().map(|path| outputs.plan(flag, path, kind)).transpose()
    };
    let html = plan("--html", &args.html, Kind::Sheet)?;
    let json = plan("--json", &args.json, Kind::Marks)?;
    let csv = plan("--csv", &args.csv, Kind::MarkTable)?;
    let library = Library::open(&crate::places::data(at)?)?;
    // All files first: a slip in the last name should not cost the marking of the others.
    let attempts = args.attempts.iter().map(|path| Attempt::read(path)).collect::<Result<Vec<_>, _>>()?;
    let many = 1 < attempts.len();
    let (mut sheets, mut kept) = (Vec::new(), Vec::new());
    for (path, attempt) in args.attempts.iter().zip(&attempts) {
        if many {
            writeln!(out, "{} ({} of {}) …", quote::path(path), sheets.len() + 1, attempts.len())?;
            out.flush()?;
        }
        let sheet = sheet_of(&library, attempt).map_err(crate::about(path))?;
        kept.push(marked::keep_in(path, attempt, &sheet));
        sheets.push(sheet);
    }
    // A full disk keeps no mark from being shown.
    let mut written = Vec::new();
    if let Some(output) = html
        && let Some(sheet) = sheets.first()
    {
        written.push(output.write(report::html::render(sheet).as_bytes()));
    }
    if let Some(output) = json {
        let text = match sheets.as_slice() {
            [one] => serde_json::to_string_pretty(one)?,
            all => serde_json::to_string_pretty(all)?,
        };
        written.push(output.write((text + "\n").as_bytes()));
    }
    if let Some(output) = csv {
        written.push(output.write(&table(&args.attempts, &sheets, &kept)?));
    }
    for ((path, sheet), kept) in args.attempts.iter().zip(&sheets).zip(&kept) {
        if many {
            writeln!(out, "{}: {}", quote::path(path), in_a_line(sheet))?;
        } else {
            write!(out, "{}", report::terminal::render(sheet))?;
        }
        if let Some(told) = told(kept) {
            show::wrapped(out, if many { "  " } else { "" }, &told)?;
        }
    }
    written.into_iter().collect::<Result<(), _>>()?;
    Ok(verdict(&sheets))
}

/// Marks one attempt.
pub(crate) fn sheet_of(library: &Library, attempt: &Attempt) -> anyhow::Result<MarkSheet> {
    let job = library.job(&attempt.header.job)?;
    Ok(assess::marks::mark(attempt, &job)?)
}

/// What to say about the mark in the file; `None` when it stands there as it should.
pub(crate) fn told(kept: &Result<Option<Kept>, AttemptError>) -> Option<String> {
    match kept {
        Ok(kept) => kept.as_ref().and_then(Kept::notice),
        Err(error) => Some(format!("The mark was not written into the attempt's file: {error}.")),
    }
}

/// Pass when everyone is competent.
pub(crate) fn verdict(sheets: &[MarkSheet]) -> Verdict {
    let competent = |s: &MarkSheet| s.marks.as_ref().is_some_and(|m| m.competent);
    if sheets.iter().all(competent) { Verdict::Pass } else { Verdict::Fail }
}

fn in_a_line(sheet: &MarkSheet) -> String {
    match &sheet.marks {
        None => "not finished".to_owned(),
        Some(m) => {
            format!("{} {:.1} of 100", if m.competent { "competent," } else { "not yet competent," }, m.total)
        }
    }
}

/// One line an attempt.
fn table(
    paths: &[std::path::PathBuf],
    sheets: &[MarkSheet],
    kept: &[Result<Option<Kept>, AttemptError>],
) -> anyhow::Result<Vec<u8>> {
    let mut csv = csv::Writer::from_writer(Vec::new());
    let letters = ["V", "E", "R", "Q", "D"];
    let mut head = vec!["attempt", "job", "seat", "finished", "competent", "total", "cut"];
    head.extend(letters);
    head.extend(["deducted", "attended_min", "unattended_min", "job_digest", "mark_in_file"]);
    csv.write_record(&head)?;
    for ((path, sheet), kept) in paths.iter().zip(sheets).zip(kept) {
        let in_file = match kept {
            Ok(Some(Kept::Written | Kept::Same)) => "same",
            Ok(Some(_)) => "differs",
            Ok(None) | Err(_) => "none",
        };
        let mut row = vec![
            cell(&path.to_string_lossy()),
            cell(&sheet.job),
            cell(sheet.seat.as_deref().unwrap_or_default()),
            sheet.marks.is_some().to_string(),
        ];
        match &sheet.marks {
            Some(m) => {
                row.extend([m.competent.to_string(), m.total.to_string(), m.cut.to_string()]);
                for letter in letters {
                    let part = m.parts.iter().find(|p| p.letter == letter);
                    row.push(part.map_or_else(String::new, |p| p.points.to_string()));
                }
                row.push(m.deducted.to_string());
            }
            None => row.extend(std::iter::repeat_n(String::new(), 3 + letters.len() + 1)),
        }
        row.extend([
            sheet.attended_min.to_string(),
            sheet.unattended_min.to_string(),
            cell(&sheet.job_digest),
            in_file.to_owned(),
        ]);
        csv.write_record(&row)?;
    }
    Ok(csv.into_inner()?)
}
