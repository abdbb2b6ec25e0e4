//! The right-hand side of the circuit's equations and its slopes, evaluated together.
//!
//! State y as in [`Layout`]; behind it four ledger rows (mass and enthalpy given to the outside, heat
//! taken from walls, work done by the air) that obey the same step, so that what the volumes lose is what
//! the ledgers gain to the last bits, however well the step converged.

use super::air_net::{AirNet, Around, AtHand, Edge, Law, Node, flow};
use super::control::Allowance;
use super::electrics::PoleLaw;
use super::layout::{Chamber, Layout, Var, Volume};
use super::linear::{Column, MOST, Plan};
use super::machines::Follower;
use super::places::{OtherPlaces, Place, WayPlaces, at_first};
use super::soft::Soft;
use super::switching::Switch;
use super::tangent::{Follows, Tangent, Way};
use super::wiring::{PoleState, Solved, Wiring};
use super::{Flags, Inputs};
use crate::air::{CP, CV, Day, GAMMA};
use crate::assembly::Assembly;
use crate::flow::Gas;
use crate::lanes::{Real, spread};
use crate::parts::PartKind;
use crate::parts::booster::BoosterLaw;
use crate::parts::vacuum_pump::MotorLaw;

/// Rows behind the state: mass out, enthalpy out, heat in, work out.
pub(crate) const N_LEDGERS: usize = 4;

/// Receives slopes ∂f_row/∂y_column.
pub(crate) trait Sink<R> {
    /// Whether slopes are wanted at all.
    const WANTED: bool;
    /// Adds a slope to an entry of the model's [`Plan`].
    fn add(&mut self, entry: Place, value: R);
}

/// Wants no slopes.
pub(crate) struct NoSlopes;
impl<R> Sink<R> for NoSlopes {
    const WANTED: bool = false;
    #[inline]
    fn add(&mut self, _: Place, _: R) {}
}

/// Adds into the entries of a [`Plan`].
pub(crate) struct Entries<'a, R = f64>(pub(crate) &'a mut [R]);
impl<R: Real> Sink<R> for Entries<'_, R> {
    const WANTED: bool = true;
    #[inline]
    fn add(&mut self, entry: Place, value: R) {
        self.0[usize::from(entry)] += value;
    }
}

#[derive(Clone, Debug)]
pub(super) struct PumpAt {
    pub(super) winding: usize,
    pub(super) case: usize,
    pub(super) speed: usize,
    pub(super) inlet: usize,
    pub(super) pole: usize,
}

#[derive(Clone, Debug)]
pub(super) struct BoosterAt {
    pub(super) part: u16,
    pub(super) travel: usize,
    pub(super) front: usize,
    pub(super) rear: usize,
}

/// A way for air, looked up once. Small numbers: all ways together are run through four times a step.
#[derive(Clone, Copy, Debug)]
pub(super) struct WayAt {
    /// Ends a and b.
    pub(super) ends: [End; 2],
    /// The state (travel or speed) it depends on besides the air, and where the slopes over it stand.
    pub(super) state: Option<(u8, WayPlaces)>,
    /// Which of [`Numbers::soft`] are its ends, if they are soft.
    soft: Option<u8>,
    /// Which of [`Held::hands`] it is in, if in any.
    hand: Option<u8>,
}

/// One end of a way for air.
#[derive(Clone, Copy, Debug)]
pub(super) struct End {
    /// Its air, by its number in [`Scratch::gas`].
    gas: u8,
    /// Row that the mass comes from or goes to, and that of the enthalpy: a volume's or a ledger's.
    pub(super) mass: u8,
    pub(super) enthalpy: u8,
    /// State that the air's pressure and temperature follow from.
    pub(super) from: From,
}

/// What the air at an end follows from.
#[derive(Clone, Copy, Debug)]
pub(super) enum From {
    /// The volume of this number, its mass at this index: mass, energy, and the travel that moves its wall.
    Volume { k: u8, mass: u8, travel: Option<(u8, WayPlaces)>, by_mass: WayPlaces, by_energy: WayPlaces },
    /// The room's temperature.
    Room(WayPlaces),
    /// The room's temperature and the manifold pressure.
    Manifold { pressure: u8, by_room: WayPlaces, by_pressure: WayPlaces },
}

