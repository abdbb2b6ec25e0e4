//! `pinhole shot`: a picture of a screen, drawn without a window. It needs an adapter but no display.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use anyhow::{Context as _, bail};
use assess::locale::sentence::Sentence;
use assess::sentence;
use bevy::app::ScheduleRunnerPlugin;
use bevy::camera::RenderTarget;
use bevy::image::ImageFormat;
use bevy::prelude::*;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy::winit::WinitPlugin;
use bevy_egui::EguiInput;

use super::app::{LOGGED, cameras, common};
use super::flow::between_frames;
use super::renderer::Renderer;
use super::resources::{ShopRes, UiRes, canvas};
use super::shown::{Middle, Page};
use super::state::Ui;
use super::view3d::picture::Picture;
use super::{app, lean, probe};
use crate::args::{ShotArgs, ShotScreen};
use front::output::{Kind, Output, Outputs};
use front::places::Places;
use front::prefs::Prefs;
use front::shop::Shop;
use front::words::Words;

#[cfg(test)]
mod tests;

/// Frames drawn at least before the picture is taken: panels find their size, remarks fade in.
const FRAMES: u32 = 40;
/// Longest time for the shaders to be made and the room to come to rest: a picture with something missing is
/// none.
const LONGEST: Duration = Duration::from_secs(180);
/// Rest between frames while shaders are being made, so that those who make them are not kept from it.
const WHILE_PREPARING: Duration = Duration::from_millis(2);

/// Frames before the first key is pressed, and between two.
const FIRST_KEY: u32 = 12;
const FRAMES_PER_KEY: u32 = 3;

#[derive(Resource)]
struct Shot {
    target: Handle<Image>,
    to: Output,
    began: Instant,
    frame: u32,
    taken: bool,
    trouble: Trouble,
    /// Keys still to press, last first.
    keys: Vec<egui::Event>,
}

/// Why there is no picture; outlives the app.
type Trouble = Arc<Mutex<Option<Sentence>>>;

/// Takes the picture.
pub fn run(places: &Places, args: &ShotArgs) -> anyhow::Result<()> {
    run_with(places, args, |_| {})
}

/// Takes the picture; `ready` is given the app before its first frame.
fn run_with(places: &Places, args: &ShotArgs, ready: impl FnOnce(&mut App)) -> anyhow::Result<()> {
    let inputs = args.attempt.iter().chain(&args.script);
    let output = Outputs::beside(inputs).plan("--out", &args.out, Kind::Picture)?;
    let adapter = probe::adapter().map_err(|why| why.sentence())?;
    let mut prefs = Prefs { language: args.lang.clone(), scale: args.scale, ..Prefs::default() };
    prefs.pressure = args.unit;
    // A running pump's trembling would keep the room from ever coming to rest.
    prefs.reduced_motion = true;
    if let Some(quality) = args.quality {
        prefs.quality = quality.into();
    }
    let words = Words::open(&front::places::data(places)?, &prefs.languages())?;
    if words.tag() != args.lang {
        bail!(sentence!(
            "shot-no-language",
            "there is no language {tag}; there is {known}",
            tag = assess::locale::quote::quoted(&args.lang),
            known = words.tags().join(", ")
        ));
    }
    let mut shop = Shop::open(places)?;
    let mut ui = Ui { prefs, ..Ui::default() };
    set_up(&mut shop, &mut ui, args)?;
    let mut app = App::new();
    let plugins = lean::plugins(app::no_window(), app::render_plugin(&adapter), LOGGED);
    app.add_plugins(plugins.disable::<WinitPlugin>())
        .add_plugins(ScheduleRunnerPlugin::run_loop(Duration::ZERO));
    common(&mut app, shop, words, ui, &adapter);
    app.world_mut().resource_mut::<Picture>().always_sharp = true;
    let (width, height) = args.size;
    let target = app.world_mut().resource_mut::<Assets<Image>>().add(canvas(width, height));
    let place = RenderTarget::Image(target.clone().into());
    let keys = args.keys.iter().rev().cloned().collect();
    let trouble = Trouble::default();
    let shot = Shot {
        target,
        to: output,
        began: Instant::now(),
        frame: 0,
        taken: false,
        trouble: trouble.clone(),
        keys,
    };
    app.insert_resource(shot)
        .add_systems(Startup, move |mut commands: Commands| cameras(&mut commands, &place))
        .add_systems(PreUpdate, |mut shop: ResMut<ShopRes>, mut ui: ResMut<UiRes>| {
            between_frames(&mut shop.0, &mut ui.0, 0.0);
        })
        .add_systems(Update, press)
        .add_systems(Last, count);
    ready(&mut app);
    let exit = app.run();
    let told = trouble.lock().unwrap_or_else(PoisonError::into_inner).take();
    match (exit, told) {
        (AppExit::Success, None) => Ok(()),
        (_, Some(why)) => Err(front::message::about(&args.out)(anyhow::anyhow!(why))),
        (AppExit::Error(_), None) => {
            let file = assess::locale::quote::path(&args.out);
            bail!(sentence!("shot-stopped", "{file}: the renderer stopped", file = file))
        }
    }
}

