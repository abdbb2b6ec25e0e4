//! Electrical symbols, after IEC 60617, with the terminal numbers of DIN 72552.

use std::f32::consts::FRAC_PI_2;

use egui::{Pos2, vec2};
use sim_core::parts::controller::Controller;
use sim_core::parts::electrical::{Battery, Body, Fuse, KeySwitch, Relay, RelaySocket, Supply, Wire};
use sim_core::parts::instruments::{Multimeter, PushLead, TestLamp};

use super::super::grid::STEP;
use super::super::pen::{OUTLINE, Pen, Sym, THIN, WIRE};
use super::{Now, Symbol};

/// Where the key is hit, in grid steps about the switch's middle.
pub const KEY: (f32, f32, f32, f32) = (-1.9, 1.1, 1.9, 3.2);

impl Symbol for Battery {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        battery(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("plus", "+"), ("minus", "−")]
    }
}

impl Symbol for Supply {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        sym.line(&[(0.0, -3.0), (0.0, 3.0)], WIRE);
        sym.frame((-1.5, -1.5), (1.5, 1.5));
        direct_current(sym, "G", 18.0, 0.85);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("plus", "+"), ("minus", "−")]
    }
}

impl Symbol for Wire {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        sym.line(&[(-3.0, 0.0), (3.0, 0.0)], WIRE);
    }

    fn size(&self) -> Option<(f64, &'static str)> {
        Some((self.area_mm2, "mm²"))
    }
}

impl Symbol for Fuse {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        sym.frame((-1.6, -0.6), (1.6, 0.6));
        sym.line(&[(-3.0, 0.0), (3.0, 0.0)], WIRE);
    }

    fn size(&self) -> Option<(f64, &'static str)> {
        Some((self.rating_a, "A"))
    }
}

impl Symbol for Relay {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        relay(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("30", "30"), ("87", "87"), ("85", "85"), ("86", "86")]
    }
}

impl Symbol for RelaySocket {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        relay_socket(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("30", "30"), ("clip", "30"), ("87", "87")]
    }
}

impl Symbol for KeySwitch {
    fn wiring(&self, sym: &Sym<'_>, now: Now) {
        key_switch(sym, now.key_on);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("30", "30"), ("15", "15")]
    }
}

impl Symbol for Controller {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        controller(sym);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("15", "15"), ("31", "31"), ("feed", "5 V"), ("signal", "S"), ("ground", "−"), ("out", "out")]
    }
}

/// Its earth points are drawn by [`chassis`]: how many there are and where is the diagram's.
impl Symbol for Body {
    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("31a", "31"), ("31b", "31"), ("31c", "31"), ("31d", "31")]
    }
}

impl Symbol for TestLamp {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        sym.line(&[(-3.0, 0.0), (3.0, 0.0)], WIRE);
        sym.circle((0.0, 0.0), 1.4);
        sym.outline(&[(-1.0, -1.0), (1.0, 1.0)]);
        sym.outline(&[(-1.0, 1.0), (1.0, -1.0)]);
    }
}

impl Symbol for Multimeter {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        sym.line(&[(-3.0, 0.0), (3.0, 0.0)], WIRE);
        sym.circle((0.0, 0.0), 1.7);
        sym.text((0.0, 0.0), "V Ω", 13.0);
    }

    fn terminals(&self) -> &[(&str, &'static str)] {
        &[("v_ohm", "VΩ"), ("com", "COM")]
    }
}

impl Symbol for PushLead {
    fn wiring(&self, sym: &Sym<'_>, _: Now) {
        push_button(sym);
    }
}

/// The motor of a pump; it hums.
pub(super) fn motor(sym: &Sym<'_>, hum: bool) {
    sym.line(&[(0.0, -4.0), (0.0, 4.0)], WIRE);
    sym.circle((0.0, 0.0), 2.0);
    direct_current(sym, "M", 20.0, 1.0);
    if hum {
        for r in [2.35, 2.7] {
            sym.arc((0.0, 0.0), r, -0.5, 0.5, THIN + 0.4);
        }
    }
}

