//! The right-hand side of the circuit's equations and its slopes, evaluated together.
//!
//! State y as in [`Layout`]; behind it four ledger rows (mass and enthalpy given to the outside, heat
//! taken from walls, work done by the air) that obey the same step, so that what the volumes lose is what
//! the ledgers gain to the last bits, however well the step converged.

use super::air_net::{AirNet, Around, Edge, Law, Node, flow};
use super::control::Allowance;
use super::electrics::PoleLaw;
use super::layout::{Chamber, Layout, Var};
use super::linear::Column;
use super::machines::Follower;
use super::switching::Switch;
use super::tangent::{Follows, Tangent, Way};
use super::wiring::{PoleState, Solved, Wiring};
use super::{Flags, Inputs};
use crate::air::{CP, CV, Day, GAMMA};
use crate::assembly::Assembly;
use crate::flow::Gas;
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
    /// Adds a slope at a place: row · n + column.
    fn add_at(&mut self, place: u32, value: f64);
    /// Number of columns.
    fn n(&self) -> usize;
    /// Adds a slope.
    #[inline]
    fn add(&mut self, row: usize, column: usize, value: f64) {
        self.add_at((row * self.n() + column) as u32, value);
    }
}

/// Wants no slopes.
pub(crate) struct NoSlopes;
impl Sink for NoSlopes {
    const WANTED: bool = false;
    #[inline]
    fn add_at(&mut self, _: u32, _: f64) {}
    #[inline]
    fn n(&self) -> usize {
        0
    }
}

/// Collects the places (row, column) of `n` columns that are ever written.
pub(crate) struct Pattern {
    pub(crate) n: usize,
    pub(crate) places: Vec<(usize, usize)>,
}
impl Sink for Pattern {
    const WANTED: bool = true;
    fn add_at(&mut self, place: u32, _: f64) {
        self.places.push((place as usize / self.n, place as usize % self.n));
    }
    fn n(&self) -> usize {
        self.n
    }
}

/// Adds into a row-major matrix of `n` columns.
pub(crate) struct Dense<'a> {
    pub(crate) n: usize,
    pub(crate) a: &'a mut [f64],
}
impl Sink for Dense<'_> {
    const WANTED: bool = true;
    #[inline]
    fn add_at(&mut self, place: u32, value: f64) {
        self.a[place as usize] += value;
    }
    #[inline]
    fn n(&self) -> usize {
        self.n
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

/// One end of a way for air, looked up once.
#[derive(Clone, Copy, Debug)]
pub(super) struct End {
    /// Its air, by its number in [`Scratch::gas`].
    gas: usize,
    /// Row that the mass comes from or goes to, and that of the enthalpy: a volume's or a ledger's.
    pub(super) mass: usize,
    pub(super) enthalpy: usize,
    /// State that the air's pressure and temperature follow from.
    from: From,
}

/// What the air at an end follows from.
#[derive(Clone, Copy, Debug)]
enum From {
    /// The volume of this number, its mass at this index: mass, energy, and the travel that moves its wall.
    Volume {
        k: usize,
        mass: usize,
        travel: Option<usize>,
        by_mass: Places,
        by_energy: Places,
        by_travel: Option<Places>,
    },
    /// The room's temperature.
    Room(Places),
    /// The room's temperature and the manifold pressure.
    Manifold { pressure: usize, by_room: Places, by_pressure: Places },
}

impl End {
    /// Change of pressure and temperature with the increment `k` of the state.
    #[inline]
    pub(super) fn change(&self, follows: Follows, k: &Column) -> (f64, f64) {
        match self.from {
            From::Volume { mass, travel, .. } => (
                follows.p_u * k[mass + 1] + travel.map_or(0.0, |i| follows.p_x * k[i]),
                follows.t_m * k[mass] + follows.t_u * k[mass + 1],
            ),
            From::Room(_) => (0.0, k[0]),
            From::Manifold { pressure, .. } => (k[pressure], k[0]),
        }
    }
}

/// Where the slopes of a way's four rows over one state variable stand in the Jacobian: mass at a and b,
/// enthalpy at a and b.
type Places = [u32; 4];

/// A compiled assembly: structure and numbers, no state.
#[derive(Clone, Debug)]
pub(crate) struct Model {
    pub(crate) layout: Layout,
    pub(crate) air: AirNet,
    pub(crate) wiring: Wiring,
    /// Number of state variables.
    pub(crate) n: usize,
    pub(super) p_atm: f64,
    /// What each state variable must be above: nought, or nothing.
    pub(super) least: Vec<f64>,
    /// The error a step may make in each state variable.
    pub(super) allowances: Vec<Allowance>,
    /// Rows of mass, energy and ledgers.
    pub(super) conserved: Vec<usize>,
    /// What truly switches.
    pub(super) switches: Vec<Switch>,
    /// Index of the mass in the state, per volume; its energy follows.
    pub(super) mass_at: Vec<usize>,
    /// Index of the travel that moves a volume's wall, per volume.
    pub(super) travel_at: Vec<Option<usize>>,
    pub(super) pumps: Vec<PumpAt>,
    pub(super) boosters: Vec<BoosterAt>,
    /// Per edge, the index of the state (travel or speed) it depends on besides the air.
    pub(super) edge_state: Vec<Option<usize>>,
    /// Index of each engine's manifold pressure.
    engines: Vec<usize>,
    /// Per edge, its ends a and b.
    pub(super) ends: Vec<[End; 2]>,
    /// Per edge, where the slopes over its travel or speed stand.
    by_state: Vec<Option<Places>>,
    /// Per two-pole, what it is worth.
    pub(super) pole_laws: Vec<PoleLaw>,
    /// What follows something else with a lag, with its row.
    pub(super) followers: Vec<(usize, Follower)>,
}

/// What a model is evaluated under: hands and feet, contacts and fuses.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub(crate) inputs: &'a Inputs,
    pub(crate) flags: &'a [Flags],
}

