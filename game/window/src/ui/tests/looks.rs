//! Contrast and sizes, computed: WCAG 2.2 AA, text 4.5 : 1, graphics 3 : 1, targets 24 px.

use egui::Color32;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT as _;

use super::bench::{nodes, window_with};
use crate::shown::Page;
use crate::theme;
use crate::ui::clipboard::Leaf;

/// Least size of a target, points.
const TARGET: f64 = 24.0;

/// Relative luminance and contrast as WCAG 2.2 defines them (from memory).
fn contrast(a: Color32, b: Color32) -> f64 {
    let luminance = |c: Color32| {
        let linear = [c.r(), c.g(), c.b()].map(|v| {
            let v = f64::from(v) / 255.0;
            if v <= 0.04045 { v / 12.92 } else { ((v + 0.055) / 1.055).powf(2.4) }
        });
        0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    };
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn inv_text_is_legible_on_every_ground_it_stands_on() {
    assert!((contrast(Color32::WHITE, Color32::BLACK) - 21.0).abs() < 1e-9);
    let paper = [theme::PAPER, theme::FIELD];
    let inks = [
        ("ink", theme::INK),
        ("faint ink", theme::INK_FAINT),
        ("pen", theme::PEN),
        ("accent", theme::ACCENT),
        ("refused", theme::REFUSED),
        ("breach", theme::BREACH),
    ];
    let mut pairs: Vec<(&str, Color32, Color32)> = Vec::new();
    for (name, ink) in inks {
        pairs.extend(paper.map(|ground| (name, ink, ground)));
    }
    pairs.extend([
        ("ink on a caution", theme::INK, theme::CAUTION),
        ("ink on a share", theme::INK, theme::SHARE),
        ("on the bench", theme::ON_BENCH, theme::BENCH),
        ("faint on the bench", theme::ON_BENCH_FAINT, theme::BENCH),
        ("accent on the bench", theme::ACCENT_ON_DARK, theme::BENCH),
        ("a tab on the board", theme::ON_BENCH, theme::BOARD),
        ("the main button", theme::PAPER, theme::ACCENT),
    ]);
    for (name, ink, ground) in pairs {
        let c = contrast(ink, ground);
        assert!(4.5 <= c, "{name} on {ground:?}: {c:.2}");
    }
}

#[test]
fn inv_lines_and_marks_can_be_seen() {
    let graphics = [
        ("rule on paper", theme::RULE, theme::PAPER),
        ("clip on the board", theme::STEEL, theme::BOARD),
        ("first line of a plot", theme::SERIES[0], theme::FIELD),
        ("second line of a plot", theme::SERIES[1], theme::FIELD),
        ("third line of a plot", theme::SERIES[2], theme::FIELD),
        ("fourth line of a plot", theme::SERIES[5], theme::FIELD),
    ];
    for (name, a, b) in graphics {
        let c = contrast(a, b);
        assert!(3.0 <= c, "{name}: {c:.2}");
    }
}

#[test]
fn inv_every_target_is_large_enough_and_named() {
    let pages = [
        (Page::FrontDesk, None),
        (Page::Settings, None),
        (Page::MarkSheet, None),
        (Page::Workshop, Some(Leaf::Card)),
        (Page::Workshop, Some(Leaf::Sheet)),
        (Page::Workshop, Some(Leaf::Notebook)),
        (Page::Workshop, Some(Leaf::Suspicions)),
        (Page::Workshop, Some(Leaf::Finding)),
    ];
    for lang in ["en", "de"] {
        for size in [(1280.0, 720.0), (640.0, 360.0)] {
            for (page, leaf) in pages {
                let window = window_with(page, lang, size, |bench| {
                    if let Some(leaf) = leaf {
                        bench.shop.play("read barometer\nhum").unwrap();
                        bench.ui.clipboard.show_leaf(leaf, &bench.shop);
                    }
                });
                let mut seen = 0;
                for node in nodes(&window) {
                    let n = node.accesskit_node();
                    let target = matches!(
                        n.role(),
                        Role::Button
                            | Role::CheckBox
                            | Role::RadioButton
                            | Role::ComboBox
                            | Role::TextInput
                            | Role::MultilineTextInput
                    );
                    if !target {
                        continue;
                    }
                    seen += 1;
                    let name = n.label().or_else(|| n.value()).unwrap_or_default();
                    assert!(
                        !name.trim().is_empty(),
                        "{page:?} {leaf:?} {lang}: a {:?} without a name",
                        n.role()
                    );
                    let b = n.raw_bounds().unwrap();
                    assert!(
                        TARGET <= b.height() + 0.01 && TARGET <= b.width() + 0.01,
                        "{page:?} {leaf:?} {lang} {size:?}: {name:?} is {:.1} × {:.1}",
                        b.width(),
                        b.height()
                    );
                }
                assert!(0 < seen, "{page:?} has nothing to do");
            }
        }
    }
}

#[test]
fn inv_every_sign_that_is_written_has_a_shape() {
    fn texts(folder: &std::path::Path, out: &mut String) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                texts(&path, out);
            } else if path.extension().is_some_and(|x| x == "rs" || x == "ftl" || x == "ron") {
                for line in std::fs::read_to_string(&path).unwrap().lines() {
                    if !line.trim_start().starts_with("//") {
                        out.push_str(line);
                    }
                }
            }
        }
    }
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut all = String::new();
    for folder in [
        "assets/locales",
        "assets/vehicles",
        "assets/instruments",
        "scenarios",
        "game/front/src/hands",
        "game/front/src/shop",
        "game/front/src/words",
        "game/window/src",
    ] {
        texts(&root.join(folder), &mut all);
    }
    let signs: std::collections::BTreeSet<char> = all.chars().filter(|c| !c.is_ascii()).collect();
    assert!(signs.contains(&'▲') && signs.contains(&'ß'));
    let window = window_with(Page::FrontDesk, "en", (1280.0, 720.0), |_| {});
    // Where a sign's picture lies; all signs that no font has share the one that stands for them.
    let picture = |c: char| {
        let font = egui::FontId::proportional(14.0);
        let galley = window.ctx.fonts_mut(|f| f.layout_no_wrap(c.to_string(), font, Color32::BLACK));
        galley.rows[0].row.glyphs[0].uv_rect
    };
    let nothing = picture('\u{10FFFD}');
    let lacking: Vec<char> = signs.into_iter().filter(|c| picture(*c) == nothing).collect();
    assert!(lacking.is_empty(), "no font has {lacking:?}");
}
