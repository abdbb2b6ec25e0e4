//! `pinhole trace --plot`: chosen columns of the table as a picture, SVG or PNG by the file's ending.
//!
//! The SVG is the picture; a PNG is the same picture in points, twice as many each way, with the letters of the
//! data folder, so that every machine draws the same.

use std::path::{Path, PathBuf};

use assess::files;
use assess::locale::known::known;
use assess::locale::quote;
use assess::locale::sentence::{Sentence, Value};
use assess::report::curves::{self, Curve, CurvesError, LINES};
use assess::sentence;
use resvg::{tiny_skia, usvg};

use front::output::{DRAWING_BEGINS, Kind, Output, OutputError};
use front::words::Words;

/// Points of a PNG for one of the SVG.
const SCALE: f32 = 2.0;
/// Letters, in the data folder.
const FONT: &str = "assets/fonts/Inter-Regular.otf";
/// Unit of a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unit {
    Pressure,
    Flow,
    Current,
    Voltage,
    Temperature,
    Force,
    Travel,
}

impl Unit {
    /// How a column's name ends, and its unit.
    const OF: [(&'static str, Self); 7] = [
        ("_kpa_abs", Self::Pressure),
        ("_flow_out_g_per_s", Self::Flow),
        ("_into_a", Self::Current),
        ("_v", Self::Voltage),
        ("_c", Self::Temperature),
        ("_n", Self::Force),
        ("_mm", Self::Travel),
    ];

    /// The unit that a column's name ends in.
    fn of(column: &str) -> Option<Self> {
        Self::OF.into_iter().find(|(end, _)| column.ends_with(end)).map(|(_, unit)| unit)
    }

    /// How it is written at an axis.
    fn sentence(self) -> Sentence {
        match self {
            Self::Pressure => sentence!("plot-kpa", "kPa absolute"),
            Self::Flow => sentence!("plot-flow", "g/s out"),
            Self::Current => sentence!("plot-current", "A in"),
            Self::Voltage => sentence!("plot-v", "V"),
            Self::Temperature => sentence!("plot-c", "°C"),
            Self::Force => sentence!("plot-n", "N"),
            Self::Travel => sentence!("plot-mm", "mm"),
        }
    }
}

/// Why there is no picture.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
pub(crate) enum PlotError {
    /// No port of a part that is there.
    NoPort {
        /// As asked for.
        name: String,
        /// The part.
        part: String,
        /// What the part has.
        known: Value,
    },
    /// No part of the car.
    NoPart {
        /// As asked for.
        name: String,
        /// What parts there are.
        known: Value,
    },
    /// More of one unit than can be told apart.
    TooMany {
        /// The unit.
        unit: Unit,
        /// How many.
        count: usize,
    },
    /// Neither .svg nor .png.
    Ending {
        /// As asked for.
        path: PathBuf,
    },
    /// The file.
    File(#[from] OutputError),
    /// The letters.
    Font(#[from] files::FileError),
    /// The drawing.
    Curves(#[from] CurvesError),
    /// Points from the drawing; the library's own words.
    Points(String),
    /// A picture of no size, or of more points than can be held.
    Size {
        /// Points across.
        width: u32,
        /// Points down.
        height: u32,
    },
}

impl PlotError {
    /// What is wrong, for every language.
    pub(crate) fn sentence(&self) -> Sentence {
        match self {
            Self::NoPort { name, part, known } => sentence!(
                "plot-no-port",
                "--show {name}: the car has no such port or column; {part} has {known}",
                name = quote::bare(name),
                part = quote::bare(part),
                known = known
            ),
            Self::NoPart { name, known } => sentence!(
                "plot-no-part",
                "--show {name}: the car has no such port or column; its parts are {known}",
                name = quote::bare(name),
                known = known
            ),
            Self::TooMany { unit, count } => sentence!(
                "plot-too-many",
                "--show: {count} curves in {unit}; at most {most} of one unit fit into a picture",
                count = *count,
                unit = unit.sentence(),
                most = LINES
            ),
            Self::Ending { path } => sentence!(
                "plot-ending",
                "--plot {file}: a picture ends in .svg or .png",
                file = quote::path(path)
            ),
            Self::File(error) => error.sentence(),
            Self::Font(error) => sentence!(
                "plot-letters",
                "the letters of pictures: {why}; is the data folder whole?",
                why = error.sentence()
            ),
            Self::Curves(error) => error.sentence(),
            Self::Points(why) => {
                sentence!("plot-no-points", "the picture cannot be turned into points: {why}", why = why)
            }
            Self::Size { width, height } => sentence!(
                "plot-size",
                "the picture cannot be turned into points: {width} x {height} points are none or too many",
                width = *width,
                height = *height
            ),
        }
    }
}

/// What the picture will be: checked before the model runs, filled as it runs.
#[derive(Debug)]
pub(crate) struct Plot {
    output: Output,
    as_points: bool,
    /// Columns of the table (without the time) and the curves from them.
    curves: Vec<(usize, Curve)>,
}

impl Plot {
    /// What the file will be, by its ending.
    ///
    /// # Errors
    /// When the ending is unknown.
    pub(crate) fn kind(path: &Path) -> Result<Kind, PlotError> {
        let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("svg") => Ok(Kind::Drawing),
            Some("png") => Ok(Kind::Picture),
            _ => Err(PlotError::Ending { path: path.to_owned() }),
        }
    }

    /// Checks what is asked for against the table's `columns`.
    ///
    /// # Errors
    /// When a name is none of a port or column, or the file's ending is unknown.
    pub(crate) fn of(
        words: &Words,
        output: Output,
        show: &[String],
        columns: &[String],
    ) -> Result<Self, PlotError> {
        let as_points = Self::kind(output.path())? == Kind::Picture;
        let mut curves: Vec<(usize, Curve)> = Vec::new();
        for name in show {
            let column = column_of(name, columns)?;
            if curves.iter().all(|(c, _)| *c != column) {
                let name = columns[column].clone();
                let unit = Unit::of(&name).map(|unit| words.sentence(&unit.sentence())).unwrap_or_default();
                curves.push((column, Curve { name, unit, points: Vec::new() }));
            }
        }
        for (_, unit) in Unit::OF {
            let count = curves.iter().filter(|(column, _)| Unit::of(&columns[*column]) == Some(unit)).count();
            if LINES < count {
                return Err(PlotError::TooMany { unit, count });
            }
        }
        Ok(Self { output, as_points, curves })
    }

    /// Takes a row of the table.
    pub(crate) fn take(&mut self, at_s: f64, values: &[f64]) {
        for (column, curve) in &mut self.curves {
            curve.points.push((at_s, values[*column]));
        }
    }

    /// Draws and writes; gives back where, and how many curves.
    ///
    /// # Errors
    /// When it cannot be drawn or written.
    pub(crate) fn end(self, data: &Path) -> Result<(PathBuf, usize), PlotError> {
        let curves: Vec<Curve> = self.curves.into_iter().map(|(_, curve)| curve).collect();
        let svg = curves::svg(&curves)?;
        let bytes = if self.as_points {
            points_of(&svg, data)?
        } else {
            [DRAWING_BEGINS, &svg].concat().into_bytes()
        };
        let path = self.output.path().to_owned();
        self.output.write(&bytes)?;
        Ok((path, curves.len()))
    }
}

/// A column by its own name, or by a port's: of air its pressure, of wires its voltage.
fn column_of(name: &str, columns: &[String]) -> Result<usize, PlotError> {
    let wanted = [name.to_owned(), format!("{name}_kpa_abs"), format!("{name}_v")];
    if let Some(column) = wanted.iter().find_map(|w| columns.iter().position(|column| column == w)) {
        return Ok(column);
    }
    let part = name.split('.').next().unwrap_or(name);
    let of_part: Vec<&str> =
        columns.iter().filter(|c| c.split('.').next() == Some(part)).map(String::as_str).collect();
    if of_part.is_empty() {
        let mut parts: Vec<&str> = columns.iter().filter_map(|c| c.split_once('.')).map(|(p, _)| p).collect();
        parts.sort_unstable();
        parts.dedup();
        return Err(PlotError::NoPart { name: name.to_owned(), known: known(part, &parts) });
    }
    Err(PlotError::NoPort { name: name.to_owned(), part: part.to_owned(), known: known(name, &of_part) })
}

/// The picture as PNG.
fn points_of(svg: &str, data: &Path) -> Result<Vec<u8>, PlotError> {
    let font = files::read_inside(data, Path::new(FONT), files::FONT)?;
    let mut options = usvg::Options::default();
    let letters = options.fontdb_mut();
    letters.load_font_data(font);
    letters.set_sans_serif_family("Inter");
    let wrong = |e: String| PlotError::Points(e);
    let tree = usvg::Tree::from_str(svg, &options).map_err(|e| wrong(e.to_string()))?;
    let size = tree.size();
    let (w, h) = ((size.width() * SCALE).ceil() as u32, (size.height() * SCALE).ceil() as u32);
    let mut points = tiny_skia::Pixmap::new(w, h).ok_or(PlotError::Size { width: w, height: h })?;
    resvg::render(&tree, tiny_skia::Transform::from_scale(SCALE, SCALE), &mut points.as_mut());
    points.encode_png().map_err(|e| wrong(e.to_string()))
}
