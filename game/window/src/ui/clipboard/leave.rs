//! Before the job is left: that all of it is kept, and what is not.

use egui::Label;

use super::super::super::shown::Page;
use super::super::super::state::Ui;
use super::super::paper;
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// Shows the question, if it is asked.
pub(super) fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    if !ui.clipboard.leaving {
        return;
    }
    let (mut leave, mut close) = (false, false);
    let modal = egui::Modal::new("leave-job".into()).show(ctx, |inner| {
        inner.set_max_width(420.0);
        paper::heading(inner, words.say("leave-title"));
        let kept = shop.session().is_some_and(|s| s.path().is_some());
        inner.add(Label::new(words.say(if kept { "leave-kept" } else { "leave-rehearsal" })).wrap());
        inner.add(Label::new(words.say("leave-lost")).wrap());
        inner.add_space(6.0);
        inner.horizontal_wrapped(|row| {
            close = row.add(paper::button(words.say("leave-not"))).clicked();
            leave = row.add(paper::main_button(words.say("leave-do"))).clicked();
        });
    });
    if leave {
        ui.clipboard.leaving = false;
        ui.ask(Ask::Leave);
        ui.page = Page::FrontDesk;
    } else if close || modal.should_close() {
        ui.clipboard.leaving = false;
    }
}
