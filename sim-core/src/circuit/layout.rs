//! Where everything stands in the state vector.
//!
//! Every part of the assembly owns its variables whether it is joined or not, so that opening and
//! making joints keeps its air, heat and charge. Instruments that hang on the board own none.
//! The order puts leaves before hubs: eliminated in this order the Jacobian fills in hardly at all.

use crate::assembly::Assembly;
use crate::parts::PartKind;

/// What a state variable is. Units: kg, J, m, Pa, rad/s, K, share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Var {
    /// Temperature of the surroundings, K.
    Surroundings,
    /// Winding temperature of a pump, K.
    Winding(u16),
    /// Case temperature of a pump, K.
    Case(u16),
    /// Filament temperature of a lamp, K.
    Filament(u16),
    /// Pointer of a gauge, Pa gauge.
    Pointer(u16),
    /// State of charge of a battery, share.
    Charge(u16),
    /// Heat of a fuse strip, (i/I_n)².
    FuseHeat(u16),
    /// Absolute manifold pressure, Pa.
    Manifold(u16),
    /// Speed of a pump, rad/s.
    Speed(u16),
    /// A controller's reckoning of its pump's running time, s.
    RunTime(u16),
    /// Mass in a volume, kg; volumes are numbered as in [`Layout::volumes`].
    Mass(u16),
    /// Internal energy in a volume, J.
    Energy(u16),
    /// Travel of a booster's power piston, m.
    Travel(u16),
}

impl Var {
    /// What a variable must be above: nought for what cannot be nothing, else nothing.
    pub(crate) fn least(&self) -> f64 {
        match self {
            Self::Mass(_)
            | Self::Energy(_)
            | Self::Manifold(_)
            | Self::Surroundings
            | Self::Winding(_)
            | Self::Case(_)
            | Self::Filament(_) => 0.0,
            Self::Pointer(_)
            | Self::Charge(_)
            | Self::FuseHeat(_)
            | Self::Speed(_)
            | Self::RunTime(_)
            | Self::Travel(_) => f64::NEG_INFINITY,
        }
    }
}

/// Which volume of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Chamber {
    /// The only one.
    Body,
    /// Booster, engine side.
    Front,
    /// Booster, pedal side.
    Rear,
}

/// A body of air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Volume {
    /// The part it belongs to.
    pub(crate) part: u16,
    /// Which one of the part's.
    pub(crate) chamber: Chamber,
    /// Volume at rest, m³.
    pub(crate) at_rest_m3: f64,
    /// Change per metre of booster travel, m².
    pub(crate) per_travel_m2: f64,
    /// Heat transfer to the wall, W/K.
    pub(crate) h_a: f64,
}

/// The state vector's plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Layout {
    /// Variables in order.
    pub(crate) vars: Vec<Var>,
    /// Bodies of air, leaves before hubs.
    pub(crate) volumes: Vec<Volume>,
}

/// Heat transfer from still air to a wall, W/(m²·K): free convection in a small housing.
const H_WALL: f64 = 5.0;

impl Layout {
    pub(crate) fn of(assembly: &Assembly) -> Self {
        let mut volumes: Vec<(u8, Volume)> = Vec::new();
        let mut vars = vec![Var::Surroundings];
        for (i, part) in assembly.parts.iter().enumerate() {
            let i = i as u16;
            if !is_active(assembly, i) {
                continue;
            }
            volumes.extend(volumes_of(i, &part.kind));
            vars.extend(vars_of(i, &part.kind));
        }
        volumes.sort_by_key(|(rank, v)| (*rank, v.part));
        let volumes: Vec<Volume> = volumes.into_iter().map(|(_, v)| v).collect();
        for k in 0..volumes.len() as u16 {
            vars.push(Var::Mass(k));
            vars.push(Var::Energy(k));
        }
        // Variants are declared leaves first; `Mass` and `Energy` of one volume stay side by side.
        vars.sort_by_key(|v| match *v {
            Var::Mass(k) => (100, k, 0),
            Var::Energy(k) => (100, k, 1),
            Var::Travel(p) => (101, p, 0),
            Var::Surroundings => (0, 0, 0),
            Var::Winding(p) => (1, p, 0),
            Var::Case(p) => (2, p, 0),
            Var::Filament(p) => (3, p, 0),
            Var::Pointer(p) => (4, p, 0),
            Var::Charge(p) => (5, p, 0),
            Var::FuseHeat(p) => (6, p, 0),
            Var::Manifold(p) => (7, p, 0),
            Var::Speed(p) => (8, p, 0),
            Var::RunTime(p) => (9, p, 0),
        });
        Self { vars, volumes }
    }

