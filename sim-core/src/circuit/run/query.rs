//! What may be asked of a circuit. Every value is computed from the present state when asked.

use super::super::compile::{Node, StateVar};
use super::super::solve::{Given, Inputs, NoSlopes, PoleLaw, Scratch};
use super::Circuit;
use crate::air::{Day, ZERO_CELSIUS_K};
use crate::assembly::{Assembly, PortRef};
use crate::parts::elements::{CODES, Chamber, MeterMode, PistonLaw, Quantity, TroubleCode};
use crate::units::{AbsPressure, Tick};

impl Circuit {
    /// The assembly as it stands.
    #[must_use]
    pub fn assembly(&self) -> &Assembly {
        &self.assembly
    }

    /// The lasting states.
    #[must_use]
    pub fn inputs(&self) -> &Inputs {
        &self.inputs
    }

    /// The lasting states, to change between steps.
    pub fn inputs_mut(&mut self) -> &mut Inputs {
        &mut self.inputs
    }

    /// The day outside.
    #[must_use]
    pub fn day(&self) -> &Day {
        &self.day
    }

    /// The present tick.
    #[must_use]
    pub fn tick(&self) -> Tick {
        self.tick
    }

    /// FNV-1a over the bits of the whole state, in declared order: tick, step control, state, discrete
    /// states, lasting states.
    #[must_use]
    pub fn digest(&self) -> u64 {
        let mut h = crate::digest::Fnv::new();
        h.u64(self.tick.0);
        h.u64(self.e as i64 as u64);
        for y in &self.y {
            h.f64(*y);
        }
        for f in &self.flags {
            let controller = u64::from(f.powered) << 3 | u64::from(f.resting) << 4 | u64::from(f.codes) << 8;
            h.u64(u64::from(f.closed) | u64::from(f.melted) << 1 | u64::from(f.hums) << 2 | controller);
        }
        h.u64(self.inputs.engine as u64);
        h.u64(u64::from(self.inputs.key_on));
        h.f64(self.inputs.pedal_n);
        h.f64(self.inputs.surroundings_c);
        for hand in &self.inputs.hands {
            h.f64(hand.strokes_per_s);
            h.u64(u64::from(hand.pressed) | (hand.mode as u64) << 1);
        }
        h.finish()
    }

    /// Absolute pressure in the volume behind a pneumatic port (the front chamber for a booster).
    #[must_use]
    pub fn pressure(&self, port: PortRef) -> AbsPressure {
        let model = &self.model;
        AbsPressure::from_pa(match self.net.air.behind(port) {
            Some(Node::Volume(k)) => model.gas_of(k, model.volume_m3(&model.numbers, k, &self.y), &self.y).p,
            Some(Node::Manifold(part)) => {
                self.value(Quantity::Manifold, part).unwrap_or(self.day.pressure().pa())
            }
            Some(Node::Atmosphere) | None => self.day.pressure().pa(),
        })
    }

    /// Absolute pressure and temperature (K) of every body of air, with a name each, in layout order.
    #[must_use]
    pub fn bodies_of_air(&self) -> Vec<(String, AbsPressure, f64)> {
        let mut scratch = Scratch::default();
        self.model.gases(&self.model.numbers, &self.y, &mut scratch);
        let layout = &self.net.layout;
        let name = |k: usize, part: u16| layout.air_name(k, &self.assembly.parts[usize::from(part)].id);
        let bodies = layout.volumes.iter().zip(&scratch.gas).enumerate();
        bodies.map(|(k, (v, g))| (name(k, v.part), AbsPressure::from_pa(g.p), g.t)).collect()
    }

    /// Air in all volumes, kg.
    #[must_use]
    pub fn air_mass_kg(&self) -> f64 {
        (0..self.net.layout.volumes.len()).map(|k| self.y[self.model.mass_at[k]]).sum()
    }

