//! How much room the panels have: a window of 1280 × 720 at 200 % is 640 × 360 points, a quarter of what it is at
//! 100 %. What has no room folds on purpose, into a drawer or a menu, and says so; nothing falls off the edge.

use super::super::shown::Middle;

/// From this height on all panels stand open, points.
pub const HIGH: f32 = 600.0;
/// The same with the room and the line diagram one over the other, points: each needs its height.
pub const HIGH_FOR_BOTH: f32 = 800.0;
/// From this width on the clipboard lies beside the room from the start, points.
const BROAD: f32 = 800.0;
/// The same beside the line diagram, whose sheets are broad, points.
const BROAD_FOR_SHEETS: f32 = 1_200.0;

/// The room there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Space {
    /// Too low for a tray that is always open: it is a drawer over a row with the time.
    pub low: bool,
    /// Too narrow for a clipboard beside the room: it is a drawer.
    pub narrow: bool,
}

impl Space {
    /// Of the window that `ctx` draws into, with this in its middle.
    #[must_use]
    pub fn of(ctx: &egui::Context, middle: Middle) -> Self {
        let size = ctx.content_rect().size();
        let high = if middle == Middle::Both { HIGH_FOR_BOTH } else { HIGH };
        let broad = if middle == Middle::Room { BROAD } else { BROAD_FOR_SHEETS };
        Self { low: size.y < high, narrow: size.x < broad }
    }
}

/// Width of a button with this text, points.
#[must_use]
pub fn button_width(ui: &egui::Ui, text: &str) -> f32 {
    let font = egui::TextStyle::Button.resolve(ui.style());
    let galley = ui.painter().layout_no_wrap(text.to_owned(), font, egui::Color32::PLACEHOLDER);
    galley.size().x + 2.0 * ui.spacing().button_padding.x
}
