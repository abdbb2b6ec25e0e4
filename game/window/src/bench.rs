//! `pinhole bench --window`: what the window costs.
//!
//! Two runs of the program itself, without a display, in the middle of a job with the engine running and
//! instruments fitted. *Undrawn* has no renderer: all the processor time between two frames is that of
//! panels, workshop and scene. *Drawn* has the renderer that the window would have, and tells when the first
//! frame is there, when the room is, and how much memory was held at most.

use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

use anyhow::bail;
use assess::locale::quote;
use assess::sentence;
use bevy::app::ScheduleRunnerPlugin;
use bevy::camera::RenderTarget;
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::render::settings::{RenderCreation, WgpuSettings};
use bevy::winit::WinitPlugin;
use cpu_time::ProcessTime;

use super::app::{self, LOGGED, cameras, common};
use super::flow::between_frames;
use super::lean;
use super::probe;
use super::resources::{ShopRes, UiRes, canvas};
use super::shown::Page;
use super::state::Ui;
use super::view3d::picture::Picture;
use crate::args::{BenchPart, FrameArgs};
use front::ask::{Ask, Pace};
use front::message::because;
use front::places::Places;
use front::prefs::Prefs;
use front::shop::Shop;
use front::words::Words;

/// Size of the picture, px.
const SIZE: (u32, u32) = (1280, 720);
/// Frames before the clock is started, after the room is whole: panels find their size, buffers theirs.
const WARM: u32 = 120;
/// Frames that are measured.
const FRAMES: u32 = 600;
/// The same where a processor draws them.
const FRAMES_IN_SOFTWARE: u32 = 60;
/// Time between two frames, as the window has it.
const FRAME_S: f64 = 1.0 / 60.0;
/// The frame after which the first is surely on the screen: it is drawn while the next is made.
const FIRST_SHOWN: u32 = 3;
/// Nobody waits longer for the room.
const LONGEST: Duration = Duration::from_secs(180);

/// What a part tells.
#[derive(Debug, Default, serde::Serialize, serde::Deserialize)]
struct Told {
    /// Processor time of a frame, ms.
    frame_ms: Option<f64>,
    /// From the start to the first frame, s.
    first_frame_s: Option<f64>,
    /// From the start to the whole room, s.
    room_s: Option<f64>,
    /// Most memory held, MB.
    memory_mb: Option<f64>,
}

/// Measures and prints.
///
/// # Errors
/// When there is no adapter, or a part cannot be run.
pub fn run(
    out: &mut impl std::io::Write,
    words: &Words,
    places: &Places,
    args: &FrameArgs,
) -> anyhow::Result<()> {
    if let Some(part) = args.part {
        return measure(out, places, args, part);
    }
    let adapter = probe::adapter().map_err(|why| why.sentence())?;
    let picture = [("width", SIZE.0.into()), ("height", SIZE.1.into()), ("job", args.job.as_str().into())];
    writeln!(out, "{}", words.say_with("frames-picture", &picture))?;
    let kind = words.say(if adapter.software { "frames-software" } else { "frames-hardware" });
    let drawn_by = [("adapter", quote::bare(&adapter.name).to_string().into()), ("kind", kind.into())];
    writeln!(out, "{}", words.say_with("frames-adapter", &drawn_by))?;
    let undrawn = part(places, args, BenchPart::Undrawn)?;
    let drawn = part(places, args, BenchPart::Drawn)?;
    let number = |v: Option<f64>, unit: &str| {
        v.map_or_else(|| words.say("frames-not-known"), |v| format!("{} {unit}", words.number(v, 2)))
    };
    let rows = [
        ("frames-undrawn", number(undrawn.frame_ms, "ms")),
        ("frames-drawn", number(drawn.frame_ms, "ms")),
        ("frames-first", number(drawn.first_frame_s, "s")),
        ("frames-room", number(drawn.room_s, "s")),
        ("frames-memory", number(drawn.memory_mb, "MB")),
    ]
    .map(|(key, number)| (format!("{}:", words.say(key)), number));
    let width = rows.iter().map(|(name, _)| name.chars().count()).max().unwrap_or(0);
    for (name, number) in &rows {
        writeln!(out, "{name:<width$} {number}")?;
    }
    Ok(())
}

/// Runs one part in a process of its own: what it uses is then its alone.
fn part(places: &Places, args: &FrameArgs, part: BenchPart) -> anyhow::Result<Told> {
    let mut command = Command::new(std::env::current_exe()?);
    command.arg("bench").arg("--window").args(["--job", &args.job]).args(["--part", part.name()]);
    for (flag, place) in [("--data", &places.data), ("--attempts", &places.attempts)] {
        if let Some(place) = place {
            command.arg(flag).arg(place);
        }
    }
    let done =
        command.output().map_err(because(sentence!("frames-not-run", "the program cannot run itself")))?;
    if !done.status.success() {
        let why = quote::escaped(String::from_utf8_lossy(&done.stderr).trim());
        bail!(sentence!("frames-part", "part {part}: {why}", part = part.name(), why = why));
    }
    serde_json::from_slice(&done.stdout).map_err(because(sentence!(
        "frames-told",
        "what part {part} told",
        part = part.name()
    )))
}

/// When what happened.
#[derive(Resource, Debug)]
struct Clock {
    began: Instant,
    frame: u32,
    /// The frame from which on everything is there.
    whole_from: Option<u32>,
    from: Option<ProcessTime>,
    drawn: bool,
    frames: u32,
    told: Told,
}

