//! A sheet drawn as the car stands: joints made or open, plugs and clamps, parts pulled, instruments.
//!
//! Only what hands have done and eyes and ears take in; no pressure, no voltage, no contact that moves by
//! itself.

use assess::diagram::Sheet;
use egui::{Align2, Pos2, Vec2, vec2};
use sim_core::assembly::Stop;
use sim_core::car::Car;
use sim_core::instrument::Held;
use sim_core::parts::PartKind;
use sim_core::workshop::View;

use super::fitted::{Fitted, lead};
use super::grid::STEP;
use super::labels::Written;
use super::layout::{Outline, Plan};
use super::pen::{OUTLINE, PIPE, Pen, Sym, THIN, WIRE};
use super::symbols::{self, Now, air, electric, instruments};
use super::wires::Line;
use crate::theme;
use front::shop::Shop;
use front::words::Words;

/// Half of the gap of an open joint, sheet points.
const GAPE: f32 = 8.0;
/// Radius of a port's ring.
pub(super) const PORT: f32 = 4.5;
/// Whether a part's unit is out of its socket.
pub(super) fn is_pulled(car: &Car, view: &View, part: u16) -> bool {
    car.units.iter().any(|u| u.parts.contains(&part) && view.pulled.contains(&u.id))
}

/// A mark of what hands have done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    /// A hose or pipe made at a joint.
    JointAir,
    /// A wire made at a joint.
    JointWire,
    /// A joint open.
    Open,
    /// A port plugged.
    Plug,
    /// A hose clamped.
    Clamp,
    /// What a cover bars.
    Cover,
}

impl Mark {
    /// Every mark.
    pub(super) const ALL: [Self; 6] =
        [Self::JointAir, Self::JointWire, Self::Open, Self::Plug, Self::Clamp, Self::Cover];

    /// Key of its words.
    pub(super) fn key(self) -> &'static str {
        match self {
            Self::JointAir => "diagram-mark-joint-air",
            Self::JointWire => "diagram-mark-joint-wire",
            Self::Open => "diagram-mark-open",
            Self::Plug => "diagram-mark-plug",
            Self::Clamp => "diagram-mark-clamp",
            Self::Cover => "diagram-mark-cover",
        }
    }
}

/// Draws a mark for the legend.
pub(super) fn mark(pen: &Pen<'_>, middle: Pos2, mark: Mark) {
    let along = vec2(1.0, 0.0);
    let (l, r) = (middle - along * 40.0, middle + along * 40.0);
    let line = Line { joint: 0, path: vec![l, r], mid: middle, along };
    let port = |at: Pos2| {
        pen.disc(at, PORT, pen.paper);
        pen.circle(at, PORT, WIRE);
    };
    match mark {
        Mark::JointAir => joint(pen, Sheet::Air, &line, false),
        Mark::JointWire => joint(pen, Sheet::Wiring, &line, false),
        Mark::Open => joint(pen, Sheet::Air, &line, true),
        Mark::Plug | Mark::Clamp => {
            pen.line(&[l, if mark == Mark::Plug { middle } else { r }], PIPE);
            port(middle);
            let stop = if mark == Mark::Plug { Stop::Plug } else { Stop::Clamp };
            stopped(pen, middle, along, stop);
            return;
        }
        Mark::Cover => {
            let r = egui::Rect::from_center_size(middle, vec2(70.0, 34.0));
            let corners = [r.left_top(), r.right_top(), r.right_bottom(), r.left_bottom(), r.left_top()];
            pen.with(theme::RULE).dashed(&corners, THIN + 0.3, 10.0, 4.0);
            return;
        }
    }
    port(l);
    port(r);
}

