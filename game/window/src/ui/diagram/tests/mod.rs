//! The diagram of every car, measured; and worked with, by label, by mouse and by keyboard.

mod drawing;
mod hands;

use egui_kittest::Harness;

use super::camera::Shown;
use crate::flow::between_frames;
use crate::shown::{Middle, Page};
use crate::state::Ui;
use crate::{theme, ui};
use front::places::Places;
use front::shop::Shop;
use front::words::Words;

/// What a test drives.
pub(super) struct Window {
    pub(super) shop: Shop,
    pub(super) ui: Ui,
    pub(super) words: Words,
    styled: bool,
}

fn root() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A job open on the diagram, nothing done yet.
pub(super) fn window(lang: &str) -> Window {
    let places = Places { data: Some(root()), attempts: Some(std::env::temp_dir()) };
    let mut shop = Shop::open(&places).unwrap();
    let job = shop.packs().iter().find_map(|p| p.jobs.as_ref().ok()?.first().cloned()).unwrap();
    shop.rehearse(&job.name, "1".parse().unwrap()).unwrap();
    let mut ui = Ui { page: Page::Workshop, middle: Middle::Diagram, ..Ui::default() };
    ui.diagram.shown = Shown::Both;
    let words = Words::open(&root(), &[lang.to_owned()]).unwrap();
    Window { shop, ui, words, styled: false }
}

/// The window, frame by frame.
pub(super) fn harness(window: Window, size: (f32, f32)) -> Harness<'static, Window> {
    Harness::builder().with_size(egui::vec2(size.0, size.1)).build_ui_state(
        |root, w: &mut Window| {
            if !w.styled {
                theme::apply(root.ctx(), 1.0);
                w.styled = true;
            }
            between_frames(&mut w.shop, &mut w.ui, 0.0);
            ui::draw(root, &w.shop, &w.words, &mut w.ui);
        },
        window,
    )
}
