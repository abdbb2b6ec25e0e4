//! Dry ideal air and the atmosphere of the day.
//!
//! R and the standard atmosphere are ISO 2533 (rows 4.1–4.4 of the check values); γ = 1.4.
//! Not modelled: humidity, real-gas effects (below 0.3 % here, row 4.8).

use crate::math;
use crate::units::AbsPressure;

/// Specific gas constant of dry air, J/(kg·K) (ISO 2533).
pub const R_AIR: f64 = 287.052_87;
/// Ratio of specific heats.
pub const GAMMA: f64 = 1.4;
/// Specific heat at constant volume, J/(kg·K).
pub const CV: f64 = R_AIR / (GAMMA - 1.0);
/// Specific heat at constant pressure, J/(kg·K).
pub const CP: f64 = CV * GAMMA;
/// 0 °C in kelvin.
pub const ZERO_CELSIUS_K: f64 = 273.15;
/// Standard sea-level pressure, Pa.
pub const P_SEA_LEVEL_PA: f64 = 101_325.0;

/// The air outside: where the car stands and what the weather does.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Day {
    /// Geometric altitude above sea level, m (−400 to 4 500).
    pub altitude_m: f64,
    /// Weather: departure of the station pressure from the standard atmosphere, kPa (−6 to +5).
    pub weather_kpa: f64,
    /// Air temperature in the workshop, °C (−30 to 45).
    pub ambient_c: f64,
    /// How much colder the air gets overnight, K (0 to 25).
    #[serde(default)]
    pub night_drop_k: f64,
}

impl Day {
    /// Sea level, standard pressure, 20 °C.
    pub const STANDARD: Self = Self { altitude_m: 0.0, weather_kpa: 0.0, ambient_c: 20.0, night_drop_k: 0.0 };

    /// Pressure of the day at the station.
    #[must_use]
    pub fn pressure(&self) -> AbsPressure {
        AbsPressure::from_pa(standard_pressure(self.altitude_m).pa() + self.weather_kpa * 1e3)
    }

    /// Ambient temperature, K.
    #[must_use]
    pub fn ambient_k(&self) -> f64 {
        self.ambient_c + ZERO_CELSIUS_K
    }
}

/// Standard-atmosphere pressure at the geometric altitude `z_m` in m (troposphere, ISO 2533).
#[must_use]
pub fn standard_pressure(z_m: f64) -> AbsPressure {
    const R_EARTH_M: f64 = 6_356_766.0;
    const EXPONENT: f64 = 5.255_876;
    let h = R_EARTH_M * z_m / (R_EARTH_M + z_m);
    AbsPressure::from_pa(P_SEA_LEVEL_PA * math::pow(1.0 - 0.0065 * h / 288.15, EXPONENT))
}

/// Standard-atmosphere temperature at the geometric altitude `z_m` in m, K (troposphere).
#[must_use]
pub fn standard_temperature_k(z_m: f64) -> f64 {
    const R_EARTH_M: f64 = 6_356_766.0;
    288.15 - 0.0065 * (R_EARTH_M * z_m / (R_EARTH_M + z_m))
}
