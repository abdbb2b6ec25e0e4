//! Instruments as they are fitted: a circle with a letter, a needle, a cross, and what leads to the ports.

use egui::{Align2, Color32, Pos2, vec2};
use front::words::pretty_unit;
use sim_core::instrument::{Dial, Held, InstrumentCard, Measured, Nature, Worked};
use sim_core::parts::instruments::MeterMode;
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
    let nature = card.kind.nature();
    if nature.measured == Measured::Glow {
        lamp(pen, at, seen.glow.unwrap_or(0.0) as f32);
        return;
    }
    pen.circle(at, RADIUS, OUTLINE);
    if let Some(dial) = card.kind.dial() {
        needle(pen, at, dial, seen.value);
    }
    if nature.displays().any(|(_, display)| display.is_digital()) {
        pen.text(at, Align2::CENTER_CENTER, letter(&nature, seen), 17.0);
    }
    match nature.worked {
        Worked::Stroked => hand_lever(pen, at),
        Worked::Pressed => button(pen, at),
        Worked::Not | Worked::Set => {}
    }
}

/// The letter of a measuring instrument: the unit of what it measures; nought for one that is switched off.
fn letter(nature: &Nature<'_>, seen: &InstrumentView) -> &'static str {
    if seen.mode == Some(MeterMode::Off) {
        return "0";
    }
    nature.display(seen.mode).map_or("", |display| pretty_unit(display.unit()))
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
pub fn lead_colour(held: Held, first: bool) -> Color32 {
    match held {
        Held::OnLine | Held::OnHose | Held::AtPart => theme::ACCENT,
        Held::OnWires | Held::AroundWire if first => theme::LEAD_RED,
        Held::OnWires | Held::AroundWire => theme::INK,
        // They have no lead.
        Held::Nowhere | Held::InOpening | Held::OverHose | Held::AtEar | Held::OnPedal => theme::INK,
    }
}
