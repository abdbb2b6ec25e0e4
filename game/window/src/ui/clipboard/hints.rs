//! Hints: what would tell most now, asked for and counted.

use egui::{Label, RichText};

use assess::attempt::hint_line::Advice;
use assess::locale::test_name;
use assess::marks::score::HINT_POINTS;

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::paper;
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// Shows what was said, and the button that asks; nothing where the pack gives none.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(session) = shop.session().filter(|session| 0 < session.job().hints) else { return };
    paper::small_heading(page, words.say("hints-heading"));
    for hint in &session.attempt().hints {
        let said = match &hint.advice {
            Advice::Test(id) => {
                let test = test_name(session.job(), id, words);
                words.say_with("hints-test", &[("test", test.into())])
            }
            Advice::Enough => words.say("hints-enough"),
            Advice::Nothing => words.say("hints-nothing"),
        };
        page.add(Label::new(paper::by_hand(said)).wrap());
    }
    let (may, stands) = (session.may_ask(), session.standing_hint().is_some());
    let values =
        [("points", words.number(HINT_POINTS, 0).into()), ("left", u64::from(session.hints_left()).into())];
    let text = words.say_with("hints-ask", &values);
    if page.add_enabled(may.is_ok() && !stands && !shop.hint_is_coming(), paper::button(text)).clicked() {
        ui.ask(Ask::Hint);
    }
    let why = match may {
        _ if shop.hint_is_coming() => words.say("hints-coming"),
        Ok(()) if stands => words.say("hints-stands"),
        Ok(()) => words.say("hints-counted"),
        Err(error) => words.sentence(&error.sentence()),
    };
    page.add(Label::new(RichText::new(why).color(theme::INK_FAINT)).wrap());
    if shop.hint_is_coming() {
        page.ctx().request_repaint_after(std::time::Duration::from_millis(200));
    }
}
