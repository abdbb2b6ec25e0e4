//! Plates of any outline.

use bevy::math::{Vec2, Vec3};

use super::geo::Geo;
use super::smooth;

/// A plate with the outline `outline` (x, y; either turn), `thick` along z about 0.
#[must_use]
pub(in crate::view3d) fn plate(outline: &[(f32, f32)], thick: f32) -> Geo {
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
    // The rim, shaded smooth where it bends gently.
    let turn = area(&points).signum();
    let n = points.len();
    let across = |i: usize| {
        let d = (points[(i + 1) % n] - points[i % n]).normalize_or_zero() * turn;
        Vec2::new(d.y, -d.x)
    };
    for i in 0..n {
        let own = across(i);
        let (a, b) = (points[i], points[(i + 1) % n]);
        let (na, nb) = (smooth(own, across(i + n - 1)), smooth(own, across(i + 1)));
        let quad = [(a, na, half), (b, nb, half), (b, nb, -half), (a, na, -half)]
            .map(|(p, normal, z)| geo.vertex(p.extend(z), normal.extend(0.0)));
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
