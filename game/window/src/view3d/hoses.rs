//! Hoses, wires and leads as swept curves between their fittings, with clips and connectors at their ends,
//! plugs and clamps. Built anew when a joint, an instrument or a stop changes.

use assess::room::LineOf;
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::assembly::Stop;
use sim_core::car::Car;
use sim_core::instrument::{Held, InstrumentCard};
use sim_core::parts::Domain;
use sim_core::workshop::View;

use super::build::parts::lines::{End, Style, piece, style};
use super::clamp::clamp_shape;
use super::layout::{Layout, Line, Owner};
use super::made::Made;
use super::materials::{Mat, Sculpt};
use super::mouth::Mouth;
use super::places;
use super::shapes::{bevel_box, curve, cylinder, lathe, ring, sweep};
use super::stands::Stands;
use front::hands::Thing;

fn lead_style(held: Held, end: &str) -> Style {
    let of = |radius: f32, mat: Mat, end: End| Style { radius, flat: 1.0, mat, end };
    let lead = |red: bool| of(0.0036, if red { Mat::Red } else { Mat::Black }, End::Croc);
    match held {
        Held::OnLine => of(0.0065, Mat::Accent, End::Adapter),
        Held::OnWires
        | Held::AroundWire
        | Held::AtPart
        | Held::OnHose
        | Held::Nowhere
        | Held::InOpening
        | Held::OverHose
        | Held::AtEar
        | Held::OnPedal => lead(matches!(end, "a" | "v_ohm")),
    }
}

/// Everything that follows the joints.
#[must_use]
pub(super) fn all(
    car: &Car,
    kit: &[InstrumentCard],
    view: &View,
    (stands, layout): (&Stands, &Layout),
) -> Vec<Made> {
    let mut out = Vec::new();
    for line in &layout.lines {
        let (thing, style) = match line.owner {
            Owner::Part(part) => {
                let kind = &car.assembly.parts[usize::from(part)].kind;
                (Thing::Part(part), style(Some(kind), stands.way(LineOf::Part(part))))
            }
            Owner::Joint(joint) => {
                let air = car.assembly.domain(car.assembly.joints[usize::from(joint)].a) == Domain::Pneumatic;
                let wire = || style(None, stands.way(LineOf::Joint(joint)));
                (Thing::Joint(joint), if air { piece() } else { wire() })
            }
            Owner::Lead(card, k) => {
                let end =
                    view.instruments.get(card).and_then(|i| i.at.get(k)).map_or("", |(e, _)| e.as_str());
                (Thing::Instrument(card as u16), lead_style(kit[card].kind.nature().held, end))
            }
        };
        out.push(Made::of(thing, Transform::IDENTITY, shape(line, style)));
    }
    for (part, nipple) in &layout.sleeves {
        out.push(Made::of(Thing::Part(*part), Transform::IDENTITY, sleeve(nipple)));
    }
    for (card, (station, place)) in &layout.hung {
        if let Some(foot) = places::stand_foot(*station)
            && !view.instruments.get(*card).is_none_or(|i| i.at.is_empty())
            && kit.get(*card).is_some_and(|c| hangs(c.kind.nature().held))
        {
            out.push(Made::scenery(stand(place, foot)));
        }
    }
    for (name, stop) in &view.stops {
        let Some(port) = car.assembly.port(name) else { continue };
        let Some(mouth) = layout.ports.get(&port) else { continue };
        let mut s = Sculpt::default();
        match stop {
            Stop::Plug => {
                let plug = lathe(&[
                    (0.0, -0.012),
                    (0.008, -0.012),
                    (0.013, 0.010),
                    (0.018, 0.012),
                    (0.018, 0.022),
                    (0.0, 0.024),
                ]);
                s.add(Mat::Accent, plug.along(mouth.out).at(mouth.at.x, mouth.at.y, mouth.at.z));
            }
            Stop::Clamp => {
                let mut c = Sculpt::default();
                clamp_shape(&mut c);
                let across = Quat::from_rotation_arc(Vec3::Z, mouth.out);
                s.join(&c, Transform::from_translation(mouth.at).with_rotation(across));
            }
        }
        out.push(Made::of(Thing::Port(port), Transform::IDENTITY, s));
    }
    out
}

/// The end of a part's own rubber sleeve, pushed over a nipple's barbs, with its clip.
fn sleeve(nipple: &Mouth) -> Sculpt {
    const RADIUS: f32 = 0.0136;
    let mut s = Sculpt::default();
    let put = |g: super::shapes::Geo, far: f32| {
        let at = nipple.at + nipple.out * far;
        g.along(nipple.out).at(at.x, at.y, at.z)
    };
    s.add(Mat::Rubber, put(cylinder(RADIUS, 0.045, 0.002), -0.026));
    let band = [(RADIUS, -0.005), (RADIUS + 0.0022, -0.005), (RADIUS + 0.0022, 0.005), (RADIUS, 0.005)];
    s.add(Mat::Zinc, put(lathe(&band), -0.012));
    s
}

