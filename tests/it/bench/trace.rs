//! `pinhole trace`: a table of every port that means what its columns say.

use super::{ends_with_code, pinhole};

/// Runs a trace and gives back its columns by name.
fn trace(args: &[&str]) -> Vec<(String, Vec<f64>)> {
    let home = tempfile::tempdir().unwrap();
    let output = pinhole(home.path()).args(["trace", "alder", "--csv", "t.csv"]).args(args).output().unwrap();
    ends_with_code(&output, 0);
    let text = std::fs::read_to_string(home.path().join("t.csv")).unwrap();
    let mut lines = text.lines();
    let mut columns: Vec<(String, Vec<f64>)> =
        lines.next().unwrap().split(',').map(|name| (name.to_owned(), Vec::new())).collect();
    for line in lines {
        let cells: Vec<f64> = line.split(',').map(|c| c.parse().unwrap()).collect();
        assert_eq!(cells.len(), columns.len());
        for (column, cell) in columns.iter_mut().zip(cells) {
            column.1.push(cell);
        }
    }
    columns
}

fn column<'a>(table: &'a [(String, Vec<f64>)], name: &str) -> &'a [f64] {
    &table.iter().find(|(n, _)| n == name).unwrap_or_else(|| panic!("no column {name}")).1
}

#[test]
fn the_pump_empties_the_store_to_its_cut_out_and_rests() {
    let table = trace(&["--for", "60", "--every", "0.5"]);
    let t = column(&table, "t_s");
    assert!(t.windows(2).all(|w| 0.0 < w[1] - w[0] && w[1] - w[0] < 0.6), "rows every half second");
    let store = column(&table, "booster.vacuum_kpa_abs");
    assert_eq!(store[0], 101.325, "a car that was pushed in has an empty store");
    // A new switch opens at 60 kPa below the day's pressure; what the air cools and heats is 2 kPa at most.
    let end = *store.last().unwrap();
    assert!((end - 41.325).abs() < 2.5, "{end}");
    let amps = column(&table, "pump.plus_into_a");
    assert!(amps.iter().any(|a| 5.0 < *a) && amps.last().unwrap().abs() < 0.01, "ran, and rests");
    // What flows out of one port flows into the port it is joined to.
    let (out, into) =
        (column(&table, "hose_p.b_flow_out_g_per_s"), column(&table, "pump.inlet_flow_out_g_per_s"));
    assert!(out.iter().any(|m| 0.01 < m.abs()));
    assert!(out.iter().zip(into).all(|(a, b)| (a + b).abs() < 1e-6));
    assert!(column(&table, "pump.case_c").last().unwrap() > &20.0, "it warmed up");
    assert!(column(&table, "pedal_travel_mm").iter().all(|x| *x == 0.0));
}

#[test]
fn a_leak_makes_the_pump_run_again_and_again() {
    let runs = |args: &[&str]| {
        let table = trace(args);
        let amps = column(&table, "pump.plus_into_a");
        amps.windows(2).filter(|w| w[0] < 1.0 && 1.0 <= w[1]).count()
    };
    assert_eq!(runs(&["--for", "300", "--every", "0.5"]), 1);
    let leaking = runs(&["--for", "300", "--every", "0.5", "--fault", "hose_b_pinhole=0.3"]);
    assert!(3 < leaking, "{leaking} runs");
}

#[test]
fn the_circuit_goes_out_as_numbers_with_the_states_it_went_through() {
    let home = tempfile::tempdir().unwrap();
    std::fs::write(home.path().join("s.script"), "chocks on\nfit gauge valve_m.store\nkey on\n").unwrap();
    let args = ["trace", "alder", "--script", "s.script", "--for", "30", "--circuit", "c.json"];
    let output = pinhole(home.path()).args(args).output().unwrap();
    ends_with_code(&output, 0);
    let text = std::fs::read_to_string(home.path().join("c.json")).unwrap();
    let file: serde_json::Value = serde_json::from_str(&text).unwrap();
    let list = |v: &serde_json::Value| v.as_array().unwrap().clone();
    let (vars, states) = (list(&file["circuit"]["vars"]), list(&file["states"]));
    assert!(
        states.iter().all(|s| list(&s[1]).len() == vars.len()),
        "a state has a number for every variable"
    );
    assert!(states.windows(2).all(|w| w[0][0].as_u64() < w[1][0].as_u64()), "time runs on");
    // The gauge is fitted before the stretch begins and is a body of air in it.
    let volumes = list(&file["circuit"]["volumes"]);
    let gauge = volumes.iter().find(|v| v["name"] == "gauge").expect("the gauge's air");
    assert_eq!(gauge["m3"].as_f64(), Some(12e-6));
    // Told: key on, relay in, switch open, relay out; each at a tick of the stretch.
    let told = list(&file["told"]);
    assert_eq!(told[0]["key_on"], false);
    assert_eq!(told.last().unwrap()["key_on"], true);
    assert!(5 <= told.len(), "{} changes", told.len());
    // The last state is that of an emptied store: p = (γ − 1) U/V of the front chamber.
    let front = volumes.iter().find(|v| v["name"] == "booster.front").unwrap();
    let energy = states.last().unwrap()[1][front["mass"].as_u64().unwrap() as usize + 1].as_f64().unwrap();
    let p = 0.4 * energy / front["m3"].as_f64().unwrap();
    assert!((p - 41_325.0).abs() < 2_500.0, "{p} Pa");
}
