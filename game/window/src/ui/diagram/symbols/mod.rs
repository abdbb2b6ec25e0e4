//! Symbols of parts: air by ISO 1219-1, current by IEC 60617, terminals by DIN 72552.
//!
//! A symbol has a form (where its ports are and what it covers, [`assess::diagram::form`]) and a hand that draws
//! it, here. Both are found by the part's kind and the sheet, and a kind without them does not compile. Contacts are drawn at rest, as the standards ask: no vacuum, no
//! current. Only what the trainee moves and sees himself (key, pedal) is drawn as it stands.

pub mod air;
pub mod electric;
pub mod instruments;

use assess::diagram::Sheet;
use sim_core::parts::PartKind;
use sim_core::parts::engine::EngineState;
use sim_core::workshop::View;

use super::pen::Sym;

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

const RIGHT: (f32, f32) = (1.0, 0.0);

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
    let of =
        |table: &[(&str, &'static str)]| table.iter().find(|(p, _)| *p == port).map(|(_, written)| *written);
    match kind {
        PartKind::Relay(_) => of(&[("30", "30"), ("87", "87"), ("85", "85"), ("86", "86")]),
        PartKind::KeySwitch(_) => of(&[("30", "30"), ("15", "15")]),
        PartKind::Body(_) => Some("31"),
        PartKind::Engine(_) => of(&[("ground", "31"), ("b_plus", "B+")]),
        PartKind::VacuumPump(_) => of(&[("plus", "+"), ("minus", "31")]),
        PartKind::Battery(_) | PartKind::Supply(_) => of(&[("plus", "+"), ("minus", "−")]),
        PartKind::VacuumSwitch(_) => of(&[("p", "p"), ("com", "com")]),
        PartKind::VacuumSensor(_) => of(&[("plus", "5 V"), ("signal", "S"), ("minus", "−")]),
        PartKind::Controller(_) => of(&[
            ("15", "15"),
            ("31", "31"),
            ("feed", "5 V"),
            ("signal", "S"),
            ("ground", "−"),
            ("out", "out"),
        ]),
        PartKind::Multimeter(_) => of(&[("v_ohm", "VΩ"), ("com", "COM")]),
        PartKind::Hose(_)
        | PartKind::Tee(_)
        | PartKind::CheckValve(_)
        | PartKind::Booster(_)
        | PartKind::Reservoir(_)
        | PartKind::EnginePump(_)
        | PartKind::Fuse(_)
        | PartKind::Wire(_)
        | PartKind::VacuumGauge(_)
        | PartKind::HandPump(_)
        | PartKind::TestLamp(_)
        | PartKind::PushLead(_) => None,
    }
}

/// What a printed plan writes on a part itself: a wire's cross-section, a fuse's rating.
#[must_use]
pub fn size(kind: &PartKind, sheet: Sheet) -> Option<(f64, &'static str)> {
    let printed = match kind {
        PartKind::Wire(wire) => (wire.area_mm2, "mm²"),
        PartKind::Fuse(fuse) => (fuse.rating_a, "A"),
        PartKind::Hose(_)
        | PartKind::Tee(_)
        | PartKind::CheckValve(_)
        | PartKind::VacuumSwitch(_)
        | PartKind::VacuumPump(_)
        | PartKind::Booster(_)
        | PartKind::Engine(_)
        | PartKind::Reservoir(_)
        | PartKind::EnginePump(_)
        | PartKind::VacuumSensor(_)
        | PartKind::Controller(_)
        | PartKind::Battery(_)
        | PartKind::Supply(_)
        | PartKind::Relay(_)
        | PartKind::KeySwitch(_)
        | PartKind::Body(_)
        | PartKind::VacuumGauge(_)
        | PartKind::HandPump(_)
        | PartKind::TestLamp(_)
        | PartKind::Multimeter(_)
        | PartKind::PushLead(_) => return None,
    };
    (sheet == Sheet::Wiring).then_some(printed)
}
