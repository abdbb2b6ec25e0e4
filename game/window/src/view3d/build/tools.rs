//! The instruments of the kit, each so that a technician knows it without its name. Every one looks along
//! +z and hangs from a hook above its middle; some twenty centimetres high, a little larger than life.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::instrument::{InstrumentCard, InstrumentKind};
use sim_core::parts::instruments::MeterMode;
use std::f32::consts::{FRAC_PI_2, TAU};

use super::super::super::ui::dial::printed::{Printed, figure};
use super::super::clamp::clamp_shape;
use super::super::displays::Display;
use super::super::figures::figures;
use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::moves::{Moves, NEEDLE_START, NEEDLE_SWEEP, knob_angle};
use super::super::places;
use super::super::shapes::{bevel_box, cylinder, hexagon, hose, lathe, plate, ring, sweep};
use front::hands::Thing;
use front::prefs::PressureUnit;

/// Numbers on a dial in the room, at most: more would not be told apart.
const MOST_NUMBERS: usize = 6;

/// Where a lead or hose leaves an instrument, in its own frame.
#[must_use]
pub(in super::super) fn stem(kind: &InstrumentKind, end: &str) -> Vec3 {
    match (kind, end) {
        (InstrumentKind::Gauge { .. }, _) => Vec3::new(0.0, -0.125, 0.0),
        (InstrumentKind::HandPump { .. }, _) => Vec3::new(0.085, 0.045, 0.0),
        (InstrumentKind::Lamp, "a") => Vec3::new(-0.014, -0.075, 0.0),
        (InstrumentKind::Lamp, _) => Vec3::new(0.014, -0.075, 0.0),
        (InstrumentKind::Multimeter { .. }, "v_ohm") => Vec3::new(0.025, -0.075, 0.03),
        (InstrumentKind::Multimeter { .. }, _) => Vec3::new(-0.005, -0.075, 0.03),
        (InstrumentKind::PushLead, "a") => Vec3::new(-0.012, -0.10, 0.0),
        (InstrumentKind::PushLead, _) => Vec3::new(0.012, -0.10, 0.0),
        (InstrumentKind::ClampAmmeter { .. }, _) => Vec3::new(0.0, 0.085, 0.0),
        _ => Vec3::ZERO,
    }
}

/// The whole kit: on the board, and on the wall beside it. Pressure dials are printed in `unit`.
pub(in super::super) fn kit(kit: &[InstrumentCard], unit: PressureUnit) -> Vec<Made> {
    let mut on_board = 0;
    let mut out = Vec::new();
    for (card, c) in kit.iter().enumerate() {
        let home = match c.kind {
            InstrumentKind::Barometer { .. } => places::wall_hook(true),
            InstrumentKind::WallThermometer { .. } => places::wall_hook(false),
            _ => {
                on_board += 1;
                places::board_hook(on_board - 1)
            }
        };
        let mut made = instrument(card, &c.kind, unit);
        made.thing = Some(Thing::Instrument(card as u16));
        made.home = Transform::from_translation(home);
        made.moves = Some(Moves::Instrument(card));
        out.push(made);
    }
    out
}

