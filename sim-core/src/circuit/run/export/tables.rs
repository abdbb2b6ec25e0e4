//! What is exported, as plain numbers.

use serde::Serialize;

use crate::parts::PartKind;

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
    /// Flow paths.
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

/// A flow path from `a` to `b`: number of a body of air, or `atmosphere`, or the state variable of a
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

/// An end of a flow path.
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

/// Law of a flow path. `c` in m³/(s·Pa), areas in m².
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
