//! Pneumatic side of an assembly: which restriction lies between which bodies of air.
//!
//! A made joint puts the two ports' resistances in a row; an open port leads to the atmosphere; a plug
//! or clamp takes the way out; an instrument's stem is a further branch at a joint (tee-in) or closes an
//! open port.

use super::layout::{Chamber, Layout};
use super::model::BoosterAt;
use super::soft::{self, Soft};
use crate::assembly::{Assembly, PortRef};
use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;
use crate::flow::{Flow, Gas, laminar};
use crate::lanes::{Mask as _, Real, Spread};
use crate::parts::booster::BoosterLaw;
use crate::parts::{Domain, PartKind};

/// A body of air or a source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Node {
    /// A volume, by its number in the layout.
    Volume(usize),
    /// The air outside.
    Atmosphere,
    /// The intake manifold of this engine.
    Manifold(u16),
}

/// What lies between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Law<R = f64> {
    /// ISO 6358 restriction.
    Iso(Iso6358<R>),
    /// Sharp-edged hole.
    Hole(Pinhole<R>),
    /// Gap at a hose end: one area with the engine still, a wider one while it shakes.
    Gap { still: Pinhole<R>, shaking: Pinhole<R> },
    /// Laminar seep, k in kg/(s·Pa²).
    Seep(R),
    /// Check valve, forward from a to b.
    Check(CheckLaw<R>),
    /// Control valve of a booster, air to the rear chamber.
    Admit { part: u16, open: Iso6358<R> },
    /// Control valve of a booster, rear to front chamber.
    Equalise { part: u16, open: Iso6358<R> },
    /// Suction of a rotary pump: swept volume per radian, m³/rad.
    Suction { part: u16, swept: R },
    /// Suction of a hand pump: stroke volume, m³, and ultimate share of the day's pressure.
    Strokes { part: u16, stroke: R, ultimate: R },
    /// Release lever of a hand pump: a small hole to the open air while it is held.
    Vent { part: u16, hole: Pinhole<R> },
}

impl Law {
    /// Whether another law differs in numbers only.
    pub(crate) fn is_like(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Hole(a), Self::Hole(b)) => a.ideal == b.ideal,
            (Self::Admit { part: a, .. }, Self::Admit { part: b, .. })
            | (Self::Equalise { part: a, .. }, Self::Equalise { part: b, .. })
            | (Self::Suction { part: a, .. }, Self::Suction { part: b, .. })
            | (Self::Strokes { part: a, .. }, Self::Strokes { part: b, .. })
            | (Self::Vent { part: a, .. }, Self::Vent { part: b, .. }) => a == b,
            _ => std::mem::discriminant(self) == std::mem::discriminant(other),
        }
    }
}

impl<R: Real> Spread for Law<R> {
    type One = Law;
    fn all_of(one: &Law) -> Self {
        match one {
            Law::Iso(x) => Self::Iso(Spread::all_of(x)),
            Law::Hole(x) => Self::Hole(Spread::all_of(x)),
            Law::Gap { still, shaking } => {
                Self::Gap { still: Spread::all_of(still), shaking: Spread::all_of(shaking) }
            }
            Law::Seep(k) => Self::Seep(R::all(*k)),
            Law::Check(x) => Self::Check(Spread::all_of(x)),
            Law::Admit { part, open } => Self::Admit { part: *part, open: Spread::all_of(open) },
            Law::Equalise { part, open } => Self::Equalise { part: *part, open: Spread::all_of(open) },
            Law::Suction { part, swept } => Self::Suction { part: *part, swept: R::all(*swept) },
            Law::Strokes { part, stroke, ultimate } => {
                Self::Strokes { part: *part, stroke: R::all(*stroke), ultimate: R::all(*ultimate) }
            }
            Law::Vent { part, hole } => Self::Vent { part: *part, hole: Spread::all_of(hole) },
        }
    }