/// Draws a sheet.
pub(super) fn draw(
    pen: &Pen<'_>,
    shop: &Shop,
    words: &Words,
    plan: &Plan,
    written: &Written,
    fitted: &[Fitted],
) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    for outline in &written.outlines {
        cover(pen, car, outline, view);
    }
    for line in &plan.lines {
        let open = view.joints_open.contains(&car.assembly.joints[usize::from(line.joint)].id);
        joint(pen, plan.sheet, line, open);
    }
    for dot in &plan.dots {
        pen.disc(*dot, 3.5, pen.ink);
    }
    let now = Now::of(view);
    for body in &plan.bodies {
        let kind = &car.assembly.parts[usize::from(body.part)].kind;
        if let PartKind::Body(_) = kind {
            let points = plan.spots.iter().filter(|s| s.port.part == body.part);
            electric::chassis(pen, &points.map(|s| s.at).collect::<Vec<_>>());
        }
        if is_pulled(car, view, body.part) {
            socket(pen, plan, body.part);
            let faint = pen.with(theme::INK_FAINT);
            symbols::draw(kind, plan.sheet, &Sym { pen: faint, at: body.at, turn: body.turn }, now);
        } else {
            symbols::draw(kind, plan.sheet, &Sym { pen: pen.clone(), at: body.at, turn: body.turn }, now);
        }
        if let (PartKind::Engine(_), Sheet::Air) = (kind, plan.sheet) {
            starter(pen, words, body.at, now.running);
        }
    }
    for spot in &plan.spots {
        pen.disc(spot.at, PORT, pen.paper);
        pen.circle(spot.at, PORT, WIRE);
        let name = car.assembly.port_name(spot.port);
        if let Some((_, stop)) = view.stops.iter().find(|(p, _)| *p == name) {
            stopped(pen, spot.at, spot.out, *stop);
        }
    }
    for text in &written.texts {
        let ink = if text.faint { theme::INK_FAINT } else { theme::INK };
        let rows: Vec<&str> = text.text.split('\n').collect();
        let height = text.rect.height() / rows.len() as f32;
        let anchor = Align2([text.align, egui::Align::Center]);
        for (i, row) in rows.into_iter().enumerate() {
            let r = text.rect;
            let x = match text.align {
                egui::Align::Min => r.min.x,
                egui::Align::Center => r.center().x,
                egui::Align::Max => r.max.x,
            };
            let at = Pos2::new(x, r.min.y + height * (i as f32 + 0.5));
            pen.with(ink).text(at, anchor, row, text.size);
        }
    }
    for it in fitted {
        instrument(pen, shop, it);
    }
}

/// A hose or wire between two ports: heavy and plain for air, light for current; apart when open.
fn joint(pen: &Pen<'_>, sheet: Sheet, line: &Line, open: bool) {
    let width = if sheet == Sheet::Air { PIPE } else { WIRE };
    if !open {
        pen.line(&line.path, width);
        let across = vec2(-line.along.y, line.along.x) * 4.5;
        if sheet == Sheet::Air {
            // Coupling.
            for d in [-1.8, 1.8] {
                let c = line.mid + line.along * d;
                pen.line(&[c - across, c + across], WIRE);
            }
        } else {
            pen.disc(line.mid, 2.4, pen.ink);
        }
        return;
    }
    let (before, after) = halves(&line.path, line.mid, line.along);
    let across = vec2(-line.along.y, line.along.x);
    let half = if sheet == Sheet::Air { 6.5 } else { 4.5 };
    for points in [before, after] {
        pen.line(&points, width);
        if let Some(end) = points.last() {
            pen.line(&[*end - across * half, *end + across * half], OUTLINE);
        }
    }
}

/// The two parts of a path that is cut at `mid`, each ending `GAPE` from it.
fn halves(path: &[Pos2], mid: Pos2, along: Vec2) -> (Vec<Pos2>, Vec<Pos2>) {
    let on = |w: &[Pos2]| egui::Rect::from_two_pos(w[0], w[1]).expand(0.5).contains(mid);
    let k = path.windows(2).position(on).unwrap_or(0);
    let mut before = path[..=k].to_vec();
    before.push(mid - along * GAPE);
    let mut after: Vec<Pos2> = path[k + 1..].iter().rev().copied().collect();
    after.push(mid + along * GAPE);
    (before, after)
}

/// A plug caps the port's open end; a clamp squeezes the line beside it.
fn stopped(pen: &Pen<'_>, at: Pos2, out: Vec2, stop: Stop) {
    let across = vec2(-out.y, out.x);
    let pen = &pen.with(theme::ACCENT);
    match stop {
        Stop::Plug => {
            let c = at + out * 8.0;
            let corners = [
                c - across * 6.0 - out * 3.0,
                c + across * 6.0 - out * 3.0,
                c + across * 4.0 + out * 5.0,
                c - across * 4.0 + out * 5.0,
            ];
            pen.area(&corners, theme::ACCENT, THIN);
        }
        Stop::Clamp => {
            let c = at - out * 10.0;
            for side in [-1.0, 1.0] {
                let tip = c + across * side * 3.0;
                let base = tip + across * side * 8.0;
                pen.area(&[tip, base + out * 4.5, base - out * 4.5], theme::ACCENT, THIN);
            }
        }
    }
}

