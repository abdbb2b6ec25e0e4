//! The compiled circuit as plain numbers, so that an independent program can state the same equations.
//!
//! Everything the right-hand side uses is here: bodies of air, restrictions, valves, machines, wiring,
//! constants, and what every state variable is. `tests/peers` reads it and solves it with a solver of its
//! own. SI units (kg, J, m, Pa, rad/s, K, V, A, ohm) unless a name says otherwise.
//! Not exported: how the step is chosen; a circuit's digest does not depend on any of this.

use serde::Serialize;

use super::air_net::{Law, Node};
use super::layout::{Chamber, Var};
use super::machines::{OMEGA_SMALL, ROOM_TAU_S, fuse_rating_a};
use super::wiring::{G_LOOSE, PoleKind};
use super::{Circuit, Inputs};
use crate::flow::{R_LAMINAR, iso6358, pinhole};
use crate::parts::PartKind;
use crate::parts::booster::STOP_N_PER_M;
use crate::parts::controller;
use crate::parts::electrical::{FUSE_MELTS_AT, FUSE_TAU_S};
use crate::parts::engine::EngineState;
use crate::parts::instruments::{FILAMENT_RATED_K, MeterMode};

/// A compiled circuit without its state.
#[derive(Clone, Debug, Serialize)]
pub struct Numbers {
    /// Names and values of the constants in the equations.
    pub constants: Vec<(&'static str, f64)>,
    /// Pressure of the day, Pa.
    pub p_atm: f64,
    /// State variables in order.
    pub vars: Vec<VarNumbers>,
    /// Bodies of air in order.
    pub volumes: Vec<VolumeNumbers>,
    /// Ways for air.
    pub edges: Vec<EdgeNumbers>,
    /// Parts that own state variables or set sources, with their numbers.
    pub machines: Vec<Machine>,
    /// Number of nodes of the wiring; node 0 is the body.
    pub nodes: usize,
    /// Two-poles: i = (v_a − v_b − emf)/ohm flows into `a`.
    pub poles: Vec<PoleNumbers>,
}

/// A state variable.
#[derive(Clone, Debug, Serialize)]
pub struct VarNumbers {
    /// What it is: `mass`, `energy`, `travel`, `speed`, `winding`, `case`, `manifold`, …
    pub is: &'static str,
    /// Number of the part it belongs to, or of the body of air.
    pub of: Option<u16>,
}

/// A body of air.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeNumbers {
    /// Part, and chamber of a booster.
    pub name: String,
    /// Volume at rest, m³.
    pub m3: f64,
    /// Change per metre of the booster's travel, m².
    pub per_travel_m2: f64,
    /// State variable of that travel.
    pub travel: Option<usize>,
    /// Heat transfer to the wall, W/K.
    pub w_per_k: f64,
    /// State variable of the mass; the energy follows it.
    pub mass: usize,
}

/// A way for air from `a` to `b`: number of a body of air, or `atmosphere`, or the state variable of a
/// manifold.
#[derive(Clone, Debug, Serialize)]
pub struct EdgeNumbers {
    /// One side.
    pub a: End,
    /// The other side.
    pub b: End,
    /// What lies between.
    pub law: LawNumbers,
    /// Soft hoses at `a` and `b`, if any: what each loses when pulled in, and its share of the row.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soft: Option<[(f64, f64); 2]>,
}

/// An end of a way for air.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// A body of air by number.
    Volume(usize),
    /// The air outside.
    Atmosphere,
    /// A manifold, by its state variable (pressure); its air has the temperature of the surroundings.
    Manifold(usize),
}

