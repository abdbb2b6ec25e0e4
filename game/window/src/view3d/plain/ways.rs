//! Ways of lines that nobody has laid: an arc from fitting to fitting, over the nose to the front, through the
//! bulkhead to the cab.

use assess::room::{Colour, End, LineOf, Stand, Way, wire_of_joint};
use bevy::math::{FloatExt as _, Vec3};
use sim_core::action::Station;
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::super::mouth::Mouth;
use super::super::stands::{placed, vec3};
use super::seats::GROMMET;
use super::xyz;

/// Cross-section of a joint's wire, mm².
const AREA_MM2: f64 = 1.5;

/// The way of every hose, wire and wired joint.
pub(super) fn all(car: &Car, parts: &[Stand]) -> Vec<Way> {
    let assembly = &car.assembly;
    let mut out = Vec::new();
    for (i, _) in assembly.parts.iter().enumerate().filter(|(_, p)| p.kind.is_line()) {
        let ends = [0, 1].map(|port| partner(car, PortRef { part: i as u16, port }));
        let [a, b] = ends;
        let wire = matches!(assembly.parts[i].kind, PartKind::Wire(_));
        out.push(way(car, parts, (LineOf::Part(i as u16), out.len()), (a, b), wire, None));
    }
    for i in 0..assembly.joints.len() as u16 {
        if let Some((a, b)) = wire_of_joint(assembly, i) {
            let ends = (Some(a), Some(b));
            out.push(way(car, parts, (LineOf::Joint(i), out.len()), ends, true, Some(AREA_MM2)));
        }
    }
    out
}

/// What a line's end is joined to.
fn partner(car: &Car, port: PortRef) -> Option<PortRef> {
    let joint = car.assembly.joints.iter().find(|j| j.a == port || j.b == port)?;
    Some(if joint.a == port { joint.b } else { joint.a })
}

fn way(
    car: &Car,
    parts: &[Stand],
    (line, n): (LineOf, usize),
    (a, b): (Option<PortRef>, Option<PortRef>),
    wire: bool,
    area_mm2: Option<f64>,
) -> Way {
    let mouth = |port: PortRef| -> Option<Mouth> {
        let stand = parts.iter().find(|s| s.part == port.part)?;
        let own = stand.ports.get(usize::from(port.port))?;
        Some(Mouth::new(vec3(own.at), vec3(own.out)).placed(&placed(&stand.spot)))
    };
    let station = |port: PortRef| car.stands.get(usize::from(port.part)).map(|s| s.station);
    let slack = match line {
        LineOf::Part(part) => car.stands.get(usize::from(part)).map_or(Station::Bay, |s| s.station),
        LineOf::Joint(_) => Station::Bay,
    };
    let points = match (a.and_then(mouth), b.and_then(mouth)) {
        (Some(from), Some(to)) => arc((from.at, to.at), (a.and_then(station), b.and_then(station)), slack, n),
        _ => Vec::new(),
    };
    let colour = if wire { colour(car, [a, b]) } else { Colour::default() };
    Way { line, points: points.into_iter().map(xyz).collect(), colour, end: End::default(), area_mm2 }
}

/// Points between two fittings; the `n`-th line is a little higher than the one before, so that they lie apart.
fn arc(
    (from, to): (Vec3, Vec3),
    stations: (Option<Station>, Option<Station>),
    slack: Station,
    n: usize,
) -> Vec<Vec3> {
    let lift = 0.06 + 0.02 * (n % 5) as f32;
    let over = |t: f32| {
        let at = from.lerp(to, t);
        Vec3::new(at.x, from.y.max(to.y) + lift, at.z)
    };
    let is = |station| (stations.0 == Some(station), stations.1 == Some(station));
    let through = vec3(GROMMET);
    match (is(Station::Cab), is(Station::Front)) {
        ((true, false), _) => vec![through - Vec3::Z * 0.05, through + Vec3::Z * 0.05, over(0.6)],
        ((false, true), _) => vec![over(0.4), through + Vec3::Z * 0.05, through - Vec3::Z * 0.05],
        (_, (true, false)) => nose(from, to, slack, n).into_iter().rev().collect(),
        (_, (false, true)) => nose(to, from, slack, n),
        _ => vec![over(0.33), over(0.67)],
    }
}

/// From the bay over the crossmember and down before it; its slack is where it is worked at, so that its middle is
/// in the picture from there.
fn nose(front: Vec3, bay: Vec3, slack: Station, n: usize) -> Vec<Vec3> {
    let (x, n) = (front.x - 0.22, (n % 5) as f32);
    let over = Vec3::new(x, 0.945 + 0.010 * n, 0.50);
    if slack == Station::Front {
        vec![over, Vec3::new(x - 0.16, 0.62, 0.62), Vec3::new(x - 0.06 - 0.03 * n, 0.24, 0.70)]
    } else {
        let back = Vec3::new(over.x.lerp(bay.x, 0.5), over.y.max(bay.y) + 0.22, bay.z.lerp(over.z, 0.4));
        vec![back, over, Vec3::new(x + 0.04, 0.66, 0.58)]
    }
}

/// Red from the battery and through fuses, brown to earth, else black.
fn colour(car: &Car, ends: [Option<PortRef>; 2]) -> Colour {
    let touches = |is: fn(&PartKind, &str) -> bool| {
        ends.iter().flatten().any(|port| {
            let kind = car.assembly.parts.get(usize::from(port.part)).map(|p| &p.kind);
            kind.is_some_and(|kind| {
                kind.ports().get(usize::from(port.port)).is_some_and(|def| is(kind, def.name))
            })
        })
    };
    if touches(|kind, port| matches!(kind, PartKind::Body(_)) || port == "minus" || port == "ground") {
        Colour::Brown
    } else if touches(|kind, port| {
        matches!(kind, PartKind::Fuse(_)) || port == "plus" || port == "30" || port == "87"
    }) {
        Colour::Red
    } else {
        Colour::Black
    }
}
