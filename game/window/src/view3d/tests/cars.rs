//! Every car in the room: from its own file or laid out without one, everything of it can be pointed at, its lines
//! end on its fittings and go round what stands there.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use assess::attempt::Seed;
use assess::pack::Library;
use assess::sentence;
use bevy::math::Vec3;
use sim_core::assembly::PortRef;
use sim_core::car::Car;

use super::{APART, STATIONS, parts, scene, spots};
use crate::shown::{Page, Placing};
use crate::ui::tests::bench;
use crate::view3d::anchors::things;
use crate::view3d::build::{self, parts::body};
use crate::view3d::camera::{Lens, station};
use crate::view3d::layout::{Layout, Owner, Seen};
use crate::view3d::plain;
use crate::view3d::shapes::{Geo, curve};
use crate::view3d::stands::Stands;
use egui_kittest::kittest::Queryable as _;
use front::hands::Thing;
use front::shop::Shop;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn library() -> Library {
    Library::open(&root()).unwrap_or_else(|e| panic!("{e}"))
}

fn cars() -> Vec<Arc<Car>> {
    let library = library();
    let ids = library.cars().unwrap_or_else(|e| panic!("{e}"));
    assert!(3 <= ids.len());
    ids.iter().map(|id| library.car(id).unwrap_or_else(|e| panic!("{e}"))).collect()
}

/// A shop in which this car stands, in a job of another's.
fn shop_with(car: &Arc<Car>) -> Shop {
    let mut shop = bench::shop(bench::JOB);
    let mut job = shop.library().job(bench::JOB).unwrap();
    job.spares = shop.library().spares(car).unwrap();
    job.car = Arc::clone(car);
    job.set_answer(vec![(0, car.faults[0].severity_min)]);
    shop.rehearse_as(job, Seed(1));
    shop
}

/// From its file, if it has one, and laid out without: by its line diagram, if it has one, and in a row.
fn ways_to_stand(car: &Car) -> Vec<(String, Stands)> {
    let library = library();
    let mut out = vec![(format!("{} in a row", car.id), Stands::of(car, &plain::room(car, None)))];
    if let Ok(diagram) = library.diagram(car) {
        out.push((format!("{} by its diagram", car.id), Stands::of(car, &plain::room(car, Some(&diagram)))));
    }
    if library.has_room(&car.id) {
        let room = library.room(car).unwrap_or_else(|e| panic!("{e}"));
        out.push((format!("{} by its file", car.id), Stands::of(car, &room)));
    }
    out
}

#[test]
fn a_car_says_itself_where_it_stands_or_is_laid_out() {
    let library = library();
    let mut files = 0;
    for car in cars() {
        let (_, placing) = plain::stands(&library, &car);
        let file = library.has_room(&car.id);
        files += usize::from(file);
        assert_eq!(placing == Placing::ByFile, file, "{}: {placing:?}", car.id);
    }
    assert!(2 <= files, "{files} cars have a room");
}

#[test]
fn every_part_stands_and_every_port_and_line_has_its_place() {
    for car in cars() {
        let shop = shop_with(&car);
        let setup = shop.session().unwrap().workshop().setup();
        for (name, stands) in ways_to_stand(&car) {
            let layout = Layout::of(&car, &stands, &setup.kit, &Seen::of(shop.view().unwrap()));
            let sane = |at: Vec3| at.is_finite() && at.length() < 6.0;
            for (i, part) in car.assembly.parts.iter().enumerate() {
                let line = part.kind.is_line();
                assert_eq!(stands.home(i as u16).is_some(), !line, "{name}: {}", part.id);
                assert!(sane(layout.middles[i]), "{name}: {} at {}", part.id, layout.middles[i]);
            }
            for port in car.assembly.ports() {
                let mouth = layout.ports.get(&port);
                let of = car.assembly.port_name(port);
                let mouth = mouth.unwrap_or_else(|| panic!("{name}: {of} has no mouth"));
                assert!(sane(mouth.at) && (mouth.out.length() - 1.0).abs() < 1e-3, "{name}: {of}");
            }
            assert_eq!(stands.covers().len(), car.covers.len(), "{name}");
            let lines = car.assembly.parts.iter().filter(|p| p.kind.is_line()).count();
            let drawn = layout.lines.iter().filter(|l| matches!(l.owner, Owner::Part(_))).count();
            assert_eq!(drawn, lines, "{name}");
        }
    }
}