fn instrument(card: usize, kind: &InstrumentKind, unit: PressureUnit) -> Made {
    let mut s = Sculpt::default();
    // Hose and leads as they hang on the board; in use they are lines of their own.
    let mut rest = Sculpt::default();
    let mut parts = Vec::new();
    let printed = Printed::of(kind, unit);
    let mut dial = |s: &mut Sculpt, r: f32, at: Vec3| {
        if let Some(printed) = &printed {
            face(s, &mut parts, card, printed, r, at);
        }
    };
    match kind {
        InstrumentKind::Gauge { .. } => {
            dial(&mut s, 0.080, Vec3::new(0.0, 0.012, 0.0));
            gauge(&mut s, &mut rest);
        }
        InstrumentKind::HandPump { .. } => {
            dial(&mut s, 0.050, Vec3::new(0.018, 0.105, 0.006));
            hand_pump(&mut s, &mut rest);
        }
        InstrumentKind::Lamp => lamp(&mut s, &mut rest, &mut parts, card),
        InstrumentKind::Multimeter { .. } => {
            multimeter(&mut s, &mut rest);
            parts.push(knob(card));
            parts.push(display(card, Vec3::new(0.0, 0.062, 0.0215), 0.024, 4));
        }
        InstrumentKind::ClampAmmeter { .. } => {
            clamp_ammeter(&mut s);
            parts.push(display(card, Vec3::new(0.0, -0.065, 0.0185), 0.017, 3));
        }
        InstrumentKind::PushLead => push_lead(&mut s, &mut rest),
        InstrumentKind::IrThermometer { .. } => {
            infrared(&mut s);
            parts.push(display(card, Vec3::new(0.035, 0.060, 0.0245), 0.013, 3));
        }
        InstrumentKind::Stopwatch { .. } => {
            stopwatch(&mut s);
            parts.push(display(card, Vec3::new(0.0, 0.0, 0.0145), 0.020, 4));
        }
        InstrumentKind::Barometer { .. } => {
            s.add(Mat::Oak, cylinder(0.135, 0.025, 0.008).along(Vec3::Z).at(0.0, 0.0, -0.03));
            dial(&mut s, 0.10, Vec3::ZERO);
        }
        InstrumentKind::WallThermometer { .. } => {
            s.add(Mat::Oak, bevel_box(0.25, 0.25, 0.025, 0.008).at(0.0, 0.0, -0.03));
            dial(&mut s, 0.10, Vec3::ZERO);
        }
        InstrumentKind::AngleFinder { .. } => angle_finder(&mut s),
        InstrumentKind::PedalRule { .. } => rule(&mut s),
        InstrumentKind::PedalProp => prop(&mut s),
        InstrumentKind::Plugs => plugs(&mut s),
        InstrumentKind::Clamps => clamps(&mut s),
        InstrumentKind::ListeningTube => tube(&mut s),
    }
    if !rest.made_of.is_empty() {
        parts.push(Made { sculpt: rest, moves: Some(Moves::OnBoard(card)), ..Made::default() });
    }
    Made { sculpt: s, parts, ..Made::default() }
}

