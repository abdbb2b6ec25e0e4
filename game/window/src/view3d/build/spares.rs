//! The shelf of spares: each new part as it is built in, made small enough for its place, with a tag.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::car::{Car, Spare};
use sim_core::parts::PartKind;
use std::f32::consts::TAU;

use super::super::figures::figures;
use super::super::hoses::style;
use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::places;
use super::super::shapes::{bevel_box, curve, cylinder, plate, sweep};
use super::{body, brake, electrics, vacuum};
use front::hands::Thing;

/// Room on the shelf for one spare, m.
const ROOM: Vec3 = Vec3::new(0.20, 0.27, 0.28);

/// All of them.
pub(in super::super) fn shelf(car: &Car, spares: &[Spare]) -> Vec<Made> {
    spares.iter().enumerate().map(|(i, spare)| one(car, i, spare)).collect()
}

fn one(car: &Car, i: usize, spare: &Spare) -> Made {
    let unit = car.units.get(usize::from(spare.unit));
    let part = unit.and_then(|u| u.parts.first()).and_then(|p| car.assembly.parts.get(usize::from(*p)));
    let used = !spare.params.is_empty();
    let mut s = Sculpt::default();
    if let Some(part) = part {
        let mut own = match (&part.kind, part.id.as_str()) {
            (PartKind::Booster(_), _) => brake::booster(),
            (PartKind::Tee(_), _) => vacuum::tee(),
            (PartKind::VacuumSwitch(_), _) => vacuum::switch(),
            (PartKind::CheckValve(_), _) => vacuum::valve(Vec3::ZERO, Vec3::X),
            (PartKind::VacuumPump(_), _) => vacuum::pump(),
            (PartKind::Battery(_), _) => electrics::battery(),
            (PartKind::Fuse(_), _) => electrics::fuse(),
            (PartKind::Relay(_), _) => electrics::relay(),
            (PartKind::Engine(_), _) => gasket(),
            (PartKind::Body(_), _) => body::earth_points(),
            (PartKind::Hose(_) | PartKind::Wire(_), id) => coil(id, matches!(part.kind, PartKind::Hose(_))),
            _ => Sculpt::default(),
        };
        if own.made_of.is_empty() {
            own.add(Mat::Card, bevel_box(0.14, 0.10, 0.14, 0.003));
        }
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

/// A hose or wire, coiled.
fn coil(id: &str, hose: bool) -> Sculpt {
    let mut s = Sculpt::default();
    let style = style(id, hose);
    let r = if hose { 0.070 } else { 0.060 };
    let turns = if hose { 1.4 } else { 3.2 };
    let n = (turns * 10.0) as usize;
    let mut line: Vec<Vec3> = (0..=n)
        .map(|i| {
            let a = i as f32 / 10.0 * TAU;
            let grow = 1.0 + 0.05 * (i as f32 / 10.0);
            Vec3::new(r * grow * a.cos(), r * grow * a.sin() + r, 0.008 * i as f32 / 5.0)
        })
        .collect();
    let last = line[line.len() - 1];
    line.push(last + Vec3::new(0.05, 0.05, 0.01));
    let radius = style.radius.max(0.004);
    s.add(style.mat, sweep(&curve(&line, 2), radius, radius * style.flat, 9, Vec3::Z));
    if !hose {
        for end in [line[0], line[line.len() - 1]] {
            s.add(Mat::Zinc, cylinder(0.009, 0.006, 0.001).along(Vec3::Z).at(end.x, end.y, end.z));
        }
        s.add(Mat::Face, bevel_box(0.014, 0.03, 0.03, 0.003).at(-r * 1.1, r, 0.012));
    }
    s
}

/// Gasket set of the intake.
fn gasket() -> Sculpt {
    let mut s = Sculpt::default();
    s.add(
        Mat::Case,
        plate(&[(-0.12, -0.03), (0.12, -0.03), (0.12, 0.03), (-0.12, 0.03)], 0.003).at(0.0, 0.05, 0.0),
    );
    for i in 0..4 {
        let x = -0.084 + 0.056 * i as f32;
        s.add(Mat::Copper, super::super::shapes::ring(0.018, 0.0025).along(Vec3::Z).at(x, 0.05, 0.002));
        s.add(Mat::Ink, cylinder(0.017, 0.001, 0.0002).along(Vec3::Z).at(x, 0.05, 0.0015));
    }
    for x in [-0.112, 0.112] {
        s.add(Mat::Ink, cylinder(0.004, 0.001, 0.0002).along(Vec3::Z).at(x, 0.05, 0.0016));
    }
    s
}
