//! Time in the workshop: its clock, how fast it runs, waiting, timing, the night.

use egui::{RichText, WidgetInfo, WidgetType};

use super::super::super::state::{Menu, Ui};
use super::super::super::theme;
use super::super::keys::paces::PACES;
use super::super::menu::{open_form, open_further};
use super::super::remarks;
use super::on_bench;
use front::ask::{Ask, Pace};
use front::hands::{Form, Thing};
use front::shop::Shop;
use front::words::Words;

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

/// The same in a row, for a low window: clock, paces, and a menu of what takes time.
pub(super) fn in_a_row(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    let time = remarks::clock(view.tick);
    let label = row.label(RichText::new(&time).monospace().size(17.0).color(theme::ON_BENCH));
    let spoken = words.say_with("clock-name", &[("time", time.into())]);
    label.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, &spoken));
    ui.tray.clock_at = Some(label.rect.right_center());
    let minutes = |m: f64| m.floor().to_string();
    let values =
        [("worked", minutes(view.attended_min).into()), ("waited", minutes(view.unattended_min).into())];
    label.on_hover_text(words.say_with("clock-spent", &values));
    paces(row, shop, words, ui, true);
    row.menu_button(words.say("time-menu"), |menu| {
        let at = menu.min_rect().right_top();
        for (key, tip, then) in WAITS {
            if menu.button(words.say(key)).on_hover_text(words.say(tip)).clicked() {
                wait(ui, at, then);
                menu.close();
            }
        }
    });
}

/// What takes time: the key of its words, of its hint, and what it opens.
const WAITS: [(&str, &str, Waits); 5] = [
    ("time-wait", "tip-wait", Waits::Form(Form::Wait)),
    ("time-until", "tip-until", Waits::More("offer-wait-until")),
    ("time-watch", "tip-watch", Waits::More("offer-stopwatch")),
    ("time-overnight", "tip-overnight", Waits::Form(Form::Overnight)),
    ("time-help", "tip-help", Waits::Help),
];

#[derive(Clone, Copy)]
enum Waits {
    Form(Form),
    More(&'static str),
    Help,
}

fn wait(ui: &mut Ui, at: egui::Pos2, what: Waits) {
    match what {
        Waits::Form(form) => {
            // What lets a night pass is not done by a Return that was meant for something else.
            let neutral = form == Form::Overnight;
            let form = Some(open_form(form));
            ui.menu = Some(Menu { thing: Thing::Clock, at, form, fresh: true, neutral });
        }
        Waits::More(key) => open_further(ui, Thing::Clock, at, key),
        Waits::Help => ui.pages.open_help(),
    }
}

fn pace_ui(column: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    column.horizontal(|row| paces(row, shop, words, ui, false));
}

/// How fast time runs; `short`: with a sign for the pause instead of a word.
fn paces(row: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, short: bool) {
    for (key, pace) in PACES {
        let text = words.say(pace_key(pace));
        let tip = words.say_with("tip-pace", &[("key", key.name().into())]);
        let spoken = words.say_with("pace-name", &[("pace", text.clone().into())]);
        let chosen = shop.pace() == pace;
        let shown = if short && pace == Pace::Hold { "⏸".to_owned() } else { text };
        let response = on_bench(row, chosen, shown).on_hover_text(tip);
        response.widget_info(|| WidgetInfo::selected(WidgetType::RadioButton, true, chosen, &spoken));
        if response.clicked() {
            ui.ask(Ask::Pace(pace));
        }
    }
}

fn waits_ui(column: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    for pair in WAITS.chunks(2) {
        column.horizontal(|row| {
            for (key, tip, then) in pair {
                let button = row.button(words.say(key)).on_hover_text(words.say(tip));
                if button.clicked() {
                    wait(ui, button.rect.right_center(), *then);
                }
            }
        });
    }
}
