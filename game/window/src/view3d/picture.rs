//! The picture of the room: drawn into an image of its own, and only anew when something in it has changed.
//!
//! The panels lay it where they leave room. A hand that works in menus and notebook therefore never waits for
//! the room, which matters where a processor draws it in software. There it is also drawn coarser while
//! something moves, and sharp again when it rests.
//!
//! A frame counts only once the renderer has told that it lacked nothing ([`Renderer`]): as long as shaders,
//! shapes or images are still on their way to the card, the room is drawn again.

use bevy::camera::RenderTarget;
use bevy::prelude::*;
use bevy::window::WindowEvent;
use bevy_egui::{EguiTextureHandle, EguiUserTextures};

use super::super::input::is_input;
use super::super::renderer::{Frame, Renderer};
use super::super::resources::{Drawn, RoomCamera, UiRes, canvas};
use super::super::shown::RoomSeen;
use super::pick::Hull;
use front::prefs::Quality;

/// Frames drawn after something moved: the last state has then been seen by every stage of the renderer.
const AFTER_MOVE: u32 = 2;
/// Frames without a change after which the picture shows the last state.
const BEFORE_REST: u32 = 8;
/// Frames without a change, and time without a hand, before a coarse picture is drawn sharp: a hand that
/// goes on would have to wait for it.
const BEFORE_SHARP: (u32, f32) = (3, 0.6);
/// Smallest picture, px.
const SMALLEST: u32 = 8;

/// What is drawn into, and for how long yet.
#[derive(Resource, Debug, Default)]
pub(crate) struct Picture {
    /// Half as wide and high, and whole: both are kept, because one follows the other all the time.
    canvases: [Option<Canvas>; 2],
    shown: Option<egui::TextureId>,
    /// Frames since the last change.
    still: u32,
    /// Time since the last hand, s.
    calm_s: f32,
    /// Drawn whole since the last change.
    sharp: bool,
    /// Field of view it was last drawn with, rad.
    fov: f32,
    /// Frames still to draw.
    left: u32,
    /// The frame it was drawn in last.
    drawn: u64,
    /// The renderer has told that nothing was lacking in that frame.
    whole: bool,
    /// The first frame with everything in it that the open job brings.
    from: u64,
    /// It has been drawn with all of that.
    built: bool,
    /// Drawn sharp also while something moves.
    pub(crate) always_sharp: bool,
}

/// An image that the room is drawn into and the panels lay out.
#[derive(Debug)]
struct Canvas {
    image: Handle<Image>,
    texture: egui::TextureId,
    size: UVec2,
}

impl Picture {
    /// Whether the room has been drawn with everything in it.
    pub(crate) fn is_built(&self) -> bool {
        self.built
    }

    /// Whether it shows the last state.
    pub(crate) fn rests(&self) -> bool {
        self.left == 0 && self.whole && BEFORE_REST <= self.still
    }

    /// Whether it is being drawn, or may have to be drawn again.
    pub(crate) fn is_drawn(&self) -> bool {
        0 < self.left || !self.whole
    }

    /// Everything is built anew: what was drawn before counts no more.
    pub(super) fn begin_anew(&mut self, frame: Frame) {
        self.built = false;
        self.from = frame.0;
        self.left = self.left.max(AFTER_MOVE);
    }

    /// Hears how the frames went that were drawn.
    fn hear(&mut self, renderer: &Renderer) {
        let Some(report) = renderer.room() else { return };
        self.built |= report.is_whole() && self.from + u64::from(AFTER_MOVE) <= report.frame + 1;
        if self.left == 0 && !self.whole && self.drawn <= report.frame {
            self.whole = report.is_whole();
            if !self.whole {
                self.left = AFTER_MOVE;
            }
        }
    }
}

/// What is seen of anything that changes.
type SeenChange =
    Or<(Changed<Transform>, Changed<Mesh3d>, Changed<MeshMaterial3d<StandardMaterial>>, Changed<PointLight>)>;