impl End {
    /// Change of pressure and temperature with the increment `k` of the state.
    #[inline]
    pub(super) fn change<R: Real>(&self, follows: &[Follows<R>], k: &Column<R>) -> (R, R) {
        let zero = R::all(0.0);
        match self.from {
            From::Volume { k: body, mass, travel, .. } => {
                let Follows { p_u, p_x, t_m, t_u } = follows[usize::from(body)];
                let by_travel = travel.map_or(zero, |(i, _)| p_x * k[usize::from(i)]);
                let (mass, energy) = (k[usize::from(mass)], k[usize::from(mass) + 1]);
                (p_u * energy + by_travel, t_m * mass + t_u * energy)
            }
            From::Room(_) => (zero, k[0]),
            From::Manifold { pressure, .. } => (k[usize::from(pressure)], k[0]),
        }
    }
}

/// A body of air in numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Body<R = f64> {
    /// Volume at rest, m³.
    pub(super) at_rest_m3: R,
    /// Change per metre of travel, m².
    pub(super) per_travel_m2: R,
    /// Heat transfer to the wall, W/K.
    pub(super) h_a: R,
}

spread!(Body { at_rest_m3, per_travel_m2, h_a });

/// A pump's rotor in numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rotor<R = f64> {
    pub(super) motor: MotorLaw<R>,
    /// Compression torque against the atmosphere with a perfect vacuum at the inlet, N·m.
    pub(super) compression: R,
    /// Its slope over the inlet pressure, N·m/Pa.
    pub(super) compression_p: R,
}

spread!(Rotor { motor, compression, compression_p });

/// The numbers of a circuit's laws, or of several circuits of one shape side by side.
#[derive(Clone, Debug)]
pub(crate) struct Numbers<R = f64> {
    /// Pressure of the day, Pa.
    pub(super) p_atm: R,
    pub(super) bodies: Vec<Body<R>>,
    /// Per way for air.
    pub(super) laws: Vec<Law<R>>,
    /// Per way for air with soft ends, those.
    pub(super) soft: Vec<[Soft<R>; 2]>,
    pub(super) boosters: Vec<BoosterLaw<R>>,
    pub(super) rotors: Vec<Rotor<R>>,
}

spread!(Numbers { p_atm, bodies, laws, soft, boosters, rotors });

/// A compiled assembly: structure and numbers, no state.
#[derive(Clone, Debug)]
pub(crate) struct Model {
    pub(crate) layout: Layout,
    pub(crate) air: AirNet,
    pub(crate) wiring: Wiring,
    pub(crate) numbers: Numbers,
    /// Number of state variables.
    pub(crate) n: usize,
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
    /// Parts that hands work, a way each.
    pub(super) in_hands: Vec<u16>,
    /// Index of each engine's manifold pressure.
    engines: Vec<usize>,
    /// Per edge.
    pub(super) ways: Vec<WayAt>,
    /// Where all other slopes stand.
    pub(super) places: OtherPlaces,
    /// How slopes are kept and eliminated.
    pub(crate) plan: Plan,
    /// Per two-pole, what it is worth.
    pub(super) pole_laws: Vec<PoleLaw>,
    /// Numbers of the two-poles whose worth follows the state.
    pub(super) lively: Vec<usize>,
    /// What follows something else with a lag, with its row.
    pub(super) followers: Vec<(usize, Follower)>,
}

/// What one circuit is told: by hands and feet, by its contacts and fuses.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub(crate) inputs: &'a Inputs,
    pub(crate) flags: &'a [Flags],
}

/// What is told holds fixed while the state moves, a lane for each circuit; set by [`Model::hold`].
#[derive(Clone, Debug, Default)]
pub(super) struct Held<R: Real> {
    pub(super) pedal_n: R,
    /// 1 = the engine runs, 0 = it does not.
    pub(super) engine_runs: R,
    /// Per part that hands work.
    pub(super) hands: Vec<AtHand<R>>,
    /// Per follower, the numbers of its law.
    pub(super) followers: Vec<[R; 2]>,
    /// Per lively two-pole and lane, its law.
    pub(super) lively: Vec<PoleLaw>,
}

