//! To come.
use super::super::shop::Shop;
use super::super::state::Ui;
use super::super::words::Words;

/// Shows it.
pub fn show(root: &mut egui::Ui, _shop: &Shop, words: &Words, _ui: &mut Ui) {
    root.label(words.say("to-come"));
}