/// A dial with its needle: marks and numbers as they are printed, the needle a part of its own.
fn face(s: &mut Sculpt, parts: &mut Vec<Made>, card: usize, dial: &Printed, r: f32, at: Vec3) {
    let put = |g: super::super::shapes::Geo| g.along(Vec3::Z).at(at.x, at.y, at.z);
    s.add(
        Mat::Paint,
        put(lathe(&[(0.0, -0.018), (r * 0.9, -0.018), (r * 0.98, -0.010), (r, 0.0), (r, 0.016)])),
    );
    s.add(
        Mat::Brass,
        put(lathe(&[
            (r, 0.010),
            (r * 1.05, 0.012),
            (r * 1.05, 0.020),
            (r * 0.99, 0.025),
            (r * 0.93, 0.022),
            (r * 0.92, 0.012),
        ])),
    );
    s.add(Mat::Face, put(lathe(&[(0.0, 0.008), (r * 0.95, 0.008), (r * 0.95, 0.012), (0.0, 0.012)])));
    let n = dial.divisions();
    // Finer marks than these run together at a glance from the car.
    let every = if 60 < n { 2 } else { 1 };
    for i in (0..=n).filter(|i| i.is_multiple_of(every) || dial.numbered(*i)) {
        let angle = NEEDLE_START - NEEDLE_SWEEP * i as f32 / n as f32;
        let (reach, wide) = if dial.numbered(i) {
            (0.17, 0.028)
        } else if dial.halfway(i) {
            (0.13, 0.020)
        } else {
            (0.09, 0.011)
        };
        let turn = Quat::from_rotation_z(angle);
        let place = at + turn * Vec3::Y * (r * (0.90 - reach * 0.5));
        s.add(
            Mat::Ink,
            bevel_box(r * wide, r * reach, 0.001, 0.0001).turned(turn).at(place.x, place.y, at.z + 0.0125),
        );
    }
    let numbered: Vec<u32> = (0..=n).filter(|i| dial.numbered(*i)).collect();
    let step = numbered.len().div_ceil(MOST_NUMBERS);
    for i in numbered.into_iter().step_by(step) {
        let turn = Quat::from_rotation_z(NEEDLE_START - NEEDLE_SWEEP * i as f32 / n as f32);
        let text = figure(dial.mark(i));
        // Long numbers stand further in, so that they clear the marks beside them.
        let place = at + turn * Vec3::Y * (r * (0.58 - 0.03 * text.chars().count() as f32));
        s.add(Mat::Ink, figures(&text, r * 0.185).at(place.x, place.y, at.z + 0.0128));
    }
    s.add(Mat::Ink, figures(dial.unit, r * 0.15).at(at.x, at.y - r * 0.64, at.z + 0.0128));
    let mut needle = Sculpt::default();
    needle.add(
        Mat::Ink,
        plate(
            &[(-0.035, -0.22), (0.035, -0.22), (0.030, 0.1), (0.010, 0.84), (-0.010, 0.84), (-0.030, 0.1)]
                .map(|(x, y)| (x * r, y * r)),
            0.0016,
        ),
    );
    needle.add(Mat::Brass, cylinder(r * 0.075, 0.004, 0.001).along(Vec3::Z).at(0.0, 0.0, -0.001));
    parts.push(Made {
        home: Transform::from_xyz(at.x, at.y, at.z + 0.0155),
        sculpt: needle,
        moves: Some(Moves::Needle { card, min: dial.own(dial.min) as f32, max: dial.own(dial.max) as f32 }),
        ..Made::default()
    });
}

fn gauge(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(Mat::Brass, bevel_box(0.020, 0.022, 0.018, 0.003).at(0.0, -0.082, 0.0));
    s.add(Mat::Brass, hexagon(0.014, 0.016).at(0.0, -0.108, 0.0));
    s.add(Mat::Brass, cylinder(0.006, 0.03, 0.001).at(0.0, -0.130, 0.0));
    s.add(
        Mat::Zinc,
        ring(0.012, 0.003).along(Vec3::X).turned(Quat::from_rotation_y(FRAC_PI_2)).at(0.0, 0.105, 0.0),
    );
    coil(rest, Mat::Accent, Vec3::new(0.0, -0.132, 0.0), 0.0055);
}

/// A lead or hose in loops, as it hangs from something on the board.
fn coil(s: &mut Sculpt, mat: Mat, from: Vec3, radius: f32) {
    let mut line = vec![from + Vec3::Y * 0.01, from - Vec3::Y * 0.012];
    for i in 0..14 {
        let a = i as f32 / 6.0 * TAU + 1.57;
        line.push(from + Vec3::new(0.030 * a.cos(), -0.048 + 0.032 * a.sin(), 0.004 + 0.0012 * i as f32));
    }
    s.add(mat, sweep(&super::super::shapes::curve(&line, 3), radius, radius, 7, Vec3::Z));
}

