//! Meters in a circuit: what their own resistance does, and what they tell about a battery or a winding.

use sim_core::air::Day;
use sim_core::parts::PartKind;
use sim_core::parts::electrical::{Battery, Wire};
use sim_core::parts::instruments::MeterMode;

use super::{Table, checks};
use crate::rig::{Bench, Rig, body, multimeter, resistor, supply};

checks! {
    val_voltmeter_loading through Step {
        /// The row asks for 1e-6; loose ends are tied to the body by 1 nS, which 10 kΩ feels as 1e-5.
        LOOSE_ENDS = 2e-5;
        "6.17" of "Sawhney, Electrical and Electronic Measurements, ch. 2" => [
            value("6 V behind 10 kΩ, meter 20 kΩ", "V", 4.0, rel(LOOSE_ENDS)),
            value("6 V behind 1 kΩ, meter 20 kΩ", "V", 5.714, half_digit(3)),
            value("50 V behind 100 Ω, meter 1 kΩ", "V", 45.454_5, half_digit(4)),
        ];
    }

    val_open_circuit_voltage_by_meter through Step {
        /// The row states it.
        STATED = 0.02;
        "6.7" of "battery maker's table 6, 12 V flooded, 26.7 °C" => [
            series(
                "charge {}",
                "V",
                &[(1.0, 12.65), (0.75, 12.45), (0.5, 12.24), (0.25, 12.06), (0.0, 11.89)],
                abs(STATED),
            ),
        ];
    }

    reg_voltage_drop_along_a_wire through Step {
        /// The supply's micro-ohm beside one ohm takes 15 µA.
        BESIDE_A = 2e-5;
        /// Our one stranding factor against the table's 1.5 mm² (row 6.3).
        STRANDING = 0.01;
        "6.6" of "5 m of 1.5 mm² one way at 15 A, 20 °C, computed" => [
            value("current", "A", 15.0, abs(BESIDE_A)),
            value("drop", "V", 0.997_5, rel(STRANDING)),
        ];
    }

    val_winding_temperature_by_ohmmeter through Step {
        /// The book's α₀ = 0.004 26 at 0 °C against IEC's α₂₀ = 0.003 93: 0.13 % of some 60 K; the meter's
        /// leads and a winding that cools while it is read.
        COEFFICIENT_K = 0.6;
        "6.5" of "Kulshreshtha, Basic Electrical Engineering, ch. 2: the method" => [
            band("winding of a pump that has run", "°C", 45.0, 140.0),
            formula(
                "winding by ohmmeter and the book's method",
                "°C",
                "the winding's own temperature",
                abs(COEFFICIENT_K),
            ),
        ];
    }

    val_dash_gauge_class_from_the_kit through Own {
        /// Both sides are the kit's own figures: rounding only.
        ROUNDING = 1e-9;
        // Row 6.22: class is a percentage of the span. The kit's gauges: −100 to 0 kPa (row 6.24).
        "6.22 with 6.24" of "EN 837-1 through a gauge maker's manual" => [
            value("{}: span", "kPa", 100.0, abs(ROUNDING)),
            formula("{}: error that its class allows", "±kPa", "class, % of 100 kPa", abs(ROUNDING)),
        ];
    }
}

/// A source of `volt` behind `ohm`, with a voltmeter of `input_ohm` across it; what the meter shows, V.
fn shown_v(volt: f64, ohm: f64, input_ohm: f64) -> f64 {
    let mut bench = Rig::default()
        .part("source", supply(volt, ohm))
        .part("body", body())
        .part("meter", multimeter(input_ohm * 1e-6))
        .join("source.minus", "body.31a")
        .join("meter.com", "body.31b")
        .join("meter.v_ohm", "source.plus")
        .on(Day::STANDARD, &[]);
    read(&mut bench, MeterMode::Volt)
}

fn read(bench: &mut Bench, mode: MeterMode) -> f64 {
    let meter = bench.part("meter");
    bench.circuit.inputs_mut().hands[meter as usize].mode = mode;
    bench.run_s(1.0);
    bench.circuit.meter(meter).unwrap_or_else(|| panic!("the meter shows nothing"))
}

