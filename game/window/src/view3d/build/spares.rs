//! The shelf of spares: each new part as it is built in, made small enough for its place, with a tag.

use assess::room::LineOf;
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::car::{Car, Spare};

use super::parts::body;
use super::parts::lines::{coil, style};
use crate::view3d::figures::figures;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places;
use crate::view3d::shapes::bevel_box;
use crate::view3d::stands::Stands;
use front::hands::Thing;

/// Room on the shelf for one spare, m.
const ROOM: Vec3 = Vec3::new(0.20, 0.27, 0.28);

/// All of them.
pub(in crate::view3d) fn shelf(car: &Car, stands: &Stands, spares: &[Spare]) -> Vec<Made> {
    spares.iter().enumerate().map(|(i, spare)| one(car, stands, i, spare)).collect()
}

fn one(car: &Car, stands: &Stands, i: usize, spare: &Spare) -> Made {
    let unit = car.units.get(usize::from(spare.unit));
    let index = unit.and_then(|u| u.parts.first().copied());
    let part = index.and_then(|p| Some((p, &car.assembly.parts.get(usize::from(p))?.kind)));
    let used = !spare.params.is_empty();
    let mut s = Sculpt::default();
    if let Some((index, kind)) = part {
        let own = if kind.is_line() {
            coil(style(Some(kind), stands.way(LineOf::Part(index))), kind.hose().is_some())
        } else {
            body(kind).spare(stands.own_ports(index))
        };
        stand(&mut s, &own);
    }
    if used {
        // It comes from a wreck: on a rag, no box.
        s.add(Mat::Rag, bevel_box(0.19, 0.006, 0.22, 0.003).at(0.0, 0.003, 0.0));
    } else {
        s.add(Mat::Card, bevel_box(0.20, 0.012, 0.26, 0.003).at(0.0, 0.006, 0.0));
        s.add(Mat::Card, bevel_box(0.20, 0.05, 0.006, 0.002).at(0.0, 0.028, 0.128));
    }
    // A tag on the shelf's edge with the number of its place: white for new, brown between strokes for used.
    let tag = if used { Mat::Oak } else { Mat::Face };
    s.add(tag, bevel_box(0.110, 0.060, 0.002, 0.001).at(0.0, -0.020, 0.168));
    s.add(Mat::Ink, figures(&(i + 1).to_string(), 0.042).at(0.0, -0.020, 0.1695));
    if used {
        for x in [-0.045, 0.045] {
            s.add(
                Mat::Red,
                bevel_box(0.004, 0.050, 0.002, 0.0003)
                    .turned(Quat::from_rotation_z(-0.35))
                    .at(x, -0.020, 0.170),
            );
        }
    }
    Made::of(Thing::Spare(i as u16), Transform::from_translation(places::shelf_place(i)), s)
}

/// Puts `own` into the middle of the place, as large as fits, not larger than it is.
fn stand(s: &mut Sculpt, own: &Sculpt) {
    let (lo, hi) = own.whole().bounds();
    let size = hi - lo;
    let scale = (ROOM / size.max(Vec3::splat(1e-3))).min_element().min(1.25);
    let middle = (lo + hi) * 0.5;
    let foot = Vec3::new(middle.x, lo.y, middle.z);
    let to = Transform::from_translation(Vec3::Y * 0.012 - foot * scale).with_scale(Vec3::splat(scale));
    s.join(own, to);
}