fn hand_pump(s: &mut Sculpt, rest: &mut Sculpt) {
    // Barrel to the right, dial above it, pistol grip with its lever below.
    s.add(
        Mat::Case,
        lathe(&[
            (0.0, -0.06),
            (0.020, -0.06),
            (0.023, -0.056),
            (0.023, 0.06),
            (0.018, 0.066),
            (0.009, 0.070),
            (0.007, 0.085),
            (0.0, 0.085),
        ])
        .along(Vec3::X)
        .at(0.0, 0.045, 0.0),
    );
    s.add(Mat::Steel, cylinder(0.006, 0.05, 0.001).along(-Vec3::X).at(-0.058, 0.045, 0.0));
    s.add(Mat::Brass, cylinder(0.009, 0.03, 0.001).at(0.018, 0.055, 0.0));
    let grip = plate(&[(-0.055, 0.04), (-0.02, 0.04), (-0.028, -0.10), (-0.062, -0.10)], 0.024);
    s.add(Mat::Rubber, grip.at(0.0, 0.0, 0.0));
    let lever = plate(
        &[
            (-0.01, 0.035),
            (0.012, 0.03),
            (0.030, -0.03),
            (0.028, -0.10),
            (0.016, -0.10),
            (0.014, -0.03),
            (-0.006, 0.012),
        ],
        0.014,
    );
    s.add(Mat::Zinc, lever);
    s.add(Mat::Brass, cylinder(0.006, 0.032, 0.001).along(Vec3::Z).at(-0.002, 0.028, -0.016));
    coil(rest, Mat::Accent, Vec3::new(0.088, 0.03, 0.0), 0.005);
}

fn lamp(s: &mut Sculpt, rest: &mut Sculpt, parts: &mut Vec<Made>, card: usize) {
    // Bulb in a socket, and two leads with their clips.
    s.add(
        Mat::Nylon,
        lathe(&[(0.0, -0.06), (0.014, -0.06), (0.022, -0.05), (0.024, -0.01), (0.020, 0.0), (0.0, 0.0)])
            .at(0.0, -0.01, 0.0),
    );
    s.add(
        Mat::Brass,
        lathe(&[(0.0, 0.0), (0.016, 0.0), (0.016, 0.028), (0.013, 0.032), (0.0, 0.032)]).at(0.0, -0.01, 0.0),
    );
    let mut filament = Sculpt::default();
    filament.add(
        Mat::Glass,
        lathe(&[(0.012, 0.0), (0.020, 0.014), (0.026, 0.034), (0.023, 0.052), (0.013, 0.064), (0.0, 0.068)]),
    );
    parts.push(Made {
        home: Transform::from_xyz(0.0, 0.020, 0.0),
        sculpt: filament,
        filament: Some(card),
        ..Made::default()
    });
    for (x, mat) in [(-0.014, Mat::Red), (0.014, Mat::Black)] {
        let from = Vec3::new(x, -0.068, 0.0);
        let side = f32::signum(x);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(side * 0.01, -0.03, 0.01),
                    from + Vec3::new(side * 0.045, -0.02, 0.012),
                    from + Vec3::new(side * 0.050, 0.05, 0.008),
                ],
                0.0035,
            ),
        );
        let clip = from + Vec3::new(side * 0.050, 0.05, 0.008);
        rest.add(mat, bevel_box(0.016, 0.034, 0.014, 0.004).at(clip.x, clip.y + 0.015, clip.z));
        rest.add(
            Mat::Zinc,
            plate(
                &[
                    (-0.006, 0.0),
                    (0.006, 0.0),
                    (0.003, 0.030),
                    (0.001, 0.024),
                    (-0.001, 0.030),
                    (-0.003, 0.024),
                ],
                0.006,
            )
            .at(clip.x, clip.y + 0.030, clip.z),
        );
    }
}

/// Middle of a meter's knob, m.
const KNOB_Y: f32 = -0.006;

/// The pointer of a meter's knob.
fn knob(card: usize) -> Made {
    let mut s = Sculpt::default();
    s.add(Mat::Face, bevel_box(0.004, 0.022, 0.002, 0.0005).at(0.0, 0.011, 0.0));
    Made {
        home: Transform::from_xyz(0.0, KNOB_Y, 0.0285),
        sculpt: s,
        moves: Some(Moves::Knob(card)),
        ..Made::default()
    }
}

/// The digits of a display, about `at`.
fn display(card: usize, at: Vec3, height: f32, digits: usize) -> Made {
    let mut s = Sculpt::default();
    // Eights till it is known what it shows.
    s.add(Mat::Ink, super::super::displays::digits(&"8".repeat(digits), digits, height));
    Made {
        home: Transform::from_translation(at),
        sculpt: s,
        display: Some(Display { card, height, digits }),
        ..Made::default()
    }
}

