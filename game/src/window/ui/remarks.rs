//! What was noticed, refused and breached, over the lower edge of the room: the captions of the workshop.

use sim_core::workshop::Gravity;

use super::super::shop::{RemarkKind, Shop};
use super::super::state::Ui;
use super::super::theme;
use super::super::words::Words;

/// How many are shown.
const SHOWN: usize = 4;

/// Shows the last remarks.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(rect) = ui.scene else { return };
    let last: Vec<_> = shop.remarks().iter().filter(|r| !r.text.is_empty()).rev().take(SHOWN).collect();
    if last.is_empty() {
        return;
    }
    egui::Area::new("remarks".into())
        .fixed_pos(rect.left_bottom() + egui::vec2(12.0, -12.0))
        .pivot(egui::Align2::LEFT_BOTTOM)
        .interactable(false)
        .show(root.ctx(), |area| {
            area.set_max_width(rect.width().min(520.0) - 24.0);
            for remark in last.into_iter().rev() {
                let (key, colour) = match &remark.kind {
                    RemarkKind::Refused => ("remark-refused", theme::REFUSED),
                    RemarkKind::Breach(Gravity::Minor) => ("remark-breach-minor", theme::BREACH),
                    RemarkKind::Breach(Gravity::Major) => ("remark-breach-major", theme::BREACH),
                    RemarkKind::Breach(Gravity::Critical) => ("remark-breach-critical", theme::BREACH),
                    RemarkKind::Trouble => ("remark-trouble", theme::BREACH),
                    _ => ("remark-noticed", theme::INK),
                };
                egui::Frame::new().fill(theme::PAPER).inner_margin(6.0).corner_radius(3.0).show(
                    area,
                    |line| {
                        let text = words.say_with(key, &[("text", remark.text.as_str().into())]);
                        line.colored_label(colour, text);
                    },
                );
            }
        });
}
