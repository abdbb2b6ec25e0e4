//! The room's picture where the panels leave room, and a word instead of it while there is none to see.

use egui::emath::GuiRounding as _;
use egui::{Align2, Color32, Pos2, Rect, Sense, pos2};

use super::super::shown::{Placing, RoomSeen};
use super::super::state::Ui;
use super::super::theme;
use front::words::Words;

/// Lays the picture into `scene`. As long as the room is not whole it says so: half a room would look like a
/// car with parts missing.
pub(super) fn show(root: &mut egui::Ui, scene: Rect, words: &Words, ui: &Ui) {
    let scene_px = scene.round_to_pixels(root.ctx().pixels_per_point());
    match (ui.room_seen, ui.room_picture) {
        (RoomSeen::Preparing, _) | (_, None) => {
            root.painter().rect_filled(scene_px, 0.0, theme::BENCH);
            say(root, scene, &words.say("room-preparing"));
        }
        (RoomSeen::Whole, Some(picture)) => lay(root, scene_px, picture),
        (RoomSeen::Lacking(shaders), Some(picture)) => {
            lay(root, scene_px, picture);
            say(root, scene, &words.say_with("room-lacking", &[("n", shaders.into())]));
        }
    }
}

/// Says, along the lower edge of the scene, that nobody has written where this car stands.
pub(super) fn say_how_placed(root: &mut egui::Ui, scene: Rect, words: &Words, ui: &Ui) {
    let text = match &ui.room_placing {
        Placing::ByFile => return,
        Placing::ByDiagram => words.say("room-by-diagram"),
        Placing::InARow => words.say("room-in-a-row"),
        Placing::Broken(why) => words.say_with("room-broken", &[("why", words.sentence(why).into())]),
    };
    let width = (scene.width() - 32.0).max(80.0);
    let font = egui::TextStyle::Body.resolve(root.style());
    let galley = root.painter().layout(text.clone(), font, theme::ON_BENCH, width);
    let at = pos2(scene.left() + 8.0, scene.bottom() - galley.size().y - 8.0);
    let rect = Rect::from_min_size(at, galley.size());
    root.painter().rect_filled(rect.expand2(egui::vec2(8.0, 4.0)), 3.0, theme::BENCH);
    root.painter().galley(rect.min, galley, theme::ON_BENCH);
    let said = root.interact(rect, egui::Id::new("room-placing"), Sense::hover());
    said.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Label, true, &text));
}

fn lay(root: &egui::Ui, scene: Rect, picture: egui::TextureId) {
    let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
    root.painter().image(picture, scene, whole, Color32::WHITE);
}

/// A line in the middle, for eyes and for a screen reader.
fn say(root: &mut egui::Ui, scene: Rect, text: &str) {
    let width = (scene.width() - 32.0).max(80.0);
    let font = egui::TextStyle::Heading.resolve(root.style());
    let galley = root.painter().layout(text.to_owned(), font, theme::ON_BENCH, width);
    let rect = Align2::CENTER_CENTER.anchor_size(scene.center(), galley.size());
    root.painter().rect_filled(rect.expand(10.0), 6.0, theme::BENCH);
    root.painter().galley(rect.min, galley, theme::ON_BENCH);
    let said = root.interact(rect, egui::Id::new("room-seen"), Sense::hover());
    said.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Label, true, text));
}