fn multimeter(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(Mat::Case, bevel_box(0.100, 0.185, 0.036, 0.010).at(0.0, 0.01, 0.0));
    s.add(Mat::Rubber, bevel_box(0.112, 0.030, 0.040, 0.010).at(0.0, 0.092, 0.0));
    s.add(Mat::Rubber, bevel_box(0.112, 0.030, 0.040, 0.010).at(0.0, -0.072, 0.0));
    s.add(Mat::Display, bevel_box(0.080, 0.042, 0.004, 0.001).at(0.0, 0.062, 0.019));
    s.add(Mat::Nylon, cylinder(0.024, 0.010, 0.003).along(Vec3::Z).at(0.0, KNOB_Y, 0.018));
    for mode in [MeterMode::Off, MeterMode::Volt, MeterMode::Ohm, MeterMode::Ampere] {
        let turn = Quat::from_rotation_z(knob_angle(mode));
        let at = Vec3::Y * KNOB_Y + turn * Vec3::Y * 0.0285;
        s.add(Mat::Ink, bevel_box(0.002, 0.005, 0.001, 0.0003).turned(turn).at(at.x, at.y, 0.0185));
        let at = Vec3::Y * KNOB_Y + turn * Vec3::Y * 0.0385;
        let sign = match mode {
            MeterMode::Off => "0",
            MeterMode::Volt => "V",
            MeterMode::Ohm => "Ω",
            MeterMode::Ampere => "A",
        };
        s.add(Mat::Ink, figures(sign, 0.012).at(at.x, at.y, 0.0186));
    }
    for (x, mat) in [(-0.035, Mat::Red), (-0.005, Mat::Black), (0.025, Mat::Red)] {
        s.add(mat, ring(0.007, 0.002).along(Vec3::Z).at(x, -0.055, 0.020));
        s.add(Mat::Ink, cylinder(0.005, 0.002, 0.0005).along(Vec3::Z).at(x, -0.055, 0.019));
    }
    for (x, mat, side) in [(-0.005, Mat::Black, -1.0), (0.025, Mat::Red, 1.0)] {
        s.add(mat, cylinder(0.006, 0.022, 0.002).along(Vec3::Z).at(x, -0.055, 0.018));
        let from = Vec3::new(x, -0.055, 0.040);
        let end = Vec3::new(side * 0.075, -0.03, 0.008);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(0.0, -0.035, 0.006),
                    Vec3::new(side * 0.05, -0.12, 0.02),
                    end + Vec3::new(0.0, -0.05, 0.0),
                    end,
                ],
                0.003,
            ),
        );
        rest.add(
            mat,
            lathe(&[(0.0, 0.0), (0.006, 0.0), (0.008, 0.01), (0.006, 0.05), (0.003, 0.056)])
                .at(end.x, end.y, end.z),
        );
        rest.add(Mat::Steel, cylinder(0.0015, 0.025, 0.0003).at(end.x, end.y + 0.055, end.z));
    }
}

fn clamp_ammeter(s: &mut Sculpt) {
    // Jaw above, open a little at its tip; lever at the side.
    let arc = |from: f32, to: f32| -> Vec<Vec3> {
        (0..=12)
            .map(|i| {
                let a = from + (to - from) * i as f32 / 12.0;
                Vec3::new(0.034 * a.sin(), 0.085 + 0.040 * a.cos(), 0.0)
            })
            .collect()
    };
    s.add(Mat::Black, sweep(&arc(0.06, 3.0), 0.010, 0.013, 10, Vec3::Z));
    s.add(Mat::Red, sweep(&arc(-0.06, -3.0), 0.010, 0.013, 10, Vec3::Z));
    s.add(Mat::Case, bevel_box(0.072, 0.135, 0.032, 0.012).at(0.0, -0.035, 0.0));
    s.add(Mat::Red, plate(&[(-0.034, 0.03), (-0.034, -0.03), (-0.052, 0.0), (-0.048, 0.035)], 0.016));
    s.add(Mat::Display, bevel_box(0.050, 0.028, 0.003, 0.001).at(0.0, -0.065, 0.0165));
    s.add(Mat::Nylon, cylinder(0.017, 0.008, 0.002).along(Vec3::Z).at(0.0, -0.015, 0.015));
    s.add(Mat::Face, bevel_box(0.003, 0.013, 0.002, 0.0004).at(0.0, -0.009, 0.0235));
}

