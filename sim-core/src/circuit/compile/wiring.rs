//! Electrical side of an assembly: which ports are one node, and which two-poles lie between the nodes.
//!
//! Ports that made joints bring together share a node; the body (terminal 31) is the reference.

use super::specs::Specs;
use crate::assembly::PortRef;
use crate::parts::Domain;
use crate::parts::elements::Worth;

/// A two-pole between two ports of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pole {
    pub(crate) part: u16,
    pub(crate) port_a: u8,
    pub(crate) port_b: u8,
    pub(crate) node_a: u16,
    pub(crate) node_b: u16,
    /// What decides its worth, whatever the numbers.
    is: std::mem::Discriminant<Worth>,
    /// What it is, in the exported equations.
    pub(crate) name: &'static str,
}

/// Nodes and two-poles.
#[derive(Clone, Debug, Default)]
pub(crate) struct Wiring {
    /// Two-poles in part order.
    pub(crate) poles: Vec<Pole>,
    /// Node of every electrical port, sorted by port.
    pub(crate) nodes: Vec<(PortRef, u16)>,
    /// Number of nodes; node 0 is the body.
    pub(crate) n: usize,
}

impl Wiring {
    pub(super) fn of(specs: &Specs<'_>) -> Self {
        let assembly = specs.assembly;
        let ports: Vec<PortRef> = assembly
            .ports()
            .filter(|p| assembly.domain(*p) == Domain::Electrical && specs.is_active(p.part))
            .collect();
        // Union by label: small, and done only when a joint changes.
        let mut label: Vec<usize> = (0..ports.len()).collect();
        let index = |p: PortRef| ports.iter().position(|q| *q == p);
        let mut unite = |a: usize, b: usize| {
            let (from, to) = (label[a].max(label[b]), label[a].min(label[b]));
            for l in &mut label {
                if *l == from {
                    *l = to;
                }
            }
        };
        let bodies: Vec<usize> =
            (0..ports.len()).filter(|i| specs.parts[usize::from(ports[*i].part)].electric.earth).collect();
        for pair in bodies.windows(2) {
            unite(pair[0], pair[1]);
        }
        for joint in assembly.joints.iter().filter(|j| j.made) {
            if let (Some(a), Some(b)) = (index(joint.a), index(joint.b)) {
                unite(a, b);
            }
        }
        // Node 0: the body; without one, the first port is the reference.
        let zero = bodies.first().map_or_else(|| label.first().copied(), |i| Some(label[*i]));
        let mut roots: Vec<usize> = zero.into_iter().collect();
        for l in &label {
            if !roots.contains(l) {
                roots.push(*l);
            }
        }
        let node_of = |i: usize| roots.iter().position(|r| *r == label[i]).unwrap_or(0) as u16;
        let nodes: Vec<(PortRef, u16)> = ports.iter().enumerate().map(|(i, p)| (*p, node_of(i))).collect();
        let mut wiring = Self { poles: Vec::new(), n: roots.len().max(1), nodes };
        for (part, spec) in specs.active() {
            for pole in &spec.electric.poles {
                let node = |port| wiring.node(PortRef { part, port }).unwrap_or(0);
                wiring.poles.push(Pole {
                    part,
                    port_a: pole.a,
                    port_b: pole.b,
                    node_a: node(pole.a),
                    node_b: node(pole.b),
                    is: std::mem::discriminant(&pole.worth),
                    name: pole.name,
                });
            }
        }
        wiring.leaves_first();
        wiring
    }

    /// Numbers the nodes so that the one with the fewest neighbours left comes first (minimum degree).
    fn leaves_first(&mut self) {
        let n = self.n;
        let mut linked = vec![false; n * n];
        for p in &self.poles {
            let (a, b) = (p.node_a as usize, p.node_b as usize);
            if a != b && 0 < a && 0 < b {
                linked[a * n + b] = true;
                linked[b * n + a] = true;
            }
        }
        let mut number = vec![0_u16; n];
        let mut left: Vec<usize> = (1..n).collect();
        for next in 1..n {
            let degree = |k: usize| left.iter().filter(|j| linked[k * n + **j]).count();
            let Some(k) = left.iter().copied().min_by_key(|k| (degree(*k), *k)) else { break };
            left.retain(|j| *j != k);
            number[k] = next as u16;
            // What was linked through it is linked now.
            let around: Vec<usize> = left.iter().copied().filter(|j| linked[k * n + j]).collect();
            for &i in &around {
                for &j in &around {
                    linked[i * n + j] = i != j;
                }
            }
        }
        for p in &mut self.poles {
            p.node_a = number[p.node_a as usize];
            p.node_b = number[p.node_b as usize];
        }
        for (_, node) in &mut self.nodes {
            *node = number[*node as usize];
        }
    }

    /// Node of an electrical port.
    pub(crate) fn node(&self, port: PortRef) -> Option<u16> {
        self.nodes.binary_search_by_key(&port, |(p, _)| *p).ok().map(|i| self.nodes[i].1)
    }

    /// Number of the two-pole that is number `pole` of a part's own.
    pub(super) fn pole_of(&self, part: u16, pole: u8) -> Option<usize> {
        let first = self.poles.iter().position(|p| p.part == part)?;
        let at = first + usize::from(pole);
        self.poles.get(at).is_some_and(|p| p.part == part).then_some(at)
    }
}
