//! Faces that are no dials: meter, clamp, infrared thermometer, stopwatch, lamp, button, and the plain
//! tools, as simple shapes.

use std::f32::consts::PI;

use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};
use sim_core::instrument::InstrumentKind;
use sim_core::parts::instruments::MeterMode;

use super::display;
use super::round::on_circle;
use crate::theme;

/// The case of a hand-held meter.
fn body(painter: &Painter, rect: Rect, round: f32) {
    painter.rect_filled(rect.translate(vec2(0.0, 1.5)), round, theme::SHADOW);
    painter.rect(rect, round, theme::METER_BODY, Stroke::new(1.5, theme::CASE_EDGE), StrokeKind::Inside);
}

/// A multimeter: display above, the dial with its setting below.
fn meter(painter: &Painter, rect: Rect, digits: Option<&str>, unit: &str, mode: MeterMode) {
    let rect =
        Rect::from_center_size(rect.center(), vec2(rect.width().min(0.95 * rect.height()), rect.height()));
    body(painter, rect, 9.0);
    let margin = (0.055 * rect.height()).min(9.0);
    let lcd = Rect::from_min_max(
        rect.left_top() + vec2(margin, margin),
        pos2(rect.right() - margin, rect.top() + 0.40 * rect.height()),
    );
    display::paint(painter, lcd, digits, unit);
    let small = (rect.height() / 160.0).min(1.0);
    let c = pos2(rect.center().x, rect.top() + 0.74 * rect.height());
    let r = 0.135 * rect.height();
    let settings = [
        (MeterMode::Off, "OFF", -0.30),
        (MeterMode::Volt, "V", -0.10),
        (MeterMode::Ohm, "Ω", 0.10),
        (MeterMode::Ampere, "A", 0.30),
    ];
    painter.circle(c, r, theme::METER_KNOB, Stroke::new(1.0, theme::CASE_EDGE));
    for (setting, text, turn) in settings {
        let at = turn * 2.0 * PI;
        let on = setting == mode;
        let colour = if on { theme::ACCENT_ON_DARK } else { theme::ON_BENCH_FAINT };
        painter.line_segment(
            [on_circle(c, r + 3.0 * small, at), on_circle(c, r + 7.0 * small, at)],
            Stroke::new(if on { 2.5 } else { 1.2 }, colour),
        );
        let font = FontId::proportional(small * if on { 14.0 } else { 12.0 });
        painter.text(on_circle(c, r + 18.0 * small, at), Align2::CENTER_CENTER, text, font, colour);
        if on {
            painter.line_segment([c, on_circle(c, r - 1.0, at)], Stroke::new(4.0 * small, theme::ON_BENCH));
        }
    }
}

/// A clamp ammeter: jaw above, display below.
fn clamp(painter: &Painter, rect: Rect, digits: Option<&str>, unit: &str) {
    let c = pos2(rect.center().x, rect.top() + 0.24 * rect.height());
    let r = 0.19 * rect.height();
    painter.circle_stroke(c, r, Stroke::new(0.09 * rect.height(), theme::METER_BODY));
    painter.circle_stroke(c, r + 0.045 * rect.height(), Stroke::new(1.0, theme::CASE_EDGE));
    // The gap where it opens.
    painter
        .line_segment([c - vec2(0.0, 0.7 * r), c - vec2(0.0, 1.35 * r)], Stroke::new(2.0, theme::CASE_EDGE));
    let hand = Rect::from_min_max(
        pos2(rect.left() + 0.08 * rect.width(), rect.top() + 0.43 * rect.height()),
        pos2(rect.right() - 0.08 * rect.width(), rect.bottom()),
    );
    body(painter, hand, 8.0);
    let lcd = Rect::from_min_size(
        hand.left_top() + vec2(9.0, 12.0),
        vec2(hand.width() - 18.0, 0.48 * hand.height()),
    );
    display::paint(painter, lcd, digits, unit);
    let font = FontId::proportional(12.0);
    painter.text(hand.center_bottom() - vec2(0.0, 13.0), Align2::CENTER_CENTER, "A", font, theme::ON_BENCH);
}

