//! Shapes made in code: lathe, sweep, bevelled box, plate. Triangles without textures, each with its
//! normals, so that one material and one mesh can hold many of them.

use bevy::asset::RenderAssetUsages;
use bevy::math::{Affine3A, Quat, Vec2, Vec3};
use bevy::mesh::{Indices, Mesh, PrimitiveTopology};
use bevy::transform::components::Transform;
use std::f32::consts::TAU;

/// Fewest and most steps of a lathe round its axis.
const ROUND_STEPS: (usize, usize) = (8, 40);
/// How far a side of a round thing may be from the circle, m: less than a pixel from where it is seen.
const SAGITTA_M: f32 = 0.000_45;
/// A ring thinner than this has six sides, m.
const THIN_M: f32 = 0.004;
/// Edges finer than this are not drawn: a mark on a dial is a plain box.
const SHARP_M: f32 = 0.0011;
/// Profile corners blunter than this are shaded smooth (cosine of 35°).
const SMOOTH_COS: f32 = 0.82;

/// Triangles with normals.
#[derive(Clone, Debug, Default)]
pub(super) struct Geo {
    /// Corners, m.
    pub(super) positions: Vec<Vec3>,
    /// One normal a corner.
    pub(super) normals: Vec<Vec3>,
    /// Three a triangle.
    pub(super) indices: Vec<u32>,
}

impl Geo {
    fn vertex(&mut self, position: Vec3, normal: Vec3) -> u32 {
        self.positions.push(position);
        self.normals.push(normal);
        (self.positions.len() - 1) as u32
    }

    /// A triangle, turned so that it faces where its corners' normals point.
    fn triangle(&mut self, [a, b, c]: [u32; 3]) {
        let at = |i: u32| self.positions[i as usize];
        let facing = (at(b) - at(a)).cross(at(c) - at(a));
        let normal = self.normals[a as usize] + self.normals[b as usize] + self.normals[c as usize];
        if facing.length_squared() < 1e-16 {
            return;
        }
        self.indices.extend(if 0.0 <= facing.dot(normal) { [a, b, c] } else { [a, c, b] });
    }

    fn quad(&mut self, [a, b, c, d]: [u32; 4]) {
        self.triangle([a, b, c]);
        self.triangle([a, c, d]);
    }

