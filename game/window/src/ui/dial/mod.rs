//! Faces of instruments, drawn from each instrument's own span, class, division and unit.
//!
//! What is read by eye is never given as a number: a dial's name says what it is, where it sits and how
//! its scale runs. For those who hear the screen instead of seeing it the description of the widget says
//! where the needle stands *to half a division* ("half way between −62 and −60"). That is exactly what the
//! drawing gives to an eye, and no more, so both readers have the same reading to make and to round.
//! Digits are digits for everybody: a display's name carries them.

pub mod display;
mod things;

pub mod printed;
pub mod round;
pub mod strip;

use egui::{Rect, Response, Sense, Vec2, WidgetInfo, WidgetType};
use sim_core::instrument::{Held, InstrumentCard, InstrumentKind, Measured, ReadFrom, Worked};
use sim_core::observe::{Scale, ShownValue};
use sim_core::parts::instruments::MeterMode;
use sim_core::workshop::InstrumentView;

use front::hands::{self, Thing};
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;
use printed::{Printed, Stand, figure_in};

/// Draws the face of an instrument of the kit (index `card`) into `size`.
pub fn show(
    ui: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    pressure: PressureUnit,
    card: u16,
    size: Vec2,
) -> Option<Response> {
    let seen = shop.view()?.instruments.get(usize::from(card))?;
    show_face(ui, shop, words, pressure, seen, size)
}

/// Draws the face of an instrument as it was seen.
pub fn show_face(
    ui: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    pressure: PressureUnit,
    seen: &InstrumentView,
    size: Vec2,
) -> Option<Response> {
    let card = u16::try_from(seen.card).ok()?;
    let c = shop.session()?.workshop().setup().kit.get(seen.card)?;
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    if ui.is_rect_visible(rect) {
        paint(ui.painter(), rect, shop, words, pressure, c, seen);
    }
    let name = spoken_name(shop, words, pressure, card, c, seen);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, true, &name));
    if let Some(stands) = spoken_stand(words, pressure, c, seen) {
        ui.ctx().accesskit_node_builder(response.id, |node| node.set_description(stands));
    }
    Some(response)
}

/// Draws a face without a widget: for pictures in the room.
pub fn paint(
    painter: &egui::Painter,
    rect: Rect,
    shop: &Shop,
    words: &Words,
    pressure: PressureUnit,
    c: &InstrumentCard,
    seen: &InstrumentView,
) {
    if let Some(printed) = Printed::of(&c.kind, pressure) {
        let class = class_line(words, &printed);
        let stands = pointer(&printed, seen);
        if printed.fits_round() {
            round::paint(painter, rect, &printed, stands, &class);
        } else {
            strip::paint(painter, rect, &printed, stands, &class);
        }
        return;
    }
    let timed = timed(shop, c, seen);
    let shows = things::Shows {
        word: timed
            .as_ref()
            .filter(|t| t.given_up)
            .map(|_| words.say("face-given-up"))
            .or_else(|| state_word(words, c, seen)),
        digits: if let Measured::Time { .. } = c.kind.nature().measured {
            timed.map(|t| t.digits)
        } else {
            display::characters(seen.shown, seen.scale.as_ref())
        },
        unit: display::unit(seen.scale.as_ref()),
        mode: seen.mode.unwrap_or_default(),
        glow: seen.glow.unwrap_or(0.0),
        pressed: seen.pressed,
    };
    things::paint(painter, rect, &c.kind, &shows);
}

/// What a lamp or a button shows, in a word.
fn state_word(words: &Words, c: &InstrumentCard, seen: &InstrumentView) -> Option<String> {
    let nature = c.kind.nature();
    if nature.measured == Measured::Glow {
        Some(glow_word(words, seen))
    } else if nature.worked == Worked::Pressed {
        Some(words.say(if seen.pressed { "face-button-down" } else { "face-button-up" }))
    } else {
        None
    }
}

/// The line under the pivot: class, as EN 837-1 has it printed on pressure dials.
fn class_line(words: &Words, printed: &Printed) -> String {
    let class = figure_in(words, printed.class);
    let key = if printed.pressure { "dial-class-pressure" } else { "dial-class" };
    words.say_with(key, &[("class", class.into())])
}

/// Where the pointer is drawn, printed unit; `None` when there is none to draw (nothing pointed at).
fn pointer(printed: &Printed, seen: &InstrumentView) -> Option<f64> {
    match (seen.value, seen.shown) {
        (Some(own), _) => Some(printed.printed(own)),
        (None, ShownValue::Off(false)) => Some(printed.min - 2.0 * (printed.max - printed.min)),
        (None, ShownValue::Off(true)) => Some(printed.max + 2.0 * (printed.max - printed.min)),
        (None, _) => None,
    }
}

/// What a stopwatch shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timed {
    /// Its digits, s.
    pub digits: String,
    /// It was stopped because patience ended, not because what it timed did.
    pub given_up: bool,
}

