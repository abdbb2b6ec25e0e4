//! Restrictions and holes as parts of a circuit: the same rows, through the circuit's own step.

use sim_core::flow::iso6358::C_PER_MM2;
use sim_core::flow::pinhole::perry;
use sim_core::parts::PartKind;
use sim_core::parts::booster::Booster;
use sim_core::units::PA_PER_INHG;

use super::{Table, checks};
use crate::rig::{Bench, ISOTHERMAL_M2, Rig, constant_pump, day_of, tee, vessel, vessel_and_pump};

checks! {
    val_iso_6358_example_in_the_circuit through Step {
        /// The row asks for 1e-7 kg/s; the flow has settled, so the step adds nothing.
        ASKED = 1e-7;
        "2.8" of "ISO 6358, checked example in public notes" => [
            band("pressure behind the restriction", "Pa", 80e3, 120e3),
            value("C = 1e-8, 700 to 100 kPa", "kg/s", 0.008_295, abs(ASKED)),
        ];
    }

    val_suction_plateau_in_the_circuit through Step {
        /// An ISO 6358 nipple (b = 0.4) chokes at 18 inHg, an ideal hole at 14: between 15 and 18 inHg the
        /// nipple is up to 1.4 % below its plateau. "Fixed" on a shop gauge.
        NIPPLE = 0.016;
        "2.25" of "orifice tutorial: fixed between 15 and 30 inHg of vacuum" => [
            band("deepest vacuum", "inHg", 28.0, 29.9),
            band("vacuum at {} L/s", "inHg", 15.0, 30.0),
            value("flow at {} inHg over that at the deepest", "1", 1.0, rel(NIPPLE)),
            band("before the plateau, at {} inHg", "1", 0.3, 0.95),
        ];
    }

    val_punctured_tyre_in_the_circuit through Step {
        /// Printed to five decimals of kg/s, 0.05 %; the temperature behind the hole does not matter.
        PRINTED = 6e-4;
        "2.14" of "Çengel & Cimbala, Ex. 12-5" => [
            band("pressure behind the hole", "Pa", 80e3, 110e3),
            value("4 mm, 314 kPa, ideal flow", "kg/s", 0.009_24, rel(PRINTED)),
        ];
    }

    reg_pinhole_table_in_the_circuit through Step {
        /// Four printed digits, and the last pascals of settling.
        FOUR_DIGITS = 1e-3;
        "2.18" of "ideal hole from the atmosphere into vacuum, computed" => [
            band("pressure behind {} mm", "Pa", 5e3, 30e3),
            series(
                "{} mm over its coefficient",
                "kg/s",
                &[(0.2, 7.514e-6), (0.5, 4.696e-5), (1.0, 1.878_5e-4)],
                rel(FOUR_DIGITS),
            ),
        ];
    }

    val_leak_table_order_of_magnitude_in_the_circuit through Step {
        /// Powers of ten only.
        HALF_A_DECADE = 0.5;
        "2.19" of "published leak table of a leak-testing firm" => [
            series(
                "{} mm, by rise of pressure",
                "log₁₀ of mbar L/s",
                &[(1.0, 2.0), (0.1, 0.0)],
                abs(HALF_A_DECADE),
            ),
        ];
    }

    val_leak_rate_by_rise_of_pressure through Step {
        /// The step's error, 8 Pa, over the rise in 2 s; the 2 cm³ of the pump.
        STEP = 3e-3;
        "2.20, 3.20 with 2.22" of "leak-testing firm's page: definition of the unit; rise computed" => [
            formula(
                "{} mm, 5 L",
                "kPa/s",
                "the ideal hole's rate (row 2.22: 3.161 and 0.7904) × C_d",
                rel(STEP),
            ),
        ];
    }

    reg_leak_up_times through Step {
        /// The step's error, 0.05 kPa at most on the way, over the slowest rise asked for.
        STEP = 2e-3;
        "2.23" of "leak-up, 0.5 mm, 5 L, isothermal, with the sharp hole's coefficient" => [
            formula("to {} kPa", "s", "∫ V/(q C_d) dp", rel(STEP)),
            value("ideal hole, 20 to 80 kPa", "s", 77.89, half_digit(2)),
        ];
    }

    val_gauge_at_altitude through Step {
        /// "About 20": whole inches, and the gauge's own half inch.
        ABOUT_20 = 1.0;
        /// "About", in whole inches.
        ABOUT = 0.5;
        "4.10, 9.1" of "US Army Ordnance course OD1001" => [
            value("Alder at warm idle at sea level (about 20)", "inHg", 20.0, abs(ABOUT_20)),
            series("{} ft, less than at sea level", "inHg", &[(1_000.0, 1.0), (5_000.0, 5.0)], abs(ABOUT)),
        ];
    }

    reg_joint_puts_its_two_nipples_in_a_row through Step {
        /// The flow has settled; b of both nipples is the same.
        SETTLED = 1e-6;
        "2.28 with 2.6" of "rule for elements in a row (from memory)" => [
            band("pump side (choked), over the day's pressure", "1", 0.05, 0.39),
            formula("flow", "kg/s", "1/C² = Σ 1/Cᵢ², ρ₀ p₀ C", rel(SETTLED)),
        ];
    }
}

