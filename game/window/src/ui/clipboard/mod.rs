//! The clipboard, left of the room: job card, data sheet, notebook, suspicions, finding.
//!
//! Paper, ink, and what the trainee has written in another ink. Nothing on it comes from the circuit: only
//! what the workshop's view shows and what is on the job's papers.

mod card;
mod finding;
mod hand_back;
mod hints;
mod leave;
pub mod made_up;
pub mod note;
mod note_face;
mod note_form;
mod notebook;
pub mod state;
mod suspicions;

use egui::{CornerRadius, Frame, Key, Margin, Modifiers, RichText, Sense, Stroke, vec2};

use super::super::state::Ui;
use super::super::theme;
use super::space::Space;
use front::shop::Shop;
use front::words::Words;
pub use state::Leaf;
use state::State;

/// Usual width, points.
const WIDTH: f32 = 348.0;
/// Narrowest, points.
const NARROWEST: f32 = 240.0;
/// Widest share of the window.
const WIDEST: f32 = 0.5;
/// Width of the strip that is left when it is folded away, points.
const STRIP: f32 = 36.0;
/// Key that folds it away and back.
const FOLD: Key = Key::C;

/// Shows it.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(session) = shop.session() else { return };
    let header = &session.attempt().header;
    if ui.clipboard.of.as_ref() != Some(header) {
        ui.clipboard = State { folded: ui.clipboard.folded, of: Some(header.clone()), ..State::default() };
    }
    if let Some(n) = ui.tray.to_note.take() {
        ui.clipboard.note_reading(n);
    }
    let ctx = root.ctx().clone();
    let letters = ui.menu.is_none() && !ui.pages.is_open() && !ctx.text_edit_focused();
    let space = Space::of(&ctx, ui.middle);
    if letters && ctx.input_mut(|i| i.consume_key(Modifiers::NONE, FOLD)) {
        ui.clipboard.folded = Some(!ui.clipboard.is_folded(space, shop));
    }
    hand_back::show(&ctx, shop, words, ui);
    leave::show(&ctx, shop, words, ui);
    finding::confirm(&ctx, shop, words, ui);
    if ui.clipboard.is_folded(space, shop) {
        strip(root, words, ui);
        return;
    }
    let widest = (root.available_width() * WIDEST).max(NARROWEST);
    egui::Panel::left("clipboard")
        .frame(Frame::new().fill(theme::BOARD).inner_margin(Margin {
            left: 10,
            right: 10,
            top: 4,
            bottom: 8,
        }))
        .default_size(WIDTH.min(widest))
        .size_range(NARROWEST..=widest)
        .resizable(true)
        .show_separator_line(false)
        .show(root, |board| {
            clip(board, words, ui);
            tabs(board, words, ui);
            sheet(board, shop, words, ui);
        });
}

/// What is left when it is folded away.
fn strip(root: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    egui::Panel::left("clipboard-strip")
        .frame(Frame::new().fill(theme::BOARD).inner_margin(Margin::same(4)))
        .exact_size(STRIP)
        .resizable(false)
        .show_separator_line(false)
        .show(root, |strip| {
            let open = strip.add(egui::Button::new("»").min_size(vec2(STRIP - 8.0, STRIP - 8.0)));
            let name = words.say("clipboard-open");
            open.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
            if open.on_hover_text(name).clicked() {
                ui.clipboard.folded = Some(false);
            }
        });
}

/// The clip that holds the paper, and the button that folds it away.
fn clip(board: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    board.horizontal(|row| {
        let fold = row.add(egui::Button::new("«").min_size(vec2(28.0, theme::TARGET)));
        let name = words.say("clipboard-fold");
        fold.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, &name));
        if fold.on_hover_text(name).clicked() {
            ui.clipboard.folded = Some(true);
        }
        let room = row.available_size_before_wrap();
        let (rect, _) = row.allocate_exact_size(vec2(room.x, theme::TARGET), Sense::hover());
        // As if the fold button were not there: the clip sits in the middle of the board.
        let middle = rect.center().x - 18.0;
        let bar = egui::Rect::from_center_size(egui::pos2(middle, rect.bottom() - 5.0), vec2(118.0, 14.0));
        let grip = egui::Rect::from_center_size(egui::pos2(middle, rect.top() + 9.0), vec2(56.0, 16.0));
        let edge = Stroke::new(1.0, theme::INK_FAINT);
        row.painter().rect(grip, CornerRadius::same(7), theme::STEEL, edge, egui::StrokeKind::Inside);
        row.painter().circle(grip.center() - vec2(0.0, 1.0), 4.0, theme::BOARD, edge);
        row.painter().rect(bar, CornerRadius::same(3), theme::STEEL, edge, egui::StrokeKind::Inside);
    });
}

/// The leaves' tabs.
fn tabs(board: &mut egui::Ui, words: &Words, ui: &mut Ui) {
    board.spacing_mut().item_spacing = vec2(2.0, 3.0);
    board.horizontal_wrapped(|row| {
        row.spacing_mut().button_padding = vec2(6.0, 4.0);
        for (leaf, key) in Leaf::ALL {
            let on_top = ui.clipboard.leaf == leaf;
            let fill = if on_top { theme::PAPER } else { theme::BOARD };
            let ink = if on_top { theme::INK } else { theme::ON_BENCH };
            let tab = egui::Button::selectable(on_top, RichText::new(words.say(key)).color(ink))
                .fill(fill)
                .corner_radius(CornerRadius { nw: 4, ne: 4, sw: 0, se: 0 })
                .min_size(vec2(0.0, theme::TARGET));
            if row.add(tab).clicked() {
                ui.clipboard.leaf = leaf;
            }
        }
    });
    board.spacing_mut().item_spacing.y = 0.0;
}

fn sheet(board: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let frame = Frame::new()
        .fill(theme::PAPER)
        .inner_margin(Margin { left: 12, right: 4, top: 8, bottom: 8 })
        .corner_radius(CornerRadius { nw: 0, ne: 2, sw: 2, se: 2 });
    frame.show(board, |paper| {
        paper.set_min_size(paper.available_size());
        paper.spacing_mut().item_spacing = vec2(8.0, 5.0);
        let leaf = ui.clipboard.leaf;
        egui::ScrollArea::vertical().id_salt(("leaf", leaf as u8)).auto_shrink(false).show(paper, |paper| {
            // Room for the bar at the side.
            paper.set_max_width(paper.available_width() - 10.0);
            match leaf {
                Leaf::Card => card::card(paper, shop, words, ui),
                Leaf::Sheet => card::sheet(paper, shop, words, ui),
                Leaf::Notebook => notebook::show(paper, shop, words, ui),
                Leaf::Suspicions => suspicions::show(paper, shop, words, ui),
                Leaf::Finding => finding::show(paper, shop, words, ui),
            }
            paper.add_space(12.0);
        });
    });
}