    /// Internal energy of the air in all volumes, J.
    #[must_use]
    pub fn air_energy_j(&self) -> f64 {
        (0..self.net.layout.volumes.len()).map(|k| self.y[self.model.mass_at[k] + 1]).sum()
    }

    /// Mass flow out of the part through a pneumatic port, kg/s.
    #[must_use]
    pub fn m_flow_out(&self, port: PortRef) -> f64 {
        let now = self.now();
        self.net
            .air
            .edges
            .iter()
            .zip(&now.edge_m)
            .map(|(e, m)| {
                if e.port_a == Some(port) {
                    *m
                } else if e.port_b == Some(port) {
                    -m
                } else {
                    0.0
                }
            })
            .sum()
    }

    /// Air that rushes between the open and a part: open ports, holes, gaps, seeps, the control valve of
    /// an applied booster, in kg/s (sum of magnitudes). What a listening tube hears.
    #[must_use]
    pub fn hiss(&self, part: u16) -> f64 {
        let now = self.now();
        self.net
            .air
            .edges
            .iter()
            .zip(&now.edge_m)
            .filter(|(e, _)| e.heard_at == Some(part))
            .map(|(_, m)| m.abs())
            .sum()
    }

    /// Voltage of an electrical port against the body, V.
    #[must_use]
    pub fn voltage(&self, port: PortRef) -> f64 {
        let now = self.now();
        self.net.wiring.node(port).map_or(0.0, |n| now.solved.v[n as usize])
    }

    /// Current into the part through an electrical port, A.
    #[must_use]
    pub fn current(&self, port: PortRef) -> f64 {
        let now = self.now();
        self.net
            .wiring
            .poles
            .iter()
            .zip(&now.poles)
            .filter(|(p, _)| p.part == port.part && (p.port_a == port.port || p.port_b == port.port))
            .map(|(p, s)| {
                let v = now.solved.v[p.node_a as usize] - now.solved.v[p.node_b as usize];
                let i = s.g * (v - s.emf);
                if p.port_a == port.port { i } else { -i }
            })
            .sum()
    }

    /// Surface temperature of a part, °C (that of the surroundings for parts without heat nodes).
    #[must_use]
    pub fn surface_c(&self, part: u16) -> f64 {
        self.value(Quantity::Case, part).unwrap_or(self.y[0]) - ZERO_CELSIUS_K
    }

    /// Winding temperature of a pump, °C (that of the surroundings for other parts).
    #[must_use]
    pub fn winding_c(&self, part: u16) -> f64 {
        self.value(Quantity::Winding, part).unwrap_or(self.y[0]) - ZERO_CELSIUS_K
    }

    /// Speed of a pump, rad/s (0 for other parts).
    #[must_use]
    pub fn speed_rad_per_s(&self, part: u16) -> f64 {
        self.value(Quantity::Speed, part).unwrap_or(0.0)
    }

    /// State of charge of a battery, share (0 for other parts).
    #[must_use]
    pub fn charge(&self, part: u16) -> f64 {
        self.value(Quantity::Charge, part).unwrap_or(0.0)
    }

    /// Whether a pump runs audibly.
    #[must_use]
    pub fn hums(&self, part: u16) -> bool {
        self.flags[part as usize].hums
    }

    /// Whether the contact of a vacuum switch or relay is closed, or the output of a controller driven.
    #[must_use]
    pub fn is_closed(&self, part: u16) -> bool {
        self.flags[part as usize].closed
    }

    /// Codes a controller has stored, in order of number (none for other parts).
    #[must_use]
    pub fn codes(&self, part: u16) -> Vec<TroubleCode> {
        let stored = self.flags[part as usize].codes;
        CODES.iter().enumerate().filter(|(bit, _)| stored >> bit & 1 == 1).map(|(_, code)| *code).collect()
    }

    /// Whether a controller lets its pump rest because of the run-time limit.
    #[must_use]
    pub fn is_resting(&self, part: u16) -> bool {
        self.flags[part as usize].resting
    }

