//! The right-hand side of the circuit's equations and its slopes, evaluated together.
//!
//! State y as in [`Layout`]; behind it four ledger rows (mass and enthalpy given to the outside, heat
//! taken from walls, work done by the air) that obey the same step, so that what the volumes lose is what
//! the ledgers gain to the last bits, however well the step converged.

use super::air_net::{AirNet, Around, Law, Node, flow};
use super::layout::{Chamber, Layout, Var};
use super::wiring::{PoleKind, PoleState, Solved, Wiring};
use super::{Flags, Inputs};
use crate::air::{CP, CV, Day, GAMMA, ZERO_CELSIUS_K};
use crate::assembly::Assembly;
use crate::flow::{Flow, Gas};
use crate::parts::PartKind;
use crate::parts::booster::Booster;
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;
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
struct PumpAt {
    part: u16,
    numbers: VacuumPump,
    winding: usize,
    case: usize,
    speed: usize,
    inlet: usize,
    pole: usize,
    /// Compression torque against the atmosphere with a perfect vacuum at the inlet, N·m, and its slope
    /// over the inlet pressure, N·m/Pa.
    compression: (f64, f64),
}

#[derive(Clone, Debug)]
struct BoosterAt {
    part: u16,
    numbers: Booster,
    travel: usize,
    front: usize,
    rear: usize,
}

/// A compiled assembly: structure and numbers, no state.
#[derive(Clone, Debug)]
pub(crate) struct Model {
    pub(crate) layout: Layout,
    pub(crate) air: AirNet,
    pub(crate) wiring: Wiring,
    /// Number of state variables.
    pub(crate) n: usize,
    p_atm: f64,
    /// Index of the mass in the state, per volume; its energy follows.
    mass_at: Vec<usize>,
    /// Index of the travel that moves a volume's wall, per volume.
    travel_at: Vec<Option<usize>>,
    pumps: Vec<PumpAt>,
    boosters: Vec<BoosterAt>,
    /// Per edge, the index of the state (travel or speed) it depends on besides the air.
    edge_state: Vec<Option<usize>>,
    /// Engine part and index of its manifold pressure.
    engines: Vec<(u16, usize)>,
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
    volume: Vec<f64>,
    pub(crate) poles: Vec<PoleState>,
    pub(crate) solved: Solved,
    seen: Vec<f64>,
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
                    part: part_idx,
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
            let (flow, slope) = self.edge_flow(&edge.law, a, b, inputs, y);
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