/// Law of a way for air. `c` in m³/(s·Pa), areas in m².
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names are those of the equations in docs/physics.md")]
pub enum LawNumbers {
    /// ISO 6358 restriction.
    Iso { c: f64, b: f64 },
    /// Sharp-edged hole.
    Hole { area: f64, ideal: bool },
    /// A hole that is wider while the engine shakes.
    Gap { still: f64, shaking: f64 },
    /// Laminar seep.
    Seep { k: f64 },
    /// Check valve, forward from a to b.
    Check { c: f64, b: f64, crack: f64, span: f64, leak: f64, lift_min: f64 },
    /// Air valve of a booster (part).
    Admit { part: u16, c: f64, b: f64 },
    /// Valve between a booster's chambers (part).
    Equalise { part: u16, c: f64, b: f64 },
    /// Suction of a rotary pump (part), m³/rad.
    Suction { part: u16, swept: f64 },
    /// Strokes of a hand pump (part), m³ a stroke, and its ultimate pressure, Pa.
    Strokes { part: u16, stroke: f64, ultimate: f64 },
    /// Release lever of a hand pump (part).
    Vent { part: u16, area: f64 },
}

/// A part with its own numbers, as its file writes them.
#[derive(Clone, Debug, Serialize)]
pub struct Machine {
    /// Number of the part.
    pub part: u16,
    /// Its name.
    pub id: String,
    /// Kind and numbers.
    pub kind: PartKind,
    /// Rated current of a fuse inside, A.
    pub fuse_a: Option<f64>,
}

/// A two-pole.
#[derive(Clone, Debug, Serialize)]
pub struct PoleNumbers {
    /// Number of the part.
    pub part: u16,
    /// Name of the part.
    pub id: String,
    /// What it is: `wire`, `battery`, `motor` …
    pub is: &'static str,
    /// Node at its first port.
    pub a: u16,
    /// Node at its second port.
    pub b: u16,
    /// Resistance while it conducts, ohm; absent where the state decides (motor, lamp) or nothing conducts.
    pub ohm: Option<f64>,
    /// Conductance beside it that nothing switches (a weld), S.
    pub weld_s: f64,
    /// Source behind the resistance, V, where it is fixed.
    pub emf: f64,
    /// What must hold for it to conduct: `closed`, `whole`, `key`, `engine`, `pressed`, `awake`, or nothing.
    pub needs: Option<&'static str>,
}