/// Whether an instrument in use hangs by itself near its ends; others are held to the thing.
fn hangs(held: Held) -> bool {
    match held {
        Held::OnLine | Held::OnWires => true,
        Held::AroundWire
        | Held::AtPart
        | Held::OnHose
        | Held::Nowhere
        | Held::InOpening
        | Held::OverHose
        | Held::AtEar
        | Held::OnPedal => false,
    }
}

/// The rod with a magnetic foot that an instrument hangs from, behind it; `foot` is the foot's height, m.
fn stand(place: &Transform, foot: f32) -> Sculpt {
    let mut s = Sculpt::default();
    let hook = place.transform_point(Vec3::new(0.0, 0.118, 0.0));
    let behind = place.rotation * Vec3::NEG_Z;
    let back = Vec3::new(behind.x, 0.0, behind.z).normalize_or(Vec3::NEG_Z) * 0.055;
    let top = hook + back + Vec3::Y * 0.02;
    let base = Vec3::new(top.x, foot, top.z);
    let rod =
        [hook, hook + back * 0.5 + Vec3::Y * 0.022, top, top.lerp(base, 0.3), top.lerp(base, 0.7), base];
    s.add(Mat::Zinc, sweep(&curve(&rod, 6), 0.0035, 0.0035, 8, Vec3::X));
    s.add(Mat::Black, cylinder(0.026, 0.016, 0.003).at(base.x, base.y, base.z));
    s
}

fn shape(line: &Line, style: Style) -> Sculpt {
    let mut s = Sculpt::default();
    let points = curve(&line.points, 8);
    let sides = if style.radius < 0.006 { 8 } else { 14 };
    s.add(style.mat, sweep(&points, style.radius, style.radius * style.flat, sides, Vec3::Y));
    let n = points.len();
    let lead = matches!(line.owner, Owner::Lead(..));
    for (k, tip, inward) in
        [(0, points[0], points[1] - points[0]), (1, points[n - 1], points[n - 2] - points[n - 1])]
    {
        if lead && k == 0 {
            continue;
        }
        end(&mut s, style, tip, inward.normalize_or(Vec3::Y), line.made[k]);
    }
    s
}

fn end(s: &mut Sculpt, style: Style, tip: Vec3, inward: Vec3, made: bool) {
    let put = |g: super::shapes::Geo, far: f32| {
        g.along(inward).at(tip.x + inward.x * far, tip.y + inward.y * far, tip.z + inward.z * far)
    };
    let r = style.radius;
    match style.end {
        End::Clip => {
            // A spring clip, slid back when the hose is off.
            let far = if made { 0.020 } else { 0.055 };
            s.add(
                Mat::Zinc,
                put(lathe(&[(r, -0.005), (r + 0.0022, -0.005), (r + 0.0022, 0.005), (r, 0.005)]), far),
            );
            let ear = tip + inward * far + Vec3::Y * (r + 0.005);
            s.add(Mat::Zinc, bevel_box(0.010, 0.012, 0.008, 0.002).at(ear.x, ear.y, ear.z));
            if !made {
                s.add(Mat::Ink, put(cylinder(r * 0.66, 0.002, 0.0002), -0.0015));
            }
        }
        End::Plug => {
            s.add(
                Mat::WhiteNylon,
                bevel_box(0.017, 0.030, 0.014, 0.003).along(inward).at(
                    tip.x + inward.x * 0.017,
                    tip.y + inward.y * 0.017,
                    tip.z + inward.z * 0.017,
                ),
            );
            s.add(Mat::Rubber, put(lathe(&[(r + 0.003, 0.0), (r + 0.001, 0.014)]), 0.032));
        }
        End::Eye => {
            s.add(Mat::Zinc, put(cylinder(r.min(0.007) + 0.001, 0.018, 0.001), 0.012));
            s.add(Mat::Zinc, ring(0.0095, 0.0025).at(tip.x, tip.y + 0.002, tip.z));
        }
        End::Croc => {
            s.add(
                style.mat,
                put(
                    lathe(&[(0.0, 0.012), (0.0055, 0.012), (0.0075, 0.018), (0.0065, 0.044), (0.004, 0.050)]),
                    0.0,
                ),
            );
            s.add(
                Mat::Zinc,
                put(lathe(&[(0.0, -0.006), (0.0025, -0.006), (0.005, 0.014), (0.0, 0.014)]), 0.0),
            );
        }
        End::Adapter => {
            s.add(
                Mat::Brass,
                put(
                    lathe(&[
                        (0.0, -0.004),
                        (0.009, -0.004),
                        (0.009, 0.012),
                        (0.012, 0.014),
                        (0.012, 0.024),
                        (0.008, 0.028),
                        (0.0, 0.028),
                    ]),
                    0.0,
                ),
            );
        }
    }
}
