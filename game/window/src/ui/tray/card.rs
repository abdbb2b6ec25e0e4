//! A card for each instrument in use: its face, where its ends are, and what can be done with it.

use egui::{RichText, Vec2, WidgetInfo, WidgetType, vec2};
use sim_core::instrument::InstrumentKind;
use sim_core::parts::instruments::MeterMode;

use super::super::super::shown::Middle;
use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::space::Space;
use super::super::{dial, menu};
use super::in_use;
use front::ask::Ask;
use front::hands::{Offer, Then, Thing, offers};
use front::shop::Shop;
use front::words::Words;

/// Width of what stands beside the face, points.
const BESIDE: f32 = 136.0;
/// The same in a drawer, whose faces are low.
const BESIDE_LOW: f32 = 190.0;

fn beside(ctx: &egui::Context, middle: Middle) -> f32 {
    if Space::of(ctx, middle).low { BESIDE_LOW } else { BESIDE }
}
/// Height kept for the bar that scrolls the cards, points.
const BAR: f32 = 10.0;
/// Between two cards, points.
const GAP: f32 = 8.0;
/// What a card takes besides its face and what stands beside that: margins, edge, the gap between both, points.
const AROUND: f32 = 2.0 * 5.0 + FACE_GAP + 2.0;
/// Between a face and what stands beside it, points.
const FACE_GAP: f32 = 6.0;
/// Smallest face in pixels; below this a dial cannot be read to half a division.
const SMALLEST: f32 = 150.0;

/// Least height in which a card can be read: its face, its edge, and the bar that scrolls the row.
pub(super) fn least_height(ctx: &egui::Context) -> f32 {
    SMALLEST / ctx.zoom_factor() + 2.0 * 5.0 + BAR
}

/// The cards side by side; they scroll when there are too many.
pub(super) fn row(column: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let cards = in_use(shop, &ui.tray);
    ui.tray.cards.clear();
    let low = Space::of(column.ctx(), ui.middle).low;
    if cards.is_empty() {
        column.label(RichText::new(words.say("tray-nothing")).color(theme::ON_BENCH));
        if low {
            super::wall_switch(column, words, ui);
        }
        return;
    }
    let smallest = SMALLEST / column.ctx().zoom_factor();
    let high = column.available_height() - 2.0 * 5.0 - BAR;
    // Somewhat smaller faces where that brings the last card in whole; else the row scrolls.
    let n = cards.len() as f32;
    let wide = (column.available_width() - (n - 1.0) * GAP) / n - beside(column.ctx(), ui.middle) - AROUND;
    let side = if smallest <= wide { high.min(wide) } else { high }.max(smallest);
    egui::ScrollArea::both().id_salt("cards").auto_shrink([false, false]).show(column, |area| {
        area.horizontal_top(|row| {
            row.spacing_mut().item_spacing.x = GAP;
            for card in cards {
                card_ui(row, shop, words, ui, card, side);
            }
            if low {
                super::wall_switch(row, words, ui);
            }
        });
    });
}

fn card_ui(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, card: u16, side: f32) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let Some(seen) = view.instruments.get(usize::from(card)) else { return };
    let thing = Thing::Instrument(card);
    let hot = ui.hover == Some(thing);
    let stroke = if hot { theme::ACCENT_ON_DARK } else { theme::CASE_EDGE };
    let frame = egui::Frame::new()
        .fill(theme::CARD)
        .stroke(egui::Stroke::new(if hot { 2.0 } else { 1.0 }, stroke))
        .corner_radius(5.0)
        .inner_margin(4.0);
    let inner = frame.show(row, |inner| {
        inner.horizontal_top(|inner| {
            inner.spacing_mut().item_spacing.x = FACE_GAP;
            let pressure = ui.prefs.pressure;
            let face = dial::show(inner, shop, words, pressure, card, Vec2::splat(side));
            if shop.frozen() == Some(usize::from(card)) {
                let face = face.map(|face| face.rect);
                held(inner, shop, words, ui, face);
            }
            let (low, wide) = (Space::of(inner.ctx(), ui.middle).low, beside(inner.ctx(), ui.middle));
            inner.allocate_ui_with_layout(
                vec2(wide, side),
                egui::Layout::top_down(egui::Align::LEFT),
                |beside| {
                    beside.set_width(wide);
                    beside.spacing_mut().item_spacing = vec2(4.0, 3.0);
                    let name = words.name(shop, thing);
                    let at = dial::whereabouts(shop, words, seen);
                    if low {
                        // In a drawer one line, the whole of it for whoever hovers: the buttons need the rest.
                        let whole = format!("{name}: {at}");
                        let line = RichText::new(format!("{name} · {at}")).color(theme::ON_BENCH);
                        beside.add(egui::Label::new(line).truncate()).on_hover_text(whole);
                    } else {
                        let name = RichText::new(name).strong().color(theme::ON_BENCH);
                        beside.add(egui::Label::new(name).wrap());
                        let at = RichText::new(at).small().color(theme::ACCENT_ON_DARK);
                        beside.add(egui::Label::new(at).wrap());
                    }
                    let kind = session.workshop().setup().kit.get(usize::from(card)).map(|c| c.kind);
                    let buttons = egui::ScrollArea::vertical().id_salt(("card", card));
                    buttons.min_scrolled_height(theme::TARGET).show(beside, |buttons| {
                        buttons_ui(buttons, shop, words, ui, card, kind, seen.mode);
                    });
                },
            );
        });
    });
    let rect = inner.response.rect;
    if inner.response.contains_pointer() {
        ui.hover = Some(thing);
    }
    ui.tray.cards.insert(card, rect);
}

