//! Pneumatic symbols, after ISO 1219-1: lines for flow, open triangles for air, circles for machines.

use sim_core::parts::booster::Booster;
use sim_core::parts::check_valve::CheckValve;
use sim_core::parts::engine_pump::EnginePump;
use sim_core::parts::hose::Hose;
use sim_core::parts::instruments::{HandPump, VacuumGauge};
use sim_core::parts::reservoir::Reservoir;
use sim_core::parts::tee::Tee;

use super::super::pen::{PIPE, Sym, THIN};
use super::{Now, RIGHT, Symbol};

/// Where the pedal is hit, in grid steps about the booster's middle.
pub const PEDAL: (f32, f32, f32, f32) = (-9.2, -4.0, -6.2, 4.0);
/// Where the starter is hit, about the engine's middle.
pub const STARTER: (f32, f32, f32, f32) = (-0.8, -5.5, 4.2, -3.3);

impl Symbol for Booster {
    fn air(&self, sym: &Sym<'_>, now: Now) {
        booster(sym, now.pedal);
    }
}

impl Symbol for Hose {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        flexible(sym, self.bend_fit_deg != 0.0);
    }
}

impl Symbol for Tee {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        sym.line(&[(-3.0, 0.0), (3.0, 0.0)], PIPE);
        sym.line(&[(0.0, -3.0), (0.0, 3.0)], PIPE);
        sym.dot((0.0, 0.0), 0.42);
    }
}

impl Symbol for CheckValve {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        check_valve(sym);
    }
}

impl Symbol for Reservoir {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        reservoir(sym);
    }
}

impl Symbol for EnginePump {
    fn air(&self, sym: &Sym<'_>, now: Now) {
        pump(sym, Drive::Engine { turns: now.running });
    }
}

impl Symbol for VacuumGauge {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        gauge(sym);
    }
}

impl Symbol for HandPump {
    fn air(&self, sym: &Sym<'_>, _: Now) {
        hand_pump(sym);
    }
}

/// Diaphragm actuator with two chambers and a spring, rod to the pedal, rod to the master cylinder.
fn booster(sym: &Sym<'_>, pedal: f32) {
    let shift = pedal * 1.6;
    // Port of the front chamber.
    sym.line(&[(4.0, -2.0), (6.0, -2.0)], PIPE);
    sym.frame((4.0, -0.9), (5.1, 0.9));
    let shell = [
        (-4.0, -2.5),
        (-3.0, -3.5),
        (3.0, -3.5),
        (4.0, -2.5),
        (4.0, 2.5),
        (3.0, 3.5),
        (-3.0, 3.5),
        (-4.0, 2.5),
    ];
    sym.area(&shell, sym.pen.paper);
    // Diaphragm: rolls from the rim to the plate.
    let plate = -1.4 + shift;
    for way in [-1.0, 1.0] {
        let roll = [
            (-1.2, 3.5 * way),
            (-1.6, 3.0 * way),
            (-1.4 + shift * 0.4, 2.5 * way),
            (plate - 0.2, 2.3 * way),
            (plate, 1.9 * way),
        ];
        sym.line(&roll, THIN + 0.4);
    }
    sym.line(&[(plate, -1.9), (plate, 1.9)], PIPE + 0.8);
    // Return spring in the front chamber.
    let mut spring = vec![(plate, 1.4)];
    let (from, to, n) = (plate + 0.3, 3.7, 9);
    for i in 0..=n {
        let x = from + (to - from) * i as f32 / n as f32;
        spring.push((x, if i % 2 == 0 { 0.9 } else { 1.9 }));
    }
    spring.push((4.0, 1.4));
    sym.line(&spring, THIN);
    // Rods: pedal, master cylinder with its piston.
    sym.outline(&[(-7.5 + shift * 0.65, 0.0), (plate, 0.0)]);
    sym.outline(&[(plate, 0.0), (4.35 + shift * 0.3, 0.0)]);
    sym.outline(&[(4.35 + shift * 0.3, -0.9), (4.35 + shift * 0.3, 0.9)]);
    // Air inlet of the rear chamber.
    sym.line(&[(-4.0, 1.9), (-4.8, 1.9)], THIN + 0.4);
    sym.line(&[(-4.8, 1.3), (-4.8, 2.5), (-5.8, 1.9), (-4.8, 1.3)], THIN + 0.4);
    lever(sym, pedal);
}

