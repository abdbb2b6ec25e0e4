//! The Bevy app: time, panels, room. The only place where the three meet.

use bevy::camera::RenderTarget;
use bevy::core_pipeline::tonemapping::{DebandDither, Tonemapping};
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::render::settings::WgpuSettings;
use bevy::window::{PresentMode, WindowResolution};
use bevy_egui::{EguiContexts, EguiGlobalSettings, EguiPlugin, EguiPrimaryContextPass, PrimaryEguiContext};
use std::path::Path;

use super::flow::between_frames;
use super::probe::Adapter;
use super::resources::{Drawn, RoomCamera, ShopRes, UiRes, WordsRes};
use super::state::Ui;
use super::{idle, in_turn, lean, leave, letters, renderer, theme, tree, ui, view3d};
use front::prefs::{Prefs, Quality};
use front::shop::Shop;
use front::words::Words;

/// The style that was last given to the context.
#[derive(Resource, Debug, Default)]
struct Styled(Option<f32>);

fn decided(prefs: &Prefs, adapter: &Adapter) -> Quality {
    match prefs.quality {
        Quality::Auto if adapter.software => Quality::Low,
        Quality::Auto => Quality::High,
        chosen => chosen,
    }
}

/// The renderer, on the adapter that was found.
pub(super) fn render_plugin(adapter: &Adapter) -> RenderPlugin {
    let settings = WgpuSettings { backends: Some(adapter.backends), ..default() };
    RenderPlugin { render_creation: settings.into(), ..default() }
}

/// Everything that window and picture have in common.
pub(super) fn common(app: &mut App, shop: Shop, words: Words, ui: Ui, adapter: &Adapter) {
    let drawn = Drawn(decided(&ui.prefs, adapter));
    app.insert_resource(ShopRes(shop))
        .insert_resource(WordsRes(words))
        .insert_resource(UiRes(ui))
        .insert_resource(drawn)
        .init_resource::<Styled>()
        .add_plugins(EguiPlugin::default())
        .add_plugins((in_turn::plugin, letters::plugin))
        .add_plugins(renderer::plugin)
        .add_plugins(view3d::plugin)
        .add_plugins(leave::plugin)
        .add_systems(EguiPrimaryContextPass, panels);
    // The panels have a camera of their own, over the room's.
    app.world_mut().resource_mut::<EguiGlobalSettings>().auto_create_primary_context = false;
    lean::one_thread_each(app);
}

/// No window at all: a picture is drawn, or frames are counted.
pub(super) fn no_window() -> WindowPlugin {
    WindowPlugin { primary_window: None, exit_condition: bevy::window::ExitCondition::DontExit, ..default() }
}

/// Spawns both cameras: the room's, which draws into a picture of its own, and the panels' onto a target.
pub(super) fn cameras(commands: &mut Commands, target: &RenderTarget) {
    commands.spawn((RoomCamera, Camera3d::default(), Camera { order: 0, is_active: false, ..default() }));
    // The panels smooth their own edges and choose their own colours: samples and tone curves would only cost.
    commands.spawn((
        PrimaryEguiContext,
        Camera2d,
        Camera { order: 1, ..default() },
        Msaa::Off,
        Tonemapping::None,
        DebandDither::Disabled,
        target.clone(),
    ));
}

/// Opens the window; returns when it is closed.
pub(super) fn run(shop: Shop, words: Words, ui: Ui, adapter: &Adapter, tree: Option<&Path>) {
    let mut app = App::new();
    let window = Window {
        title: words.say("window-title"),
        resolution: WindowResolution::new(1280, 720),
        present_mode: PresentMode::AutoVsync,
        ..default()
    };
    let window = WindowPlugin { primary_window: Some(window), ..default() };
    app.add_plugins(lean::plugins(window, render_plugin(adapter), LOGGED));
    common(&mut app, shop, words, ui, adapter);
    if let Some(file) = tree {
        tree::write_to(&mut app, file);
    }
    app.add_plugins(idle::plugin)
        .add_systems(Startup, |mut commands: Commands| cameras(&mut commands, &RenderTarget::default()))
        .add_systems(PreUpdate, between)
        .run();
}

/// What is worth telling on the terminal.
pub(super) const LOGGED: &str = "error,wgpu=error,naga=error";

fn between(
    time: Res<Time<Real>>,
    mut shop: ResMut<ShopRes>,
    mut ui: ResMut<UiRes>,
    mut words: ResMut<WordsRes>,
    mut exit: MessageWriter<AppExit>,
) {
    between_frames(&mut shop.0, &mut ui.0, time.delta_secs_f64());
    if std::mem::take(&mut ui.0.reload_words) {
        // The language that was there a moment ago stays when the new one cannot be read.
        if let Ok(new) = Words::open(shop.0.root(), &ui.0.prefs.languages()) {
            shop.0.speak(&[new.tag().to_owned()]);
            words.0 = new;
        }
    }
    if ui.0.quit {
        exit.write(AppExit::Success);
    }
}

/// Draws the panels: the only system that does.
fn panels(
    mut contexts: EguiContexts,
    shop: Res<ShopRes>,
    words: Res<WordsRes>,
    mut ui: ResMut<UiRes>,
    mut styled: ResMut<Styled>,
) -> Result {
    let ctx = contexts.ctx_mut()?;
    if styled.0 != Some(ui.0.prefs.scale) {
        theme::apply(ctx, ui.0.prefs.scale);
        styled.0 = Some(ui.0.prefs.scale);
    }
    let area = egui::UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(ctx.viewport_rect());
    let mut root = egui::Ui::new(ctx.clone(), "root".into(), area);
    ui::draw(&mut root, &shop.0, &words.0, &mut ui.0);
    Ok(())
}
