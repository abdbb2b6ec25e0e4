//! Hoses and wires: how thick they look, and how they lie coiled on the shelf.

use assess::room::{Colour, End as WireEnd, Way};
use bevy::math::Vec3;
use sim_core::parts::PartKind;
use sim_core::parts::electrical::Wire;
use sim_core::parts::hose::Hose;
use std::f32::consts::TAU;

use super::{About, Body};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{bevel_box, curve, cylinder, sweep};

/// Hoses are drawn this much thicker than they are.
const HOSE_LARGER: f32 = 2.0;
/// Wall of a hose, mm.
const WALL_MM: f32 = 1.75;
/// Area of a joint's wire that nothing is said of, mm².
const AREA_MM2: f64 = 1.5;

/// What a line looks like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::view3d) struct Style {
    /// Half its width, m.
    pub(in crate::view3d) radius: f32,
    /// Thickness over width: 1 is round.
    pub(in crate::view3d) flat: f32,
    /// What it is made of.
    pub(in crate::view3d) mat: Mat,
    /// How it ends.
    pub(in crate::view3d) end: End,
}

/// How a line ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::view3d) enum End {
    /// Hose with a spring clip.
    Clip,
    /// Wire with a plug.
    Plug,
    /// Cable with a ring terminal.
    Eye,
    /// Lead with a crocodile clip.
    Croc,
    /// Gauge hose with an adapter.
    Adapter,
}

/// Half the width of a hose of this bore, m.
#[must_use]
pub(in crate::view3d) fn hose_radius(bore_mm: f64) -> f32 {
    (bore_mm as f32 * 0.5 + WALL_MM) * HOSE_LARGER * 1e-3
}

/// Half the width of a wire with this cross-section, m: conductor and insulation, drawn some three times as
/// thick as they are.
#[must_use]
pub(in crate::view3d) fn wire_radius(area_mm2: f64) -> f32 {
    (2.75 + 1.22 * (area_mm2.max(0.0) as f32).sqrt()) * 1e-3
}

/// Half the width of a braid with this cross-section, m: flat, and mostly air between its strands.
#[must_use]
pub(in crate::view3d) fn braid_radius(area_mm2: f64) -> f32 {
    3.25 * (area_mm2.max(0.0) as f32).sqrt() * 1e-3
}

/// The look of a piece of hose that is no part of its own.
#[must_use]
pub(in crate::view3d) fn piece() -> Style {
    const BORE_MM: f64 = 8.0;
    Style { radius: hose_radius(BORE_MM), flat: 1.0, mat: Mat::Rubber, end: End::Clip }
}

/// The look of a hose or wire; a joint's wire has no kind.
#[must_use]
pub(in crate::view3d) fn style(kind: Option<&PartKind>, way: Option<&Way>) -> Style {
    if let Some(hose) = kind.and_then(PartKind::hose) {
        return Style { radius: hose_radius(hose.bore_mm), flat: 1.0, mat: Mat::Rubber, end: End::Clip };
    }
    let own = if let Some(PartKind::Wire(wire)) = kind { Some(wire.area_mm2) } else { None };
    let area = own.or(way.and_then(|w| w.area_mm2)).unwrap_or(AREA_MM2);
    let (colour, end) = way.map_or((Colour::default(), WireEnd::default()), |w| (w.colour, w.end));
    let end = match end {
        WireEnd::Plug => End::Plug,
        WireEnd::Eye => End::Eye,
    };
    let round = |mat| Style { radius: wire_radius(area), flat: 1.0, mat, end };
    match colour {
        Colour::Black => round(Mat::Black),
        Colour::Red => round(Mat::Red),
        Colour::Brown => round(Mat::Brown),
        Colour::Green => round(Mat::Green),
        Colour::Blue => round(Mat::Blue),
        Colour::Yellow => round(Mat::Yellow),
        Colour::White => round(Mat::Face),
        Colour::Braid => Style { radius: braid_radius(area), flat: 0.28, mat: Mat::Copper, end },
    }
}

/// A coil of it, as it lies on the shelf.
#[must_use]
pub(in crate::view3d) fn coil(style: Style, hose: bool) -> Sculpt {
    let mut s = Sculpt::default();
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

/// Both ends, as far apart as it is long, at most a hand's breadth.
fn ends(length_m: f64) -> Vec<Mouth> {
    let half = (length_m as f32 * 0.5).min(0.09);
    [-1.0, 1.0].map(|side| Mouth::new(Vec3::X * (side * half), Vec3::X * side)).to_vec()
}

impl Body for Hose {
    fn about(&self) -> About {
        About::FIXED
    }

    fn mouths(&self) -> Vec<Mouth> {
        ends(self.length_m)
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        coil(style(Some(&PartKind::Hose(*self)), None), true)
    }
}

impl Body for Wire {
    fn about(&self) -> About {
        About::FIXED
    }

    fn mouths(&self) -> Vec<Mouth> {
        ends(self.length_m)
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        coil(style(Some(&PartKind::Wire(*self)), None), false)
    }
}