fn lever(sym: &Sym<'_>, pedal: f32) {
    let pivot = (-6.9, -3.4);
    let lean = 0.18 - 0.30 * pedal;
    let along = |d: f32| (pivot.0 - lean.sin() * d, pivot.1 + lean.cos() * d);
    sym.outline(&[pivot, along(6.4)]);
    let pad = along(6.4);
    sym.line(&[(pad.0 - 0.5, pad.1 - 0.9), (pad.0 - 0.2, pad.1 + 0.6)], PIPE + 1.6);
    sym.circle(pivot, 0.4);
    // Ground of the pivot.
    sym.line(&[(-7.7, -3.95), (-6.1, -3.95)], THIN);
    sym.dot(along(3.45), 0.22);
}

/// Flexible line; the angle marks a moulded bend.
fn flexible(sym: &Sym<'_>, moulded: bool) {
    let half = 3.2;
    let mut arc = vec![(-4.0, 0.0)];
    for i in 0..=24 {
        let x = half * (i as f32 / 12.0 - 1.0);
        arc.push((x, 1.25 * (1.0 - (x / half).powi(2))));
    }
    arc.push((4.0, 0.0));
    sym.line(&arc, PIPE);
    sym.dot((-half, 0.0), 0.26);
    sym.dot((half, 0.0), 0.26);
    if moulded {
        sym.line(&[(0.35, -0.95), (-0.6, 0.25), (0.8, 0.25)], THIN);
        sym.arc((-0.6, 0.25), 0.85, -0.9, 0.0, THIN);
    }
}

/// Ball on its seat; free flow from seat to ball: from the store to the source.
fn check_valve(sym: &Sym<'_>) {
    sym.line(&[(-3.0, 0.0), (-1.1, 0.0)], PIPE);
    sym.line(&[(0.75, 0.0), (3.0, 0.0)], PIPE);
    sym.outline(&[(0.15, -1.25), (-1.1, 0.0), (0.15, 1.25)]);
    sym.circle((0.0, 0.0), 0.76);
    // Free flow.
    sym.line(&[(-1.2, 2.0), (0.7, 2.0)], THIN);
    sym.head((1.3, 2.0), RIGHT);
}

/// Pressure switch: pneumatic pilot at the bottom, spring-loaded break contact inside.
pub(super) fn vacuum_switch(sym: &Sym<'_>) {
    sym.line(&[(0.0, 3.0), (0.0, 2.0)], PIPE);
    sym.frame((-2.2, -2.0), (2.2, 2.0));
    sym.line(&[(-0.7, 2.0), (0.0, 1.1), (0.7, 2.0)], THIN + 0.4);
    sym.link(&[(0.0, 1.1), (0.0, -0.7)]);
    sym.line(&[(-2.2, -0.6), (-1.0, -0.6), (1.25, -0.85)], WIRE_IN_BOX);
    sym.line(&[(2.2, -0.6), (0.95, -0.6), (0.95, -1.2)], WIRE_IN_BOX);
}

const WIRE_IN_BOX: f32 = 1.5;

/// Manifold with throttle as a source of vacuum, and what sucks on it: a prime mover that is no motor of
/// current is an M in a square.
pub(super) fn engine(sym: &Sym<'_>, running: bool) {
    sym.line(&[(-5.0, 0.0), (-4.0, 0.0)], PIPE);
    sym.frame((-4.0, -2.6), (-2.4, 3.0));
    for y in [-1.6, 0.2, 2.0] {
        sym.line(&[(-2.4, y), (-0.8, y)], PIPE);
    }
    // Throttle and air inlet.
    sym.outline(&[(-3.8, -2.6), (-3.8, -4.4)]);
    sym.outline(&[(-2.6, -2.6), (-2.6, -4.4)]);
    sym.outline(&[(-3.7, -3.2), (-2.7, -3.8)]);
    sym.dot((-3.2, -3.5), 0.18);
    sym.line(&[(-3.8, -4.6), (-2.6, -4.6), (-3.2, -5.4), (-3.8, -4.6)], THIN + 0.4);
    sym.frame((-0.8, -3.0), (4.0, 3.0));
    sym.text((1.6, 0.0), "M", 22.0);
    if running {
        sym.arc((1.6, 0.0), 2.0, -2.6, 0.9, THIN + 0.4);
        sym.head((1.6 + 2.0 * 0.9f32.cos(), 2.0 * 0.9f32.sin() + 0.3), (-0.75, 0.6));
    }
}