/// Buffers and by-products of one evaluation.
#[derive(Clone, Debug, Default)]
pub(crate) struct Scratch {
    /// Of every volume, then of the atmosphere, then of every manifold.
    pub(crate) gas: Vec<Gas>,
    pub(super) volume: Vec<f64>,
    /// What `solved` was solved for.
    pub(crate) poles: Vec<PoleState>,
    pub(super) next_poles: Vec<PoleState>,
    pub(crate) solved: Solved,
    /// Of the state at which slopes were last wanted.
    pub(super) tangent: Tangent,
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
        let edge_state: Vec<Option<usize>> = air
            .edges
            .iter()
            .map(|e| match e.law {
                Law::Admit { part, .. } | Law::Equalise { part, .. } => Some(at(Var::Travel(part))),
                Law::Suction { part, .. } => Some(at(Var::Speed(part))),
                _ => None,
            })
            .collect();
        let mass_at: Vec<usize> = mass_at;
        let travel_at: Vec<Option<usize>> = travel_at;
        let (n, n_volumes) = (layout.vars.len(), layout.volumes.len());
        let rows = |node| match node {
            Node::Volume(k) => (mass_at[k], mass_at[k] + 1),
            Node::Atmosphere | Node::Manifold(_) => (n, n + 1),
        };
        let places = |edge: &Edge, column: usize| {
            let (a, b) = (rows(edge.a), rows(edge.b));
            [a.0, b.0, a.1, b.1].map(|row| (row * n + column) as u32)
        };
        let end = |edge: &Edge, node| {
            let (mass, enthalpy) = rows(node);
            let at = |column| places(edge, column);
            let (gas, from) = match node {
                Node::Volume(k) => {
                    let (mass, travel) = (mass_at[k], travel_at[k]);
                    let (by_mass, by_energy) = (at(mass), at(mass + 1));
                    (k, From::Volume { k, mass, travel, by_mass, by_energy, by_travel: travel.map(at) })
                }
                Node::Atmosphere => (n_volumes, From::Room(at(0))),
                Node::Manifold(part) => match engines.iter().position(|(e, _)| *e == part) {
                    Some(e) => {
                        let pressure = engines[e].1;
                        let by_pressure = at(pressure);
                        (n_volumes + 1 + e, From::Manifold { pressure, by_room: at(0), by_pressure })
                    }
                    None => (n_volumes, From::Room(at(0))),
                },
            };
            End { gas, mass, enthalpy, from }
        };
        let ends = air.edges.iter().map(|e| [end(e, e.a), end(e, e.b)]).collect();
        let by_state =
            air.edges.iter().zip(&edge_state).map(|(e, state)| state.map(|i| places(e, i))).collect();
        let pole_laws = wiring.poles.iter().map(|p| PoleLaw::of(p, assembly, &layout, &pumps)).collect();
        let followers = Follower::all(assembly, &layout, &wiring);
        let engines = engines.iter().map(|(_, i)| *i).collect();
        let conserved = mass_at.iter().flat_map(|i| [*i, i + 1]).chain(n..n + N_LEDGERS).collect();
        let least = layout.vars.iter().map(Var::least).collect();
        let allowances = layout.vars.iter().map(|v| Allowance::of(*v)).collect();
        let switches = Switch::all(assembly, &layout, &wiring);
        Self {
            n,
            p_atm: day.pressure().pa(),
            least,
            conserved,
            allowances,
            switches,
            mass_at,
            travel_at,
            pumps,
            boosters,
            edge_state,
            engines,
            ends,
            by_state,
            pole_laws,
            followers,
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
        if S::WANTED {
            scratch.tangent.clear();
        }
        self.gases(y, scratch);
        self.solve_wiring(given, y, scratch);
        self.edges(given.inputs, y, f, sink, scratch);
        self.walls(y, f, sink, scratch);
        self.pistons(given.inputs, y, f, sink, scratch);
        self.rotors(y, f, sink, scratch);
        self.followers(given, y, f, sink, scratch);
    }