#[test]
fn fittings_sit_on_their_parts() {
    for car in cars() {
        for (name, stands) in ways_to_stand(&car) {
            for (i, part) in car.assembly.parts.iter().enumerate() {
                let index = i as u16;
                let Some(home) = stands.home(index) else { continue };
                let shape = body(&part.kind).build(stands.own_ports(index)).whole().moved(home);
                assert!(!shape.indices.is_empty(), "{name}: {} has no shape", part.id);
                for (port, mouth) in stands.ports(index).iter().enumerate() {
                    let near = shape.positions.iter().map(|p| p.distance(mouth.at)).fold(f32::MAX, f32::min);
                    let port = car.assembly.port_name(PortRef { part: index, port: port as u8 });
                    assert!(near < 0.055, "{name}: {port} is {near} m off its part");
                }
            }
        }
    }
}

#[test]
fn everything_of_every_car_can_be_pointed_at() {
    for car in cars() {
        let shop = shop_with(&car);
        let (_, setup, view) = parts(&shop);
        for (name, stands) in ways_to_stand(&car) {
            let layout = Layout::of(&car, &stands, &setup.kit, &Seen::of(&view));
            let mut missing = Vec::new();
            let ports = car.assembly.ports().map(Thing::Port);
            let bodies = (0..car.assembly.parts.len()).map(|i| Thing::Part(i as u16));
            let covers = (0..car.covers.len()).map(|i| Thing::Cover(i as u16));
            for thing in ports.chain(bodies).chain(covers) {
                let seen = STATIONS.iter().any(|at| {
                    let eye = station(*at);
                    let fov = eye.fov(eye.distance, scene().width() / scene().height());
                    let lens = Lens::new(&eye, fov, scene());
                    let all = things(*at, &car, &setup.kit, &setup.spares, &view, (&stands, &layout));
                    all.iter().any(|(t, at)| *t == thing && lens.see(*at).is_some())
                });
                if !seen {
                    let at = if let Thing::Part(part) = thing {
                        layout.middles[usize::from(part)]
                    } else {
                        Vec3::ZERO
                    };
                    missing.push(format!("{thing:?} at {at}"));
                }
            }
            assert!(missing.is_empty(), "{name}: out of sight: {missing:?}");
        }
    }
}

#[test]
fn a_car_with_a_room_shows_a_mark_for_every_port() {
    let library = library();
    for car in cars().into_iter().filter(|car| library.has_room(&car.id)) {
        let shop = shop_with(&car);
        let seen: Vec<Thing> = STATIONS.iter().flat_map(|s| spots(&shop, *s).into_keys()).collect();
        for port in car.assembly.ports() {
            let name = car.assembly.port_name(port);
            assert!(seen.contains(&Thing::Port(port)), "{}: {name} has no mark", car.id);
        }
        for at in STATIONS {
            let spots: Vec<_> = spots(&shop, at).into_iter().collect();
            for (i, a) in spots.iter().enumerate() {
                for b in &spots[i + 1..] {
                    let far = a.1.distance(b.1);
                    assert!(APART - 2.0 <= far, "{}, {at:?}: {:?} and {:?}", car.id, a.0, b.0);
                }
            }
        }
    }
}

/// How many closed shapes of these triangles a point is in: the crossings of a ray, out of a shape less into one.
fn within(geo: &Geo, at: Vec3, way: Vec3) -> i32 {
    let (low, high) = geo.bounds();
    if (at.cmplt(low) | at.cmpgt(high)).any() {
        return 0;
    }
    let corner = |i: u32| geo.positions[i as usize];
    let crossings = geo.indices.chunks_exact(3).map(|t| {
        let [a, b, c] = [corner(t[0]), corner(t[1]), corner(t[2])];
        let (e1, e2) = (b - a, c - a);
        let p = way.cross(e2);
        let det = e1.dot(p);
        if det.abs() < 1e-14 {
            return 0;
        }
        let from = at - a;
        let u = from.dot(p) / det;
        let q = from.cross(e1);
        let (v, far) = (way.dot(q) / det, e2.dot(q) / det);
        let hit = 0.0 <= u && 0.0 <= v && u + v <= 1.0 && 0.0 < far;
        i32::from(hit) * if 0.0 < e1.cross(e2).dot(way) { 1 } else { -1 }
    });
    crossings.sum()
}