fn val_voltmeter_loading(t: &mut Table) {
    t.is("6 V behind 10 kΩ, meter 20 kΩ", shown_v(6.0, 10e3, 20e3));
    t.is("6 V behind 1 kΩ, meter 20 kΩ", shown_v(6.0, 1e3, 20e3));
    t.is("50 V behind 100 Ω, meter 1 kΩ", shown_v(50.0, 100.0, 1e3));
}

fn val_open_circuit_voltage_by_meter(t: &mut Table) {
    t.series("charge {}", |charge| {
        let battery = Battery { capacity_ah: 50.0, charge, internal_mohm: 8.0, aged_mohm: 0.0 };
        let mut bench = Rig::default()
            .part("battery", PartKind::Battery(battery))
            .part("body", body())
            .part("meter", multimeter(10.0))
            .join("battery.minus", "body.31a")
            .join("meter.com", "body.31b")
            .join("meter.v_ohm", "battery.plus")
            .on(Day::STANDARD, &[]);
        read(&mut bench, MeterMode::Volt)
    });
}

fn reg_voltage_drop_along_a_wire(t: &mut Table) {
    let wire = Wire { length_m: 5.0, area_mm2: 1.5, corroded_ohm: 0.0 };
    let mut bench = Rig::default()
        .part("supply", supply(15.0, 1e-6))
        .part("wire", PartKind::Wire(wire))
        .part("load", resistor(1.0 - wire.resistance_ohm()))
        .part("body", body())
        .part("meter", multimeter(10.0))
        .join("supply.minus", "body.31a")
        .join("supply.plus", "wire.a")
        .join("wire.b", "load.a")
        .join("load.b", "body.31b")
        .join("meter.v_ohm", "wire.a")
        .join("meter.com", "wire.b")
        .on(Day::STANDARD, &[]);
    let drop = read(&mut bench, MeterMode::Volt);
    t.is("current", bench.circuit.current(bench.port("load.a")));
    t.is("drop", drop);
}

fn val_winding_temperature_by_ohmmeter(t: &mut Table) {
    let mut bench = hot_pump();
    let before = bench.circuit.winding_c(bench.part("pump"));
    let cold_ohm = bench.circuit.assembly().param("pump.winding_ohm").unwrap();
    let meter = bench.part("meter");
    bench.circuit.inputs_mut().hands[meter as usize].mode = MeterMode::Ohm;
    bench.run_s(0.1);
    let hot_ohm = bench.circuit.meter(meter).unwrap() - 0.2;
    // R_hot/R_cold = (1 + α₀ t)/(1 + α₀ 20) by the book.
    let by_book = (hot_ohm / cold_ohm * (1.0 + 0.004_26 * 20.0) - 1.0) / 0.004_26;
    t.is("winding of a pump that has run", before);
    t.follows("winding by ohmmeter and the book's method", by_book, before);
}

/// Alder's pump after ten minutes on a bench supply, at rest again, an ohmmeter across it.
fn hot_pump() -> Bench {
    let mut bench = Rig::default()
        .part("pump", crate::rig::alder_part("pump"))
        .part("supply", supply(13.5, 1e-3))
        .part("lead", PartKind::PushLead(sim_core::parts::instruments::PushLead { mohm: 5.0, fuse_a: 40.0 }))
        .part("body", body())
        .part("meter", multimeter(10.0))
        .join("supply.minus", "body.31a")
        .join("supply.plus", "lead.a")
        .join("lead.b", "pump.plus")
        .join("pump.minus", "body.31b")
        .join("meter.v_ohm", "pump.plus")
        .join("meter.com", "body.31c")
        .on(Day::STANDARD, &[]);
    let lead = bench.part("lead") as usize;
    bench.circuit.inputs_mut().hands[lead].pressed = true;
    bench.run_s(600.0);
    bench.circuit.inputs_mut().hands[lead].pressed = false;
    bench.run_s(3.0);
    bench
}

fn val_dash_gauge_class_from_the_kit(t: &mut Table) {
    use sim_core::instrument::InstrumentKind;
    let library = crate::rig::library();
    for card in library.kit().iter() {
        if let InstrumentKind::Gauge { dial } | InstrumentKind::HandPump { dial } = card.kind {
            let allowed = dial.class / 100.0 * (dial.max - dial.min);
            t.is_for("{}: span", &card.id, dial.max - dial.min);
            t.follows_for("{}: error that its class allows", &card.id, allowed, dial.class);
        }
    }
}
