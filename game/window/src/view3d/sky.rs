//! The light of the room as an environment: painted in code, blurred once at the start.
//!
//! Diffuse: mean of the light over the hemisphere, weighted with the cosine. Specular: one level for each step
//! of roughness, weighted as the microfacet distribution of Trowbridge and Reitz scatters a ray that leaves along
//! the normal ("split sum", B. Karis, SIGGRAPH course notes 2013). Bevy can blur an environment itself, but
//! does it anew in every frame, which a processor that draws in software feels.

use bevy::asset::RenderAssetUsages;
use bevy::prelude::*;
use bevy::render::render_resource::{
    Extent3d, TextureDimension, TextureFormat, TextureViewDescriptor, TextureViewDimension,
};

/// Edge of the faces of the sharpest specular level, px: a power of two.
const EDGE: u32 = 64;
/// Edge of the faces of the diffuse map, px.
const DIFFUSE_EDGE: u32 = 8;
/// Directions looked into for one texel of a blurred map.
const LOOKS: u32 = 96;
const DIFFUSE_LOOKS: u32 = 512;

/// The light that comes in direction `d`: pale walls, a soft-box above, a window on the left, dark floor.
fn sky(d: Vec3) -> Vec3 {
    let smooth = |a: f32, b: f32, x: f32| {
        let t = ((x - a) / (b - a)).clamp(0.0, 1.0);
        t * t * (3.0 - 2.0 * t)
    };
    let wall = Vec3::new(0.92, 0.91, 0.88);
    let floor = Vec3::new(0.20, 0.20, 0.20);
    let mut light = floor.lerp(wall, smooth(-0.35, 0.15, d.y));
    // Soft-box in the ceiling.
    if 0.0 < d.y {
        let (x, z) = (d.x / d.y, d.z / d.y);
        let inside = smooth(0.95, 0.6, x.abs()) * smooth(0.7, 0.4, (z - 0.2).abs());
        light += Vec3::new(6.0, 5.9, 5.7) * inside;
    }
    // Window on the left, sky a little blue.
    if d.x < -0.2 {
        let (y, z) = (d.y / -d.x, d.z / -d.x);
        let inside = smooth(0.75, 0.5, (z - 0.3).abs()) * smooth(0.5, 0.3, (y - 0.35).abs());
        light += Vec3::new(3.5, 3.8, 4.2) * inside;
    }
    light
}

/// Direction `i` of `n` spread evenly over the unit square (Hammersley).
fn spread(i: u32, n: u32) -> (f32, f32) {
    ((i as f32 + 0.5) / n as f32, i.reverse_bits() as f32 / u32::MAX as f32)
}

/// Light from the hemisphere around `normal`, weighted with the cosine.
fn diffuse(normal: Vec3) -> Vec3 {
    let (side, up) = normal.any_orthonormal_pair();
    let mut sum = Vec3::ZERO;
    for i in 0..DIFFUSE_LOOKS {
        let (u, v) = spread(i, DIFFUSE_LOOKS);
        let (sin, cos) = (std::f32::consts::TAU * v).sin_cos();
        let radius = u.sqrt();
        sum += sky(side * (radius * cos) + up * (radius * sin) + normal * (1.0 - u).sqrt());
    }
    sum / DIFFUSE_LOOKS as f32
}

/// Light a surface of this perceptual roughness (0–1) sends along its normal.
fn specular(normal: Vec3, roughness: f32) -> Vec3 {
    if roughness <= 0.0 {
        return sky(normal);
    }
    let alpha = (roughness * roughness).max(1e-3);
    let (side, up) = normal.any_orthonormal_pair();
    let (mut sum, mut weight) = (Vec3::ZERO, 0.0);
    for i in 0..LOOKS {
        let (u, v) = spread(i, LOOKS);
        let cos = ((1.0 - u) / (1.0 + (alpha * alpha - 1.0) * u)).sqrt();
        let sin = (1.0 - cos * cos).max(0.0).sqrt();
        let (east, north) = (std::f32::consts::TAU * v).sin_cos();
        let half = side * (sin * north) + up * (sin * east) + normal * cos;
        let to = half * (2.0 * cos) - normal;
        let lit = to.dot(normal);
        if 0.0 < lit {
            sum += sky(to) * lit;
            weight += lit;
        }
    }
    sum / weight.max(1e-6)
}

