//! Where everything is *now*: joints open or made, parts laid aside, instruments connected. Worked out
//! from what can be seen in the workshop; shapes, hoses and hotspots follow it.

use std::collections::BTreeMap;

use assess::room::{LineOf, wire_of_joint};
use bevy::math::Vec3;
use bevy::transform::components::Transform;
use sim_core::action::Station;
use sim_core::assembly::{PortRef, Stop};
use sim_core::car::Car;
use sim_core::instrument::{Held, InstrumentCard, InstrumentKind, Measured};
use sim_core::observe::Observed;
use sim_core::parts::{Domain, PartKind};
use sim_core::workshop::View;

use super::build::parts::body;
use super::camera::station_eye;
use super::mouth::Mouth;
use super::places::{self, JOINT_M};
use super::stands::Stands;

/// What the layout depends on; equal ones have equal layouts.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Seen {
    joints_open: Vec<String>,
    pulled: Vec<String>,
    stops: Vec<(String, Stop)>,
    fits: Vec<Vec<(String, String)>>,
    /// Something has been timed: the stopwatch lies at hand.
    timed: bool,
}

impl Seen {
    /// As it is now.
    #[must_use]
    pub(super) fn of(view: &View) -> Self {
        Self {
            joints_open: view.joints_open.clone(),
            pulled: view.pulled.clone(),
            stops: view.stops.clone(),
            fits: view.instruments.iter().map(|i| i.at.clone()).collect(),
            timed: view.readings.iter().any(|r| matches!(r.what, Observed::Interval { .. })),
        }
    }
}

/// Whose a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Owner {
    /// A hose or wire of the car.
    Part(u16),
    /// The wire of a joint that has no part of its own.
    Joint(u16),
    /// A lead or hose of an instrument: card, number of its end.
    Lead(usize, usize),
}

/// A hose, wire or lead as it lies now.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    /// Whose.
    pub(super) owner: Owner,
    /// Points it passes.
    pub(super) points: Vec<Vec3>,
    /// Whether its ends sit on their fittings.
    pub(super) made: [bool; 2],
}

/// Where everything is.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Layout {
    /// Where each port is taken hold of.
    pub(super) ports: BTreeMap<PortRef, Mouth>,
    /// How far each part of the car is from its home.
    pub(super) aside: Vec<Vec3>,
    /// Middle of each part of the car.
    pub(super) middles: Vec<Vec3>,
    /// Hoses, wires, leads.
    pub(super) lines: Vec<Line>,
    /// Rubber sleeves pushed onto nipples: the part each belongs to, the nipple.
    pub(super) sleeves: Vec<(u16, Mouth)>,
    /// Connected instruments: card and where it hangs.
    pub(super) hung: BTreeMap<usize, (Station, Transform)>,
}

