//! Electrical side: a nodal network solved at every stage of a step.
//!
//! Ports that made joints bring together share a node; the body (terminal 31) is the reference. Every
//! two-pole is a conductance with a source behind it, G v = i, eliminated leaves first by a plan made
//! once; a conductance of 1 nS from every node to the body keeps loose ends defined. Positive current flows into a pole's
//! port `a`. Not modelled: inductance, capacitance, contact bounce.

use super::linear::Plan;
use crate::assembly::{Assembly, PortRef};
use crate::parts::{Domain, PartKind};

/// Conductance that ties loose ends to the body, S.
pub(crate) const G_LOOSE: f64 = 1e-9;

/// A two-pole between two ports of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pole {
    pub(crate) part: u16,
    pub(crate) port_a: u8,
    pub(crate) port_b: u8,
    pub(crate) node_a: u16,
    pub(crate) node_b: u16,
    pub(crate) kind: PoleKind,
}

/// What a two-pole is; its values come from the state at each stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum PoleKind {
    Battery,
    Supply,
    Alternator,
    Fuse,
    Coil,
    RelayContact,
    Key,
    Wire,
    SwitchContact,
    Motor,
    SensorUpper,
    SensorLower,
    ControllerSupply,
    ControllerFeed,
    ControllerInput,
    ControllerGround,
    ControllerOut,
    Lamp,
    Meter,
    PushLead,
}

/// Conductance and source of a two-pole: i = g (v_a − v_b − emf).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct PoleState {
    pub(crate) g: f64,
    pub(crate) emf: f64,
}

/// The network's structure.
#[derive(Clone, Debug, Default)]
pub(crate) struct Wiring {
    /// Two-poles in part order.
    pub(crate) poles: Vec<Pole>,
    /// Node of every electrical port, sorted by port.
    pub(crate) nodes: Vec<(PortRef, u16)>,
    /// Number of nodes; node 0 is the body.
    pub(crate) n: usize,
    /// Elimination of the nodes but the body, node k in row k − 1.
    plan: Plan,
    /// Per pole, the two entries of the matrix that link its nodes, unless one is the body.
    links: Vec<Option<(u32, u32)>>,
}

/// Work space and solution of one solve.
#[derive(Clone, Debug, Default)]
pub(crate) struct Solved {
    /// Node voltages against the body, V; `v[0]` = 0.
    pub(crate) v: Vec<f64>,
    g: Vec<f64>,
}

