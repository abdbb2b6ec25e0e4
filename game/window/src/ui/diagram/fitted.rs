//! Instruments on the sheet: a free place near the ports they sit on, and what leads there.

use assess::diagram::Sheet;
use egui::{Pos2, Rect, Vec2, pos2, vec2};
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::workshop::View;

use super::grid::STEP;
use super::layout::Plan;
use super::symbols::instruments::RADIUS;

/// An instrument as drawn on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// Index into the kit.
    pub card: u16,
    /// Middle.
    pub at: Pos2,
    /// Where each end goes: the end's index, the port if it is one, and the place.
    pub ends: Vec<(usize, Option<PortRef>, Pos2)>,
}

/// How far from its ports a place is looked for, steps.
const REACH: i32 = 30;
/// Room an instrument wants round itself.
const ROOM: f32 = 6.0;

/// Finds a place for every fitted instrument whose first end is on this sheet.
#[must_use]
pub fn place(car: &Car, plan: &Plan, texts: &[Rect], view: &View) -> Vec<Fitted> {
    let mut out: Vec<Fitted> = Vec::new();
    for (card, seen) in view.instruments.iter().enumerate() {
        let mut ends = Vec::new();
        for (i, (_, at)) in seen.at.iter().enumerate() {
            if let Some(spot) = car.assembly.port(at).and_then(|p| plan.spot(p)) {
                ends.push((i, Some(spot.port), spot.at));
            } else if let Some(body) = car.assembly.part_index(at).and_then(|p| plan.body(p)) {
                // Pointed at a part: shown on the first sheet the part is on.
                let first = plan.sheet == Sheet::Air || !has_air(car, body.part);
                if first {
                    ends.push((i, None, body.pick.center()));
                }
            }
        }
        if ends.is_empty() {
            continue;
        }
        let at = free_place(plan, texts, &out, &ends);
        out.push(Fitted { card: card as u16, at, ends });
    }
    out
}

fn has_air(car: &Car, part: u16) -> bool {
    let ports = car.assembly.parts[usize::from(part)].kind.ports();
    ports.iter().any(|d| d.domain == Sheet::Air.domain())
}

fn free_place(
    plan: &Plan,
    texts: &[Rect],
    others: &[Fitted],
    ends: &[(usize, Option<PortRef>, Pos2)],
) -> Pos2 {
    let mut sum = Vec2::ZERO;
    for (.., p) in ends {
        sum += p.to_vec2();
    }
    let centre = (sum / ends.len() as f32).to_pos2();
    let half = RADIUS + ROOM;
    let mut best = (f32::MAX, centre);
    let reach = REACH * 2;
    for iy in -reach..=reach {
        for ix in -reach..=reach {
            let at = centre + vec2(ix as f32, iy as f32) * STEP * 0.5;
            let rect = Rect::from_center_size(at, Vec2::splat(half * 2.0));
            let mut cost: f32 = ends.iter().map(|(.., p)| (*p - at).length()).sum();
            // Straight beside a port reads best.
            if ends.iter().any(|(.., p)| 1.0 < (p.x - at.x).abs() && 1.0 < (p.y - at.y).abs()) {
                cost += STEP * 0.7;
            }
            if best.0 <= cost || blocked(plan, texts, others, rect) {
                continue;
            }
            cost += ends.iter().map(|(.., p)| crossings(plan, texts, *p, at)).sum::<f32>();
            if cost < best.0 {
                best = (cost, at);
            }
        }
    }
    best.1
}

fn blocked(plan: &Plan, texts: &[Rect], others: &[Fitted], rect: Rect) -> bool {
    let target = Vec2::splat(STEP * 2.0);
    !plan.rect.contains_rect(rect)
        || plan.bodies.iter().any(|b| b.rect.intersects(rect) || b.pick.intersects(rect))
        || texts.iter().any(|t| t.intersects(rect))
        || plan.spots.iter().any(|s| Rect::from_center_size(s.at, target).intersects(rect))
        || plan.lines.iter().any(|l| {
            Rect::from_center_size(l.mid, target).intersects(rect)
                || l.path.windows(2).any(|w| Rect::from_two_pos(w[0], w[1]).intersects(rect))
        })
        || others.iter().any(|o| Rect::from_center_size(o.at, Vec2::splat(RADIUS * 2.0)).intersects(rect))
}

/// What a lead from a port would lie over, as a cost.
fn crossings(plan: &Plan, texts: &[Rect], from: Pos2, to: Pos2) -> f32 {
    let n = 16;
    let mut cost = 0.0;
    for i in 2..n {
        let p = from + (to - from) * i as f32 / n as f32;
        if plan.bodies.iter().any(|b| b.rect.contains(p)) || texts.iter().any(|t| t.contains(p)) {
            cost += STEP;
        }
        let near = |a: Pos2, b: Pos2| Rect::from_two_pos(a, b).expand(3.0).contains(p);
        if plan.lines.iter().any(|l| l.path.windows(2).any(|w| near(w[0], w[1]))) {
            cost += STEP * 0.8;
        }
    }
    cost
}

/// The curve of a lead: leaves the instrument towards the port and droops a little.
#[must_use]
pub fn lead(from: Pos2, to: Pos2, bow: f32) -> [Pos2; 4] {
    let d = to - from;
    let side = vec2(-d.y, d.x).normalized() * bow;
    let start = from + d.normalized() * RADIUS;
    let at = |t: f32| pos2(start.x + (to.x - start.x) * t, start.y + (to.y - start.y) * t) + side;
    [start, at(0.33), at(0.66), to]
}