#[test]
fn no_hose_or_wire_runs_through_a_part() {
    // Near its ends a line is on the fittings of what it is joined to.
    const FREE_M: f32 = 0.07;
    let rays = [Vec3::new(0.31, 0.9, 0.27), Vec3::new(-0.7, 0.2, 0.66), Vec3::new(0.2, -0.85, -0.44)];
    let library = library();
    for car in cars().into_iter().filter(|car| library.has_room(&car.id)) {
        let shop = shop_with(&car);
        let (stands, _) = plain::stands(&library, &car);
        let setup = shop.session().unwrap().workshop().setup();
        let layout = Layout::of(&car, &stands, &setup.kit, &Seen::of(shop.view().unwrap()));
        let bodies: Vec<(String, Geo)> = car
            .assembly
            .parts
            .iter()
            .enumerate()
            .filter_map(|(i, part)| {
                let home = stands.home(i as u16)?;
                let shape = body(&part.kind).build(stands.own_ports(i as u16));
                Some((part.id.clone(), shape.whole().moved(home)))
            })
            .collect();
        let mut through = Vec::new();
        for line in &layout.lines {
            let points = curve(&line.points, 8);
            let (first, last) = (points[0], points[points.len() - 1]);
            for at in points.iter().filter(|p| FREE_M < p.distance(first) && FREE_M < p.distance(last)) {
                for (id, geo) in &bodies {
                    if rays.iter().filter(|way| 0 < within(geo, *at, **way)).count() == rays.len() {
                        through.push(format!("{:?} through {id} at {at}", line.owner));
                    }
                }
            }
        }
        assert!(through.is_empty(), "{}:\n{}", car.id, through.join("\n"));
    }
}

#[test]
fn a_hose_pulled_off_stays_where_its_fitting_was() {
    for car in cars() {
        let shop = shop_with(&car);
        let (stands, _) = plain::stands(shop.library(), &car);
        let (_, setup, mut view) = parts(&shop);
        // Everything open at the check valves: they are laid aside, what was on them is not.
        view.joints_open = car
            .assembly
            .joints
            .iter()
            .filter(|j| {
                [j.a, j.b].iter().any(|p| car.assembly.parts[usize::from(p.part)].kind.name() == "CheckValve")
            })
            .map(|j| j.id.clone())
            .collect();
        let whole = Layout::of(&car, &stands, &setup.kit, &Seen::of(shop.view().unwrap()));
        let open = Layout::of(&car, &stands, &setup.kit, &Seen::of(&view));
        for (line, was) in open
            .lines
            .iter()
            .zip(&whole.lines)
            .filter(|(l, _)| l.made == [true, false] || l.made == [false, true])
        {
            let tip = |line: &crate::view3d::layout::Line, k: usize| {
                if k == 0 { line.points[0] } else { line.points[line.points.len() - 1] }
            };
            for k in [0, 1] {
                let moved = tip(line, k).distance(tip(was, k));
                assert!(moved < 0.2, "{}: an end of {:?} has gone {moved} m", car.id, line.owner);
            }
        }
    }
}

#[test]
fn a_point_in_a_box_is_within_it_and_one_beside_it_is_not() {
    let geo = crate::view3d::shapes::bevel_box(0.2, 0.2, 0.2, 0.01);
    assert_eq!(within(&geo, Vec3::new(0.03, 0.02, 0.01), Vec3::new(0.31, 0.9, 0.27)), 1);
    assert_eq!(within(&geo, Vec3::new(0.13, 0.02, 0.01), Vec3::new(0.31, 0.9, 0.27)), 0);
}

