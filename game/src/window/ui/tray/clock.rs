//! Time in the workshop: its clock, how fast it runs, waiting, timing, the night.

use egui::{RichText, WidgetInfo, WidgetType};

use super::super::super::ask::{Ask, Pace};
use super::super::super::hands::{Form, Thing};
use super::super::super::shop::Shop;
use super::super::super::state::{Menu, Ui};
use super::super::super::theme;
use super::super::super::words::Words;
use super::super::keys::PACES;
use super::super::menu::{open_form, open_further};
use super::super::remarks;
use super::on_bench;

/// Width of the column, points.
const WIDTH: f32 = 204.0;

/// Key of a pace's name.
fn pace_key(pace: Pace) -> &'static str {
    match pace {
        Pace::Hold => "pace-hold",
        Pace::Live => "pace-live",
        Pace::Ten => "pace-ten",
        Pace::Sixty => "pace-sixty",
    }
}

/// Shows the column.
pub(super) fn show(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    let height = row.available_height();
    let layout = egui::Layout::top_down(egui::Align::LEFT);
    row.allocate_ui_with_layout(egui::vec2(WIDTH, height), layout, |column| {
        column.set_width(WIDTH);
        egui::ScrollArea::vertical().id_salt("time").auto_shrink([false, false]).show(column, |column| {
            column.spacing_mut().item_spacing = egui::vec2(5.0, 5.0);
            let time = remarks::clock(view.tick);
            let text = RichText::new(&time).monospace().size(26.0).color(theme::ON_BENCH);
            let label = column.label(text);
            let spoken = words.say_with("clock-name", &[("time", time.into())]);
            label.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, &spoken));
            ui.tray.clock_at = Some(label.rect.right_center());
            let minutes = |m: f64| m.floor().to_string();
            let values = [
                ("worked", minutes(view.attended_min).into()),
                ("waited", minutes(view.unattended_min).into()),
            ];
            let (spent, ink) = match shop.held() {
                Some(n) => (words.say_with("clock-held", &[("n", n.into())]), theme::ACCENT_ON_DARK),
                None => (words.say_with("clock-spent", &values), theme::ON_BENCH_FAINT),
            };
            column.add(egui::Label::new(RichText::new(spent).small().color(ink)).truncate());
            pace_ui(column, shop, words, ui);
            waits_ui(column, words, ui);
        });
    });
}

fn pace_ui(column: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    column.horizontal(|row| {
        for (key, pace) in PACES {
            let text = words.say(pace_key(pace));
            let tip = words.say_with("tip-pace", &[("key", key.name().into())]);
            let spoken = words.say_with("pace-name", &[("pace", text.clone().into())]);
            let chosen = shop.pace() == pace;
            let response = on_bench(row, chosen, text).on_hover_text(tip);
            response.widget_info(|| WidgetInfo::selected(WidgetType::RadioButton, true, chosen, &spoken));
            if response.clicked() {
                ui.ask(Ask::Pace(pace));
            }
        }
    });
}

fn waits_ui(column: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let form = |ui: &mut Ui, at, form| {
        let neutral = form == Form::Overnight;
        ui.menu = Some(Menu { thing: Thing::Clock, at, form: Some(open_form(form)), fresh: true, neutral });
    };
    column.horizontal(|row| {
        let wait = row.button(words.say("time-wait")).on_hover_text(words.say("tip-wait"));
        if wait.clicked() {
            form(ui, wait.rect.right_center(), Form::Wait);
        }
        let until = row.button(words.say("time-until")).on_hover_text(words.say("tip-until"));
        if until.clicked() {
            open_further(ui, Thing::Clock, until.rect.right_center(), "offer-wait-until");
        }
    });
    column.horizontal(|row| {
        let watch = row.button(words.say("time-watch")).on_hover_text(words.say("tip-watch"));
        if watch.clicked() {
            open_further(ui, Thing::Clock, watch.rect.right_center(), "offer-stopwatch");
        }
        let night = row.button(words.say("time-overnight")).on_hover_text(words.say("tip-overnight"));
        if night.clicked() {
            form(ui, night.rect.right_center(), Form::Overnight);
        }
    });
    let help = column.button(words.say("time-help")).on_hover_text(words.say("tip-help"));
    if help.clicked() {
        ui.pages.open_help();
    }
}
