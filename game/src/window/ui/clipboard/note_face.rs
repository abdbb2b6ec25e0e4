//! What was read, as the eye had it: the instrument's face, standing still.

use egui::{Color32, Label, Rect, RichText, Sense, Vec2, vec2};
use sim_core::observe::Reading;

use super::super::super::held;
use super::super::super::prefs::PressureUnit;
use super::super::super::shop::Shop;
use super::super::super::theme;
use super::super::super::words::Words;
use super::super::{dial, paper};

/// Side of the face over the form, points: a dial can be read to half a division.
const SIDE: f32 = 172.0;
/// The same in pixels at least, however large everything else is drawn.
const SIDE_PX: f32 = 160.0;
/// Side of the face in the list of what waits to be noted, points.
const SMALL: f32 = 72.0;

/// The face over the form, and that it is held.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, unit: PressureUnit, reading: u32) {
    let (Some(session), Some(view)) = (shop.session(), shop.view()) else { return };
    let Some(reading) = view.readings.iter().find(|r| r.id == reading) else { return };
    let Some(face) = held::face(session, reading) else { return };
    let side = SIDE.min(page.available_width()).max(SIDE_PX / page.ctx().zoom_factor());
    page.vertical_centered(|middle| {
        dial::show_face(middle, shop, words, unit, &face, Vec2::splat(side));
    });
    let values = [("time", words.clock_s(reading.tick).into())];
    let text = RichText::new(words.say_with("note-held", &values)).color(theme::ACCENT);
    page.add(Label::new(text).wrap());
    paper::rule(page);
}

/// The face beside its line in the list; for the eye only, the form tells the rest. Whether there is one.
pub(super) fn small(row: &mut egui::Ui, shop: &Shop, words: &Words, unit: PressureUnit, reading: &Reading) {
    let Some(session) = shop.session() else { return };
    let Some(face) = held::face(session, reading) else { return };
    let kit = &session.workshop().setup().kit;
    let Some(card) = kit.get(face.card) else { return };
    let (rect, _) = row.allocate_exact_size(vec2(SMALL, SMALL), Sense::hover());
    row.painter().rect_filled(rect, 3.0, Color32::WHITE);
    let inside = Rect::from_center_size(rect.center(), Vec2::splat(SMALL - 4.0));
    dial::paint(row.painter(), inside, shop, words, unit, card, &face);
}
