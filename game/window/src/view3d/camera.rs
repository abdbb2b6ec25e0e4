//! The eye: five stations, gliding between them, and looking about within limits.

use bevy::camera::Projection;
use bevy::ecs::change_detection::DetectChangesMut as _;
use bevy::input::mouse::{AccumulatedMouseMotion, AccumulatedMouseScroll, MouseScrollUnit};
use bevy::math::{Mat4, Vec3};
use bevy::prelude::{
    ButtonInput, KeyCode, MouseButton, Query, Real, Res, ResMut, Resource, Time, Transform, With,
};
use egui::{Pos2, Rect};
use sim_core::action::Station;

use super::super::resources::{RoomCamera, UiRes};

/// Where the eye is: round a point it looks at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Eye {
    /// What it looks at.
    pub(super) target: Vec3,
    /// Turned about the vertical, rad: 0 looks along −z.
    pub(super) yaw: f32,
    /// Height over the horizon, rad.
    pub(super) pitch: f32,
    /// How far off, m.
    pub(super) distance: f32,
    /// Width and height at the target that must be in the picture, m.
    pub(super) fit: (f32, f32),
}

impl Eye {
    fn looking(from: Vec3, target: Vec3, fit: (f32, f32)) -> Self {
        let d = from - target;
        let distance = d.length();
        Self { target, yaw: d.x.atan2(d.z), pitch: (d.y / distance).asin(), distance, fit }
    }

    /// The place of the eye.
    #[must_use]
    pub(super) fn place(&self) -> Vec3 {
        let (sy, cy) = self.yaw.sin_cos();
        let (sp, cp) = self.pitch.sin_cos();
        self.target + Vec3::new(sy * cp, sp, cy * cp) * self.distance
    }

    /// As a transform.
    #[must_use]
    pub(super) fn transform(&self) -> Transform {
        Transform::from_translation(self.place()).looking_at(self.target, Vec3::Y)
    }

    /// Vertical field of view in a picture of this aspect (width over height), rad: what must be in it is.
    #[must_use]
    pub(super) fn fov(&self, base: f32, aspect: f32) -> f32 {
        let half = (self.fit.1 * 0.5).max(self.fit.0 * 0.5 / aspect.max(0.2));
        ((half / base).atan() * 2.0).clamp(0.2, 1.9)
    }

    fn mix(&self, to: &Self, t: f32) -> Self {
        let mix = |a: f32, b: f32| a + (b - a) * t;
        let turn = (to.yaw - self.yaw + std::f32::consts::PI).rem_euclid(std::f32::consts::TAU)
            - std::f32::consts::PI;
        Self {
            target: self.target.lerp(to.target, t),
            yaw: self.yaw + turn * t,
            pitch: mix(self.pitch, to.pitch),
            distance: mix(self.distance, to.distance),
            fit: (mix(self.fit.0, to.fit.0), mix(self.fit.1, to.fit.1)),
        }
    }
}

/// Where the eye stands at a station.
#[must_use]
pub(super) fn station(at: Station) -> Eye {
    let v = Vec3::new;
    match at {
        Station::Desk => Eye::looking(v(2.35, 1.85, 3.25), v(-0.05, 0.82, -0.6), (5.0, 2.5)),
        Station::Cab => Eye::looking(v(-0.24, 1.46, -1.98), v(-1.24, 0.78, -1.02), (1.75, 1.12)),
        Station::Bay => Eye::looking(v(-1.22, 2.20, 1.46), v(-1.68, 0.87, -0.14), (2.20, 1.10)),
        Station::Front => Eye::looking(v(-1.16, 1.0, 2.15), v(-1.36, 0.42, 0.42), (2.05, 1.12)),
        Station::Bench => Eye::looking(v(1.36, 1.66, 1.20), v(1.36, 1.22, -2.1), (4.25, 1.85)),
    }
}

/// The place of the eye at a station.
#[must_use]
pub(super) fn station_eye(at: Station) -> Vec3 {
    station(at).place()
}

