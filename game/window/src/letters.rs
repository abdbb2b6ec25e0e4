//! The letters are on the card before they are drawn.
//!
//! When a letter is needed for the first time, egui draws it into its atlas and the panels that need it in the
//! same frame. What has changed in the atlas reaches the renderer as an event of the image. Events are sent once
//! in a frame; when they were sent before the atlas was written, the letters came a frame later than the text
//! made of them, which for that frame had gaps. So the atlas is written first.

use bevy::asset::AssetEventSystems;
use bevy::prelude::*;
use bevy_egui::EguiPostUpdateSet;

/// Puts the two in order.
pub(super) fn plugin(app: &mut App) {
    app.configure_sets(PostUpdate, EguiPostUpdateSet::PostProcessOutput.before(AssetEventSystems));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Resource, Default)]
    struct Order(Vec<&'static str>);

    #[test]
    fn the_atlas_is_written_before_its_change_is_told() {
        // Added both ways round: without the plugin one of the two is wrong.
        for swapped in [false, true] {
            let mut app = App::new();
            let write = |mut order: ResMut<Order>| order.0.push("atlas");
            let tell = |mut order: ResMut<Order>| order.0.push("events");
            app.init_resource::<Order>().add_plugins(plugin);
            if swapped {
                app.add_systems(PostUpdate, tell.in_set(AssetEventSystems));
                app.add_systems(PostUpdate, write.in_set(EguiPostUpdateSet::PostProcessOutput));
            } else {
                app.add_systems(PostUpdate, write.in_set(EguiPostUpdateSet::PostProcessOutput));
                app.add_systems(PostUpdate, tell.in_set(AssetEventSystems));
            }
            app.update();
            assert_eq!(app.world().resource::<Order>().0, ["atlas", "events"], "swapped: {swapped}");
        }
    }
}
