//! The panels, in pure egui: they read the shop, change only what the window remembers, and ask.
//!
//! One root `Ui` holds them all; what they leave of it is the room. Nothing here knows Bevy, so every
//! panel is tested without it.

pub mod clipboard;
pub mod diagram;
pub mod dial;
pub mod front_desk;
pub mod hotspots;
pub mod keys;
pub mod mark_sheet;
pub mod menu;
pub mod pad;
pub mod paper;
pub mod remarks;
mod room;
pub mod settings;
pub mod space;
pub mod standing;
#[cfg(test)]
pub(crate) mod tests;
pub mod top_bar;
pub mod tray;

use super::shown::{Middle, Page};
use super::state::Ui;
use front::shop::Shop;
use front::words::Words;

/// Draws everything but the room. Runs up to twice a frame; asks are only made in clicks.
pub fn draw(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    ui.hover = None;
    match ui.page {
        Page::FrontDesk => front_desk::show(root, shop, words, ui),
        Page::Settings => settings::show(root, shop, words, ui),
        Page::MarkSheet => mark_sheet::show(root, shop, words, ui),
        Page::Workshop => workshop(root, shop, words, ui),
    }
    if ui.page != Page::Workshop {
        ui.scene = None;
        ui.menu = None;
        ui.marks.clear();
    }
}

fn workshop(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    keys::listen(root.ctx(), shop, ui);
    top_bar::show(root, shop, words, ui);
    // Marks belong to what is drawn: the sheet writes its own anew, the room had better be the one meant.
    ui.marks.clear_sheet();
    ui.marks.keep_room((ui.middle != Middle::Diagram).then_some(ui.eye));
    standing::show(root, shop, words, ui);
    top_bar::after_hand_back(root, shop, words, ui);
    tray::time_row(root, shop, words, ui);
    clipboard::show(root, shop, words, ui);
    tray::show(root, shop, words, ui);
    match ui.middle {
        Middle::Room => {}
        Middle::Diagram => {
            egui::CentralPanel::no_frame().show(root, |inner| diagram::show(inner, shop, words, ui));
        }
        Middle::Both => {
            // The room gives way a little, so that the sheet need not be cut.
            let all = root.available_height();
            let most = if space::Space::of(root.ctx(), ui.middle).low { 0.66 } else { 0.6 };
            let lower = ui.diagram.needs.clamp(all * 0.5, all * most);
            egui::Panel::bottom("diagram-half")
                .exact_size(lower)
                .frame(egui::Frame::NONE)
                .show(root, |inner| diagram::show(inner, shop, words, ui));
        }
    }
    ui.scene = (ui.middle != Middle::Diagram).then(|| root.available_rect_before_wrap());
    if let Some(scene) = ui.scene {
        room::show(root, scene, words, ui);
        hotspots::show(root, shop, words, ui);
        room::say_how_placed(root, scene, words, ui);
    }
    tray::over_the_room(root, shop, ui);
    remarks::show(root, shop, words, ui);
    menu::show(root.ctx(), shop, words, ui);
    keys::pages(root.ctx(), shop, words, ui);
}
