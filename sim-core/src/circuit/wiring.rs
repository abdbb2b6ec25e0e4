//! Electrical side: a nodal network solved at every stage of a step.
//!
//! Ports that made joints bring together share a node; the body (terminal 31) is the reference. Every
//! two-pole is a conductance with a source behind it, G v = i; a conductance of 1 nS from every node to the
//! body keeps loose ends defined. Positive current flows into a pole's port `a`. Most two-poles keep their
//! conductance until something is switched. They are solved once, leaves first by a plan made once: what each
//! source does to every node, and what a current through each two-pole that does vary (motor, filament,
//! track) does. From then on a solve adds those up and meets the few that vary, as Thévenin's equivalent
//! does ([`Solved`]). Not modelled: inductance, capacitance, contact bounce.

use super::linear::{Plan, Unknowns};
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

impl PoleKind {
    /// Whether the conductance follows the state continuously.
    pub(crate) fn varies(self) -> bool {
        matches!(self, Self::Motor | Self::Lamp | Self::SensorUpper | Self::SensorLower)
    }

    /// Whether there can be a voltage behind a steady conductance.
    fn is_source(self) -> bool {
        matches!(self, Self::Battery | Self::Supply | Self::Alternator | Self::ControllerFeed | Self::Meter)
    }
}

/// Conductance and source of a two-pole: i = g (v_a − v_b − emf).
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PoleState {
    pub(crate) g: f64,
    pub(crate) emf: f64,
}

impl PoleState {
    /// To the last bit, the sign of nought included: what is solved for one is then what the other's is.
    pub(crate) fn is(self, other: Self) -> bool {
        self.g.to_bits() == other.g.to_bits() && self.emf.to_bits() == other.emf.to_bits()
    }
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
    /// Elimination of the nodes, node k in row k; the body's row stands alone.
    plan: Plan,
    /// Per pole, the two entries of the matrix that link its nodes, unless one is the body.
    links: Vec<Option<(u32, u32)>>,
    /// Numbers of the two-poles whose conductance varies.
    varying: Vec<usize>,
}