/// An infrared thermometer: display at its back, the beam going out.
fn pistol(painter: &Painter, rect: Rect, digits: Option<&str>, unit: &str) {
    let top = Rect::from_min_max(rect.left_top() + vec2(0.0, 8.0), pos2(rect.right(), rect.center().y + 6.0));
    let grip = vec![
        pos2(rect.left() + 0.18 * rect.width(), top.bottom() - 6.0),
        pos2(rect.left() + 0.48 * rect.width(), top.bottom() - 6.0),
        pos2(rect.left() + 0.38 * rect.width(), rect.bottom()),
        pos2(rect.left() + 0.08 * rect.width(), rect.bottom()),
    ];
    painter.add(Shape::convex_polygon(grip, theme::METER_BODY, Stroke::new(1.5, theme::CASE_EDGE)));
    body(painter, top, 8.0);
    display::paint(painter, top.shrink2(vec2(10.0, 12.0)), digits, unit);
    for i in 0..3 {
        let x = rect.left() + (0.62 + 0.12 * i as f32) * rect.width();
        let y = rect.bottom() - 0.18 * rect.height();
        let bow = (-3..=3).map(|k| {
            let k = k as f32 / 3.0;
            pos2(x - 7.0 * k * k, y + (8.0 + 5.0 * i as f32) * k)
        });
        painter.line(bow.collect(), Stroke::new(2.0, theme::ON_BENCH_FAINT));
    }
}

/// A stopwatch with digits, and a word under them where the time is not the whole story.
fn watch(painter: &Painter, rect: Rect, digits: Option<&str>, word: Option<&str>) {
    let r = 0.44 * rect.width().min(rect.height());
    let c = rect.center() + vec2(0.0, 0.05 * rect.height());
    for turn in [-0.11, 0.0, 0.11] {
        let at = turn * 2.0 * PI;
        let width = if turn == 0.0 { 13.0 } else { 9.0 };
        painter.line_segment(
            [on_circle(c, r - 2.0, at), on_circle(c, r + 8.0, at)],
            Stroke::new(width, theme::CASE_EDGE),
        );
    }
    painter.circle(c, r, theme::METER_BODY, Stroke::new(3.0, theme::CASE));
    let lcd = Rect::from_center_size(c, vec2(1.62 * r, 0.62 * r));
    display::paint(painter, lcd, digits, "s");
    if let Some(word) = word {
        let font = FontId::proportional((0.17 * r).max(10.0 / painter.ctx().zoom_factor()));
        painter.text(c + vec2(0.0, 0.52 * r), Align2::CENTER_CENTER, word, font, theme::ON_BENCH);
    }
}

