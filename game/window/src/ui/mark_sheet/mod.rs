//! The mark sheet: result, parts and why, what it was, how each note moved the belief, what the air was
//! really doing. It shows what the marker computed and computes nothing itself.

mod chart;
mod lists;
mod path;
mod result;
pub mod state;
mod trace;

use assess::marks::sheet::MarkSheet;
use egui::{Frame, Label, Margin, RichText};

use super::super::shown::Page;
use super::super::state::Ui;
use super::super::theme;
use super::paper;
use front::ask::Ask;
use front::shop::{Marking, Shop};
use front::words::Words;

/// Widest the page gets, points.
const WIDTH: f32 = 1_080.0;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let focus = paper::entered(root.ctx(), Page::MarkSheet);
    bar(root, shop, words, ui, focus);
    egui::CentralPanel::no_frame().frame(Frame::new().fill(theme::PAPER)).show(root, |page| {
        egui::ScrollArea::vertical().auto_shrink(false).show(page, |page| {
            let room = page.available_width();
            let side = ((room - WIDTH) * 0.5).max(16.0);
            page.horizontal_top(|row| {
                row.add_space(side);
                row.vertical(|column| {
                    column.set_width(room - 2.0 * side);
                    body(column, shop, words, ui);
                    column.add_space(24.0);
                });
            });
        });
    });
}

/// The way back, and what was marked.
fn bar(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, focus: bool) {
    let frame = Frame::new().fill(theme::BENCH).inner_margin(Margin::symmetric(16, 8));
    egui::Panel::top("mark-bar").frame(frame).show_separator_line(false).show(root, |bar| {
        bar.horizontal_wrapped(|row| {
            let back = row.add(paper::button(words.say("mark-back")));
            if focus {
                back.request_focus();
            }
            if back.clicked() {
                ui.ask(Ask::Leave);
                ui.page = Page::FrontDesk;
            }
            if row.add(paper::button(words.say("mark-workshop"))).clicked() {
                ui.page = Page::Workshop;
            }
            if row.add(paper::button(words.say("bar-settings"))).clicked() {
                ui.back_to = Page::MarkSheet;
                ui.page = Page::Settings;
            }
            if let Some(job) = shop.job() {
                let title = words.job(&job.name(), &job.title);
                row.label(RichText::new(title).size(18.0).color(theme::ON_BENCH));
            }
        });
    });
}

fn body(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    // Trouble while marking was on would else be seen nowhere.
    match shop.marking() {
        Marking::None => {
            paper::heading(page, words.say("mark-title"));
            page.label(words.say("mark-none"));
        }
        Marking::HandedIn => {
            paper::heading(page, words.say("mark-handed-in"));
            page.add(Label::new(words.say("mark-handed-in-what")).wrap());
            if let Some(path) = shop.session().and_then(|s| s.path()) {
                page.add(Label::new(RichText::new(path.display().to_string()).monospace()).wrap());
            }
        }
        Marking::Running => {
            paper::heading(page, words.say("mark-running"));
            page.horizontal_top(|row| {
                if !ui.prefs.reduced_motion {
                    row.spinner();
                }
                row.add(Label::new(words.say("mark-running-why")).wrap());
            });
            page.ctx().request_repaint_after(std::time::Duration::from_millis(100));
        }
        Marking::Failed(why) => {
            paper::trouble(page, &words.say("mark-failed"), &words.sentence(why));
            page.add(Label::new(words.say("mark-failed-what")).wrap());
            if let Some(path) = shop.session().and_then(|s| s.path()) {
                page.add(Label::new(RichText::new(path.display().to_string()).monospace()).wrap());
            }
        }
        Marking::Done(evaluation) => {
            let sheet = ui.mark_sheet.sheet(evaluation, words);
            done(page, shop, words, ui, &sheet);
        }
    }
}

fn done(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, sheet: &MarkSheet) {
    let Some(marks) = &sheet.marks else {
        paper::heading(page, words.say("mark-title"));
        page.label(words.say("mark-none"));
        return;
    };
    page.add_space(6.0);
    result::overrides(page, words, sheet);
    result::verdict(page, words, sheet, marks);
    result::parts(page, words, marks);
    result::conditions(page, words, marks);
    lists::finding(page, words, marks);
    lists::breaches(page, words, sheet);
    chart::show(page, words, &marks.evidence);
    path::show(page, words, &marks.evidence);
    trace::show(page, shop, words, marks, ui.prefs.pressure);
    lists::readings(page, words, marks, ui.prefs.pressure);
    lists::record(page, words, sheet);
    lists::not_noted(page, shop, words);
    lists::debrief(page, words, marks);
    lists::plan(page, words, marks);
    lists::page_beside(page, shop, words, ui);
    lists::foot(page, words, sheet);
}
