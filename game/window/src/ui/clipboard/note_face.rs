//! What was read, as the eye had it: the instrument's face, standing still.

use egui::{Label, RichText, Sense, Vec2, vec2};
use sim_core::instrument::Measured;
use sim_core::observe::Reading;

use super::super::super::theme;
use super::super::{dial, paper};
use front::held;
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;

/// Side of the face over the form, points: a dial can be read to half a division.
const SIDE: f32 = 172.0;
/// The same in pixels at least, however large everything else is drawn.
const SIDE_PX: f32 = 160.0;
/// The same in the list of what waits to be noted: a dial with its numbers, a lamp, a display's digits, points.
const DIAL: f32 = 116.0;
const LAMP: f32 = 76.0;
const DISPLAY: Vec2 = vec2(92.0, 38.0);

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

/// What was read, beside its line in the list: a display by its digits, anything else by its face. For the eye
/// only, the form tells the rest.
pub(super) fn small(row: &mut egui::Ui, shop: &Shop, words: &Words, unit: PressureUnit, reading: &Reading) {
    let Some(session) = shop.session() else { return };
    let Some(face) = held::face(session, reading) else { return };
    let kit = &session.workshop().setup().kit;
    let Some(card) = kit.get(face.card) else { return };
    let nature = card.kind.nature();
    let digits = nature.displays().any(|(_, display)| display.is_digital());
    let size = if digits {
        DISPLAY
    } else if nature.measured == Measured::Glow {
        Vec2::splat(LAMP)
    } else {
        Vec2::splat(DIAL)
    };
    let (rect, _) = row.allocate_exact_size(size, Sense::hover());
    if digits {
        let text = dial::display::characters(face.shown, face.scale.as_ref());
        dial::display::paint(row.painter(), rect, text.as_deref(), dial::display::unit(face.scale.as_ref()));
    } else {
        dial::paint(row.painter(), rect, shop, words, unit, card, &face);
    }
}
