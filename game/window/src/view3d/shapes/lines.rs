//! What follows a line: hoses, wires, flanges, strokes.

use bevy::math::{Quat, Vec2, Vec3};
use std::f32::consts::TAU;

use super::geo::Geo;

/// A smooth line through `points` (Catmull-Rom), `per` steps between two of them.
#[must_use]
pub(in crate::view3d) fn curve(points: &[Vec3], per: usize) -> Vec<Vec3> {
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
pub(in crate::view3d) fn sweep(line: &[Vec3], wide: f32, thick: f32, sides: usize, up: Vec3) -> Geo {
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
pub(in crate::view3d) fn ribbon(line: &[Vec2], width: f32) -> Geo {
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
pub(in crate::view3d) fn hose(points: &[Vec3], radius: f32) -> Geo {
    let sides = if radius < 0.006 { 8 } else { 14 };
    sweep(&curve(points, 8), radius, radius, sides, Vec3::Y)
}
