//! The room in three dimensions. To come: a floor and a light for now.

use bevy::prelude::*;

/// Adds the room.
pub(super) fn plugin(app: &mut App) {
    app.add_systems(Startup, build);
}

fn build(
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    commands.spawn((
        Mesh3d(meshes.add(Cuboid::new(4.0, 0.1, 4.0))),
        MeshMaterial3d(
            materials.add(StandardMaterial { base_color: Color::srgb(0.6, 0.6, 0.58), ..default() }),
        ),
    ));
    commands.spawn((
        DirectionalLight { illuminance: 2_600.0, ..default() },
        Transform::from_xyz(-2.0, 4.0, 3.0).looking_at(Vec3::ZERO, Vec3::Y),
    ));
}