impl Wiring {
    pub(crate) fn of(assembly: &Assembly) -> Self {
        let ports: Vec<PortRef> = assembly
            .ports()
            .filter(|p| {
                assembly.domain(*p) == Domain::Electrical && super::layout::is_active(assembly, p.part)
            })
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
        let bodies: Vec<usize> = (0..ports.len())
            .filter(|i| matches!(assembly.parts[ports[*i].part as usize].kind, PartKind::Body(_)))
            .collect();
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
        let mut wiring = Self {
            poles: Vec::new(),
            n: roots.len().max(1),
            nodes,
            plan: Plan::default(),
            links: Vec::new(),
        };
        for (i, part) in assembly.parts.iter().enumerate() {
            if super::layout::is_active(assembly, i as u16) {
                wiring.add_poles(i as u16, &part.kind);
            }
        }
        wiring.leaves_first();
        let places: Vec<(usize, usize)> = wiring
            .poles
            .iter()
            .filter(|p| 0 < p.node_a && 0 < p.node_b)
            .map(|p| (p.node_a as usize - 1, p.node_b as usize - 1))
            .flat_map(|(a, b)| [(a, b), (b, a)])
            .collect();
        wiring.plan = Plan::of(wiring.n - 1, &places);
        wiring.links = wiring
            .poles
            .iter()
            .map(|p| {
                let (a, b) = ((p.node_a as usize).checked_sub(1)?, (p.node_b as usize).checked_sub(1)?);
                Some((wiring.plan.entry(a, b)?, wiring.plan.entry(b, a)?))
            })
            .collect();
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

    fn add_poles(&mut self, part: u16, kind: &PartKind) {
        let list: &[(u8, u8, PoleKind)] = match kind {
            PartKind::Battery(_) => &[(0, 1, PoleKind::Battery)],
            PartKind::Supply(_) => &[(0, 1, PoleKind::Supply)],
            PartKind::Engine(_) => &[(1, 2, PoleKind::Alternator)],
            PartKind::Fuse(_) => &[(0, 1, PoleKind::Fuse)],
            PartKind::Relay(_) => &[(0, 1, PoleKind::RelayContact), (3, 2, PoleKind::Coil)],
            PartKind::KeySwitch(_) => &[(0, 1, PoleKind::Key)],
            PartKind::Wire(_) => &[(0, 1, PoleKind::Wire)],
            PartKind::VacuumSwitch(_) => &[(1, 2, PoleKind::SwitchContact)],
            PartKind::VacuumPump(_) => &[(1, 2, PoleKind::Motor)],
            PartKind::VacuumSensor(_) => &[(1, 2, PoleKind::SensorUpper), (2, 3, PoleKind::SensorLower)],
            PartKind::Controller(_) => &[
                (0, 1, PoleKind::ControllerSupply),
                (2, 1, PoleKind::ControllerFeed),
                (3, 1, PoleKind::ControllerInput),
                (4, 1, PoleKind::ControllerGround),
                (5, 1, PoleKind::ControllerOut),
            ],
            PartKind::TestLamp(_) => &[(0, 1, PoleKind::Lamp)],
            PartKind::Multimeter(_) => &[(0, 1, PoleKind::Meter)],
            PartKind::PushLead(_) => &[(0, 1, PoleKind::PushLead)],
            _ => &[],
        };
        for &(port_a, port_b, kind) in list {
            let node = |port| self.node(PortRef { part, port }).unwrap_or(0);
            let pole = Pole { part, port_a, port_b, node_a: node(port_a), node_b: node(port_b), kind };
            self.poles.push(pole);
        }
    }

    /// Node of an electrical port.
    pub(crate) fn node(&self, port: PortRef) -> Option<u16> {
        self.nodes.binary_search_by_key(&port, |(p, _)| *p).ok().map(|i| self.nodes[i].1)
    }

    /// Solves the network for the given pole values.
    pub(crate) fn solve(&self, poles: &[PoleState], out: &mut Solved) {
        let n = self.n - 1; // Without the reference.
        out.v.clear();
        out.v.resize(self.n, 0.0);
        out.g.clear();
        out.g.resize(self.plan.n_entries(), 0.0);
        for k in 0..n {
            out.g[self.plan.diagonal(k)] = G_LOOSE;
        }
        for ((pole, links), s) in self.poles.iter().zip(&self.links).zip(poles) {
            let (a, b) = (pole.node_a as usize, pole.node_b as usize);
            if s.g <= 0.0 || a == b {
                continue;
            }
            let i = s.g * s.emf;
            if 0 < a {
                out.g[self.plan.diagonal(a - 1)] += s.g;
                out.v[a] += i;
            }
            if 0 < b {
                out.g[self.plan.diagonal(b - 1)] += s.g;
                out.v[b] -= i;
            }
            if let Some((ab, ba)) = links {
                out.g[*ab as usize] -= s.g;
                out.g[*ba as usize] -= s.g;
            }
        }
        // Diagonally dominant and symmetric: every pivot is positive.
        let positive = self.plan.factor(&mut out.g);
        assert!(positive, "a network of conductances has positive pivots");
        self.plan.solve(&out.g, &mut out.v[1..]);
    }

    /// Resistance of the solved network seen from two nodes, ohm.
    pub(crate) fn seen_from(&self, solved: &Solved, a: u16, b: u16, work: &mut Vec<f64>) -> f64 {
        let n = self.n - 1;
        work.clear();
        work.resize(n, 0.0);
        if 0 < a {
            work[a as usize - 1] += 1.0;
        }
        if 0 < b {
            work[b as usize - 1] -= 1.0;
        }
        self.plan.solve(&solved.g, work);
        let v = |node: u16| if 0 < node { work[node as usize - 1] } else { 0.0 };
        v(a) - v(b)
    }
}
