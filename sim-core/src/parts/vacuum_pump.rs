//! Electric rotary vane vacuum pump: displacement, slip, torque, permanent-magnet motor, two heat nodes.
//!
//! * Flow: ṁ = D ω/2π · ρ_inlet; slip back from outlet to inlet is an ISO 6358 restriction. Where the
//!   two balance lies the dead-head vacuum; wear weakens it. At rest the slip path lets air back in.
//! * Torque: compression with the built-in volume ratio v,
//!   T = D/2π · (p₁ (v^{γ−1} − 1)/(γ − 1) − p₁ + p₂/v), plus dry and viscous friction.
//! * Motor: V = i R(T) + K(T) ω, J dω/dt = K i − T. Copper +0.393 %/K (IEC 60228 factor), ferrite
//!   magnets −0.20 %/K (from memory).
//! * Heat: copper loss into the winding, friction and half the compression work into the case.
//!
//! Not modelled: oil film, vane by vane pulsation, cogging, armature inductance (its time is under 2 ms).

use crate::air::GAMMA;
use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::math;
use crate::params::part_params;
use crate::parts::elements::{
    self, Air, Bounds, Chamber, Depth, Electric, FlowPath, Machine, Mouth, Quantity, Seen, Spec, Specified,
    Start, State, Switch, Volume, Worth,
};

pub use crate::parts::elements::{ALPHA_COPPER, ALPHA_FERRITE, MotorLaw, OMEGA_SMALL};

part_params! {
    /// The pump; ports `inlet` (pneumatic), `plus` and `minus` (electrical), surface `case`.
    pub struct VacuumPump {
        /// Air taken in per revolution, cm³.
        displacement_cm3: 1.0 ..= 100.0,
        /// Sonic conductance of the slip path from outlet to inlet, mm² of ideal hole.
        slip_mm2: 0.01 ..= 20.0,
        /// Built-in volume ratio.
        volume_ratio: 1.0 ..= 3.0,
        /// Dry friction, N·m.
        friction_nm: 0.0 ..= 5.0,
        /// Viscous friction, mN·m·s/rad.
        viscous_mnms: 0.0 ..= 5.0,
        /// Motor constant at 20 °C, V·s/rad.
        motor_k: 0.005 ..= 0.5,
        /// Winding and brush resistance at 20 °C, ohm.
        winding_ohm: 0.02 ..= 10.0,
        /// Moment of inertia, kg·cm².
        inertia_kgcm2: 0.05 ..= 50.0,
        /// Heat capacity of the winding, J/K.
        winding_j_per_k: 5.0 ..= 1000.0,
        /// Heat capacity of the case, J/K.
        case_j_per_k: 50.0 ..= 5000.0,
        /// Heat path winding to case, W/K.
        winding_w_per_k: 0.1 ..= 50.0,
        /// Heat path case to air, W/K.
        case_w_per_k: 0.1 ..= 50.0,
        /// Dead volume at the inlet, cm³.
        inlet_cm3: 2.0 ..= 100.0,
        /// Bore of the inlet nipple, mm.
        bore_mm: 2.0 ..= 20.0,
        faults {
            /// Further slip of worn vanes, mm² of ideal hole.
            wear_mm2: 0.0 ..= 20.0,
            /// Further resistance of worn brushes, ohm; a million = open.
            brush_ohm: 0.0 ..= 1000000.0,
            /// Further dry friction of a dragging rotor, N·m.
            drag_nm: 0.0 ..= 10.0,
        }
    }
}

impl VacuumPump {
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

    /// Slope of the compression torque over the inlet pressure, N·m/Pa: D/2π ((v^{γ−1} − 1)/(γ − 1) − 1).
    #[must_use]
    pub fn compression_slope(&self) -> f64 {
        let v = self.volume_ratio;
        self.swept_m3_per_rad() * ((math::pow(v, GAMMA - 1.0) - 1.0) / (GAMMA - 1.0) - 1.0)
    }

    /// Torque of compression from `p_in` to `p_out` (absolute, Pa), N·m, and its slope over p_in.
    #[must_use]
    pub fn compression_torque(&self, p_in: f64, p_out: f64) -> (f64, f64) {
        let slope = self.compression_slope();
        (self.swept_m3_per_rad() * p_out / self.volume_ratio + p_in * slope, slope)
    }

    /// The numbers of its motor and rotor.
    #[must_use]
    pub fn motor(&self) -> MotorLaw {
        MotorLaw {
            winding_ohm: self.winding_ohm,
            brush_ohm: self.brush_ohm,
            motor_k: self.motor_k,
            dry_nm: self.friction_nm + self.drag_nm,
            viscous: self.viscous_mnms * 1e-3,
            inertia: self.inertia_kgcm2 * 1e-4,
            winding_j_per_k: self.winding_j_per_k,
            case_j_per_k: self.case_j_per_k,
            winding_w_per_k: self.winding_w_per_k,
            case_w_per_k: self.case_w_per_k,
        }
    }

    /// Resistance of the inlet nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for VacuumPump {
    const SEEN: Seen = Seen::ONE_WAY;

    fn spec(&self, p_atm: f64) -> Spec {
        let moved = |is, bounds, start| State { is, bounds, start, follows: None };
        let (compression, compression_p) = self.compression_torque(0.0, p_atm);
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::Inlet, self.inlet_cm3)],
                mouths: vec![Mouth::body(0, self.nipple())],
                flow_paths: FlowPath::pumped(Chamber::Body, self.swept_m3_per_rad(), self.slip()).to_vec(),
            },
            electric: Electric::one("motor", 1, 2, Worth::Motor),
            states: vec![
                moved(Quantity::Winding, Bounds::TEMPERATURE, Start::Room),
                moved(Quantity::Case, Bounds::TEMPERATURE, Start::Room),
                moved(Quantity::Speed, Bounds::SPEED, Start::At(0.0)),
            ],
            machines: vec![Machine::Rotor {
                motor: self.motor(),
                compression,
                compression_p,
                inlet: Chamber::Body,
                pole: 0,
            }],
            switches: vec![Switch::Hum],
        }
    }
}
