//! The tray at the bottom: time on the left, then the instruments in use, or the tool board to take from.
//!
//! What an instrument offers comes from `hands::offers`; the tray only shows it larger.

mod board;
mod card;
mod clock;
mod lines;
pub mod state;

use egui::RichText;
use sim_core::observe::{Observed, Reading};
use sim_core::workshop::View;

use super::super::shown::Middle;
use super::super::state::Ui;
use super::super::theme;
use super::clipboard;
use super::space::Space;
pub(super) use card::let_go;
use front::shop::Shop;
use front::words::Words;
pub use lines::over_the_room;
use state::{Page, connected, in_use};

/// Height of the tray, points, where there is room for it.
const HEIGHT: f32 = 246.0;
/// The same under the line diagram, whose sheets need the lines more; a face of 150 points stays.
const HEIGHT_UNDER_SHEETS: f32 = 216.0;
/// Share of the window's height that the tray may take at most.
const SHARE: f32 = 0.42;
/// Share of the height of a low window that its drawer takes, if an instrument can be read in it.
const DRAWER: f32 = 0.30;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    notice_new(view, ui);
    if Space::of(root.ctx(), ui.middle).low {
        drawer(root, shop, words, ui);
        ui.tray.middle = Some(root.available_rect_before_wrap());
        return;
    }
    let most = if ui.middle == Middle::Diagram { HEIGHT_UNDER_SHEETS } else { HEIGHT };
    let height = most.min(SHARE * root.ctx().content_rect().height());
    let frame = egui::Frame::new().fill(theme::BENCH).inner_margin(egui::Margin::symmetric(8, 6));
    egui::Panel::bottom("tray").exact_size(height).resizable(false).frame(frame).show(root, |tray| {
        tray.horizontal_top(|row| {
            clock::show(row, shop, words, ui);
            row.add(egui::Separator::default().vertical().spacing(10.0));
            row.vertical(|column| {
                header(column, shop, words, ui);
                match ui.tray.shown(shop) {
                    Page::InUse => card::row(column, shop, words, ui),
                    Page::Board => {
                        ui.tray.cards.clear();
                        board::show(column, shop, words, ui);
                    }
                }
            });
        });
    });
    ui.tray.middle = Some(root.available_rect_before_wrap());
}

/// Where the window is low: a row with time and pages, as wide as the window; what it opens is [`drawer`].
pub fn time_row(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    if shop.view().is_none() || !Space::of(root.ctx(), ui.middle).low {
        return;
    }
    let frame = egui::Frame::new().fill(theme::BENCH).inner_margin(egui::Margin::symmetric(6, 4));
    egui::Panel::bottom("time-row").resizable(false).frame(frame).show(root, |bar| {
        bar.horizontal_wrapped(|row| {
            // All of it in one row, the button that notes a reading too: nothing moves when it comes.
            row.spacing_mut().item_spacing = egui::vec2(4.0, 4.0);
            row.spacing_mut().button_padding.x = 6.0;
            row.spacing_mut().interact_size.y = theme::TARGET + 2.0;
            clock::in_a_row(row, shop, words, ui);
            row.add(egui::Separator::default().vertical().spacing(6.0));
            pages_in_a_row(row, shop, words, ui);
            note_it(row, shop, words, ui, "tray-note-short");
        });
    });
}

/// Over the row of a low window: the cards or the board. It is open over the room and shut over the line diagram,
/// until a hand says otherwise.
fn drawer(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    if !ui.tray.is_open(ui.middle) {
        ui.tray.cards.clear();
        return;
    }
    let frame = egui::Frame::new().fill(theme::BENCH).inner_margin(egui::Margin::symmetric(6, 4));
    let whole = root.ctx().content_rect().height();
    let height = (DRAWER * whole).max(card::least_height(root.ctx()) + 2.0 * 4.0);
    egui::Panel::bottom("tray").exact_size(height).resizable(false).frame(frame).show(root, |tray| match ui
        .tray
        .shown(shop)
    {
        Page::InUse => card::row(tray, shop, words, ui),
        Page::Board => {
            ui.tray.cards.clear();
            board::show(tray, shop, words, ui);
        }
    });
}

/// The pages of the drawer: a click on the one that is open shuts it.
fn pages_in_a_row(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let open = ui.tray.is_open(ui.middle);
    let shown = ui.tray.shown(shop);
    let n = in_use(shop, &ui.tray).len();
    let in_use = words.say_with("tray-in-use", &[("n", n.into())]);
    for (page, text) in [(Page::InUse, in_use), (Page::Board, words.say("tray-board"))] {
        let here = open && shown == page;
        if on_bench(row, here, text).on_hover_text(words.say("tip-board")).clicked() {
            ui.tray.open = Some(!here);
            ui.tray.page = Some(page);
        }
    }
}

