//! Standard atmosphere (ISO 2533, ICAO, USSA 1976) and the air's constants.

use sim_core::air::{Day, GAMMA, P_SEA_LEVEL_PA, R_AIR, standard_pressure, standard_temperature_k};
use sim_core::parts::engine::{Engine, EngineState};
use sim_core::units::{GaugePressure, PA_PER_INHG};

use super::{Table, half_digit};

/// Geometric altitude of a geopotential one, m.
fn geometric(h: f64) -> f64 {
    6_356_766.0 * h / (6_356_766.0 - h)
}

#[test]
fn val_standard_atmosphere_pressure() {
    /// The row asks for 5e-5 relative.
    const ASKED: f64 = 5e-5;
    let mut t = Table::of("`fluids` 1.3.1 and its test table (PDAS, USSA 1976), geometric altitude", "4.3");
    for (z, printed) in [(2_000.0, 79_501.0), (4_000.0, 61_660.0), (-2_000.0, 127_780.0)] {
        t.near_rel(&format!("{z} m, table, Pa"), standard_pressure(z).pa(), printed, ASKED);
    }
    // Run of the library, printed to a tenth of a pascal.
    for (z, run) in [
        (0.0, 101_325.0),
        (500.0, 95_461.3),
        (1_000.0, 89_876.3),
        (1_500.0, 84_559.7),
        (2_000.0, 79_501.4),
        (2_500.0, 74_691.8),
        (3_000.0, 70_121.2),
    ] {
        t.near(&format!("{z} m, library run, Pa"), standard_pressure(z).pa(), run, half_digit(1));
    }
}

#[test]
fn reg_standard_atmosphere_by_geopotential_altitude() {
    let mut t = Table::of("ISO 2533 by geopotential altitude, computed", "4.2, 4.4");
    for (h, printed) in [
        (500.0, 95_460.8),
        (1_000.0, 89_874.6),
        (1_500.0, 84_556.0),
        (2_000.0, 79_495.2),
        (2_500.0, 74_682.5),
        (3_000.0, 70_108.5),
    ] {
        t.near(&format!("{h} m, Pa"), standard_pressure(geometric(h)).pa(), printed, half_digit(1));
    }
}

#[test]
fn val_standard_atmosphere_exponent() {
    /// Printed to six decimals; read back from our pressures, which costs a digit.
    const READ_BACK: f64 = 2e-6;
    let theta = standard_temperature_k(3_000.0) / 288.15;
    let exponent = f64::ln(standard_pressure(3_000.0).pa() / P_SEA_LEVEL_PA) / f64::ln(theta);
    Table::of("USSA 1976 by a university's balloon page", "4.2")
        .near("exponent", exponent, 5.255_876, READ_BACK);
}

#[test]
fn val_standard_atmosphere_temperature() {
    let mut t = Table::of("`fluids` 1.3.1: table entry at 2000 m, run elsewhere", "4.5");
    t.near("2000 m, table, K", standard_temperature_k(2_000.0), 275.15, half_digit(2));
    let run = [284.900, 281.651, 278.402, 275.154, 271.906, 268.659];
    for (i, printed) in run.into_iter().enumerate() {
        let z = 500.0 * (i + 1) as f64;
        t.near(&format!("{z} m, K"), standard_temperature_k(z), printed, half_digit(3));
    }
}

#[test]
fn val_sea_level_density_and_sound() {
    let mut t = Table::of("`fluids` test table (USSA 1976)", "4.6");
    let density = |z: f64| standard_pressure(z).pa() / (R_AIR * standard_temperature_k(z));
    let sound = |z: f64| f64::sqrt(GAMMA * R_AIR * standard_temperature_k(z));
    t.near("density at sea level, kg/m³", density(0.0), 1.225_0, half_digit(4));
    t.near("density at 2000 m, kg/m³", density(2_000.0), 1.006_6, half_digit(4));
    t.near("speed of sound at sea level, m/s", sound(0.0), 340.29, half_digit(2));
    t.near("speed of sound at 2000 m, m/s", sound(2_000.0), 332.53, half_digit(2));
}

#[test]
fn reg_ideal_dry_air_at_20_c() {
    let mut t = Table::of("p/(R T), computed", "4.9");
    let rho = |p: f64| p / (R_AIR * Day::STANDARD.ambient_k());
    t.near("101 325 Pa, kg/m³", rho(101_325.0), 1.204_11, half_digit(5));
    t.near("100 kPa, kg/m³", rho(100e3), 1.188_36, half_digit(5));
}

#[test]
fn val_manifold_gauge_at_altitude() {
    /// "About", in whole inches: half an inch either way.
    const ABOUT: f64 = 0.5;
    /// Computed alongside, printed to three decimals.
    const COMPUTED: f64 = 0.002;
    let engine = Engine {
        warm_idle_kpa: -66.0,
        cold_idle_kpa: -45.0,
        cruise_kpa: -55.0,
        overrun_kpa: -82.0,
        wide_open_kpa: -2.0,
        lag_s: 0.3,
        bore_mm: 9.0,
        alternator_v: 14.2,
        alternator_ohm: 0.05,
        weak_kpa: 0.0,
    };
    let vacuum_inhg = |feet: f64| {
        let day = Day { altitude_m: feet * 0.304_8, ..Day::STANDARD };
        let p = engine.target_pa(EngineState::WarmIdle, day.pressure().pa());
        -GaugePressure::from_pa(p - day.pressure().pa()).inhg()
    };
    let lost = |feet: f64| vacuum_inhg(0.0) - vacuum_inhg(feet);
    let mut t = Table::of("US Army Ordnance course OD1001", "4.10");
    t.near("first 1000 ft, inHg less", lost(1_000.0), 1.0, ABOUT);
    t.near("5000 ft, inHg less", lost(5_000.0), 5.0, ABOUT);
    t.near("first 1000 ft, computed, inHg", lost(1_000.0), 1.066, COMPUTED);
    t.near("5000 ft, computed, inHg", lost(5_000.0), 5.025, COMPUTED);
    // Any gauge at a fixed absolute pressure shows the same difference.
    let day = Day { altitude_m: 1_524.0, ..Day::STANDARD };
    t.near("1524 m, computed, inHg", (P_SEA_LEVEL_PA - day.pressure().pa()) / PA_PER_INHG, 5.025, COMPUTED);
}
