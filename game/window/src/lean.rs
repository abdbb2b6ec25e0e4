//! What the window asks of Bevy, and no more of a machine's processors than it needs.
//!
//! * A frame here is some hundreds of small systems. Handed round among threads, each costs more to hand over
//!   than to run: on sixteen cores more than half of a frame's processor time went into waking threads that
//!   found nothing to do. So each world (the app's, the renderer's) goes through its systems on one thread;
//!   the two still work side by side, and shaders are made beside both.
//! * Nothing here is picked, drawn as a sketch or treated after it is drawn by Bevy: those features are not built
//!   (`Cargo.toml` of the workspace names the ones that are).

use bevy::app::{PluginGroupBuilder, TaskPoolThreadAssignmentPolicy};
use bevy::ecs::schedule::{Schedules, SingleThreadedExecutor};
use bevy::prelude::*;
use bevy::render::{RenderApp, RenderPlugin};

/// The plugins of window, picture and bench.
pub(super) fn plugins(window: WindowPlugin, render: RenderPlugin, logged: &str) -> PluginGroupBuilder {
    let mut pools = TaskPoolOptions::default();
    pools.compute = TaskPoolThreadAssignmentPolicy { min_threads: 1, max_threads: 1, ..pools.compute };
    DefaultPlugins
        .build()
        .set(window)
        .set(render)
        .set(TaskPoolPlugin { task_pool_options: pools })
        .set(bevy::log::LogPlugin { filter: logged.to_owned(), ..default() })
}

/// Lets each world go through its systems on one thread. Called once all plugins are in.
pub(super) fn one_thread_each(app: &mut App) {
    let go = |world: &mut World| {
        for (_, schedule) in world.resource_mut::<Schedules>().iter_mut() {
            schedule.set_executor(SingleThreadedExecutor::new());
        }
    };
    go(app.world_mut());
    if let Some(render) = app.get_sub_app_mut(RenderApp) {
        go(render.world_mut());
    }
}
