//! The compiled circuit as plain numbers, so that an independent program can state the same equations.
//!
//! Everything the right-hand side uses is here: bodies of air, restrictions, valves, machines, wiring,
//! constants, and what every state variable is. `tests/peers` reads it and solves it with a solver of its
//! own. SI units (kg, J, m, Pa, rad/s, K, V, A, ohm) unless a name says otherwise.
//! Not exported: how the step is chosen; a circuit's digest does not depend on any of this.

mod tables;

pub use tables::{
    EdgeNumbers, End, LawNumbers, Machine, Numbers, PoleNumbers, Told, VarNumbers, VolumeNumbers,
};

use super::super::compile::{Node, Pole, StateVar};
use super::super::solve::{
    Follower, G_LOOSE, Inputs, OMEGA_LOAD_SMALL, PoleAt, PoleLaw, PoleState, ROOM_TAU_S,
};
use super::Circuit;
use crate::flow::{R_LAMINAR, iso6358, pinhole};
use crate::parts::PartKind;
use crate::parts::elements::{
    self, EngineState, FILAMENT_RATED_K, FUSE_MELTS_AT, FUSE_TAU_S, Lag, Law, MeterMode, Quantity,
    STOP_N_PER_M,
};

impl Circuit {
    /// The state vector, in the order of [`Numbers::vars`].
    #[must_use]
    pub fn state(&self) -> &[f64] {
        &self.y
    }

    /// How often joints, stops, numbers or parts have been changed.
    #[must_use]
    pub fn changes(&self) -> u64 {
        self.changes
    }

    /// Lasting states and contacts as they stand now.
    #[must_use]
    pub fn told(&self) -> Told {
        let Inputs { engine, key_on, pedal_n, surroundings_c, hands } = &self.inputs;
        Told {
            tick: self.tick.0,
            key_on: *key_on,
            engine_runs: *engine != EngineState::Stopped,
            manifold_target: self.told_by_engine(Quantity::Manifold),
            speed_target: self.told_by_engine(Quantity::Speed),
            pedal_n: *pedal_n,
            surroundings_k: surroundings_c + crate::air::ZERO_CELSIUS_K,
            parts: self
                .flags
                .iter()
                .zip(hands)
                .map(|(f, h)| (f.closed, f.melted, h.pressed, h.strokes_per_s, f.powered))
                .collect(),
        }
    }

    /// Per part with a state of this quantity that follows what the engine does, where it settles now.
    fn told_by_engine(&self, is: Quantity) -> Vec<(u16, f64)> {
        let settles = |(row, follower): &(usize, Follower)| {
            let Follower::Engine { at, .. } = follower else { return None };
            let StateVar::Of(of, part) = self.net.layout.vars[*row] else { return None };
            (of == is).then_some((part, at[self.inputs.engine.index()]))
        };
        self.model.followers.iter().filter_map(settles).collect()
    }

    /// Structure and numbers of the circuit as it stands.
    #[must_use]
    pub fn numbers(&self) -> Numbers {
        let model = &self.model;
        let machines = self.assembly.parts.iter().enumerate().map(|(i, p)| Machine {
            part: i as u16,
            id: p.id.clone(),
            kind: p.kind,
            fuse_a: fuse_a(&p.kind, model.numbers.p_atm),
        });
        Numbers {
            constants: constants(),
            p_atm: self.day.pressure().pa(),
            vars: self.net.layout.vars.iter().map(|v| var(*v)).collect(),
            volumes: (0..self.net.layout.volumes.len()).map(|k| self.volume(k)).collect(),
            edges: self
                .net
                .air
                .edges
                .iter()
                .map(|e| EdgeNumbers {
                    a: self.end(e.a),
                    b: self.end(e.b),
                    law: self.law(e.part, &e.law),
                    soft: e.soft.map(|ends| ends.map(|s| (s.collapse, s.share))),
                })
                .collect(),
            machines: machines.collect(),
            nodes: self.net.wiring.n,
            poles: self.poles(),
        }
    }

    fn volume(&self, k: usize) -> VolumeNumbers {
        let v = self.net.layout.volumes[k];
        let id = &self.assembly.parts[v.part as usize].id;
        VolumeNumbers {
            name: self.net.layout.air_name(k, id),
            m3: v.at_rest_m3,
            per_travel_m2: v.per_travel_m2.unwrap_or(0.0),
            travel: self.model.travel_at[k],
            w_per_k: v.w_per_k,
            mass: self.model.mass_at[k],
        }
    }

    fn end(&self, node: Node) -> End {
        match node {
            Node::Volume(k) => End::Volume(k),
            Node::Atmosphere => End::Atmosphere,
            Node::Manifold(part) => self
                .net
                .layout
                .index(StateVar::Of(Quantity::Manifold, part))
                .map_or(End::Atmosphere, End::Manifold),
        }
    }