/// How far one may turn and come near.
const TURN: f32 = 0.75;
const RISE: (f32, f32) = (-0.30, 0.55);
const PITCH: (f32, f32) = (0.02, 1.35);
const NEAR_FAR: (f32, f32) = (0.45, 1.35);
/// Time of a glide, s.
const GLIDE_S: f32 = 0.9;

/// The eye of the room.
#[derive(Resource, Debug)]
pub(super) struct RoomEye {
    /// As it is.
    pub(super) now: Eye,
    from: Eye,
    station: Station,
    gone_s: f32,
    yaw: f32,
    pitch: f32,
    zoom: f32,
    dragging: bool,
    frames: u32,
}

impl Default for RoomEye {
    fn default() -> Self {
        let eye = station(Station::Desk);
        Self {
            now: eye,
            from: eye,
            station: Station::Desk,
            gone_s: GLIDE_S,
            yaw: 0.0,
            pitch: 0.0,
            zoom: 1.0,
            dragging: false,
            frames: 0,
        }
    }
}

impl RoomEye {
    /// The eye goes to a station, at once or gliding.
    pub(super) fn go(&mut self, to: Station, at_once: bool) {
        if to != self.station {
            self.from = self.now;
            self.station = to;
            self.gone_s = 0.0;
            (self.yaw, self.pitch, self.zoom) = (0.0, 0.0, 1.0);
        }
        if at_once {
            self.gone_s = GLIDE_S;
        }
    }

    /// Turns and comes nearer, within limits.
    pub(super) fn look(&mut self, yaw: f32, pitch: f32, zoom: f32) {
        self.yaw = (self.yaw + yaw).clamp(-TURN, TURN);
        self.pitch = (self.pitch + pitch).clamp(RISE.0, RISE.1);
        self.zoom = (self.zoom * zoom).clamp(NEAR_FAR.0, NEAR_FAR.1);
    }

    /// Lets the eye glide on.
    pub(super) fn step(&mut self, s: f32) {
        self.gone_s = (self.gone_s + s).min(GLIDE_S);
        let mut to = station(self.station);
        to.yaw += self.yaw;
        to.pitch = (to.pitch + self.pitch).clamp(PITCH.0, PITCH.1);
        to.distance *= self.zoom;
        let t = self.gone_s / GLIDE_S;
        let eased = t * t * (3.0 - 2.0 * t);
        self.now = if 1.0 <= t { to } else { self.from.mix(&to, eased) };
    }

    /// Field of view in a picture of this aspect.
    #[must_use]
    pub(super) fn fov(&self, aspect: f32) -> f32 {
        self.now.fov(self.now.distance / self.zoom.max(0.01), aspect)
    }
}

/// Where things are in the picture: egui points in `scene`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lens {
    clip_from_world: Mat4,
    scene: Rect,
}

impl Lens {
    /// Of an eye whose picture fills `scene`.
    #[must_use]
    pub(super) fn new(eye: &Eye, fov: f32, scene: Rect) -> Self {
        let aspect = (scene.width() / scene.height().max(1.0)).max(0.01);
        let clip_from_view = Mat4::perspective_infinite_reverse_rh(fov, aspect, 0.05);
        let view_from_world = eye.transform().to_matrix().inverse();
        Self { clip_from_world: clip_from_view * view_from_world, scene }
    }

    /// The place in the picture; `None` behind the eye or outside.
    #[must_use]
    pub(super) fn see(&self, at: Vec3) -> Option<Pos2> {
        self.see_beyond(at).filter(|pos| self.scene.contains(*pos))
    }

    /// The same also outside the picture.
    #[must_use]
    pub(super) fn see_beyond(&self, at: Vec3) -> Option<Pos2> {
        let clip = self.clip_from_world * at.extend(1.0);
        (0.05 < clip.w).then(|| {
            let (x, y) = (clip.x / clip.w, clip.y / clip.w);
            self.scene.min
                + egui::vec2((x + 1.0) * 0.5 * self.scene.width(), (1.0 - y) * 0.5 * self.scene.height())
        })
    }