    fn put_in(&mut self, lane: usize, one: &Law) {
        match (self, one) {
            (Self::Iso(all), Law::Iso(x)) => all.put_in(lane, x),
            (Self::Hole(all), Law::Hole(x)) | (Self::Vent { hole: all, .. }, Law::Vent { hole: x, .. }) => {
                all.put_in(lane, x);
            }
            (Self::Gap { still, shaking }, Law::Gap { still: a, shaking: b }) => {
                still.put_in(lane, a);
                shaking.put_in(lane, b);
            }
            (Self::Seep(all), Law::Seep(k)) => all.put(lane, *k),
            (Self::Check(all), Law::Check(x)) => all.put_in(lane, x),
            (Self::Admit { open: all, .. }, Law::Admit { open, .. })
            | (Self::Equalise { open: all, .. }, Law::Equalise { open, .. }) => all.put_in(lane, open),
            (Self::Suction { swept: all, .. }, Law::Suction { swept, .. }) => all.put(lane, *swept),
            (Self::Strokes { stroke: s, ultimate: u, .. }, Law::Strokes { stroke, ultimate, .. }) => {
                s.put(lane, *stroke);
                u.put(lane, *ultimate);
            }
            (all, one) => unreachable!("circuits of one shape have the same laws: {all:?}, {one:?}"),
        }
    }
}

/// One way for air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Edge {
    pub(crate) a: Node,
    pub(crate) b: Node,
    pub(crate) law: Law,
    /// Port of the part on side a, if the edge is a port's.
    pub(crate) port_a: Option<PortRef>,
    /// Port of the part on side b.
    pub(crate) port_b: Option<PortRef>,
    /// The part at which air rushing to or from the open is heard.
    pub(crate) heard_at: Option<u16>,
    /// Hoses at its ends whose walls pull in, if any.
    pub(crate) soft: Option<[Soft; 2]>,
}

/// All ways for air.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct AirNet {
    pub(crate) edges: Vec<Edge>,
}

/// A port's own way from the joint plane to its part's air.
#[derive(Clone, Copy)]
pub(crate) enum Passage {
    Iso(Iso6358),
    Seat(CheckLaw),
}

impl AirNet {
    pub(crate) fn of(assembly: &Assembly, layout: &Layout) -> Self {
        let mut net = Self::default();
        for (i, part) in assembly.parts.iter().enumerate() {
            net.own_leaks(i as u16, &part.kind, layout);
        }
        for joint in &assembly.joints {
            if joint.made && assembly.domain(joint.a) == Domain::Pneumatic {
                net.joint(assembly, layout, joint.a, joint.b);
            }
        }
        for port in assembly.ports() {
            let open = assembly.domain(port) == Domain::Pneumatic
                && super::layout::is_active(assembly, port.part)
                && assembly.partner(port).is_none()
                && assembly.stop(port).is_none();
            if open {
                net.open_port(assembly, layout, port);
            }
        }
        for edge in &mut net.edges {
            // An open port of a hose has air on side a and no port there.
            if let Some(b) = edge.port_b {
                edge.soft = soft::of(assembly, &edge.law, edge.port_a.unwrap_or(b), b);
            }
        }
        net
    }

    fn leak(&mut self, part: u16, inner: usize, law: Law) {
        self.edges.push(Edge {
            a: Node::Atmosphere,
            b: Node::Volume(inner),
            law,
            port_a: None,
            port_b: None,
            heard_at: Some(part),
            soft: None,
        });
    }