    fn law(&self, part: u16, law: &Law) -> LawNumbers {
        match *law {
            Law::Iso(x) => LawNumbers::Iso { c: x.c, b: x.b },
            Law::Hole(h) => LawNumbers::Hole { area: h.area, ideal: h.ideal },
            Law::Gap { still, shaking } => LawNumbers::Gap { still: still.area, shaking: shaking.area },
            Law::Seep(k) => LawNumbers::Seep { k },
            Law::Check(x) => LawNumbers::Check {
                c: x.open.c,
                b: x.open.b,
                crack: x.p_crack,
                span: x.p_span,
                leak: x.leak.area,
                lift_min: x.lift_min,
            },
            Law::Admit { open } => LawNumbers::Admit { part, c: open.c, b: open.b },
            Law::Equalise { open } => LawNumbers::Equalise { part, c: open.c, b: open.b },
            Law::Suction { swept } => LawNumbers::Suction { part, swept },
            Law::Strokes { stroke, ultimate } => {
                LawNumbers::Strokes { part, stroke, ultimate: ultimate * self.day.pressure().pa() }
            }
            Law::Vent { hole } => LawNumbers::Vent { part, area: hole.area },
        }
    }

    fn poles(&self) -> Vec<PoleNumbers> {
        let poles = self.net.wiring.poles.iter().zip(&self.model.poles);
        let number = |(p, at): (&Pole, &PoleAt)| {
            let Worth { g, weld_s, emf, needs } = worth(&at.law, self.inputs.hands[usize::from(p.part)].mode);
            PoleNumbers {
                part: p.part,
                id: self.assembly.parts[usize::from(p.part)].id.clone(),
                is: p.name,
                a: p.node_a,
                b: p.node_b,
                ohm: g.map(|g| 1.0 / g),
                weld_s,
                emf,
                needs,
            }
        };
        poles.map(number).collect()
    }
}

/// A two-pole's worth while it conducts.
#[derive(Default)]
struct Worth {
    /// Conductance, S, where the state does not decide it.
    g: Option<f64>,
    weld_s: f64,
    emf: f64,
    needs: Option<&'static str>,
}

fn worth(law: &PoleLaw, mode: MeterMode) -> Worth {
    let of = |g: f64| Worth { g: Some(g), ..Worth::default() };
    let source = |s: &PoleState| Worth { emf: s.emf, ..of(s.g) };
    let while_it = |needs, worth| Worth { needs: Some(needs), ..worth };
    match law {
        PoleLaw::Steady(s) => source(s),
        PoleLaw::Contact { g, weld } => while_it("closed", Worth { weld_s: *weld, ..of(*g) }),
        PoleLaw::Intact(g) => while_it("whole", of(*g)),
        PoleLaw::Awake(s) => while_it("awake", source(s)),
        PoleLaw::KeyOn { g, weld } => while_it("key", Worth { weld_s: *weld, ..of(*g) }),
        PoleLaw::EngineRuns(s) => while_it("engine", source(s)),
        PoleLaw::Battery { g, .. } => of(*g),
        PoleLaw::Motor(_) | PoleLaw::Characteristic { .. } | PoleLaw::Lamp { .. } => Worth::default(),
        PoleLaw::Meter(m) => match mode {
            MeterMode::Off => Worth::default(),
            MeterMode::Volt => of(m.volt),
            MeterMode::Ohm => Worth { emf: m.source_v, ..of(m.ohm) },
            MeterMode::Ampere => while_it("whole", of(m.ampere)),
        },
        PoleLaw::Pressed(g) => while_it("pressed", of(*g)),
    }
}

/// Rated current of the fuse in a part, A.
fn fuse_a(kind: &PartKind, p_atm: f64) -> Option<f64> {
    let rating = |lag| match lag {
        Lag::FuseHeat { rated_a, .. } => Some(rated_a),
        Lag::Engine { .. }
        | Lag::RunTime { .. }
        | Lag::Pressure { .. }
        | Lag::Filament { .. }
        | Lag::Charge { .. } => None,
    };
    kind.spec(p_atm).states.iter().filter_map(|s| s.follows).find_map(rating)
}

fn constants() -> Vec<(&'static str, f64)> {
    vec![
        ("r_air", crate::air::R_AIR),
        ("gamma", crate::air::GAMMA),
        ("cv", crate::air::CV),
        ("cp", crate::air::CP),
        ("rho_0", iso6358::RHO_0),
        ("t_0", iso6358::T_0),
        ("r_laminar", R_LAMINAR),
        ("r_critical", pinhole::R_CRITICAL),
        ("g_loose_s", G_LOOSE),
        ("omega_load_small", OMEGA_LOAD_SMALL),
        ("omega_friction_small", elements::OMEGA_SMALL),
        ("stop_n_per_m", STOP_N_PER_M),
        ("room_tau_s", ROOM_TAU_S),
        ("alpha_copper", elements::ALPHA_COPPER),
        ("alpha_ferrite", elements::ALPHA_FERRITE),
        ("soft_begins_pa", elements::SOFT_BEGINS_PA),
        ("soft_span_pa", elements::SOFT_SPAN_PA),
        ("unsticks_n", elements::UNSTICKS_N),
        ("sensor_rail", elements::RAIL),
        ("fuse_tau_s", FUSE_TAU_S),
        ("fuse_melts_at", FUSE_MELTS_AT),
        ("filament_rated_k", FILAMENT_RATED_K),
        ("tick_s", crate::units::TICK_S),
    ]
}

fn var(var: StateVar) -> VarNumbers {
    let (is, of) = match var {
        StateVar::Surroundings => ("surroundings", None),
        StateVar::Of(is, part) => (is.name(), Some(part)),
        StateVar::Mass(k) => ("mass", Some(k)),
        StateVar::Energy(k) => ("energy", Some(k)),
    };
    VarNumbers { is, of }
}
