//! Vacuum pump turned by the engine: the vane pump's flow and slip at the speed the engine gives it.
//!
//! ṁ = D ω/2π · ρ_inlet less slip, an ISO 6358 restriction from outlet to inlet, as in the electric pump
//! ([`super::vacuum_pump`]); ω follows ratio × engine speed with a lag, and stands still with the engine. It
//! needs no current: neither key nor fuse stops it.
//! Not modelled: its torque on the engine, its heat (the engine's oil takes it), the oil film that seals it,
//! starved oil.

use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{
    self, Air, Bounds, Chamber, Depth, Electric, EngineState, FlowPath, Lag, Mouth, Quantity, Seen, Spec,
    Specified, Start, State, Volume,
};

part_params! {
    /// The pump; port `inlet` (pneumatic). Its outlet is the engine's crankcase, taken as the open air.
    pub struct EnginePump {
        /// Air taken in per revolution of the pump, cm³.
        displacement_cm3: 1.0 ..= 500.0,
        /// Sonic conductance of the slip path from outlet to inlet, mm² of ideal hole.
        slip_mm2: 0.01 ..= 20.0,
        /// Turns of the pump per turn of the engine.
        ratio: 0.2 ..= 2.0,
        /// Engine speed at warm idle, 1/min.
        warm_idle_rpm: 400.0 ..= 2000.0,
        /// Engine speed at cold fast idle, 1/min.
        cold_idle_rpm: 400.0 ..= 2500.0,
        /// Engine speed at cruise, 1/min.
        cruise_rpm: 500.0 ..= 6000.0,
        /// Engine speed on the overrun, 1/min.
        overrun_rpm: 500.0 ..= 6000.0,
        /// Engine speed at full load, 1/min.
        wide_open_rpm: 500.0 ..= 7000.0,
        /// Time in which the engine's speed follows, s.
        lag_s: 0.05 ..= 5.0,
        /// Dead volume at the inlet, cm³.
        inlet_cm3: 2.0 ..= 100.0,
        /// Bore of the inlet nipple, mm.
        bore_mm: 2.0 ..= 20.0,
        faults {
            /// Further slip of worn vanes, mm² of ideal hole.
            wear_mm2: 0.0 ..= 20.0,
            /// Share of the speed that a worn coupling loses; 1 = sheared.
            coupling_lost: 0.0 ..= 1.0,
        }
    }
}

impl EnginePump {
    /// Volume swept per radian, m³/rad.
    #[must_use]
    pub fn swept_m3_per_rad(&self) -> f64 {
        elements::swept_m3_per_rad(self.displacement_cm3)
    }

    /// The slip path from outlet to inlet.
    #[must_use]
    pub fn slip(&self) -> Iso6358 {
        elements::slip(self.slip_mm2 + self.wear_mm2)
    }

    /// Speed it settles at, rad/s.
    #[must_use]
    pub fn target_rad_per_s(&self, state: EngineState) -> f64 {
        let rpm = match state {
            EngineState::Stopped => 0.0,
            EngineState::ColdIdle => self.cold_idle_rpm,
            EngineState::WarmIdle => self.warm_idle_rpm,
            EngineState::Cruise => self.cruise_rpm,
            EngineState::Overrun => self.overrun_rpm,
            EngineState::WideOpen => self.wide_open_rpm,
        };
        rpm * self.ratio * (1.0 - self.coupling_lost) * std::f64::consts::PI / 30.0
    }

    /// Resistance of the inlet nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for EnginePump {
    const SEEN: Seen = Seen::ONE_WAY;

    fn spec(&self, _: f64) -> Spec {
        let at = EngineState::ALL.map(|state| self.target_rad_per_s(state));
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::Inlet, self.inlet_cm3)],
                mouths: vec![Mouth::body(0, self.nipple())],
                flow_paths: FlowPath::pumped(Chamber::Body, self.swept_m3_per_rad(), self.slip()).to_vec(),
            },
            electric: Electric::NONE,
            states: vec![State {
                is: Quantity::Speed,
                bounds: Bounds::SPEED,
                start: Start::At(0.0),
                follows: Some(Lag::Engine { at, tau_s: self.lag_s }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}