/// The empty socket of a part that is pulled.
fn socket(pen: &Pen<'_>, plan: &Plan, part: u16) {
    let Some(body) = plan.body(part) else { return };
    let r = body.rect.expand(3.0);
    let corners = [r.left_top(), r.right_top(), r.right_bottom(), r.left_bottom(), r.left_top()];
    pen.dashed(&corners, WIRE, 5.0, 4.0);
}

/// Outline of what a cover bars: closed while it is on, open at a corner when it is off.
fn cover(pen: &Pen<'_>, car: &Car, outline: &Outline, view: &View) {
    let Some(cover) = car.covers.get(usize::from(outline.cover)) else { return };
    let off = view.covers_off.contains(&cover.id);
    let r = outline.rect;
    let pen = pen.with(theme::RULE);
    if off {
        // Corners only: the cover is away.
        let k = STEP * 1.5;
        for (c, x, y) in [
            (r.left_top(), k, k),
            (r.right_top(), -k, k),
            (r.right_bottom(), -k, -k),
            (r.left_bottom(), k, -k),
        ] {
            pen.line(&[c + vec2(x, 0.0), c, c + vec2(0.0, y)], THIN);
        }
    } else {
        let corners = [r.left_top(), r.right_top(), r.right_bottom(), r.left_bottom(), r.left_top()];
        pen.dashed(&corners, THIN + 0.3, 10.0, 4.0);
    }
}

fn starter(pen: &Pen<'_>, words: &Words, at: Pos2, running: bool) {
    let (l, t, r, b) = air::STARTER;
    let rect = egui::Rect::from_min_max(at + vec2(l, t) * STEP, at + vec2(r, b) * STEP);
    let screen = pen.rect_at(rect.shrink(1.0));
    let fill = if running { theme::INK } else { pen.paper };
    pen.painter.rect(screen, 4.0, fill, egui::Stroke::new(1.5, theme::INK), egui::StrokeKind::Inside);
    let ink = if running { pen.paper } else { theme::INK };
    let key = if running { "diagram-engine-runs" } else { "diagram-engine-stands" };
    pen.with(ink).text(rect.center(), Align2::CENTER_CENTER, &words.say(key), 12.0);
}

fn instrument(pen: &Pen<'_>, shop: &Shop, it: &Fitted) {
    let (Some(session), Some(view)) = (shop.session(), shop.view()) else { return };
    let setup = session.workshop().setup();
    let (Some(card), Some(seen)) =
        (setup.kit.get(usize::from(it.card)), view.instruments.get(usize::from(it.card)))
    else {
        return;
    };
    let names = session.workshop().ends_of(usize::from(it.card));
    for (i, port, to) in &it.ends {
        // Red is the end that is named first, whichever was placed first.
        let first = seen.at.get(*i).is_none_or(|(end, _)| names.first().is_none_or(|n| n == end));
        let ink = instruments::lead_colour(card.kind.nature().held, first);
        let lead_pen = pen.with(ink);
        if port.is_none() {
            lead_pen.dashed(&[it.at, *to], THIN, 3.0, 3.0);
            continue;
        }
        match card.kind.nature().held {
            Held::AroundWire => {
                clamp_jaw(&lead_pen, *to);
                lead_pen.swept(lead(it.at, *to, 0.0), WIRE);
            }
            Held::OnLine => {
                lead_pen.swept(lead(it.at, *to, 0.0), PIPE);
                lead_pen.disc(*to, PORT, ink);
            }
            Held::OnWires
            | Held::AtPart
            | Held::OnHose
            | Held::Nowhere
            | Held::InOpening
            | Held::OverHose
            | Held::AtEar
            | Held::OnPedal => {
                lead_pen.swept(lead(it.at, *to, 6.0), OUTLINE);
                lead_pen.disc(*to, PORT, ink);
            }
        }
    }
    instruments::draw(&pen.with(theme::ACCENT), it.at, card, seen);
}

/// The jaw of a clamp meter around the wire at a port.
fn clamp_jaw(pen: &Pen<'_>, at: Pos2) {
    pen.arc(at, 9.0, 0.5, 2.6, OUTLINE);
    pen.arc(at, 9.0, 3.6, 5.8, OUTLINE);
}
