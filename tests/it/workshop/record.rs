//! The record: which reading fills which line, and that release checks lapse with the next change.

use assess::play::{Begin, Session, replay};
use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::car::RecordKind;
use sim_core::notice::{Unmet, Wanted};
use sim_core::observe::Scale;
use sim_core::parts::instruments::MeterMode;
use sim_core::workshop::RecordEntry;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

/// Notes the last reading as shown, for the record line of a kind.
fn note(b: &mut Bench, kind: RecordKind) -> RecordEntry {
    let reading = b.ws.view().readings.last().cloned().expect("something was read");
    let scale = b.ws.scale(&reading.what);
    let sensed = matches!(reading.what, Observed::Sense(_));
    let written = match (&scale, scale.number(reading.shown)) {
        (Scale::Numeric { unit, .. }, Some(value)) if !sensed => {
            Some(Written { value, unit: (*unit).into() })
        }
        _ => None,
    };
    let line = b.ws.setup().car.record.iter().find(|r| r.kind == kind).map(|r| r.id.clone());
    let out = b.act(Action::Note { reading: reading.id, written, record: line });
    assert_ne!(out.read_right, Some(false), "written as shown");
    out.record.expect("a record line was named")
}

/// The three pedal tests, run and rest, the yard: everything that releases a car.
fn release_checks(b: &mut Bench) -> Vec<RecordEntry> {
    let mut entries = Vec::new();
    b.act(Action::PumpPedal { times: 12, force_n: 150.0 });
    b.act(Action::Key(true));
    b.act(Action::Time { cycle: Cycle::PumpRun, max_s: 60 });
    entries.push(note(b, RecordKind::ReleaseBuildUp));
    b.act(Action::Time { cycle: Cycle::PumpRest, max_s: 660 });
    entries.push(note(b, RecordKind::ReleaseRest));
    b.act(Action::Key(false));
    b.act(Action::PumpPedal { times: 8, force_n: 120.0 });
    b.act(sense(Sense::Applications));
    entries.push(note(b, RecordKind::ReleaseReserve));
    b.act(Action::PumpPedal { times: 6, force_n: 150.0 });
    b.act(Action::Pedal(PedalHold::Foot { force_n: 120.0 }));
    b.act(Action::Key(true));
    b.act(Action::Engine(EngineState::WarmIdle));
    b.act(Action::Wait { s: 10 });
    b.act(sense(Sense::PedalMoved));
    entries.push(note(b, RecordKind::ReleaseDrop));
    b.act(Action::Engine(EngineState::Stopped));
    b.act(Action::Wait { s: 30 });
    b.act(sense(Sense::PedalMoved));
    entries.push(note(b, RecordKind::ReleaseNoRise));
    b.act(Action::Pedal(PedalHold::Released));
    b.act(Action::Key(false));
    if b.ws.view().chocked {
        b.act(Action::Chocks(false));
    }
    b.act(sense(Sense::YardDrive));
    entries.push(note(b, RecordKind::ReleaseYard));
    entries
}

#[test]
fn a_sound_car_passes_every_release_check_and_a_touched_joint_voids_them() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Chocks(true));
    for entry in release_checks(&mut b) {
        assert!(entry.condition_met, "{entry:?}");
        assert_eq!(entry.within_limit, Some(true), "{entry:?}");
    }
    assert!(b.ws.record_now().iter().all(|e| e.condition_met));
    b.act(open("j_hose_m"));
    b.act(make("j_hose_m"));
    let still: Vec<String> =
        b.ws.record_now().iter().filter(|e| e.condition_met).map(|e| e.item.clone()).collect();
    assert_eq!(still, [""; 0], "every release check lapses when a joint is touched");
}

