//! A reading that is being read stands still: the instrument shows exactly what the attempt has of it, and time
//! does not run, until it is noted or let go. So what counts is what the eye could see.

use assess::play::Session;
use sim_core::action::Sense;
use sim_core::observe::{Observed, Reading, ShownValue};
use sim_core::workshop::{InstrumentView, View};

/// How bright each level of a lamp's glow is drawn, 0 to 1.
const GLOW: [f64; 4] = [0.0, 0.04, 0.35, 1.0];

/// The instrument that a reading was taken from, by its short name; `None` for a sense without one.
#[must_use]
pub fn instrument(reading: &Reading) -> Option<&str> {
    match &reading.what {
        Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => Some(instrument),
        Observed::Sense(Sense::Lamp { instrument }) => Some(instrument),
        Observed::Sense(
            Sense::Hiss { .. }
            | Sense::Hum
            | Sense::Touch { .. }
            | Sense::PedalTravel
            | Sense::PedalMoved
            | Sense::Applications
            | Sense::BaseBrakes
            | Sense::YardDrive,
        ) => None,
    }
}

/// The face of the instrument as it was when the reading was taken; `None` for a sense without one.
#[must_use]
pub fn face(session: &Session, reading: &Reading) -> Option<InstrumentView> {
    let workshop = session.workshop();
    let id = instrument(reading)?;
    let card = workshop.setup().kit.iter().position(|c| c.id == id)?;
    let scale = workshop.scale(&reading.what);
    let (mode, at) = match &reading.what {
        Observed::Instrument { mode, at, .. } => (*mode, at.clone()),
        _ => (None, Vec::new()),
    };
    let glow = match (&reading.what, reading.shown) {
        (Observed::Sense(_), ShownValue::Level(level)) => GLOW.get(usize::from(level)).copied(),
        _ => None,
    };
    Some(InstrumentView {
        id: id.to_owned(),
        card,
        at,
        value: scale.number(reading.shown),
        shown: reading.shown,
        scale: Some(scale),
        glow,
        mode,
        pressed: false,
    })
}

/// Whether the instrument still looks at what the reading is of: else its face tells something else by now.
fn same(seen: &InstrumentView, reading: &Reading) -> bool {
    match &reading.what {
        Observed::Instrument { mode, at, .. } => seen.mode == *mode && seen.at == *at,
        Observed::Interval { .. } => true,
        Observed::Sense(_) => !seen.at.is_empty(),
    }
}

/// Lets the instrument behind the reading stand as it was read, in everything that is drawn from the view.
/// The card of the instrument that does.
pub fn hold(session: &Session, view: &mut View, reading: &Reading) -> Option<usize> {
    let face = face(session, reading)?;
    let seen = view.instruments.get_mut(face.card).filter(|seen| same(seen, reading))?;
    // Where its ends are, and what is pressed, is as it is.
    seen.value = face.value;
    seen.shown = face.shown;
    if face.scale.is_some() {
        seen.scale = face.scale;
    }
    if face.glow.is_some() {
        seen.glow = face.glow;
    }
    Some(face.card)
}
