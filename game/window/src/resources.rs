//! What the app holds for panels, room and pictures, and the camera that two of them speak of.

use bevy::asset::RenderAssetUsages;
use bevy::prelude::*;

use super::state::Ui;
use front::prefs::Quality;
use front::shop::Shop;
use front::words::Words;

/// The shop in the app.
#[derive(Resource, Debug)]
pub(super) struct ShopRes(pub(super) Shop);

/// What the window remembers, in the app.
#[derive(Resource, Debug, Default)]
pub(super) struct UiRes(pub(super) Ui);

/// The words in the app.
#[derive(Resource, Debug)]
pub(super) struct WordsRes(pub(super) Words);

/// Picture quality after `Auto` has been decided: `Low` or `High`.
#[derive(Resource, Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Drawn(pub(super) Quality);

/// The camera of the room.
#[derive(Component, Debug)]
pub(super) struct RoomCamera;

/// A picture to draw into, `width` × `height` pixels.
pub(super) fn canvas(width: u32, height: u32) -> Image {
    use bevy::render::render_resource::{Extent3d, TextureDimension, TextureFormat, TextureUsages};
    let size = Extent3d { width, height, depth_or_array_layers: 1 };
    // It is only ever drawn into: no copy of it is kept beside the renderer's.
    let mut image = Image::new_uninit(
        size,
        TextureDimension::D2,
        TextureFormat::Rgba8UnormSrgb,
        RenderAssetUsages::default(),
    );
    image.texture_descriptor.usage =
        TextureUsages::TEXTURE_BINDING | TextureUsages::RENDER_ATTACHMENT | TextureUsages::COPY_SRC;
    image
}