/// A pump of constant speed that draws the day's air through its own stem of conductance `c`, m³/(s Pa).
fn stem_rig(c: f64, pa: f64, celsius: f64) -> Bench {
    let bore_mm = f64::sqrt(c / (0.8 * C_PER_MM2) / std::f64::consts::FRAC_PI_4);
    Rig::default()
        .part("mouth", tee(500.0, 1e3, 0.0))
        .part("suction", constant_pump(1.0, 0.0, bore_mm))
        .join("suction.stem", "mouth.1")
        .on(day_of(pa, celsius), &["mouth.2", "mouth.3", "mouth.4"])
}

fn val_iso_6358_example_in_the_circuit(t: &mut Table) {
    let mut bench = stem_rig(1e-8, 700e3, 20.0);
    // 7 L/s hold the pump side near 100 kPa; any pressure below 0.4 of 700 kPa is choked as well.
    bench.stroke("suction", 7.0);
    bench.run_s(10.0);
    t.is("pressure behind the restriction", bench.pa("suction.stem"));
    let m = -bench.circuit.m_flow_out(bench.port("suction.stem"));
    t.is("C = 1e-8, 700 to 100 kPa", m);
}

fn val_suction_plateau_in_the_circuit(t: &mut Table) {
    let flow_at = |litre_per_s: f64| {
        let mut bench = stem_rig(2e-9, 101_325.0, 20.0);
        bench.stroke("suction", litre_per_s);
        bench.run_s(20.0);
        let vacuum = -bench.kpa_gauge("suction.stem") * 1e3 / PA_PER_INHG;
        (vacuum, -bench.circuit.m_flow_out(bench.port("suction.stem")))
    };
    let deep = flow_at(8.0);
    t.is("deepest vacuum", deep.0);
    for litre_per_s in [0.41, 0.45, 0.5, 0.6, 0.8, 1.5] {
        let (inhg, m) = flow_at(litre_per_s);
        t.is_for("vacuum at {} L/s", litre_per_s, inhg);
        t.is_for("flow at {} inHg over that at the deepest", inhg, m / deep.1);
    }
    let (inhg, m) = flow_at(0.2);
    t.is_for("before the plateau, at {} inHg", inhg, m / deep.1);
}

/// A cracked tee drawn to a steady pressure: (pressure behind the crack, flow through it).
fn crack(d_mm: f64, pa: f64, celsius: f64, litre_per_s: f64) -> (f64, f64) {
    let mut bench = Rig::default()
        .part("tee", tee(50.0, 100.0, d_mm))
        .part("suction", constant_pump(1.0, 0.0, 50.0))
        .join("suction.stem", "tee.1")
        .on(day_of(pa, celsius), &[]);
    bench.stroke("suction", litre_per_s);
    bench.run_s(60.0);
    (bench.pa("tee.1"), bench.circuit.hiss(bench.part("tee")))
}