/// What the circuit is told from outside, and what has switched inside, from a tick on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Told {
    /// From this tick on.
    pub tick: u64,
    /// Key in position 15.
    pub key_on: bool,
    /// Engine runs (alternator, shaking).
    pub engine_runs: bool,
    /// Pressure the manifold settles at, Pa, per engine.
    pub manifold_target: Vec<(u16, f64)>,
    /// Force on the pedal, N.
    pub pedal_n: f64,
    /// Temperature the surroundings drift to, K.
    pub surroundings_k: f64,
    /// Speed each engine-driven pump settles at, rad/s.
    pub speed_target: Vec<(u16, f64)>,
    /// Per part: contact closed, fuse melted, button pressed, strokes a second, controller awake.
    pub parts: Vec<(bool, bool, bool, f64, bool)>,
}

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
        let p_atm = self.day.pressure().pa();
        Told {
            tick: self.tick.0,
            key_on: *key_on,
            engine_runs: *engine != EngineState::Stopped,
            manifold_target: self
                .assembly
                .parts
                .iter()
                .enumerate()
                .filter_map(|(i, p)| match &p.kind {
                    PartKind::Engine(e) => Some((i as u16, e.target_pa(*engine, p_atm))),
                    _ => None,
                })
                .collect(),
            speed_target: self
                .assembly
                .parts
                .iter()
                .enumerate()
                .filter_map(|(i, p)| match &p.kind {
                    PartKind::EnginePump(e) => Some((i as u16, e.target_rad_per_s(*engine))),
                    _ => None,
                })
                .collect(),
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

    /// Structure and numbers of the circuit as it stands.
    #[must_use]
    pub fn numbers(&self) -> Numbers {
        let model = &self.model;
        let machines = self.assembly.parts.iter().enumerate().map(|(i, p)| Machine {
            part: i as u16,
            id: p.id.clone(),
            kind: p.kind,
            fuse_a: Some(fuse_rating_a(&p.kind)).filter(|a| a.is_finite()),
        });
        Numbers {
            constants: constants(),
            p_atm: self.day.pressure().pa(),
            vars: model.layout.vars.iter().map(|v| var(*v)).collect(),
            volumes: (0..model.layout.volumes.len()).map(|k| self.volume(k)).collect(),
            edges: model
                .air
                .edges
                .iter()
                .map(|e| EdgeNumbers {
                    a: self.end(e.a),
                    b: self.end(e.b),
                    law: self.law(&e.law),
                    soft: e.soft.map(|ends| ends.map(|s| (s.collapse, s.share))),
                })
                .collect(),
            machines: machines.collect(),
            nodes: model.wiring.n,
            poles: self.poles(),
        }
    }

    fn volume(&self, k: usize) -> VolumeNumbers {
        let v = self.model.layout.volumes[k];
        let id = &self.assembly.parts[v.part as usize].id;
        VolumeNumbers {
            name: match v.chamber {
                Chamber::Body => id.clone(),
                Chamber::Front => format!("{id}.front"),
                Chamber::Rear => format!("{id}.rear"),
            },
            m3: v.at_rest_m3,
            per_travel_m2: v.per_travel_m2,
            travel: self.model.travel_at[k],
            w_per_k: v.h_a,
            mass: self.model.mass_at[k],
        }
    }

    fn end(&self, node: Node) -> End {
        match node {
            Node::Volume(k) => End::Volume(k),
            Node::Atmosphere => End::Atmosphere,
            Node::Manifold(part) => {
                self.model.layout.index(Var::Manifold(part)).map_or(End::Atmosphere, End::Manifold)
            }
        }
    }

    fn law(&self, law: &Law) -> LawNumbers {
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
            Law::Admit { part, open } => LawNumbers::Admit { part, c: open.c, b: open.b },
            Law::Equalise { part, open } => LawNumbers::Equalise { part, c: open.c, b: open.b },
            Law::Suction { part, swept } => LawNumbers::Suction { part, swept },
            Law::Strokes { part, stroke, ultimate } => {
                LawNumbers::Strokes { part, stroke, ultimate: ultimate * self.day.pressure().pa() }
            }
            Law::Vent { part, hole } => LawNumbers::Vent { part, area: hole.area },
        }
    }

    fn poles(&self) -> Vec<PoleNumbers> {
        let number = |p: &super::wiring::Pole| {
            let part = &self.assembly.parts[p.part as usize];
            let mode = self.inputs.hands[p.part as usize].mode;
            let (is, ohm, weld_s, emf, needs) = match (&part.kind, p.kind) {
                (PartKind::Battery(b), _) => {
                    ("battery", Some((b.internal_mohm + b.aged_mohm) * 1e-3), 0.0, 0.0, None)
                }
                (PartKind::Supply(s), _) => ("supply", Some(s.source_mohm * 1e-3), 0.0, s.volt, None),
                (PartKind::Engine(e), _) => {
                    ("alternator", Some(e.alternator_ohm), 0.0, e.alternator_v, Some("engine"))
                }
                (PartKind::Fuse(f), _) => {
                    ("fuse", Some(f.mohm * 1e-3 + f.corroded_ohm), 0.0, 0.0, Some("whole"))
                }
                (PartKind::Relay(r), PoleKind::RelayContact) => {
                    ("contact", Some(r.contact_mohm * 1e-3 + r.burnt_ohm), r.weld_s, 0.0, Some("closed"))
                }
                (PartKind::Relay(r), _) => ("coil", Some(r.coil_ohm + r.coil_open_ohm), 0.0, 0.0, None),
                (PartKind::KeySwitch(k), _) => ("key", Some(k.contact_mohm * 1e-3), 0.0, 0.0, Some("key")),
                (PartKind::Wire(w), _) => ("wire", Some(w.resistance_ohm()), 0.0, 0.0, None),
                (PartKind::VacuumSwitch(s), _) => {
                    ("contact", Some(s.contact_ohm + s.burnt_ohm), s.weld_s, 0.0, Some("closed"))
                }
                (PartKind::VacuumPump(_), _) => ("motor", None, 0.0, 0.0, None),
                (PartKind::VacuumSensor(_), PoleKind::SensorUpper) => ("sensor_upper", None, 0.0, 0.0, None),
                (PartKind::VacuumSensor(_), _) => ("sensor_lower", None, 0.0, 0.0, None),
                (PartKind::Controller(_), PoleKind::ControllerFeed) => {
                    ("feed", Some(controller::FEED_OHM), 0.0, controller::FEED_V, Some("awake"))
                }
                (PartKind::Controller(c), PoleKind::ControllerInput) => {
                    ("input", Some(c.input_kohm * 1e3), 0.0, 0.0, None)
                }
                (PartKind::Controller(_), PoleKind::ControllerGround) => {
                    ("ground", Some(controller::GROUND_OHM), 0.0, 0.0, None)
                }
                (PartKind::Controller(c), PoleKind::ControllerOut) => (
                    "output",
                    Some(c.out_mohm * 1e-3 + c.out_burnt_ohm),
                    c.out_shorted_s,
                    0.0,
                    Some("closed"),
                ),
                (PartKind::Controller(c), _) => ("supply", Some(c.supply_ohm), 0.0, 0.0, None),
                (PartKind::TestLamp(_), _) => ("lamp", None, 0.0, 0.0, None),
                (PartKind::Multimeter(m), _) => match mode {
                    MeterMode::Off => ("meter", None, 0.0, 0.0, None),
                    MeterMode::Volt => ("meter", Some(m.input_megohm * 1e6), 0.0, 0.0, None),
                    MeterMode::Ohm => ("meter", Some(m.ohm_source_kohm * 1e3), 0.0, m.ohm_source_v, None),
                    MeterMode::Ampere => {
                        ("meter", Some(m.shunt_mohm * 1e-3 + m.leads_ohm), 0.0, 0.0, Some("whole"))
                    }
                },
                (PartKind::PushLead(l), _) => ("push_lead", Some(l.mohm * 1e-3), 0.0, 0.0, Some("pressed")),
                _ => ("nothing", None, 0.0, 0.0, None),
            };
            PoleNumbers {
                part: p.part,
                id: part.id.clone(),
                is,
                a: p.node_a,
                b: p.node_b,
                ohm,
                weld_s,
                emf,
                needs,
            }
        };
        self.model.wiring.poles.iter().map(number).collect()
    }
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
        ("omega_load_small", OMEGA_SMALL),
        ("omega_friction_small", crate::parts::vacuum_pump::OMEGA_SMALL),
        ("stop_n_per_m", STOP_N_PER_M),
        ("room_tau_s", ROOM_TAU_S),
        ("alpha_copper", crate::parts::vacuum_pump::ALPHA_COPPER),
        ("alpha_ferrite", crate::parts::vacuum_pump::ALPHA_FERRITE),
        ("soft_begins_pa", crate::parts::hose::SOFT_BEGINS_PA),
        ("soft_span_pa", crate::parts::hose::SOFT_SPAN_PA),
        ("unsticks_n", crate::parts::booster::UNSTICKS_N),
        ("sensor_rail", crate::parts::vacuum_sensor::RAIL),
        ("fuse_tau_s", FUSE_TAU_S),
        ("fuse_melts_at", FUSE_MELTS_AT),
        ("filament_rated_k", FILAMENT_RATED_K),
        ("tick_s", crate::units::TICK_S),
    ]
}

fn var(var: Var) -> VarNumbers {
    let (is, of) = match var {
        Var::Surroundings => ("surroundings", None),
        Var::Winding(p) => ("winding", Some(p)),
        Var::Case(p) => ("case", Some(p)),
        Var::Filament(p) => ("filament", Some(p)),
        Var::Pointer(p) => ("pointer", Some(p)),
        Var::Charge(p) => ("charge", Some(p)),
        Var::FuseHeat(p) => ("fuse_heat", Some(p)),
        Var::Manifold(p) => ("manifold", Some(p)),
        Var::Speed(p) => ("speed", Some(p)),
        Var::RunTime(p) => ("run_time", Some(p)),
        Var::Mass(k) => ("mass", Some(k)),
        Var::Energy(k) => ("energy", Some(k)),
        Var::Travel(p) => ("travel", Some(p)),
    };
    VarNumbers { is, of }
}
