//! Lead-acid battery and copper wire.

use sim_core::parts::electrical::{Battery, Wire};
use sim_core::parts::vacuum_pump::ALPHA_COPPER;

use super::{Table, checks};

checks! {
    val_open_circuit_voltage_by_charge through Law(Battery::open_circuit_v) {
        /// The row states it.
        STATED = 0.02;
        "6.7" of "battery maker's table 6, 12 V flooded, 26.7 °C" => [
            series(
                "charge {}",
                "V",
                &[(1.0, 12.65), (0.75, 12.45), (0.5, 12.24), (0.25, 12.06), (0.0, 11.89)],
                abs(STATED),
            ),
            series("second source, charge {}", "V", &[(1.0, 12.66), (0.6, 12.32), (0.3, 12.10)], abs(STATED)),
        ];
    }

    val_flexible_copper_resistance through Law(Wire::resistance_ohm) {
        /// Our one stranding factor, 15 %, against 13 to 16 % in the table.
        STRANDING = 0.02;
        "6.3" of "IEC 60228 class 5 as reproduced by two cable firms" => [
            series(
                "{} mm²",
                "mΩ/m",
                &[(0.5, 39.0), (0.75, 26.0), (1.0, 19.5), (1.5, 13.3), (2.5, 7.98), (4.0, 4.95), (6.0, 3.30)],
                rel(STRANDING),
            ),
        ];
    }

    val_copper_resistivity through Law(Wire::resistance_ohm) {
        // Class 5 strands add 13 to 16 % to the bare metal (row 6.3 over row 6.1).
        "6.1" of "IEC 60228 note: 17.241 Ω mm²/km" => [
            bands(
                "{} mm² over bare copper",
                "1",
                &[(0.5, 1.13, 1.16), (2.5, 1.13, 1.16), (25.0, 1.13, 1.16)],
            ),
        ];
    }

    reg_vehicle_cable_from_memory through Law(Wire::resistance_ohm) {
        /// The row is from memory and said to lie about 5 % below IEC 60228 class 5.
        MEMORY = 0.08;
        "6.4" of "ISO 6722 (from memory)" => [
            series(
                "{} mm²",
                "mΩ/m",
                &[(0.5, 37.1), (0.75, 24.7), (1.0, 18.5), (1.5, 12.7), (2.5, 7.60)],
                rel(MEMORY),
            ),
        ];
    }

    val_temperature_of_copper through Own {
        /// IEC's printed factors differ from 1/(1 + 0.003 93 ΔT) by up to 0.4 % (the row says so).
        IEC_PRINT = 0.004;
        "6.2" of "IEC 60228 correction factors as reproduced by a cable firm" => [
            series(
                "{} °C",
                "1",
                &[(5.0, 1.064), (40.0, 0.926), (75.0, 0.820), (100.0, 0.758)],
                rel(IEC_PRINT),
            ),
        ];
    }
}

fn wire(area_mm2: f64) -> Wire {
    Wire { length_m: 1.0, area_mm2, corroded_ohm: 0.0 }
}

fn val_open_circuit_voltage_by_charge(t: &mut Table) {
    t.series("charge {}", Battery::open_circuit_v);
    t.series("second source, charge {}", Battery::open_circuit_v);
}

fn val_flexible_copper_resistance(t: &mut Table) {
    t.series("{} mm²", |area| wire(area).resistance_ohm() * 1e3);
}

fn val_copper_resistivity(t: &mut Table) {
    t.series("{} mm² over bare copper", |area| {
        let bare = 17.241e-3 / area;
        wire(area).resistance_ohm() / bare
    });
}

fn reg_vehicle_cable_from_memory(t: &mut Table) {
    t.series("{} mm²", |area| wire(area).resistance_ohm() * 1e3);
}

fn val_temperature_of_copper(t: &mut Table) {
    t.series("{} °C", |celsius| 1.0 / (1.0 + ALPHA_COPPER * (celsius - 20.0)));
}