/// What a stopwatch shows, and nothing for any other instrument: the time that is being read, else its last. A watch has no end of range: whoever
/// gave up stopped it, and that is the time on it.
#[must_use]
pub fn timed(shop: &Shop, c: &InstrumentCard, seen: &InstrumentView) -> Option<Timed> {
    use sim_core::observe::Observed;
    let Measured::Time { .. } = c.kind.nature().measured else { return None };
    let (view, session) = (shop.view()?, shop.session()?);
    let numeric = !matches!(seen.shown, ShownValue::Blank | ShownValue::Off(_));
    if let Some(digits) = numeric.then(|| display::characters(seen.shown, seen.scale.as_ref())).flatten() {
        return Some(Timed { digits, given_up: false });
    }
    let last = view
        .readings
        .iter()
        .rev()
        .find(|r| matches!(&r.what, Observed::Interval { instrument, .. } if *instrument == c.id))?;
    let scale = session.workshop().scale(&last.what);
    match (last.shown, &last.what, &scale) {
        (ShownValue::Off(_), Observed::Interval { max_s, .. }, Scale::Numeric { resolution, .. }) => {
            let given_up = ShownValue::Steps((f64::from(*max_s) / resolution).round() as i64);
            display::characters(given_up, Some(&scale)).map(|digits| Timed { digits, given_up: true })
        }
        (shown, _, scale) => {
            display::characters(shown, Some(scale)).map(|digits| Timed { digits, given_up: false })
        }
    }
}

/// A lamp's glow in a word.
#[must_use]
pub fn glow_word(words: &Words, seen: &InstrumentView) -> String {
    let level = if let ShownValue::Level(level) = seen.shown { level } else { 0 };
    words.say(&format!("lamp-level-{level}"))
}

/// Key of a meter's setting.
#[must_use]
pub fn mode_key(mode: MeterMode) -> &'static str {
    match mode {
        MeterMode::Off => "meter-off",
        MeterMode::Volt => "meter-volt",
        MeterMode::Ohm => "meter-ohm",
        MeterMode::Ampere => "meter-ampere",
    }
}

/// Whether an instrument is used in the hand: it has no ends, and does not hang on the wall.
#[must_use]
pub fn is_at_hand(kind: &InstrumentKind) -> bool {
    let nature = kind.nature();
    nature.held == Held::Nowhere && nature.read_from != ReadFrom::Wall
}

/// Where an instrument is that is fitted nowhere.
fn lies(kind: InstrumentKind) -> &'static str {
    if kind.nature().read_from == ReadFrom::Wall {
        "at-wall"
    } else if is_at_hand(&kind) {
        "at-hand"
    } else {
        "at-nothing"
    }
}

/// Where the ends of an instrument are, in words; or that it lies on the board.
#[must_use]
pub fn whereabouts(shop: &Shop, words: &Words, seen: &InstrumentView) -> String {
    if seen.at.is_empty() {
        let workshop = shop.session().map(|s| s.workshop());
        let kind = workshop.and_then(|w| w.setup().kit.get(seen.card)).map(|c| c.kind);
        return words.say(kind.map_or("at-nothing", lies));
    }
    let one = seen.at.len() == 1;
    let ends = seen.at.iter().map(|(end, at)| {
        let place = hands::place(shop, at).map_or_else(|| at.clone(), |thing| words.name(shop, thing));
        if one {
            place
        } else {
            let end = words.say_or(&format!("lead-{end}"), end);
            words.say_with("at-end", &[("end", end.into()), ("place", place.into())])
        }
    });
    ends.collect::<Vec<_>>().join(", ")
}

fn spoken_name(
    shop: &Shop,
    words: &Words,
    pressure: PressureUnit,
    card: u16,
    c: &InstrumentCard,
    seen: &InstrumentView,
) -> String {
    let name = words.name(shop, Thing::Instrument(card));
    let at = whereabouts(shop, words, seen);
    let base = [("name", name.into()), ("at", at.into())];
    if let Some(printed) = Printed::of(&c.kind, pressure) {
        let [a, b] = base;
        let values = [
            a,
            b,
            ("min", figure_in(words, printed.min).into()),
            ("max", figure_in(words, printed.max).into()),
            ("unit", printed.unit.into()),
            ("division", figure_in(words, printed.division).into()),
        ];
        return words.say_with("face-dial", &values);
    }
    let nature = c.kind.nature();
    let shows = if let Some(word) = state_word(words, c, seen) {
        word
    } else if let Measured::Time { .. } = nature.measured {
        match timed(shop, c, seen) {
            None => words.say("face-dark"),
            Some(Timed { digits, given_up: false }) => format!("{digits} s"),
            Some(Timed { digits, given_up: true }) => format!("{digits} s, {}", words.say("face-given-up")),
        }
    } else if nature.displays().any(|(_, display)| display.is_digital()) {
        let digits = display::characters(seen.shown, seen.scale.as_ref());
        let unit = display::unit(seen.scale.as_ref());
        let shown = digits.map_or_else(|| words.say("face-dark"), |d| format!("{d} {unit}"));
        match seen.mode {
            Some(mode) => format!("{}, {shown}", words.say(mode_key(mode))),
            None => shown,
        }
    } else {
        return words.say_with("face-plain", &base);
    };
    let [a, b] = base;
    words.say_with("face-display", &[a, b, ("shows", shows.into())])
}

/// Where the needle stands, to half a division, for those who cannot see it.
fn spoken_stand(
    words: &Words,
    pressure: PressureUnit,
    c: &InstrumentCard,
    seen: &InstrumentView,
) -> Option<String> {
    let printed = Printed::of(&c.kind, pressure)?;
    let value = pointer(&printed, seen)?;
    let say = |v| figure_in(words, v);
    Some(match printed.stand(value) {
        Stand::On(at) => words.say_with("needle-on", &[("at", say(at).into())]),
        Stand::Between(low, high) => {
            words.say_with("needle-between", &[("low", say(low).into()), ("high", say(high).into())])
        }
        Stand::LowStop => words.say("needle-low-stop"),
        Stand::HighStop => words.say("needle-high-stop"),
    })
}
