//! Daylight: the painted environment, a sun through the window, and what the quality allows of shadow.

use bevy::anti_alias::fxaa::Fxaa;
use bevy::camera::Exposure;
use bevy::core_pipeline::prepass::DepthPrepass;
use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::light::{CascadeShadowConfigBuilder, DirectionalLightShadowMap, ShadowFilteringMethod};
use bevy::pbr::ScreenSpaceAmbientOcclusion;
use bevy::prelude::*;
use bevy::render::view::{ColorGrading, ColorGradingGlobal, ColorGradingSection};

use super::super::resources::{Drawn, RoomCamera};
use super::sky;
use front::prefs::Quality;

/// Spawns the sun.
pub(super) fn sun(mut commands: Commands, drawn: Res<Drawn>) {
    let high = drawn.0 == Quality::High;
    commands.insert_resource(DirectionalLightShadowMap { size: if high { 2048 } else { 1024 } });
    commands.spawn((
        DirectionalLight {
            illuminance: 7_600.0,
            color: Color::linear_rgb(1.0, 0.96, 0.90),
            shadow_maps_enabled: true,
            ..default()
        },
        CascadeShadowConfigBuilder {
            num_cascades: if high { 3 } else { 1 },
            maximum_distance: if high { 9.0 } else { 5.0 },
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
    drawn: Res<Drawn>,
    cameras: Query<Entity, Added<RoomCamera>>,
) {
    for camera in &cameras {
        // The tone curve is a flat one: it keeps the bright lamp; the grading gives back the depth of the shade.
        let tones = ColorGradingSection { contrast: 1.22, saturation: 1.12, ..default() };
        commands.entity(camera).insert((
            Exposure { ev100: 10.2 },
            Tonemapping::AgX,
            ColorGrading::with_identical_sections(ColorGradingGlobal::default(), tones),
            Msaa::Off,
            Fxaa::default(),
            // Four samples of the shadow where a processor draws, not nine.
            if drawn.0 == Quality::High {
                ShadowFilteringMethod::Gaussian
            } else {
                ShadowFilteringMethod::Hardware2x2
            },
            DepthPrepass,
            sky::light(&mut images, 520.0),
        ));
        if drawn.0 == Quality::High {
            commands.entity(camera).insert(ScreenSpaceAmbientOcclusion::default());
        }
    }
}
