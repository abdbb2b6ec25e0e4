//! The front desk: packs with their jobs, attempts to carry on.

use super::super::ask::Ask;
use super::super::shop::Shop;
use super::super::state::Ui;
use super::super::words::Words;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    egui::CentralPanel::default().show(root, |page| {
        page.heading(words.say("desk-title"));
        for pack in shop.packs() {
            page.label(&pack.title);
            match &pack.jobs {
                Ok(jobs) => {
                    for job in jobs {
                        if page.button(&job.title).clicked() {
                            ui.ask(Ask::Begin(job.name.clone()));
                        }
                    }
                }
                Err(why) => {
                    page.label(why);
                }
            }
        }
    });
}