/// A cube of half-precision colours with its levels, the sharpest first; `light` gets a direction and the level.
fn cube(edge: u32, levels: u32, light: impl Fn(Vec3, u32) -> Vec3) -> Image {
    let mut data = Vec::new();
    // Faces outside, levels inside: the order in which the renderer takes the bytes of a picture with layers.
    for face in 0..6 {
        for level in 0..levels {
            let size = (edge >> level).max(1);
            for y in 0..size {
                for x in 0..size {
                    let u = (x as f32 + 0.5) / size as f32 * 2.0 - 1.0;
                    let v = (y as f32 + 0.5) / size as f32 * 2.0 - 1.0;
                    let d = match face {
                        0 => Vec3::new(1.0, -v, -u),
                        1 => Vec3::new(-1.0, -v, u),
                        2 => Vec3::new(u, 1.0, v),
                        3 => Vec3::new(u, -1.0, -v),
                        4 => Vec3::new(u, -v, 1.0),
                        _ => Vec3::new(-u, -v, -1.0),
                    };
                    // Cubes are left-handed, the room is right-handed.
                    let lit = light((d * Vec3::new(1.0, 1.0, -1.0)).normalize(), level);
                    for value in [lit.x, lit.y, lit.z, 1.0] {
                        data.extend_from_slice(&half_float(value).to_le_bytes());
                    }
                }
            }
        }
    }
    let size = Extent3d { width: edge, height: edge, depth_or_array_layers: 6 };
    let mut image = Image::new_uninit(
        size,
        TextureDimension::D2,
        TextureFormat::Rgba16Float,
        RenderAssetUsages::RENDER_WORLD,
    );
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image.texture_view_descriptor =
        Some(TextureViewDescriptor { dimension: Some(TextureViewDimension::Cube), ..default() });
    image
}

/// The light of the room, `intensity` in cd/m² for a painted value of one.
pub(super) fn light(images: &mut Assets<Image>, intensity: f32) -> EnvironmentMapLight {
    let levels = EDGE.ilog2() + 1;
    let step = 1.0 / (levels - 1) as f32;
    EnvironmentMapLight {
        diffuse_map: images.add(cube(DIFFUSE_EDGE, 1, |d, _| diffuse(d))),
        specular_map: images.add(cube(EDGE, levels, |d, level| specular(d, level as f32 * step))),
        intensity,
        ..default()
    }
}

/// A positive number as IEEE 754 half precision, rounded down; small enough ones become zero.
fn half_float(value: f32) -> u16 {
    let bits = value.to_bits();
    let exponent = (bits >> 23 & 0xFF) as i32 - 127 + 15;
    if exponent <= 0 {
        return 0;
    }
    if 31 <= exponent {
        return 0x7BFF;
    }
    (exponent as u16) << 10 | (bits >> 13 & 0x3FF) as u16
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_precision_as_the_standard_says() {
        assert_eq!(half_float(1.0), 0x3C00);
        assert_eq!(half_float(0.5), 0x3800);
        assert_eq!(half_float(6.5), 0x4680);
        assert_eq!(half_float(1e6), 0x7BFF);
        assert_eq!(half_float(0.0), 0);
    }

    #[test]
    fn it_is_brightest_above_and_darkest_below() {
        let sum = |d: Vec3| sky(d).element_sum();
        assert!(sum(Vec3::Z) < sum(Vec3::Y));
        assert!(sum(Vec3::NEG_Y) < sum(Vec3::Z));
    }

    #[test]
    fn the_rougher_the_surface_the_less_of_the_lamp_it_shows() {
        let shown = |roughness: f32| specular(Vec3::Y, roughness).element_sum();
        assert!(shown(0.6) < shown(0.0));
        assert!(shown(1.0) < shown(0.6));
        // However blurred, no light is made: a matt surface that looks up shows less than the lamp, more than a wall.
        let matt = diffuse(Vec3::Y).element_sum();
        assert!(matt < sky(Vec3::Y).element_sum());
        assert!(sky(Vec3::Z).element_sum() < matt);
    }
}
