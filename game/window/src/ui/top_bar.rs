//! The bar at the top: where one stands, what fills the middle, the way out. One order, from left to right, at
//! every size; what has no room in one row folds into a menu at its end.

use sim_core::action::Station;

use super::super::shown::{Middle, Page};
use super::super::state::Ui;
use super::super::theme;
use super::keys::STATIONS;
use super::space::button_width;
use front::ask::Ask;
use front::shop::Shop;
use front::words::{Words, station_key};

/// Between two groups of buttons, points.
const BETWEEN: f32 = 12.0;
/// Between two buttons, points.
const GAP: f32 = 4.0;

/// What fills the middle, and the keys of the words for it.
const MIDDLES: [(Middle, &str); 3] =
    [(Middle::Room, "middle-room"), (Middle::Diagram, "middle-diagram"), (Middle::Both, "middle-both")];

/// A way out of the workshop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Out {
    MarkSheet,
    HandBack,
    Settings,
    Leave,
}

impl Out {
    fn key(self) -> &'static str {
        match self {
            Self::MarkSheet => "bar-mark-sheet",
            Self::HandBack => "bar-hand-back",
            Self::Settings => "bar-settings",
            Self::Leave => "bar-leave",
        }
    }

    fn take(self, shop: &Shop, ui: &mut Ui) {
        match self {
            Self::MarkSheet => ui.page = Page::MarkSheet,
            Self::HandBack => ui.clipboard.ask_hand_back(),
            Self::Settings => {
                ui.back_to = Page::Workshop;
                ui.page = Page::Settings;
            }
            Self::Leave if shop.view().is_some_and(|v| v.handed_back) => {
                ui.ask(Ask::Leave);
                ui.page = Page::FrontDesk;
            }
            Self::Leave => ui.clipboard.ask_leave(),
        }
    }
}

/// Shows the bar.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let over = shop.view().is_some_and(|v| v.handed_back);
    let outs = [if over { Out::MarkSheet } else { Out::HandBack }, Out::Settings, Out::Leave];
    egui::Panel::top("top-bar").show(root, |bar| {
        bar.spacing_mut().item_spacing.x = GAP;
        let room = bar.available_width();
        let folds = folds(bar, words, &outs, room);
        bar.horizontal(|row| {
            row.set_min_height(theme::TARGET);
            if folds == Folds::All {
                station_menu(row, words, ui);
            } else {
                STATIONS.into_iter().for_each(|station| station_ui(row, words, ui, station));
            }
            row.separator();
            for (middle, key) in MIDDLES {
                if row.selectable_label(ui.middle == middle, words.say(key)).clicked() {
                    ui.middle = middle;
                }
            }
            let wide = if folds == Folds::Nothing {
                let buttons: f32 = outs.iter().map(|out| button_width(row, &words.say(out.key()))).sum();
                buttons + row.spacing().item_spacing.x * (outs.len() as f32 - 1.0)
            } else {
                button_width(row, &words.say("bar-menu"))
            };
            row.add_space((row.available_width() - wide - row.spacing().item_spacing.x).max(0.0));
            if folds == Folds::Nothing {
                for out in outs {
                    if row.button(words.say(out.key())).clicked() {
                        out.take(shop, ui);
                    }
                }
            } else {
                row.menu_button(words.say("bar-menu"), |menu| {
                    for out in outs {
                        if menu.button(words.say(out.key())).clicked() {
                            out.take(shop, ui);
                            menu.close();
                        }
                    }
                });
            }
        });
    });
}

/// What the bar folds into menus.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Folds {
    Nothing,
    /// The ways out.
    Outs,
    /// These and the stations.
    All,
}

fn folds(bar: &egui::Ui, words: &Words, outs: &[Out], room: f32) -> Folds {
    let gap = bar.spacing().item_spacing.x;
    let wide = |key: &str| button_width(bar, &words.say(key)) + gap;
    let stations: f32 = STATIONS.into_iter().map(|s| wide(station_key(s))).sum();
    let middles: f32 = MIDDLES.iter().map(|(_, key)| wide(key)).sum();
    let ways: f32 = outs.iter().map(|out| wide(out.key())).sum();
    if stations + middles + ways + 2.0 * BETWEEN <= room {
        Folds::Nothing
    } else if stations + middles + wide("bar-menu") + 2.0 * BETWEEN <= room {
        Folds::Outs
    } else {
        Folds::All
    }
}

fn station_ui(row: &mut egui::Ui, words: &Words, ui: &mut Ui, station: Station) {
    if row.selectable_label(ui.eye == station, words.say(station_key(station))).clicked() {
        ui.eye = station;
    }
}

/// The stations in a menu that says where the eye is.
fn station_menu(row: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    let here = format!("{}  ▾", words.say(station_key(ui.eye)));
    let menu = row.menu_button(here, |menu| {
        for station in STATIONS {
            station_ui(menu, words, ui, station);
        }
    });
    let name = words.say_with("bar-station", &[("station", words.say(station_key(ui.eye)).into())]);
    menu.response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
}

/// After the hand-back: what can still be done here, which is to look, and the way back to the mark sheet.
pub fn after_hand_back(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    if !shop.view().is_some_and(|v| v.handed_back) {
        return;
    }
    let frame = egui::Frame::new().fill(theme::ACCENT).inner_margin(egui::Margin::symmetric(12, 4));
    egui::Panel::top("handed-back").frame(frame).resizable(false).show(root, |strip| {
        strip.horizontal_wrapped(|row| {
            row.label(egui::RichText::new(words.say("over-look")).color(theme::ON_BENCH));
            if row.button(words.say("over-back")).clicked() {
                ui.page = Page::MarkSheet;
            }
        });
    });
}