/// What turns a vacuum pump.
pub(super) enum Drive {
    /// An electric motor: M in a circle.
    Motor { hums: bool },
    /// The engine: M in a square.
    Engine { turns: bool },
}

/// Vacuum pump on its shaft.
pub(super) fn pump(sym: &Sym<'_>, drive: Drive) {
    sym.line(&[(-5.0, 0.0), (-3.4, 0.0)], PIPE);
    // Exhaust to the air.
    sym.line(&[(-1.4, 2.0), (-1.4, 2.6)], PIPE);
    sym.line(&[(-2.0, 2.6), (-0.8, 2.6), (-1.4, 3.4), (-2.0, 2.6)], THIN + 0.4);
    sym.line(&[(0.5, -0.2), (1.6, -0.2)], THIN + 0.4);
    sym.line(&[(0.5, 0.2), (1.6, 0.2)], THIN + 0.4);
    sym.circle((-1.4, 0.0), 2.0);
    sym.outline(&[(-3.25, -0.8), (-2.0, 0.0), (-3.25, 0.8)]);
    let goes = match drive {
        Drive::Motor { hums } => {
            sym.circle((3.0, 0.0), 1.5);
            hums
        }
        Drive::Engine { turns } => {
            sym.frame((1.5, -1.5), (4.5, 1.5));
            turns
        }
    };
    sym.text((3.0, 0.0), "M", 16.0);
    match drive {
        Drive::Motor { .. } if goes => {
            for r in [1.9, 2.3] {
                sym.arc((3.0, 0.0), r, -0.6, 0.6, THIN + 0.4);
            }
        }
        // The shaft turns: seen at the belt end, not measured.
        Drive::Engine { .. } if goes => {
            sym.arc((1.05, 0.0), 0.9, -2.2, 2.0, THIN + 0.4);
            sym.head((0.55, 0.85), (-0.85, -0.25));
        }
        Drive::Motor { .. } | Drive::Engine { .. } => {}
    }
}

/// Receiver: a vessel with round ends.
fn reservoir(sym: &Sym<'_>) {
    sym.line(&[(-4.0, 0.0), (4.0, 0.0)], PIPE);
    let mut shell = Vec::new();
    for (middle, from) in [(1.4, -0.5), (-1.4, 0.5)] {
        for i in 0..=12 {
            let a = std::f32::consts::PI * (from + i as f32 / 12.0);
            shell.push((middle + 1.4 * a.cos(), 1.4 * a.sin()));
        }
    }
    sym.area(&shell, sym.pen.paper);
}

/// Pressure in, voltage out: a converter with its pilot line.
pub(super) fn sensor(sym: &Sym<'_>) {
    sym.line(&[(0.0, 3.0), (0.0, 2.0)], PIPE);
    sym.frame((-2.2, -2.0), (2.2, 2.0));
    sym.line(&[(-2.2, 2.0), (2.2, -2.0)], THIN + 0.4);
    sym.text((0.9, 1.0), "p", 15.0);
    sym.text((-0.95, -0.95), "U", 15.0);
}

/// Pressure gauge on its stem.
fn gauge(sym: &Sym<'_>) {
    sym.line(&[(0.0, 3.0), (0.0, 1.6)], PIPE);
    sym.circle((0.0, 0.0), 1.6);
    sym.outline(&[(-0.75, 0.85), (0.85, -0.85)]);
    sym.head((1.0, -1.0), (1.0, -1.0));
}

/// Vacuum pump with a lever.
fn hand_pump(sym: &Sym<'_>) {
    sym.line(&[(-4.0, 0.0), (-2.0, 0.0)], PIPE);
    sym.line(&[(0.0, 2.0), (0.0, 2.6)], PIPE);
    sym.line(&[(-0.6, 2.6), (0.6, 2.6), (0.0, 3.4), (-0.6, 2.6)], THIN + 0.4);
    sym.circle((0.0, 0.0), 2.0);
    sym.outline(&[(-1.85, -0.8), (-0.6, 0.0), (-1.85, 0.8)]);
    sym.outline(&[(1.4, -1.4), (2.2, -2.2)]);
    sym.outline(&[(1.2, -3.2), (3.2, -1.2)]);
}
