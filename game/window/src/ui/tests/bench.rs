//! What every test of a panel needs: a shop with attempts in a folder of its own, words, a harness.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use assess::attempt::Seed;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use egui_kittest::{Harness, Node};

use crate::flow::between_frames;
use crate::shown::Page;
use crate::state::Ui;
use crate::{theme, ui};
use front::places::Places;
use front::shop::Shop;
use front::words::Words;

/// The job that tests work on.
pub(crate) const JOB: &str = "first-shift/hum-at-the-lights";

/// A folder that goes when the test ends.
#[derive(Debug)]
pub(crate) struct Folder(pub(crate) PathBuf);

impl Folder {
    fn new() -> Self {
        static N: AtomicU32 = AtomicU32::new(0);
        let n = N.fetch_add(1, Ordering::Relaxed);
        let path = std::env::temp_dir().join(format!("pinhole-panels-{}-{n}", std::process::id()));
        std::fs::create_dir_all(&path).unwrap();
        Self(path)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        drop(std::fs::remove_dir_all(&self.0));
    }
}

fn places(attempts: &Path) -> Places {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    Places { data: Some(root), attempts: Some(attempts.to_owned()) }
}

/// A shop with a rehearsal of `job`.
pub(crate) fn shop(job: &str) -> Shop {
    let folder = Folder::new();
    let mut shop = Shop::open(&places(&folder.0)).unwrap();
    shop.rehearse(job, Seed(1)).unwrap();
    shop
}

/// A window without Bevy.
#[derive(Debug)]
pub(crate) struct Bench {
    pub(crate) shop: Shop,
    pub(crate) words: Words,
    pub(crate) ui: Ui,
    styled: Option<f32>,
    _folder: Folder,
}

impl Bench {
    /// Where its attempts are.
    pub(crate) fn folder(&self) -> &Path {
        &self._folder.0
    }
}

/// A window on `page`, in a language, with a rehearsal of [`JOB`] unless it is the front desk.
pub(crate) fn window(page: Page, lang: &str) -> Harness<'static, Bench> {
    window_with(page, lang, (1280.0, 720.0), |_| {})
}

/// The same, of a size, after `set_up`.
pub(crate) fn window_with(
    page: Page,
    lang: &str,
    size: (f32, f32),
    set_up: impl FnOnce(&mut Bench),
) -> Harness<'static, Bench> {
    let folder = Folder::new();
    let mut shop = Shop::open(&places(&folder.0)).unwrap();
    if page != Page::FrontDesk {
        shop.rehearse(JOB, Seed(1)).unwrap();
    }
    let words = Words::open(shop.root(), &[lang.to_owned()]).unwrap();
    assert_eq!(words.tag(), lang);
    let ui = Ui { page, ..Ui::default() };
    let mut bench = Bench { shop, words, ui, styled: None, _folder: folder };
    set_up(&mut bench);
    let mut harness = Harness::builder().with_size(size).build_ui_state(
        |root, bench: &mut Bench| {
            let scale = bench.ui.prefs.scale;
            if bench.styled.replace(scale) != Some(scale) {
                theme::apply(root.ctx(), scale);
            }
            ui::draw(root, &bench.shop, &bench.words, &mut bench.ui);
        },
        bench,
    );
    harness.run_steps(3);
    harness
}

/// The same in a window of so many pixels, with everything shown `scale` times as large.
pub(crate) fn window_scaled(
    page: Page,
    lang: &str,
    (wide, high): (f32, f32),
    scale: f32,
    set_up: impl FnOnce(&mut Bench),
) -> Harness<'static, Bench> {
    let points = egui::vec2(wide / scale, high / scale);
    let mut harness = window_with(page, lang, (points.x, points.y), |bench| {
        bench.ui.prefs.scale = scale;
        set_up(bench);
    });
    harness.set_size(points);
    harness.run_steps(4);
    let got = harness.ctx.content_rect().size();
    assert!((got - points).length() < 1.0, "{got} instead of {points}");
    harness
}

/// What was asked for is done, and the picture drawn again.
pub(crate) fn carry_out(window: &mut Harness<'_, Bench>) {
    window.run_steps(3);
    let bench = window.state_mut();
    // Nobody's own settings are touched by a test.
    bench.ui.save_prefs = false;
    between_frames(&mut bench.shop, &mut bench.ui, 0.0);
    window.run_steps(3);
}

/// Clicks what is called `label`, as a person does who hears or reads it.
pub(crate) fn click(window: &mut Harness<'_, Bench>, label: &str) {
    let node = window.get_all_by_label(label).last().unwrap();
    node.scroll_to_me();
    // Scrolling glides.
    window.run_steps(10);
    window.get_all_by_label(label).last().unwrap().click();
    carry_out(window);
}

/// Clicks what the words of `key` call.
pub(crate) fn press(window: &mut Harness<'_, Bench>, key: &str) {
    let label = window.state().words.say(key);
    click(window, &label);
}

/// Every node of the accessible tree that a person can come to.
pub(crate) fn nodes<'a>(window: &'a Harness<'_, Bench>) -> Vec<Node<'a>> {
    window.root().children_recursive().collect()
}

/// The accessible tree as text: role, name, value, place.
pub(crate) fn tree(window: &Harness<'_, Bench>) -> Vec<String> {
    nodes(window)
        .iter()
        .map(|n| {
            let node = n.accesskit_node();
            let (role, label, value) = (node.role(), node.label(), node.value());
            format!("{role:?} {label:?} {value:?} {:?}", n.raw_bounds_or_none())
        })
        .collect()
}

trait Bounds {
    fn raw_bounds_or_none(&self) -> Option<String>;
}

impl Bounds for Node<'_> {
    fn raw_bounds_or_none(&self) -> Option<String> {
        let b = self.accesskit_node().raw_bounds()?;
        Some(format!("{:.0} {:.0} {:.0} {:.0}", b.x0, b.y0, b.x1, b.y1))
    }
}