#[test]
fn the_record_of_the_day() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::ReadSheet);
    b.act(read("barometer"));
    let day = note(&mut b, RecordKind::DayPressure);
    assert!(day.condition_met && day.within_limit.is_none(), "{day:?}");

    b.act(fit("meter", &[("v_ohm", "wire_plus.a"), ("com", "battery.minus")]));
    b.act(Action::SetMeter { instrument: "meter".into(), mode: MeterMode::Volt });
    b.act(Action::Key(true));
    b.act(read("meter"));
    assert_eq!(note(&mut b, RecordKind::BatteryVoltage).unmet, Some(Unmet::KeyOn));
    assert_eq!(
        note(&mut b, RecordKind::CutOut).unmet,
        Some(Unmet::OtherReading(Wanted::Store)),
        "a meter is no gauge"
    );
    b.act(Action::Key(false));
    b.act(read("meter"));
    assert!(note(&mut b, RecordKind::BatteryVoltage).condition_met);
    b.act(Action::Unfit { instrument: "meter".into() });

    // Both points of the switch: empty store, hand pump with its gauge in, key on with the fuse pulled,
    // then stand at the gauge, push the fuse in, and let air in gently.
    b.act(Action::PumpPedal { times: 12, force_n: 150.0 });
    b.act(cover("scuttle", true));
    b.act(fit("handpump", &[("stem", "tee.2")]));
    b.act(Action::PullUnit { unit: "fuse".into() });
    b.act(Action::Key(true));
    b.act(read("handpump"));
    b.act(Action::PushUnit { unit: "fuse".into() });
    b.act(Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 });
    b.act(read("handpump"));
    let out = note(&mut b, RecordKind::CutOut);
    assert!(out.condition_met, "{out:?}");
    assert_eq!(out.within_limit, Some(true), "{out:?}");
    // Read too late: what was asked for and what it was.
    b.act(Action::Wait { s: 60 });
    b.act(read("handpump"));
    let late = note(&mut b, RecordKind::CutOut);
    // Reading takes 2 s, writing 5.
    assert_eq!(late.unmet, Some(Unmet::Late { after_s: 67, within_s: 5 }));
    let said = late.unmet.map(|unmet| crate::told::said(&b.ws, &unmet));
    assert_eq!(said.as_deref(), Some("within 5 s of the pump's switching; it was 67 s"));
    assert_eq!(note(&mut b, RecordKind::CutIn).unmet, Some(Unmet::PumpRested { for_s: 67 }));
    b.act(Action::Press { instrument: "handpump".into(), down: true });
    b.act(Action::WaitUntil { cue: Cue::PumpStarts, max_s: 120 });
    b.act(read("handpump"));
    b.act(Action::Press { instrument: "handpump".into(), down: false });
    let cut_in = note(&mut b, RecordKind::CutIn);
    assert!(cut_in.condition_met, "{cut_in:?}");
    assert_eq!(cut_in.within_limit, Some(true), "{cut_in:?}");
    b.act(Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 });
    b.act(Action::Wait { s: 60 });
    b.act(read("handpump"));
    let by_hand = note(&mut b, RecordKind::CutOut).unmet;
    assert_eq!(
        by_hand,
        Some(Unmet::SwitchedByHand { after_s: 1, beyond_s: 2 }),
        "the lever was let go just before"
    );
}

#[test]
fn a_run_from_a_half_full_store_and_a_rest_cut_short_do_not_count() {
    let mut b = Bench::new(JOB, &[("valve_m_leaks_back", 0.25)]);
    b.act(Action::Key(true));
    b.act(Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 });
    b.act(Action::WaitUntil { cue: Cue::PumpStarts, max_s: 600 });
    b.act(Action::Time { cycle: Cycle::PumpRun, max_s: 60 });
    // By itself it started, long after the key.
    let run = note(&mut b, RecordKind::PumpRun).unmet;
    assert!(matches!(run, Some(Unmet::StartedByItself { after_s, within_s: 2 }) if 2 < after_s), "{run:?}");
    b.act(Action::Wait { s: 10 });
    b.act(Action::Time { cycle: Cycle::PumpRest, max_s: 600 });
    let rest = note(&mut b, RecordKind::PumpRest).unmet;
    assert!(
        matches!(rest, Some(Unmet::WatchLate { after_s: Some(10..=16), within_s: 3 })),
        "the watch was started late: {rest:?}"
    );
    b.act(Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 });
    b.act(Action::Time { cycle: Cycle::PumpRest, max_s: 900 });
    let rest = note(&mut b, RecordKind::PumpRest);
    assert!(rest.condition_met, "{rest:?}");
    assert_eq!(rest.within_limit, Some(false), "this valve lets the pump rest less than ten minutes");
}

#[test]
fn the_truth_names_the_unit_and_a_swap_mends_it() {
    let mut b = Bench::new(JOB, &[("valve_m_leaks_back", 0.25)]);
    let names = |b: &Bench| -> Vec<String> {
        let car = &b.ws.setup().car;
        b.ws.units_outside_limits().iter().map(|u| car.units[usize::from(*u)].id.clone()).collect()
    };
    assert_eq!(names(&b), ["valve_m"]);
    b.act(Action::PumpPedal { times: 12, force_n: 150.0 });
    b.act(Action::Swap { unit: "valve_m".into(), spare: "valve_m_new".into() });
    assert_eq!(names(&b), [""; 0]);
    assert_eq!(Bench::new(JOB, &[]).ws.units_outside_limits(), [0; 0]);
}

#[test]
fn a_misread_dial_is_told() {
    let mut b = Bench::new(JOB, &[]);
    b.act(read("barometer"));
    let wrong = Written { value: 93.0, unit: "kPa".into() };
    let out = b.act(Action::Note { reading: 1, written: Some(wrong), record: None });
    assert_eq!(out.read_right, Some(false));
}