/// Buffers and by-products of one evaluation.
#[derive(Clone, Debug, Default)]
pub(crate) struct Scratch<R: Real = f64> {
    /// Of every volume, then of the atmosphere, then of every manifold.
    pub(crate) gas: Vec<Gas<R>>,
    pub(super) volume: Vec<R>,
    pub(super) held: Held<R>,
    /// What `solved` was solved for, if `known`; what to solve for next.
    pub(crate) poles: Vec<PoleState<R>>,
    pub(super) known: bool,
    pub(crate) solved: Solved<R>,
    /// Of the state at which slopes were last wanted.
    pub(super) tangent: Tangent<R>,
    /// Mass flow of each edge, kg/s, positive from a to b.
    pub(crate) edge_m: Vec<R>,
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
        let (mut rotors, mut booster_laws) = (Vec::new(), Vec::new());
        for (i, part) in assembly.parts.iter().enumerate() {
            let part_idx = i as u16;
            let volume =
                |c| layout.volume_of(part_idx, c).unwrap_or_else(|| panic!("{} lacks its air", part.id));
            match &part.kind {
                PartKind::VacuumPump(p) => {
                    pumps.push(PumpAt {
                        winding: at(Var::Winding(part_idx)),
                        case: at(Var::Case(part_idx)),
                        speed: at(Var::Speed(part_idx)),
                        inlet: volume(Chamber::Body),
                        pole: wiring.poles.iter().position(|q| q.part == part_idx).unwrap_or(0),
                    });
                    let (compression, compression_p) = p.compression_torque(0.0, day.pressure().pa());
                    rotors.push(Rotor { motor: p.motor(), compression, compression_p });
                }
                PartKind::Booster(b) => {
                    boosters.push(BoosterAt {
                        part: part_idx,
                        travel: at(Var::Travel(part_idx)),
                        front: volume(Chamber::Front),
                        rear: volume(Chamber::Rear),
                    });
                    booster_laws.push(b.law());
                }
                PartKind::Engine(_) => engines.push((part_idx, at(Var::Manifold(part_idx)))),
                _ => {}
            }
        }
        let mass_at: Vec<usize> = mass_at;
        let travel_at: Vec<Option<usize>> = travel_at;
        let (n, n_volumes) = (layout.vars.len(), layout.volumes.len());
        let rows = |node| match node {
            Node::Volume(k) => (mass_at[k], mass_at[k] + 1),
            Node::Atmosphere | Node::Manifold(_) => (n, n + 1),
        };
        let small = |i: usize| {
            assert!(i < MOST, "{i} is beyond {MOST}");
            i as u8
        };
        let places = |edge: &Edge, column: usize| {
            let (a, b) = (rows(edge.a), rows(edge.b));
            [a.0, b.0, a.1, b.1].map(|row| at_first(n, row, column))
        };
        let end = |edge: &Edge, node| {
            let (mass, enthalpy) = rows(node);
            let at = |column| places(edge, column);
            let (gas, from) = match node {
                Node::Volume(k) => {
                    let travel = travel_at[k].map(|i| (small(i), at(i)));
                    let (by_mass, by_energy) = (at(mass), at(enthalpy));
                    (k, From::Volume { k: small(k), mass: small(mass), travel, by_mass, by_energy })
                }
                Node::Atmosphere => (n_volumes, From::Room(at(0))),
                Node::Manifold(part) => match engines.iter().position(|(e, _)| *e == part) {
                    Some(e) => {
                        let (pressure, by_pressure) = (small(engines[e].1), at(engines[e].1));
                        (n_volumes + 1 + e, From::Manifold { pressure, by_room: at(0), by_pressure })
                    }
                    None => (n_volumes, From::Room(at(0))),
                },
            };
            End { gas: small(gas), mass: small(mass), enthalpy: small(enthalpy), from }
        };
        let (mut in_hands, mut n_soft) = (Vec::new(), 0);
        let way = |e: &Edge| {
            let state = match e.law {
                Law::Admit { part, .. } | Law::Equalise { part, .. } => Some(at(Var::Travel(part))),
                Law::Suction { part, .. } => Some(at(Var::Speed(part))),
                _ => None,
            };
            let hand = match e.law {
                Law::Strokes { part, .. } | Law::Vent { part, .. } => {
                    in_hands.push(part);
                    Some(small(in_hands.len() - 1))
                }
                _ => None,
            };
            let soft = e.soft.map(|_| {
                n_soft += 1;
                small(n_soft - 1)
            });
            let state = state.map(|i| (small(i), places(e, i)));
            WayAt { ends: [end(e, e.a), end(e, e.b)], state, soft, hand }
        };
        let ways = air.edges.iter().map(way).collect();
        let pole_laws: Vec<PoleLaw> =
            wiring.poles.iter().map(|p| PoleLaw::of(p, assembly, &layout, &pumps)).collect();
        let followers = Follower::all(assembly, &layout, &wiring);
        let engines = engines.iter().map(|(_, i)| *i).collect();
        let conserved = mass_at.iter().flat_map(|i| [*i, i + 1]).chain(n..n + N_LEDGERS).collect();
        let least = layout.vars.iter().map(Var::least).collect();
        let allowances = layout.vars.iter().map(|v| Allowance::of(*v)).collect();
        let switches = Switch::all(assembly, &layout, &wiring);
        let lively = (0..pole_laws.len()).filter(|i| PoleLaw::is_lively(&pole_laws[*i])).collect();
        let body = |v: &Volume| Body { at_rest_m3: v.at_rest_m3, per_travel_m2: v.per_travel_m2, h_a: v.h_a };
        let numbers = Numbers {
            p_atm: day.pressure().pa(),
            bodies: layout.volumes.iter().map(body).collect(),
            laws: air.edges.iter().map(|e| e.law).collect(),
            soft: air.edges.iter().filter_map(|e| e.soft).collect(),
            boosters: booster_laws,
            rotors,
        };
        let mut model = Self {
            n,
            numbers,
            in_hands,
            lively,
            least,
            conserved,
            allowances,
            switches,
            mass_at,
            travel_at,
            pumps,
            boosters,
            engines,
            ways,
            pole_laws,
            followers,
            layout,
            air,
            wiring,
            places: OtherPlaces::default(),
            plan: Plan::default(),
        };
        model.find_places();
        model
    }

    /// Whether another model differs in numbers only.
    pub(super) fn has_shape_of(&self, other: &Self) -> bool {
        let same_bodies = |(a, b): (&Volume, &Volume)| (a.part, a.chamber) == (b.part, b.chamber);
        let same_ways = |(a, b): (&Edge, &Edge)| {
            (a.a, a.b) == (b.a, b.b) && a.law.is_like(&b.law) && a.soft.is_some() == b.soft.is_some()
        };
        self.layout.vars == other.layout.vars
            && self.air.edges.len() == other.air.edges.len()
            && self.wiring.poles == other.wiring.poles
            && self.wiring.n == other.wiring.n
            && self.layout.volumes.iter().zip(&other.layout.volumes).all(same_bodies)
            && self.air.edges.iter().zip(&other.air.edges).all(same_ways)
    }

    /// f(y) into `f` (state rows, then ledgers) and slopes into `sink`, under what is held in `scratch`.
    ///
    /// Not inlined into a step: its loops then have the registers to themselves.
    #[inline(never)]
    pub(crate) fn eval<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        f.fill(R::all(0.0));
        if S::WANTED {
            scratch.tangent.clear();
        }
        self.gases(numbers, y, scratch);
        self.solve_wiring(numbers, y, scratch);
        if S::WANTED {
            let bodies =
                numbers.bodies.iter().zip(&self.mass_at).zip(scratch.gas.iter().zip(&scratch.volume));
            scratch.tangent.follows.extend(bodies.map(|((body, &mass), (gas, m3))| Follows {
                p_u: R::all(GAMMA - 1.0) / *m3,
                p_x: -gas.p / *m3 * body.per_travel_m2,
                t_m: -gas.t / y[mass],
                t_u: gas.t / y[mass + 1],
            }));
        }
        self.edges(numbers, y, f, sink, scratch);
        self.walls(numbers, y, f, sink, scratch);
        self.pistons(numbers, y, f, sink, scratch);
        self.rotors(numbers, y, f, sink, scratch);
        self.followers(numbers, y, f, sink, scratch);
    }

    /// Pressure and temperature of all air.
    pub(crate) fn gases<R: Real>(&self, numbers: &Numbers<R>, y: &[R], scratch: &mut Scratch<R>) {
        scratch.gas.clear();
        scratch.volume.clear();
        for k in 0..self.layout.volumes.len() {
            let m3 = self.volume_m3(numbers, k, y);
            scratch.volume.push(m3);
            scratch.gas.push(self.gas_of(k, m3, y));
        }
        scratch.gas.push(Gas { p: numbers.p_atm, t: y[0] });
        scratch.gas.extend(self.engines.iter().map(|i| Gas { p: y[*i], t: y[0] }));
    }

    /// Pressure and temperature of body `k` of `m3` cubic metres.
    #[inline]
    pub(crate) fn gas_of<R: Real>(&self, k: usize, m3: R, y: &[R]) -> Gas<R> {
        let (m, u) = (y[self.mass_at[k]], y[self.mass_at[k] + 1]);
        Gas { p: u * (GAMMA - 1.0) / m3, t: u / (m * CV) }
    }

    /// The volume of body `k` in state `y`, m³.
    #[inline]
    pub(crate) fn volume_m3<R: Real>(&self, numbers: &Numbers<R>, k: usize, y: &[R]) -> R {
        let body = &numbers.bodies[k];
        self.travel_at[k].map_or(body.at_rest_m3, |i| body.at_rest_m3 + body.per_travel_m2 * y[i])
    }

    /// State index of the mass of body `k`; the energy follows it.
    pub(crate) fn mass_index(&self, k: usize) -> usize {
        self.mass_at[k]
    }

    fn edges<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let zero = R::all(0.0);
        let around = Around {
            engine_runs: zero.below(scratch.held.engine_runs),
            pedal_n: scratch.held.pedal_n,
            boosters: &self.boosters,
            booster_laws: &numbers.boosters,
            p_atm: numbers.p_atm,
        };
        scratch.edge_m.clear();
        for (law, way) in numbers.laws.iter().zip(&self.ways) {
            let [end_a, end_b] = &way.ends;
            let [a, b] = way.ends.map(|end| scratch.gas[usize::from(end.gas)]);
            let (flow, slope) = match way.soft {
                Some(i) => (super::soft::flow(law, &numbers.soft[usize::from(i)], a, b, numbers.p_atm), zero),
                None => {
                    let hand = way.hand.map_or_else(AtHand::default, |i| scratch.held.hands[usize::from(i)]);
                    flow(law, a, b, &around, hand, way.state.map_or(zero, |(i, _)| y[usize::from(i)]))
                }
            };
            scratch.edge_m.push(flow.m);
            let up_is_a = zero.at_most(flow.m);
            let t_up = R::choose(up_is_a, a.t, b.t);
            let h_up = t_up * CP;
            let h = h_up * flow.m;
            f[usize::from(end_a.mass)] -= flow.m;
            f[usize::from(end_b.mass)] += flow.m;
            f[usize::from(end_a.enthalpy)] -= h;
            f[usize::from(end_b.enthalpy)] += h;
            if !S::WANTED {
                continue;
            }
            if scratch.tangent.kept {
                scratch.tangent.ways.push(Way { flow, slope, t_up, up_is_a });
            }
            let mut both = |[mass_a, mass_b, enthalpy_a, enthalpy_b]: WayPlaces, dm: R, dh: R| {
                sink.add(mass_a, -dm);
                sink.add(mass_b, dm);
                sink.add(enthalpy_a, -dh);
                sink.add(enthalpy_b, dh);
            };
            for (end, dp, dt, is_up) in
                [(end_a, flow.dpa, flow.dta, up_is_a), (end_b, flow.dpb, flow.dtb, !up_is_a)]
            {
                let (h_p, h_t) = (h_up * dp, (t_up * dt + R::choose(is_up, flow.m, zero)) * CP);
                match end.from {
                    From::Volume { k, travel, by_mass, by_energy, .. } => {
                        let Follows { p_u, p_x, t_m, t_u } = scratch.tangent.follows[usize::from(k)];
                        both(by_mass, dt * t_m, h_t * t_m);
                        both(by_energy, dp * p_u + dt * t_u, h_p * p_u + h_t * t_u);
                        if let Some((_, by_travel)) = travel {
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
            if let Some((_, by_state)) = way.state {
                both(by_state, slope, h_up * slope);
            }
        }
    }

    fn walls<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        let heat_row = self.n + 2;
        for (k, (body, &im)) in numbers.bodies.iter().zip(&self.mass_at).enumerate() {
            let t = scratch.gas[k].t;
            let q = body.h_a * (y[0] - t);
            f[im + 1] += q;
            f[heat_row] += q;
            if S::WANTED {
                let lost = body.h_a * t;
                for [by_room, by_mass, by_energy] in self.places.walls[k] {
                    sink.add(by_room, body.h_a);
                    sink.add(by_mass, lost / y[im]);
                    sink.add(by_energy, -lost / y[im + 1]);
                }
            }
        }
    }
}
