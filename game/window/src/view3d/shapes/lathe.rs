//! What is turned: cylinders, nuts, rings.

use bevy::math::{Vec2, Vec3};
use std::f32::consts::TAU;

use super::geo::Geo;
use super::smooth;

/// Fewest and most steps of a lathe round its axis.
const ROUND_STEPS: (usize, usize) = (8, 40);
/// How far a side of a round thing may be from the circle, m: less than a pixel from where it is seen.
const SAGITTA_M: f32 = 0.000_45;
/// A ring thinner than this has six sides, m.
const THIN_M: f32 = 0.004;

/// Turns a profile of (radius, height) about +Y, from the lower end up along the outside.
#[must_use]
pub(in crate::view3d) fn lathe(profile: &[(f32, f32)]) -> Geo {
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
fn lathe_steps(profile: &[(f32, f32)], steps: usize) -> Geo {
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
        let shared = |other: Option<&Vec2>| other.map_or(own, |o| smooth(own, *o));
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
pub(in crate::view3d) fn cylinder(radius: f32, height: f32, bevel: f32) -> Geo {
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
pub(in crate::view3d) fn hexagon(radius: f32, height: f32) -> Geo {
    lathe_steps(
        &[(0.0, 0.0), (radius, 0.0), (radius, height * 0.8), (radius * 0.85, height), (0.0, height)],
        6,
    )
}

/// A ring about +Y.
#[must_use]
pub(in crate::view3d) fn ring(radius: f32, thick: f32) -> Geo {
    let sides = if thick < THIN_M { 6 } else { 10 };
    let profile: Vec<(f32, f32)> = (0..=sides)
        .map(|i| {
            let a = i as f32 / sides as f32 * TAU;
            (radius + thick * a.cos(), thick * a.sin())
        })
        .collect();
    lathe(&profile)
}
