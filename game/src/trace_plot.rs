//! `pinhole trace --plot`: chosen columns of the table as a picture, SVG or PNG by the file's ending.
//!
//! The SVG is the picture; a PNG is the same picture in points, twice as many each way, with the letters of the
//! data folder, so that every machine draws the same.

use std::path::{Path, PathBuf};

use assess::files;
use assess::locale::quote;
use assess::report::curves::{self, Curve, CurvesError, LINES};
use resvg::{tiny_skia, usvg};

use front::output::{DRAWING_BEGINS, Kind, Output, OutputError};

/// Points of a PNG for one of the SVG.
const SCALE: f32 = 2.0;
/// Letters, in the data folder.
const FONT: &str = "assets/fonts/Inter-Regular.otf";
/// How the table's columns end, and how their unit is written at an axis.
const UNITS: [(&str, &str); 7] = [
    ("_kpa_abs", "kPa absolute"),
    ("_flow_out_g_per_s", "g/s out"),
    ("_into_a", "A in"),
    ("_v", "V"),
    ("_c", "\u{b0}C"),
    ("_n", "N"),
    ("_mm", "mm"),
];

/// Why there is no picture.
#[derive(Debug, thiserror::Error)]
pub(crate) enum PlotError {
    /// Neither a column nor a port.
    #[error("--show {}: the car has no such port or column; {hint}", quote::bare(name))]
    Unknown {
        /// As asked for.
        name: String,
        /// What there is.
        hint: String,
    },
    /// More of one unit than can be told apart.
    #[error("--show: {count} curves in {unit}; at most {LINES} of one unit fit into a picture")]
    TooMany {
        /// The unit.
        unit: &'static str,
        /// How many.
        count: usize,
    },
    /// Neither .svg nor .png.
    #[error("--plot {}: a picture ends in .svg or .png", quote::path(path))]
    Ending {
        /// As asked for.
        path: PathBuf,
    },
    /// The file.
    #[error(transparent)]
    File(#[from] OutputError),
    /// The letters.
    #[error("the letters of pictures: {0}; is the data folder whole?")]
    Font(#[from] files::FileError),
    /// The drawing.
    #[error(transparent)]
    Curves(#[from] CurvesError),
    /// Points from the drawing.
    #[error("the picture cannot be turned into points: {0}")]
    Points(String),
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
    pub(crate) fn of(output: Output, show: &[String], columns: &[String]) -> Result<Self, PlotError> {
        let as_points = Self::kind(output.path())? == Kind::Picture;
        let mut curves: Vec<(usize, Curve)> = Vec::new();
        for name in show {
            let column = column_of(name, columns)?;
            if curves.iter().all(|(c, _)| *c != column) {
                let unit = unit_of(&columns[column]).to_owned();
                curves.push((column, Curve { name: columns[column].clone(), unit, points: Vec::new() }));
            }
        }
        for (_, unit) in UNITS {
            let count = curves.iter().filter(|(_, curve)| curve.unit == unit).count();
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
    let hint = if of_part.is_empty() {
        let mut parts: Vec<&str> = columns.iter().filter_map(|c| c.split_once('.')).map(|(p, _)| p).collect();
        parts.sort_unstable();
        parts.dedup();
        format!("its parts are {}", quote::listed(part, &parts))
    } else {
        format!("{part} has {}", quote::listed(name, &of_part))
    };
    Err(PlotError::Unknown { name: name.to_owned(), hint })
}

/// The unit a column's name ends in.
fn unit_of(column: &str) -> &'static str {
    UNITS.into_iter().find(|(end, _)| column.ends_with(end)).map_or("", |(_, unit)| unit)
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
    let mut points = tiny_skia::Pixmap::new(w, h)
        .ok_or_else(|| wrong(format!("{w} x {h} points are none or too many")))?;
    resvg::render(&tree, tiny_skia::Transform::from_scale(SCALE, SCALE), &mut points.as_mut());
    points.encode_png().map_err(|e| wrong(e.to_string()))
}
