//! Instruments as they are fitted: a circle with a letter, a needle, a cross, and what leads to the ports.

use egui::{Align2, Color32, Pos2, vec2};
use sim_core::instrument::{Dial, InstrumentCard, InstrumentKind};
use sim_core::observe::Scale;
use sim_core::workshop::InstrumentView;

use super::super::pen::{OUTLINE, Pen, THIN};
use crate::theme;

/// Radius of an instrument, sheet points.
pub const RADIUS: f32 = 19.0;
/// Where a dial begins and how far it goes, radians clockwise from the right.
const DIAL_FROM: f32 = 2.356;
const DIAL_SWEEP: f32 = 4.712;

/// Draws an instrument.
pub fn draw(pen: &Pen<'_>, at: Pos2, card: &InstrumentCard, seen: &InstrumentView) {
    pen.disc(at, RADIUS, pen.paper);
    if let InstrumentKind::Lamp = card.kind {
        lamp(pen, at, seen.glow.unwrap_or(0.0) as f32);
        return;
    }
    pen.circle(at, RADIUS, OUTLINE);
    if let Some(dial) = card.kind.dial() {
        needle(pen, at, dial, seen.value);
    }
    match card.kind {
        InstrumentKind::HandPump { .. } => hand_lever(pen, at),
        InstrumentKind::PushLead => button(pen, at),
        InstrumentKind::Multimeter { .. }
        | InstrumentKind::ClampAmmeter { .. }
        | InstrumentKind::IrThermometer { .. } => {
            pen.text(at, Align2::CENTER_CENTER, letter(&card.kind, seen), 17.0);
        }
        // A dial by itself, or a lamp, which has its own sign.
        InstrumentKind::Gauge { .. }
        | InstrumentKind::AngleFinder { .. }
        | InstrumentKind::Barometer { .. }
        | InstrumentKind::WallThermometer { .. }
        | InstrumentKind::PedalRule { .. }
        | InstrumentKind::Lamp => {}
        // Never at a port: an empty circle.
        InstrumentKind::Stopwatch { .. }
        | InstrumentKind::PedalProp
        | InstrumentKind::Plugs
        | InstrumentKind::Clamps
        | InstrumentKind::ListeningTube => {}
    }
}

/// The letter of a measuring instrument: what it measures.
fn letter(kind: &InstrumentKind, seen: &InstrumentView) -> &'static str {
    match kind {
        InstrumentKind::ClampAmmeter { .. } => "A",
        InstrumentKind::IrThermometer { .. } => "°C",
        InstrumentKind::Multimeter { .. } => match &seen.scale {
            Some(Scale::Numeric { unit: "ohm", .. }) => "Ω",
            Some(Scale::Numeric { unit: "A", .. }) => "A",
            Some(Scale::Numeric { unit: "V", .. }) => "V",
            _ => "0",
        },
        InstrumentKind::Gauge { .. }
        | InstrumentKind::HandPump { .. }
        | InstrumentKind::Lamp
        | InstrumentKind::PushLead
        | InstrumentKind::Stopwatch { .. }
        | InstrumentKind::Barometer { .. }
        | InstrumentKind::WallThermometer { .. }
        | InstrumentKind::AngleFinder { .. }
        | InstrumentKind::PedalRule { .. }
        | InstrumentKind::PedalProp
        | InstrumentKind::Plugs
        | InstrumentKind::Clamps
        | InstrumentKind::ListeningTube => "",
    }
}