/// A test lamp: bulb, filament, its glow, and the word for it.
fn lamp(painter: &Painter, rect: Rect, glow: f64, word: &str) {
    let c = pos2(rect.center().x, rect.top() + 0.40 * rect.height());
    let r = 0.23 * rect.height();
    let glow = glow.clamp(0.0, 1.0) as f32;
    // Light falls off round the bulb; eyes see its root rather than its power.
    let seen = glow.powf(0.6);
    for i in (1..=7).rev() {
        let reach = r * (1.0 + 0.13 * i as f32);
        painter.circle_filled(c, reach, theme::glow(0.10 * seen));
    }
    let socket = Rect::from_center_size(c + vec2(0.0, 1.22 * r), vec2(0.9 * r, 0.62 * r));
    painter.rect(socket, 2.0, theme::CASE, Stroke::new(1.0, theme::CASE_EDGE), StrokeKind::Inside);
    for i in 0..3 {
        let y = socket.top() + (0.25 + 0.25 * i as f32) * socket.height();
        painter.hline(socket.x_range(), y, Stroke::new(1.0, theme::CASE_EDGE));
    }
    painter.circle(c, r, theme::bulb(seen), Stroke::new(1.5, theme::CASE_EDGE));
    let wire = Stroke::new(1.5, theme::CASE_EDGE);
    for side in [-1.0, 1.0] {
        painter
            .line_segment([c + vec2(0.22 * side * r, 0.95 * r), c + vec2(0.42 * side * r, -0.1 * r)], wire);
    }
    let turns = 28;
    let coil: Vec<Pos2> = (0..=turns)
        .map(|i| {
            let t = i as f32 / turns as f32;
            let wave = (t * 7.0 * 2.0 * PI).sin();
            c + vec2((2.0 * t - 1.0) * 0.42 * r, -0.1 * r - 0.12 * r * (PI * t).sin() + 0.10 * r * wave)
        })
        .collect();
    painter.line(coil, Stroke::new(1.6 + 1.6 * seen, theme::filament(glow)));
    for (side, colour) in [(-1.0, theme::LEAD_RED), (1.0, theme::LEAD_BLACK)] {
        let from = socket.center_bottom() + vec2(0.2 * side * r, 0.0);
        let to = pos2(rect.center().x + side * 0.42 * rect.width(), rect.bottom() - 26.0);
        let bow = (0..=12).map(|i| {
            let t = i as f32 / 12.0;
            let sag = 12.0 * (PI * t).sin();
            from.lerp(to, t) + vec2(0.0, sag)
        });
        painter.line(bow.collect(), Stroke::new(3.0, colour));
    }
    let font = FontId::proportional(15.0);
    painter.text(rect.center_bottom() - vec2(0.0, 9.0), Align2::CENTER_CENTER, word, font, theme::ON_BENCH);
}

/// A push-button lead: the button up or down, and the word for it.
fn button(painter: &Painter, rect: Rect, down: bool, word: &str) {
    let c = rect.center() - vec2(0.0, 8.0);
    let r = 0.30 * rect.height();
    let base = Rect::from_center_size(c + vec2(0.0, 0.55 * r), vec2(2.1 * r, 1.1 * r));
    body(painter, base, 6.0);
    let lift = if down { 0.02 } else { 0.38 } * r;
    let cap = Rect::from_center_size(c + vec2(0.0, -0.02 * r - 0.5 * lift), vec2(1.1 * r, 0.25 * r + lift));
    painter.rect(cap, 4.0, theme::LEAD_RED, Stroke::new(1.5, theme::CASE_EDGE), StrokeKind::Inside);
    if down {
        let tip = pos2(c.x, cap.top() - 5.0);
        let arrow = vec![tip, tip + vec2(7.0, -11.0), tip + vec2(-7.0, -11.0)];
        painter.add(Shape::convex_polygon(arrow, theme::ACCENT_ON_DARK, Stroke::NONE));
    }
    let font = FontId::proportional(15.0);
    painter.text(rect.center_bottom() - vec2(0.0, 9.0), Align2::CENTER_CENTER, word, font, theme::ON_BENCH);
}

/// A prop: a rod with a pad at each end.
fn prop(pen: &Small<'_>) {
    pen.line(&[(-30.0, 30.0), (30.0, -30.0)], 7.0, theme::CASE);
    for end in [(-30.0, 30.0), (30.0, -30.0)] {
        pen.circle(end, 9.0, theme::LCD_DARK, (2.0, theme::CASE_EDGE));
    }
}

/// Plugs of three sizes.
fn plugs(pen: &Small<'_>) {
    for (x, r) in [(-26.0, 10.0), (0.0, 13.0), (28.0, 16.0)] {
        let low = [(x - 0.7 * r, 18.0), (x + 0.7 * r, 18.0), (x + r, -14.0), (x - r, -14.0)];
        let points = low.map(|(x, y)| pen.at(x, y)).to_vec();
        let edge = pen.stroke(1.5, theme::ON_BENCH_FAINT);
        pen.painter.add(Shape::convex_polygon(points, theme::METER_KNOB, edge));
    }
}

