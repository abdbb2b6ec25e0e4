//! A box with broken edges.

use bevy::math::Vec3;

use super::geo::Geo;

/// Edges finer than this are not drawn: a mark on a dial is a plain box.
const SHARP_M: f32 = 0.0011;

/// A box about the origin with its edges rounded by `bevel`.
#[must_use]
pub(in crate::view3d) fn bevel_box(x: f32, y: f32, z: f32, bevel: f32) -> Geo {
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
