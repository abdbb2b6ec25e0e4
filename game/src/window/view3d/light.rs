//! Daylight: an environment painted in code, a sun through the window, and what the quality allows of
//! shadow and contact shade.

use bevy::anti_alias::fxaa::Fxaa;
use bevy::asset::RenderAssetUsages;
use bevy::camera::Exposure;
use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::light::{CascadeShadowConfigBuilder, DirectionalLightShadowMap, GeneratedEnvironmentMapLight};
use bevy::prelude::*;
use bevy::render::render_resource::{
    Extent3d, TextureDimension, TextureFormat, TextureViewDescriptor, TextureViewDimension,
};

use super::super::app::{Drawn, RoomCamera};
use super::super::prefs::Quality;

/// Edge of the environment's faces, px.
const EDGE: u32 = 64;

/// Spawns the sun.
pub(super) fn sun(mut commands: Commands, drawn: Res<Drawn>) {
    let high = drawn.0 == Quality::High;
    commands.insert_resource(DirectionalLightShadowMap { size: 2048 });
    commands.spawn((
        DirectionalLight {
            illuminance: 4_600.0,
            color: Color::linear_rgb(1.0, 0.96, 0.90),
            shadow_maps_enabled: high,
            ..default()
        },
        CascadeShadowConfigBuilder {
            num_cascades: 3,
            maximum_distance: 9.0,
            first_cascade_far_bound: 2.2,
            ..default()
        }
        .build(),
        Transform::from_xyz(-2.6, 5.2, 3.6).looking_at(Vec3::new(-0.4, 0.0, -0.4), Vec3::Y),
    ));
}

/// Gives the room's camera its eye for light, once it is there.
pub(super) fn dress_camera(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    cameras: Query<Entity, Added<RoomCamera>>,
) {
    for camera in &cameras {
        // Neither bloom nor ambient occlusion: with a viewport that is not the whole target Bevy's bloom
        // leaves the room black, and its occlusion is read at the wrong place, which takes the daylight away.
        commands.entity(camera).insert((
            Exposure { ev100: 10.2 },
            Tonemapping::AgX,
            Msaa::Off,
            Fxaa::default(),
            GeneratedEnvironmentMapLight {
                environment_map: images.add(environment()),
                intensity: 620.0,
                ..default()
            },
        ));
    }
}

/// The light that comes in direction `d`: pale walls, a soft-box above, a window on the left, dark floor.
fn sky(d: Vec3) -> Vec3 {
    let smooth = |a: f32, b: f32, x: f32| {
        let t = ((x - a) / (b - a)).clamp(0.0, 1.0);
        t * t * (3.0 - 2.0 * t)
    };
    let wall = Vec3::new(0.92, 0.91, 0.88);
    let floor = Vec3::new(0.20, 0.20, 0.20);
    let mut light = floor.lerp(wall, smooth(-0.35, 0.15, d.y));
    // Soft-box in the ceiling.
    if 0.0 < d.y {
        let (x, z) = (d.x / d.y, d.z / d.y);
        let inside = smooth(0.95, 0.6, x.abs()) * smooth(0.7, 0.4, (z - 0.2).abs());
        light += Vec3::new(6.0, 5.9, 5.7) * inside;
    }
    // Window on the left, sky a little blue.
    if d.x < -0.2 {
        let (y, z) = (d.y / -d.x, d.z / -d.x);
        let inside = smooth(0.75, 0.5, (z - 0.3).abs()) * smooth(0.5, 0.3, (y - 0.35).abs());
        light += Vec3::new(3.5, 3.8, 4.2) * inside;
    }
    light
}

fn environment() -> Image {
    let mut data = Vec::with_capacity((EDGE * EDGE * 6 * 8) as usize);
    for face in 0..6 {
        for y in 0..EDGE {
            for x in 0..EDGE {
                let u = (x as f32 + 0.5) / EDGE as f32 * 2.0 - 1.0;
                let v = (y as f32 + 0.5) / EDGE as f32 * 2.0 - 1.0;
                let d = match face {
                    0 => Vec3::new(1.0, -v, -u),
                    1 => Vec3::new(-1.0, -v, u),
                    2 => Vec3::new(u, 1.0, v),
                    3 => Vec3::new(u, -1.0, -v),
                    4 => Vec3::new(u, -v, 1.0),
                    _ => Vec3::new(-u, -v, -1.0),
                };
                let light = sky(d.normalize());
                for value in [light.x, light.y, light.z, 1.0] {
                    data.extend_from_slice(&half_float(value).to_le_bytes());
                }
            }
        }
    }
    let size = Extent3d { width: EDGE, height: EDGE, depth_or_array_layers: 6 };
    let mut image = Image::new(
        size,
        TextureDimension::D2,
        data,
        TextureFormat::Rgba16Float,
        RenderAssetUsages::default(),
    );
    image.texture_view_descriptor =
        Some(TextureViewDescriptor { dimension: Some(TextureViewDimension::Cube), ..default() });
    image
}

/// A positive number as IEEE 754 half precision, rounded down; small enough ones become zero.
fn half_float(value: f32) -> u16 {
    let bits = value.to_bits();
    let exponent = (bits >> 23 & 0xFF) as i32 - 127 + 15;
    if exponent <= 0 {
        return 0;
    }
    if 31 <= exponent {
        return 0x7BFF;
    }
    (exponent as u16) << 10 | (bits >> 13 & 0x3FF) as u16
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_precision_as_the_standard_says() {
        assert_eq!(half_float(1.0), 0x3C00);
        assert_eq!(half_float(0.5), 0x3800);
        assert_eq!(half_float(6.5), 0x4680);
        assert_eq!(half_float(1e6), 0x7BFF);
        assert_eq!(half_float(0.0), 0);
    }

    #[test]
    fn it_is_brightest_above_and_darkest_below() {
        let sum = |d: Vec3| sky(d).element_sum();
        assert!(sum(Vec3::Z) < sum(Vec3::Y));
        assert!(sum(Vec3::NEG_Y) < sum(Vec3::Z));
    }
}