    /// The same shape somewhere else.
    #[must_use]
    pub(super) fn moved(mut self, to: Transform) -> Self {
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
    pub(super) fn at(self, x: f32, y: f32, z: f32) -> Self {
        self.moved(Transform::from_xyz(x, y, z))
    }

    /// The same shape turned.
    #[must_use]
    pub(super) fn turned(self, by: Quat) -> Self {
        self.moved(Transform::from_rotation(by))
    }

    /// Its axis, that was +Y, along `axis`.
    #[must_use]
    pub(super) fn along(self, axis: Vec3) -> Self {
        self.turned(Quat::from_rotation_arc(Vec3::Y, axis.normalize_or(Vec3::Y)))
    }

    /// Adds another shape.
    pub(super) fn push(&mut self, other: &Self) {
        let base = self.positions.len() as u32;
        self.positions.extend_from_slice(&other.positions);
        self.normals.extend_from_slice(&other.normals);
        self.indices.extend(other.indices.iter().map(|i| i + base));
    }

    /// How many triangles.
    #[cfg(test)]
    #[must_use]
    pub(super) fn triangles(&self) -> usize {
        self.indices.len() / 3
    }

    /// For the renderer.
    #[must_use]
    pub(super) fn mesh(&self) -> Mesh {
        let flat = |of: &[Vec3]| of.iter().map(Vec3::to_array).collect::<Vec<_>>();
        Mesh::new(PrimitiveTopology::TriangleList, RenderAssetUsages::default())
            .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, flat(&self.positions))
            .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, flat(&self.normals))
            .with_inserted_indices(Indices::U32(self.indices.clone()))
    }

    /// Lower and upper corner of the box round it.
    #[must_use]
    pub(super) fn bounds(&self) -> (Vec3, Vec3) {
        let start = (Vec3::splat(f32::MAX), Vec3::splat(f32::MIN));
        self.positions.iter().fold(start, |(lo, hi), p| (lo.min(*p), hi.max(*p)))
    }

    /// The same shape grown by `by` along its corners' common normals: drawn inside out it is an outline.
    #[must_use]
    pub(super) fn hull(&self, by: f32) -> Self {
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

/// Turns a profile of (radius, height) about +Y, from the lower end up along the outside.
#[must_use]
pub(super) fn lathe(profile: &[(f32, f32)]) -> Geo {
    let widest = profile.iter().fold(0.0_f32, |w, (r, _)| w.max(*r));
    lathe_steps(profile, round_steps(widest))
}

/// Steps of a circle of a radius in m, so that none of its sides is further than [`SAGITTA_M`] from it.
fn round_steps(radius: f32) -> usize {
    let half = (1.0 - SAGITTA_M / radius.max(SAGITTA_M * 2.0)).acos();
    ((std::f32::consts::PI / half).ceil() as usize).clamp(ROUND_STEPS.0, ROUND_STEPS.1)
}

/// [`lathe`] with a chosen number of steps: six make a hexagon.
#[must_use]
pub(super) fn lathe_steps(profile: &[(f32, f32)], steps: usize) -> Geo {
    let mut geo = Geo::default();
    let points: Vec<Vec2> = profile.iter().map(|(r, y)| Vec2::new(*r, *y)).collect();
    let normals: Vec<Vec2> = points
        .windows(2)
        .map(|w| {
            let d = w[1] - w[0];
            Vec2::new(d.y, -d.x).normalize_or_zero()
        })
        .collect();
    for (i, pair) in points.windows(2).enumerate() {
        let own = normals[i];
        let shared = |other: Option<&Vec2>| match other {
            Some(o) if SMOOTH_COS < o.dot(own) => (own + *o).normalize_or(own),
            _ => own,
        };
        let low = shared(i.checked_sub(1).and_then(|j| normals.get(j)));
        let high = shared(normals.get(i + 1));
        let mut before: Option<[u32; 2]> = None;
        for step in 0..=steps {
            let (sin, cos) = (step as f32 / steps as f32 * TAU).sin_cos();
            let turn = |v: Vec2| Vec3::new(v.x * cos, v.y, v.x * sin);
            let here = [geo.vertex(turn(pair[0]), turn(low)), geo.vertex(turn(pair[1]), turn(high))];
            if let Some([a, b]) = before {
                // On the axis a side of the face has no length.
                match (pair[0].x == 0.0, pair[1].x == 0.0) {
                    (true, true) => {}
                    (true, false) => geo.triangle([a, b, here[1]]),
                    (false, true) => geo.triangle([a, b, here[0]]),
                    (false, false) => geo.quad([a, b, here[1], here[0]]),
                }
            }
            before = Some(here);
        }
    }
    geo
}

/// A closed cylinder along +Y from 0 to `height`, its edges broken by `bevel`.
#[must_use]
pub(super) fn cylinder(radius: f32, height: f32, bevel: f32) -> Geo {
    let profile = [
        (0.0, 0.0),
        (radius - bevel, 0.0),
        (radius, bevel),
        (radius, height - bevel),
        (radius - bevel, height),
        (0.0, height),
    ];
    lathe(&profile)
}

/// A hexagon head or nut along +Y.
#[must_use]
pub(super) fn hexagon(radius: f32, height: f32) -> Geo {
    lathe_steps(
        &[(0.0, 0.0), (radius, 0.0), (radius, height * 0.8), (radius * 0.85, height), (0.0, height)],
        6,
    )
}

/// A ring about +Y.
#[must_use]
pub(super) fn ring(radius: f32, thick: f32) -> Geo {
    let sides = if thick < THIN_M { 6 } else { 10 };
    let profile: Vec<(f32, f32)> = (0..=sides)
        .map(|i| {
            let a = i as f32 / sides as f32 * TAU;
            (radius + thick * a.cos(), thick * a.sin())
        })
        .collect();
    lathe(&profile)
}

/// A box about the origin with its edges rounded by `bevel`.
#[must_use]
pub(super) fn bevel_box(x: f32, y: f32, z: f32, bevel: f32) -> Geo {
    let half = Vec3::new(x, y, z) * 0.5;
    let sharp = bevel < SHARP_M;
    let bevel = if sharp { 0.0 } else { bevel.min(half.min_element() * 0.9) };
    let inner = half - Vec3::splat(bevel);
    let mut geo = Geo::default();
    // Corner `s` (a sign an axis) as it lies on the face across `axis`.
    let corner = |geo: &mut Geo, s: [f32; 3], axis: usize| {
        let mut p = Vec3::new(s[0] * inner.x, s[1] * inner.y, s[2] * inner.z);
        let mut n = Vec3::ZERO;
        p[axis] = s[axis] * half[axis];
        n[axis] = s[axis];
        geo.vertex(p, n)
    };
    let signs = [-1.0, 1.0];
    for i in 0..3 {
        let (j, k) = ((i + 1) % 3, (i + 2) % 3);
        for si in signs {
            let face = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(sj, sk)| {
                let mut s = [0.0; 3];
                (s[i], s[j], s[k]) = (si, sj, sk);
                corner(&mut geo, s, i)
            });
            geo.quad(face);
            if sharp {
                continue;
            }
            for sj in signs {
                let edge = [(-1.0, i), (1.0, i), (1.0, j), (-1.0, j)].map(|(sk, axis)| {
                    let mut s = [0.0; 3];
                    (s[i], s[j], s[k]) = (si, sj, sk);
                    corner(&mut geo, s, axis)
                });
                geo.quad(edge);
            }
        }
    }
    for s in if sharp { 0..0 } else { 0..8 } {
        let sign = |bit: u32| if s >> bit & 1 == 0 { -1.0 } else { 1.0 };
        let s = [sign(0), sign(1), sign(2)];
        let tip = [0, 1, 2].map(|axis| corner(&mut geo, s, axis));
        geo.triangle(tip);
    }
    geo
}