    pub(crate) fn index(&self, var: Var) -> Option<usize> {
        self.vars.iter().position(|v| *v == var)
    }

    pub(crate) fn volume_of(&self, part: u16, chamber: Chamber) -> Option<usize> {
        self.volumes.iter().position(|v| v.part == part && v.chamber == chamber)
    }
}

/// A part takes part in the circuit unless it is an instrument on the board.
pub(crate) fn is_active(assembly: &Assembly, part: u16) -> bool {
    let instrument = matches!(
        assembly.parts[part as usize].kind,
        PartKind::VacuumGauge(_)
            | PartKind::HandPump(_)
            | PartKind::TestLamp(_)
            | PartKind::Multimeter(_)
            | PartKind::PushLead(_)
    );
    !instrument || assembly.joints.iter().any(|j| j.made && (j.a.part == part || j.b.part == part))
}

fn volumes_of(part: u16, kind: &PartKind) -> Vec<(u8, Volume)> {
    let body = |rank: u8, m3: f64, surface_m2: f64| {
        vec![(
            rank,
            Volume {
                part,
                chamber: Chamber::Body,
                at_rest_m3: m3,
                per_travel_m2: 0.0,
                h_a: H_WALL * surface_m2,
            },
        )]
    };
    // A small body's surface: that of a cube of its volume.
    let cube = |cm3: f64| 6.0 * 1e-4 * crate::math::cbrt(cm3 * cm3);
    match kind {
        PartKind::VacuumGauge(p) => body(0, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::HandPump(p) => body(0, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::VacuumSwitch(p) => body(1, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::VacuumSensor(p) => body(1, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::VacuumPump(p) => body(2, p.inlet_cm3 * 1e-6, cube(p.inlet_cm3)),
        PartKind::EnginePump(p) => body(2, p.inlet_cm3 * 1e-6, cube(p.inlet_cm3)),
        PartKind::Reservoir(p) => body(6, p.volume_l * 1e-3, p.surface_m2),
        PartKind::Hose(p) => body(3, p.volume_m3(), p.surface_m2()),
        PartKind::CheckValve(p) => body(4, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::Tee(p) => body(5, p.volume_cm3 * 1e-6, cube(p.volume_cm3)),
        PartKind::Booster(p) => {
            let (front, rear) = (p.front_l * 1e-3, p.rear_l * 1e-3);
            let h_a = H_WALL * p.surface_m2;
            let share = front / (front + rear);
            let area = p.area_m2();
            vec![
                (
                    6,
                    Volume {
                        part,
                        chamber: Chamber::Rear,
                        at_rest_m3: rear,
                        per_travel_m2: area,
                        h_a: h_a * (1.0 - share),
                    },
                ),
                (
                    7,
                    Volume {
                        part,
                        chamber: Chamber::Front,
                        at_rest_m3: front,
                        per_travel_m2: -area,
                        h_a: h_a * share,
                    },
                ),
            ]
        }
        _ => Vec::new(),
    }
}

fn vars_of(part: u16, kind: &PartKind) -> Vec<Var> {
    match kind {
        PartKind::VacuumPump(_) => vec![Var::Winding(part), Var::Case(part), Var::Speed(part)],
        PartKind::EnginePump(_) => vec![Var::Speed(part)],
        PartKind::Controller(_) => vec![Var::RunTime(part)],
        PartKind::TestLamp(_) => vec![Var::Filament(part)],
        PartKind::VacuumGauge(_) | PartKind::HandPump(_) => vec![Var::Pointer(part)],
        PartKind::Battery(_) => vec![Var::Charge(part)],
        PartKind::Fuse(_) | PartKind::Multimeter(_) | PartKind::PushLead(_) => vec![Var::FuseHeat(part)],
        PartKind::Engine(_) => vec![Var::Manifold(part)],
        PartKind::Booster(_) => vec![Var::Travel(part)],
        _ => Vec::new(),
    }
}
