//! The draughtsman's pen: sheet points in, lines on the screen out, with the weights of a printed plan.

use egui::epaint::{CubicBezierShape, PathStroke};
use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

use super::grid::{STEP, turned};

/// Outline of a symbol.
pub const OUTLINE: f32 = 2.0;
/// A pipe or hose.
pub const PIPE: f32 = 2.6;
/// A wire.
pub const WIRE: f32 = 1.5;
/// Mechanical links, frames, hatching.
pub const THIN: f32 = 1.1;

/// Draws on a sheet.
#[derive(Clone)]
pub struct Pen<'a> {
    /// Where it draws.
    pub painter: &'a Painter,
    /// Where the sheet's origin is on the screen.
    pub origin: Pos2,
    /// Points on the screen for a sheet point.
    pub zoom: f32,
    /// Colour of lines.
    pub ink: Color32,
    /// Colour behind lines.
    pub paper: Color32,
}

impl Pen<'_> {
    /// A place of the sheet on the screen.
    #[must_use]
    pub fn at(&self, p: Pos2) -> Pos2 {
        self.origin + p.to_vec2() * self.zoom
    }

    /// A rectangle of the sheet on the screen.
    #[must_use]
    pub fn rect_at(&self, r: Rect) -> Rect {
        Rect::from_min_max(self.at(r.min), self.at(r.max))
    }

    /// The same pen with another ink.
    #[must_use]
    pub fn with(&self, ink: Color32) -> Self {
        Self { ink, ..self.clone() }
    }

    fn stroke(&self, width: f32) -> Stroke {
        Stroke::new((width * self.zoom).clamp(width * 0.7, width * 2.0), self.ink)
    }

    /// A line through points.
    pub fn line(&self, points: &[Pos2], width: f32) {
        let points = points.iter().map(|p| self.at(*p)).collect();
        self.painter.add(Shape::line(points, self.stroke(width)));
    }

    /// A dashed line.
    pub fn dashed(&self, points: &[Pos2], width: f32, dash: f32, gap: f32) {
        let points: Vec<Pos2> = points.iter().map(|p| self.at(*p)).collect();
        let shapes = Shape::dashed_line(&points, self.stroke(width), dash * self.zoom, gap * self.zoom);
        self.painter.extend(shapes);
    }

    /// A circle.
    pub fn circle(&self, c: Pos2, r: f32, width: f32) {
        self.painter.circle_stroke(self.at(c), r * self.zoom, self.stroke(width));
    }

    /// A filled circle.
    pub fn disc(&self, c: Pos2, r: f32, fill: Color32) {
        self.painter.circle_filled(self.at(c), r * self.zoom, fill);
    }

    /// Part of a circle, angles in radians clockwise from the right.
    pub fn arc(&self, c: Pos2, r: f32, from: f32, to: f32, width: f32) {
        let n = 24;
        let points: Vec<Pos2> = (0..=n)
            .map(|i| {
                let a = from + (to - from) * i as f32 / n as f32;
                c + vec2(a.cos(), a.sin()) * r
            })
            .collect();
        self.line(&points, width);
    }

    /// A filled outline.
    pub fn area(&self, points: &[Pos2], fill: Color32, width: f32) {
        let points = points.iter().map(|p| self.at(*p)).collect();
        self.painter.add(Shape::convex_polygon(points, fill, self.stroke(width)));
    }

    /// A swept lead.
    pub fn swept(&self, points: [Pos2; 4], width: f32) {
        let points = points.map(|p| self.at(p));
        let stroke = PathStroke::from(self.stroke(width));
        let fill = Color32::TRANSPARENT;
        self.painter.add(CubicBezierShape { points, closed: false, fill, stroke });
    }

    /// A text; its size goes with the sheet, but stays one that can be read.
    pub fn text(&self, at: Pos2, anchor: Align2, text: &str, size: f32) -> Rect {
        // Where everything is shown larger, a smaller letter is as large in pixels.
        let scale = self.painter.ctx().zoom_factor().max(1.0);
        let least = 0.75 / scale;
        let wanted = (size * self.zoom).clamp(size * least, size * 2.0);
        // Few sizes, and none larger than wanted: while the sheet grows under a wheel every size in between
        // would have all its letters drawn anew into the fonts' picture.
        let step = if wanted < 16.0 { 1.0 } else { 2.0 } / scale;
        let font = FontId::proportional((wanted / step).floor() * step);
        self.painter.text(self.at(at), anchor, text, font, self.ink)
    }
}