fn val_punctured_tyre_in_the_circuit(t: &mut Table) {
    // The book's hole is ideal; ours is sharp-edged: its coefficient is taken out again (row 2.16).
    let (p, m) = crack(4.0, 314e3, 298.0 - 273.15, 6.75);
    t.is("pressure behind the hole", p);
    t.is("4 mm, 314 kPa, ideal flow", m / perry(p / 314e3).0);
}

fn reg_pinhole_table_in_the_circuit(t: &mut Table) {
    for (d_mm, litre_per_s) in [(0.2, 0.03), (0.5, 0.2), (1.0, 0.8)] {
        let (p, m) = crack(d_mm, 101_325.0, 20.0, litre_per_s);
        t.is_for("pressure behind {} mm", d_mm, p);
        t.at("{} mm over its coefficient", d_mm, m / perry(p / 101_325.0).0);
    }
}

fn val_leak_table_order_of_magnitude_in_the_circuit(t: &mut Table) {
    t.series("{} mm, by rise of pressure", |d_mm| f64::log10(rise_mbar_l_per_s(d_mm)));
}

/// V Δp/Δt of a holed vessel of 5 L after it was drawn to some 10 kPa, mbar L/s (rows 2.20, 3.20).
fn rise_mbar_l_per_s(d_mm: f64) -> f64 {
    let (rise, _) = rise(d_mm);
    rise * 1e-2 * 5.0
}

/// Rate of rise, Pa/s, and the pressure at which it was taken, Pa.
fn rise(d_mm: f64) -> (f64, f64) {
    let holed = Booster { rim_mm: d_mm, ..vessel(5.0, ISOTHERMAL_M2) };
    let mut bench = vessel_and_pump(holed, 0.0, day_of(101_325.0, 20.0));
    bench.stroke("suction", 10.0);
    bench.when_fallen(0.05, 60.0, 10e3, |b| b.pa("vessel.vacuum"));
    bench.stroke("suction", 0.0);
    bench.run_s(1.0);
    let before = bench.pa("vessel.vacuum");
    bench.run_s(2.0);
    let after = bench.pa("vessel.vacuum");
    ((after - before) / 2.0, 0.5 * (before + after))
}

fn val_leak_rate_by_rise_of_pressure(t: &mut Table) {
    // q = V Δp/Δt (definition of the unit) must be the throughput of the hole: C_d × row 2.22.
    for (d_mm, ideal) in [(1.0, 3.161), (0.5, 0.790_4)] {
        let (rate, p) = rise(d_mm);
        let expected = ideal * perry(p / 101_325.0).0;
        t.follows_for("{} mm, 5 L", d_mm, rate * 1e-3, expected);
    }
}

