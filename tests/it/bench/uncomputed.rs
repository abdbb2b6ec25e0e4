//! What the model cannot compute is an error and not a frozen dial: the attempt stops with everything kept, the exit
//! code is 2, the marker sets such a car aside, and the checker of packs keeps such numbers out.

use std::sync::Arc;

use assess::attempt::{Attempt, Seed};
use assess::marks;
use assess::pack::job::Job;
use assess::play::script::{self, ScriptError};
use assess::play::{Begin, Session, SessionError};
use sim_core::car::FaultDef;

use super::bad_input::{data, edit, opened_with};
use super::chain::job;
use super::{ends_with_code, program};

/// In its range, and on this booster beyond what can be: the stroke is longer than the chamber.
const TOO_WIDE_CM2: f64 = 2000.0;

/// A job whose car has that booster; no checker has seen it.
fn with_a_wide_booster() -> Job {
    let mut job = (*job()).clone();
    let mut car = (*job.car).clone();
    assert!(car.assembly.set_param("booster.area_cm2", TOO_WIDE_CM2));
    job.car = Arc::new(car);
    job
}

/// With all the vacuum there is, the hard press takes the piston to its end.
const PRESS: &str = "key on\nwait 60\nengine idle\nwait 20\npedal press 300\nwait 5\n";

#[test]
fn the_attempt_stops_with_every_action_before_it_kept() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let job = Arc::new(with_a_wide_booster());
    let mut session = Session::start(Arc::clone(&job), &Begin::rehearsal(Seed(1)), &path).unwrap();
    let error = script::play(&mut session, PRESS, |_, _, _, _| {}).unwrap_err();
    let text = error.to_string();
    let is_fault =
        matches!(&error, ScriptError::Session { source, .. } if matches!(**source, SessionError::Fault(_)));
    assert!(is_fault && text.starts_with("line 5 (pedal press 300)"), "{text}");
    assert!(text.contains("the numbers of booster are beyond what can be computed"), "{text}");
    // Nothing goes on from there, whatever is asked for.
    let again = session.act(&sim_core::action::Action::Wait { s: 5 }).unwrap_err();
    assert!(matches!(again, SessionError::Fault(_)), "{again}");
    assert!(session.computed().is_err());
    drop(session);
    let kept = Attempt::read(&path).unwrap();
    assert_eq!(kept.steps.len(), 4);
    let opening = assess::attempt::clock::Opening::now(assess::attempt::clock::By::Hand);
    let (session, _) = Session::resume::<SessionError>(&path, &opening, |_| Ok(job)).unwrap();
    assert!(session.computed().is_ok());
}

#[test]
fn a_car_that_cannot_come_in_gets_no_file() {
    let home = tempfile::tempdir().unwrap();
    let mut job = with_a_wide_booster();
    let mut car = (*job.car).clone();
    car.assembly.set_param("booster.front_l", 0.2);
    job.car = Arc::new(car);
    let path = home.path().join("a.attempt");
    let error = Session::start(Arc::new(job), &Begin::rehearsal(Seed(1)), &path).unwrap_err().to_string();
    assert!(error.contains("second 0.00 of the work"), "{error}");
    assert!(!path.exists());
}

#[test]
fn the_program_says_so_and_ends_with_two() {
    let data = data();
    // A part from the store that no trial has tried.
    edit(
        data.path(),
        "assets/spares/alder.ron",
        "spares: [",
        "spares: [ Spare(id: \"booster_wide\", name: \"booster, wide\", unit: \"booster\", price: 9.0, \
         params: [Param(param: \"booster.area_cm2\", value: 2000.0)]),",
    );
    let home = tempfile::tempdir().unwrap();
    let script = home.path().join("s.script");
    let words = "chocks on\nkey on\nwait until pump stops 60\nkey off\nfinding none sure 0.40\ncover scuttle off\n\
                 pedal pump 12 200\nswap booster with booster_wide\nkey on\nwait 60\nengine idle\nwait 20\npedal press 300\nhum\n";
    std::fs::write(&script, words).unwrap();
    let run = |args: &[&str]| {
        std::process::Command::new(program())
            .current_dir(home.path())
            .env("HOME", home.path())
            .arg("--data")
            .arg(data.path())
            .args(args)
            .stdin(std::process::Stdio::null())
            .output()
            .unwrap()
    };
    let job = "first-shift/hum-at-the-lights";
    let script = script.to_str().unwrap();
    let text = ends_with_code(&run(&["text", job, "--attempt", "a.attempt", "--script", script]), 2);
    assert!(text.contains("numbers of booster are beyond what can be computed"), "{text}");
    let kept = Attempt::read(&home.path().join("a.attempt")).unwrap().steps.len();
    assert!((8..words.lines().count()).contains(&kept), "{kept} actions: {text}");
    let text = ends_with_code(&run(&["replay", "a.attempt"]), 0);
    assert!(text.contains(&format!("{kept} actions")), "{text}");
}

