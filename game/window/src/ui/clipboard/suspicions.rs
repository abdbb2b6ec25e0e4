//! Suspicions: free thoughts with their time, never marked; and what would tell most, asked for and counted.

use egui::{Label, RichText, TextEdit};
use sim_core::action::Action;

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::paper;
use super::hints;
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(session) = shop.session() else { return };
    let prompt = page.add(Label::new(words.say("suspicion-prompt")).wrap());
    let field = TextEdit::multiline(&mut ui.clipboard.suspicion)
        .desired_rows(3)
        .text_color(theme::PEN)
        .desired_width(f32::INFINITY);
    page.add(field).labelled_by(prompt.id);
    let text = ui.clipboard.suspicion.trim().to_owned();
    let button = page.add_enabled(!text.is_empty(), paper::button(words.say("suspicion-do")));
    if button.clicked() {
        ui.ask(Ask::Do(Action::Suspect { text }));
        ui.clipboard.suspicion.clear();
    }
    hints::show(page, shop, words, ui);
    for step in session.attempt().steps.iter().rev() {
        if let (Action::Suspect { text }, None) = (&step.action, &step.refused) {
            paper::rule(page);
            page.label(RichText::new(words.clock(step.start)).color(theme::INK_FAINT));
            page.add(Label::new(paper::by_hand(text)).wrap());
        }
    }
}
