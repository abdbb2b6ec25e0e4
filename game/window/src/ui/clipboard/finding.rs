//! The finding: which units are outside their limits, and how sure one is. The first is locked before the
//! first repair; what was noted before it is its evidence.

use egui::{Label, RichText};
use sim_core::action::{Action, CERTAINTIES};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::paper;
use super::made_up::FindingForm;
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// Lines kept for what is missing or does not count, in any language.
const HINT_LINES: f32 = 2.0;

/// A finding in a sentence.
pub(super) fn sentence(shop: &Shop, words: &Words, units: &[String], certainty: f64) -> String {
    if certainty <= 0.0 {
        return words.say("finding-said-unknown");
    }
    let percent = words.number(certainty * 100.0, 0);
    if units.is_empty() {
        return words.say_with("finding-said-sound", &[("percent", percent.into())]);
    }
    let names: Vec<String> = units.iter().map(|u| words.unit(shop, u)).collect();
    let names = names.join("; ");
    words.say_with("finding-said", &[("units", names.into()), ("percent", percent.into())])
}

/// The certainty that the school fixes, if it does.
fn fixed(shop: &Shop) -> Option<f64> {
    shop.job()?.certainty
}

/// A certainty as it stands in a sentence: `80 %`.
fn percent(words: &Words, certainty: f64) -> String {
    format!("{} %", words.number(certainty * 100.0, 0))
}

/// Whether a finding given now is only a second one.
fn counts_second(shop: &Shop) -> bool {
    let given = shop.view().is_some_and(|v| !v.findings.is_empty());
    given || shop.session().is_some_and(|s| s.workshop().repaired_before_finding())
}

/// Shows the leaf.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return };
    for (i, (units, certainty)) in view.findings.iter().enumerate() {
        let n = i + 1;
        page.label(RichText::new(words.say_with("finding-given", &[("n", n.into())])).color(theme::ACCENT));
        page.add(Label::new(paper::by_hand(sentence(shop, words, units, *certainty))).wrap());
    }
    if !view.findings.is_empty() {
        paper::rule(page);
    }
    let key = if counts_second(shop) { "finding-second" } else { "finding-first" };
    page.add(Label::new(words.say(key)).wrap());
    paper::small_heading(page, words.say("finding-units"));
    let form = &mut ui.clipboard.finding;
    page.add_enabled_ui(!form.refer, |list| {
        list.checkbox(&mut form.sound, words.say("finding-sound"));
        for unit in &car.units {
            let mut ticked = form.units.contains(&unit.id);
            let line = egui::Checkbox::new(&mut ticked, words.unit(shop, &unit.id));
            if list.add_enabled(!form.sound, line).changed() {
                if ticked {
                    form.units.insert(unit.id.clone());
                } else {
                    form.units.remove(&unit.id);
                }
            }
        }
    });
    paper::small_heading(page, words.say("finding-certainty"));
    let fixed = fixed(shop);
    if let Some(certainty) = fixed {
        let text = words.say_with("finding-fixed", &[("percent", percent(words, certainty).into())]);
        page.add(Label::new(text).wrap());
    }
    for certainty in CERTAINTIES.into_iter().filter(|_| fixed.is_none()) {
        let text = words.say_with("finding-sure", &[("percent", percent(words, certainty).into())]);
        let chosen = !form.refer && form.certainty.is_some_and(|c| (c - certainty).abs() < 1e-9);
        if page.radio(chosen, text).clicked() {
            (form.certainty, form.refer) = (Some(certainty), false);
        }
    }
    // Taken once more it is untaken, and everything stands as before.
    if page.radio(form.refer, words.say("finding-unknown")).clicked() {
        form.refer = !form.refer;
    }
    page.add_space(4.0);
    // Button and line take the same room whatever they say: nothing below or above moves.
    let give = page.add_enabled(form.complete(fixed).is_ok(), paper::main_button(words.say("finding-do")));
    form.confirming |= give.clicked();
    let hint = form.hint(fixed).map(|key| words.say(key)).unwrap_or_default();
    let room =
        egui::vec2(page.available_width(), HINT_LINES * page.text_style_height(&egui::TextStyle::Body));
    let (rect, _) = page.allocate_exact_size(room, egui::Sense::hover());
    let mut line = page.new_child(egui::UiBuilder::new().max_rect(rect).id_salt("hint"));
    line.add(Label::new(RichText::new(hint).color(theme::INK_FAINT)).wrap());
    paper::rule(page);
    if page.add(paper::button(words.say("bar-hand-back"))).clicked() {
        ui.clipboard.ask_hand_back();
    }
}

/// Asks once more before a finding is locked.
pub(super) fn confirm(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    if !ui.clipboard.finding.confirming {
        return;
    }
    let Ok((units, certainty)) = ui.clipboard.finding.complete(fixed(shop)) else {
        ui.clipboard.finding.confirming = false;
        return;
    };
    let (mut give, mut close) = (false, false);
    let modal = egui::Modal::new("confirm-finding".into()).show(ctx, |inner| {
        inner.set_max_width(420.0);
        paper::heading(inner, words.say("finding-confirm"));
        inner.add(Label::new(paper::by_hand(sentence(shop, words, &units, certainty)).size(16.0)).wrap());
        inner.add_space(6.0);
        let key = if counts_second(shop) { "finding-confirm-second" } else { "finding-confirm-first" };
        inner.add(Label::new(words.say(key)).wrap());
        inner.add_space(6.0);
        inner.horizontal_wrapped(|row| {
            give = row.add(paper::main_button(words.say("finding-confirm-do"))).clicked();
            close = row.add(paper::button(words.say("finding-confirm-not"))).clicked();
        });
    });
    if give {
        ui.ask(Ask::Do(Action::Finding { units, certainty }));
        ui.clipboard.finding = FindingForm::default();
    } else if close || modal.should_close() {
        ui.clipboard.finding.confirming = false;
    }
}