    fn own_leaks(&mut self, part: u16, kind: &PartKind, layout: &Layout) {
        let at = |chamber| layout.volume_of(part, chamber);
        match kind {
            PartKind::Hose(p) => {
                let Some(v) = at(Chamber::Body) else { return };
                self.hole(part, v, p.pinhole_mm);
                self.seep(part, v, p.seep_cm3_per_min);
            }
            PartKind::Tee(p) => {
                if let Some(v) = at(Chamber::Body) {
                    self.hole(part, v, p.crack_mm);
                }
            }
            PartKind::VacuumSwitch(p) => {
                if let Some(v) = at(Chamber::Body) {
                    self.hole(part, v, p.diaphragm_mm);
                }
            }
            PartKind::VacuumPump(p) => {
                let Some(v) = at(Chamber::Body) else { return };
                // The outlet is open to the air behind its silencer: nobody hears the slip.
                let (a, b) = (Node::Volume(v), Node::Atmosphere);
                let quiet =
                    |a, b, law| Edge { a, b, law, port_a: None, port_b: None, heard_at: None, soft: None };
                self.edges.push(quiet(a, b, Law::Suction { part, swept: p.swept_m3_per_rad() }));
                self.edges.push(quiet(b, a, Law::Iso(p.slip())));
            }
            PartKind::EnginePump(p) => {
                let Some(v) = at(Chamber::Body) else { return };
                let (a, b) = (Node::Volume(v), Node::Atmosphere);
                let quiet =
                    |a, b, law| Edge { a, b, law, port_a: None, port_b: None, heard_at: None, soft: None };
                self.edges.push(quiet(a, b, Law::Suction { part, swept: p.swept_m3_per_rad() }));
                self.edges.push(quiet(b, a, Law::Iso(p.slip())));
            }
            PartKind::Reservoir(p) => {
                let Some(v) = at(Chamber::Body) else { return };
                self.hole(part, v, p.rust_mm);
                self.seep(part, v, p.seep_cm3_per_min);
            }
            PartKind::VacuumSensor(p) => {
                if let Some(v) = at(Chamber::Body) {
                    self.hole(part, v, p.diaphragm_mm);
                }
            }
            PartKind::HandPump(p) => {
                let Some(v) = at(Chamber::Body) else { return };
                self.edges.push(Edge {
                    a: Node::Volume(v),
                    b: Node::Atmosphere,
                    law: Law::Strokes { part, stroke: p.stroke_cm3 * 1e-6, ultimate: p.ultimate_share },
                    port_a: None,
                    port_b: None,
                    heard_at: None,
                    soft: None,
                });
                let hole = Pinhole::of_diameter_mm(crate::parts::instruments::HAND_PUMP_VENT_MM);
                self.leak(part, v, Law::Vent { part, hole });
            }
            PartKind::Booster(p) => {
                let (Some(front), Some(rear)) = (at(Chamber::Front), at(Chamber::Rear)) else { return };
                self.hole(part, front, p.rim_mm);
                self.hole(part, front, p.front_seal_mm);
                self.seep(part, front, p.seep_cm3_per_min);
                self.hole(part, rear, p.air_seat_mm);
                self.leak(part, rear, Law::Admit { part, open: p.admit() });
                let between = |law| Edge {
                    a: Node::Volume(rear),
                    b: Node::Volume(front),
                    law,
                    port_a: None,
                    port_b: None,
                    heard_at: None,
                    soft: None,
                };
                self.edges.push(between(Law::Equalise { part, open: p.equalise() }));
                for d_mm in [p.tear_mm, p.seat_mm] {
                    if 0.0 < d_mm {
                        self.edges.push(between(Law::Hole(Pinhole::of_diameter_mm(d_mm))));
                    }
                }
            }
            _ => {}
        }
    }

    fn hole(&mut self, part: u16, inner: usize, d_mm: f64) {
        if 0.0 < d_mm {
            self.leak(part, inner, Law::Hole(Pinhole::of_diameter_mm(d_mm)));
        }
    }

    fn seep(&mut self, part: u16, inner: usize, cm3_per_min: f64) {
        if 0.0 < cm3_per_min {
            self.leak(part, inner, Law::Seep(laminar::coefficient(cm3_per_min)));
        }
    }

    fn joint(&mut self, assembly: &Assembly, layout: &Layout, a: PortRef, b: PortRef) {
        if is_stem(assembly, a) {
            return self.tee_in(assembly, layout, a, b);
        }
        if is_stem(assembly, b) {
            return self.tee_in(assembly, layout, b, a);
        }
        for port in [a, b] {
            self.gap(assembly, layout, port);
        }
        if assembly.stop(a).is_some() || assembly.stop(b).is_some() {
            return;
        }
        let (Some(node_a), Some(node_b)) = (node(assembly, layout, a), node(assembly, layout, b)) else {
            return;
        };
        let edge = |a_node, b_node, law, pa, pb| Edge {
            a: a_node,
            b: b_node,
            law,
            port_a: Some(pa),
            port_b: Some(pb),
            heard_at: None,
            soft: None,
        };
        self.edges.push(match (passage(assembly, a), passage(assembly, b)) {
            (Passage::Iso(x), Passage::Iso(y)) => edge(node_a, node_b, Law::Iso(x.in_series(y)), a, b),
            // The seat lies at the port `store`: forward is from the other part into the valve.
            (Passage::Iso(x), Passage::Seat(s)) => edge(node_a, node_b, Law::Check(narrowed(s, x)), a, b),
            (Passage::Seat(s), Passage::Iso(x)) => edge(node_b, node_a, Law::Check(narrowed(s, x)), b, a),
            // Two seats face each other: nothing can open both; what leaks is what the tighter one leaks.
            (Passage::Seat(s), Passage::Seat(t)) => {
                let tighter = if s.leak.area <= t.leak.area { s.leak } else { t.leak };
                edge(node_a, node_b, Law::Hole(tighter), a, b)
            }
        });
    }