/// Brings shop and panels into the state to be photographed.
fn set_up(shop: &mut Shop, ui: &mut Ui, args: &ShotArgs) -> anyhow::Result<()> {
    if args.screen == ShotScreen::FrontDesk {
        return Ok(());
    }
    match &args.attempt {
        Some(file) => shop.show_attempt(file)?,
        None => shop.rehearse(&args.job, args.seed)?,
    }
    if let Some(file) = &args.script {
        let text = front::script::read(file)?;
        shop.play(&text)?;
    }
    ui.page = match args.screen {
        ShotScreen::FrontDesk => Page::FrontDesk,
        ShotScreen::Settings => Page::Settings,
        ShotScreen::MarkSheet => Page::MarkSheet,
        ShotScreen::Room | ShotScreen::Diagram | ShotScreen::Both => Page::Workshop,
    };
    ui.middle = match args.screen {
        ShotScreen::Diagram => Middle::Diagram,
        ShotScreen::Both => Middle::Both,
        _ => Middle::Room,
    };
    ui.eye = match args.station {
        Some(station) => station.into(),
        None => shop.view().map(|v| v.station).unwrap_or_default(),
    };
    if let Some(leaf) = args.leaf {
        ui.clipboard.show_leaf(leaf.into(), shop);
    }
    // What was said on the way here is not part of the picture; what the keys lead to is.
    ui.remarks.let_go(shop);
    if args.screen == ShotScreen::MarkSheet {
        shop.wait_for_mark();
    }
    Ok(())
}

/// Presses the next key every few frames, so that the panels follow.
fn press(mut shot: ResMut<Shot>, mut inputs: Query<&mut EguiInput>) {
    for mut input in &mut inputs {
        // No window, no focus; but the picture shall show where it would be.
        input.focused = true;
    }
    if !shot.frame.is_multiple_of(FRAMES_PER_KEY) || shot.frame < FIRST_KEY {
        return;
    }
    if let Some(event) = shot.keys.pop() {
        for mut input in &mut inputs {
            input.events.push(event.clone());
        }
        // The panels and the light settle anew.
        shot.frame = FIRST_KEY;
    }
}

fn count(
    mut shot: ResMut<Shot>,
    ui: Res<UiRes>,
    room: Res<Picture>,
    renderer: Res<Renderer>,
    mut commands: Commands,
    mut exit: MessageWriter<AppExit>,
) {
    shot.frame += 1;
    if shot.taken {
        return;
    }
    let frame = renderer.frame();
    let whole = frame.is_some_and(|report| report.is_whole());
    let settled = whole && (ui.0.scene.is_none() || room.rests());
    if let Some(report) = frame.filter(|report| settled && 0 < report.failed) {
        let why =
            sentence!("shot-no-shaders", "this adapter cannot make {n} of the shaders", n = report.failed);
        shot.give_up(&mut exit, why);
    } else if FRAMES <= shot.frame && settled {
        shot.taken = true;
        commands.spawn(Screenshot::image(shot.target.clone())).observe(save);
    } else if LONGEST <= shot.began.elapsed() {
        let waited = LONGEST.as_secs();
        let why = match frame {
            None => sentence!(
                "shot-no-frame",
                "after {s} s the picture is not whole: no frame was drawn",
                s = waited
            ),
            Some(report) => sentence!(
                "shot-not-whole",
                "after {s} s the picture is not whole: {shaders} shaders and {rest} shapes or images are missing",
                s = waited,
                shaders = report.in_work,
                rest = report.missing
            ),
        };
        shot.give_up(&mut exit, why);
    } else if !whole {
        std::thread::sleep(WHILE_PREPARING);
    }
}

impl Shot {
    /// Leaves without a picture.
    fn give_up(&mut self, exit: &mut MessageWriter<AppExit>, why: Sentence) {
        self.taken = true;
        *self.trouble.lock().unwrap_or_else(PoisonError::into_inner) = Some(why);
        exit.write(AppExit::error());
    }
}

fn save(taken: On<ScreenshotCaptured>, mut shot: ResMut<Shot>, mut exit: MessageWriter<AppExit>) {
    let saved = taken.image.clone().try_into_dynamic().map_err(anyhow::Error::from).and_then(|image| {
        let png = ImageFormat::Png.as_image_crate_format().context("pictures in PNG")?;
        let mut bytes = std::io::Cursor::new(Vec::new());
        image.to_rgb8().write_to(&mut bytes, png)?;
        Ok(shot.to.clone().write(&bytes.into_inner())?)
    });
    match saved {
        Ok(()) => {
            exit.write(AppExit::Success);
        }
        Err(error) => shot.give_up(&mut exit, front::message::sentence(&error)),
    }
}