#[test]
fn what_is_laid_out_lies_beside_one_another() {
    for car in cars() {
        let stands = Stands::of(&car, &plain::room(&car, None));
        let homes: Vec<(usize, Vec3)> = (0..car.assembly.parts.len())
            .filter_map(|i| Some((i, stands.home(i as u16)?.translation)))
            .collect();
        for (n, (i, a)) in homes.iter().enumerate() {
            for (j, b) in &homes[n + 1..] {
                let (i, j) = (&car.assembly.parts[*i].id, &car.assembly.parts[*j].id);
                assert!(0.08 < a.distance(*b), "{}: {i} and {j} are {} m apart", car.id, a.distance(*b));
            }
        }
    }
}

#[test]
fn the_order_on_the_board_is_that_of_the_diagram() {
    let library = library();
    for car in cars() {
        let Ok(diagram) = library.diagram(&car) else { continue };
        let by = |diagram| Stands::of(&car, &plain::room(&car, diagram));
        let (plain, drawn) = (by(None), by(Some(&diagram)));
        // The same places, dealt out otherwise.
        let places = |stands: &Stands| {
            let mut all: Vec<_> = (0..car.assembly.parts.len() as u16)
                .filter_map(|i| stands.home(i).map(|h| h.translation))
                .map(|v| ((v.x * 1e3).round() as i32, (v.z * 1e3).round() as i32))
                .collect();
            all.sort_unstable();
            all
        };
        assert_eq!(places(&plain), places(&drawn), "{}", car.id);
    }
}

#[test]
fn a_room_that_cannot_be_used_is_told_and_replaced() {
    let folder = tempfile::tempdir().unwrap();
    for kind in ["vehicles", "instruments", "rooms"] {
        let to = folder.path().join("assets").join(kind);
        std::fs::create_dir_all(&to).unwrap();
        for entry in std::fs::read_dir(root().join("assets").join(kind)).unwrap() {
            let entry = entry.unwrap();
            std::fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
        }
    }
    std::fs::create_dir_all(folder.path().join("scenarios")).unwrap();
    let file = folder.path().join("assets/rooms/alder.ron");
    let good = std::fs::read_to_string(&file).unwrap();
    for (from, to, says) in [
        ("cover: \"scuttle\"", "cover: \"hood\"", "covers[0].cover"),
        ("schema: 1", "schema: 9", "schema"),
        ("shell: saloon", "shell:", "alder.ron"),
    ] {
        assert!(good.contains(from));
        std::fs::write(&file, good.replacen(from, to, 1)).unwrap();
        let library = Library::open(folder.path()).unwrap();
        let car = library.car("alder").unwrap();
        let (stands, placing) = plain::stands(&library, &car);
        let Placing::Broken(why) = placing else { panic!("{from} to {to}: {placing:?}") };
        let why = why.to_string();
        assert!(why.contains("assets/rooms/alder.ron") && why.contains(says), "{why}");
        assert_eq!(stands, Stands::of(&car, &plain::room(&car, None)));
    }
}

#[test]
fn the_window_says_how_a_car_without_a_room_got_its_places() {
    for (placing, says) in [
        (Placing::ByDiagram, "order of the line diagram"),
        (Placing::InARow, "order of the car's file"),
        (
            Placing::Broken(sentence!(
                "error-as-it-is",
                "{text}",
                text = "assets/rooms/x.ron: covers: lid is missing"
            )),
            "lid is missing",
        ),
    ] {
        let harness = bench::window_with(Page::Workshop, "en", (1280.0, 720.0), |bench| {
            bench.ui.room_placing = placing.clone();
        });
        assert!(harness.query_by_label_contains(says).is_some(), "{placing:?}");
    }
    let harness = bench::window(Page::Workshop, "en");
    assert!(harness.query_by_label_contains("No room is written for this car").is_none());
}

#[test]
fn every_car_is_light_enough_to_draw() {
    for car in cars() {
        let shop = shop_with(&car);
        for (name, stands) in ways_to_stand(&car) {
            let all = build::of_job(&shop, &stands, Default::default());
            let triangles: usize = all.iter().map(|made| made.triangles()).sum();
            assert!((10_000..200_000).contains(&triangles), "{name}: {triangles} triangles");
        }
    }
}
