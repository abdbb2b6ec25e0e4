//! What was noticed, refused, breached and looked at: the captions of the workshop, over the lower edge of
//! the room or beside the bar over the diagram. They fade after a while; with reduced motion they go
//! at once. All of them are in the log.

pub mod state;

use egui::{Color32, Order, Pos2, Rect, RichText};
use sim_core::notice::Gravity;
use sim_core::units::TICKS_PER_SECOND;

use super::super::state::Ui;
use super::super::theme;
use super::keys::page::page;
use front::prefs::PressureUnit;
use front::shop::{Remark, RemarkKind, Shop, Told};
use front::words::Words;

/// How many are shown at once over the room.
const SHOWN: usize = 4;
/// And over the line diagram or a low picture of the room, of which more would hide too much.
const FEWER: usize = 2;
/// A picture of the room lower than this is low, points.
const LOW: f32 = 300.0;
/// How long one stays, s: longer when there is more to read.
const STAYS_S: f64 = 8.0;
/// And for each character, s.
const STAYS_S_PER_CHARACTER: f64 = 0.06;
/// How long it takes to fade, s.
const FADES_S: f64 = 1.5;

/// Widest caption, points.
const WIDEST: f32 = 560.0;
/// Narrowest place for captions beside the bar over the line diagram, points.
const NARROWEST: f32 = 300.0;

/// A remark as it is shown.
struct Line {
    text: String,
    sign: &'static str,
    colour: Color32,
}

/// A remark in words with its sign and colour; `None` for one that nothing need be said about.
fn line(shop: &Shop, words: &Words, unit: PressureUnit, remark: &Remark) -> Option<Line> {
    let (key, sign, colour) = match &remark.kind {
        RemarkKind::Read(reading) => {
            let what = words.observed(shop, &reading.what);
            // What an eye has to read is looked at, not told.
            let text = match words.shown(shop, reading) {
                Some(shown) => {
                    words.say_with("remark-perceived", &[("what", what.into()), ("text", shown.into())])
                }
                None => words.say_with("remark-read", &[("what", what.into())]),
            };
            return Some(Line { text, sign: "○", colour: theme::ACCENT });
        }
        RemarkKind::Done(deed) => {
            return Some(Line { text: words.deed(shop, deed, unit), sign: "✓", colour: theme::INK });
        }
        RemarkKind::Record { item, unmet: None } => {
            let name = words.record_line(shop, item);
            let text = words.say_with("remark-record-met", &[("line", name.into())]);
            return Some(Line { text, sign: "✓", colour: theme::ACCENT });
        }
        RemarkKind::Record { item, unmet: Some(unmet) } => {
            let name = words.record_short(shop, item);
            let why = words.speech(shop).map_or_else(String::new, |s| s.tell(unmet));
            let text = words.say_with("remark-record-not-met", &[("line", name.into()), ("why", why.into())]);
            return Some(Line { text, sign: "✗", colour: theme::REFUSED });
        }
        RemarkKind::Refused => ("remark-refused", "✗", theme::REFUSED),
        RemarkKind::Breach(Gravity::Minor) => ("remark-breach-minor", "⚠", theme::BREACH),
        RemarkKind::Breach(Gravity::Major) => ("remark-breach-major", "⚠", theme::BREACH),
        RemarkKind::Breach(Gravity::Critical) => ("remark-breach-critical", "⚠", theme::BREACH),
        RemarkKind::Trouble => ("remark-trouble", "⚠", theme::BREACH),
        RemarkKind::Noticed => ("remark-noticed", "•", theme::INK),
    };
    if remark.told == Told::Nothing {
        return None;
    }
    let text = words.say_with(key, &[("text", words.remark(shop, remark).into())]);
    Some(Line { text, sign, colour })
}

/// All that was said, in sentences: for tests.
#[cfg(test)]
pub(super) fn sentences(shop: &Shop, words: &Words, unit: PressureUnit) -> Vec<String> {
    shop.remarks().iter().filter_map(|r| Some(line(shop, words, unit, r)?.text)).collect()
}

/// How much of a remark is left to see, 1 to 0.
fn strength(now: f64, since: f64, characters: usize) -> f32 {
    let stays = STAYS_S + STAYS_S_PER_CHARACTER * characters as f64;
    (1.0 - (now - since - stays) / FADES_S).clamp(0.0, 1.0) as f32
}

/// Shows the last remarks.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(middle) = ui.scene.or(ui.tray.middle) else { return };
    let now = root.input(|i| i.time);
    let first = shop.remarks().first().map_or(u64::MAX, |r| r.n);
    let newest = shop.remarks().last().map_or(0, |r| r.n);
    // Another job: its remarks are counted anew.
    ui.remarks.since.retain(|n, _| (first..=newest).contains(n));
    let mut shown: Vec<(Line, f32)> = Vec::new();
    let room = ui.scene.is_some();
    let most = if room && LOW < middle.height() { SHOWN } else { FEWER };
    for remark in shop.remarks().iter().rev().take(3 * SHOWN) {
        let Some(line) = line(shop, words, ui.prefs.pressure, remark) else { continue };
        let since = *ui.remarks.since.entry(remark.n).or_insert(now);
        let strength = strength(now, since, line.text.chars().count());
        let strength = if ui.prefs.reduced_motion { strength.floor() } else { strength };
        if strength <= 0.0 || shown.len() == most {
            break;
        }
        shown.push((line, strength));
    }
    if shown.is_empty() {
        return;
    }
    root.ctx().request_repaint_after(std::time::Duration::from_millis(250));
    let free =
        if room { middle } else { middle.with_min_x(ui.diagram.bar_free.min(middle.right() - NARROWEST)) };
    captions(root.ctx(), free, room, shown);
}