/// The alternator.
pub(super) fn alternator(sym: &Sym<'_>) {
    sym.line(&[(0.0, -3.0), (0.0, 3.0)], WIRE);
    sym.circle((0.0, 0.0), 1.7);
    direct_current(sym, "G", 18.0, 0.85);
}

/// A machine's letter over the sign of direct current, a line over a dashed line: upright however it is turned.
fn direct_current(sym: &Sym<'_>, letter: &str, size: f32, y: f32) {
    let sym = &Sym { turn: 0, ..sym.clone() };
    sym.text((0.0, -0.35), letter, size);
    sym.line(&[(-0.6, y), (0.6, y)], THIN);
    for x in [-0.6, -0.14, 0.32] {
        sym.line(&[(x, y + 0.3), (x + 0.28, y + 0.3)], THIN);
    }
}

fn battery(sym: &Sym<'_>) {
    sym.line(&[(0.0, -3.0), (0.0, -1.1)], WIRE);
    sym.line(&[(0.0, 1.1), (0.0, 3.0)], WIRE);
    for y in [-1.1, 0.5] {
        sym.line(&[(-1.5, y), (1.5, y)], OUTLINE);
        sym.line(&[(-0.75, y + 0.6), (0.75, y + 0.6)], OUTLINE + 2.0);
    }
    sym.link(&[(0.0, -0.4), (0.0, 0.5)]);
}

/// Make contact over its coil, in one frame, joined by the mechanical link.
fn relay(sym: &Sym<'_>) {
    let (l, t, r, b) = (-2.8, -4.4, 2.8, 4.4);
    sym.area(&[(l, t), (r, t), (r, b), (l, b)], sym.pen.paper);
    sym.line(&[(-4.0, -3.0), (-1.2, -3.0), (1.0, -4.0)], WIRE);
    sym.line(&[(1.2, -3.0), (4.0, -3.0)], WIRE);
    sym.link(&[(0.0, 2.1), (0.0, -3.5)]);
    sym.line(&[(-4.0, 3.0), (4.0, 3.0)], WIRE);
    sym.frame((-1.5, 2.1), (1.5, 3.9));
}

/// Two contacts of a socket in one frame, each an arc about the blade that it takes: that of 30, which the current goes
/// through, and that of 87.
fn relay_socket(sym: &Sym<'_>) {
    const ARC: f32 = 0.55;
    let (l, t, r, b) = (-2.6, -1.6, 2.6, 1.4);
    sym.area(&[(l, t), (r, t), (r, b), (l, b)], sym.pen.paper);
    sym.frame((l, t), (r, b));
    sym.line(&[(-4.0, 0.0), (0.9 - ARC, 0.0)], WIRE);
    sym.arc((0.9, 0.0), ARC, FRAC_PI_2, 3.0 * FRAC_PI_2, OUTLINE);
    sym.line(&[(0.9, 0.0), (4.0, 0.0)], WIRE);
    sym.line(&[(0.0, -3.0), (0.0, -1.0 - ARC)], WIRE);
    sym.arc((0.0, -1.0), ARC, -2.0 * FRAC_PI_2, 0.0, OUTLINE);
}

/// Contact that is turned by hand and stays; the key's two positions beneath it.
fn key_switch(sym: &Sym<'_>, on: bool) {
    sym.line(&[(-3.0, 0.0), (-1.2, 0.0)], WIRE);
    sym.line(&[(1.2, 0.0), (3.0, 0.0)], WIRE);
    let tip = if on { (1.3, -0.1) } else { (1.1, -0.95) };
    sym.line(&[(-1.2, 0.0), tip], OUTLINE);
    let link = if on { -0.05 } else { -0.45 };
    sym.link(&[(0.0, link), (0.0, 1.2)]);
    sym.frame((-1.8, 1.2), (1.8, 3.1));
    sym.line(&[(0.0, 1.2), (0.0, 3.1)], THIN);
    // The position it stands in is filled.
    let (from, to) = if on { (0.0, 1.8) } else { (-1.8, 0.0) };
    sym.area(&[(from, 1.2), (to, 1.2), (to, 3.1), (from, 3.1)], sym.pen.ink);
    let paper = Sym { pen: sym.pen.with(sym.pen.paper), ..sym.clone() };
    let (off_hand, on_hand) = if on { (sym, &paper) } else { (&paper, sym) };
    off_hand.text((-0.9, 2.15), "0", 12.5);
    on_hand.text((0.9, 2.15), "15", 12.5);
}