    /// A stem at a port: a branch at a made joint, or the only thing on an open port.
    fn tee_in(&mut self, assembly: &Assembly, layout: &Layout, stem: PortRef, at: PortRef) {
        let car_partner = assembly.joints.iter().filter(|j| j.made).find_map(|j| {
            let other = if j.a == at {
                j.b
            } else if j.b == at {
                j.a
            } else {
                return None;
            };
            (!is_stem(assembly, other)).then_some(other)
        });
        // Beyond a seat or a clamp the joint plane belongs to the other side.
        let beyond = matches!(passage(assembly, at), Passage::Seat(_)) || assembly.stop(at).is_some();
        let (target, seat) = match (car_partner, beyond) {
            (Some(partner), true) => (partner, None),
            (None, true) => match passage(assembly, at) {
                Passage::Seat(s) => (at, Some(s)),
                Passage::Iso(_) => return, // Clamped off and nothing behind it.
            },
            _ => (at, None),
        };
        let (Some(stem_node), Some(node)) = (node(assembly, layout, stem), node(assembly, layout, target))
        else {
            return;
        };
        let Passage::Iso(bore) = passage(assembly, stem) else { return };
        let law = match (seat, passage(assembly, target)) {
            (Some(s), _) => Law::Check(narrowed(s, bore)),
            (None, Passage::Iso(x)) => Law::Iso(bore.in_series(x)),
            (None, Passage::Seat(_)) => Law::Iso(bore),
        };
        self.edges.push(Edge {
            a: stem_node,
            b: node,
            law,
            port_a: Some(stem),
            port_b: Some(target),
            heard_at: None,
            soft: None,
        });
    }

    fn open_port(&mut self, assembly: &Assembly, layout: &Layout, port: PortRef) {
        let Some(inner) = node(assembly, layout, port) else { return };
        if let Node::Manifold(_) = inner {
            return; // The engine breathes through it; its pressure is a source either way.
        }
        let law = match passage(assembly, port) {
            Passage::Iso(x) => Law::Iso(x),
            Passage::Seat(s) => Law::Check(s),
        };
        self.edges.push(Edge {
            a: Node::Atmosphere,
            b: inner,
            law,
            port_a: None,
            port_b: Some(port),
            heard_at: Some(port.part),
            soft: None,
        });
    }

    /// The gap of a bend out of line, at the hose's end `a`, where the bend is.
    fn gap(&mut self, assembly: &Assembly, layout: &Layout, port: PortRef) {
        let PartKind::Hose(hose) = &assembly.parts[port.part as usize].kind else { return };
        let (still, shaking) = (hose.gap_mm2(false), hose.gap_mm2(true));
        if port.port != 0 || still <= 0.0 {
            return;
        }
        if let Some(v) = layout.volume_of(port.part, Chamber::Body) {
            let hole = |mm2: f64| Pinhole { area: mm2 * 1e-6, ideal: false };
            self.leak(port.part, v, Law::Gap { still: hole(still), shaking: hole(shaking) });
        }
    }
}

fn narrowed(seat: CheckLaw, other: Iso6358) -> CheckLaw {
    CheckLaw { open: seat.open.in_series(other), ..seat }
}

fn is_stem(assembly: &Assembly, port: PortRef) -> bool {
    matches!(assembly.parts[port.part as usize].kind, PartKind::VacuumGauge(_) | PartKind::HandPump(_))
}

/// The body of air behind a pneumatic port.
pub(crate) fn node(assembly: &Assembly, layout: &Layout, port: PortRef) -> Option<Node> {
    let part = port.part;
    match assembly.parts[part as usize].kind {
        PartKind::Engine(_) => Some(Node::Manifold(part)),
        PartKind::Booster(_) => layout.volume_of(part, Chamber::Front).map(Node::Volume),
        _ => layout.volume_of(part, Chamber::Body).map(Node::Volume),
    }
}

pub(crate) fn passage(assembly: &Assembly, port: PortRef) -> Passage {
    let bore = nipple::of_bore_mm;
    match &assembly.parts[port.part as usize].kind {
        PartKind::Hose(p) => Passage::Iso(p.half()),
        PartKind::Tee(p) => Passage::Iso(p.nipple()),
        PartKind::CheckValve(p) => {
            if port.port == 0 {
                Passage::Seat(p.law())
            } else {
                Passage::Iso(p.nipple())
            }
        }
        PartKind::VacuumSwitch(p) => Passage::Iso(bore(p.bore_mm)),
        PartKind::VacuumSensor(p) => Passage::Iso(bore(p.bore_mm)),
        PartKind::VacuumPump(p) => Passage::Iso(p.nipple()),
        PartKind::EnginePump(p) => Passage::Iso(p.nipple()),
        PartKind::Reservoir(p) => Passage::Iso(p.nipple()),
        PartKind::Booster(p) => Passage::Iso(p.nipple()),
        PartKind::Engine(p) => Passage::Iso(p.nipple()),
        PartKind::VacuumGauge(p) => Passage::Iso(bore(p.bore_mm)),
        PartKind::HandPump(p) => Passage::Iso(bore(p.bore_mm)),
        other => unreachable!("{} has no pneumatic port", other.name()),
    }
}

