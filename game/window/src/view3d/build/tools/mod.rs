//! The instruments of the kit, each so that a technician knows it without its name. Every one looks along
//! +z and hangs from a hook above its middle; some twenty centimetres high, a little larger than life.

pub(super) mod dials;
pub(super) mod electric;
mod hand;

use bevy::math::Vec3;
use bevy::transform::components::Transform;
use sim_core::instrument::{InstrumentCard, InstrumentKind};

use crate::ui::dial::printed::Printed;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::moves::Moves;
use crate::view3d::places;
use crate::view3d::shapes::{bevel_box, cylinder};
use front::hands::Thing;
use front::prefs::PressureUnit;

/// Where a lead or hose leaves an instrument, in its own frame.
#[must_use]
pub(in crate::view3d) fn stem(kind: &InstrumentKind, end: &str) -> Vec3 {
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
        (
            InstrumentKind::Barometer { .. }
            | InstrumentKind::WallThermometer { .. }
            | InstrumentKind::IrThermometer { .. }
            | InstrumentKind::Stopwatch { .. }
            | InstrumentKind::AngleFinder { .. }
            | InstrumentKind::PedalRule { .. }
            | InstrumentKind::PedalProp
            | InstrumentKind::Plugs
            | InstrumentKind::Clamps
            | InstrumentKind::ListeningTube,
            _,
        ) => Vec3::ZERO,
    }
}

/// Where an instrument hangs while nobody uses it; `on_board` have their hook on the board already.
#[must_use]
pub(in crate::view3d) fn hook(kind: &InstrumentKind, on_board: &mut usize) -> Vec3 {
    if matches!(kind, InstrumentKind::Barometer { .. }) {
        places::wall_hook(true)
    } else if matches!(kind, InstrumentKind::WallThermometer { .. }) {
        places::wall_hook(false)
    } else {
        *on_board += 1;
        places::board_hook(*on_board - 1)
    }
}

/// The whole kit: on the board, and on the wall beside it. Pressure dials are printed in `unit`.
pub(in crate::view3d) fn kit(kit: &[InstrumentCard], unit: PressureUnit) -> Vec<Made> {
    let mut on_board = 0;
    let mut out = Vec::new();
    for (card, c) in kit.iter().enumerate() {
        let home = hook(&c.kind, &mut on_board);
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
            dials::face(s, &mut parts, card, printed, r, at);
        }
    };
    match kind {
        InstrumentKind::Gauge { .. } => {
            dial(&mut s, 0.080, Vec3::new(0.0, 0.012, 0.0));
            dials::gauge(&mut s, &mut rest);
        }
        InstrumentKind::HandPump { .. } => {
            dial(&mut s, 0.050, Vec3::new(0.018, 0.105, 0.006));
            dials::hand_pump(&mut s, &mut rest);
        }
        InstrumentKind::Lamp => electric::lamp(&mut s, &mut rest, &mut parts, card),
        InstrumentKind::Multimeter { .. } => {
            electric::multimeter(&mut s, &mut rest);
            parts.push(electric::knob(card));
            parts.push(electric::display(card, Vec3::new(0.0, 0.062, 0.0215), 0.024, 4));
        }
        InstrumentKind::ClampAmmeter { .. } => {
            electric::clamp_ammeter(&mut s);
            parts.push(electric::display(card, Vec3::new(0.0, -0.065, 0.0185), 0.017, 3));
        }
        InstrumentKind::PushLead => electric::push_lead(&mut s, &mut rest),
        InstrumentKind::IrThermometer { .. } => {
            hand::infrared(&mut s);
            parts.push(electric::display(card, Vec3::new(0.035, 0.060, 0.0245), 0.013, 3));
        }
        InstrumentKind::Stopwatch { .. } => {
            hand::stopwatch(&mut s);
            parts.push(electric::display(card, Vec3::new(0.0, 0.0, 0.0145), 0.020, 4));
        }
        InstrumentKind::Barometer { .. } => {
            s.add(Mat::Oak, cylinder(0.135, 0.025, 0.008).along(Vec3::Z).at(0.0, 0.0, -0.03));
            dial(&mut s, 0.10, Vec3::ZERO);
        }
        InstrumentKind::WallThermometer { .. } => {
            s.add(Mat::Oak, bevel_box(0.25, 0.25, 0.025, 0.008).at(0.0, 0.0, -0.03));
            dial(&mut s, 0.10, Vec3::ZERO);
        }
        InstrumentKind::AngleFinder { .. } => hand::angle_finder(&mut s),
        InstrumentKind::PedalRule { .. } => hand::rule(&mut s),
        InstrumentKind::PedalProp => hand::prop(&mut s),
        InstrumentKind::Plugs => hand::plugs(&mut s),
        InstrumentKind::Clamps => hand::clamps(&mut s),
        InstrumentKind::ListeningTube => hand::tube(&mut s),
    }
    if !rest.made_of.is_empty() {
        parts.push(Made { sculpt: rest, moves: Some(Moves::OnBoard(card)), ..Made::default() });
    }
    Made { sculpt: s, parts, ..Made::default() }
}
