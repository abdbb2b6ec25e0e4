//! Pneumatic side of an assembly: which restriction lies between which bodies of air.
//!
//! A made joint puts the two ports' resistances in a row; an open port leads to the atmosphere; a plug
//! or clamp takes the way out; an instrument's stem is a further branch at a joint (tee-in) or closes an
//! open port.

use super::layout::Layout;
use super::specs::Specs;
use super::unsound::Unsound;
use crate::assembly::PortRef;
use crate::circuit::solve::Soft;
use crate::flow::iso6358::Iso6358;
use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;
use crate::parts::Domain;
use crate::parts::elements::{Behind, FlowPath, Law, Mouth, Passage, Place};

/// A body of air or a source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Node {
    /// A volume, by its number in the layout.
    Volume(usize),
    /// The air outside.
    Atmosphere,
    /// The manifold of this part.
    Manifold(u16),
}

/// One flow path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Edge {
    pub(crate) a: Node,
    pub(crate) b: Node,
    pub(crate) law: Law,
    /// The part whose state the law looks at: that of a way within, else one at its end.
    pub(crate) part: u16,
    /// Port of the part on side a, if the edge is a port's.
    pub(crate) port_a: Option<PortRef>,
    /// Port of the part on side b.
    pub(crate) port_b: Option<PortRef>,
    /// The part at which air rushing to or from the open is heard.
    pub(crate) heard_at: Option<u16>,
    /// Soft walls at its ends that pull in, if any.
    pub(crate) soft: Option<[Soft; 2]>,
}

/// All flow paths.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct AirNet {
    pub(crate) edges: Vec<Edge>,
    /// What lies behind every pneumatic port that takes part, sorted by port.
    pub(crate) mouths: Vec<(PortRef, Node)>,
}

impl AirNet {
    pub(super) fn of(specs: &Specs<'_>, layout: &Layout) -> Result<Self, Unsound> {
        let assembly = specs.assembly;
        let mut net = Self::default();
        for (part, spec) in specs.active() {
            net.edges.extend(spec.air.flow_paths.iter().filter_map(|path| within(part, path, layout)));
        }
        for joint in &assembly.joints {
            if joint.made && assembly.domain(joint.a) == Domain::Pneumatic {
                net.joint(specs, layout, joint.a, joint.b)?;
            }
        }
        for port in assembly.ports() {
            if assembly.domain(port) != Domain::Pneumatic || !specs.is_active(port.part) {
                continue;
            }
            net.mouths.extend(node(specs, layout, port)?.map(|node| (port, node)));
            if assembly.partner(port).is_none() && assembly.stop(port).is_none() {
                net.open_port(specs, layout, port)?;
            }
        }
        for edge in &mut net.edges {
            // An open port of a hose has air on side a and no port there.
            if let Some(b) = edge.port_b {
                let a = edge.port_a.unwrap_or(b);
                edge.soft = soft_ends(&edge.law, specs.mouth(a)?, specs.mouth(b)?);
            }
        }
        Ok(net)
    }

    /// What lies behind a pneumatic port that takes part.
    pub(crate) fn behind(&self, port: PortRef) -> Option<Node> {
        self.mouths.binary_search_by_key(&port, |(p, _)| *p).ok().map(|i| self.mouths[i].1)
    }