fn measure(
    out: &mut impl std::io::Write,
    places: &Places,
    args: &FrameArgs,
    part: BenchPart,
) -> anyhow::Result<()> {
    let began = Instant::now();
    let drawn = part == BenchPart::Drawn;
    let adapter = probe::adapter().map_err(|why| why.sentence())?;
    let prefs = Prefs::default();
    let words = Words::open(&front::places::data(places)?, &prefs.languages())?;
    let mut shop = Shop::open(places)?;
    let ui = set_up(&mut shop, prefs, &args.job)?;
    let render = if drawn {
        app::render_plugin(&adapter)
    } else {
        let none = WgpuSettings { backends: None, ..default() };
        RenderPlugin { render_creation: RenderCreation::Automatic(Box::new(none)), ..default() }
    };
    let mut app = App::new();
    // Without a renderer Bevy complains that there is none.
    let plugins = lean::plugins(app::no_window(), render, if drawn { LOGGED } else { "off" });
    app.add_plugins(plugins.disable::<WinitPlugin>())
        .add_plugins(ScheduleRunnerPlugin::run_loop(Duration::ZERO));
    common(&mut app, shop, words, ui, &adapter);
    let target = app.world_mut().resource_mut::<Assets<Image>>().add(canvas(SIZE.0, SIZE.1));
    let place = RenderTarget::Image(target.into());
    let frames = if drawn && adapter.software { FRAMES_IN_SOFTWARE } else { FRAMES };
    let clock = Clock { began, frame: 0, whole_from: None, from: None, drawn, frames, told: Told::default() };
    app.insert_resource(clock)
        .add_systems(Startup, move |mut commands: Commands| cameras(&mut commands, &place))
        .add_systems(PreUpdate, |mut shop: ResMut<ShopRes>, mut ui: ResMut<UiRes>| {
            between_frames(&mut shop.0, &mut ui.0, FRAME_S);
        })
        .add_systems(First, count);
    app.set_runner(|mut app| {
        app.finish();
        app.cleanup();
        loop {
            app.update();
            if let Some(exit) = app.should_exit() {
                let told = app.world_mut().remove_resource::<Clock>().map(|c| c.told);
                TOLD.set(told.unwrap_or_default()).unwrap_or_default();
                return exit;
            }
        }
    });
    if app.run().is_error() {
        bail!(sentence!("frames-not-drawn", "nothing was measured: the panels or the room were not drawn"));
    }
    let told = TOLD.get().ok_or_else(|| sentence!("frames-nothing", "nothing was measured"))?;
    writeln!(out, "{}", serde_json::to_string(told)?)?;
    Ok(())
}

/// What was measured, out of the app's hands: it keeps its world to itself.
static TOLD: std::sync::OnceLock<Told> = std::sync::OnceLock::new();

/// The middle of a job: its own reference, up to the finding, then the clock runs.
fn set_up(shop: &mut Shop, prefs: Prefs, job: &str) -> anyhow::Result<Ui> {
    shop.rehearse(job, "1".parse()?)?;
    let text = shop
        .job()
        .and_then(|j| j.reference.clone())
        .ok_or_else(|| sentence!("frames-no-reference", "the job has no reference"))?;
    let before: Vec<&str> = text.lines().take_while(|line| !line.trim().starts_with("finding")).collect();
    shop.play(&before.join("\n"))?;
    shop.play("chocks on\nkey on\nengine idle")?;
    shop.carry_out([Ask::Pace(Pace::Live)]);
    let eye = shop.view().map(|v| v.station).unwrap_or_default();
    Ok(Ui { prefs, page: Page::Workshop, eye, ..Ui::default() })
}

/// Counts frames; keeps the times.
fn count(mut clock: ResMut<Clock>, room: Res<Picture>, ui: Res<UiRes>, mut exit: MessageWriter<AppExit>) {
    clock.frame += 1;
    let so_far = clock.began.elapsed();
    if clock.drawn && clock.frame == FIRST_SHOWN {
        clock.told.first_frame_s = Some(so_far.as_secs_f64());
    }
    if clock.whole_from.is_none() && (room.is_built() || !clock.drawn) {
        clock.whole_from = Some(clock.frame);
        clock.told.room_s = clock.drawn.then_some(so_far.as_secs_f64());
    }
    let Some(whole_from) = clock.whole_from else {
        if LONGEST <= so_far {
            error!("the room was not whole after {} s", LONGEST.as_secs());
            exit.write(AppExit::error());
        }
        return;
    };
    let (warm, end) = (whole_from + WARM, whole_from + WARM + clock.frames);
    if clock.frame == warm {
        clock.from = Some(ProcessTime::now());
    }
    if clock.frame == end && ui.0.scene.is_none() {
        // Panels that were not laid out cost nothing, which would not be the truth.
        error!("the panels were not drawn");
        exit.write(AppExit::error());
    } else if clock.frame == end {
        clock.told.frame_ms =
            clock.from.map(|from| from.elapsed().as_secs_f64() * 1e3 / f64::from(clock.frames));
        clock.told.memory_mb = memory_mb(Path::new("/proc/self/status"));
        exit.write(AppExit::Success);
    }
}

/// Most resident memory so far, MB, where the system tells it (Linux).
fn memory_mb(status: &Path) -> Option<f64> {
    let text = std::fs::read_to_string(status).ok()?;
    let line = text.lines().find(|l| l.starts_with("VmHWM:"))?;
    Some(line.split_whitespace().nth(1)?.parse::<f64>().ok()? / 1024.0)
}
