//! The physical side of what a hand connects: each is a volume, a resistance or a source of its own.
//!
//! Errors, spans and dials live in the instrument's card ([`crate::instrument`]); here is only what
//! the circuit feels. Filament: C dT/dt = v²/R(T) − k (T⁴ − T_a⁴), R ∝ T^1.2 (tungsten, from memory).
//! In balance that gives I ∝ V^0.54, P ∝ V^1.54, T ∝ V^0.38, near the re-rating exponents of row 6.10.
//! Between 16 °C and the rated 2 750 K the resistance grows 14.9 times; the textbook of row 6.11 has
//! 12.95 because it carries the coefficient measured near 0 °C on to 2 750 °C, where tungsten bends up.

use crate::math;
use crate::params::part_params;

part_params! {
    /// Dial gauge on a hose; port `stem` (pneumatic).
    pub struct VacuumGauge {
        /// Volume of gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

part_params! {
    /// Hand vacuum pump with its gauge; port `stem` (pneumatic).
    pub struct HandPump {
        /// Air moved per stroke, cm³.
        stroke_cm3: 2.0 ..= 200.0,
        /// Pressure it can reach, share of the day's pressure.
        ultimate_share: 0.01 ..= 0.5,
        /// Volume of pump, gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

part_params! {
    /// Test lamp with two leads; ports `a` and `b`.
    pub struct TestLamp {
        /// Rated power, W.
        rated_w: 1.0 ..= 100.0,
        /// Rated voltage, V.
        rated_v: 6.0 ..= 24.0,
        faults {}
    }
}

/// Hole of a hand pump's release lever while it is held, mm: it lets a booster's store down by less
/// than a kPa a second, slowly enough to read a gauge by (from memory).
pub const HAND_PUMP_VENT_MM: f64 = 0.4;

/// Filament temperature at rated voltage, K.
pub const FILAMENT_RATED_K: f64 = 2_750.0;

impl TestLamp {
    /// Filament resistance at `t_k`, ohm, and its slope.
    #[must_use]
    pub fn resistance_ohm(&self, t_k: f64) -> (f64, f64) {
        let hot = self.rated_v * self.rated_v / self.rated_w;
        let r = hot * math::pow(t_k / FILAMENT_RATED_K, 1.2);
        (r, 1.2 * r / t_k)
    }

    /// Heat capacity of the filament, J/K: it reaches half light in some 60 ms (from memory).
    #[must_use]
    pub fn filament_j_per_k(&self) -> f64 {
        self.rated_w * 0.06 / FILAMENT_RATED_K * 2.0
    }

    /// Power radiated at `t_k` in surroundings of `t_amb_k`, W, and its slope over t_k.
    #[must_use]
    pub fn radiated_w(&self, t_k: f64, t_amb_k: f64) -> (f64, f64) {
        let k = self.rated_w / math::pow(FILAMENT_RATED_K, 4.0);
        let q = |t: f64| t * t * t * t;
        (k * (q(t_k) - q(t_amb_k)), 4.0 * k * t_k * t_k * t_k)
    }

    /// How fast the filament at `t_k` warms with `v` volts across the lamp, K/s, and the slope over `t_k`.
    #[must_use]
    pub fn heating(&self, v: f64, t_k: f64, t_amb_k: f64) -> (f64, f64) {
        let (r, r_t) = self.resistance_ohm(t_k);
        let (loss, loss_t) = self.radiated_w(t_k, t_amb_k);
        let c = self.filament_j_per_k();
        ((v * v / r - loss) / c, (-v * v / (r * r) * r_t - loss_t) / c)
    }
}

/// What a multimeter is set to.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
pub enum MeterMode {
    /// Off: an open circuit.
    #[default]
    Off,
    /// DC volts.
    Volt,
    /// Resistance, from its own source.
    Ohm,
    /// DC amperes through the fused socket.
    Ampere,
}

part_params! {
    /// Multimeter; ports `v_ohm` (red) and `com` (black).
    pub struct Multimeter {
        /// Input resistance when measuring voltage, MΩ.
        input_megohm: 0.01 ..= 100.0,
        /// Resistance of the shunt and its leads, mΩ.
        shunt_mohm: 1.0 ..= 1000.0,
        /// Resistance of the two leads, ohm.
        leads_ohm: 0.0 ..= 2.0,
        /// Rating of the fuse in the ampere socket, A.
        fuse_a: 0.1 ..= 30.0,
        /// Open-circuit voltage of the ohm range, V.
        ohm_source_v: 0.1 ..= 9.0,
        /// Source resistance of the ohm range, kΩ.
        ohm_source_kohm: 0.1 ..= 100.0,
        faults {}
    }
}

part_params! {
    /// Fused lead with a push button; ports `a` and `b`, joined while the button is pressed.
    pub struct PushLead {
        /// Resistance while pressed, mΩ.
        mohm: 1.0 ..= 1000.0,
        /// Rating of its fuse, A.
        fuse_a: 1.0 ..= 40.0,
        faults {}
    }
}
