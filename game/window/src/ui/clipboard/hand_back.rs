//! Before the car goes back: what is still missing, and whether it shall go all the same.
//!
//! Only papers are checked here. What was left on the car is for the trainee to see.

use egui::Label;
use sim_core::action::Action;

use super::super::super::state::Ui;
use super::super::paper;
use super::State;
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// What is still missing on paper, in sentences.
fn missing(shop: &Shop, words: &Words, clipboard: &State) -> Vec<String> {
    let (Some(view), Some(session), Some(car)) = (shop.view(), shop.session(), shop.car()) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    if view.findings.is_empty() {
        out.push(words.say("back-no-finding"));
    }
    let open = clipboard.waiting(view).count();
    if 0 < open {
        out.push(words.say_with("back-not-noted", &[("n", open.into())]));
    }
    let now = session.workshop().record_now();
    let names = |release: bool| {
        let open = car.record.iter().filter(|item| {
            item.kind.is_release() == release && !now.iter().any(|e| e.item == item.id && e.condition_met)
        });
        open.map(|item| words.record_short(shop, &item.id)).collect::<Vec<_>>().join(", ")
    };
    for (release, key) in [(false, "back-record"), (true, "back-release")] {
        let names = names(release);
        if !names.is_empty() {
            out.push(words.say_with(key, &[("lines", names.into())]));
        }
    }
    out
}

/// Shows the question, if it is asked.
pub(super) fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    if !ui.clipboard.handing_back {
        return;
    }
    let (mut give, mut close) = (false, false);
    let missing = missing(shop, words, &ui.clipboard);
    let modal = egui::Modal::new("hand-back".into()).show(ctx, |inner| {
        inner.set_max_width(460.0);
        paper::heading(inner, words.say("back-title"));
        if missing.is_empty() {
            inner.add(Label::new(words.say("back-complete")).wrap());
        } else {
            inner.add(Label::new(words.say("back-missing")).wrap());
            egui::ScrollArea::vertical().max_height(200.0).show(inner, |list| {
                for line in &missing {
                    paper::point(list, line);
                }
            });
        }
        inner.add_space(4.0);
        paper::caution(inner, &words.say("back-caution"), &[words.say("back-caution-text")]);
        inner.add_space(6.0);
        inner.horizontal_wrapped(|row| {
            close = row.add(paper::button(words.say("back-not"))).clicked();
            give = row.add(paper::main_button(words.say("back-do"))).clicked();
        });
    });
    if give {
        ui.ask(Ask::Do(Action::HandBack));
        ui.clipboard.handing_back = false;
    } else if close || modal.should_close() {
        ui.clipboard.handing_back = false;
    }
}