fn push_lead(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(
        Mat::Case,
        lathe(&[(0.0, -0.08), (0.016, -0.08), (0.021, -0.07), (0.021, 0.05), (0.016, 0.062), (0.0, 0.062)]),
    );
    s.add(Mat::Zinc, lathe(&[(0.017, 0.060), (0.017, 0.066), (0.012, 0.068)]));
    s.add(Mat::Red, lathe(&[(0.0125, 0.062), (0.0125, 0.082), (0.010, 0.085), (0.0, 0.086)]));
    // Fuse seen in a window.
    s.add(Mat::Ink, bevel_box(0.014, 0.040, 0.004, 0.001).at(0.0, 0.0, 0.0195));
    s.add(Mat::Glass, cylinder(0.004, 0.030, 0.001).at(0.0, -0.015, 0.022));
    for y in [-0.017, 0.012] {
        s.add(Mat::Zinc, cylinder(0.0045, 0.006, 0.001).at(0.0, y, 0.022));
    }
    for (x, mat) in [(-0.008, Mat::Red), (0.008, Mat::Black)] {
        let side = f32::signum(x);
        let from = Vec3::new(x, -0.078, 0.0);
        let clip = Vec3::new(side * 0.055, -0.005, 0.006);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(0.0, -0.03, 0.0),
                    Vec3::new(side * 0.045, -0.10, 0.008),
                    clip + Vec3::new(0.0, -0.03, 0.0),
                    clip,
                ],
                0.0035,
            ),
        );
        rest.add(mat, bevel_box(0.014, 0.036, 0.014, 0.004).at(clip.x, clip.y + 0.016, clip.z));
        rest.add(Mat::Zinc, bevel_box(0.008, 0.024, 0.006, 0.002).at(clip.x, clip.y + 0.042, clip.z));
    }
}

fn infrared(s: &mut Sculpt) {
    s.add(Mat::Case, bevel_box(0.150, 0.056, 0.044, 0.012).at(0.0, 0.055, 0.0));
    s.add(
        Mat::Black,
        lathe(&[
            (0.0, 0.0),
            (0.022, 0.0),
            (0.024, 0.004),
            (0.020, 0.022),
            (0.015, 0.022),
            (0.012, 0.012),
            (0.0, 0.012),
        ])
        .along(-Vec3::X)
        .at(-0.07, 0.058, 0.0),
    );
    s.add(Mat::Glass, cylinder(0.011, 0.004, 0.001).along(-Vec3::X).at(-0.080, 0.058, 0.0));
    s.add(Mat::Rubber, plate(&[(0.02, 0.03), (0.072, 0.03), (0.085, -0.09), (0.040, -0.095)], 0.036));
    s.add(Mat::Red, plate(&[(0.012, 0.03), (0.026, 0.03), (0.030, -0.005), (0.020, -0.010)], 0.014));
    s.add(Mat::Display, bevel_box(0.040, 0.028, 0.003, 0.001).at(0.035, 0.060, 0.0225));
}

