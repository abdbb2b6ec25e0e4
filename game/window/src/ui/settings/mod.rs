//! Settings: language, unit, size, picture, motion. They take effect at once and are kept in a file.

pub mod state;

use egui::{Frame, Key, Margin, Modifiers, RichText};

use super::super::shown::Page;
use super::super::state::Ui;
use super::super::theme;
use super::paper;
use front::prefs::{PressureUnit, Quality, SCALES};
use front::shop::Shop;
use front::words::Words;

/// Steps of the size of everything.
const STEPS: [f32; 5] = [1.0, 1.25, 1.5, 1.75, 2.0];

/// From this width on the groups stand in two columns.
const TWO_COLUMNS: f32 = 820.0;
/// Widest the groups get, points.
const WIDTH: f32 = 1_100.0;

/// Between the columns, points.
const BETWEEN: f32 = 48.0;

/// Shows it.
pub fn show(root: &mut egui::Ui, _shop: &Shop, words: &Words, ui: &mut Ui) {
    let focus = paper::entered(root.ctx(), Page::Settings);
    let before = ui.prefs.clone();
    let frame = Frame::new().fill(theme::PAPER).inner_margin(Margin::symmetric(24, 16));
    egui::CentralPanel::no_frame().frame(frame).show(root, |page| {
        page.horizontal(|row| {
            let back = row.add(paper::main_button(words.say("settings-back")));
            if focus {
                back.request_focus();
            }
            if back.clicked() || row.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape)) {
                ui.page = ui.back_to;
            }
            row.label(RichText::new(words.say("settings-title")).size(24.0));
        });
        paper::rule(page);
        egui::ScrollArea::vertical().auto_shrink(false).show(page, |page| {
            if let Some(why) = &ui.settings.trouble {
                paper::trouble(page, &words.say("settings-trouble"), &words.sentence(why));
            }
            body(page, words, ui);
        });
    });
    if ui.prefs != before {
        ui.save_prefs = true;
        ui.reload_words |= ui.prefs.language != before.language;
    }
}

fn body(page: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    if page.available_width() < TWO_COLUMNS {
        what_is_said(page, words, ui);
        how_it_looks(page, words, ui);
        return;
    }
    page.set_max_width(WIDTH);
    // The columns have the spacing of what stands in a row; theirs is wider.
    let spacing = std::mem::replace(&mut page.spacing_mut().item_spacing.x, BETWEEN);
    page.columns(2, |columns| {
        for column in columns.iter_mut() {
            column.spacing_mut().item_spacing.x = spacing;
        }
        if let [left, right] = columns {
            what_is_said(left, words, ui);
            how_it_looks(right, words, ui);
        }
    });
}

fn what_is_said(page: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let prefs = &mut ui.prefs;
    group(page, words, "settings-language", None, |row| {
        pick(row, &mut prefs.language, String::new(), &words.say("settings-language-system"));
        for (tag, name) in words.tags().iter().zip(words.own_names()) {
            pick(row, &mut prefs.language, tag.clone(), name);
        }
    });
    group(page, words, "settings-pressure", Some("settings-pressure-why"), |row| {
        for unit in PressureUnit::ALL {
            pick(row, &mut prefs.pressure, unit, unit.symbol());
        }
    });
    group(page, words, "settings-motion", Some("settings-motion-why"), |row| {
        for (reduced, key) in [(false, "settings-motion-full"), (true, "settings-motion-less")] {
            pick(row, &mut prefs.reduced_motion, reduced, &words.say(key));
        }
    });
}

fn how_it_looks(page: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let prefs = &mut ui.prefs;
    group(page, words, "settings-size", Some("settings-size-why"), |row| {
        for step in STEPS.into_iter().filter(|s| SCALES.contains(s)) {
            let here = (prefs.scale - step).abs() < 0.01;
            let text = format!("{} %", words.number(f64::from(step) * 100.0, 0));
            if row.add(paper::choice(here, text)).clicked() {
                prefs.scale = step;
            }
        }
    });
    group(page, words, "settings-quality", Some("settings-quality-why"), |row| {
        for (quality, key) in [
            (Quality::Auto, "settings-quality-auto"),
            (Quality::Low, "settings-quality-low"),
            (Quality::High, "settings-quality-high"),
        ] {
            pick(row, &mut prefs.quality, quality, &words.say(key));
        }
    });
}

fn pick<T: PartialEq>(row: &mut egui::Ui, value: &mut T, choice: T, text: &str) {
    if row.add(paper::choice(*value == choice, text)).clicked() {
        *value = choice;
    }
}

/// A setting: its name, what it is for, its choices in a row.
fn group(
    page: &mut egui::Ui,
    words: &Words,
    title: &str,
    why: Option<&str>,
    choices: impl FnOnce(&mut egui::Ui),
) {
    page.add_space(6.0);
    paper::small_heading(page, words.say(title));
    if let Some(why) = why {
        // A column is set justified; a sentence is not.
        page.vertical(|text| paper::faint(text, words.say(why)));
    }
    page.horizontal_wrapped(choices);
}
