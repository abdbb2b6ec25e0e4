//! What the renderer tells the app: which frame it has drawn last, and whether everything in it was there.
//!
//! Shaders are made in the background and what they draw comes to the card over several frames; whatever is
//! not there yet is left out of a frame without a word. A processor that draws is so slow that all is there
//! before somebody looks; a graphics card has drawn its frames before the first shader is made. So nobody
//! here counts frames and hopes: the renderer's own caches are asked, at the end of each frame, what that
//! frame had to do without.

use std::sync::{Arc, Mutex, PoisonError};

use bevy::asset::UntypedAssetId;
use bevy::pbr::PreparedMaterial;
use bevy::prelude::*;
use bevy::render::erased_render_asset::ErasedRenderAssets;
use bevy::render::extract_resource::{ExtractResource, ExtractResourcePlugin};
use bevy::render::mesh::RenderMesh;
use bevy::render::render_asset::RenderAssets;
use bevy::render::render_resource::{CachedPipelineState, PipelineCache};
use bevy::render::texture::GpuImage;
use bevy::render::{Extract, ExtractSchedule, Render, RenderApp, RenderSystems};

use super::resources::RoomCamera;

/// Number of the frame in hand, from 1.
#[derive(Resource, ExtractResource, Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Frame(pub(super) u64);

/// What a frame had to do without.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Report {
    /// The frame.
    pub(super) frame: u64,
    /// Shaders (with all that belongs to them) still in work.
    pub(super) in_work: usize,
    /// Shaders that this adapter cannot make; waiting would not help.
    pub(super) failed: usize,
    /// Shapes, materials and images that are not on the card yet.
    pub(super) missing: usize,
}

impl Report {
    /// Whether all was there that will ever be.
    pub(super) fn is_whole(&self) -> bool {
        self.in_work == 0 && self.missing == 0
    }
}

/// What was last heard of the renderer. Both worlds hold the same.
#[derive(Resource, Clone, Debug, Default)]
pub(super) struct Renderer(Arc<Mutex<Heard>>);

#[derive(Clone, Copy, Debug, Default)]
struct Heard {
    frame: Option<Report>,
    room: Option<Report>,
}

impl Renderer {
    fn heard(&self) -> Heard {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Of the last frame.
    pub(super) fn frame(&self) -> Option<Report> {
        self.heard().frame
    }

    /// Of the last frame in which the room was drawn.
    pub(super) fn room(&self) -> Option<Report> {
        self.heard().room
    }

    fn tell(&self, report: Report, with_room: bool) {
        let mut heard = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        heard.frame = Some(report);
        if with_room {
            heard.room = Some(report);
        }
    }
}

/// What the frame in hand needs on the card.
#[derive(Resource, Debug, Default)]
struct Needs {
    room: bool,
    meshes: Vec<AssetId<Mesh>>,
    materials: Vec<UntypedAssetId>,
    images: Vec<AssetId<Image>>,
}

/// Lets the renderer tell. Without one (nothing is drawn) nothing is ever told.
pub(super) fn plugin(app: &mut App) {
    let renderer = Renderer::default();
    app.insert_resource(renderer.clone())
        .init_resource::<Frame>()
        .add_plugins(ExtractResourcePlugin::<Frame>::default())
        .add_systems(First, |mut frame: ResMut<Frame>| frame.0 += 1);
    let Some(render) = app.get_sub_app_mut(RenderApp) else { return };
    render
        .insert_resource(renderer)
        .init_resource::<Needs>()
        .add_systems(ExtractSchedule, ask)
        .add_systems(Render, tell.after(RenderSystems::Render).before(RenderSystems::Cleanup));
}

fn ask(
    mut needs: ResMut<Needs>,
    cameras: Extract<Query<&Camera, With<RoomCamera>>>,
    things: Extract<Query<(&Mesh3d, &MeshMaterial3d<StandardMaterial>)>>,
    new: Extract<Query<(), Or<(Changed<Mesh3d>, Changed<MeshMaterial3d<StandardMaterial>>)>>>,
    images: Extract<Res<Assets<Image>>>,
    renderer: Res<Renderer>,
) {
    needs.room = cameras.iter().any(|camera| camera.is_active);
    needs.meshes.clear();
    needs.materials.clear();
    needs.images.clear();
    needs.images.extend(images.ids());
    // Once nothing was lacking, only what is new can lack.
    let (built, heard) = (new.iter().next().is_some(), renderer.room());
    if needs.room && (built || heard.is_none_or(|report| !report.is_whole())) {
        for (mesh, material) in &things {
            needs.meshes.push(mesh.id());
            needs.materials.push(material.id().untyped());
        }
    }
}

fn tell(
    frame: Res<Frame>,
    needs: Res<Needs>,
    renderer: Res<Renderer>,
    pipelines: Res<PipelineCache>,
    meshes: Res<RenderAssets<RenderMesh>>,
    materials: Res<ErasedRenderAssets<PreparedMaterial>>,
    images: Res<RenderAssets<GpuImage>>,
) {
    let in_work = pipelines.waiting_pipelines().count();
    // A shader whose text has not been read yet waits; one that cannot be made does not, and stays away.
    let broken = pipelines.pipelines().filter(|p| matches!(p.state, CachedPipelineState::Err(_))).count();
    let waits_for_text = pipelines
        .waiting_pipelines()
        .filter(|id| {
            let state = pipelines.pipelines().nth(*id).map(|p| &p.state);
            matches!(state, Some(CachedPipelineState::Err(_)))
        })
        .count();
    let missing = needs.meshes.iter().filter(|id| meshes.get(**id).is_none()).count()
        + needs.materials.iter().filter(|id| materials.get(**id).is_none()).count()
        + needs.images.iter().filter(|id| images.get(**id).is_none()).count();
    let report = Report { frame: frame.0, in_work, failed: broken - waits_for_text, missing };
    renderer.tell(report, needs.room);
}