    /// The ray from the eye through a place in the picture: a point far along it.
    #[must_use]
    pub(super) fn beyond(&self, eye: &Eye, at: Pos2) -> Vec3 {
        let x = (at.x - self.scene.min.x) / self.scene.width().max(1.0) * 2.0 - 1.0;
        let y = 1.0 - (at.y - self.scene.min.y) / self.scene.height().max(1.0) * 2.0;
        let far = self.clip_from_world.inverse().project_point3(Vec3::new(x, y, 0.5));
        (far - eye.place()).normalize_or(Vec3::NEG_Z)
    }
}

/// Moves the eye: to the station, by mouse, by keys.
pub(super) fn follow(
    mut ui: ResMut<UiRes>,
    time: Res<Time<Real>>,
    mut eye: ResMut<RoomEye>,
    motion: Res<AccumulatedMouseMotion>,
    scroll: Res<AccumulatedMouseScroll>,
    buttons: Res<ButtonInput<MouseButton>>,
    keys: Res<ButtonInput<KeyCode>>,
    windows: Query<&bevy::window::Window>,
    mut cameras: Query<(&mut Transform, &mut Projection), With<RoomCamera>>,
) {
    let ui = &mut ui.0;
    // The first frames belong to nobody: a picture or a carried-on job begins where its eye is.
    eye.frames = eye.frames.saturating_add(1);
    let at_once = ui.prefs.reduced_motion || eye.frames < 8;
    eye.go(ui.eye, at_once);
    ui.hotspots.glides = false;
    let Some(scene) = ui.scene else { return };
    let pointer = windows.iter().next().and_then(bevy::window::Window::cursor_position);
    let inside =
        ui.hotspots.pointer && pointer.is_some_and(|p| scene.contains(Pos2::new(p.x, p.y) / ui.prefs.scale));
    if !buttons.pressed(MouseButton::Right) {
        eye.dragging = false;
    } else if buttons.just_pressed(MouseButton::Right) && inside && ui.menu.is_none() {
        eye.dragging = true;
    }
    if eye.dragging {
        eye.look(-motion.delta.x * 0.005, motion.delta.y * 0.004, 1.0);
    }
    if inside && ui.menu.is_none() && scroll.delta.y != 0.0 {
        let lines = if scroll.unit == MouseScrollUnit::Line { scroll.delta.y } else { scroll.delta.y / 40.0 };
        eye.look(0.0, 0.0, (-0.09 * lines).exp());
    }
    if ui.hotspots.keys {
        let s = time.delta_secs().min(0.1);
        let held =
            |key, other| f32::from(u8::from(keys.pressed(key))) - f32::from(u8::from(keys.pressed(other)));
        let yaw = held(KeyCode::ArrowRight, KeyCode::ArrowLeft);
        let pitch = held(KeyCode::ArrowUp, KeyCode::ArrowDown);
        let zoom = held(KeyCode::PageDown, KeyCode::PageUp);
        eye.look(yaw * s, pitch * s * 0.8, (zoom * s).exp());
    }
    // A glide takes four frames at least, and on a slow machine not much longer than on a fast one.
    eye.step(time.delta_secs().min(GLIDE_S * 0.25));
    ui.hotspots.glides = eye.gone_s < GLIDE_S;
    let aspect = scene.width() / scene.height().max(1.0);
    let fov = eye.fov(aspect);
    for (mut transform, mut projection) in &mut cameras {
        // Only what differs counts as a change, else the picture would never rest.
        transform.set_if_neq(eye.now.transform());
        let wanted = (fov, 0.05, 30.0);
        let as_wanted = matches!(&*projection,
            Projection::Perspective(p) if (p.fov, p.near, p.far) == wanted);
        if !as_wanted && let Projection::Perspective(p) = &mut *projection {
            (p.fov, p.near, p.far) = wanted;
        }
    }
}