/// A smooth line through `points` (Catmull-Rom), `per` steps between two of them.
#[must_use]
pub(super) fn curve(points: &[Vec3], per: usize) -> Vec<Vec3> {
    if points.len() < 3 {
        return points.to_vec();
    }
    let last = points.len() - 1;
    let at = |i: isize| {
        // Beyond the ends the line goes on as it came.
        if i < 0 {
            points[0] * 2.0 - points[1]
        } else if last < i as usize {
            points[last] * 2.0 - points[last - 1]
        } else {
            points[i as usize]
        }
    };
    let mut out = Vec::with_capacity(last * per + 1);
    for i in 0..last as isize {
        let [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
        for step in 0..per {
            let t = step as f32 / per as f32;
            let (t2, t3) = (t * t, t * t * t);
            out.push(
                (b * 2.0
                    + (c - a) * t
                    + (a * 2.0 - b * 5.0 + c * 4.0 - d) * t2
                    + (b * 3.0 - a - c * 3.0 + d) * t3)
                    * 0.5,
            );
        }
    }
    out.push(points[last]);
    out
}

/// A tube along `line`, `wide` × `thick` (half axes), closed at both ends. The frame is carried along, not
/// recomputed, or the tube would twist; `up` is where the thickness points at the start.
#[must_use]
pub(super) fn sweep(line: &[Vec3], wide: f32, thick: f32, sides: usize, up: Vec3) -> Geo {
    let mut geo = Geo::default();
    let n = line.len();
    if n < 2 {
        return geo;
    }
    let tangent = |i: usize| {
        let (a, b) = (line[i.saturating_sub(1)], line[(i + 1).min(n - 1)]);
        (b - a).normalize_or(Vec3::Z)
    };
    let first = tangent(0);
    let mut normal = (up - first * up.dot(first)).normalize_or(first.any_orthonormal_vector());
    let mut rows: Vec<Vec<u32>> = Vec::with_capacity(n);
    let mut along = first;
    for (i, p) in line.iter().enumerate() {
        let t = tangent(i);
        normal = Quat::from_rotation_arc(along, t) * normal;
        normal = (normal - t * normal.dot(t)).normalize_or(t.any_orthonormal_vector());
        along = t;
        let side = t.cross(normal);
        let row = (0..=sides).map(|s| {
            let (sin, cos) = (s as f32 / sides as f32 * TAU).sin_cos();
            let offset = side * (cos * wide) + normal * (sin * thick);
            let out = side * (cos / wide) + normal * (sin / thick);
            (*p + offset, out.normalize_or(normal))
        });
        let row: Vec<(Vec3, Vec3)> = row.collect();
        rows.push(row.into_iter().map(|(p, n)| geo.vertex(p, n)).collect());
    }
    for pair in rows.windows(2) {
        for s in 0..sides {
            geo.quad([pair[0][s], pair[1][s], pair[1][s + 1], pair[0][s + 1]]);
        }
    }
    for (end, out) in [(0, -tangent(0)), (n - 1, tangent(n - 1))] {
        let middle = geo.vertex(line[end], out);
        let rim: Vec<Vec3> = rows[end].iter().map(|i| geo.positions[*i as usize]).collect();
        let rim: Vec<u32> = rim.into_iter().map(|p| geo.vertex(p, out)).collect();
        for pair in rim.windows(2) {
            geo.triangle([middle, pair[0], pair[1]]);
        }
    }
    geo
}

/// A flat stroke along `line` in the plane z = 0, seen from +z, its corners mitred.
#[must_use]
pub(super) fn ribbon(line: &[Vec2], width: f32) -> Geo {
    /// A mitre no longer than this, half widths: a sharper corner is cut short.
    const LONGEST_MITRE: f32 = 1.2;
    let mut geo = Geo::default();
    let across = |a: Vec2, b: Vec2| (b - a).normalize_or(Vec2::X).perp();
    let n = line.len();
    let mut rows: Vec<[u32; 2]> = Vec::with_capacity(n);
    for (i, p) in line.iter().enumerate() {
        let before = across(line[i.saturating_sub(1)], line[i.max(1).min(n - 1)]);
        let after = across(line[i.min(n.saturating_sub(2))], line[(i + 1).min(n - 1)]);
        let middle = (before + after).normalize_or(before);
        let side = middle * (0.5 * width * (1.0 / middle.dot(after).max(0.1)).min(LONGEST_MITRE));
        rows.push([p + side, p - side].map(|p| geo.vertex(p.extend(0.0), Vec3::Z)));
    }
    for pair in rows.windows(2) {
        geo.quad([pair[0][1], pair[1][1], pair[1][0], pair[0][0]]);
    }
    geo
}

/// A round hose or wire through a few points.
#[must_use]
pub(super) fn hose(points: &[Vec3], radius: f32) -> Geo {
    let sides = if radius < 0.006 { 8 } else { 14 };
    sweep(&curve(points, 8), radius, radius, sides, Vec3::Y)
}

/// A plate with the outline `outline` (x, y; either turn), `thick` along z about 0.
#[must_use]
pub(super) fn plate(outline: &[(f32, f32)], thick: f32) -> Geo {
    let points: Vec<Vec2> = outline.iter().map(|(x, y)| Vec2::new(*x, *y)).collect();
    let mut geo = Geo::default();
    let half = thick * 0.5;
    let faces = ears(&points);
    for (z, n) in [(half, Vec3::Z), (-half, Vec3::NEG_Z)] {
        let base: Vec<u32> = points.iter().map(|p| geo.vertex(p.extend(z), n)).collect();
        for [a, b, c] in &faces {
            geo.triangle([base[*a], base[*b], base[*c]]);
        }
    }
    let turn = area(&points).signum();
    for (i, a) in points.iter().enumerate() {
        let b = points[(i + 1) % points.len()];
        let d = (b - *a).normalize_or_zero() * turn;
        let n = Vec3::new(d.y, -d.x, 0.0);
        let quad = [(*a, half), (b, half), (b, -half), (*a, -half)].map(|(p, z)| geo.vertex(p.extend(z), n));
        geo.quad(quad);
    }
    geo
}

fn area(points: &[Vec2]) -> f32 {
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| a.perp_dot(*b)).sum::<f32>() * 0.5
}

/// Triangles of a simple polygon, by cutting ears off.
fn ears(points: &[Vec2]) -> Vec<[usize; 3]> {
    let mut left: Vec<usize> = (0..points.len()).collect();
    if area(points) < 0.0 {
        left.reverse();
    }
    let mut out = Vec::new();
    while 3 < left.len() {
        let n = left.len();
        let ear = (0..n).find(|i| {
            let [a, b, c] = [left[(i + n - 1) % n], left[*i], left[(i + 1) % n]];
            let [pa, pb, pc] = [points[a], points[b], points[c]];
            if (pb - pa).perp_dot(pc - pb) <= 0.0 {
                return false;
            }
            let inside = |p: Vec2| {
                0.0 <= (pb - pa).perp_dot(p - pa)
                    && 0.0 <= (pc - pb).perp_dot(p - pb)
                    && 0.0 <= (pa - pc).perp_dot(p - pc)
            };
            !left.iter().any(|j| ![a, b, c].contains(j) && inside(points[*j]))
        });
        let Some(i) = ear else { break };
        out.push([left[(i + n - 1) % n], left[i], left[(i + 1) % n]]);
        left.remove(i);
    }
    if let [a, b, c] = left[..] {
        out.push([a, b, c]);
    }
    out
}
