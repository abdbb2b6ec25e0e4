//! The right-hand side of the circuit's equations and its slopes, evaluated together.
//!
//! State y as in [`Layout`]; behind it four ledger rows (mass and enthalpy given to the outside, heat
//! taken from walls, work done by the air) that obey the same step, so that what the volumes lose is what
//! the ledgers gain to the last bits, however well the step converged.

use super::air_net::{AirNet, Around, Law, Node, flow};
use super::layout::{Chamber, Layout, Var};
use super::wiring::{PoleState, Solved, Wiring};
use super::{Flags, Inputs};
use crate::air::{CP, CV, Day, GAMMA};
use crate::assembly::Assembly;
use crate::flow::{Flow, Gas};
use crate::parts::PartKind;
use crate::parts::booster::Booster;
use crate::parts::engine::EngineState;
use crate::parts::vacuum_pump::VacuumPump;

/// Rows behind the state: mass out, enthalpy out, heat in, work out.
pub(crate) const N_LEDGERS: usize = 4;

/// Receives slopes ∂f_row/∂y_column.
pub(crate) trait Sink {
    /// Whether slopes are wanted at all.
    const WANTED: bool;
    /// Adds a slope.
    fn add(&mut self, row: usize, column: usize, value: f64);
}

/// Wants no slopes.
pub(crate) struct NoSlopes;
impl Sink for NoSlopes {
    const WANTED: bool = false;
    fn add(&mut self, _: usize, _: usize, _: f64) {}
}

/// Collects the places that are ever written.
#[derive(Default)]
pub(crate) struct Pattern(pub(crate) Vec<(usize, usize)>);
impl Sink for Pattern {
    const WANTED: bool = true;
    fn add(&mut self, row: usize, column: usize, _: f64) {
        self.0.push((row, column));
    }
}

/// Adds into a row-major matrix of `n` columns.
pub(crate) struct Dense<'a> {
    pub(crate) n: usize,
    pub(crate) a: &'a mut [f64],
}
impl Sink for Dense<'_> {
    const WANTED: bool = true;
    fn add(&mut self, row: usize, column: usize, value: f64) {
        self.a[row * self.n + column] += value;
    }
}

#[derive(Clone, Debug)]
pub(super) struct PumpAt {
    pub(super) numbers: VacuumPump,
    pub(super) winding: usize,
    pub(super) case: usize,
    pub(super) speed: usize,
    pub(super) inlet: usize,
    pub(super) pole: usize,
    /// Compression torque against the atmosphere with a perfect vacuum at the inlet, N·m, and its slope
    /// over the inlet pressure, N·m/Pa.
    pub(super) compression: (f64, f64),
}

#[derive(Clone, Debug)]
pub(super) struct BoosterAt {
    pub(super) part: u16,
    pub(super) numbers: Booster,
    pub(super) travel: usize,
    pub(super) front: usize,
    pub(super) rear: usize,
}

/// A compiled assembly: structure and numbers, no state.
#[derive(Clone, Debug)]
pub(crate) struct Model {
    pub(crate) layout: Layout,
    pub(crate) air: AirNet,
    pub(crate) wiring: Wiring,
    /// Number of state variables.
    pub(crate) n: usize,
    pub(super) p_atm: f64,
    /// Index of the mass in the state, per volume; its energy follows.
    pub(super) mass_at: Vec<usize>,
    /// Index of the travel that moves a volume's wall, per volume.
    pub(super) travel_at: Vec<Option<usize>>,
    pub(super) pumps: Vec<PumpAt>,
    pub(super) boosters: Vec<BoosterAt>,
    /// Per edge, the index of the state (travel or speed) it depends on besides the air.
    pub(super) edge_state: Vec<Option<usize>>,
    /// Engine part and index of its manifold pressure.
    pub(super) engines: Vec<(u16, usize)>,
}

/// What a model is evaluated under: numbers of the parts, hands and feet, contacts and fuses.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub(crate) assembly: &'a Assembly,
    pub(crate) inputs: &'a Inputs,
    pub(crate) flags: &'a [Flags],
}

/// Buffers and by-products of one evaluation.
#[derive(Clone, Debug, Default)]
pub(crate) struct Scratch {
    pub(crate) gas: Vec<Gas>,
    pub(super) volume: Vec<f64>,
    pub(crate) poles: Vec<PoleState>,
    pub(crate) solved: Solved,
    pub(super) seen: Vec<f64>,
    /// Mass flow of each edge, kg/s, positive from a to b.
    pub(crate) edge_m: Vec<f64>,
}