fn stopwatch(s: &mut Sculpt) {
    let put = |g: super::super::shapes::Geo| g.along(Vec3::Z);
    s.add(
        Mat::Steel,
        put(lathe(&[
            (0.0, -0.014),
            (0.058, -0.014),
            (0.066, -0.006),
            (0.066, 0.008),
            (0.060, 0.014),
            (0.054, 0.012),
        ])),
    );
    s.add(Mat::Face, put(cylinder(0.057, 0.012, 0.001)));
    s.add(Mat::Display, bevel_box(0.076, 0.032, 0.003, 0.001).at(0.0, 0.0, 0.0125));
    for i in 0..60 {
        let a = i as f32 / 60.0 * TAU;
        let turn = Quat::from_rotation_z(a);
        let long = if i % 5 == 0 { 0.008 } else { 0.004 };
        let at = turn * Vec3::Y * 0.050;
        s.add(Mat::Ink, bevel_box(0.0012, long, 0.001, 0.0002).turned(turn).at(at.x, at.y, 0.0125));
    }
    for (a, long, mat) in [(0.0_f32, 0.026, Mat::Steel), (0.62, 0.018, Mat::Steel), (-0.62, 0.018, Mat::Red)]
    {
        let way = Vec3::new(a.sin(), a.cos(), 0.0);
        s.add(Mat::Steel, cylinder(0.006, long, 0.001).along(way).at(way.x * 0.062, way.y * 0.062, 0.0));
        s.add(
            mat,
            cylinder(0.010, 0.010, 0.002).along(way).at(way.x * (0.062 + long), way.y * (0.062 + long), 0.0),
        );
    }
    s.add(
        Mat::Black,
        hose(
            &[
                Vec3::new(-0.01, 0.095, 0.0),
                Vec3::new(-0.03, 0.125, 0.0),
                Vec3::new(0.0, 0.135, 0.0),
                Vec3::new(0.03, 0.125, 0.0),
                Vec3::new(0.01, 0.095, 0.0),
            ],
            0.003,
        ),
    );
}

fn angle_finder(s: &mut Sculpt) {
    let mut outline: Vec<(f32, f32)> = (0..=20)
        .map(|i| {
            let a = i as f32 / 20.0 * std::f32::consts::PI;
            (0.080 * a.cos(), -0.03 + 0.080 * a.sin())
        })
        .collect();
    outline.extend([(-0.080, -0.045), (0.080, -0.045)]);
    s.add(Mat::Zinc, plate(&outline, 0.003));
    for i in 0..=18 {
        let a = i as f32 / 18.0 * std::f32::consts::PI;
        let long = if i % 3 == 0 { 0.014 } else { 0.008 };
        let way = Vec3::new(a.cos(), a.sin(), 0.0);
        let at = way * (0.075 - long * 0.5);
        s.add(
            Mat::Ink,
            bevel_box(long, 0.0014, 0.001, 0.0002).turned(Quat::from_rotation_z(a)).at(
                at.x,
                at.y - 0.03,
                0.0018,
            ),
        );
    }
    let arm = bevel_box(0.016, 0.19, 0.003, 0.0008).at(0.0, 0.06, 0.0).turned(Quat::from_rotation_z(-0.6));
    s.add(Mat::Steel, arm.at(0.0, -0.03, 0.004));
    s.add(Mat::Brass, cylinder(0.010, 0.010, 0.002).along(Vec3::Z).at(0.0, -0.03, 0.0));
}

fn rule(s: &mut Sculpt) {
    let turn = Quat::from_rotation_z(0.0);
    s.add(Mat::Steel, bevel_box(0.032, 0.255, 0.0025, 0.0006).turned(turn));
    for i in 0..=50 {
        let long = if i % 10 == 0 {
            0.016
        } else if i % 5 == 0 {
            0.011
        } else {
            0.006
        };
        s.add(
            Mat::Ink,
            bevel_box(long, 0.0011, 0.001, 0.0002).at(
                -0.016 + long * 0.5,
                -0.118 + 0.0047 * i as f32,
                0.0014,
            ),
        );
    }
    s.add(Mat::Brass, bevel_box(0.046, 0.020, 0.010, 0.003).at(0.0, -0.02, 0.003));
    s.add(Mat::Brass, cylinder(0.006, 0.010, 0.002).along(Vec3::X).at(0.022, -0.02, 0.003));
}

