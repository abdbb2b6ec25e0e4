//! Symbols of parts: air by ISO 1219-1, current by IEC 60617, terminals by DIN 72552.
//!
//! A symbol has a form (where its ports are and what it covers) and a hand that draws it. Both are found
//! by the part's kind and the sheet. Contacts are drawn at rest, as the standards ask: no vacuum, no
//! current. Only what the trainee moves and sees himself (key, pedal) is drawn as it stands.

pub mod air;
pub mod electric;
pub mod instruments;

use assess::diagram::Sheet;
use egui::{Rect, pos2};
use sim_core::parts::PartKind;
use sim_core::parts::engine::EngineState;
use sim_core::workshop::View;

use super::pen::Sym;

/// Where a symbol's ports are and what it covers, in grid steps about its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// Name of each port, where it is, and which way its line leaves.
    pub ports: Vec<(&'static str, (f32, f32), (f32, f32))>,
    /// What the symbol covers, the stubs to its ports left out.
    pub body: Rect,
    /// What is hit to pick the part.
    pub pick: Rect,
}

/// A rectangle by its corners.
#[must_use]
pub(super) fn area(left: f32, top: f32, right: f32, bottom: f32) -> Rect {
    Rect::from_min_max(pos2(left, top), pos2(right, bottom))
}

/// What a person sees and hears of the car, as far as symbols show it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Now {
    /// Key in position 15.
    pub key_on: bool,
    /// The engine runs.
    pub running: bool,
    /// How far the pedal is down, 0 to 1.
    pub pedal: f32,
    /// The pump can be heard.
    pub hum: bool,
}

/// Travel at which the pedal is drawn fully down, mm.
const PEDAL_DOWN_MM: f64 = 120.0;

impl Now {
    /// Out of what can be seen.
    #[must_use]
    pub fn of(view: &View) -> Self {
        Self {
            key_on: view.key_on,
            running: view.engine != EngineState::Stopped,
            pedal: (view.pedal_seen_mm / PEDAL_DOWN_MM).clamp(0.0, 1.0) as f32,
            hum: view.hum,
        }
    }
}

const LEFT: (f32, f32) = (-1.0, 0.0);
const RIGHT: (f32, f32) = (1.0, 0.0);
const UP: (f32, f32) = (0.0, -1.0);
const DOWN: (f32, f32) = (0.0, 1.0);

/// The form of a part on a sheet.
#[must_use]
pub fn form(kind: &PartKind, sheet: Sheet) -> Form {
    match sheet {
        Sheet::Air => air::form(kind),
        Sheet::Wiring => electric::form(kind),
    }
}

/// Draws a part.
pub fn draw(kind: &PartKind, sheet: Sheet, sym: &Sym<'_>, now: Now) {
    match sheet {
        Sheet::Air => air::draw(kind, sym, now),
        Sheet::Wiring => electric::draw(kind, sym, now),
    }
}

/// What a printed plan writes at a terminal; nothing at the ends of hoses and wires.
#[must_use]
pub fn terminal(kind: &PartKind, port: &str) -> Option<&'static str> {
    Some(match (kind, port) {
        (PartKind::Relay(_), "30") | (PartKind::KeySwitch(_), "30") => "30",
        (PartKind::Relay(_), "87") => "87",
        (PartKind::Relay(_), "85") => "85",
        (PartKind::Relay(_), "86") => "86",
        (PartKind::KeySwitch(_), "15") => "15",
        (PartKind::Body(_), _) | (PartKind::Engine(_), "ground") | (PartKind::VacuumPump(_), "minus") => "31",
        (PartKind::Engine(_), "b_plus") => "B+",
        (PartKind::Battery(_) | PartKind::Supply(_), "plus") => "+",
        (PartKind::VacuumPump(_), "plus") => "+",
        (PartKind::Battery(_) | PartKind::Supply(_), "minus") => "−",
        (PartKind::VacuumSwitch(_), "p") => "p",
        (PartKind::VacuumSwitch(_), "com") => "com",
        _ => return None,
    })
}

/// What a printed plan writes on a part itself: a wire's cross-section, a fuse's rating.
#[must_use]
pub fn size(kind: &PartKind, sheet: Sheet) -> Option<(f64, &'static str)> {
    match (kind, sheet) {
        (PartKind::Wire(wire), Sheet::Wiring) => Some((wire.area_mm2, "mm²")),
        (PartKind::Fuse(fuse), Sheet::Wiring) => Some((fuse.rating_a, "A")),
        _ => None,
    }
}

/// A box for a kind that has no symbol of its own on the sheet: ports down its left side.
fn box_form(kind: &PartKind, sheet: Sheet) -> Form {
    let names = kind.ports().iter().filter(|d| d.domain == sheet.domain()).map(|d| d.name);
    let ports: Vec<_> = names.enumerate().map(|(i, n)| (n, (-4.0, i as f32 * 4.0), LEFT)).collect();
    let height = (ports.len() as f32 - 1.0).max(0.0) * 4.0;
    let body = area(-2.0, -2.0, 2.0, height + 2.0);
    Form { ports, body, pick: body }
}

fn box_draw(kind: &PartKind, sheet: Sheet, sym: &Sym<'_>) {
    let form = box_form(kind, sheet);
    sym.frame((form.body.min.x, form.body.min.y), (form.body.max.x, form.body.max.y));
    for (_, (x, y), _) in form.ports {
        sym.outline(&[(x, y), (-2.0, y)]);
    }
}