/// Over the lower edge of a face that stands still: which reading it shows, and the way to let it go. It takes no
/// room of its own, so nothing moves when it comes and goes.
fn held(inner: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, face: Option<egui::Rect>) {
    let (Some(face), Some(n)) = (face, shop.held()) else { return };
    let band = egui::Rect::from_min_max(face.left_bottom() - vec2(0.0, theme::TARGET), face.right_bottom());
    let mut over = inner.new_child(egui::UiBuilder::new().max_rect(band).id_salt("held"));
    let text = RichText::new(words.say_with("held-short", &[("n", n.into())])).color(theme::ON_BENCH);
    let button = egui::Button::new(text).fill(theme::ACCENT).truncate().min_size(band.size());
    let response = over.put(band, button).on_hover_text(words.say("tip-held"));
    let name = words.say_with("held-let-go", &[("n", n.into())]);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    if response.clicked() {
        let_go(ui);
    }
}

/// Looks away from what is read; a form that was begun keeps what was written in it.
pub(in super::super) fn let_go(ui: &mut Ui) {
    ui.clipboard.put_aside();
    ui.ask(Ask::LetGo);
}

/// The instrument's offers as buttons.
fn buttons_ui(
    buttons: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    ui: &mut Ui,
    card: u16,
    kind: Option<InstrumentKind>,
    mode: Option<MeterMode>,
) {
    let thing = Thing::Instrument(card);
    let list = offers(shop, None, thing);
    let instrument = words.name(shop, thing);
    let mut taken = None;
    buttons.horizontal_wrapped(|row| {
        for offer in list.iter().filter(|o| !matches!(o.then, Then::Turn(_))) {
            if offer.key.starts_with("offer-meter-") {
                continue;
            }
            let response = offer_ui(row, shop, words, offer, &instrument);
            if response.clicked() {
                taken = Some((offer.then.clone(), response.rect.center_top()));
            }
        }
        if kind.is_some_and(|kind| dial::is_at_hand(&kind))
            && row.button(words.say("tray-put-away")).clicked()
        {
            ui.tray.laid.remove(&card);
        }
    });
    if let Some(mode) = mode {
        buttons.horizontal(|row| {
            row.spacing_mut().item_spacing.x = 3.0;
            for (short, setting) in MODES {
                // The offer of the setting that is on does not exist: nothing would change.
                let offer = list.iter().find(|o| o.key == mode_offer(setting));
                let response = super::on_bench(row, mode == setting, words.say(short));
                let name = of(&instrument, &words.say(dial::mode_key(setting)));
                response.widget_info(|| {
                    WidgetInfo::selected(WidgetType::RadioButton, true, mode == setting, &name)
                });
                if response.clicked()
                    && let Some(offer) = offer
                {
                    taken = Some((offer.then.clone(), response.rect.center_top()));
                }
            }
        });
    }
    if let Some((then, at)) = taken {
        menu::act(shop, ui, thing, at, then);
    }
}

/// Settings of a meter with the sign on its dial.
const MODES: [(&str, MeterMode); 4] = [
    ("meter-sign-off", MeterMode::Off),
    ("meter-sign-volt", MeterMode::Volt),
    ("meter-sign-ohm", MeterMode::Ohm),
    ("meter-sign-ampere", MeterMode::Ampere),
];

fn mode_offer(mode: MeterMode) -> &'static str {
    match mode {
        MeterMode::Off => "offer-meter-off",
        MeterMode::Volt => "offer-meter-volt",
        MeterMode::Ohm => "offer-meter-ohm",
        MeterMode::Ampere => "offer-meter-ampere",
    }
}

/// What a button is called to a screen reader: several instruments have one of the same kind.
fn of(instrument: &str, what: &str) -> String {
    format!("{instrument}: {what}")
}

/// One offer: a short text on the button, the whole of it for hover and screen reader.
fn offer_ui(
    row: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    offer: &Offer,
    instrument: &str,
) -> egui::Response {
    let full = words.offer(shop, offer);
    let short = words.say_or(&offer.key.replacen("offer-", "short-", 1), &full);
    let text = if matches!(offer.then, Then::Form(_)) { format!("{short} …") } else { short };
    let button = egui::Button::new(text).min_size(Vec2::splat(theme::TARGET));
    let response = row.add(button).on_hover_text(&full);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, of(instrument, &full)));
    response
}