/// Over the lower left of the room, which is floor; at the upper right of what is `free` of the line diagram.
fn captions(ctx: &egui::Context, free: Rect, room: bool, shown: Vec<(Line, f32)>) {
    let width = (free.width() - 24.0).clamp(120.0, WIDEST);
    let (at, pivot): (Pos2, _) = if room {
        (free.left_bottom() + egui::vec2(12.0, -10.0), egui::Align2::LEFT_BOTTOM)
    } else {
        (free.right_top() + egui::vec2(-6.0, 3.0), egui::Align2::RIGHT_TOP)
    };
    egui::Area::new("remarks".into())
        .order(Order::Middle)
        .fixed_pos(at)
        .pivot(pivot)
        .constrain_to(free)
        .interactable(false)
        .show(ctx, |area| {
            area.set_max_width(width);
            area.spacing_mut().item_spacing.y = 4.0;
            for (line, strength) in shown.into_iter().rev() {
                area.set_opacity(strength);
                caption(area, &line);
            }
        });
}

fn caption(area: &mut egui::Ui, line: &Line) {
    let frame = egui::Frame::new()
        .fill(theme::PAPER)
        .stroke(egui::Stroke::new(1.0, theme::RULE))
        .inner_margin(egui::Margin::symmetric(8, 5))
        .corner_radius(3.0);
    frame.show(area, |inner| {
        inner.horizontal_top(|row| {
            row.spacing_mut().item_spacing.x = 6.0;
            row.colored_label(line.colour, line.sign);
            let label = row.add(egui::Label::new(RichText::new(&line.text).color(line.colour)).wrap());
            // Screen readers say it as it comes.
            row.ctx().accesskit_node_builder(label.id, |node| node.set_live(egui::accesskit::Live::Polite));
        });
    });
}

/// A time of the attempt as h:mm:ss.
#[must_use]
pub fn clock(tick: sim_core::units::Tick) -> String {
    let s = tick.0 / TICKS_PER_SECOND;
    format!("{}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60)
}

/// The log of everything that was said; whether it stays open.
pub(super) fn log(ctx: &egui::Context, shop: &Shop, words: &Words, unit: PressureUnit) -> bool {
    let mut open = true;
    let area = page("log", ctx).show(ctx, |inner| {
        let room = ctx.content_rect();
        inner.set_width(620.0_f32.min(room.width() - 40.0));
        inner.horizontal(|row| {
            row.heading(words.say("log-title"));
            row.with_layout(egui::Layout::right_to_left(egui::Align::Center), |right| {
                open = !right.button(words.say("page-close")).clicked();
            });
        });
        let height = room.height() - 120.0;
        egui::ScrollArea::vertical().max_height(height).stick_to_bottom(true).show(inner, |body| {
            if shop.remarks().is_empty() {
                body.label(words.say("log-empty"));
            }
            for remark in shop.remarks() {
                let Some(line) = line(shop, words, unit, remark) else { continue };
                body.horizontal_top(|row| {
                    row.label(RichText::new(clock(remark.tick)).monospace().color(theme::INK_FAINT));
                    row.colored_label(line.colour, line.sign);
                    row.add(egui::Label::new(RichText::new(line.text).color(line.colour)).wrap());
                });
            }
        });
    });
    open && !area.should_close()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_remark_stays_to_be_read_and_then_fades() {
        assert_eq!(strength(100.0, 100.0, 60), 1.0);
        assert_eq!(strength(100.0 + STAYS_S, 100.0, 60), 1.0);
        let gone = STAYS_S + 60.0 * STAYS_S_PER_CHARACTER + FADES_S;
        assert_eq!(strength(100.1 + gone, 100.0, 60), 0.0);
        assert!(strength(100.0 + gone, 100.0, 200) > 0.0);
    }

    #[test]
    fn every_sign_has_its_glyph() {
        let ctx = egui::Context::default();
        crate::theme::apply(&ctx, 1.0);
        ctx.begin_pass(egui::RawInput::default());
        for sign in ['✗', '✓', '⚠', '○', '•', '×', '←', '↑', '↓', 'Ω', '°', '\u{2212}'] {
            let font = egui::FontId::proportional(14.0);
            assert!(ctx.fonts_mut(|f| f.has_glyph(&font, sign)), "{sign}");
        }
    }

    #[test]
    fn the_clock_counts_hours() {
        assert_eq!(clock(sim_core::units::Tick(3_723 * TICKS_PER_SECOND)), "1:02:03");
    }
}