impl Model {
    pub(crate) fn of(assembly: &Assembly, day: &Day) -> Self {
        let layout = Layout::of(assembly);
        let air = AirNet::of(assembly, &layout);
        let wiring = Wiring::of(assembly);
        let at = |var| layout.index(var).unwrap_or_else(|| panic!("layout lacks {var:?}"));
        let mass_at = (0..layout.volumes.len()).map(|k| at(Var::Mass(k as u16))).collect();
        let travel_at = layout
            .volumes
            .iter()
            .map(|v| (v.chamber != Chamber::Body).then(|| at(Var::Travel(v.part))))
            .collect();
        let (mut pumps, mut boosters, mut engines) = (Vec::new(), Vec::new(), Vec::new());
        for (i, part) in assembly.parts.iter().enumerate() {
            let part_idx = i as u16;
            let volume =
                |c| layout.volume_of(part_idx, c).unwrap_or_else(|| panic!("{} lacks its air", part.id));
            match &part.kind {
                PartKind::VacuumPump(p) => pumps.push(PumpAt {
                    numbers: *p,
                    winding: at(Var::Winding(part_idx)),
                    case: at(Var::Case(part_idx)),
                    speed: at(Var::Speed(part_idx)),
                    inlet: volume(Chamber::Body),
                    pole: wiring.poles.iter().position(|q| q.part == part_idx).unwrap_or(0),
                    compression: p.compression_torque(0.0, day.pressure().pa()),
                }),
                PartKind::Booster(b) => boosters.push(BoosterAt {
                    part: part_idx,
                    numbers: *b,
                    travel: at(Var::Travel(part_idx)),
                    front: volume(Chamber::Front),
                    rear: volume(Chamber::Rear),
                }),
                PartKind::Engine(_) => engines.push((part_idx, at(Var::Manifold(part_idx)))),
                _ => {}
            }
        }
        let edge_state = air
            .edges
            .iter()
            .map(|e| match e.law {
                Law::Admit { part, .. } | Law::Equalise { part, .. } => Some(at(Var::Travel(part))),
                Law::Suction { part, .. } => Some(at(Var::Speed(part))),
                _ => None,
            })
            .collect();
        Self {
            n: layout.vars.len(),
            p_atm: day.pressure().pa(),
            mass_at,
            travel_at,
            pumps,
            boosters,
            edge_state,
            engines,
            layout,
            air,
            wiring,
        }
    }

    /// f(y) into `f` (state rows, then ledgers) and slopes into `sink`.
    pub(crate) fn eval<S: Sink>(
        &self,
        given: Given<'_>,
        y: &[f64],
        f: &mut [f64],
        sink: &mut S,
        scratch: &mut Scratch,
    ) {
        f.fill(0.0);
        self.gases(y, scratch);
        self.solve_wiring(given, y, scratch);
        self.edges(given.inputs, y, f, sink, scratch);
        self.walls(y, f, sink, scratch);
        self.pistons(given.inputs, y, f, sink, scratch);
        self.rotors(y, f, sink, scratch);
        self.followers(given, y, f, sink, scratch);
    }

    /// Pressure and temperature of every volume.
    pub(crate) fn gases(&self, y: &[f64], scratch: &mut Scratch) {
        scratch.gas.clear();
        scratch.volume.clear();
        for (k, v) in self.layout.volumes.iter().enumerate() {
            let (m, u) = (y[self.mass_at[k]], y[self.mass_at[k] + 1]);
            let m3 = v.at_rest_m3 + self.travel_at[k].map_or(0.0, |i| v.per_travel_m2 * y[i]);
            scratch.volume.push(m3);
            scratch.gas.push(Gas { p: (GAMMA - 1.0) * u / m3, t: u / (m * CV) });
        }
    }

    /// The volume of body `k` in state `y`, m³.
    pub(crate) fn volume_m3(&self, k: usize, y: &[f64]) -> f64 {
        let v = &self.layout.volumes[k];
        v.at_rest_m3 + self.travel_at[k].map_or(0.0, |i| v.per_travel_m2 * y[i])
    }

    /// State index of the mass of body `k`; the energy follows it.
    pub(crate) fn mass_index(&self, k: usize) -> usize {
        self.mass_at[k]
    }

    fn gas_at(&self, node: Node, y: &[f64], scratch: &Scratch) -> Gas {
        match node {
            Node::Volume(k) => scratch.gas[k],
            Node::Atmosphere => Gas { p: self.p_atm, t: y[0] },
            Node::Manifold(part) => {
                let p = self.engines.iter().find(|(e, _)| *e == part).map_or(self.p_atm, |(_, i)| y[*i]);
                Gas { p, t: y[0] }
            }
        }
    }