/// Solution of one solve, and what the next one can use again.
#[derive(Clone, Debug, Default)]
pub(crate) struct Solved {
    /// Node voltages against the body, V; `v[0]` = 0.
    pub(crate) v: Unknowns,
    /// Conductances of the steady two-poles that the rest was worked out for, S.
    steady_g: Vec<f64>,
    /// Per steady two-pole that conducts, what 1 V of its source does to every node, V; all poles, n each.
    unit_emf: Vec<f64>,
    /// Per varying two-pole, what 1 A from its port b to its port a outside it does to every node, V.
    unit_current: Vec<f64>,
    /// Between the varying two-poles, what 1 A through one does across another, Ω.
    mutual: Vec<f64>,
    /// Work space: matrix entries, the varying two-poles' matrix and their currents.
    g: Vec<f64>,
    small: Vec<f64>,
    current: Vec<f64>,
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
            varying: Vec::new(),
        };
        for (i, part) in assembly.parts.iter().enumerate() {
            if super::layout::is_active(assembly, i as u16) {
                wiring.add_poles(i as u16, &part.kind);
            }
        }
        wiring.leaves_first();
        let linked = |p: &&Pole| 0 < p.node_a && 0 < p.node_b && p.node_a != p.node_b;
        let places: Vec<(usize, usize)> = wiring
            .poles
            .iter()
            .filter(linked)
            .map(|p| (usize::from(p.node_a), usize::from(p.node_b)))
            .flat_map(|(a, b)| [(a, b), (b, a)])
            .collect();
        wiring.plan = Plan::of(wiring.n, &places);
        let varying = wiring.poles.iter().enumerate().filter(|(_, p)| p.kind.varies());
        wiring.varying = varying.map(|(i, _)| i).collect();
        wiring.links = wiring
            .poles
            .iter()
            .map(|p| {
                let (a, b) = (usize::from(p.node_a), usize::from(p.node_b));
                Some((wiring.plan.entry(a, b)?, wiring.plan.entry(b, a)?)).filter(|_| a != b)
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
        let steady = || self.poles.iter().zip(poles).filter(|(p, _)| !p.kind.varies());
        let m = self.varying.len();
        let known = steady().map(|(_, s)| s.g.to_bits()).eq(out.steady_g.iter().map(|g| g.to_bits()));
        if !known || out.mutual.len() != m * m {
            out.steady_g.clear();
            out.steady_g.extend(steady().map(|(_, s)| s.g));
            self.work_out(poles, out);
        }
        let n = self.n;
        out.v[..n].fill(0.0);
        for (row, (_, s)) in out.unit_emf.chunks_exact(n).zip(steady()) {
            if s.emf != 0.0 && 0.0 < s.g {
                for (v, unit) in out.v.iter_mut().zip(row) {
                    *v += s.emf * unit;
                }
            }
        }
        let Solved { v, unit_current, mutual, small, current, .. } = out;
        current.clear();
        current.extend(self.varying.iter().map(|i| across(&self.poles[*i], &v[..]) - poles[*i].emf));
        self.meet(poles, mutual, small, current);
        for (row, i) in unit_current.chunks_exact(n).zip(&current[..m]) {
            for (v, unit) in v.iter_mut().zip(row) {
                *v -= i * unit;
            }
        }
    }

    /// What the steady two-poles make of every source and of a current through every varying two-pole.
    fn work_out(&self, poles: &[PoleState], out: &mut Solved) {
        let n = self.n;
        out.g.clear();
        out.g.resize(self.plan.n_entries(), 0.0);
        let (links, own) = out.g.split_at_mut(self.plan.diagonal(0));
        own.fill(G_LOOSE);
        for ((pole, link), s) in self.poles.iter().zip(&self.links).zip(poles) {
            let (a, b) = (usize::from(pole.node_a), usize::from(pole.node_b));
            if pole.kind.varies() || s.g <= 0.0 || a == b {
                continue;
            }
            own[a] += s.g;
            own[b] += s.g;
            if let Some((ab, ba)) = link {
                links[*ab as usize] -= s.g;
                links[*ba as usize] -= s.g;
            }
        }
        // The body is the reference: its row says v = 0.
        own[0] = 1.0;
        // Diagonally dominant and symmetric: every pivot is positive.
        let positive = self.plan.factor(&mut out.g);
        assert!(positive, "a network of conductances has positive pivots");
        let mut column = Unknowns::default();
        let mut driven = |pole: &Pole, ampere: f64| {
            column[..n].fill(0.0);
            column[usize::from(pole.node_a)] += ampere;
            column[usize::from(pole.node_b)] -= ampere;
            column[0] = 0.0;
            self.plan.solve(&out.g, &mut column);
            column[..n].to_vec()
        };
        out.unit_emf.clear();
        for (pole, s) in self.poles.iter().zip(poles).filter(|(p, _)| !p.kind.varies()) {
            if pole.kind.is_source() && 0.0 < s.g {
                out.unit_emf.extend(driven(pole, s.g));
            } else {
                out.unit_emf.resize(out.unit_emf.len() + n, 0.0);
            }
        }
        out.unit_current.clear();
        for i in &self.varying {
            out.unit_current.extend(driven(&self.poles[*i], 1.0));
        }
        out.mutual.clear();
        for i in &self.varying {
            let rows = out.unit_current.chunks_exact(n);
            out.mutual.extend(rows.map(|row| across(&self.poles[*i], row)));
        }
    }

    /// Currents of the varying two-poles from the voltages across them without any, less their sources:
    /// (1/g + mutual) i = v, symmetric and positive; one that does not conduct has none.
    fn meet(&self, poles: &[PoleState], mutual: &[f64], small: &mut Vec<f64>, x: &mut [f64]) {
        let m = self.varying.len();
        small.clear();
        small.extend_from_slice(mutual);
        for (k, i) in self.varying.iter().enumerate() {
            let g = poles[*i].g;
            if 0.0 < g {
                small[k * m + k] += 1.0 / g;
            } else {
                for j in 0..m {
                    small[k * m + j] = 0.0;
                    small[j * m + k] = 0.0;
                }
                (small[k * m + k], x[k]) = (1.0, 0.0);
            }
        }
        for k in 0..m {
            for i in k + 1..m {
                let l = small[i * m + k] / small[k * m + k];
                for j in k + 1..m {
                    small[i * m + j] -= l * small[k * m + j];
                }
                x[i] -= l * x[k];
            }
        }
        for k in (0..m).rev() {
            let rest: f64 = (k + 1..m).map(|j| small[k * m + j] * x[j]).sum();
            x[k] = (x[k] - rest) / small[k * m + k];
        }
    }

    /// Resistance of the solved network, everything in it, seen from the nodes of a varying two-pole, ohm.
    pub(crate) fn seen_from(&self, poles: &[PoleState], solved: &mut Solved, pole: usize) -> f64 {
        let m = self.varying.len();
        let Some(k) = self.varying.iter().position(|i| *i == pole) else { return 0.0 };
        let Solved { mutual, small, current, .. } = solved;
        let own = &mutual[k * m..(k + 1) * m];
        current.clear();
        current.extend_from_slice(own);
        self.meet(poles, mutual, small, current);
        own[k] - own.iter().zip(&*current).map(|(z, i)| z * i).sum::<f64>()
    }
}

/// Voltage from port a to port b of a two-pole.
fn across(pole: &Pole, v: &[f64]) -> f64 {
    v[usize::from(pole.node_a)] - v[usize::from(pole.node_b)]
}
