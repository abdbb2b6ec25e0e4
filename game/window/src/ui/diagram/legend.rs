//! What the signs mean, in words: those of the car's own parts, and the marks of what hands have done.

use std::collections::BTreeSet;

use assess::diagram::Sheet;
use assess::diagram::form::{Area, form};
use egui::{Pos2, Rect, Sense, pos2, vec2};

use super::super::super::theme;
use super::grid::STEP;
use super::live::{self, Mark};
use super::pen::{Pen, Sym};
use super::symbols::{self, Now};
use front::hands::Thing;
use front::shop::Shop;
use front::words::Words;

/// Room of a sign.
const SIGN: egui::Vec2 = vec2(104.0, 56.0);
/// How large a sign may be drawn.
const LARGEST: f32 = 0.85;

/// Shows the legend over the board.
pub(super) fn show(ctx: &egui::Context, canvas: Rect, shop: &Shop, words: &Words, open: &mut bool) {
    let height = (canvas.height() - 60.0).clamp(120.0, 560.0);
    egui::Window::new(words.say("diagram-legend-title"))
        .id("diagram-legend".into())
        .open(open)
        .resizable(false)
        .collapsible(false)
        .default_pos(canvas.right_top() + vec2(-380.0, 6.0))
        .constrain_to(canvas)
        .show(ctx, |inner| {
            egui::ScrollArea::vertical().max_height(height).show(inner, |inner| {
                inner.set_width(348.0);
                for sheet in Sheet::ALL {
                    inner.strong(words.say(match sheet {
                        Sheet::Air => "diagram-sheet-air",
                        Sheet::Wiring => "diagram-sheet-wiring",
                    }));
                    parts(inner, shop, words, sheet);
                }
                inner.strong(words.say("diagram-legend-instruments"));
                instruments(inner, shop, words);
                inner.strong(words.say("diagram-legend-marks"));
                for mark in Mark::ALL {
                    row(inner, &words.say(mark.key()), |pen, middle| live::mark(pen, middle, mark));
                }
                inner.add_space(4.0);
                inner.label(words.say("diagram-legend-rest"));
            });
        });
}

fn parts(inner: &mut egui::Ui, shop: &Shop, words: &Words, sheet: Sheet) {
    let Some(car) = shop.car() else { return };
    let mut seen = BTreeSet::new();
    for part in &car.assembly.parts {
        let kind = &part.kind;
        let belongs = kind.ports().iter().any(|d| d.domain == sheet.domain());
        if !belongs || !seen.insert(kind.name()) {
            continue;
        }
        let Some(form) = form(kind, sheet) else { continue };
        let key = format!("diagram-sign-{}-{}", sheet.name(), kind.name().to_lowercase());
        row(inner, &words.say_or(&key, kind.name()), |pen, middle| {
            if let sim_core::parts::PartKind::Body(_) = kind {
                symbols::electric::chassis(pen, &[middle - vec2(0.0, STEP)]);
                return;
            }
            let Area { left, top, right, bottom } = form.body;
            let size = vec2(right - left, bottom - top) * STEP;
            let middle_of_it = vec2(left + right, top + bottom) * 0.5;
            let zoom = ((SIGN.x - 8.0) / size.x).min((SIGN.y - 8.0) / size.y).min(LARGEST);
            let origin = pen.at(middle) - middle_of_it * STEP * zoom;
            let pen = Pen { origin, zoom, ..pen.clone() };
            symbols::draw(kind, sheet, &Sym { pen, at: Pos2::ZERO, turn: 0 }, Now::default());
        });
    }
}

/// What can be connected, one of a kind.
fn instruments(inner: &mut egui::Ui, shop: &Shop, words: &Words) {
    let (Some(view), Some(session)) = (shop.view(), shop.session()) else { return };
    let mut seen = Vec::new();
    for (i, card) in session.workshop().setup().kit.iter().enumerate() {
        let kind = std::mem::discriminant(&card.kind);
        let Some(now) = view.instruments.get(i) else { continue };
        if session.workshop().ends_of(i).is_empty() || seen.contains(&kind) {
            continue;
        }
        seen.push(kind);
        row(inner, &words.name(shop, Thing::Instrument(i as u16)), |pen, middle| {
            symbols::instruments::draw(&pen.with(theme::ACCENT), middle, card, now);
        });
    }
}

fn row(inner: &mut egui::Ui, text: &str, draw: impl FnOnce(&Pen<'_>, Pos2)) {
    inner.horizontal(|row| {
        let (rect, _) = row.allocate_exact_size(SIGN, Sense::hover());
        let painter = row.painter_at(rect);
        painter.rect_filled(rect, 2.0, theme::FIELD);
        let pen = Pen {
            painter: &painter,
            origin: rect.center(),
            zoom: LARGEST,
            ink: theme::INK,
            paper: theme::FIELD,
        };
        draw(&pen, pos2(0.0, 0.0));
        row.add(egui::Label::new(text).wrap());
    });
}
