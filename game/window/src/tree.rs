//! The accessible tree, written to a file whenever it changes: what a screen reader is given, with where
//! it is on the screen. For people who check names, and for scripts that use the window like a hand.

use std::collections::BTreeMap;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use bevy::input::keyboard::KeyboardInput;
use bevy::input::mouse::{MouseButtonInput, MouseWheel};
use bevy::prelude::*;
use bevy::window::CursorMoved;
use bevy_egui::{EguiInputSet, EguiOutput, EguiPostUpdateSet, PrimaryEguiContext};
use egui::accesskit;

use super::in_turn::Waiting;
use super::resources::UiRes;

/// A node of the tree.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Node {
    /// Role, as AccessKit calls it.
    pub role: String,
    /// Name.
    pub name: String,
    /// Value of a field or slider.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<String>,
    /// Left, top, right, bottom, physical pixels.
    pub at: [f64; 4],
    /// It has the focus.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub focused: bool,
    /// It is switched on.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub on: bool,
    /// It cannot be used now.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub disabled: bool,
}

/// What the file holds.
#[derive(Clone, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Told {
    /// Keys pressed, buttons pressed and released, and turns of the wheel that have come in so far.
    pub heard: u64,
    /// Frames drawn since the last of them, or of the pointer's moves, up to [`SETTLED`]: what it led to can then be seen.
    pub frames: u32,
    /// What the program holds at that moment.
    #[serde(default)]
    pub held: Held,
    /// The nodes.
    pub nodes: Vec<Node>,
}

/// How much of each kind the program holds: what grows without need grows here.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub struct Held {
    /// Entities of the room and its cameras.
    pub entities: usize,
    /// Meshes.
    pub meshes: usize,
    /// Pictures.
    pub images: usize,
    /// Materials.
    pub materials: usize,
}

/// Frames after which the panels show all that an input led to: asked, carried out, laid out, measured.
pub const SETTLED: u32 = 4;

/// The nodes that have a name or a value, in the order of the tree.
#[must_use]
pub fn nodes(update: &accesskit::TreeUpdate) -> Vec<Node> {
    let all: BTreeMap<u64, &accesskit::Node> = update.nodes.iter().map(|(id, n)| (id.0, n)).collect();
    let root = update.nodes.iter().find(|(_, n)| n.role() == accesskit::Role::Window);
    let Some((root, window)) = root else { return Vec::new() };
    let scale = window.transform().map_or(1.0, |t| t.as_coeffs()[0]);
    let mut out = Vec::new();
    // Depth first, first child first; children that are missing from the update are passed over.
    let mut left = vec![root.0];
    while let Some(id) = left.pop() {
        let Some(n) = all.get(&id) else { continue };
        out.extend(node(n, &all, id == update.focus.0, scale));
        left.extend(n.children().iter().rev().map(|child| child.0));
    }
    out
}

/// What a label says.
fn said(n: &accesskit::Node) -> &str {
    n.label().or_else(|| n.value()).unwrap_or_default()
}

fn node(
    n: &accesskit::Node,
    all: &BTreeMap<u64, &accesskit::Node>,
    focused: bool,
    scale: f64,
) -> Option<Node> {
    let value = n.value().map(str::to_owned);
    // What a label says is its value; pieces of it, line by line, say nothing new.
    let is_text = n.role() == accesskit::Role::Label;
    if n.role() == accesskit::Role::TextRun {
        return None;
    }
    let name = match (n.label(), &value) {
        (None, Some(text)) if is_text => text.clone(),
        (Some(label), _) => label.to_owned(),
        // A field is called by the label before it.
        (None, _) => {
            let labels = n.labelled_by().iter().filter_map(|id| all.get(&id.0)).map(|label| said(label));
            labels.collect::<Vec<_>>().join(" ")
        }
    };
    let bounds = n.bounds()?;
    if name.is_empty() && value.is_none() {
        return None;
    }
    let at = [bounds.x0, bounds.y0, bounds.x1, bounds.y1].map(|v| (v * scale).round());
    Some(Node {
        role: format!("{:?}", n.role()),
        name,
        value: value.filter(|_| !is_text),
        at,
        focused,
        on: n.toggled() == Some(accesskit::Toggled::True) || n.is_selected() == Some(true),
        disabled: n.is_disabled(),
    })
}

#[derive(Resource, Debug)]
struct Written {
    to: PathBuf,
    last: Told,
    heard: u64,
    frames: u32,
}

/// Writes the tree to `file` after each frame in which it changed.
pub(super) fn write_to(app: &mut App, file: &Path) {
    app.insert_resource(Written { to: file.to_owned(), last: Told::default(), heard: 0, frames: 0 })
        .add_systems(PreUpdate, hear.after(EguiInputSet::WriteEguiEvents))
        .add_systems(PostUpdate, write.after(EguiPostUpdateSet::ProcessOutput));
}

/// Counts what comes in.
fn hear(
    mut written: ResMut<Written>,
    mut keys: MessageReader<KeyboardInput>,
    mut buttons: MessageReader<MouseButtonInput>,
    mut wheel: MessageReader<MouseWheel>,
    mut moves: MessageReader<CursorMoved>,
    waiting: Option<Res<Waiting>>,
    ui: Option<Res<UiRes>>,
) {
    let keys = keys.read().filter(|k| k.state.is_pressed()).count();
    let new = keys + buttons.read().count() + wheel.read().count();
    written.heard += new as u64;
    // What waits for its frame has led to nothing yet, and nothing is clicked while the eye glides.
    let waits = waiting.is_some_and(|w| !w.is_empty());
    let glides = ui.is_some_and(|ui| ui.0.hotspots.glides);
    if 0 < new || 0 < moves.read().count() || waits || glides {
        written.frames = 0;
    }
}

fn write(
    mut written: ResMut<Written>,
    output: Single<&EguiOutput, With<PrimaryEguiContext>>,
    entities: Query<Entity>,
    meshes: Res<Assets<Mesh>>,
    images: Res<Assets<Image>>,
    materials: Res<Assets<StandardMaterial>>,
) {
    let Some(update) = &output.platform_output.accesskit_update else { return };
    let held = Held {
        entities: entities.iter().count(),
        meshes: meshes.len(),
        images: images.len(),
        materials: materials.len(),
    };
    let now = Told { heard: written.heard, frames: written.frames, held, nodes: nodes(update) };
    written.frames = (written.frames + 1).min(SETTLED);
    if now == written.last {
        return;
    }
    if let Err(error) = replace(&written.to, &now) {
        error!("{}: {error:#}", written.to.display());
    }
    written.last = now;
}

/// Whoever reads the file never sees half of it.
fn replace(file: &Path, told: &Told) -> anyhow::Result<()> {
    let folder = file.parent().filter(|f| !f.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let part = tempfile::Builder::new().prefix(".pinhole-").suffix(".part").tempfile_in(folder)?;
    let mut out = std::io::BufWriter::new(part);
    serde_json::to_writer(&mut out, told)?;
    out.flush()?;
    out.into_inner()?.persist(file)?;
    Ok(())
}
