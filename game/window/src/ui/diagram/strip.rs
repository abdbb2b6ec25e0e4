//! Over the board: which sheet, how large. Under it: what has no place in a circuit. And what is shown
//! when a car has no drawing.

use assess::diagram::Sheet;
use egui::{Button, RichText};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::State;
use super::camera::Shown;
use front::hands::Thing;
use front::shop::Shop;
use front::words::Words;

/// The bar over the board.
pub(super) fn bar(root: &mut egui::Ui, words: &Words, state: &mut State) {
    root.spacing_mut().item_spacing.x = 4.0;
    root.horizontal_centered(|row| {
        row.add_space(6.0);
        for (shown, key) in [
            (Shown::One(Sheet::Air), "diagram-sheet-air"),
            (Shown::One(Sheet::Wiring), "diagram-sheet-wiring"),
            (Shown::Both, "diagram-sheet-both"),
        ] {
            let chosen = state.shown.is(shown, state.laid);
            if row.add(Button::new(words.say(key)).selected(chosen)).clicked() {
                state.shown = shown;
                state.camera.moved = false;
            }
        }
        row.add_space(8.0);
        let centre = row.clip_rect().center();
        let canvas = row.clip_rect();
        for (sign, key, by) in [("−", "diagram-smaller", 0.8), ("+", "diagram-larger", 1.25)] {
            let button = row.add(Button::new(sign).min_size(egui::vec2(theme::TARGET, theme::TARGET)));
            let name = words.say(key);
            button.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
            if button.on_hover_text(name).clicked() {
                state.camera.magnify(by, centre, canvas);
            }
        }
        if row.button(words.say("diagram-fit")).clicked() {
            state.camera.moved = false;
        }
        if row.add(Button::new(words.say("diagram-legend")).selected(state.legend)).clicked() {
            state.legend = !state.legend;
        }
        state.bar_free = row.min_rect().right() + 12.0;
    });
}

/// The strip under the board: covers, chocks, extraction, the car, the desk's papers.
pub(super) fn foot(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    root.spacing_mut().item_spacing.x = 4.0;
    egui::ScrollArea::horizontal().id_salt("diagram-foot").show(root, |root| {
        root.spacing_mut().item_spacing.y = 2.0;
        root.add_space(1.0);
        root.horizontal(|row| {
            row.add_space(6.0);
            for (i, cover) in car.covers.iter().enumerate() {
                let thing = Thing::Cover(i as u16);
                let off = view.covers_off.contains(&cover.id);
                let key = if off { "diagram-cover-off" } else { "diagram-cover-on" };
                let full = words.name(shop, thing);
                // As the sheet writes it: the strip has many things to name.
                let short = words.say_or(&format!("{}-short-{}", car.id, cover.id), &full);
                let said = |cover: String| words.say_with(key, &[("cover", cover.into())]);
                called(row, thing, &said(short), &said(full), ui);
            }
            let key = if view.chocked { "diagram-chocks-set" } else { "diagram-chocks-away" };
            let text = words.say_with(key, &[("chocks", words.name(shop, Thing::Chocks).into())]);
            loose(row, Thing::Chocks, &text, ui);
            let key = if view.extracted { "diagram-extraction-on" } else { "diagram-extraction-off" };
            let text = words.say_with(key, &[("extraction", words.name(shop, Thing::Extraction).into())]);
            loose(row, Thing::Extraction, &text, ui);
            for thing in [Thing::Car, Thing::JobCard, Thing::DataSheet] {
                loose(row, thing, &words.name(shop, thing), ui);
            }
        });
        // The bar that scrolls the strip lies under its buttons.
        root.add_space(super::FOOT_BAR);
    });
}

fn loose(row: &mut egui::Ui, thing: Thing, text: &str, ui: &mut Ui) {
    called(row, thing, text, text, ui);
}

/// A thing as a button, with its whole name for whoever hovers or listens.
fn called(row: &mut egui::Ui, thing: Thing, text: &str, name: &str, ui: &mut Ui) {
    let mut response = row.add(Button::new(RichText::new(text).small()));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, name));
    if text != name {
        response = response.on_hover_text(name);
    }
    if response.hovered() || response.has_focus() {
        ui.hover = Some(thing);
    }
    if response.clicked() {
        ui.open_menu(thing, response.rect.left_top());
    }
    ui.marks.put_on_sheet(thing, response.rect.center());
}

/// A car without a drawing can still be worked on: why, and every part by name.
pub(super) fn without(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, why: &str) {
    let Some(car) = shop.car() else { return };
    egui::ScrollArea::vertical().show(root, |root| {
        root.colored_label(theme::ON_BENCH, words.say("diagram-none"));
        root.colored_label(theme::ON_BENCH_FAINT, why);
        root.horizontal_wrapped(|row| {
            for thing in [Thing::Key, Thing::Starter, Thing::Pedal] {
                loose(row, thing, &words.name(shop, thing), ui);
            }
            for i in 0..car.assembly.parts.len() {
                let thing = Thing::Part(i as u16);
                loose(row, thing, &words.name(shop, thing), ui);
            }
        });
    });
}