fn reg_leak_up_times(t: &mut Table) {
    // Row 2.23 with the sharp hole's coefficient: the same integral, ∫ V/(q C_d) dp, by the midpoint rule.
    let q_choked = 198.63 * 101_325.0 * std::f64::consts::FRAC_PI_4 * 0.25e-6;
    let seconds = |from: f64, to: f64| {
        let n = 20_000;
        let h = (to - from) / f64::from(n);
        (0..n)
            .map(|i| {
                let r = (from + h * (f64::from(i) + 0.5)) / 101_325.0;
                let psi = sim_core::flow::pinhole::wantzel(r).0 / 0.484_178;
                5.002e-3 * h / (q_choked * psi * perry(r).0)
            })
            .sum::<f64>()
    };
    let holed = Booster { rim_mm: 0.5, ..vessel(5.0, ISOTHERMAL_M2) };
    let mut bench = vessel_and_pump(holed, 0.0, day_of(101_325.0, 20.0));
    bench.stroke("suction", 10.0);
    bench.when_fallen(0.05, 60.0, 20e3, |b| b.pa("vessel.vacuum"));
    bench.stroke("suction", 0.0);
    let from = bench.pa("vessel.vacuum");
    let start = bench.now_s();
    for to in [53.53e3, 80e3, 91.19e3] {
        // Falling is what the helper finds: the vacuum falls.
        bench.when_fallen(0.5, 400.0, 101_325.0 - to, |b| 101_325.0 - b.pa("vessel.vacuum"));
        let (p, took) = (bench.pa("vessel.vacuum"), bench.now_s() - start);
        t.follows_for("to {} kPa", p * 1e-3, took, seconds(from, p));
    }
    // And with C_d = 1 the integral itself is the row's.
    let ideal: f64 = {
        let (n, from, to) = (20_000, 20e3, 80e3);
        let h = (to - from) / f64::from(n);
        (0..n)
            .map(|i| {
                let r = (from + h * (f64::from(i) + 0.5)) / 101_325.0;
                5e-3 * h / (q_choked * sim_core::flow::pinhole::wantzel(r).0 / 0.484_178)
            })
            .sum()
    };
    t.is("ideal hole, 20 to 80 kPa", ideal);
}

fn val_gauge_at_altitude(t: &mut Table) {
    use sim_core::air::Day;
    use sim_core::parts::engine::EngineState;
    use sim_core::parts::instruments::VacuumGauge;
    let shown_inhg = |feet: f64| {
        let gauge = VacuumGauge { volume_cm3: 15.0, bore_mm: 4.0, lag_s: 0.3 };
        let mut bench = Rig::default()
            .part("engine", crate::rig::alder_part("engine"))
            .part("hose", crate::rig::alder_part("hose_m"))
            .part("gauge", PartKind::VacuumGauge(gauge))
            .join("hose.b", "engine.manifold")
            .join("gauge.stem", "hose.a")
            .on(Day { altitude_m: feet * 0.304_8, ..Day::STANDARD }, &[]);
        bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
        bench.run_s(30.0);
        -bench.circuit.pointer_kpa(bench.part("gauge")) * 1e3 / PA_PER_INHG
    };
    let sea = shown_inhg(0.0);
    t.is("Alder at warm idle at sea level (about 20)", sea);
    t.series("{} ft, less than at sea level", |feet| sea - shown_inhg(feet));
}

fn reg_joint_puts_its_two_nipples_in_a_row(t: &mut Table) {
    // A standing engine's manifold is open air; its nipple of 0.8 mm is joined to the pump's of 0.6 mm.
    let PartKind::Engine(engine) = crate::rig::alder_part("engine") else { panic!("no engine") };
    let PartKind::VacuumPump(pump) = crate::rig::alder_part("pump") else { panic!("no pump") };
    let engine = sim_core::parts::engine::Engine { bore_mm: 0.8, ..engine };
    let pump = sim_core::parts::vacuum_pump::VacuumPump { bore_mm: 0.6, ..pump };
    let mut bench = Rig::default()
        .part("engine", PartKind::Engine(engine))
        .part("pump", PartKind::VacuumPump(pump))
        .part("supply", crate::rig::supply(13.5, 1e-3))
        .part("body", crate::rig::body())
        .join("engine.manifold", "pump.inlet")
        .join("supply.plus", "pump.plus")
        .join("supply.minus", "body.31a")
        .join("pump.minus", "body.31b")
        .on(day_of(101_325.0, 20.0), &[]);
    bench.run_s(60.0);
    let c = |d_mm: f64| 0.8 * C_PER_MM2 * std::f64::consts::FRAC_PI_4 * d_mm * d_mm;
    let both = 1.0 / f64::sqrt(1.0 / c(0.8).powi(2) + 1.0 / c(0.6).powi(2));
    let m = -bench.circuit.m_flow_out(bench.port("pump.inlet"));
    t.is("pump side (choked), over the day's pressure", bench.pa("pump.inlet") / 101_325.0);
    t.follows("flow", m, both * 1.185 * 101_325.0);
}
