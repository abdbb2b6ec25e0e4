//! Keys that work everywhere in the workshop. Letters only while no field is written in.

use egui::{Key, Modifiers};
use sim_core::action::Station;

use super::super::ask::{Ask, Pace};
use super::super::shop::Shop;
use super::super::state::{Middle, Ui};

/// Stations in the order of their number keys.
pub const STATIONS: [Station; 5] =
    [Station::Desk, Station::Cab, Station::Bay, Station::Front, Station::Bench];

/// Listens to the keys.
pub fn listen(ctx: &egui::Context, shop: &Shop, ui: &mut Ui) {
    if ctx.text_edit_focused() {
        return;
    }
    let pressed = |key| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, key));
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
    if pressed(Key::H) {
        let held = shop.pace() == Pace::Hold;
        ui.ask(Ask::Pace(if held { Pace::Live } else { Pace::Hold }));
    }
}
