//! The page of keys, with the first steps above them.

use egui::RichText;

use super::super::super::theme;
use super::page::page;
use front::words::Words;

/// Keys as they are written on the page, and the words for what they do.
const LINES: [(&str, &[(&str, &str)]); 5] = [
    (
        "keys-going",
        &[
            ("1 – 5", "keys-station"),
            ("L", "keys-middle"),
            ("D, I, + − 0", "diagram-keys"),
            ("F", "keys-find"),
            ("Tab", "keys-tab"),
            ("A", "keys-names"),
            ("Esc", "keys-escape"),
        ],
    ),
    ("keys-menu", &[("↑ ↓", "keys-lines"), ("1 – 9, A – L", "keys-choose"), ("←", "keys-back")]),
    (
        "keys-tools",
        &[
            ("K, E, P", "keys-car"),
            ("T", "keys-board"),
            ("B", "keys-wall"),
            ("R", "keys-read"),
            ("N", "keys-note"),
            ("M", "keys-log"),
        ],
    ),
    (
        "keys-time",
        &[
            ("H", "keys-hold"),
            ("F5, F6, F7, F8", "keys-pace"),
            ("W", "keys-wait"),
            ("U", "keys-until"),
            ("S", "keys-watch"),
            ("O", "keys-overnight"),
        ],
    ),
    (
        "help-marks",
        &[("○", "help-mark-air"), ("□", "help-mark-wire"), ("•", "help-mark-thing"), ("—", "help-mark-tied")],
    ),
];

/// The first steps, in order.
const STEPS: [&str; 6] = ["step-card", "step-go", "step-do", "step-tool", "step-note", "step-back"];

/// Shows the page; whether it stays open.
pub(super) fn show(ctx: &egui::Context, words: &Words) -> bool {
    let mut open = true;
    let area = page("help", ctx).show(ctx, |inner| {
        let room = ctx.content_rect();
        inner.set_width(860.0_f32.min(room.width() - 40.0));
        inner.horizontal(|row| {
            row.heading(words.say("help-title"));
            row.with_layout(egui::Layout::right_to_left(egui::Align::Center), |right| {
                open = !right.button(words.say("page-close")).clicked();
            });
        });
        egui::ScrollArea::vertical().max_height(room.height() - 120.0).show(inner, |body| {
            body.label(RichText::new(words.say("help-steps")).strong());
            for (i, step) in STEPS.iter().enumerate() {
                body.label(format!("{}. {}", i + 1, words.say(step)));
            }
            body.add_space(8.0);
            let columns = if 600.0 <= body.available_width() { 2 } else { 1 };
            body.columns(columns, |parts| {
                for (i, (title, lines)) in LINES.iter().enumerate() {
                    let part = &mut parts[i % columns];
                    part.label(RichText::new(words.say(title)).strong());
                    egui::Grid::new(*title).num_columns(2).spacing([12.0, 4.0]).show(part, |grid| {
                        for (keys, what) in *lines {
                            grid.label(RichText::new(*keys).monospace().color(theme::ACCENT));
                            grid.add(egui::Label::new(words.say(what)).wrap());
                            grid.end_row();
                        }
                    });
                    part.add_space(8.0);
                }
            });
            body.separator();
            body.add(egui::Label::new(words.say("help-free")).wrap());
            body.label(words.say("help-care"));
        });
    });
    open && !area.should_close()
}
