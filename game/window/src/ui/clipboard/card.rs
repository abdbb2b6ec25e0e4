//! The two papers of the job: the card with the customer's words and the cautions, and the data sheet.
//!
//! The card lies open from the start: its cautions must be seen. To have read it is an action all the same.
//! The data sheet must be fetched from the desk.

use egui::{Label, RichText};
use sim_core::action::Action;
use sim_core::car::{Car, Limit};
use sim_core::units::Tick;

use super::super::super::state::Ui;
use super::super::paper;
use front::ask::Ask;
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;

/// When an action was first done, if it was.
fn done_at(shop: &Shop, action: &Action) -> Option<Tick> {
    let steps = &shop.session()?.attempt().steps;
    steps.iter().find(|s| s.action == *action && s.refused.is_none()).map(|s| s.end)
}

/// The job card.
pub(super) fn card(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(job) = shop.job() else { return };
    page.add(Label::new(RichText::new(words.job(&job.name(), &job.title)).size(18.0)).wrap());
    paper::faint(page, words.car(&job.car.id, &job.car.name));
    let minutes = job.time_limit_min.round() as u32;
    paper::faint(page, words.say_with("desk-minutes", &[("minutes", minutes.into())]));
    paper::rule(page);
    // Cautions first: they must be seen without scrolling. The program's own last word is its own; the rest is the pack's, in the language shown if it has it.
    let cautions: Vec<String> = job
        .cautions()
        .enumerate()
        .map(|(n, l)| match l == assess::pack::job::DEFER {
            true => words.say("card-defer"),
            false => words.job_caution(&job.name(), n, l),
        })
        .collect();
    paper::caution(page, &words.say("card-cautions"), &cautions);
    page.add_space(4.0);
    paper::small_heading(page, words.say("card-customer"));
    for (n, line) in job.customer_says().enumerate() {
        let line = words.job_says(&job.name(), n, line);
        page.add(Label::new(paper::by_hand(words.say_with("card-quote", &[("text", line.into())]))).wrap());
    }
    page.add_space(4.0);
    read(page, shop, words, ui, Action::ReadCard, "card-read", "card-was-read");
}

/// The data sheet.
pub(super) fn sheet(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(car) = shop.car() else { return };
    page.add(Label::new(RichText::new(words.say("sheet-title")).size(18.0)).wrap());
    paper::faint(page, words.car(&car.id, &car.name));
    paper::rule(page);
    if done_at(shop, &Action::ReadSheet).is_none() {
        page.add(Label::new(words.say("sheet-on-desk")).wrap());
        read(page, shop, words, ui, Action::ReadSheet, "sheet-read", "sheet-was-read");
        return;
    }
    for limit in &car.limits {
        paper::point(page, words.limit(&car.id, &limit.id, &limit.text));
        if let Some(text) = in_other_unit(words, limit, ui.prefs.pressure) {
            page.indent(("unit", &limit.id), |inner| paper::faint(inner, text));
        }
    }
    thin_air(page, words, car);
    let cautions: Vec<String> =
        car.cautions.iter().enumerate().map(|(n, text)| words.caution(&car.id, n, text)).collect();
    paper::caution(page, &words.say("sheet-cautions"), &cautions);
}

fn thin_air(page: &mut egui::Ui, words: &Words, car: &Car) {
    if let Some(m) = car.cut_out_height_m() {
        let m = words.number(m, 0);
        page.add(Label::new(words.say_with("sheet-altitude", &[("m", m.into())])).wrap());
    }
    page.add(Label::new(words.say("sheet-day")).wrap());
}

/// A limit in kPa, said again in the unit of the settings.
fn in_other_unit(words: &Words, limit: &Limit, unit: PressureUnit) -> Option<String> {
    if limit.unit != "kPa" || unit == PressureUnit::Kpa {
        return None;
    }
    let p = |kpa: f64| words.pressure(kpa, unit);
    Some(match (limit.min, limit.max) {
        (Some(min), Some(max)) => {
            words.say_with("sheet-between", &[("min", p(min).into()), ("max", p(max).into())])
        }
        (Some(min), None) => words.say_with("sheet-least", &[("min", p(min).into())]),
        // On a gauge that reads below nothing, a largest value is how deep the vacuum must be at least.
        (None, Some(max)) if max < 0.0 => words.say_with("sheet-deeper", &[("max", p(max).into())]),
        (None, Some(max)) => words.say_with("sheet-most", &[("max", p(max).into())]),
        (None, None) => return None,
    })
}

/// The button that reads a paper, or when it was read.
fn read(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, action: Action, ask: &str, done: &str) {
    match done_at(shop, &action) {
        Some(tick) => {
            let text = words.say_with(done, &[("time", words.clock(tick).into())]);
            page.label(paper::by_hand(format!("✔ {text}")));
        }
        None => {
            if page.add(paper::main_button(words.say(ask))).clicked() {
                ui.ask(Ask::Do(action));
            }
        }
    }
}