    /// Pressure and temperature of all air.
    pub(crate) fn gases(&self, y: &[f64], scratch: &mut Scratch) {
        scratch.gas.clear();
        scratch.volume.clear();
        for k in 0..self.layout.volumes.len() {
            let m3 = self.volume_m3(k, y);
            scratch.volume.push(m3);
            scratch.gas.push(self.gas_of(k, m3, y));
        }
        scratch.gas.push(Gas { p: self.p_atm, t: y[0] });
        scratch.gas.extend(self.engines.iter().map(|i| Gas { p: y[*i], t: y[0] }));
    }

    /// Pressure and temperature of body `k` of `m3` cubic metres.
    #[inline]
    pub(crate) fn gas_of(&self, k: usize, m3: f64, y: &[f64]) -> Gas {
        let (m, u) = (y[self.mass_at[k]], y[self.mass_at[k] + 1]);
        Gas { p: (GAMMA - 1.0) * u / m3, t: u / (m * CV) }
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

    fn edges<S: Sink>(&self, inputs: &Inputs, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &mut Scratch) {
        let around = Around {
            engine_runs: inputs.engine != EngineState::Stopped,
            pedal_n: inputs.pedal_n,
            boosters: &self.boosters,
            hands: &inputs.hands,
            p_atm: self.p_atm,
        };
        scratch.edge_m.clear();
        let states = self.edge_state.iter().zip(&self.by_state);
        for ((edge, (state, by_state)), [end_a, end_b]) in self.air.edges.iter().zip(states).zip(&self.ends) {
            let (a, b) = (scratch.gas[end_a.gas], scratch.gas[end_b.gas]);
            let (flow, slope) = match &edge.soft {
                Some(soft) => (super::soft::flow(&edge.law, soft, a, b, self.p_atm), 0.0),
                None => flow(&edge.law, a, b, &around, state.map_or(0.0, |i| y[i])),
            };
            scratch.edge_m.push(flow.m);
            let up_is_a = 0.0 <= flow.m;
            let t_up = if up_is_a { a.t } else { b.t };
            let h = CP * t_up * flow.m;
            f[end_a.mass] -= flow.m;
            f[end_b.mass] += flow.m;
            f[end_a.enthalpy] -= h;
            f[end_b.enthalpy] += h;
            if !S::WANTED {
                continue;
            }
            let follows = |end: &End, gas: Gas| match end.from {
                From::Volume { k, mass, .. } => Follows {
                    p_u: (GAMMA - 1.0) / scratch.volume[k],
                    p_x: -gas.p / scratch.volume[k] * self.layout.volumes[k].per_travel_m2,
                    t_m: -gas.t / y[mass],
                    t_u: gas.t / y[mass + 1],
                },
                From::Room(_) | From::Manifold { .. } => Follows::default(),
            };
            let ends = [follows(end_a, a), follows(end_b, b)];
            scratch.tangent.ways.push(Way { flow, slope, t_up, up_is_a, ends });
            let mut both = |[mass_a, mass_b, enthalpy_a, enthalpy_b]: Places, dm: f64, dh: f64| {
                sink.add_at(mass_a, -dm);
                sink.add_at(mass_b, dm);
                sink.add_at(enthalpy_a, -dh);
                sink.add_at(enthalpy_b, dh);
            };
            for (end, follows, dp, dt, is_up) in [
                (end_a, ends[0], flow.dpa, flow.dta, up_is_a),
                (end_b, ends[1], flow.dpb, flow.dtb, !up_is_a),
            ] {
                let (h_p, h_t) = (CP * t_up * dp, CP * (t_up * dt + if is_up { flow.m } else { 0.0 }));
                match end.from {
                    From::Volume { by_mass, by_energy, by_travel, .. } => {
                        let Follows { p_u, p_x, t_m, t_u } = follows;
                        both(by_mass, dt * t_m, h_t * t_m);
                        both(by_energy, dp * p_u + dt * t_u, h_p * p_u + h_t * t_u);
                        if let Some(by_travel) = by_travel {
                            both(by_travel, dp * p_x, h_p * p_x);
                        }
                    }
                    From::Room(by_room) => both(by_room, dt, h_t),
                    From::Manifold { by_room, by_pressure, .. } => {
                        both(by_room, dt, h_t);
                        both(by_pressure, dp, h_p);
                    }
                }
            }
            if let Some(by_state) = by_state {
                both(*by_state, slope, CP * t_up * slope);
            }
        }
    }

    fn walls<S: Sink>(&self, y: &[f64], f: &mut [f64], sink: &mut S, scratch: &mut Scratch) {
        let heat_row = self.n + 2;
        for (k, v) in self.layout.volumes.iter().enumerate() {
            let im = self.mass_at[k];
            let t = scratch.gas[k].t;
            let q = v.h_a * (y[0] - t);
            f[im + 1] += q;
            f[heat_row] += q;
            if S::WANTED {
                scratch.tangent.walls.push((-t / y[im], t / y[im + 1]));
                for row in [im + 1, heat_row] {
                    sink.add(row, 0, v.h_a);
                    sink.add(row, im, v.h_a * t / y[im]);
                    sink.add(row, im + 1, -v.h_a * t / y[im + 1]);
                }
            }
        }
    }
}
