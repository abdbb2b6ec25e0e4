//! The window: the workshop for eyes and hands. It drives the same session as the text bench: actions in,
//! view out. No simulation state lives here.
//!
//! `flow` knows neither Bevy nor a renderer; `ui` is pure egui; `app`, `view3d` and `shot` are Bevy.

#![expect(
    clippy::too_many_arguments,
    clippy::type_complexity,
    reason = "Bevy's systems take what they need as arguments, and say it in types"
)]

mod app;
pub mod args;
pub mod bench;
pub mod flow;
mod idle;
mod in_turn;
mod input;
mod lean;
mod leave;
mod letters;
pub mod marks;
pub mod probe;
mod renderer;
mod resources;
pub mod shot;
pub mod shown;
#[cfg(test)]
pub(crate) mod stage;
pub mod state;
pub mod theme;
pub mod tree;
pub mod ui;
mod view3d;

use anyhow::bail;
use assess::sentence;

use args::WindowArgs;
use front::message::because;
use front::output::{Kind, Outputs};
use front::places::Places;
use probe::NoWindow;

/// Opens the window, on the front desk or in a job, and returns when it is closed; `Ok(Err(why))` when
/// there can be no window here.
///
/// # Errors
/// The data, the words or the attempt cannot be used.
pub fn run(places: &Places, args: &WindowArgs) -> anyhow::Result<Result<(), NoWindow>> {
    let adapter = match probe::display().and_then(|()| probe::adapter()) {
        Ok(adapter) => adapter,
        Err(why) => return Ok(Err(why)),
    };
    if let Some(tree) = &args.tree {
        // Asked once; it is written anew with every change.
        drop(Outputs::beside(&args.attempt).plan("--tree", tree, Kind::Tree)?);
    }
    let mut shop = front::shop::Shop::open(places)?;
    let prefs = front::prefs::Prefs::load();
    let wanted = prefs.languages_or(args.lang.as_deref());
    let words = front::words::Words::open(&front::places::data(places)?, &wanted)
        .map_err(because(sentence!("window-words", "the words of the window")))?;
    shop.speak(&[words.tag().to_owned()]);
    let mut ui = state::Ui { prefs, ..Default::default() };
    match (&args.job, &args.attempt) {
        (_, Some(file)) if file.exists() => shop.carry_on(file)?,
        (Some(job), file) => shop.begin(job, file.as_deref(), args.seed)?,
        (None, Some(file)) => {
            let file = assess::locale::quote::path(file);
            bail!(sentence!("window-no-attempt", "{file}: there is no such attempt to carry on", file = file))
        }
        (None, None) => {}
    }
    if let Some(view) = shop.view() {
        ui.page = if view.handed_back { shown::Page::MarkSheet } else { shown::Page::Workshop };
        ui.eye = view.station;
    }
    app::run(shop, words, ui, &adapter, args.tree.as_deref());
    Ok(Ok(()))
}