/// Break contact worked by pressure: closed without vacuum.
pub(super) fn vacuum_switch(sym: &Sym<'_>) {
    sym.line(&[(0.0, -3.0), (0.0, -1.3), (0.95, -1.3)], WIRE);
    sym.line(&[(0.0, 3.0), (0.0, 1.2)], WIRE);
    sym.line(&[(0.0, 1.2), (0.75, -1.55)], OUTLINE);
    sym.link(&[(0.35, -0.1), (-2.4, -0.1)]);
    from_air(sym);
}

/// What pressure works: a box with its letter, and the link from the sheet of air.
fn from_air(sym: &Sym<'_>) {
    sym.frame((-4.3, -1.0), (-2.4, 0.9));
    sym.text((-3.35, -0.1), "p", 14.0);
    sym.link(&[(-5.7, -0.05), (-4.3, -0.05)]);
}

/// Resistor with a moving contact, which pressure moves.
pub(super) fn sensor(sym: &Sym<'_>) {
    sym.line(&[(0.0, -4.0), (0.0, 4.0)], WIRE);
    sym.frame((-0.7, -2.2), (0.7, 2.2));
    sym.line(&[(4.0, 0.0), (1.2, 0.0)], WIRE);
    sym.head((0.7, 0.0), (-1.0, 0.0));
    sym.link(&[(-2.4, -0.05), (0.7, -0.05)]);
    from_air(sym);
}

/// Two-step control with hysteresis, in a box; its terminals are named inside, as on the part.
fn controller(sym: &Sym<'_>) {
    sym.frame((-3.6, -5.6), (3.6, 5.6));
    for y in [-4.0, 0.0, 4.0] {
        sym.line(&[(-5.0, y), (-3.6, y)], WIRE);
        sym.line(&[(3.6, y), (5.0, y)], WIRE);
    }
    // The loop of hysteresis: on at one vacuum, off at a deeper one.
    sym.line(&[(-0.9, 0.9), (0.2, 0.9), (0.2, -0.9), (1.3, -0.9)], THIN + 0.4);
    sym.line(&[(-0.2, 0.9), (-0.2, -0.9), (0.9, -0.9)], THIN + 0.4);
}

/// Make contact worked by pressing.
fn push_button(sym: &Sym<'_>) {
    sym.line(&[(-3.0, 0.0), (-1.2, 0.0)], WIRE);
    sym.line(&[(1.2, 0.0), (3.0, 0.0)], WIRE);
    sym.line(&[(-1.2, 0.0), (1.1, -0.95)], OUTLINE);
    sym.link(&[(0.0, -0.45), (0.0, -1.8)]);
    sym.outline(&[(-0.7, -1.4), (-0.7, -1.8), (0.7, -1.8), (0.7, -1.4)]);
}

/// A car body: a frame at each earth point, one sheet of metal behind them.
pub fn chassis(pen: &Pen<'_>, points: &[Pos2]) {
    let bar = STEP;
    for p in points {
        let foot = *p + vec2(0.0, bar);
        pen.line(&[*p, foot], WIRE);
        pen.line(&[foot - vec2(11.0, 0.0), foot + vec2(11.0, 0.0)], OUTLINE + 0.6);
        for k in [-8.0, 0.0, 8.0] {
            pen.line(&[foot + vec2(k, 0.0), foot + vec2(k - 6.0, 8.0)], OUTLINE - 0.5);
        }
    }
    let (Some(left), Some(right)) =
        (points.iter().map(|p| p.x).reduce(f32::min), points.iter().map(|p| p.x).reduce(f32::max))
    else {
        return;
    };
    let y = points.iter().map(|p| p.y).fold(f32::MIN, f32::max) + bar;
    pen.dashed(&[Pos2::new(left, y), Pos2::new(right, y)], THIN, 9.0, 5.0);
}