impl Layout {
    /// Works it out.
    #[must_use]
    pub(super) fn of(car: &Car, stands: &Stands, kit: &[InstrumentCard], seen: &Seen) -> Self {
        let assembly = &car.assembly;
        let open: Vec<bool> = assembly.joints.iter().map(|j| seen.joints_open.contains(&j.id)).collect();
        let loose = |part: u16| {
            let mut own =
                assembly.joints.iter().zip(&open).filter(|(j, _)| j.a.part == part || j.b.part == part);
            own.clone().count() != 0 && own.all(|(_, open)| *open)
        };
        let mut out = Self::default();
        let mut laid = [0usize; 2];
        let mut lay = |station: Station| {
            let n = &mut laid[usize::from(station == Station::Front)];
            *n += 1;
            places::laid_aside(station, *n - 1)
        };
        for (i, part) in assembly.parts.iter().enumerate() {
            let index = i as u16;
            let line = part.kind.is_line();
            let home = stands.hold(index);
            let station = car.stands.get(i).map_or(Station::Bench, |s| s.station);
            let mut aside = Vec3::ZERO;
            if !line && body(&part.kind).about().laid_aside && loose(index) {
                aside = lay(station) + Vec3::Y * 0.03 - home.unwrap_or_default();
            }
            out.aside.push(aside);
            out.middles.push(home.unwrap_or_default() + aside);
            for (port, m) in stands.ports(index).iter().enumerate() {
                let port = PortRef { part: index, port: port as u8 };
                out.ports.insert(port, Mouth { at: m.at + aside, ..*m });
            }
        }
        let fixed = out.ports.clone();
        for (i, part) in assembly.parts.iter().enumerate().filter(|(_, p)| p.kind.is_line()) {
            let index = i as u16;
            let ends = [0, 1].map(|port| {
                let own = PortRef { part: index, port };
                let joint = assembly.joints.iter().zip(&open).find(|(j, _)| j.a == own || j.b == own);
                joint.and_then(|(j, open)| {
                    let other = if j.a == own { j.b } else { j.a };
                    // A line that ends at another line (the earth wire at a body's stud) has the stud. What is pulled off
                    // hangs where its fitting was, wherever that part lies by now.
                    let mouth = if *open { stands.port(other) } else { fixed.get(&other) };
                    mouth.map(|m| (*m, !*open))
                })
            });
            let (points, made) = match ends {
                [Some(a), Some(b)] if a.1 || b.1 => {
                    let hose = matches!(part.kind, PartKind::Hose(_));
                    (
                        lie(
                            a,
                            &stands.points(LineOf::Part(index)),
                            b,
                            if hose { ON_NIPPLE_M } else { ON_STUD_M },
                        ),
                        [a.1, b.1],
                    )
                }
                _ => {
                    let at = lay(car.stands.get(i).map_or(Station::Bay, |s| s.station));
                    (curled(at, matches!(part.kind, PartKind::Hose(_))), [false, false])
                }
            };
            for port in [0u8, 1] {
                let from_start = port == 0;
                let hold = if made[usize::from(port)] { JOINT_M } else { 0.0 };
                out.ports.insert(PortRef { part: index, port }, held(&points, from_start, hold));
            }
            out.middles[i] = held(&points, true, length(&points) * 0.5).at;
            out.lines.push(Line { owner: Owner::Part(index), points, made });
        }
        out.sleeves(car, stands, &fixed, &open);
        out.joint_wires(car, stands, &fixed, &open);
        out.hang(car, kit, seen);
        out
    }

    /// Rubber sleeves of parts that sit on one another; those that stand further apart than a sleeve reaches have a
    /// piece of hose between them.
    fn sleeves(&mut self, car: &Car, stands: &Stands, fixed: &BTreeMap<PortRef, Mouth>, open: &[bool]) {
        let assembly = &car.assembly;
        let brings = |p: PortRef| {
            let part = assembly.parts.get(usize::from(p.part));
            part.is_some_and(|part| body(&part.kind).has_sleeve(usize::from(p.port)))
        };
        for (i, (joint, open)) in assembly.joints.iter().zip(open).enumerate() {
            let [Some(a), Some(b)] = [joint.a, joint.b].map(|p| fixed.get(&p)) else { continue };
            // As the car stands; what is laid aside has left its place.
            let [Some(home_a), Some(home_b)] = [joint.a, joint.b].map(|p| stands.port(p)) else { continue };
            if assembly.domain(joint.a) != Domain::Pneumatic {
                continue;
            }
            let far = SLEEVE_REACHES_M < home_a.at.distance(home_b.at);
            let (a, b) = if *open { (home_a, home_b) } else { (a, b) };
            if far || !(brings(joint.a) || brings(joint.b)) {
                let points =
                    if far { lie((*a, true), &[between(a, b)], (*b, !open), 0.0) } else { piece(a, b) };
                self.lines.push(Line { owner: Owner::Joint(i as u16), points, made: [true, !open] });
            } else if !open {
                let (nipple, part) = if brings(joint.a) { (b, joint.a.part) } else { (a, joint.b.part) };
                self.sleeves.push((part, *nipple));
            }
        }
    }

