//! Every kind of part has a shape, whatever its numbers, and it follows them.

use assess::room::{CoverShape, FixtureShape, Shell};
use serde_json::{Map, Value};
use sim_core::parts::{ALL_TABLES, PartKind};

use crate::view3d::build::parts::body;
use crate::view3d::build::parts::lines::{braid_radius, hose_radius, style, wire_radius};
use crate::view3d::build::{covers, fixtures, shell};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::Geo;

/// A part of a kind, every number `share` of its range.
fn part(kind: &str, share: f64) -> PartKind {
    let (_, table) = ALL_TABLES.iter().find(|(name, _)| *name == kind).expect("a table");
    let numbers: Map<String, Value> =
        table.iter().map(|d| (d.name.to_owned(), (d.min + (d.max - d.min) * share).into())).collect();
    serde_json::from_value(Value::Object([(kind.to_owned(), Value::Object(numbers))].into_iter().collect()))
        .unwrap_or_else(|e| panic!("{kind}: {e}"))
}

/// A part of a kind with one number set.
fn with(kind: &str, number: &str, value: f64) -> PartKind {
    let mut part = part(kind, 0.3);
    assert!(part.params_mut().set(number, value), "{kind} has no {number}");
    part
}

fn built(kind: &PartKind) -> Sculpt {
    let body = body(kind);
    body.build(&body.mouths())
}

fn of(sculpt: &Sculpt, mat: Mat) -> Geo {
    sculpt.made_of.iter().find(|(m, _)| *m == mat).map(|(_, geo)| geo.clone()).unwrap_or_default()
}

#[test]
fn every_kind_has_a_shape_and_a_mouth_for_each_port_whatever_its_numbers() {
    assert!(20 <= PartKind::NAMES.len());
    for kind in PartKind::NAMES {
        for share in [0.0, 0.3, 1.0] {
            let part = part(kind, share);
            let (own, mouths) = (body(&part), body(&part).mouths());
            assert_eq!(mouths.len(), part.ports().len(), "{kind}");
            for shape in [own.build(&mouths), own.spare(&mouths)] {
                let (low, high) = shape.whole().bounds();
                let size = high - low;
                assert!(20 < shape.whole().triangles(), "{kind} at {share} is not drawn");
                assert!(low.is_finite() && high.is_finite(), "{kind} at {share}: {low} to {high}");
                assert!((0.01..1.6).contains(&size.max_element()), "{kind} at {share} is {size} m large");
            }
            // Fewer ports than its kind has are no reason to stop.
            assert!(0 < own.build(&[]).whole().triangles() || part.name() == "Body", "{kind}");
            assert!(own.hold().is_finite() && own.hold().length() < 1.0, "{kind}");
        }
    }
}

#[test]
fn two_mouths_of_a_kind_can_be_told_apart() {
    for kind in PartKind::NAMES {
        let mouths = body(&part(kind, 0.3)).mouths();
        for (i, a) in mouths.iter().enumerate() {
            for b in &mouths[i + 1..] {
                assert!(0.015 < a.at.distance(b.at), "{kind}: two ports in one place");
            }
        }
    }
}

#[test]
fn a_hose_looks_as_wide_as_its_bore_and_a_wire_as_thick_as_its_area() {
    // Twice as thick as it is, wall and all.
    assert!((hose_radius(9.0) - 0.0125).abs() < 1e-6 && (hose_radius(8.0) - 0.0115).abs() < 1e-6);
    let radius = |kind: &PartKind| style(Some(kind), None).radius;
    let mut last = 0.0;
    for bore in [4.0, 6.0, 8.0, 9.0, 12.0, 20.0] {
        let now = radius(&with("Hose", "bore_mm", bore));
        assert!(last < now, "{bore} mm");
        last = now;
    }
    last = 0.0;
    for area in [0.35, 0.5, 1.5, 2.5, 6.0, 16.0, 35.0] {
        let now = radius(&with("Wire", "area_mm2", area));
        assert!(last < now && now < braid_radius(area).max(0.012), "{area} mm²: {now} m");
        last = now;
    }
    assert!(wire_radius(0.5) < hose_radius(6.0));
}