/// The switch that brings barometer and thermometer down from the wall.
fn wall_switch(row: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let mut wall = ui.tray.wall;
    let text = RichText::new(words.say("tray-wall")).color(theme::ON_BENCH);
    if row.checkbox(&mut wall, text).on_hover_text(words.say("tip-wall")).changed() {
        ui.tray.wall = wall;
        if wall {
            ui.tray.page = Some(Page::InUse);
        }
    }
}

/// The button that notes the newest reading; with a short text where room is dear. It has its place while there
/// is nothing to note: what stands beside and below must not move.
fn note_it(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, key: &str) {
    let newest = newest(shop, &ui.clipboard).map(|reading| reading.id);
    let button = egui::Button::new(words.say(key)).min_size(egui::vec2(0.0, theme::TARGET));
    let button = match newest {
        Some(_) => button.fill(theme::PAPER).stroke((2.0, theme::ACCENT_ON_DARK)),
        None => button.stroke((2.0, theme::CARD)),
    };
    let button = row.add_enabled(newest.is_some(), button).on_hover_text(words.say("tip-note"));
    let name = words.say("tray-note-it");
    let enabled = newest.is_some();
    button.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, enabled, &name));
    if button.clicked() {
        ui.tray.to_note = newest;
    }
}

/// The line over the cards: page, wall, and the reading that waits to be noted.
fn header(column: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let shown = ui.tray.shown(shop);
    column.horizontal_wrapped(|row| {
        row.spacing_mut().item_spacing.x = 6.0;
        let n = in_use(shop, &ui.tray).len();
        let in_use = words.say_with("tray-in-use", &[("n", n.into())]);
        for (page, text) in [(Page::InUse, in_use), (Page::Board, words.say("tray-board"))] {
            if on_bench(row, shown == page, text).on_hover_text(words.say("tip-board")).clicked() {
                ui.tray.page = Some(page);
            }
        }
        wall_switch(row, words, ui);
        note_it(row, shop, words, ui, "tray-note-it");
    });
}

/// A choice on the dark ground of the tray.
fn on_bench(row: &mut egui::Ui, chosen: bool, text: String) -> egui::Response {
    let button = if chosen {
        egui::Button::selectable(true, text)
    } else {
        egui::Button::new(RichText::new(text).color(theme::ON_BENCH)).fill(theme::CARD)
    };
    row.add(button.min_size(egui::vec2(0.0, theme::TARGET)))
}

/// Something was connected: show the instruments, whatever page was open.
fn notice_new(view: &View, ui: &mut Ui) {
    let now = connected(view);
    if now.iter().any(|card| !ui.tray.connected.contains(card)) {
        ui.tray.page = Some(Page::InUse);
    } else if now.is_empty() && !ui.tray.connected.is_empty() {
        ui.tray.page = None;
    }
    ui.tray.connected = now;
}

/// The newest reading, if it waits to be noted.
fn newest<'s>(shop: &'s Shop, clipboard: &clipboard::state::State) -> Option<&'s Reading> {
    let view = shop.view()?;
    let last = view.readings.last()?.id;
    clipboard.waiting(view).next_back().filter(|reading| reading.id == last)
}

/// Asks the clipboard to note the newest reading.
pub fn note_newest(shop: &Shop, ui: &mut Ui) {
    if let Some(reading) = newest(shop, &ui.clipboard) {
        ui.tray.to_note = Some(reading.id);
    }
}

/// The instrument that the key of reading reads: the one that was read last if it is still in use, else the
/// first that is connected and shows something.
#[must_use]
pub fn next_to_read(shop: &Shop) -> Option<u16> {
    let view = shop.view()?;
    let readable = |card: &u16| {
        let offers = front::hands::offers(shop, None, front::hands::Thing::Instrument(*card));
        offers.iter().any(|o| o.key == "offer-read")
    };
    let cards: Vec<u16> = connected(view).into_iter().filter(readable).collect();
    let read = view.readings.iter().rev().find_map(|r| match &r.what {
        Observed::Instrument { instrument, .. } => {
            cards.iter().find(|c| view.instruments[usize::from(**c)].id == *instrument)
        }
        _ => None,
    });
    read.or(cards.first()).copied()
}

#[cfg(test)]
mod tests;
