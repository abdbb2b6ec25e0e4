//! What a fast card does, without one: frames as fast as the processor can, shaders held back on purpose.

use std::io::Write as _;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use bevy::render::render_resource::PipelineCache;
use bevy::render::{Extract, ExtractSchedule, RenderApp};
use bevy::tasks::{AsyncComputeTaskPool, futures_lite::future::yield_now};
use clap::Parser as _;

use super::*;

/// More frames than anything in the window ever counted.
const MANY_FRAMES: usize = 60;

/// The first frames of a target themselves wait for a shader: after so long without a frame, what has queued
/// up is let pass.
const NO_FRAME: Duration = Duration::from_millis(700);

/// How long a shader thread is kept at work while the program leaves.
const AT_WORK: Duration = Duration::from_millis(700);

/// The two pictures may differ where a soft shadow or a smoothed edge was rounded otherwise.
const ROUNDING: u8 = 2;

/// The command line of a picture.
#[derive(clap::Parser)]
struct Line {
    #[command(flatten)]
    places: Places,
    #[command(flatten)]
    shot: ShotArgs,
}

/// `None` where nothing can draw.
fn shot(screen: &str, out: &std::path::Path) -> Option<(Places, ShotArgs)> {
    if let Err(why) = probe::adapter() {
        // Past the test runner's capture, so that nobody takes a skipped test for a passed one.
        drop(writeln!(std::io::stderr(), "skipped: 1 ({why})"));
        return None;
    }
    let out = out.to_string_lossy();
    let line = ["shot", screen, "--out", &out, "--size", "1280x720", "--station", "bench"];
    let Line { places, shot } = Line::try_parse_from(line).unwrap();
    let data = Some(concat!(env!("CARGO_MANIFEST_DIR"), "/../..").into());
    Some((Places { data, ..places }, shot))
}

/// Instead of a number of shaders: the picture has not been taken.
const NOT_YET: usize = usize::MAX;

/// What was seen before all shaders were there.
#[derive(Resource, Clone, Default)]
struct Seen {
    all_frames: Arc<AtomicUsize>,
    /// With the room in them, and without all shaders.
    frames: Arc<AtomicUsize>,
    whole: Arc<AtomicBool>,
    taken_with: Arc<AtomicUsize>,
}

/// Asks the renderer's own cache, not what the app has been told.
fn watch(
    seen: Res<Seen>,
    told: Res<Renderer>,
    shot: Extract<Res<Shot>>,
    room: Extract<Res<Picture>>,
    pipelines: Res<PipelineCache>,
) {
    seen.all_frames.fetch_add(1, Ordering::SeqCst);
    let waiting = pipelines.waiting_pipelines().count();
    if shot.taken {
        // The picture itself is brought from the card by a shader that is asked for later in this frame.
        if seen.taken_with.load(Ordering::SeqCst) == NOT_YET {
            seen.taken_with.store(waiting, Ordering::SeqCst);
        }
        return;
    }
    if told.room().is_none() || waiting == 0 {
        return;
    }
    seen.frames.fetch_add(1, Ordering::SeqCst);
    seen.whole.fetch_or(room.is_built(), Ordering::SeqCst);
}

#[test]
fn a_picture_waits_for_its_shaders_however_fast_frames_are() {
    let folder = tempfile::tempdir().unwrap();
    let (held, free) = (folder.path().join("held.png"), folder.path().join("free.png"));
    let Some((places, args)) = shot("room", &held) else { return };
    let seen = Seen { taken_with: Arc::new(NOT_YET.into()), ..Seen::default() };
    let seen_there = seen.clone();
    run_with(&places, &args, move |app| {
        let pool = AsyncComputeTaskPool::get();
        for _ in 0..pool.thread_num() {
            let seen = seen_there.clone();
            let hold_back = async move {
                let (mut since, mut last) = (Instant::now(), 0);
                while seen.frames.load(Ordering::SeqCst) < MANY_FRAMES {
                    let all = seen.all_frames.load(Ordering::SeqCst);
                    if last < all {
                        (since, last) = (Instant::now(), all);
                    } else if NO_FRAME < since.elapsed() {
                        yield_now().await;
                        since = Instant::now();
                    }
                    std::thread::sleep(Duration::from_millis(1));
                }
            };
            pool.spawn(hold_back).detach();
        }
        app.sub_app_mut(RenderApp).insert_resource(seen_there).add_systems(ExtractSchedule, watch);
    })
    .unwrap();
    let frames = seen.frames.load(Ordering::SeqCst);
    assert!(MANY_FRAMES <= frames, "{frames} frames without all shaders: they were not held back");
    assert!(!seen.whole.load(Ordering::SeqCst), "a room without its shaders was taken for whole");
    let taken_with = seen.taken_with.load(Ordering::SeqCst);
    assert_eq!(taken_with, 0, "shaders were missing when the picture was taken");

    let (places, args) = shot("room", &free).unwrap();
    run(&places, &args).unwrap();
    let (held, free) = (image::open(&held).unwrap().to_rgb8(), image::open(&free).unwrap().to_rgb8());
    assert_eq!(held.dimensions(), free.dimensions());
    let differ = held
        .pixels()
        .zip(free.pixels())
        .filter(|(a, b)| a.0.iter().zip(b.0).any(|(a, b)| ROUNDING < a.abs_diff(b)));
    assert_eq!(differ.count(), 0, "pixels differ from those of a picture whose shaders were not held back");
    // And it is a room: no single colour fills it.
    let colours: std::collections::BTreeSet<[u8; 3]> = held.pixels().map(|p| p.0).collect();
    assert!(2_000 < colours.len(), "{} colours", colours.len());
}

/// Keeps every thread that makes shaders busy with `work`.
fn occupy(work: impl Fn() + Clone + Send + 'static) {
    let pool = AsyncComputeTaskPool::get();
    for _ in 0..pool.thread_num() {
        let work = work.clone();
        pool.spawn(async move { work() }).detach();
    }
}

#[test]
fn nobody_makes_shaders_any_more_when_the_program_has_left() {
    let folder = tempfile::tempdir().unwrap();
    let Some((places, args)) = shot("front-desk", &folder.path().join("left.png")) else { return };
    let (begun, at_work) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
    let (begun_there, at_work_there) = (begun.clone(), at_work.clone());
    let left = run_with(&places, &args, move |app| {
        app.add_systems(First, move |mut frame: Local<u32>, mut exit: MessageWriter<AppExit>| {
            *frame += 1;
            if *frame == 5 {
                let (begun, at_work) = (begun_there.clone(), at_work_there.clone());
                occupy(move || {
                    begun.fetch_add(1, Ordering::SeqCst);
                    at_work.fetch_add(1, Ordering::SeqCst);
                    std::thread::sleep(AT_WORK);
                    at_work.fetch_sub(1, Ordering::SeqCst);
                });
            }
            // By then they are at it; then somebody leaves.
            if 5 < *frame && 0 < begun_there.load(Ordering::SeqCst) {
                exit.write(AppExit::Success);
            }
        });
    });
    left.unwrap();
    assert!(0 < begun.load(Ordering::SeqCst));
    assert_eq!(at_work.load(Ordering::SeqCst), 0, "shader threads are still at work");
}
