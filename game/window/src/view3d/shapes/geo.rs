//! Triangles without textures, each with its normals, so that one material and one mesh can hold many of them.

use bevy::asset::RenderAssetUsages;
use bevy::math::{Affine3A, Quat, Vec3};
use bevy::mesh::{Indices, Mesh, PrimitiveTopology};
use bevy::transform::components::Transform;

/// Triangles with normals.
#[derive(Clone, Debug, Default)]
pub(in crate::view3d) struct Geo {
    /// Corners, m.
    pub(in crate::view3d) positions: Vec<Vec3>,
    /// One normal a corner.
    pub(in crate::view3d) normals: Vec<Vec3>,
    /// Three a triangle.
    pub(in crate::view3d) indices: Vec<u32>,
}

impl Geo {
    pub(super) fn vertex(&mut self, position: Vec3, normal: Vec3) -> u32 {
        self.positions.push(position);
        self.normals.push(normal);
        (self.positions.len() - 1) as u32
    }

    /// A triangle, turned so that it faces where its corners' normals point.
    pub(super) fn triangle(&mut self, [a, b, c]: [u32; 3]) {
        let at = |i: u32| self.positions[i as usize];
        let facing = (at(b) - at(a)).cross(at(c) - at(a));
        let normal = self.normals[a as usize] + self.normals[b as usize] + self.normals[c as usize];
        if facing.length_squared() < 1e-16 {
            return;
        }
        self.indices.extend(if 0.0 <= facing.dot(normal) { [a, b, c] } else { [a, c, b] });
    }

    pub(super) fn quad(&mut self, [a, b, c, d]: [u32; 4]) {
        self.triangle([a, b, c]);
        self.triangle([a, c, d]);
    }

    /// The same shape somewhere else.
    #[must_use]
    pub(in crate::view3d) fn moved(mut self, to: Transform) -> Self {
        let affine = Affine3A::from_scale_rotation_translation(to.scale, to.rotation, to.translation);
        for p in &mut self.positions {
            *p = affine.transform_point3(*p);
        }
        for n in &mut self.normals {
            *n = (to.rotation * (*n / to.scale)).normalize_or(Vec3::Y);
        }
        self
    }

    /// The same shape moved by `x`, `y`, `z`.
    #[must_use]
    pub(in crate::view3d) fn at(self, x: f32, y: f32, z: f32) -> Self {
        self.moved(Transform::from_xyz(x, y, z))
    }

    /// The same shape turned.
    #[must_use]
    pub(in crate::view3d) fn turned(self, by: Quat) -> Self {
        self.moved(Transform::from_rotation(by))
    }

    /// Its axis, that was +Y, along `axis`.
    #[must_use]
    pub(in crate::view3d) fn along(self, axis: Vec3) -> Self {
        self.turned(Quat::from_rotation_arc(Vec3::Y, axis.normalize_or(Vec3::Y)))
    }

    /// Adds another shape.
    pub(in crate::view3d) fn push(&mut self, other: &Self) {
        let base = self.positions.len() as u32;
        self.positions.extend_from_slice(&other.positions);
        self.normals.extend_from_slice(&other.normals);
        self.indices.extend(other.indices.iter().map(|i| i + base));
    }

    /// How many triangles.
    #[cfg(test)]
    #[must_use]
    pub(in crate::view3d) fn triangles(&self) -> usize {
        self.indices.len() / 3
    }

    /// For the renderer.
    #[must_use]
    pub(in crate::view3d) fn mesh(&self) -> Mesh {
        let flat = |of: &[Vec3]| of.iter().map(Vec3::to_array).collect::<Vec<_>>();
        Mesh::new(PrimitiveTopology::TriangleList, RenderAssetUsages::default())
            .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, flat(&self.positions))
            .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, flat(&self.normals))
            .with_inserted_indices(Indices::U32(self.indices.clone()))
    }

    /// Lower and upper corner of the box round it.
    #[must_use]
    pub(in crate::view3d) fn bounds(&self) -> (Vec3, Vec3) {
        let start = (Vec3::splat(f32::MAX), Vec3::splat(f32::MIN));
        self.positions.iter().fold(start, |(lo, hi), p| (lo.min(*p), hi.max(*p)))
    }

    /// The same shape grown by `by` along its corners' common normals: drawn inside out it is an outline.
    #[must_use]
    pub(in crate::view3d) fn hull(&self, by: f32) -> Self {
        use std::collections::BTreeMap;
        let key =
            |p: Vec3| ((p.x * 4e3).round() as i32, (p.y * 4e3).round() as i32, (p.z * 4e3).round() as i32);
        let mut common: BTreeMap<(i32, i32, i32), Vec3> = BTreeMap::new();
        for (p, n) in self.positions.iter().zip(&self.normals) {
            *common.entry(key(*p)).or_default() += *n;
        }
        let mut out = self.clone();
        for (p, n) in out.positions.iter_mut().zip(&mut out.normals) {
            if let Some(c) = common.get(&key(*p)) {
                *n = c.normalize_or(*n);
            }
            *p += *n * by;
        }
        out
    }
}
