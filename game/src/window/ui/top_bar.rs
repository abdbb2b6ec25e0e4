//! The bar at the top: where one stands, what fills the middle, the way out.

use sim_core::action::Station;

use super::super::ask::Ask;
use super::super::shop::Shop;
use super::super::state::{Middle, Page, Ui};
use super::super::words::Words;
use super::keys::STATIONS;

/// Below this width the bar takes two rows, points.
const ONE_ROW: f32 = 1_000.0;

/// Key of a station's name.
#[must_use]
pub fn station_key(station: Station) -> &'static str {
    match station {
        Station::Desk => "station-desk",
        Station::Cab => "station-cab",
        Station::Bay => "station-bay",
        Station::Front => "station-front",
        Station::Bench => "station-bench",
    }
}

/// Shows the bar.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    egui::Panel::top("top-bar").show(root, |bar| {
        if bar.available_width() < ONE_ROW {
            bar.horizontal_wrapped(|row| {
                places(row, words, ui);
                row.separator();
                ways_out(row, shop, words, ui);
            });
            return;
        }
        bar.horizontal(|row| {
            places(row, words, ui);
            row.with_layout(egui::Layout::right_to_left(egui::Align::Center), |right| {
                ways_out(right, shop, words, ui);
            });
        });
    });
}

fn places(row: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    for station in STATIONS {
        let here = ui.eye == station;
        if row.selectable_label(here, words.say(station_key(station))).clicked() {
            ui.eye = station;
        }
    }
    row.separator();
    for (middle, key) in
        [(Middle::Room, "middle-room"), (Middle::Diagram, "middle-diagram"), (Middle::Both, "middle-both")]
    {
        if row.selectable_label(ui.middle == middle, words.say(key)).clicked() {
            ui.middle = middle;
        }
    }
}

fn ways_out(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    if row.button(words.say("bar-leave")).clicked() {
        if shop.view().is_some_and(|v| v.handed_back) {
            ui.ask(Ask::Leave);
            ui.page = Page::FrontDesk;
        } else {
            ui.clipboard.ask_leave();
        }
    }
    if row.button(words.say("bar-settings")).clicked() {
        ui.back_to = Page::Workshop;
        ui.page = Page::Settings;
    }
    let Some(view) = shop.view() else { return };
    if view.handed_back {
        if row.button(words.say("bar-mark-sheet")).clicked() {
            ui.page = Page::MarkSheet;
        }
    } else if row.button(words.say("bar-hand-back")).clicked() {
        ui.clipboard.ask_hand_back();
    }
}
