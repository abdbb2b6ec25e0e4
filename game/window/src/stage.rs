//! A workshop for tests: a job rehearsed without a file, the panels without Bevy, keys and clicks as a
//! person makes them.

use egui::{Key, Vec2};
use egui_kittest::Harness;

use super::flow::between_frames;
use super::shown::Page;
use super::state::Ui;
use super::{theme, ui};
use front::ask::Ask;
use front::places::Places;
use front::shop::Shop;
use front::words::Words;

/// The job every test works on unless it says otherwise.
const JOB: &str = "first-shift/hum-at-the-lights";

/// Shop, words and panels of a test.
pub(crate) struct Stage {
    pub(crate) shop: Shop,
    pub(crate) words: Words,
    pub(crate) ui: Ui,
    /// Everything that was asked for so far, in order.
    pub(crate) asked: Vec<Ask>,
}

/// A shop with the job open and these words done.
pub(crate) fn shop(script: &str) -> Shop {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let attempts = std::env::temp_dir().join("pinhole-stage");
    let places = Places { data: Some(root), attempts: Some(attempts) };
    let mut shop = Shop::open(&places).unwrap();
    shop.rehearse(JOB, "1".parse().unwrap()).unwrap();
    shop.play(script).unwrap();
    shop
}

/// The words of a language.
pub(crate) fn words(tag: &str) -> Words {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    Words::open(&root, &[tag.to_owned()]).unwrap()
}

/// The workshop's panels at `size`, with these words done.
pub(crate) fn panels(script: &str, size: Vec2) -> Harness<'static, Stage> {
    // Nothing glides or fades: a test sees the end of it.
    let prefs = front::prefs::Prefs { reduced_motion: true, ..Default::default() };
    let ui = Ui { page: Page::Workshop, prefs, ..Ui::default() };
    let stage = Stage { shop: shop(script), words: words("en"), ui, asked: Vec::new() };
    let mut themed = false;
    let mut harness = Harness::builder().with_size(size).build_ui_state(
        move |root: &mut egui::Ui, stage: &mut Stage| {
            if !themed {
                theme::apply(root.ctx(), 1.0);
                themed = true;
            }
            stage.asked.extend(stage.ui.asks.iter().cloned());
            between_frames(&mut stage.shop, &mut stage.ui, 0.0);
            ui::draw(root, &stage.shop, &stage.words, &mut stage.ui);
        },
        stage,
    );
    harness.run_steps(4);
    harness
}

/// Presses keys one after the other.
pub(crate) fn press(harness: &mut Harness<'static, Stage>, keys: &[Key]) {
    for key in keys {
        harness.key_press(*key);
        harness.run_steps(3);
    }
}

/// Types text into what has the focus.
pub(crate) fn type_text(harness: &mut Harness<'static, Stage>, text: &str) {
    harness.event(egui::Event::Text(text.to_owned()));
    harness.run_steps(3);
}