    /// A controller's reckoning of its pump's running time, s (0 for other parts).
    #[must_use]
    pub fn run_time_s(&self, part: u16) -> f64 {
        self.value(Quantity::RunTime, part).unwrap_or(0.0)
    }

    /// Whether the fuse in a part has melted.
    #[must_use]
    pub fn is_melted(&self, part: u16) -> bool {
        self.flags[part as usize].melted
    }

    /// Travel of the brake pedal from rest, mm (0 without a booster).
    #[must_use]
    pub fn pedal_travel_mm(&self) -> f64 {
        self.piston().map_or(0.0, |(part, law)| {
            self.value(Quantity::Travel, part).unwrap_or(0.0).max(0.0) * 1e3 * law.pedal_ratio
        })
    }

    /// Force of the booster on the master cylinder, N (0 without a booster).
    #[must_use]
    pub fn brake_force_n(&self) -> f64 {
        self.piston()
            .map_or(0.0, |(part, law)| law.brake_force(self.value(Quantity::Travel, part).unwrap_or(0.0)).0)
    }

    /// Assist of the booster, N: what the pressure difference across its diaphragm pushes.
    #[must_use]
    pub fn assist_n(&self) -> f64 {
        let mut scratch = Scratch::default();
        self.model.gases(&self.model.numbers, &self.y, &mut scratch);
        self.piston().map_or(0.0, |(part, law)| {
            let p = |c| self.net.layout.volume_of(part, c).map_or(0.0, |k| scratch.gas[k].p);
            law.area_m2 * (p(Chamber::Rear) - p(Chamber::Front))
        })
    }

    /// Pointer of a gauge or hand pump, kPa gauge, without the instrument's error.
    #[must_use]
    pub fn pointer_kpa(&self, part: u16) -> f64 {
        self.value(Quantity::Pointer, part).unwrap_or(0.0) * 1e-3
    }

    /// Filament temperature of a lamp, K.
    #[must_use]
    pub fn filament_k(&self, part: u16) -> f64 {
        self.value(Quantity::Filament, part).unwrap_or(self.y[0])
    }

    /// What a multimeter feels at its terminals in its present mode (V, Ω or A), without its error;
    /// `None` when off, not connected, its fuse melted in ampere mode, or the resistance infinite.
    #[must_use]
    pub fn meter(&self, part: u16) -> Option<f64> {
        let pole = self.model.pole_index(part)?;
        let PoleLaw::Meter(meter) = self.model.poles[pole].law else { return None };
        let now = self.now();
        let (v, i) = self.model.at_pole(Some(pole), &now);
        match self.inputs.hands[part as usize].mode {
            MeterMode::Off => None,
            MeterMode::Volt => Some(v),
            MeterMode::Ampere => (!self.flags[part as usize].melted).then_some(i),
            MeterMode::Ohm => meter.shown_ohm(v),
        }
    }

    /// Temperature of the surroundings now, °C.
    #[must_use]
    pub fn surroundings_c(&self) -> f64 {
        self.y[0] - ZERO_CELSIUS_K
    }

    /// Pressure of the day.
    #[must_use]
    pub fn ambient(&self) -> AbsPressure {
        self.day.pressure()
    }

    /// The first power piston.
    fn piston(&self) -> Option<(u16, &PistonLaw)> {
        let laws = &self.model.numbers.pistons;
        self.model.pistons.iter().zip(laws).map(|(at, law)| (at.part, law)).next()
    }

    fn value(&self, is: Quantity, part: u16) -> Option<f64> {
        self.net.layout.index(StateVar::Of(is, part)).map(|i| self.y[i])
    }

    /// By-products of the present state.
    fn now(&self) -> Scratch {
        let mut scratch = self.scratch.clone();
        let mut f = vec![0.0; self.f.len()];
        let given = Given { inputs: &self.inputs, flags: &self.flags };
        self.model.hold(given, 0, &mut scratch);
        self.model.eval(&self.model.numbers, &self.y, &mut f, &mut NoSlopes, &mut scratch);
        scratch
    }
}
