//! The window: the workshop for eyes and hands. It drives the same session as the text bench: actions in,
//! view out. No simulation state lives here.
//!
//! `shop`, `hands`, `words`, `flow` know neither Bevy nor a renderer; `ui` is pure egui; `app`, `view3d`
//! and `shot` are Bevy.

mod app;
pub mod ask;
pub mod flow;
pub mod hands;
pub mod prefs;
pub mod probe;
pub mod shop;
pub(crate) mod shot;
pub mod state;
pub mod theme;
pub mod ui;
mod view3d;
pub mod words;

use anyhow::Context as _;

use crate::cli::Places;
use probe::NoWindow;

/// Opens the window on the front desk and returns when it is closed; `Err(Ok(why))` when there can be no
/// window here.
pub(crate) fn run(places: &Places) -> anyhow::Result<Result<(), NoWindow>> {
    let adapter = match probe::display().and_then(|()| probe::adapter()) {
        Ok(adapter) => adapter,
        Err(why) => return Ok(Err(why)),
    };
    let shop = shop::Shop::open(places)?;
    let prefs = prefs::Prefs::load();
    let words = words::Words::open(&crate::places::data(places)?, &prefs.languages())
        .context("the words of the window")?;
    app::run(shop, words, prefs, &adapter);
    Ok(Ok(()))
}
