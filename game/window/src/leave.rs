//! Leaving in order. A program that ends while shaders are still being made pulls the graphics driver from
//! under the threads that make them; hardware drivers answer with a crash after all work was done.
//!
//! So, once somebody has asked to leave, and before the app is taken apart: no frame is drawn any more, what
//! has not begun is called off, every thread that makes shaders puts its work down, and the card finishes.

use std::sync::{Arc, Barrier, Mutex, PoisonError};

use bevy::app::{AppExit, MainScheduleOrder, SubApp};
use bevy::ecs::schedule::{MainThreadExecutor, ScheduleLabel};
use bevy::prelude::*;
use bevy::render::pipelined_rendering::RenderAppChannels;
use bevy::render::render_resource::PipelineCache;
use bevy::render::renderer::RenderDevice;
use bevy::tasks::{AsyncComputeTaskPool, ComputeTaskPool, block_on};

/// Comes after everything else in a frame, so that it sees whoever asked to leave in it.
#[derive(ScheduleLabel, Clone, Debug, PartialEq, Eq, Hash)]
struct Leaving;

/// Leaves in order whoever asks: a button, the window's own cross, an interrupt, a picture that is taken.
pub(super) fn plugin(app: &mut App) {
    app.add_schedule(Schedule::new(Leaving));
    app.world_mut().resource_mut::<MainScheduleOrder>().insert_after(Last, Leaving);
    app.add_systems(Leaving, put_down.run_if(on_message::<AppExit>));
}

fn put_down(world: &mut World) {
    // Without a renderer of its own thread there is nothing to wait for.
    let Some(mut channels) = world.remove_resource::<RenderAppChannels>() else { return };
    let executor = world.get_resource::<MainThreadExecutor>().cloned();
    // The renderer may need this thread to end the frame in its hands.
    let returned = ComputeTaskPool::get()
        .scope_with_executor(true, executor.as_ref().map(|e| &*e.0), |scope| {
            scope.spawn(async { channels.recv().await });
        })
        .pop()
        .flatten();
    if let Some(mut renderer) = returned {
        stop(&mut renderer);
        channels.send_blocking(renderer);
    }
    world.insert_resource(channels);
}

fn stop(renderer: &mut SubApp) {
    renderer.update_schedule = None;
    renderer.set_extract(|_, _| {});
    // Calls off what has not begun.
    renderer.world_mut().remove_resource::<PipelineCache>();
    wait_for_shader_threads();
    if let Some(device) = renderer.world().get_resource::<RenderDevice>()
        && let Err(error) = device.poll(bevy::render::render_resource::PollType::wait_indefinitely())
    {
        warn!("the graphics card did not finish: {error}");
    }
}

/// Returns once every thread that makes shaders has put its work down: they all have to meet.
fn wait_for_shader_threads() {
    // Two meetings at once, in a process with two apps, would each hold threads that the other waits for.
    static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());
    let _one = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let Some(pool) = AsyncComputeTaskPool::try_get() else { return };
    let meeting = Arc::new(Barrier::new(pool.thread_num()));
    let there: Vec<_> = (0..pool.thread_num())
        .map(|_| {
            let meeting = meeting.clone();
            pool.spawn(async move { meeting.wait().is_leader() })
        })
        .collect();
    for thread in there {
        block_on(thread);
    }
}