/// A hose clamp.
fn clamps(pen: &Small<'_>) {
    for side in [-1.0, 1.0] {
        pen.line(&[(-34.0, 9.0 * side), (34.0, 9.0 * side)], 5.0, theme::CASE);
        pen.line(&[(-10.0, 9.0 * side), (-10.0, 26.0 * side)], 4.0, theme::CASE);
    }
    pen.circle((22.0, 0.0), 7.0, theme::LCD_DARK, (2.0, theme::CASE_EDGE));
}

/// A listening tube.
fn tube(pen: &Small<'_>) {
    let bow: Vec<(f32, f32)> = (0..=20)
        .map(|i| {
            let t = i as f32 / 20.0;
            (-36.0 + 72.0 * t, 22.0 * (2.0 * PI * t).sin())
        })
        .collect();
    pen.line(&bow, 6.0, theme::METER_KNOB);
    pen.circle((36.0, 0.0), 6.0, theme::CASE, (1.5, theme::CASE_EDGE));
}

/// Draws in hundredths of a face's height about its middle.
struct Small<'a> {
    painter: &'a Painter,
    middle: Pos2,
    unit: f32,
}

impl Small<'_> {
    fn at(&self, x: f32, y: f32) -> Pos2 {
        self.middle + vec2(x, y) * self.unit
    }

    fn stroke(&self, width: f32, colour: Color32) -> Stroke {
        Stroke::new(width * self.unit, colour)
    }

    fn line(&self, points: &[(f32, f32)], width: f32, colour: Color32) {
        let points = points.iter().map(|&(x, y)| self.at(x, y)).collect();
        self.painter.line(points, self.stroke(width, colour));
    }

    fn circle(&self, (x, y): (f32, f32), r: f32, fill: Color32, (width, edge): (f32, Color32)) {
        self.painter.circle(self.at(x, y), r * self.unit, fill, self.stroke(width, edge));
    }
}

/// What an instrument without a dial shows.
pub(super) struct Shows<'a> {
    /// Its digits; `None` while it is dark.
    pub(super) digits: Option<String>,
    /// Their unit.
    pub(super) unit: &'a str,
    /// What its dial is set to.
    pub(super) mode: MeterMode,
    /// How its filament glows, 0 to 1.
    pub(super) glow: f64,
    /// Its button is held down.
    pub(super) pressed: bool,
    /// A word for what it shows, where a picture alone does not do.
    pub(super) word: Option<String>,
}

/// The picture of an instrument without a dial.
pub(super) fn paint(painter: &Painter, rect: Rect, kind: &InstrumentKind, shows: &Shows<'_>) {
    let (digits, unit) = (shows.digits.as_deref(), shows.unit);
    let word = shows.word.as_deref();
    let pen = &Small { painter, middle: rect.center(), unit: 0.01 * rect.height() };
    match kind {
        InstrumentKind::Multimeter { .. } => meter(painter, rect, digits, unit, shows.mode),
        InstrumentKind::ClampAmmeter { .. } => clamp(painter, rect, digits, unit),
        InstrumentKind::IrThermometer { .. } => pistol(painter, rect, digits, unit),
        InstrumentKind::Stopwatch { .. } => watch(painter, rect, digits, word),
        InstrumentKind::Lamp => lamp(painter, rect, shows.glow, word.unwrap_or_default()),
        InstrumentKind::PushLead => button(painter, rect, shows.pressed, word.unwrap_or_default()),
        InstrumentKind::PedalProp => prop(pen),
        InstrumentKind::Plugs => plugs(pen),
        InstrumentKind::Clamps => clamps(pen),
        InstrumentKind::ListeningTube => tube(pen),
        // A dial is drawn from what is printed on it.
        InstrumentKind::Gauge { .. }
        | InstrumentKind::HandPump { .. }
        | InstrumentKind::Barometer { .. }
        | InstrumentKind::WallThermometer { .. }
        | InstrumentKind::AngleFinder { .. }
        | InstrumentKind::PedalRule { .. } => {}
    }
}