    fn edge_flow(&self, law: &Law, a: Gas, b: Gas, inputs: &Inputs, y: &[f64]) -> (Flow, f64) {
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
                    around.travel = y[at.travel];
                }
            }
            Law::Suction { part, .. } => {
                around.omega = self.pumps.iter().find(|p| p.part == *part).map_or(0.0, |p| y[p.speed]);
            }
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

    fn pistons<S: Sink>(&self, inputs: &Inputs, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &Scratch) {
        let work_row = self.n + 3;
        for b in &self.boosters {
            let p = &b.numbers;
            let x = y[b.travel];
            let (area, c) = (p.area_m2(), p.damping_kns_per_m * 1e3);
            let (pf, pr) = (scratch.gas[b.front].p, scratch.gas[b.rear].p);
            let (vf, vr) = (scratch.volume[b.front], scratch.volume[b.rear]);
            let (spring, d_spring) = p.spring_force(x);
            let (brake, d_brake) = p.brake_force(x);
            let (end, d_end) = end_stop(p, x);
            let speed = (inputs.pedal_n * p.pedal_ratio + area * (pr - pf) - spring - brake - end) / c;
            let (uf, ur) = (self.mass_at[b.front] + 1, self.mass_at[b.rear] + 1);
            f[b.travel] += speed;
            f[uf] += pf * area * speed;
            f[ur] -= pr * area * speed;
            f[work_row] += (pr - pf) * area * speed;
            if !S::WANTED {
                continue;
            }
            let (pf_u, pr_u) = ((GAMMA - 1.0) / vf, (GAMMA - 1.0) / vr);
            let (pf_x, pr_x) = (pf * area / vf, -pr * area / vr);
            let slopes = [
                (uf, -area / c * pf_u, pf_u, 0.0),
                (ur, area / c * pr_u, 0.0, pr_u),
                (b.travel, (area * (pr_x - pf_x) - d_spring - d_brake - d_end) / c, pf_x, pr_x),
            ];
            for (column, d_speed, d_pf, d_pr) in slopes {
                sink.add(b.travel, column, d_speed);
                sink.add(uf, column, area * (d_pf * speed + pf * d_speed));
                sink.add(ur, column, -area * (d_pr * speed + pr * d_speed));
                sink.add(work_row, column, area * ((d_pr - d_pf) * speed + (pr - pf) * d_speed));
            }
        }
    }

    fn rotors<S: Sink>(&self, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &mut Scratch) {
        /// Speed at which the load has come up fully, so that a pump at rest is not driven backwards.
        const OMEGA_SMALL: f64 = 5.0;
        for pump in &self.pumps {
            let p = &pump.numbers;
            let omega = y[pump.speed];
            let (tw, tc) = (y[pump.winding], y[pump.case]);
            let pole = &self.wiring.poles[pump.pole];
            let s = scratch.poles[pump.pole];
            let v = scratch.solved.v[pole.node_a as usize] - scratch.solved.v[pole.node_b as usize];
            let i = s.g * (v - s.emf);
            let k = p.motor_constant(tw);
            let gas = scratch.gas[pump.inlet];
            let compression_p = pump.compression.1;
            let compression = pump.compression.0 + compression_p * gas.p;
            let (friction, friction_w) = p.friction_torque(omega);
            let th = crate::math::tanh(omega / OMEGA_SMALL);
            let th_w = (1.0 - th * th) / OMEGA_SMALL;
            let inertia = p.inertia_kgcm2 * 1e-4;
            f[pump.speed] += (k * i - compression * th - friction) / inertia;
            let copper = i * i / s.g.max(1e-12);
            let shaft = friction * omega + 0.5 * compression * th * omega;
            let across = p.winding_w_per_k * (tw - tc);
            f[pump.winding] += (copper - across) / p.winding_j_per_k;
            f[pump.case] += (shaft + across - p.case_w_per_k * (tc - y[0])) / p.case_j_per_k;
            if !S::WANTED {
                continue;
            }
            // The network answers a change of the motor's own voltage k ω through its inner resistance.
            let seen = self.wiring.seen_from(&scratch.solved, pole.node_a, pole.node_b, &mut scratch.seen);
            let i_w = -s.g * k * (1.0 - s.g * seen);
            let iu = self.mass_at[pump.inlet] + 1;
            let p_u = gas.p / y[iu];
            sink.add(pump.speed, pump.speed, (k * i_w - compression * th_w - friction_w) / inertia);
            sink.add(pump.speed, iu, -compression_p * p_u * th / inertia);
            sink.add(pump.winding, pump.speed, 2.0 * i * i_w / s.g.max(1e-12) / p.winding_j_per_k);
            sink.add(pump.winding, pump.winding, -p.winding_w_per_k / p.winding_j_per_k);
            sink.add(pump.winding, pump.case, p.winding_w_per_k / p.winding_j_per_k);
            let shaft_w = friction + friction_w * omega + 0.5 * compression * (th + th_w * omega);
            sink.add(pump.case, pump.speed, shaft_w / p.case_j_per_k);
            sink.add(pump.case, pump.winding, p.winding_w_per_k / p.case_j_per_k);
            sink.add(pump.case, pump.case, -(p.winding_w_per_k + p.case_w_per_k) / p.case_j_per_k);
            sink.add(pump.case, 0, p.case_w_per_k / p.case_j_per_k);
        }
    }

    /// Everything that follows something else with a lag and hardly acts back.
    fn followers<S: Sink>(
        &self,
        given: Given<'_>,
        y: &[f64],
        f: &mut [f64],
        sink: &mut S,
        scratch: &Scratch,
    ) {
        let Given { assembly, inputs, .. } = given;
        /// Time in which the workshop takes on the air temperature outside, s.
        const ROOM_TAU_S: f64 = 5_400.0;
        for (row, var) in self.layout.vars.iter().enumerate() {
            match *var {
                Var::Surroundings => {
                    f[row] += (inputs.surroundings_c + ZERO_CELSIUS_K - y[row]) / ROOM_TAU_S;
                    sink.add(row, row, -1.0 / ROOM_TAU_S);
                }
                Var::Manifold(part) => {
                    let PartKind::Engine(e) = &assembly.parts[part as usize].kind else { continue };
                    f[row] += (e.target_pa(inputs.engine, self.p_atm) - y[row]) / e.lag_s;
                    sink.add(row, row, -1.0 / e.lag_s);
                }
                Var::Pointer(part) => {
                    let lag = match &assembly.parts[part as usize].kind {
                        PartKind::VacuumGauge(g) => g.lag_s,
                        PartKind::HandPump(h) => h.lag_s,
                        _ => continue,
                    };
                    let Some(k) = self.layout.volume_of(part, Chamber::Body) else { continue };
                    f[row] += (scratch.gas[k].p - self.p_atm - y[row]) / lag;
                    sink.add(row, row, -1.0 / lag);
                    sink.add(row, self.mass_at[k] + 1, (GAMMA - 1.0) / scratch.volume[k] / lag);
                }
                Var::Filament(part) => {
                    let PartKind::TestLamp(lamp) = &assembly.parts[part as usize].kind else { continue };
                    let (v, _) = self.pole_of(part, scratch);
                    let (r, r_t) = lamp.resistance_ohm(y[row]);
                    let (loss, loss_t) = lamp.radiated_w(y[row], y[0]);
                    let c = lamp.filament_j_per_k();
                    f[row] += (v * v / r - loss) / c;
                    sink.add(row, row, (-v * v / (r * r) * r_t - loss_t) / c);
                }
                Var::Charge(part) => {
                    let PartKind::Battery(b) = &assembly.parts[part as usize].kind else { continue };
                    let (_, i) = self.pole_of(part, scratch);
                    f[row] += b.charge_rate_per_s(y[row], i);
                    sink.add(row, row, 0.0);
                }
                Var::FuseHeat(part) => {
                    let rated = fuse_rating_a(&assembly.parts[part as usize].kind);
                    let (_, i) = self.pole_of(part, scratch);
                    let passes = match &assembly.parts[part as usize].kind {
                        PartKind::Multimeter(_) => inputs.hands[part as usize].mode == MeterMode::Ampere,
                        _ => true,
                    };
                    let load = if passes { i / rated } else { 0.0 };
                    let tau = crate::parts::electrical::FUSE_TAU_S;
                    f[row] += (load * load - y[row]) / tau;
                    sink.add(row, row, -1.0 / tau);
                }
                Var::Winding(_) | Var::Case(_) | Var::Speed(_) => {}
                Var::Mass(_) | Var::Energy(_) | Var::Travel(_) => {}
            }
        }
    }

    /// Voltage across and current through the (first) two-pole of a part.
    pub(crate) fn pole_of(&self, part: u16, scratch: &Scratch) -> (f64, f64) {
        self.wiring.poles.iter().zip(&scratch.poles).find(|(p, _)| p.part == part).map_or(
            (0.0, 0.0),
            |(p, s)| {
                let v = scratch.solved.v[p.node_a as usize] - scratch.solved.v[p.node_b as usize];
                (v, s.g * (v - s.emf))
            },
        )
    }

    pub(crate) fn solve_wiring(&self, given: Given<'_>, y: &[f64], scratch: &mut Scratch) {
        let Given { assembly, inputs, flags } = given;
        scratch.poles.clear();
        for pole in &self.wiring.poles {
            let part = pole.part as usize;
            let value = |var| self.layout.index(var).map_or(0.0, |i| y[i]);
            let flag = flags[part];
            let hand = inputs.hands[part];
            let closed = |is: bool, ohm: f64| if is { 1.0 / ohm } else { 0.0 };
            let (g, emf) = match (&assembly.parts[part].kind, pole.kind) {
                (PartKind::Battery(b), _) => (
                    1e3 / (b.internal_mohm + b.aged_mohm),
                    crate::parts::electrical::Battery::open_circuit_v(value(Var::Charge(pole.part))),
                ),
                (PartKind::Supply(s), _) => (1e3 / s.source_mohm, s.volt),
                (PartKind::Engine(e), _) => {
                    (closed(inputs.engine != EngineState::Stopped, e.alternator_ohm), e.alternator_v)
                }
                (PartKind::Fuse(p), _) => (closed(!flag.melted, p.mohm * 1e-3 + p.corroded_ohm), 0.0),
                (PartKind::Relay(p), PoleKind::RelayContact) => {
                    (closed(flag.closed, p.contact_mohm * 1e-3 + p.burnt_ohm) + p.weld_s, 0.0)
                }
                (PartKind::Relay(p), _) => (1.0 / (p.coil_ohm + p.coil_open_ohm), 0.0),
                (PartKind::KeySwitch(p), _) => (closed(inputs.key_on, p.contact_mohm * 1e-3), 0.0),
                (PartKind::Wire(p), _) => (1.0 / p.resistance_ohm(), 0.0),
                (PartKind::VacuumSwitch(p), _) => {
                    (closed(flag.closed, p.contact_ohm + p.burnt_ohm) + p.weld_s, 0.0)
                }
                (PartKind::VacuumPump(p), _) => {
                    let t = value(Var::Winding(pole.part));
                    (1.0 / p.resistance_ohm(t), p.motor_constant(t) * value(Var::Speed(pole.part)))
                }
                (PartKind::TestLamp(p), _) => {
                    (1.0 / p.resistance_ohm(value(Var::Filament(pole.part))).0, 0.0)
                }
                (PartKind::Multimeter(p), _) => match hand.mode {
                    MeterMode::Off => (0.0, 0.0),
                    MeterMode::Volt => (1e-6 / p.input_megohm, 0.0),
                    MeterMode::Ohm => (1e-3 / p.ohm_source_kohm, p.ohm_source_v),
                    MeterMode::Ampere => (closed(!flag.melted, p.shunt_mohm * 1e-3 + p.leads_ohm), 0.0),
                },
                (PartKind::PushLead(p), _) => (closed(hand.pressed && !flag.melted, p.mohm * 1e-3), 0.0),
                _ => (0.0, 0.0),
            };
            scratch.poles.push(PoleState { g, emf });
        }
        self.wiring.solve(&scratch.poles, &mut scratch.solved);
    }
}

/// Rated current of the fuse in a part, A.
fn fuse_rating_a(kind: &PartKind) -> f64 {
    match kind {
        PartKind::Fuse(p) => p.rating_a,
        PartKind::Multimeter(p) => p.fuse_a,
        PartKind::PushLead(p) => p.fuse_a,
        _ => f64::INFINITY,
    }
}

/// Force of the wall the piston meets when the front chamber is all but used up, N, and its slope.
fn end_stop(p: &Booster, x: f64) -> (f64, f64) {
    const STOP_N_PER_M: f64 = 2e6;
    let over = x - 0.92 * p.front_l * 1e-3 / p.area_m2();
    if 0.0 < over { (STOP_N_PER_M * over, STOP_N_PER_M) } else { (0.0, 0.0) }
}