/// What a law needs to know besides the air on both sides.
pub(crate) struct Around<'a, R: Real> {
    pub(crate) engine_runs: R::Mask,
    pub(crate) pedal_n: R,
    pub(crate) boosters: &'a [BoosterAt],
    pub(crate) booster_laws: &'a [BoosterLaw<R>],
    pub(crate) p_atm: R,
}

/// What hands do to a way: strokes per second, and where a lever is held.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct AtHand<R> {
    pub(crate) strokes_per_s: R,
    /// 1 = held, 0 = let go.
    pub(crate) pressed: R,
}

/// Flow with its slope over the one further state it depends on: travel, m, or speed, rad/s.
///
/// Always inlined: a stage that wants no slopes then works none out.
#[inline(always)]
pub(crate) fn flow<R: Real>(
    law: &Law<R>,
    a: Gas<R>,
    b: Gas<R>,
    around: &Around<'_, R>,
    hand: AtHand<R>,
    state: R,
) -> (Flow<R>, R) {
    let zero = R::all(0.0);
    match law {
        Law::Iso(iso) => (iso.flow(a, b), zero),
        Law::Hole(hole) => (hole.flow(a, b), zero),
        Law::Gap { still, shaking } => {
            let area = R::choose(around.engine_runs, shaking.area, still.area);
            (Pinhole { area, ..*still }.flow(a, b), zero)
        }
        Law::Seep(k) => (laminar::flow(*k, a, b), zero),
        Law::Check(check) => (check.flow(a, b), zero),
        Law::Admit { part, open } => lifted(*part, open, a, b, around, state, BoosterLaw::admit_lift),
        Law::Equalise { part, open } => lifted(*part, open, a, b, around, state, BoosterLaw::equalise_lift),
        Law::Suction { swept, .. } => {
            // Displaced mass: swept volume times the density at the inlet.
            let rho = a.p / (a.t * crate::air::R_AIR);
            let q = *swept * state.larger(zero);
            let m = q * rho;
            let slope = R::choose(zero.below(state), *swept * rho, zero);
            (Flow { m, dpa: m / a.p, dpb: zero, dta: -m / a.t, dtb: zero }, slope)
        }
        Law::Vent { hole, .. } => {
            let released = zero.below(hand.pressed);
            let flow = if released.any() { hole.flow(a, b) } else { Flow::default() };
            (Flow::choose(released, flow, Flow::default()), zero)
        }
        Law::Strokes { stroke, ultimate, .. } => {
            let q = *stroke * hand.strokes_per_s;
            let over_p = a.p - *ultimate * around.p_atm;
            let rt = a.t * crate::air::R_AIR;
            let m = q * over_p / rt;
            let flow = Flow { m, dpa: q / rt, dpb: zero, dta: -m / a.t, dtb: zero };
            (Flow::choose(over_p.at_most(zero), Flow::default(), flow), zero)
        }
    }
}

#[inline(always)]
fn lifted<R: Real>(
    part: u16,
    open: &Iso6358<R>,
    a: Gas<R>,
    b: Gas<R>,
    around: &Around<'_, R>,
    travel: R,
    lift: impl Fn(&BoosterLaw<R>, R) -> (R, R),
) -> (Flow<R>, R) {
    let zero = R::all(0.0);
    let at = around.boosters.iter().zip(around.booster_laws).find(|(at, _)| at.part == part);
    let Some((_, law)) = at else { return (Flow::default(), zero) };
    let (e, de_dx) = law.valve_force(around.pedal_n, travel);
    let (s, ds_de) = lift(law, e);
    let open_there = zero.below(s);
    if !open_there.any() {
        return (Flow::default(), zero);
    }
    let full = open.flow(a, b);
    let flow = Flow::choose(open_there, full.scaled(s), Flow::default());
    (flow, R::choose(open_there, full.m * ds_de * de_dx, zero))
}
