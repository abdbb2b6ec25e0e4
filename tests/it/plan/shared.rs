//! Rows of tests: set-ups are shared, readings are not touched by it, the end finds the car as it was.

use assess::plan::cost::{Rehearsal, alone};
use assess::plan::standing::{Lasting, Standing, only_lasts};
use assess::plan::test::{Line, Phase, Step, Test};
use assess::plan::work::{Task, script, work};

use dice::Dice;
use sim_core::action::Action;
use sim_core::observe::{Predicted, Scale};

use super::{Bay, troubles};

/// Rows that are drawn for each car.
const ROWS: usize = 25;

/// From one place of the workshop to another, min.
const WALK_MIN: f64 = 20.0 / 60.0;

/// Tests in a drawn order, some of them twice.
fn row<'t>(bay: &'t Bay, dice: &mut Dice) -> Vec<&'t Test> {
    let n = 2 + dice.below(5);
    (0..n).map(|_| dice.pick(&bay.tests)).collect()
}

fn names(row: &[&Test]) -> String {
    row.iter().map(|t| t.id.as_str()).collect::<Vec<_>>().join(", ")
}

#[test]
fn inv_a_row_costs_no_more_than_its_tests_and_leaves_the_car_as_it_was() {
    let mut dice = Dice::new(dice::seed_or(0x9e58), 0);
    for bay in Bay::all() {
        let came_in = Rehearsal::sound(bay.setup.clone());
        for _ in 0..ROWS {
            let row = row(&bay, &mut dice);
            let name = format!("{}: {}", bay.car.id, names(&row));
            let mut done = came_in.clone();
            done.all(&row);
            assert_eq!(troubles(&done), [""; 0], "{name}");
            assert_eq!(Standing::of(&done.car().view()), Standing::as_it_came(), "{name}");
            assert_eq!(done.row().standing(), &Standing::as_it_came(), "{name}");
            let single = row.iter().map(|test| alone(&bay.setup, test));
            let (attended, unattended) =
                single.fold((0.0, 0.0), |(a, u), m| (a + m.attended, u + m.unattended));
            let minutes = done.minutes();
            // Alone each begins at the desk; in a row, where the one before has ended.
            let walks = WALK_MIN * (row.len() - 1) as f64;
            assert!(minutes.attended <= attended + walks + 1e-9, "{name}: {minutes:?}, alone {attended}");
            assert!(minutes.unattended <= unattended + 1e-9, "{name}: {minutes:?}, alone {unattended}");
        }
    }
}

/// What a task does, for which test does not matter.
fn lines(tasks: &[Task]) -> Vec<String> {
    let mut lines: Vec<String> = tasks.iter().map(|task| task.line.text()).collect();
    lines.sort_unstable();
    lines
}

#[test]
fn inv_a_row_does_nothing_that_no_test_of_it_does_and_takes_a_cover_off_once() {
    let mut dice = Dice::new(dice::seed_or(0x9e5a), 0);
    let here = Standing::as_it_came();
    let (mut shared, mut alike) = (0, 0);
    for bay in Bay::all() {
        for _ in 0..20 * ROWS {
            let row = row(&bay, &mut dice);
            let name = format!("{}: {}", bay.car.id, names(&row));
            let together = work(&bay.car, &here, row.iter().copied());
            let mut single: Vec<Task> = Vec::new();
            row.iter().for_each(|test| single.extend(work(&bay.car, &here, [*test])));
            let (together, mut left) = (lines(&together), lines(&single));
            for line in &together {
                let at = left.iter().position(|l| l == line);
                left.remove(at.unwrap_or_else(|| panic!("{name}: {line} is done more often than alone")));
            }
            match left.len() {
                0 => alike += 1,
                _ => shared += 1,
            }
            for cover in &bay.car.covers {
                let off = format!("cover {} off", cover.id);
                let times = together.iter().filter(|line| **line == off).count();
                let wanted = row.iter().any(|test| test.access.covers.contains(&cover.id));
                assert_eq!(times, usize::from(wanted), "{name}: {off}");
            }
        }
    }
    println!("{shared} rows share something, {alike} share nothing");
    assert!(alike < shared);
}

/// What a reading feels of what stands.
fn felt(standing: &Standing) -> Vec<Lasting> {
    let unfelt = |t: &&Lasting| !matches!(t, Lasting::Chocks | Lasting::Extraction | Lasting::CoverOff(_));
    standing.things().filter(unfelt).cloned().collect()
}

/// What stands at everything that a test does besides setting up and undoing.
fn seen<'t>(
    lines: impl Iterator<Item = (bool, &'t Line)>,
    mut standing: Standing,
) -> Vec<(String, Vec<Lasting>)> {
    let mut seen = Vec::new();
    for (counts, line) in lines {
        let Step::Do(action) = &line.step else { continue };
        if counts && !only_lasts(action) {
            seen.push((line.text(), felt(&standing)));
        }
        standing = standing.after(action).unwrap_or(standing);
    }
    seen
}