    fn joint(&mut self, specs: &Specs<'_>, layout: &Layout, a: PortRef, b: PortRef) -> Result<(), Unsound> {
        if specs.mouth(a)?.stem {
            return self.tee_in(specs, layout, a, b);
        }
        if specs.mouth(b)?.stem {
            return self.tee_in(specs, layout, b, a);
        }
        for port in [a, b] {
            self.gap(specs, layout, port)?;
        }
        if specs.assembly.stop(a).is_some() || specs.assembly.stop(b).is_some() {
            return Ok(());
        }
        let (Some(node_a), Some(node_b)) = (node(specs, layout, a)?, node(specs, layout, b)?) else {
            return Ok(());
        };
        let edge = |a_node, b_node, law, pa: PortRef, pb| Edge {
            a: a_node,
            b: b_node,
            law,
            part: pa.part,
            port_a: Some(pa),
            port_b: Some(pb),
            heard_at: None,
            soft: None,
        };
        self.edges.push(match (specs.mouth(a)?.passage, specs.mouth(b)?.passage) {
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
        Ok(())
    }

    /// A stem at a port: a branch at a made joint, or the only thing on an open port.
    fn tee_in(
        &mut self,
        specs: &Specs<'_>,
        layout: &Layout,
        stem: PortRef,
        at: PortRef,
    ) -> Result<(), Unsound> {
        let car_partner = specs.assembly.joints.iter().filter(|j| j.made).find_map(|j| {
            let other = if j.a == at {
                j.b
            } else if j.b == at {
                j.a
            } else {
                return None;
            };
            (!specs.mouth(other).is_ok_and(|mouth| mouth.stem)).then_some(other)
        });
        // Beyond a seat or a clamp the joint plane belongs to the other side.
        let beyond =
            matches!(specs.mouth(at)?.passage, Passage::Seat(_)) || specs.assembly.stop(at).is_some();
        let (target, seat) = match (car_partner, beyond) {
            (Some(partner), true) => (partner, None),
            (None, true) => match specs.mouth(at)?.passage {
                Passage::Seat(s) => (at, Some(s)),
                Passage::Iso(_) => return Ok(()), // Clamped off and nothing behind it.
            },
            _ => (at, None),
        };
        let (Some(stem_node), Some(node)) = (node(specs, layout, stem)?, node(specs, layout, target)?) else {
            return Ok(());
        };
        let Passage::Iso(bore) = specs.mouth(stem)?.passage else { return Ok(()) };
        let law = match (seat, specs.mouth(target)?.passage) {
            (Some(s), _) => Law::Check(narrowed(s, bore)),
            (None, Passage::Iso(x)) => Law::Iso(bore.in_series(x)),
            (None, Passage::Seat(_)) => Law::Iso(bore),
        };
        self.edges.push(Edge {
            a: stem_node,
            b: node,
            law,
            part: stem.part,
            port_a: Some(stem),
            port_b: Some(target),
            heard_at: None,
            soft: None,
        });
        Ok(())
    }

    fn open_port(&mut self, specs: &Specs<'_>, layout: &Layout, port: PortRef) -> Result<(), Unsound> {
        let Some(inner) = node(specs, layout, port)? else { return Ok(()) };
        if let Node::Manifold(_) = inner {
            return Ok(()); // The engine breathes through it; its pressure is a source either way.
        }
        let law = match specs.mouth(port)?.passage {
            Passage::Iso(x) => Law::Iso(x),
            Passage::Seat(s) => Law::Check(s),
        };
        self.edges.push(Edge {
            a: Node::Atmosphere,
            b: inner,
            law,
            part: port.part,
            port_a: None,
            port_b: Some(port),
            heard_at: Some(port.part),
            soft: None,
        });
        Ok(())
    }

    /// The gap of a bend out of line, at a made joint.
    fn gap(&mut self, specs: &Specs<'_>, layout: &Layout, port: PortRef) -> Result<(), Unsound> {
        let (Some(gap), Some(b)) = (specs.mouth(port)?.gap, node(specs, layout, port)?) else {
            return Ok(());
        };
        let hole = |area: f64| Pinhole { area, ideal: false };
        self.edges.push(Edge {
            a: Node::Atmosphere,
            b,
            law: Law::Gap { still: hole(gap.still), shaking: hole(gap.shaking) },
            part: port.part,
            port_a: None,
            port_b: None,
            heard_at: Some(port.part),
            soft: None,
        });
        Ok(())
    }
}

/// A way within a part.
fn within(part: u16, path: &FlowPath, layout: &Layout) -> Option<Edge> {
    let node = |place| match place {
        Place::Outside => Some(Node::Atmosphere),
        Place::In(chamber) => layout.volume_of(part, chamber).map(Node::Volume),
    };
    Some(Edge {
        a: node(path.a)?,
        b: node(path.b)?,
        law: path.law,
        part,
        port_a: None,
        port_b: None,
        heard_at: path.heard.then_some(part),
        soft: None,
    })
}

fn narrowed(seat: CheckLaw, other: Iso6358) -> CheckLaw {
    CheckLaw { open: seat.open.in_series(other), ..seat }
}

/// The body of air behind a pneumatic port.
fn node(specs: &Specs<'_>, layout: &Layout, port: PortRef) -> Result<Option<Node>, Unsound> {
    Ok(match specs.mouth(port)?.behind {
        Behind::Manifold => Some(Node::Manifold(port.part)),
        Behind::Chamber(chamber) => layout.volume_of(port.part, chamber).map(Node::Volume),
    })
}

/// The soft ends of a way through `law` from `a` to `b`; `None` when both walls are sound.
fn soft_ends(law: &Law, a: &Mouth, b: &Mouth) -> Option<[Soft; 2]> {
    let whole = match law {
        Law::Iso(x) => x.c,
        Law::Check(x) => x.open.c,
        Law::Hole(_)
        | Law::Gap { .. }
        | Law::Seep(_)
        | Law::Admit { .. }
        | Law::Equalise { .. }
        | Law::Suction { .. }
        | Law::Strokes { .. }
        | Law::Vent { .. } => return None,
    };
    let end = |mouth: &Mouth| match (mouth.passage, mouth.collapse) {
        (Passage::Iso(own), Some(collapse)) if 0.0 < own.c => {
            Soft { collapse, share: (whole / own.c) * (whole / own.c) }
        }
        (Passage::Iso(_) | Passage::Seat(_), _) => Soft::default(),
    };
    let ends = [end(a), end(b)];
    ends.iter().any(|s| 0.0 < s.collapse).then_some(ends)
}
