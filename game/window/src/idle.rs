//! Frames only as often as something can have changed: a machine that draws in software shares its
//! processors with the model, and a battery lasts longer.

use std::time::Duration;

use bevy::prelude::*;
use bevy::window::WindowEvent;
use bevy::winit::{UpdateMode, WinitSettings};

use super::in_turn::Waiting;
use super::input::is_input;
use super::resources::{Drawn, ShopRes, UiRes};
use super::shown::{Middle, Page};
use super::view3d::picture::Picture;
use front::ask::Pace;
use front::prefs::Quality;

/// Longest time between two frames while something moves.
const FRAME: Duration = Duration::from_millis(16);
/// The same while nothing moves but the clock and what hangs on it, where a processor draws.
const FRAME_OF_CLOCK: Duration = Duration::from_millis(100);
/// While nothing does: a cursor still blinks, a spinner turns, a remark fades.
const FRAME_AT_REST: Duration = Duration::from_millis(200);
/// While the window has not the focus.
const FRAME_AWAY: Duration = Duration::from_millis(250);
/// How long after the last input panels may still glide, s.
const CALM_S: f32 = 0.35;

/// Chooses the time between frames.
pub(super) fn plugin(app: &mut App) {
    app.insert_resource(settings(FRAME)).add_systems(Last, pace);
}

fn settings(frame: Duration) -> WinitSettings {
    WinitSettings {
        focused_mode: UpdateMode::reactive(frame),
        unfocused_mode: UpdateMode::reactive_low_power(FRAME_AWAY),
    }
}

fn pace(
    time: Res<Time<Real>>,
    mut events: MessageReader<WindowEvent>,
    shop: Res<ShopRes>,
    ui: Res<UiRes>,
    picture: Res<Picture>,
    drawn: Res<Drawn>,
    waiting: Res<Waiting>,
    mut winit: ResMut<WinitSettings>,
    mut calm_s: Local<f32>,
) {
    let input = events.read().filter(|e| is_input(e)).count();
    let clock = shop.0.view().is_some() && shop.0.pace() != Pace::Hold;
    let room = ui.0.page == Page::Workshop
        && ui.0.middle != Middle::Diagram
        && (ui.0.hotspots.glides || picture.is_drawn());
    *calm_s = if 0 < input || room || !waiting.is_empty() { 0.0 } else { *calm_s + time.delta_secs() };
    let wanted = settings(match (*calm_s < CALM_S, clock) {
        (true, _) => FRAME,
        (false, true) if drawn.0 == Quality::Low => FRAME_OF_CLOCK,
        (false, true) => FRAME,
        (false, false) => FRAME_AT_REST,
    });
    if winit.focused_mode != wanted.focused_mode {
        *winit = wanted;
    }
}