fn prop(s: &mut Sculpt) {
    // A telescopic rod with a fork for the pedal, a pad for the seat and a screw with a scale.
    s.add(Mat::Zinc, cylinder(0.010, 0.15, 0.002).at(0.0, -0.12, 0.0));
    s.add(Mat::Steel, cylinder(0.0065, 0.13, 0.001).at(0.0, 0.0, 0.0));
    s.add(
        Mat::Black,
        lathe(&[(0.0, 0.0), (0.017, 0.0), (0.019, 0.006), (0.017, 0.030), (0.012, 0.034)])
            .at(0.0, 0.006, 0.0),
    );
    s.add(Mat::Rubber, bevel_box(0.062, 0.012, 0.030, 0.004).at(0.0, -0.122, 0.0));
    s.add(
        Mat::Iron,
        plate(
            &[
                (-0.030, 0.125),
                (-0.020, 0.125),
                (-0.016, 0.108),
                (0.016, 0.108),
                (0.020, 0.125),
                (0.030, 0.125),
                (0.022, 0.096),
                (-0.022, 0.096),
            ],
            0.018,
        ),
    );
    for i in 0..7 {
        s.add(Mat::Ink, bevel_box(0.012, 0.0014, 0.001, 0.0002).at(0.0, 0.048 + 0.007 * i as f32, 0.0068));
    }
}

fn plugs(s: &mut Sculpt) {
    s.add(Mat::OakDark, bevel_box(0.16, 0.075, 0.02, 0.004).at(0.0, -0.03, 0.0));
    s.add(
        Mat::Zinc,
        hose(&[Vec3::new(-0.06, 0.005, 0.0), Vec3::new(0.0, 0.10, 0.0), Vec3::new(0.06, 0.005, 0.0)], 0.002),
    );
    for (i, x) in [-0.058, -0.02, 0.018, 0.056].iter().enumerate() {
        let r = 0.010 + 0.002 * i as f32;
        let plug = lathe(&[
            (0.0, 0.0),
            (r * 1.35, 0.0),
            (r * 1.35, 0.008),
            (r, 0.010),
            (r * 0.72, 0.038),
            (0.0, 0.040),
        ]);
        s.add(Mat::Accent, plug.along(Vec3::Z).at(*x, -0.03, 0.010));
    }
}

fn clamps(s: &mut Sculpt) {
    for (x, turn) in [(-0.036, 0.10_f32), (0.036, -0.06)] {
        let mut c = Sculpt::default();
        clamp_shape(&mut c);
        s.join(&c, Transform::from_xyz(x, -0.01, 0.0).with_rotation(Quat::from_rotation_z(turn)));
    }
}

fn tube(s: &mut Sculpt) {
    let mut line = vec![Vec3::new(-0.055, 0.085, 0.0)];
    for i in 0..=16 {
        let a = i as f32 / 8.0 * TAU + 2.4;
        line.push(Vec3::new(0.058 * a.cos(), 0.005 + 0.062 * a.sin(), 0.004 + 0.0016 * i as f32));
    }
    line.push(Vec3::new(0.055, -0.095, 0.02));
    s.add(Mat::Rubber, sweep(&super::super::shapes::curve(&line, 4), 0.0065, 0.0065, 9, Vec3::Z));
    s.add(
        Mat::WhiteNylon,
        lathe(&[(0.006, 0.0), (0.009, 0.004), (0.013, 0.016), (0.010, 0.024), (0.0, 0.027)])
            .along(Vec3::new(-0.3, 1.0, 0.0))
            .at(-0.056, 0.088, 0.0),
    );
    s.add(
        Mat::Brass,
        lathe(&[(0.006, 0.0), (0.008, 0.01), (0.020, 0.036), (0.020, 0.038), (0.017, 0.036), (0.006, 0.012)])
            .along(Vec3::new(0.15, -1.0, 0.1))
            .at(0.055, -0.095, 0.02),
    );
}
