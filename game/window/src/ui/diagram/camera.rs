//! The eye over the drawing board: which sheets lie there, how large, and how far one has moved.

use assess::diagram::Sheet;
use egui::{Pos2, Rect, Vec2, vec2};

use super::labels::Written;
use super::layout::Plan;

/// A sheet and what is written on it.
pub type Paper = (Plan, Written);
/// Sheets on the board, each with where its origin lies.
pub type Board<'p> = Vec<(&'p Paper, Vec2)>;

/// What lies on the board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shown {
    /// Both sheets where there is room, else the air.
    #[default]
    Auto,
    /// One sheet.
    One(Sheet),
    /// Both.
    Both,
}

impl Shown {
    /// What the key shows next.
    #[must_use]
    pub fn next(self) -> Self {
        match self {
            Self::Auto | Self::One(Sheet::Air) => Self::One(Sheet::Wiring),
            Self::One(Sheet::Wiring) => Self::Both,
            Self::Both => Self::One(Sheet::Air),
        }
    }

    /// Whether this shows what `other` would, when `laid` sheets lie on the board.
    #[must_use]
    pub fn is(self, other: Self, laid: usize) -> bool {
        match (self, other) {
            (Self::Auto, Self::Both) => 1 < laid,
            (Self::Auto, Self::One(Sheet::Air)) => laid == 1,
            _ => self == other,
        }
    }
}

/// Smallest and largest magnification.
pub const ZOOMS: std::ops::RangeInclusive<f32> = 0.3..=4.0;
/// Largest magnification a view opens at.
const OPENS_TO: f32 = 1.8;
/// Between two sheets, sheet points.
const BETWEEN: f32 = 12.0;
/// Both sheets are shown unasked down to this size: the smallest text is then 11 px high.
const READS: f32 = 0.95;
/// A sheet is fitted down to this many pixels for a sheet point, as both are. Where everything is shown larger, that
/// is less than a point, and the sheet is still read as it is at 100 %.
const LEAST_PX: f32 = READS;
/// However large everything is shown, a sheet is not fitted below this.
const LEAST: f32 = 0.5;

/// Smallest magnification a view opens at: what was asked for in so many words is shown whole.
#[must_use]
pub fn least(shown: Shown, beside_room: bool, scale: f32) -> f32 {
    match shown {
        Shown::Both => *ZOOMS.start(),
        _ if beside_room && 1.0 < scale => *ZOOMS.start(),
        Shown::Auto | Shown::One(_) => (LEAST_PX / scale).clamp(LEAST, 1.0),
    }
}

/// Where the eye is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// Points on the screen for a sheet point.
    pub zoom: f32,
    /// Board point in the middle of the canvas.
    pub middle: Pos2,
    /// Moved by hand; else it fits itself to the canvas.
    pub moved: bool,
}

impl Default for Camera {
    fn default() -> Self {
        Self { zoom: 1.0, middle: Pos2::ZERO, moved: false }
    }
}

/// Lays the sheets that are to be shown on the board.
#[must_use]
pub fn board(papers: &[Paper], shown: Shown, canvas: Vec2) -> Board<'_> {
    let both = [laid(papers, false), laid(papers, true)];
    let fits = |b: &Board<'_>| fitting(extent(b), canvas);
    let better = if fits(&both[0]) < fits(&both[1]) { &both[1] } else { &both[0] };
    let sheet = match shown {
        Shown::Both => return better.clone(),
        Shown::Auto if READS <= fits(better) => return better.clone(),
        Shown::Auto => Sheet::Air,
        Shown::One(sheet) => sheet,
    };
    papers.iter().filter(|p| p.0.sheet == sheet).map(|p| (p, Vec2::ZERO)).collect()
}

/// Sheets beside or under each other.
fn laid(papers: &[Paper], down: bool) -> Board<'_> {
    let mut next = 0.0;
    let mut out = Vec::new();
    for paper in papers {
        let rect = paper.1.rect;
        let corner = if down { vec2(0.0, next) } else { vec2(next, 0.0) };
        out.push((paper, corner - rect.min.to_vec2()));
        next += BETWEEN + if down { rect.height() } else { rect.width() };
    }
    out
}

/// What the sheets on the board cover.
#[must_use]
pub fn extent(board: &Board<'_>) -> Rect {
    board.iter().fold(Rect::NOTHING, |r, (paper, at)| r.union(paper.1.rect.translate(*at)))
}

fn fitting(extent: Rect, canvas: Vec2) -> f32 {
    (canvas.x / extent.width().max(1.0)).min(canvas.y / extent.height().max(1.0))
}

impl Camera {
    /// Fits the board into the canvas, not smaller than `least` points for a sheet point.
    pub fn fit(&mut self, extent: Rect, canvas: Vec2, least: f32) {
        self.zoom = fitting(extent, canvas).clamp(least.max(*ZOOMS.start()), OPENS_TO);
        let half = canvas * 0.5 / self.zoom;
        // What does not fit begins at its beginning.
        let along = |min: f32, max: f32, half: f32| {
            if max - min <= half * 2.0 + 1.0 { (min + max) * 0.5 } else { min + half }
        };
        self.middle =
            Pos2::new(along(extent.min.x, extent.max.x, half.x), along(extent.min.y, extent.max.y, half.y));
        self.moved = false;
    }

    /// Where the board's origin is on the screen.
    #[must_use]
    pub fn origin(&self, canvas: Rect) -> Pos2 {
        canvas.center() - self.middle.to_vec2() * self.zoom
    }

    /// Magnifies about a place of the screen.
    pub fn magnify(&mut self, by: f32, about: Pos2, canvas: Rect) {
        let zoom = (self.zoom * by).clamp(*ZOOMS.start(), *ZOOMS.end());
        let d = about - canvas.center();
        self.middle += d / self.zoom - d / zoom;
        self.zoom = zoom;
        self.moved = true;
    }

    /// Moves by points of the screen, at most until the board's edge is in the middle.
    pub fn pan(&mut self, by: Vec2, extent: Rect) {
        self.middle = extent.clamp(self.middle - by / self.zoom);
        self.moved = true;
    }

    /// Moves as little as is needed to see a rectangle of the screen.
    pub fn reveal(&mut self, rect: Rect, canvas: Rect) {
        let inner = canvas.shrink(8.0);
        let need = |lo: f32, hi: f32, min: f32, max: f32| {
            if lo < min {
                lo - min
            } else if max < hi {
                hi - max
            } else {
                0.0
            }
        };
        let d = vec2(
            need(rect.min.x, rect.max.x, inner.min.x, inner.max.x),
            need(rect.min.y, rect.max.y, inner.min.y, inner.max.y),
        );
        if d != Vec2::ZERO {
            self.middle += d / self.zoom;
            self.moved = true;
        }
    }
}
