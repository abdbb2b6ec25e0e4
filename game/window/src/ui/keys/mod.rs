//! Keys that work everywhere in the workshop. Letters only while no field is written in and no menu is
//! open; the function keys of the time always.
//!
//! A letter shows something, or opens what asks; none does anything that takes time. What it opens begins at
//! its title, where Return does nothing, and whoever types whole words into no field opens nothing at all
//! ([`typing`]).

mod find;
mod help;
pub mod paces;
pub(super) mod page;
pub mod state;
mod typing;

use egui::{Key, Modifiers, Pos2};
use sim_core::action::Station;

use self::paces::PACES;
use super::super::shown::Middle;
use super::super::state::{Menu, Ui};
use super::menu::{dismiss_note, open_form, open_further};
use super::tray;
use front::ask::{Ask, Pace};
use front::hands::{self, Form, Thing};
use front::shop::Shop;
use front::words::Words;

/// Stations in the order of their number keys.
pub const STATIONS: [Station; 5] =
    [Station::Desk, Station::Cab, Station::Bay, Station::Front, Station::Bench];

/// Listens to the keys.
pub fn listen(ctx: &egui::Context, shop: &Shop, ui: &mut Ui) {
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    for (key, pace) in PACES {
        if pressed(key) {
            ui.ask(Ask::Pace(pace));
        }
    }
    if pressed(Key::F1) {
        ui.pages.help = !ui.pages.help;
    }
    if typing::swallow(ctx, &mut ui.pages.typing) {
        // What the first letters of a word have opened was not meant.
        ui.menu.take_if(|menu| menu.neutral);
        return;
    }
    if ctx.text_edit_focused() || ui.menu.is_some() || ui.pages.is_open() {
        return;
    }
    if pressed(Key::Escape) && !dismiss_note(ui) {
        if shop.held().is_some() {
            tray::let_go(ui);
        } else {
            ui.carrying = None;
        }
    }
    if pressed(Key::L) {
        ui.middle = match ui.middle {
            Middle::Room => Middle::Diagram,
            Middle::Diagram => Middle::Both,
            Middle::Both => Middle::Room,
        };
    }
    for (key, station) in [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5].into_iter().zip(STATIONS) {
        if pressed(key) {
            ui.eye = station;
        }
    }
    if pressed(Key::F) {
        ui.pages.open_find();
    }
    if pressed(Key::Questionmark) || ctx.input_mut(|i| i.consume_key(Modifiers::SHIFT, Key::Questionmark)) {
        ui.pages.help = true;
    }
    if pressed(Key::M) {
        ui.pages.log = true;
    }
    if pressed(Key::A) {
        ui.hotspots.names = !ui.hotspots.names;
    }
    time_keys(ctx, shop, ui);
    tool_keys(ctx, shop, ui);
}

fn time_keys(ctx: &egui::Context, shop: &Shop, ui: &mut Ui) {
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    let at = ui.tray.clock_at.unwrap_or_else(|| middle(ctx, ui));
    let further = |ui: &mut Ui, key| {
        open_further(ui, Thing::Clock, at, key);
        ui.begin_at_title();
    };
    if pressed(Key::H) {
        if shop.pace() == Pace::Hold {
            further(ui, "offer-pace");
        } else {
            ui.ask(Ask::Pace(Pace::Hold));
        }
    }
    if pressed(Key::W) {
        open_with(ui, Thing::Clock, at, Form::Wait);
    }
    if pressed(Key::U) {
        further(ui, "offer-wait-until");
    }
    if pressed(Key::S) {
        further(ui, "offer-stopwatch");
    }
    if pressed(Key::O) {
        open_with(ui, Thing::Clock, at, Form::Overnight);
    }
}

fn tool_keys(ctx: &egui::Context, shop: &Shop, ui: &mut Ui) {
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
    if pressed(Key::T) {
        ui.tray.turn_page(shop);
    }
    if pressed(Key::B) {
        ui.tray.wall = !ui.tray.wall;
    }
    if pressed(Key::N) {
        tray::note_newest(shop, ui);
    }
    if pressed(Key::R)
        && let Some(card) = tray::next_to_read(shop)
    {
        let at = ui.tray.card_at(card).unwrap_or_else(|| middle(ctx, ui));
        ui.open_menu(Thing::Instrument(card), at);
        ui.begin_at_title();
    }
    for (key, thing) in [(Key::K, Thing::Key), (Key::E, Thing::Starter), (Key::P, Thing::Pedal)] {
        if pressed(key) {
            open_at(ctx, ui, thing);
            ui.begin_at_title();
        }
    }
}

/// Opens a form of a thing right away; Return does nothing in it before one has gone to its field.
pub(super) fn open_with(ui: &mut Ui, thing: Thing, at: Pos2, form: Form) {
    ui.menu = Some(Menu { thing, at, form: Some(open_form(form)), fresh: true, neutral: true });
}

/// Opens the menu of a thing where it is seen, or in the middle when it is not in view.
pub fn open_at(ctx: &egui::Context, ui: &mut Ui, thing: Thing) {
    let at = ui.marks.get(thing).unwrap_or_else(|| middle(ctx, ui));
    ui.open_menu(thing, at);
}

fn middle(ctx: &egui::Context, ui: &Ui) -> Pos2 {
    ui.scene.or(ui.tray.middle).unwrap_or_else(|| ctx.content_rect()).center()
}

/// Shows the pages that keys open, over everything else.
pub fn pages(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    find::show(ctx, shop, words, ui);
    if ui.pages.help {
        ui.pages.help = help::show(ctx, words);
    }
    if ui.pages.log {
        ui.pages.log = super::remarks::log(ctx, shop, words, ui.prefs.pressure);
    }
}

/// Turns the eye to where a thing is.
pub(super) fn look_at(shop: &Shop, ui: &mut Ui, thing: Thing) {
    if let Some(station) = hands::station_of(shop, thing) {
        ui.eye = station;
    }
}

#[cfg(test)]
mod tests;
