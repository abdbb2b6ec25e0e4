//! Keys that work everywhere in the workshop. Letters only while no field is written in and no menu is
//! open; the function keys of the time always.

mod find;
mod help;

use egui::{Key, Modifiers, Pos2};
use sim_core::action::{Action, Station};

use super::super::ask::{Ask, Pace};
use super::super::hands::{self, Form, Then, Thing};
use super::super::shop::Shop;
use super::super::state::{Menu, Middle, Ui};
use super::super::words::Words;
use super::menu::{dismiss_note, open_form, open_further};
use super::tray;

/// Stations in the order of their number keys.
pub const STATIONS: [Station; 5] =
    [Station::Desk, Station::Cab, Station::Bay, Station::Front, Station::Bench];

/// Keys of the pace, with the name that is shown beside it.
pub const PACES: [(Key, Pace); 4] =
    [(Key::F5, Pace::Hold), (Key::F6, Pace::Live), (Key::F7, Pace::Ten), (Key::F8, Pace::Sixty)];

/// Pages that a key opens over the workshop.
#[derive(Debug, Default)]
pub struct State {
    /// The list of things.
    find: Option<find::Find>,
    /// The page of keys.
    help: bool,
    /// The log of all remarks.
    log: bool,
}

impl State {
    /// Whether a page lies over the workshop.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.find.is_some() || self.help || self.log
    }

    /// Opens the list of things.
    pub fn open_find(&mut self) {
        self.find = Some(find::Find::default());
    }

    /// Opens the page of keys.
    pub fn open_help(&mut self) {
        self.help = true;
    }

    /// Opens the log.
    pub fn open_log(&mut self) {
        self.log = true;
    }
}

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
    if ctx.text_edit_focused() || ui.menu.is_some() || ui.pages.is_open() {
        return;
    }
    if pressed(Key::Escape) && !dismiss_note(ui) {
        ui.carrying = None;
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
    if pressed(Key::H) {
        let held = shop.pace() == Pace::Hold;
        ui.ask(Ask::Pace(if held { Pace::Live } else { Pace::Hold }));
    }
    let at = ui.tray.clock_at.unwrap_or_else(|| middle(ctx, ui));
    if pressed(Key::W) {
        open_with(ui, Thing::Clock, at, Form::Wait);
    }
    if pressed(Key::U) {
        open_further(ui, Thing::Clock, at, "offer-wait-until");
    }
    if pressed(Key::S) {
        open_further(ui, Thing::Clock, at, "offer-stopwatch");
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
        && let Some((card, id)) = tray::next_to_read(shop)
    {
        let thing = Thing::Instrument(card);
        let at = ui.tray.card_at(card).unwrap_or_else(|| middle(ctx, ui));
        super::menu::act(shop, ui, thing, at, Then::Do(Action::Read { instrument: id }));
    }
    for (key, thing) in [(Key::K, Thing::Key), (Key::E, Thing::Starter), (Key::P, Thing::Pedal)] {
        if pressed(key) {
            open_at(ctx, ui, thing);
        }
    }
}

/// Opens a form of a thing right away.
pub(super) fn open_with(ui: &mut Ui, thing: Thing, at: Pos2, form: Form) {
    ui.menu = Some(Menu { thing, at, form: Some(open_form(form)), fresh: true });
}

/// Opens the menu of a thing where it is seen, or in the middle when it is not in view.
pub fn open_at(ctx: &egui::Context, ui: &mut Ui, thing: Thing) {
    let at = ui.anchors.get(&thing).copied().unwrap_or_else(|| middle(ctx, ui));
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
        ui.pages.log = super::remarks::log(ctx, shop, words);
    }
}

/// A page over everything else, as high as it needs.
pub(super) fn page(id: &str, ctx: &egui::Context) -> egui::Modal {
    let id = egui::Id::new(id);
    let height = ctx.content_rect().height() - 60.0;
    egui::Modal::new(id).area(egui::Modal::default_area(id).default_height(height))
}

/// Turns the eye to where a thing is.
fn look_at(shop: &Shop, ui: &mut Ui, thing: Thing) {
    if let Some(station) = hands::station_of(shop, thing) {
        ui.eye = station;
    }
}

#[cfg(test)]
mod tests;
