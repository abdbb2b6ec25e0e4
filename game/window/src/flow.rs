//! What happens between two pictures: asks are carried out, time goes on, pages follow. Knows neither
//! Bevy nor a renderer, so a test can run the window frame by frame.

use assess::files::{Doing, refusal};

use super::shown::Page;
use super::state::Ui;
use super::ui::mark_sheet::state::{NotOpened, State as Sheet};
use front::ask::Ask;
use front::shop::Shop;

/// Shows a file with the program that the system has for it.
///
/// # Errors
/// There is no such file, or the system has no program for it.
fn show_file(path: &std::path::Path) -> Result<(), NotOpened> {
    if !path.is_file() {
        return Err(NotOpened::Missing);
    }
    open::that_detached(path).map_err(|e| NotOpened::System(refusal(&e, Doing::Read)))
}

/// Does what was asked for in the last frame and lets `real_s` seconds of the wall clock pass.
pub fn between_frames(shop: &mut Shop, ui: &mut Ui, real_s: f64) {
    if std::mem::take(&mut ui.save_prefs) {
        ui.settings.trouble = ui.prefs.save().err().map(|e| front::message::sentence(&e));
    }
    if let Some(path) = ui.open_file.take() {
        ui.mark_sheet.opened = Some(show_file(&path));
    }
    let asks = std::mem::take(&mut ui.asks);
    let opens = asks.iter().any(|a| matches!(a, Ask::Begin(_) | Ask::CarryOn(_)));
    let station = shop.view().map(|v| v.station);
    let was_back = shop.view().is_some_and(|v| v.handed_back);
    let eye = shop.eye_on();
    shop.carry_out(asks);
    // Whoever reads anew has put the pen down; what was half written is kept.
    if shop.eye_on() != eye && shop.eye_on().is_some_and(|n| ui.clipboard.writing() != Some(n)) {
        ui.clipboard.put_aside();
    }
    shop.write_down(ui.clipboard.writing());
    shop.advance(real_s);
    let Some(view) = shop.view() else {
        if matches!(ui.page, Page::Workshop | Page::MarkSheet) {
            ui.page = Page::FrontDesk;
        }
        return;
    };
    if opens {
        ui.page = if view.handed_back { Page::MarkSheet } else { Page::Workshop };
        ui.eye = view.station;
        ui.mark_sheet = Sheet::default();
        ui.menu = None;
        ui.carrying = None;
        return;
    }
    // The eye goes along when work walks.
    if station.is_some_and(|s| s != view.station) {
        ui.eye = view.station;
    }
    if view.handed_back && !was_back {
        ui.page = Page::MarkSheet;
        ui.carrying = None;
        ui.menu = None;
    }
}
