//! What can be picked on a sheet, in the order in which a hand would follow the circuit.

use std::collections::BTreeSet;

use assess::diagram::Sheet;
use egui::{Pos2, Rect, Vec2};
use sim_core::car::Car;
use sim_core::parts::PartKind;
use sim_core::parts::elements::ByHand;

use super::bodies::Body;
use super::fitted::Fitted;
use super::grid::STEP;
use super::layout::Plan;
use super::symbols::{air, electric, instruments};
use front::hands::Thing;

/// Something to pick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// What.
    pub thing: Thing,
    /// Where, sheet points; at least two steps each way.
    pub rect: Rect,
}

/// Every target of a sheet.
#[must_use]
pub fn targets(car: &Car, plan: &Plan, fitted: &[Fitted]) -> Vec<Target> {
    let least = Vec2::splat(STEP * 2.0);
    let mut out = Vec::new();
    let mut drawn: BTreeSet<u16> = BTreeSet::new();
    for body in &plan.bodies {
        out.push(Target { thing: Thing::Part(body.part), rect: body.pick });
        let kind = &car.assembly.parts[usize::from(body.part)].kind;
        if let Some((thing, area)) = worked(kind, plan.sheet) {
            out.push(within(thing, body, area));
        }
        for spot in plan.spots.iter().filter(|s| s.port.part == body.part) {
            out.push(Target { thing: Thing::Port(spot.port), rect: Rect::from_center_size(spot.at, least) });
            for it in fitted.iter().filter(|f| f.ends.first().is_some_and(|(_, p, _)| *p == Some(spot.port)))
            {
                out.push(instrument(it));
            }
            for line in &plan.lines {
                let joint = &car.assembly.joints[usize::from(line.joint)];
                if (joint.a == spot.port || joint.b == spot.port) && drawn.insert(line.joint) {
                    let rect = Rect::from_center_size(line.mid, least);
                    out.push(Target { thing: Thing::Joint(line.joint), rect });
                }
            }
        }
    }
    // Pointed at a part.
    out.extend(fitted.iter().filter(|f| f.ends.first().is_some_and(|(_, p, _)| p.is_none())).map(instrument));
    out
}

/// What hands work at a symbol, and where it is hit.
fn worked(kind: &PartKind, sheet: Sheet) -> Option<(Thing, (f32, f32, f32, f32))> {
    let (on, thing, area) = match kind.seen().by_hand? {
        ByHand::Pedal => (Sheet::Air, Thing::Pedal, air::PEDAL),
        ByHand::Starter => (Sheet::Air, Thing::Starter, air::STARTER),
        ByHand::Key => (Sheet::Wiring, Thing::Key, electric::KEY),
    };
    (on == sheet).then_some((thing, area))
}

fn instrument(it: &Fitted) -> Target {
    let size = Vec2::splat(instruments::RADIUS * 2.0);
    Target { thing: Thing::Instrument(it.card), rect: Rect::from_center_size(it.at, size) }
}

fn within(thing: Thing, body: &Body, (l, t, r, b): (f32, f32, f32, f32)) -> Target {
    let at = |x: f32, y: f32| Pos2::new(body.at.x + x * STEP, body.at.y + y * STEP);
    Target { thing, rect: Rect::from_two_pos(at(l, t), at(r, b)) }
}