/// Ticks and needle: to be read as a dial is, not as a number.
fn needle(pen: &Pen<'_>, at: Pos2, dial: Dial, value: Option<f64>) {
    for i in 0..=10 {
        let a = DIAL_FROM + DIAL_SWEEP * i as f32 / 10.0;
        let way = vec2(a.cos(), a.sin());
        let inner = if i % 5 == 0 { 0.68 } else { 0.82 };
        pen.line(&[at + way * RADIUS * inner, at + way * RADIUS * 0.95], THIN);
    }
    let span = dial.max - dial.min;
    // A vacuum gauge stands at the right when it shows nothing; deeper vacuum turns it left.
    let share = value.map_or(1.0, |v| ((v - dial.min) / span).clamp(0.0, 1.0)) as f32;
    let a = DIAL_FROM + DIAL_SWEEP * share;
    let way = vec2(a.cos(), a.sin());
    pen.with(theme::INK).line(&[at - way * 4.0, at + way * RADIUS * 0.8], OUTLINE);
    pen.with(theme::INK).disc(at, 2.6, theme::INK);
}

fn hand_lever(pen: &Pen<'_>, at: Pos2) {
    let foot = at + vec2(RADIUS * 0.72, RADIUS * 0.72);
    pen.line(&[foot, foot + vec2(8.0, 8.0), foot + vec2(16.0, 4.0)], OUTLINE);
}

fn button(pen: &Pen<'_>, at: Pos2) {
    pen.line(&[at + vec2(-14.0, 4.0), at + vec2(-6.0, 4.0)], OUTLINE);
    pen.line(&[at + vec2(6.0, 4.0), at + vec2(14.0, 4.0)], OUTLINE);
    pen.line(&[at + vec2(-8.0, -2.0), at + vec2(8.0, -2.0)], OUTLINE);
    pen.line(&[at + vec2(0.0, -2.0), at + vec2(0.0, -11.0)], THIN);
    pen.line(&[at + vec2(-5.0, -11.0), at + vec2(5.0, -11.0)], OUTLINE);
}

/// Circle with a cross; it glows as the filament does.
fn lamp(pen: &Pen<'_>, at: Pos2, glow: f32) {
    if 0.0 < glow {
        let bright = theme::glow(0.25 + 0.75 * glow.clamp(0.0, 1.0));
        pen.disc(at, RADIUS * (1.0 + 0.35 * glow), bright.gamma_multiply(0.5));
        pen.disc(at, RADIUS, bright);
    }
    pen.circle(at, RADIUS, OUTLINE);
    let d = RADIUS * std::f32::consts::FRAC_1_SQRT_2;
    pen.line(&[at - vec2(d, d), at + vec2(d, d)], OUTLINE);
    pen.line(&[at + vec2(-d, d), at + vec2(d, -d)], OUTLINE);
    // Rays, so that light is not told by colour alone.
    if 0.15 < glow {
        for i in 0..8 {
            let a = i as f32 * std::f32::consts::FRAC_PI_4;
            let way = vec2(a.cos(), a.sin());
            pen.line(&[at + way * (RADIUS + 4.0), at + way * (RADIUS + 6.0 + 5.0 * glow)], THIN + 0.4);
        }
    }
}

/// Colour of an instrument's lead: red for the first end of an electrical one, black for the second, the
/// accent for a gauge's hose.
#[must_use]
pub fn lead_colour(kind: &InstrumentKind, first: bool) -> Color32 {
    match kind {
        InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. } => theme::ACCENT,
        InstrumentKind::AngleFinder { .. } | InstrumentKind::IrThermometer { .. } => theme::ACCENT,
        InstrumentKind::Lamp
        | InstrumentKind::Multimeter { .. }
        | InstrumentKind::ClampAmmeter { .. }
        | InstrumentKind::PushLead => {
            if first {
                theme::LEAD_RED
            } else {
                theme::INK
            }
        }
        // They have no lead.
        InstrumentKind::Stopwatch { .. }
        | InstrumentKind::Barometer { .. }
        | InstrumentKind::WallThermometer { .. }
        | InstrumentKind::PedalRule { .. }
        | InstrumentKind::PedalProp
        | InstrumentKind::Plugs
        | InstrumentKind::Clamps
        | InstrumentKind::ListeningTube => theme::INK,
    }
}
