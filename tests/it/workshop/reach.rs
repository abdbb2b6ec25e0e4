//! From where one gets at a thing is told once, by the car; the workshop walks there.

use sim_core::action::Sense;
use sim_core::air::Day;
use sim_core::assembly::Stop;
use sim_core::notice::{Reason, Refusal};
use sim_core::workshop::Arrival;

use super::*;

/// Every car in the workshop, by its name.
fn cars() -> Vec<(String, Bench)> {
    let all: Vec<_> = LIBRARY
        .cars()
        .unwrap()
        .into_iter()
        .map(|id| {
            let car = LIBRARY.car(&id).unwrap();
            let kit = Arc::clone(LIBRARY.kit());
            let world = World { params: Vec::new(), instrument_errors: vec![0.0; kit.len()] };
            let spares = LIBRARY.spares(&car).unwrap();
            let (day, arrival) = (Day::STANDARD, Arrival { driven: false, stood_min: 0, on_slope: false });
            let setup = Setup { car, kit, spares, day, arrival, card: Vec::new() };
            (id, Bench { ws: Opened::of(setup, world), log: Vec::new() })
        })
        .collect();
    assert!(3 <= all.len());
    all
}

#[test]
fn inv_one_stands_where_the_car_says_that_a_part_is_reached() {
    for (name, mut b) in cars() {
        let car = Arc::clone(&b.ws.setup().car);
        for shut in [true, false] {
            for (i, part) in car.assembly.parts.iter().enumerate() {
                let places = car.places_of_part(i as u16);
                assert_eq!(places.len(), 1, "{name}: {}", part.id);
                let (station, cover) = places[0];
                let out = b.ws.act(&sense(Sense::Touch { part: part.id.clone() }));
                if shut && let Some(cover) = cover {
                    let cover = &car.covers[cover].id;
                    let barred = matches!(&out.refused, Some(Refusal::Cannot(Reason::CoverInTheWay { id, .. }))
                        if id.0 == *cover);
                    assert!(barred, "{name}: {} behind {cover}: {:?}", part.id, out.refused);
                } else {
                    assert_eq!(out.refused, None, "{name}: {}", part.id);
                    assert_eq!(b.ws.view().station, station, "{name}: {}", part.id);
                }
            }
            for c in &car.covers {
                b.ws.act(&cover(&c.id, true));
            }
        }
    }
}

#[test]
fn inv_the_end_of_a_line_is_where_the_thing_is_that_it_is_joined_to() {
    let mut clamped = 0;
    for (name, mut b) in cars() {
        let car = Arc::clone(&b.ws.setup().car);
        car.covers.iter().for_each(|c| drop(b.ws.act(&cover(&c.id, true))));
        for port in car.assembly.ports().filter(|p| car.assembly.parts[usize::from(p.part)].kind.is_line()) {
            let places = car.places_of_port(port);
            let joint = car.assembly.joints.iter().find(|j| j.a == port || j.b == port);
            let other = joint.map(|j| if j.a == port { j.b.part } else { j.a.part });
            let stands = other.filter(|p| !car.assembly.parts[usize::from(*p)].kind.is_line());
            let port = car.assembly.port_name(port);
            if let Some(place) = stands.and_then(|part| car.places_of_part(part).first().copied())
                && car.assembly.parts[usize::from(stands.unwrap())].kind.name() != "Body"
            {
                assert_eq!(places, [place], "{name}: {port}");
            }
            let out = b.ws.act(&Action::SetStop { port: port.clone(), stop: Some(Stop::Clamp) });
            if out.refused.is_none() {
                let here = b.ws.view().station;
                assert!(places.iter().any(|(station, _)| *station == here), "{name}: {port} from {here:?}");
                clamped += 1;
            }
        }
    }
    assert!(10 < clamped, "{clamped}");
}