    /// Wires that are no parts of their own.
    fn joint_wires(&mut self, car: &Car, stands: &Stands, fixed: &BTreeMap<PortRef, Mouth>, open: &[bool]) {
        for (i, open) in open.iter().enumerate() {
            let index = i as u16;
            let Some((a, b)) = wire_of_joint(&car.assembly, index) else { continue };
            let at = |port: PortRef| if *open { stands.port(port) } else { fixed.get(&port) };
            let (Some(a), Some(b)) = (at(a), at(b)) else { continue };
            let mut way = stands.points(LineOf::Joint(index));
            // The key's cable is drawn from the battery, the switch's from the switch: as the file has it.
            if way.is_empty() {
                way.push(between(a, b));
            }
            let points = lie((*a, true), &way, (*b, !open), ON_STUD_M);
            self.lines.push(Line { owner: Owner::Joint(index), points, made: [true, !open] });
        }
    }

    /// Instruments that are connected hang near, with their leads to where their ends are.
    fn hang(&mut self, car: &Car, kit: &[InstrumentCard], seen: &Seen) {
        let mut parked: BTreeMap<Station, usize> = BTreeMap::new();
        for (card, at) in seen.fits.iter().enumerate() {
            let Some(kind) = kit.get(card).map(|c| c.kind) else { continue };
            if seen.timed && matches!(kind.nature().measured, Measured::Time { .. }) {
                self.hung.insert(card, (Station::Bay, places::WATCH));
            }
            let Some((_, first)) = at.first() else { continue };
            let station = match car.assembly.port(first) {
                Some(port) => car.places_of_port(port).first().map(|(s, _)| *s),
                None => car.assembly.part_index(first).map(|p| car.stands[usize::from(p)].station),
            };
            let station = station.unwrap_or(Station::Bay);
            if let Some(place) = self.touching(car, &kind, first, station_eye(station)) {
                self.hung.insert(card, (station, place));
                continue;
            }
            let n = parked.entry(station).or_default();
            let place = places::facing(places::parking(station, *n), station_eye(station));
            *n += 1;
            self.hung.insert(card, (station, place));
            for (k, (end, at)) in at.iter().enumerate() {
                let Some(target) = self.mouth(car, at) else { continue };
                let stem = super::build::tools::stem(&kind, end);
                let from = place.transform_point(stem);
                let down = place.rotation * Vec3::NEG_Y;
                let lift = target.at + (target.out + Vec3::Y).normalize_or(Vec3::Y) * 0.05;
                // It has slack: it hangs from the instrument, swings out to the side it goes to, and sags.
                let right = place.rotation * Vec3::X;
                let side = right * if (target.at - from).dot(right) < -0.02 { -1.0 } else { 1.0 };
                // A hose is stiffer than a lead: it stands off what lies under it.
                let (swing, sag, over) = if matches!(kind, InstrumentKind::Gauge { .. }) {
                    (0.105, 0.0, 0.07)
                } else {
                    (0.05 + 0.03 * k as f32, 0.04 + 0.02 * k as f32, 0.0)
                };
                let to_eye = place.rotation * Vec3::Z;
                let between =
                    |t: f32, out: f32, sag: f32| from.lerp(lift, t) + side * out + Vec3::NEG_Y * sag;
                let points = vec![
                    from,
                    from + down * 0.045,
                    from + down * 0.050 + side * swing * 0.6,
                    between(0.25, swing, sag - over) + to_eye * over,
                    between(0.65, swing * 0.6, sag * 1.2 - 0.01 - over),
                    lift,
                    target.at,
                ];
                self.lines.push(Line { owner: Owner::Lead(card, k), points, made: [true, true] });
            }
        }
    }
}

impl Layout {
    /// A port by its name, or the middle of a part.
    fn mouth(&self, car: &Car, name: &str) -> Option<Mouth> {
        match car.assembly.port(name) {
            Some(port) => self.ports.get(&port).copied(),
            None => {
                let part = usize::from(car.assembly.part_index(name)?);
                Some(Mouth::new(*self.middles.get(part)?, Vec3::Y))
            }
        }
    }

