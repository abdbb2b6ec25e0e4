//! From places to a plan: where every port, symbol, line and outline is, in sheet points.
//!
//! The data says where a part stands ([`assess::diagram`]); the symbol's form says where its ports are
//! ([`super::symbols`]); lines are found here ([`super::wires`]). Pure geometry: nothing is drawn.

use assess::diagram::form::{self, Area, Form, form};
use assess::diagram::{Diagram, Place, Sheet};
use egui::{Pos2, Rect, vec2};
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::bodies::{Body, Spot};
use super::grid::{STEP, grid};
use super::wires::{self, Line};

/// Free border round a sheet.
pub const BORDER: f32 = STEP * 0.8;
/// Room at the foot of the wiring sheet for what is drawn and what is not.
const NOTE: f32 = 9.0;

/// What a cover bars, as an outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Index into `Car::covers`.
    pub cover: u16,
    /// Parts behind it that are on the sheet.
    pub parts: Vec<u16>,
    /// Round their symbols and ports, not yet round their names.
    pub rect: Rect,
}

/// A sheet, ready to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Which.
    pub sheet: Sheet,
    /// Symbols in the order of the file.
    pub bodies: Vec<Body>,
    /// Ports, grouped as the symbols are.
    pub spots: Vec<Spot>,
    /// Lines, one a joint.
    pub lines: Vec<Line>,
    /// Where lines of one port part.
    pub dots: Vec<Pos2>,
    /// From each port to its symbol.
    pub stubs: Vec<(Pos2, Pos2)>,
    /// What is drawn under the earth points of a car body.
    pub feet: Vec<Rect>,
    /// Covers.
    pub outlines: Vec<Outline>,
    /// All of it, border included.
    pub rect: Rect,
}

/// A symbol's area, turned and moved to `at`.
fn placed(area: Area, at: Pos2, turn: u8) -> Rect {
    let Area { left, top, right, bottom } = area.turned(turn);
    Rect::from_min_max(at + vec2(left, top) * STEP, at + vec2(right, bottom) * STEP)
}

impl Plan {
    /// Lays a sheet out.
    #[must_use]
    pub fn new(car: &Car, diagram: &Diagram, sheet: Sheet) -> Self {
        let (mut bodies, mut spots) = (Vec::new(), Vec::new());
        for (i, place) in diagram.places.iter().enumerate().filter(|(_, p)| p.sheet == sheet) {
            let kind = &car.assembly.parts[usize::from(place.part)].kind;
            let Some(form) = form(kind, sheet) else { continue };
            let at = grid(place.at);
            bodies.push(Body {
                part: place.part,
                place: i,
                at,
                turn: place.turn,
                rect: placed(form.body, at, place.turn),
                pick: placed(form.pick, at, place.turn),
            });
            spots.extend(ports(kind, &form, place));
        }
        let (lines, dots) = wires::route(car, &bodies, &spots);
        let outlines = outlines(car, &bodies, &spots);
        let stubs = spots.iter().filter_map(|s| stub(&bodies, s)).collect();
        let feet = feet(diagram, sheet);
        let mut rect = Rect::NOTHING;
        for body in &bodies {
            rect = rect.union(body.rect);
        }
        for p in lines.iter().flat_map(|l| &l.path).chain(spots.iter().map(|s| &s.at)) {
            rect.extend_with(*p);
        }
        for outline in &outlines {
            rect = rect.union(outline.rect);
        }
        let mut rect = rect.expand(BORDER);
        if sheet == Sheet::Wiring {
            rect.max.y += NOTE;
        }
        Self { sheet, bodies, spots, lines, dots, stubs, feet, outlines, rect }
    }

    /// The port as drawn on this sheet.
    #[must_use]
    pub fn spot(&self, port: PortRef) -> Option<&Spot> {
        self.spots.iter().find(|s| s.port == port)
    }

    /// The symbol of a part on this sheet.
    #[must_use]
    pub fn body(&self, part: u16) -> Option<&Body> {
        self.bodies.iter().find(|b| b.part == part)
    }
}

fn ports(kind: &PartKind, form: &Form, place: &Place) -> Vec<Spot> {
    let mut spots = Vec::new();
    for (k, def) in kind.ports().iter().enumerate() {
        let port = PortRef { part: place.part, port: k as u8 };
        if let Some((_, point)) = place.points.iter().find(|(p, _)| usize::from(*p) == k) {
            spots.push(Spot { port, at: grid(*point), out: vec2(0.0, -1.0) });
        } else if let Some(it) = form.ports.iter().find(|p| p.name == def.name) {
            let (x, y) = form::turned(it.at, place.turn);
            let out = it.out.turned(place.turn).step();
            let at = grid((place.at.0 + x, place.at.1 + y));
            spots.push(Spot { port, at, out: vec2(out.0 as f32, out.1 as f32) });
        }
    }
    spots
}

/// The line from a port to its own symbol.
fn stub(bodies: &[Body], spot: &Spot) -> Option<(Pos2, Pos2)> {
    let body = bodies.iter().find(|b| b.part == spot.port.part)?;
    let inner = body.rect.clamp(spot.at);
    // An earth point of a car body has no stub to where the body is named.
    let straight = ((spot.at - inner) - spot.out * spot.at.distance(inner)).length() < 0.5;
    straight.then_some((spot.at, inner))
}

/// The signs of earth under a car body's points, and the sheet of metal behind them.
fn feet(diagram: &Diagram, sheet: Sheet) -> Vec<Rect> {
    let mut out = Vec::new();
    for place in diagram.places.iter().filter(|p| p.sheet == sheet) {
        let mut metal = Rect::NOTHING;
        for (_, at) in &place.points {
            let foot = grid(*at) + vec2(0.0, STEP);
            out.push(Rect::from_two_pos(foot + vec2(-16.0, 0.0), foot + vec2(12.0, 9.0)));
            metal.extend_with(foot);
        }
        if metal.is_finite() {
            out.push(metal.expand(1.0));
        }
    }
    out
}

/// Outlines round what each cover bars; none where a stranger would stand inside.
fn outlines(car: &Car, bodies: &[Body], spots: &[Spot]) -> Vec<Outline> {
    let mut out = Vec::new();
    for (i, cover) in car.covers.iter().enumerate() {
        let behind = |part: u16| car.stands[usize::from(part)].behind.as_deref() == Some(&cover.id);
        let mut rect = Rect::NOTHING;
        for body in bodies.iter().filter(|b| behind(b.part)) {
            rect = rect.union(body.rect);
        }
        for spot in spots.iter().filter(|s| behind(s.port.part)) {
            rect.extend_with(spot.at);
        }
        let rect = rect.expand(STEP);
        let parts = bodies.iter().map(|b| b.part).filter(|p| behind(*p)).collect();
        let stranger = bodies.iter().any(|b| !behind(b.part) && b.rect.intersects(rect));
        if rect.is_positive() && !stranger {
            out.push(Outline { cover: i as u16, parts, rect });
        }
    }
    out
}
