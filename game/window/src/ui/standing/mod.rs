//! How things stand, always at the same place under the top bar: key, engine, pump, pedal, what is off the car
//! and what sits on it; and what is in the hand. Only what a person in the workshop has done, hears and feels.
//!
//! Every word has its slot, as wide as the longest word it can hold, so nothing moves when a word changes.
//! Where the window is narrow the names give way to the signs; sign and state stay.

mod signs;

use egui::{
    Align, FontId, Label, Layout, Popup, Rect, Response, RichText, Sense, UiBuilder, WidgetInfo, WidgetType,
};
use egui::{pos2, vec2};
use sim_core::action::PedalHold;
use sim_core::assembly::Stop;
use sim_core::parts::PartKind;
use sim_core::parts::engine::EngineState;
use sim_core::workshop::View;

use self::signs::Sign;
use super::super::state::Ui;
use super::super::theme;
use super::keys;
use super::menu::open_further;
use front::hands::{self, Carry, Thing};
use front::shop::Shop;
use front::words::Words;

/// Height of the strip, points.
const HEIGHT: f32 = 32.0;
/// Least width that is left for what is in the hand before names give way, points.
const HAND: f32 = 300.0;
/// What a slot has beside its text and sign, points.
const PAD: f32 = 14.0;
/// Size of the letters, points.
const SIZE: f32 = 13.0;

/// A slot of the strip.
struct Slot {
    sign: Sign,
    /// What it is about.
    name: String,
    /// How it stands, in a word.
    state: String,
    /// The same with its numbers, for whoever points at it or hears the screen.
    exactly: String,
    /// It is not at rest.
    on: bool,
    /// Every word it may have to hold.
    may: Vec<String>,
    /// What stands beside the sign where there is no room for more: how many.
    number: Option<usize>,
}

impl Slot {
    /// What is written in it, with its name or where there is no room for that.
    fn text(&self, words: &Words, named: bool, state: &str) -> String {
        match (named, self.number) {
            (true, _) => item(words, &self.name, state),
            (false, Some(n)) => n.to_string(),
            (false, None) => state.to_owned(),
        }
    }
}

/// Shows the strip.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    let frame = egui::Frame::new().fill(theme::BENCH).inner_margin(egui::Margin::symmetric(6, 3));
    egui::Panel::top("standing").exact_size(HEIGHT).resizable(false).frame(frame).show(root, |strip| {
        let all = strip.available_rect_before_wrap();
        let slots = slots(shop, words, view);
        let wide = |slot: &Slot, named: bool| {
            let text = |state: &String| {
                let text = match slot.number {
                    Some(_) if !named => "88".to_owned(),
                    _ => slot.text(words, named, state),
                };
                strip.fonts_mut(|f| {
                    f.layout_no_wrap(text, FontId::proportional(SIZE), theme::ON_BENCH).size().x
                })
            };
            slot.may.iter().map(text).fold(0.0, f32::max) + signs::SIDE + PAD
        };
        let widths = |named: bool| slots.iter().map(|slot| wide(slot, named).ceil()).collect::<Vec<f32>>();
        let named = widths(true).iter().sum::<f32>() + HAND <= all.width();
        let widths = widths(named);
        let mut x = all.left();
        for (slot, width) in slots.iter().zip(widths) {
            let rect = Rect::from_min_size(pos2(x, all.top()), vec2(width, all.height()));
            let response = slot_ui(strip, words, slot, rect, named);
            x += width;
            taken(shop, words, ui, slot.sign, &response);
        }
        let hand = Rect::from_min_max(pos2(x + 8.0, all.top()), all.max);
        let ink = theme::ON_BENCH_FAINT.gamma_multiply(0.5);
        strip.painter().vline(x + 2.0, all.y_range(), egui::Stroke::new(1.0, ink));
        hand_ui(strip, shop, words, ui, hand, named);
        strip.advance_cursor_after_rect(all);
    });
}

fn item(words: &Words, name: &str, state: &str) -> String {
    words.say_with("standing-item", &[("name", name.into()), ("state", state.into())])
}