#[test]
fn inv_at_each_wait_and_reading_of_a_row_the_car_stands_as_if_the_test_were_alone() {
    let mut dice = Dice::new(dice::seed_or(0x9e5b), 0);
    let here = Standing::as_it_came;
    for bay in Bay::all() {
        for _ in 0..20 * ROWS {
            let row = row(&bay, &mut dice);
            let tasks = work(&bay.car, &here(), row.iter().copied());
            for (n, test) in row.iter().enumerate() {
                let counts = |phase| phase != Phase::Undo;
                let alone = seen(test.lines().map(|(phase, line)| (counts(phase), line)), here());
                let own = |task: &Task| task.test == Some(n) && counts(task.phase);
                let shared = seen(tasks.iter().map(|task| (own(task), &task.line)), here());
                assert_eq!(alone.len(), shared.len(), "{}: {} in {}", bay.car.id, test.id, names(&row));
                for ((line, alone), (_, shared)) in alone.iter().zip(&shared) {
                    let name = format!("{}: {line} of {} in {}", bay.car.id, test.id, names(&row));
                    assert!(alone.iter().all(|t| shared.contains(t)), "{name}: {alone:?} {shared:?}");
                    let own = |t: &Lasting| match t {
                        Lasting::Fitted(it, _) | Lasting::Dial(it, _) => test.access.instruments.contains(it),
                        _ => false,
                    };
                    let more = shared.iter().filter(|t| !alone.contains(t));
                    assert!(more.clone().all(own), "{name}: {:?}", more.collect::<Vec<_>>());
                }
            }
        }
    }
}

#[test]
fn what_stands_already_is_not_set_up_again_and_what_is_in_the_way_is_put_away_first() {
    let bays = Bay::all();
    let alder = bays.iter().find(|bay| bay.car.id == "alder").expect("Alder");
    let told = |standing: &Standing, test: &str| -> Vec<String> {
        work(&alder.car, standing, [alder.test(test)]).iter().map(|task| task.line.text()).collect()
    };
    let mut stands = Standing::as_it_came();
    for action in [
        Action::Chocks(true),
        Action::Cover { cover: "scuttle".into(), off: true },
        Action::Fit { instrument: "gauge".into(), ends: vec![("stem".into(), "valve_m.store".into())] },
        Action::Key(true),
    ] {
        stands = stands.after(&action).expect("it is not so yet");
    }
    // The gauge is where this test has it; the key is turned on later, on an empty store.
    let hold = told(&stands, "hold");
    assert_eq!(hold[..4], ["key off", "pedal pump 12 200", "key on", "wait until pump stops 90"]);
    assert_eq!(hold[hold.len() - 2..], ["pedal pump 12 200", "take gauge"]);
    // This one measures the hose: the gauge is put away, the cover is off already, and stays as it was found.
    let bend = told(&stands, "bend");
    assert_eq!(
        bend,
        ["key off", "take gauge", "fit angle arm=hose_b", "read angle", "note 1 shown", "take angle"]
            .map(|l| l.replace("arm=", ""))
    );
    // Two drops, one behind the other: the hose stays plugged, the cover off.
    let drops =
        work(&alder.car, &Standing::as_it_came(), ["drop-plus", "drop-earth"].map(|id| alder.test(id)));
    let lines: Vec<String> = drops.iter().map(|task| task.line.text()).collect();
    for once in ["cover splash_guard off", "plug hose_p.a", "open j_hose_p", "meter volt meter"] {
        let times = lines.iter().filter(|line| *line == once).count();
        assert_eq!(times, if once.starts_with("meter") { 2 } else { 1 }, "{once}: {lines:#?}");
    }
}

#[test]
fn a_script_of_a_row_numbers_its_readings_on() {
    let bays = Bay::all();
    let birch = bays.iter().find(|bay| bay.car.id == "birch").expect("Birch");
    let tasks = work(&birch.car, &Standing::as_it_came(), ["day", "fill", "day"].map(|id| birch.test(id)));
    let text = script(&tasks, 4);
    let notes: Vec<&str> = text.lines().filter(|line| line.starts_with("note")).collect();
    let wanted = [
        "note 5 shown for day",
        "note 6 shown",
        "note 7 shown",
        "note 8 shown",
        "note 9 shown",
        "note 10 shown for day",
    ];
    assert_eq!(notes, wanted, "{text}");
}

#[test]
fn readings_of_a_row_are_those_of_its_tests_alone() {
    let mut dice = Dice::new(dice::seed_or(0x9e59), 0);
    for bay in Bay::all() {
        let came_in = Rehearsal::sound(bay.setup.clone());
        let mut read = 0;
        for _ in 0..ROWS {
            let row = row(&bay, &mut dice);
            let mut done = came_in.clone();
            row.iter().for_each(|test| done.then(test));
            for (n, test) in row.iter().enumerate() {
                let mut single = came_in.clone();
                single.then(test);
                let in_row = done.noted.iter().filter(|noted| noted.test == Some(n));
                for (a, b) in in_row.zip(&single.noted) {
                    let name =
                        format!("{}: {} in {}: {:?}", bay.car.id, test.id, names(&row), a.reading.what);
                    assert_eq!(a.reading.what, b.reading.what, "{name}");
                    let scale = single.car().scale(&a.reading.what);
                    assert!(near(&scale, a.predicted, b.predicted), "{name}: {a:?} {b:?}");
                    read += 1;
                }
            }
        }
        assert!(ROWS < read, "{}: {read} readings", bay.car.id);
    }
}

/// Within a step or a few of the scale: heat stays in what has run, and an engine that has idled charges the battery.
fn near(scale: &Scale, a: Option<Predicted>, b: Option<Predicted>) -> bool {
    let step = match scale {
        Scale::Numeric { unit: "C", .. } => 5.0,
        Scale::Numeric { unit: "V" | "A", resolution, .. } => 10.0 * resolution,
        Scale::Numeric { resolution, .. } => *resolution,
        Scale::Ordinal { .. } => 0.5,
    };
    match (a, b) {
        (Some(Predicted::Value(a)), Some(Predicted::Value(b))) => {
            (a - b).abs() <= step || matches!(scale, Scale::Ordinal { .. }) && scale.show(a) == scale.show(b)
        }
        (a, b) => a == b,
    }
}
