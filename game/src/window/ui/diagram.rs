//! To come.
use super::super::shop::Shop;
use super::super::state::Ui;
use super::super::words::Words;

/// State of the panel.
#[derive(Debug, Default)]
pub struct State {}

/// Shows it.
pub fn show(root: &mut egui::Ui, _shop: &Shop, words: &Words, _ui: &mut Ui) {
    root.label(words.say("to-come"));
}