#[test]
fn a_reservoir_is_as_large_as_its_volume() {
    for litres in [0.5, 1.0, 3.0, 6.0, 20.0] {
        let can = of(&built(&with("Reservoir", "volume_l", litres)), Mat::Paint);
        let (low, high) = can.bounds();
        let size = high - low;
        let volume = std::f32::consts::FRAC_PI_4 * size.y * size.z * size.x * 1e3;
        let share = volume / litres as f32;
        assert!((0.9..1.25).contains(&share), "{litres} L looks like {volume} L");
    }
}

#[test]
fn what_holds_or_moves_more_is_larger() {
    // Across its axis, or how far out a plate on it sits.
    let reach = |kind: &PartKind, mat: Option<Mat>| {
        let shape = built(kind);
        let (low, high) = mat.map_or_else(|| shape.whole(), |mat| of(&shape, mat)).bounds();
        let size = high - low;
        size.x + size.y + if mat == Some(Mat::Face) { high.z } else { 0.0 }
    };
    for (kind, number, small, large, mat) in [
        ("Battery", "capacity_ah", 40.0, 90.0, Some(Mat::Nylon)),
        ("EnginePump", "displacement_cm3", 40.0, 160.0, None),
        ("VacuumPump", "displacement_cm3", 3.0, 12.0, Some(Mat::Paint)),
        ("Booster", "area_cm2", 300.0, 600.0, Some(Mat::Paint)),
        ("Tee", "volume_cm3", 3.0, 12.0, Some(Mat::GreyNylon)),
        ("CheckValve", "volume_cm3", 2.0, 9.0, Some(Mat::WhiteNylon)),
        ("VacuumSwitch", "volume_cm3", 2.0, 9.0, Some(Mat::Zinc)),
        ("VacuumSensor", "volume_cm3", 2.0, 9.0, Some(Mat::Face)),
    ] {
        let (a, b) = (with(kind, number, small), with(kind, number, large));
        let (a, b) = (reach(&a, mat), reach(&b, mat));
        assert!(a * 1.02 < b, "{kind}.{number}: {a} then {b}");
    }
}

#[test]
fn an_engine_that_throttles_has_coils_and_one_that_does_not_has_injectors() {
    let petrol = built(&with("Engine", "warm_idle_kpa", -65.0));
    let diesel = built(&with("Engine", "warm_idle_kpa", -1.0));
    assert!(of(&petrol, Mat::Steel).indices.is_empty() && !of(&diesel, Mat::Steel).indices.is_empty());
}

#[test]
fn a_fuse_has_the_colour_of_its_rating() {
    for (rating, mat) in [(7.5, Mat::Brown), (10.0, Mat::Red), (20.0, Mat::Yellow), (30.0, Mat::FuseGreen)] {
        let fuse = built(&with("Fuse", "rating_a", rating));
        assert!(!of(&fuse, mat).indices.is_empty(), "{rating} A is not {mat:?}");
    }
}

#[test]
fn every_cover_fixture_and_body_is_drawn_and_covers_follow_their_numbers() {
    let cover = |width_m: f64| {
        [
            CoverShape::Scuttle { width_m, depth_m: 0.3, height_m: 0.1 },
            CoverShape::Guard { width_m, height_m: 0.3 },
            CoverShape::Lid { width_m, depth_m: 0.3, height_m: 0.05 },
        ]
    };
    for width in [0.005, 0.3, 0.9, 3.0] {
        for shape in cover(width) {
            let (low, high) = covers::cover(shape).whole().bounds();
            assert!(low.is_finite() && high.is_finite(), "{shape:?}");
            if 0.1 < width {
                let wide = f64::from(high.x - low.x);
                assert!((width * 0.97..width + 0.08).contains(&wide), "{shape:?} is {wide} m wide");
            }
        }
    }
    for shape in [
        FixtureShape::FuseBox,
        FixtureShape::Bracket,
        FixtureShape::Clip,
        FixtureShape::Grommet,
        FixtureShape::Block { size_m: (0.1, 0.1, 0.1) },
        FixtureShape::Board { size_m: (0.5, 0.02, 0.4) },
    ] {
        assert!(!fixtures::fixture(shape).whole().indices.is_empty(), "{shape:?}");
    }
    for body in Shell::ALL {
        let triangles: usize = shell::all(body).iter().map(|made| made.triangles()).sum();
        assert!(5_000 < triangles, "{body:?}: {triangles}");
    }
}