/// The slots, left to right.
fn slots(shop: &Shop, words: &Words, view: &View) -> Vec<Slot> {
    let say = |key: &str| words.say(key);
    let all = |keys: &[&str]| keys.iter().map(|key| words.say(key)).collect::<Vec<_>>();
    let slot = |sign, name: &str, state: String, on, may| {
        let exactly = state.clone();
        Slot { sign, name: words.say(name), state, exactly, on, may, number: None }
    };
    let number = |key: &str, n: usize| words.say_with(key, &[("n", n.into())]);
    let mut out = vec![slot(
        Sign::Key,
        "standing-key",
        say(if view.key_on { "standing-on" } else { "standing-off" }),
        view.key_on,
        all(&["standing-on", "standing-off"]),
    )];
    const ENGINE: [(EngineState, &str); 6] = [
        (EngineState::Stopped, "standing-engine-stopped"),
        (EngineState::WarmIdle, "standing-engine-idle"),
        (EngineState::ColdIdle, "standing-engine-idle-cold"),
        (EngineState::Cruise, "standing-engine-cruise"),
        (EngineState::Overrun, "standing-engine-overrun"),
        (EngineState::WideOpen, "standing-engine-wide-open"),
    ];
    let engine = ENGINE.iter().find(|(state, _)| *state == view.engine).map_or("", |(_, key)| key);
    let runs = view.engine != EngineState::Stopped;
    out.push(slot(Sign::Engine, "standing-engine", say(engine), runs, all(&ENGINE.map(|(_, key)| key))));
    let pump = |p: &sim_core::assembly::Part| matches!(p.kind, PartKind::VacuumPump(_));
    if shop.car().is_some_and(|car| car.assembly.parts.iter().any(pump)) {
        let state = if view.hum { "standing-pump-runs" } else { "standing-pump-silent" };
        let may = all(&["standing-pump-runs", "standing-pump-silent"]);
        out.push(slot(Sign::Pump, "standing-pump", say(state), view.hum, may));
    }
    let force = |key: &str, n: f64| words.say_with(key, &[("n", words.plain(n).into())]);
    let (pedal, exactly) = match view.pedal {
        PedalHold::Released => ("standing-pedal-free", say("standing-pedal-free")),
        PedalHold::Foot { force_n } => ("standing-foot", force("standing-pedal-foot", force_n)),
        PedalHold::Prop { force_n } => ("standing-prop", force("standing-pedal-prop", force_n)),
    };
    let may = all(&["standing-pedal-free", "standing-foot", "standing-prop"]);
    let held = view.pedal != PedalHold::Released;
    out.push(Slot { exactly, ..slot(Sign::Pedal, "standing-pedal", say(pedal), held, may) });
    let counts = [
        (Sign::Cover, "standing-covers", "standing-covers-on", "standing-covers-off", view.covers_off.len()),
        (Sign::Clamp, "standing-clamps", "standing-none", "standing-some", stops(view, Stop::Clamp).count()),
        (Sign::Plug, "standing-plugs", "standing-none", "standing-some", stops(view, Stop::Plug).count()),
    ];
    for (sign, name, none, some, n) in counts {
        let state = if n == 0 { say(none) } else { number(some, n) };
        let may = vec![say(none), number(some, 88)];
        out.push(Slot { number: Some(n), ..slot(sign, name, state, 0 < n, may) });
    }
    out
}

/// Ports with a stop of this kind.
fn stops(view: &View, kind: Stop) -> impl Iterator<Item = &str> {
    view.stops.iter().filter(move |(_, stop)| *stop == kind).map(|(port, _)| port.as_str())
}

fn slot_ui(strip: &mut egui::Ui, words: &Words, slot: &Slot, rect: Rect, named: bool) -> Response {
    let response = strip.interact(rect, strip.id().with(("slot", slot.sign as u8)), Sense::click());
    let spoken = item(words, &slot.name, &slot.exactly);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &spoken));
    let ink = if slot.on { theme::ACCENT_ON_DARK } else { theme::ON_BENCH };
    let painter = strip.painter();
    if response.hovered() || response.has_focus() {
        painter.rect_filled(rect.shrink(1.0), 4.0, theme::CARD);
    }
    if response.has_focus() {
        let edge = egui::Stroke::new(2.0, theme::ACCENT_ON_DARK);
        painter.rect_stroke(rect.shrink(1.0), 4.0, edge, egui::StrokeKind::Inside);
    }
    signs::draw(painter, signs::place(rect), slot.sign, ink, slot.on);
    let text = slot.text(words, named, &slot.state);
    let at = pos2(rect.left() + signs::SIDE + 9.0, rect.center().y);
    painter.text(at, egui::Align2::LEFT_CENTER, text, FontId::proportional(SIZE), ink);
    response.on_hover_text(spoken)
}

