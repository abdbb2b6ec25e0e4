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
fn a_table_on_standard_output_has_nothing_else_in_it() {
    let home = tempfile::tempdir().unwrap();
    let output = pinhole(home.path()).args(["trace", "alder", "--csv", "-", "--for", "5"]).output().unwrap();
    ends_with_code(&output, 0);
    let text = String::from_utf8(output.stdout).unwrap();
    let cells = |line: &str| line.split(',').count();
    let head = text.lines().next().unwrap();
    assert!(head.starts_with("t_s,"), "{head}");
    assert!(text.lines().all(|line| cells(line) == cells(head)), "{text}");
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

/// The corners of the first line drawn in `svg` with at least `least` of them, in pixels.
fn first_line(svg: &str, least: usize) -> Vec<(f64, f64)> {
    let lines = svg.split("<polyline").skip(1).map(|rest| {
        let points = rest.split_once("points=\"").unwrap().1.split_once('"').unwrap().0;
        let corner = |pair: &str| {
            let (x, y) = pair.split_once(',').unwrap();
            (x.parse().unwrap(), y.parse().unwrap())
        };
        points.split_whitespace().map(corner).collect::<Vec<(f64, f64)>>()
    });
    lines.into_iter().find(|line| least <= line.len()).expect("a drawn line")
}

#[test]
fn chosen_ports_are_drawn_as_svg_and_as_png() {
    let home = tempfile::tempdir().unwrap();
    for file in ["p.svg", "p.png"] {
        let show = ["--show", "booster.vacuum", "--show", "pump.plus_into_a", "--show", "pump.plus"];
        let output =
            pinhole(home.path()).args(["trace", "alder", "--plot", file]).args(show).output().unwrap();
        let said = ends_with_code(&output, 0);
        assert!(said.contains("p.") && said.contains("3 curves"), "{said}");
    }
    let svg = std::fs::read_to_string(home.path().join("p.svg")).unwrap();
    for wanted in
        ["booster.vacuum_kpa_abs", "pump.plus_into_a", "pump.plus_v", "kPa absolute", "A in", "</svg>"]
    {
        assert!(svg.contains(wanted), "{wanted} is not in the picture");
    }
    // The store's pressure falls: high in the picture at first (small y), low at the end.
    let line = first_line(&svg, 100);
    let (first, last) = (line[0], *line.last().unwrap());
    assert!(first.0 < last.0 && first.1 + 100.0 < last.1, "{first:?} to {last:?}");
    // A PNG of three panels, twice the SVG's 760 x 645.
    let png = std::fs::read(home.path().join("p.png")).unwrap();
    assert_eq!(&png[..8], b"\x89PNG\r\n\x1a\n");
    let number = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
    assert_eq!((number(16), number(20)), (1520, 1290));
    assert!(png.windows(4).any(|w| w == b"IEND"), "a whole file");
    assert!(10_000 < png.len(), "more than an empty sheet: {} bytes", png.len());
}

#[test]
fn a_plot_that_cannot_be_is_refused_before_the_model_runs() {
    let home = tempfile::tempdir().unwrap();
    let five: Vec<&str> = ["booster.vacuum", "hose_b.a", "hose_p.a", "hose_p.b", "pump.inlet"]
        .iter()
        .flat_map(|p| ["--show", p])
        .collect();
    let cases: [(&str, Vec<&str>, &[&str]); 7] = [
        ("alder", vec!["--plot", "p.svg", "--show", "boster.vacuum"], &["--show boster.vacuum", "booster"]),
        ("alder", vec!["--plot", "p.svg", "--show", "booster.rear"], &["booster.vacuum_kpa_abs"]),
        ("alder", vec!["--plot", "p.gif", "--show", "booster.vacuum"], &["p.gif", ".svg or .png"]),
        (
            "alder",
            vec!["--plot", "no/such/p.png", "--show", "booster.vacuum"],
            &["no/such/p.png", "cannot be written"],
        ),
        ("alder", [vec!["--plot", "p.svg"], five].concat(), &["5 curves", "at most 4"]),
        ("alder", vec!["--plot", "p.svg"], &["--show"]),
        ("elm", vec!["--plot", "p.svg", "--show", "booster.vacuum"], &["elm"]),
    ];
    for (car, args, wanted) in cases {
        let output =
            pinhole(home.path()).args(["trace", car, "--for", "86400"]).args(&args).output().unwrap();
        let said = ends_with_code(&output, 2);
        for w in wanted {
            assert!(said.contains(w), "{args:?}: {w} is not in: {said}");
        }
    }
}

#[test]
fn a_fault_the_car_cannot_have_is_refused() {
    let home = tempfile::tempdir().unwrap();
    for (fault, wanted) in [
        ("hose_z_hole=1", "hose_z_hole"),
        ("hose_b_pinhole", "ID=SEVERITY"),
        ("hose_b_pinhole=nan", "finite"),
    ] {
        let args = ["trace", "alder", "--csv", "t.csv", "--fault", fault];
        let said = ends_with_code(&pinhole(home.path()).args(args).output().unwrap(), 2);
        assert!(said.contains(wanted), "{fault}: {said}");
    }
}

#[test]
fn the_circuit_of_a_hold_begins_when_the_script_is_done() {
    let home = tempfile::tempdir().unwrap();
    std::fs::write(home.path().join("s.script"), "chocks on\nkey on\nwait 60\nkey off\n").unwrap();
    let args = ["trace", "alder", "--script", "s.script", "--for", "3600", "--circuit", "c.json"];
    let told = |more: &[&str]| {
        ends_with_code(&pinhole(home.path()).args(args).args(more).output().unwrap(), 0);
        let text = std::fs::read_to_string(home.path().join("c.json")).unwrap();
        let file: serde_json::Value = serde_json::from_str(&text).unwrap();
        let ticks: Vec<u64> =
            file["states"].as_array().unwrap().iter().map(|s| s[0].as_u64().unwrap()).collect();
        (file["told"].as_array().unwrap().len(), ticks.last().unwrap() - ticks[0])
    };
    let (whole, hold) = (told(&[]), told(&["--circuit-after-script"]));
    assert!(4 < whole.0 && 360_000 < whole.1, "the pull-down switches things: {whole:?}");
    assert_eq!(hold, (1, 360_000), "nothing switches in an hour's hold");
}

#[test]
fn every_car_can_be_traced() {
    for (car, store, deep_kpa_abs) in [("birch", "tank.1", 25.0), ("cedar", "tee.1", 60.0)] {
        let home = tempfile::tempdir().unwrap();
        std::fs::write(home.path().join("s.script"), "key on\nchocks on\nengine start\nwait 60\n").unwrap();
        let args = ["trace", car, "--csv", "t.csv", "--circuit", "c.json", "--script", "s.script"];
        let output = pinhole(home.path()).args(args).output().unwrap();
        ends_with_code(&output, 0);
        let text = std::fs::read_to_string(home.path().join("t.csv")).unwrap();
        let names: Vec<&str> = text.lines().next().unwrap().split(',').collect();
        let at = names.iter().position(|n| *n == format!("{store}_kpa_abs")).unwrap();
        let last: f64 = text.lines().last().unwrap().split(',').nth(at).unwrap().parse().unwrap();
        assert!(last < deep_kpa_abs, "{car}: {last} kPa");
        let circuit = std::fs::read_to_string(home.path().join("c.json")).unwrap();
        assert!(circuit.contains("\"constants\""), "{car}");
    }
}