#[test]
fn a_full_sound_store_gives_two_or_three_assisted_applications_at_any_firm_force() {
    let applications = |faults: &[(&str, f64)], force_n| {
        let mut b = Bench::new(JOB, faults);
        b.act(Action::Key(true));
        b.act(Action::Engine(EngineState::WarmIdle));
        b.act(Action::Wait { s: 20 });
        b.act(Action::Key(false));
        b.act(Action::PumpPedal { times: 6, force_n });
        match b.act(sense(Sense::Applications)).reading.map(|r| r.shown) {
            Some(ShownValue::Level(n)) => n,
            other => panic!("applications are counted, not {other:?}"),
        }
    };
    for force_n in [80.0, 120.0, 200.0, 300.0] {
        assert!((2..=3).contains(&applications(&[], force_n)), "{force_n} N");
        assert!(applications(&[("hose_b_pinhole", 1.5)], force_n) < 2, "{force_n} N, a hole of 1.5 mm");
    }
}

#[test]
fn a_release_check_says_why_it_does_not_count() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Chocks(true));
    b.act(Action::Key(true));
    b.act(Action::Engine(EngineState::WarmIdle));
    b.act(Action::Pedal(PedalHold::Foot { force_n: 120.0 }));
    b.act(Action::Engine(EngineState::Stopped));
    b.act(Action::Wait { s: 12 });
    b.act(sense(Sense::PedalMoved));
    let short = note(&mut b, RecordKind::ReleaseNoRise).unmet;
    // The foot feels for two seconds more.
    assert!(matches!(short, Some(Unmet::HeldTooShort { for_s: 13..=16, least_s: 30 })), "{short:?}");
    assert_eq!(note(&mut b, RecordKind::ReleaseDrop).unmet, Some(Unmet::EngineStoppedLast));
    b.act(Action::Time { cycle: Cycle::PumpRest, max_s: 5 });
    assert_eq!(note(&mut b, RecordKind::PumpRest).unmet, Some(Unmet::FootOnPedal { force_n: 120.0 }));
    b.act(Action::Pedal(PedalHold::Released));
    b.act(Action::Key(false));
    b.act(Action::PumpPedal { times: 6, force_n: 150.0 });
    b.act(sense(Sense::Applications));
    assert_eq!(note(&mut b, RecordKind::ReleaseReserve).unmet, None);
    b.act(open("j_hose_m"));
    b.act(make("j_hose_m"));
    let lapsed = note(&mut b, RecordKind::ReleaseReserve).unmet;
    assert_eq!(lapsed, Some(Unmet::ChangedSince { times: 2 }));
}

#[test]
fn an_unmet_condition_goes_into_the_journal_and_files_without_it_still_replay() {
    let mut b = Bench::new(JOB, &[]);
    b.act(read("barometer"));
    let entry = note(&mut b, RecordKind::CutOut);
    let text = serde_json::to_string(&entry).unwrap();
    assert!(text.contains("other_reading"), "{text}");
    assert_eq!(serde_json::from_str::<RecordEntry>(&text).unwrap(), entry);
    // As files had it before: the rest is compared all the same.
    let before = r#"{"item":"cut-out","condition_met":false,"within_limit":null}"#;
    let old: RecordEntry = serde_json::from_str(before).unwrap();
    assert_eq!((old.condition_met, old.unmet), (false, None));
    let job = Arc::new(LIBRARY.job(JOB).unwrap());
    let begin = Begin::rehearsal("1".parse().unwrap());
    let mut session = Session::rehearse(Arc::clone(&job), &begin);
    session.act(&read("barometer")).unwrap();
    let written = Some(Written { value: 100.0, unit: "kPa".into() });
    let record = Some("cut-out".to_owned());
    session.act(&Action::Note { reading: 1, written, record }).unwrap();
    let attempt = session.into_attempt();
    let with = |unmet: Option<Unmet>| {
        let mut attempt = attempt.clone();
        attempt.steps[1].record.as_mut().unwrap().unmet = unmet;
        replay(&attempt, &job).map(drop)
    };
    assert_eq!(attempt.steps[1].record.as_ref().unwrap().unmet, entry.unmet);
    assert!(with(entry.unmet).is_ok());
    assert!(with(None).is_ok(), "a file made before");
    assert!(with(Some(Unmet::KeyOn)).is_err(), "a file that says something else");
}

#[test]
fn a_time_that_nobody_waited_for_is_misread_and_fills_no_line() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Chocks(true));
    b.act(Action::PumpPedal { times: 12, force_n: 150.0 });
    b.act(Action::Key(true));
    b.act(Action::Wait { s: 60 });
    let mut given_up = |max_s: u32, value: f64| {
        let reading = b.act(Action::Time { cycle: Cycle::PumpRest, max_s }).reading.unwrap().id;
        let written = Some(Written { value, unit: "s".into() });
        let out = b.act(Action::Note { reading, written, record: Some("rest".into()) });
        (out.read_right, out.record.unwrap())
    };
    assert_eq!(given_up(10, 5000.0).0, Some(false), "five thousand seconds in ten");
    let (right, entry) = given_up(10, 10.0);
    assert_eq!(right, Some(true), "given up after ten seconds, and so written");
    assert_eq!(entry.unmet, Some(Unmet::GivenUpEarly { after_s: 10, least_s: 600 }));
    let (right, entry) = given_up(600, 600.0);
    assert_eq!((right, entry.condition_met, entry.within_limit), (Some(true), true, Some(true)));
}