/// What a click on a slot opens: the menu of what it is about, or the list of what is off or sits there.
fn taken(shop: &Shop, words: &Words, ui: &mut Ui, sign: Sign, response: &Response) {
    let at = response.rect.center_bottom();
    let thing = match sign {
        Sign::Key => Thing::Key,
        Sign::Engine => Thing::Starter,
        Sign::Pedal => Thing::Pedal,
        Sign::Pump => {
            if response.clicked() {
                open_further(ui, Thing::Clock, at, "offer-wait-until");
            }
            return;
        }
        Sign::Cover | Sign::Clamp | Sign::Plug => {
            list(shop, words, ui, sign, response);
            return;
        }
    };
    if response.hovered() || response.has_focus() {
        ui.hover = Some(thing);
    }
    if response.clicked() {
        ui.open_menu(thing, at);
    }
}

/// The covers that are off, or the ports that are clamped or plugged: each opens its menu.
fn list(shop: &Shop, words: &Words, ui: &mut Ui, sign: Sign, response: &Response) {
    let (Some(view), Some(car)) = (shop.view(), shop.car()) else { return };
    let cover = |id: &String| car.covers.iter().position(|c| c.id == *id).map(|i| Thing::Cover(i as u16));
    let things: Vec<Thing> = match sign {
        Sign::Cover => view.covers_off.iter().filter_map(cover).collect(),
        Sign::Clamp => stops(view, Stop::Clamp).filter_map(|port| hands::place(shop, port)).collect(),
        _ => stops(view, Stop::Plug).filter_map(|port| hands::place(shop, port)).collect(),
    };
    let mut chosen = None;
    Popup::menu(response).show(|list| {
        list.spacing_mut().interact_size.y = theme::TARGET;
        if things.is_empty() {
            list.label(words.say(match sign {
                Sign::Cover => "standing-no-covers",
                Sign::Clamp => "standing-no-clamps",
                _ => "standing-no-plugs",
            }));
        }
        for thing in &things {
            if list.button(format!("{} …", words.name(shop, *thing))).clicked() {
                chosen = Some(*thing);
                list.close();
            }
        }
    });
    if let Some(thing) = chosen {
        keys::look_at(shop, ui, thing);
        ui.open_menu(thing, response.rect.center_bottom());
    }
}

/// What is in the hand, which end comes next, where it can go; and how to put it back. On one line, whatever
/// there is to say: what does not fit is told when it is pointed at.
fn hand_ui(strip: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, rect: Rect, named: bool) {
    let carry = ui.carrying.clone();
    if carry.is_some() {
        strip.painter().rect_filled(rect.expand2(vec2(4.0, 2.0)), 3.0, theme::ACCENT);
    }
    let mut inner =
        strip.new_child(UiBuilder::new().max_rect(rect).layout(Layout::right_to_left(Align::Center)));
    inner.spacing_mut().item_spacing.x = 6.0;
    // Its place is kept while there is nothing to put back.
    let text = if named { words.say("carry-back-short") } else { "×".to_owned() };
    let back = egui::Button::new(text).min_size(egui::Vec2::splat(theme::TARGET));
    let back = inner.add_visible(carry.is_some(), back);
    let name = words.say("carry-back");
    back.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    if back.on_hover_text(name).clicked() {
        ui.carrying = None;
    }
    let find = egui::Button::new(words.say("carry-find")).min_size(vec2(0.0, theme::TARGET));
    if inner.add(find).on_hover_text(words.say("tip-find")).clicked() {
        ui.pages.open_find();
    }
    inner.with_layout(Layout::left_to_right(Align::Center), |left| match &carry {
        Some(carry) => carried(left, shop, words, carry),
        None => {
            let text = RichText::new(words.say("carry-nothing")).size(SIZE).color(theme::ON_BENCH_FAINT);
            left.add(Label::new(text).truncate());
        }
    });
}

fn carried(left: &mut egui::Ui, shop: &Shop, words: &Words, carry: &Carry) {
    let name = words.name(shop, Thing::Instrument(carry.card));
    let end = carry.left.first().map_or("", String::as_str);
    let end_name = words.say_or(&format!("lead-{end}"), end);
    let mut text = words.say_with("carry-what", &[("name", name.into()), ("end", end_name.into())]);
    if let Some((placed, at)) = carry.placed.last() {
        let at = hands::place(shop, at).map_or_else(|| at.clone(), |t| words.name(shop, t));
        let placed = words.say_or(&format!("lead-{placed}"), placed);
        let placed = words.say_with("carry-placed", &[("end", placed.into()), ("at", at.into())]);
        text = format!("{text} {placed}");
    }
    let label =
        left.add(Label::new(RichText::new(text).size(SIZE).strong().color(theme::ON_BENCH)).truncate());
    left.ctx().accesskit_node_builder(label.id, |node| node.set_live(egui::accesskit::Live::Polite));
    let place = words.say_or(&format!("place-{end}"), "");
    left.add(Label::new(RichText::new(place).size(SIZE).color(theme::ON_BENCH)).truncate());
}
