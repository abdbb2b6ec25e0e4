//! Symbols of parts: air by ISO 1219-1, current by IEC 60617, terminals by DIN 72552.
//!
//! A symbol has a form (where its ports are and what it covers, [`assess::diagram::form`]) and a hand that draws
//! it, here ([`Symbol`]). Both are found by the part's kind and the sheet, and a kind without them does not compile.
//! Contacts are drawn at rest, as the standards ask: no vacuum, no current. Only what the trainee moves and sees himself
//! (key, pedal) is drawn as it stands.

pub mod air;
mod both;
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

/// How a kind of part is drawn. What it has no ports on, it has no symbol on: a test asks that both go together.
trait Symbol {
    /// Draws it on the sheet of air.
    fn air(&self, _: &Sym<'_>, _: Now) {}

    /// Draws it on the sheet of wiring.
    fn wiring(&self, _: &Sym<'_>, _: Now) {}

    /// What a printed plan writes at its terminals, by port; nothing at the ends of hoses and wires.
    fn terminals(&self) -> &[(&str, &'static str)] {
        &[]
    }

    /// What a printed plan of the wiring writes on it, with its unit: a wire's cross-section, a fuse's rating.
    fn size(&self) -> Option<(f64, &'static str)> {
        None
    }
}

/// The symbol of a kind. A new kind does not compile before it has one.
fn symbol(kind: &PartKind) -> &dyn Symbol {
    sim_core::with_kind!(kind, part => part)
}

/// Draws a part.
pub fn draw(kind: &PartKind, sheet: Sheet, sym: &Sym<'_>, now: Now) {
    match sheet {
        Sheet::Air => symbol(kind).air(sym, now),
        Sheet::Wiring => symbol(kind).wiring(sym, now),
    }
}

/// What a printed plan writes at a terminal.
#[must_use]
pub fn terminal(kind: &PartKind, port: &str) -> Option<&'static str> {
    symbol(kind).terminals().iter().find(|(p, _)| *p == port).map(|(_, written)| *written)
}

/// What a printed plan writes on a part itself.
#[must_use]
pub fn size(kind: &PartKind, sheet: Sheet) -> Option<(f64, &'static str)> {
    symbol(kind).size().filter(|_| sheet == Sheet::Wiring)
}