#[test]
fn the_checker_keeps_out_what_cannot_be_computed() {
    let car = "assets/vehicles/alder.ron";
    let text = opened_with(|d| edit(d, car, "area_cm2: 533.0", "area_cm2: 2000.0"));
    assert!(text.contains("alder.ron: parts") && text.contains("cannot be computed"), "{text}");
    assert!(text.contains("look at booster"), "{text}");
    let text = opened_with(|d| {
        edit(
            d,
            car,
            "Tolerance(param: \"booster.rim_mm\"",
            "Tolerance(param: \"booster.area_cm2\", serviceable: (500.0, 2000.0), limit: (400.0, 2000.0)),\n\
             Tolerance(param: \"booster.rim_mm\"",
        );
    });
    assert!(text.contains("tolerances, every serviceable at its high end"), "{text}");
}

#[test]
fn the_marker_sets_such_a_car_aside_and_goes_on() {
    let mut job = (*job()).clone();
    let mut car = (*job.car).clone();
    // Few faults: quickly marked. Nothing is wrong with the car itself.
    car.faults.truncate(2);
    job.set_answer(Vec::new());
    let unit = car.units.iter().position(|u| u.id == "booster").unwrap() as u16;
    car.faults.push(FaultDef {
        id: "booster_wide".into(),
        name: "a booster that cannot be".into(),
        unit,
        param: "booster.area_cm2".into(),
        severity_min: 1900.0,
        severity_max: TOO_WIDE_CM2,
        commonness: 50.0,
    });
    job.car = Arc::new(car);
    let job = Arc::new(job);
    let mut session = Session::rehearse(Arc::clone(&job), &Begin::rehearsal(Seed(1)));
    let words =
        "pedal release\nengine stop\ntime rest 600\nnote shown\nkey off\nfinding none sure 0.40\nhand back\n";
    script::play(&mut session, &format!("{PRESS}{words}"), |_, _, _, _| {}).unwrap();
    let sheet = crate::told::sheet(marks::mark(&session.into_attempt(), &job).unwrap());
    let told = sheet.notices.iter().find(|n| n.contains("set aside")).expect("it is told");
    assert!(told.contains("16 of the"), "sixteen with that fault, and nothing calls for two: {told}");
    let evidence = &sheet.marks.unwrap().evidence;
    let after = evidence.readings.iter().find_map(|r| match &r.worth {
        marks::sheet::NoteWorth::Counts { classes, .. } => Some(classes.clone()),
        _ => None,
    });
    let after = after.expect("the note counts");
    assert!(
        (after.iter().sum::<f64>() - 1.0).abs() < 1e-9 && after.iter().all(|p| p.is_finite()),
        "{after:?}"
    );
}

#[test]
#[ignore = "a minute or more: every number of a car at its ends and far beyond"]
fn inv_whatever_one_number_is_it_is_computed_or_told() {
    let good = job();
    let script = "key on\nwait 60\nengine idle\nwait 20\npedal press 300\npedal release\nengine stop\nkey off\npedal pump 6\nkey on\nwait 300\n";
    let parts: Vec<_> =
        good.car.assembly.parts.iter().map(|p| (p.id.clone(), p.kind.params().table())).collect();
    for (id, table) in parts {
        for def in table {
            for value in [def.min, def.max, def.max * 1e3, def.max * 1e6, def.max * 1e9, def.min * 1e-3, 1e-9]
            {
                let mut job = (*good).clone();
                let mut car = (*job.car).clone();
                let name = format!("{id}.{}", def.name);
                car.assembly.set_param(&name, value);
                car.tolerances.retain(|t| t.param != name);
                job.car = Arc::new(car);
                job.set_answer(Vec::new());
                println!("{name} {value:e}");
                let clock = std::time::Instant::now();
                let begin = Begin::rehearsal(Seed(1));
                let result = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
                    let mut session = Session::rehearse(Arc::new(job), &begin);
                    let r = script::play(&mut session, script, |_, _, _, _| {});
                    r.map_err(|e| e.to_string())
                }));
                let t = clock.elapsed().as_secs_f64();
                match result {
                    Err(_) => println!("PANIC {name} = {value:e} ({t:.2} s)"),
                    Ok(Err(e)) => println!(
                        "{} {name} = {value:e}: {e} ({t:.2} s)",
                        if value >= def.min && value <= def.max { "IN " } else { "out" }
                    ),
                    Ok(Ok(())) if 2.0 < t => println!("SLOW {name} = {value:e} ({t:.2} s)"),
                    Ok(_) => {}
                }
            }
        }
    }
}
