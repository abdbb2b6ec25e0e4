//! What moves and glows: needles, filament, pedal, key, pump, engine, covers, chocks, what is taken off.
//! Everything follows what can be seen in the workshop; nothing here remembers anything of it.

use bevy::prelude::*;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;

use super::super::resources::{Drawn, ShopRes, UiRes};
use super::built::Room;
use super::made::Filament;
use super::moves::{Home, Moves, knob_angle, needle_angle, pedal_angle, pulled};
use super::places;
use front::prefs::Quality;

/// A small steady tremble, m.
fn tremble(s: f32, hz: f32, size: f32) -> Vec3 {
    let a = s * hz * std::f32::consts::TAU;
    Vec3::new(a.sin(), (a * 1.31 + 1.0).sin(), (a * 0.77 + 2.0).sin()) * size
}

/// Under the floor, m: what is not there for now.
const OUT_OF_SIGHT_M: f32 = 20.0;

/// How long a pump or an engine is seen to shake where a processor draws the room, s. What shook for ever
/// would have it drawn for ever, and every hand in menus and notebook would wait for it.
const SHAKES_S: f32 = 1.5;

/// How long pump and engine have run.
#[derive(Default)]
pub(super) struct Running {
    pump_s: f32,
    engine_s: f32,
}

/// Moves everything.
pub(super) fn follow(
    shop: Res<ShopRes>,
    ui: Res<UiRes>,
    room: Res<Room>,
    time: Res<Time<Real>>,
    drawn: Res<Drawn>,
    mut running: Local<Running>,
    mut all: Query<(&Moves, &Home, &mut Transform)>,
) {
    let (Some(view), Some(car)) = (shop.0.view(), shop.0.car()) else { return };
    let s = time.elapsed_secs_wrapped();
    let still = ui.0.prefs.reduced_motion;
    let ever = drawn.0 != Quality::Low;
    let shakes = |runs: bool, ran_s: &mut f32| {
        *ran_s = if runs { *ran_s + time.delta_secs() } else { 0.0 };
        runs && !still && (ever || *ran_s < SHAKES_S)
    };
    let pump_shakes = shakes(view.hum, &mut running.pump_s);
    let engine_shakes = shakes(view.engine != EngineState::Stopped, &mut running.engine_s);
    for (moves, Home(home), mut at) in &mut all {
        let aside = |part: u16| room.layout.aside.get(usize::from(part)).copied().unwrap_or_default();
        let mut to = *home;
        match *moves {
            Moves::Part(part) => to.translation += aside(part),
            Moves::Pump(part) => {
                to.translation += aside(part);
                if pump_shakes {
                    to.translation += tremble(s, 23.0, 0.0011);
                }
            }
            Moves::Engine => {
                if engine_shakes {
                    to.translation += tremble(s, 11.0, 0.0013);
                }
            }
            Moves::PlugIn(part) => {
                let unit = car.units.iter().find(|u| u.plug_in && u.parts.contains(&part));
                if unit.is_some_and(|u| view.pulled.contains(&u.id)) {
                    to = pulled(part, *home);
                }
            }
            Moves::Cover(i) => {
                if let (Some(cover), Some(stands)) = (car.covers.get(usize::from(i)), &room.stands) {
                    to = stands.cover(usize::from(i), view.covers_off.contains(&cover.id));
                }
            }
            Moves::Chock(front) => to = places::chock(front, view.chocked),
            Moves::Extraction(on) => {
                if on != view.extracted {
                    to.translation -= Vec3::Y * OUT_OF_SIGHT_M;
                }
            }
            Moves::Pedal => to.rotation = Quat::from_rotation_x(pedal_angle(view)),
            Moves::AgainstPedal => {
                let back = Quat::from_rotation_x(-pedal_angle(view));
                to = Transform { translation: back * home.translation, rotation: back, scale: Vec3::ONE };
            }
            Moves::Accelerator => {}
            Moves::Key => {
                to.rotation = home.rotation * Quat::from_rotation_z(if view.key_on { 0.9 } else { 0.0 });
            }
            Moves::OnBoard(card) => {
                if room.layout.hung.contains_key(&card) {
                    to.translation -= Vec3::Y * OUT_OF_SIGHT_M;
                }
            }
            Moves::Knob(card) => {
                let mode = view.instruments.get(card).and_then(|i| i.mode).unwrap_or(MeterMode::Off);
                to.rotation = Quat::from_rotation_z(knob_angle(mode));
            }
            Moves::Instrument(card) => {
                if let Some((_, hung)) = room.layout.hung.get(&card) {
                    to = *hung;
                }
            }
            Moves::Needle { card, min, max } => {
                // At rest a vacuum gauge stands at nought, its upper end.
                let value = view.instruments.get(card).and_then(|i| i.value).map_or(max, |v| v as f32);
                to.rotation = Quat::from_rotation_z(needle_angle(value, min, max));
            }
        }
        if *at != to {
            *at = to;
        }
    }
}

/// The filament glows, and lights what is near.
pub(super) fn glow(
    shop: Res<ShopRes>,
    mut materials: ResMut<Assets<StandardMaterial>>,
    mut commands: Commands,
    filaments: Query<(Entity, &Filament, &MeshMaterial3d<StandardMaterial>, Option<&Lit>)>,
    mut lights: Query<&mut PointLight>,
) {
    let Some(view) = shop.0.view() else { return };
    for (entity, Filament(card), material, lit) in &filaments {
        let glow = view.instruments.get(*card).and_then(|i| i.glow).unwrap_or(0.0) as f32;
        match lit {
            None => {
                // The bulb gets a material of its own, so that only it glows.
                let own = materials.get(&material.0).cloned().unwrap_or_default();
                let own = materials.add(own);
                let light = commands
                    .spawn((
                        PointLight {
                            color: Color::linear_rgb(1.0, 0.62, 0.25),
                            intensity: 0.0,
                            range: 1.2,
                            ..default()
                        },
                        Transform::from_xyz(0.0, 0.05, 0.03),
                        ChildOf(entity),
                    ))
                    .id();
                commands.entity(entity).insert((MeshMaterial3d(own), Lit { light, glow: -1.0 }));
            }
            Some(lit) if 0.005 < (lit.glow - glow).abs() => {
                if let Some(mut m) = materials.get_mut(&material.0) {
                    m.emissive = LinearRgba::rgb(1_500.0 * glow, 900.0 * glow, 300.0 * glow);
                }
                if let Ok(mut light) = lights.get_mut(lit.light) {
                    light.intensity = 2_500.0 * glow;
                }
                commands.entity(entity).insert(Lit { light: lit.light, glow });
            }
            Some(_) => {}
        }
    }
}

/// A bulb that has been given its own material and light.
#[derive(Component, Clone, Copy, Debug)]
pub(super) struct Lit {
    light: Entity,
    glow: f32,
}