    /// Where an instrument without leads is held: round the wire, at the part, before it.
    fn touching(&self, car: &Car, kind: &InstrumentKind, at: &str, eye: Vec3) -> Option<Transform> {
        let target = self.mouth(car, at)?.at;
        let to_eye = (eye - target).normalize_or(Vec3::Z);
        match kind.nature().held {
            Held::AroundWire => {
                let place = places::facing(target, eye);
                let jaws = place.rotation * super::build::tools::stem(kind, "");
                Some(place.with_translation(target - jaws))
            }
            Held::OnHose => Some(places::facing(target + to_eye * 0.05, eye)),
            Held::AtPart => Some(places::facing(target + to_eye * 0.20, eye)),
            Held::OnLine
            | Held::OnWires
            | Held::Nowhere
            | Held::InOpening
            | Held::OverHose
            | Held::AtEar
            | Held::OnPedal => None,
        }
    }
}

/// How far a hose is pushed onto a nipple, m: over its barbs.
const ON_NIPPLE_M: f32 = 0.026;
/// How far a wire's end goes over its stud, m.
const ON_STUD_M: f32 = 0.012;

/// How far apart two fittings are at most that a sleeve joins, m.
const SLEEVE_REACHES_M: f32 = 0.15;

/// A point half way between two fittings, a little out.
fn between(a: &Mouth, b: &Mouth) -> Vec3 {
    (a.at + b.at) * 0.5 + (a.out + b.out) * 0.02
}

/// A short piece of hose over two nipples that look at one another.
fn piece(a: &Mouth, b: &Mouth) -> Vec<Vec3> {
    vec![a.at - a.out * ON_NIPPLE_M, between(a, b), b.at - b.out * ON_NIPPLE_M]
}

/// A line between two fittings: pushed `depth` onto the ones that are made, hanging off the others.
fn lie(a: (Mouth, bool), way: &[Vec3], b: (Mouth, bool), depth: f32) -> Vec<Vec3> {
    let end = |(mouth, made): (Mouth, bool)| {
        if made {
            vec![mouth.at - mouth.out * depth, mouth.at + mouth.out * 0.06]
        } else {
            // Pulled off: it springs back a hand's breadth and droops.
            let tip = mouth.at + mouth.out * 0.09 + Vec3::new(0.0, -0.03, 0.07);
            vec![tip, tip + mouth.out * 0.05 + Vec3::new(0.0, 0.035, 0.0)]
        }
    };
    let mut points = end(a);
    points.extend_from_slice(way);
    points.extend(end(b).into_iter().rev());
    points
}

/// A loose line on the trolley.
fn curled(at: Vec3, stiff: bool) -> Vec<Vec3> {
    let bend = if stiff { 0.06 } else { 0.035 };
    [(-0.13, 0.0), (-0.05, 1.0), (0.05, 0.3), (0.13, 1.0)]
        .map(|(x, z)| at + Vec3::new(x, 0.01, z * bend - 0.02))
        .to_vec()
}

fn length(points: &[Vec3]) -> f32 {
    points.windows(2).map(|w| w[0].distance(w[1])).sum()
}

/// The place `far` along a line from one of its ends, and the way out at that end.
fn held(points: &[Vec3], from_start: bool, far: f32) -> Mouth {
    let mut line = super::shapes::curve(points, 8);
    if !from_start {
        line.reverse();
    }
    let mut left = far.min(length(&line) * 0.5);
    let out = (line[0] - line[1]).normalize_or(Vec3::Y);
    for pair in line.windows(2) {
        let step = pair[0].distance(pair[1]);
        if left <= step {
            let at = pair[0].lerp(pair[1], if step <= 0.0 { 0.0 } else { left / step });
            return Mouth::new(at, out);
        }
        left -= step;
    }
    Mouth::new(line[line.len() - 1], out)
}