/// Gives the picture the size of what the panels leave.
pub(super) fn fit(
    mut commands: Commands,
    mut ui: ResMut<UiRes>,
    mut picture: ResMut<Picture>,
    mut images: ResMut<Assets<Image>>,
    mut textures: ResMut<EguiUserTextures>,
    drawn: Res<Drawn>,
    camera: Single<(Entity, &mut Projection), With<RoomCamera>>,
    windows: Query<&Window>,
) {
    let Some(scene) = ui.0.scene else { return };
    let (entity, mut projection) = camera.into_inner();
    let scale = windows.iter().next().map_or(1.0, Window::scale_factor) * ui.0.prefs.scale;
    let at = |v: f32| (v * scale).round().max(0.0) as u32;
    let whole = UVec2::new(
        at(scene.max.x).saturating_sub(at(scene.min.x)),
        at(scene.max.y).saturating_sub(at(scene.min.y)),
    )
    .max(UVec2::splat(SMALLEST));
    let coarse = drawn.0 == Quality::Low && !picture.sharp && !picture.always_sharp;
    let size = if coarse { (whole / 2).max(UVec2::splat(SMALLEST)) } else { whole };
    let place = &mut picture.canvases[usize::from(!coarse)];
    if place.as_ref().is_none_or(|canvas| canvas.size != size) {
        let image = images.add(canvas(size.x, size.y));
        let texture = textures.add_image(EguiTextureHandle::Strong(image.clone()));
        if let Some(old) = place.replace(Canvas { image, texture, size }) {
            textures.remove_image(&old.image);
        }
    }
    let Some(place) = place else { return };
    let (texture, image) = (place.texture, place.image.clone());
    if picture.shown == Some(texture) {
        return;
    }
    ui.0.room_picture = Some(texture);
    commands.entity(entity).insert(RenderTarget::Image(image.into()));
    // The camera asks for the size of its target when its projection has changed, not when the target has.
    projection.set_changed();
    picture.shown = Some(texture);
    picture.left = picture.left.max(AFTER_MOVE);
}

/// Lets the camera rest while nothing changes.
pub(super) fn rest(
    mut ui: ResMut<UiRes>,
    time: Res<Time<Real>>,
    mut hands: MessageReader<WindowEvent>,
    mut picture: ResMut<Picture>,
    camera: Single<(&mut Camera, &Projection), With<RoomCamera>>,
    changed: Query<(), SeenChange>,
    outlined: Query<(), Added<Hull>>,
    mut gone: RemovedComponents<Mesh3d>,
    (frame, renderer): (Res<Frame>, Res<Renderer>),
) {
    let (mut camera, projection) = camera.into_inner();
    picture.hear(&renderer);
    let fov = if let Projection::Perspective(p) = projection { p.fov } else { 0.0 };
    let turned = std::mem::replace(&mut picture.fov, fov) != fov;
    let fewer = 0 < gone.read().count();
    picture.calm_s = if hands.read().any(is_input) { 0.0 } else { picture.calm_s + time.delta_secs() };
    if fewer || turned || !outlined.is_empty() || !changed.is_empty() {
        picture.still = 0;
        picture.sharp = false;
        picture.left = picture.left.max(AFTER_MOVE);
    } else {
        picture.still = picture.still.saturating_add(1);
        let (frames, calm_s) = BEFORE_SHARP;
        picture.sharp |= frames <= picture.still && calm_s <= picture.calm_s;
    }
    let active = ui.0.scene.is_some() && 0 < picture.left;
    if camera.is_active != active {
        camera.is_active = active;
    }
    if active {
        picture.left -= 1;
        picture.drawn = frame.0;
        picture.whole = false;
    }
    let failed = renderer.room().map_or(0, |report| report.failed);
    let room = match picture.built {
        false => RoomSeen::Preparing,
        true if 0 < failed => RoomSeen::Lacking(failed),
        true => RoomSeen::Whole,
    };
    if ui.0.room_seen != room {
        ui.0.room_seen = room;
    }
}
