//! The table of `pinhole bench`, for people and for other programs.

use std::io::{self, Write};

use assess::locale::sentence::Sentence;
use front::words::Words;

use super::names::{Case, How, Quantity};
use super::stopwatch::Measured;
use crate::tongue::decimal;

/// Another row of the same run, and how many times as much this one is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Beside {
    pub(super) what: How,
    pub(super) ratio: f64,
}

impl Beside {
    /// By the best of both.
    pub(super) fn of(what: How, this: Measured, other: Measured) -> Self {
        Self { what, ratio: this.best / other.best }
    }
}

/// A line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    case: Case,
    how: How,
    quantity: Quantity,
    measured: Measured,
    /// How many samples, or circuits that were counted together.
    samples: usize,
    beside: Option<Beside>,
}

impl Row {
    pub(super) const fn new(
        case: Case,
        how: How,
        quantity: Quantity,
        measured: Measured,
        samples: usize,
    ) -> Self {
        Self { case, how, quantity, measured, samples, beside: None }
    }

    pub(super) const fn beside(self, beside: Beside) -> Self {
        Self { beside: Some(beside), ..self }
    }
}

/// All lines.
#[derive(Debug, Default)]
pub(super) struct Rows(Vec<Row>);

impl Rows {
    pub(super) fn push(&mut self, row: Row) {
        self.0.push(row);
    }

    /// Aligned, one line a row.
    pub(super) fn print(&self, out: &mut dyn Write, words: &Words) -> io::Result<()> {
        let short = |x| decimal(words, short(x));
        let say = |sentence: Sentence| words.sentence(&sentence);
        let cells = |row: &Row| {
            let beside = row
                .beside
                .map_or(String::new(), |b| format!("{} x {}", short(b.ratio), say(b.what.sentence())));
            [
                say(row.case.sentence()),
                say(row.how.sentence()),
                short(row.measured.best),
                short(row.measured.median),
                say(row.quantity.sentence()),
                beside,
            ]
        };
        let head = [
            "speed-head-case",
            "speed-head-how",
            "speed-head-best",
            "speed-head-median",
            "speed-head-of",
            "speed-head-beside",
        ];
        let head = head.map(|key| words.say(key));
        let lines: Vec<[String; 6]> = std::iter::once(head).chain(self.0.iter().map(cells)).collect();
        let width = |i: usize| lines.iter().map(|line| line[i].chars().count()).max().unwrap_or(0);
        let w: [usize; 6] = std::array::from_fn(width);
        for [case, how, best, median, of, beside] in &lines {
            let line = format!(
                "{case:<0$}  {how:<1$}  {best:>2$}  {median:>3$}  {of:<4$}  {beside}",
                w[0], w[1], w[2], w[3], w[4]
            );
            writeln!(out, "{}", line.trim_end())?;
        }
        Ok(())
    }

    /// The same with all digits.
    pub(super) fn csv(&self) -> anyhow::Result<Vec<u8>> {
        let mut csv = csv::Writer::from_writer(Vec::new());
        csv.write_record(["case", "how", "quantity", "best", "median", "samples", "beside", "ratio"])?;
        for row in &self.0 {
            csv.write_record([
                &row.case.sentence().to_string(),
                &row.how.sentence().to_string(),
                &row.quantity.sentence().to_string(),
                &row.measured.best.to_string(),
                &row.measured.median.to_string(),
                &row.samples.to_string(),
                &row.beside.map_or(String::new(), |b| b.what.sentence().to_string()),
                &row.beside.map_or(String::new(), |b| b.ratio.to_string()),
            ])?;
        }
        Ok(csv.into_inner()?)
    }
}

/// Some three digits; whole numbers from a hundred on.
fn short(x: f64) -> String {
    match x.abs() {
        a if 100.0 <= a => format!("{x:.0}"),
        a if 10.0 <= a => format!("{x:.1}"),
        a if 0.1 <= a => format!("{x:.2}"),
        _ => format!("{x:.2e}"),
    }
}