    fn edges<S: Sink>(&self, inputs: &Inputs, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &mut Scratch) {
        let n = self.n;
        scratch.edge_m.clear();
        for (edge, state) in self.air.edges.iter().zip(&self.edge_state) {
            let (a, b) = (self.gas_at(edge.a, y, scratch), self.gas_at(edge.b, y, scratch));
            let (flow, slope) = match &edge.soft {
                Some(soft) => (super::soft::flow(&edge.law, soft, a, b, self.p_atm), 0.0),
                None => self.edge_flow(&edge.law, a, b, inputs, state.map_or(0.0, |i| y[i])),
            };
            scratch.edge_m.push(flow.m);
            let up_is_a = 0.0 <= flow.m;
            let t_up = if up_is_a { a.t } else { b.t };
            let h = CP * t_up * flow.m;
            let rows = |node| match node {
                Node::Volume(k) => (self.mass_at[k], self.mass_at[k] + 1),
                _ => (n, n + 1),
            };
            let (ra, rb) = (rows(edge.a), rows(edge.b));
            f[ra.0] -= flow.m;
            f[rb.0] += flow.m;
            f[ra.1] -= h;
            f[rb.1] += h;
            if !S::WANTED {
                continue;
            }
            let mut both = |column: usize, dm: f64, dh: f64| {
                sink.add(ra.0, column, -dm);
                sink.add(rb.0, column, dm);
                sink.add(ra.1, column, -dh);
                sink.add(rb.1, column, dh);
            };
            for (node, gas, dp, dt, is_up) in
                [(edge.a, a, flow.dpa, flow.dta, up_is_a), (edge.b, b, flow.dpb, flow.dtb, !up_is_a)]
            {
                let (h_p, h_t) = (CP * t_up * dp, CP * (t_up * dt + if is_up { flow.m } else { 0.0 }));
                match node {
                    Node::Volume(k) => {
                        let (im, m3) = (self.mass_at[k], scratch.volume[k]);
                        let (t_m, t_u) = (-gas.t / y[im], gas.t / y[im + 1]);
                        let p_u = (GAMMA - 1.0) / m3;
                        both(im, dt * t_m, h_t * t_m);
                        both(im + 1, dp * p_u + dt * t_u, h_p * p_u + h_t * t_u);
                        if let Some(ix) = self.travel_at[k] {
                            let p_x = -gas.p / m3 * self.layout.volumes[k].per_travel_m2;
                            both(ix, dp * p_x, h_p * p_x);
                        }
                    }
                    Node::Atmosphere => both(0, dt, h_t),
                    Node::Manifold(part) => {
                        both(0, dt, h_t);
                        if let Some((_, i)) = self.engines.iter().find(|(e, _)| *e == part) {
                            both(*i, dp, h_p);
                        }
                    }
                }
            }
            if let Some(i) = state {
                both(*i, slope, CP * t_up * slope);
            }
        }
    }

    /// `state` is the travel or speed that the law depends on besides the air.
    fn edge_flow(&self, law: &Law, a: Gas, b: Gas, inputs: &Inputs, state: f64) -> (Flow, f64) {
        let mut around = Around {
            engine_runs: inputs.engine != EngineState::Stopped,
            pedal_n: inputs.pedal_n,
            travel: 0.0,
            booster: None,
            omega: 0.0,
            strokes_per_s: 0.0,
            released: false,
            p_atm: self.p_atm,
        };
        match law {
            Law::Admit { part, .. } | Law::Equalise { part, .. } => {
                if let Some(at) = self.boosters.iter().find(|b| b.part == *part) {
                    around.booster = Some(&at.numbers);
                    around.travel = state;
                }
            }
            Law::Suction { .. } => around.omega = state,
            Law::Vent { part, .. } => around.released = inputs.hands[*part as usize].pressed,
            Law::Strokes { part, .. } => around.strokes_per_s = inputs.hands[*part as usize].strokes_per_s,
            _ => {}
        }
        flow(law, a, b, &around)
    }

    fn walls<S: Sink>(&self, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &Scratch) {
        let heat_row = self.n + 2;
        for (k, v) in self.layout.volumes.iter().enumerate() {
            let im = self.mass_at[k];
            let t = scratch.gas[k].t;
            let q = v.h_a * (y[0] - t);
            f[im + 1] += q;
            f[heat_row] += q;
            if S::WANTED {
                for row in [im + 1, heat_row] {
                    sink.add(row, 0, v.h_a);
                    sink.add(row, im, v.h_a * t / y[im]);
                    sink.add(row, im + 1, -v.h_a * t / y[im + 1]);
                }
            }
        }
    }
}