/// A pen that draws a symbol: origin in its middle, unit a grid step, turned as it is placed.
#[derive(Clone)]
pub struct Sym<'a> {
    /// The pen.
    pub pen: Pen<'a>,
    /// Middle of the symbol on the sheet.
    pub at: Pos2,
    /// Quarter turns clockwise.
    pub turn: u8,
}

impl Sym<'_> {
    /// A place of the symbol on the sheet.
    #[must_use]
    pub fn to(&self, (x, y): (f32, f32)) -> Pos2 {
        self.at + turned(vec2(x, y) * STEP, self.turn)
    }

    fn all(&self, points: &[(f32, f32)]) -> Vec<Pos2> {
        points.iter().map(|p| self.to(*p)).collect()
    }

    /// A line of a symbol's outline.
    pub fn outline(&self, points: &[(f32, f32)]) {
        self.pen.line(&self.all(points), OUTLINE);
    }

    /// A line of a given weight.
    pub fn line(&self, points: &[(f32, f32)], width: f32) {
        self.pen.line(&self.all(points), width);
    }

    /// A mechanical link.
    pub fn link(&self, points: &[(f32, f32)]) {
        self.pen.dashed(&self.all(points), THIN, 4.0, 3.0);
    }

    /// A filled outline.
    pub fn area(&self, points: &[(f32, f32)], fill: Color32) {
        self.pen.area(&self.all(points), fill, OUTLINE);
    }

    /// A rectangle, filled with paper.
    pub fn frame(&self, min: (f32, f32), max: (f32, f32)) {
        self.area(&[min, (max.0, min.1), max, (min.0, max.1)], self.pen.paper);
    }

    /// A circle, filled with paper.
    pub fn circle(&self, c: (f32, f32), r: f32) {
        self.pen.disc(self.to(c), r * STEP, self.pen.paper);
        self.pen.circle(self.to(c), r * STEP, OUTLINE);
    }

    /// A filled dot.
    pub fn dot(&self, c: (f32, f32), r: f32) {
        self.pen.disc(self.to(c), r * STEP, self.pen.ink);
    }

    /// Part of a circle, angles in radians clockwise from the symbol's own right.
    pub fn arc(&self, c: (f32, f32), r: f32, from: f32, to: f32, width: f32) {
        let q = f32::from(self.turn) * std::f32::consts::FRAC_PI_2;
        self.pen.arc(self.to(c), r * STEP, from + q, to + q, width);
    }

    /// A text, upright however the symbol is turned.
    pub fn text(&self, at: (f32, f32), text: &str, size: f32) {
        self.pen.text(self.to(at), Align2::CENTER_CENTER, text, size);
    }

    /// An arrow head at `tip`, pointing along `along`.
    pub fn head(&self, tip: (f32, f32), along: (f32, f32)) {
        let t = vec2(tip.0, tip.1);
        let a = vec2(along.0, along.1).normalized();
        let side = Vec2::new(-a.y, a.x);
        let corner = |v: Vec2| (v.x, v.y);
        let back = t - a * 0.7;
        self.area(&[tip, corner(back + side * 0.3), corner(back - side * 0.3)], self.pen.ink);
    }
}

/// A place, for tables.
#[must_use]
pub const fn p(x: f32, y: f32) -> Pos2 {
    pos2(x, y)
}
