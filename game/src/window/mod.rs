//! The window: the workshop for eyes and hands. It drives the same session as the text bench: actions in,
//! view out. No simulation state lives here.
//!
//! `shop`, `hands`, `words`, `flow` know neither Bevy nor a renderer; `ui` is pure egui; `app`, `view3d`
//! and `shot` are Bevy.

mod app;
pub mod ask;
pub(crate) mod bench;
pub mod deed;
pub mod flow;
pub mod hands;
pub mod held;
mod idle;
mod in_turn;
mod lean;
mod leave;
mod letters;
pub mod marks;
#[cfg(test)]
mod outputs;
pub mod prefs;
pub mod probe;
mod renderer;
pub mod shop;
pub(crate) mod shot;
#[cfg(test)]
pub(crate) mod stage;
pub mod state;
pub mod theme;
pub mod tree;
pub mod ui;
mod view3d;
pub mod words;

use anyhow::{Context as _, bail};

use crate::cli::{Places, WindowArgs};
use crate::output::{Kind, Outputs};
use probe::NoWindow;

/// Opens the window, on the front desk or in a job, and returns when it is closed; `Ok(Err(why))` when
/// there can be no window here.
pub(crate) fn run(places: &Places, args: &WindowArgs) -> anyhow::Result<Result<(), NoWindow>> {
    let adapter = match probe::display().and_then(|()| probe::adapter()) {
        Ok(adapter) => adapter,
        Err(why) => return Ok(Err(why)),
    };
    if let Some(tree) = &args.tree {
        // Asked once; it is written anew with every change.
        drop(Outputs::beside(&args.attempt).plan("--tree", tree, Kind::Tree)?);
    }
    let mut shop = shop::Shop::open(places)?;
    let prefs = prefs::Prefs::load();
    let words = words::Words::open(&crate::places::data(places)?, &prefs.languages())
        .context("the words of the window")?;
    let mut ui = state::Ui { prefs, ..Default::default() };
    match (&args.job, &args.attempt) {
        (_, Some(file)) if file.exists() => shop.carry_on(file)?,
        (Some(job), file) => shop.begin(job, file.as_deref(), args.seed)?,
        (None, Some(file)) => bail!("{}: there is no such attempt to carry on", assess::quote::path(file)),
        (None, None) => {}
    }
    if let Some(view) = shop.view() {
        ui.page = if view.handed_back { state::Page::MarkSheet } else { state::Page::Workshop };
        ui.eye = view.station;
    }
    app::run(shop, words, ui, &adapter, args.tree.as_deref());
    Ok(Ok(()))
}
