//! Breaches of safety: what counts as one, how grave, and what does not.

use sim_core::action::{Action, Sense};
use sim_core::assembly::Stop;
use sim_core::notice::{Gravity, Notice};
use sim_core::parts::instruments::MeterMode;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

fn rules(out: &Outcome) -> Vec<(&str, Gravity)> {
    out.breaches.iter().map(|b| (b.rule(), b.gravity())).collect()
}

fn empty_store(b: &mut Bench) {
    b.act(Action::PumpPedal { times: 12, force_n: 150.0 });
}

#[test]
fn hands_at_the_pump() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("splash_guard", true));
    b.act(Action::Key(true));
    b.act(Action::Wait { s: 30 });
    let out = b.act(open("j_pump"));
    assert_eq!(rules(&out), [("pump_may_start", Gravity::Minor)]);
    b.act(make("j_pump"));
    b.act(Action::PullUnit { unit: "fuse".into() });
    assert_eq!(rules(&b.act(open("j_pump"))), [], "with the fuse pulled hands may go in");
    b.act(make("j_pump"));
    b.act(Action::PushUnit { unit: "fuse".into() });
    b.act(Action::Key(false));
    assert_eq!(rules(&b.act(open("j_pump"))), [], "with the key off it does not start by itself");
}

#[test]
fn a_welded_relay_runs_the_pump_with_the_key_off_and_hands_off_it() {
    let mut b = Bench::new(JOB, &[("relay_welded", 50.0)]);
    b.act(cover("splash_guard", true));
    assert!(b.ws.view().hum, "a welded relay runs the pump with the key off");
    let out = b.act(open("e_pump_plus"));
    assert_eq!(rules(&out), [("hands_at_running_pump", Gravity::Major)]);
}

#[test]
fn a_pump_that_runs_for_long_burns() {
    let mut b = Bench::new(JOB, &[("relay_welded", 50.0)]);
    b.act(cover("splash_guard", true));
    b.act(Action::Wait { s: 1800 });
    b.act(Action::PullUnit { unit: "fuse".into() });
    let out = b.act(sense(Sense::Touch { part: "pump".into() }));
    assert_eq!(out.breaches.first().map(|b| b.rule()), Some("hot_surface"));
    assert_eq!(out.reading.map(|r| r.shown), Some(ShownValue::Level(3)));
}

#[test]
fn a_store_joint_under_vacuum() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("scuttle", true));
    assert_eq!(rules(&b.act(open("j_switch"))), [("joint_under_vacuum", Gravity::Minor)]);
    b.act(make("j_switch"));
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("scuttle", true));
    empty_store(&mut b);
    assert_eq!(rules(&b.act(open("j_switch"))), []);
}

#[test]
fn pulling_the_source_off_a_check_valve_is_the_test_and_no_breach() {
    let mut b = Bench::new(JOB, &[]);
    assert_eq!(rules(&b.act(open("j_hose_m"))), []);
}

#[test]
fn an_engine_with_an_open_manifold_or_without_chocks() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Chocks(true));
    b.act(Action::Extraction(true));
    b.act(open("j_manifold"));
    b.act(Action::Key(true));
    let out = b.act(Action::Engine(EngineState::WarmIdle));
    assert_eq!(rules(&out), [("open_manifold", Gravity::Major)]);
    b.act(Action::Engine(EngineState::Stopped));
    b.act(Action::SetStop { port: "engine.manifold".into(), stop: Some(Stop::Plug) });
    assert_eq!(rules(&b.act(Action::Engine(EngineState::WarmIdle))), []);
    b.act(Action::Engine(EngineState::Stopped));
    b.act(Action::SetStop { port: "engine.manifold".into(), stop: None });
    b.act(make("j_manifold"));
    b.act(open("j_hose_m"));
    let out = b.act(Action::Engine(EngineState::WarmIdle));
    assert_eq!(rules(&out), [("open_manifold", Gravity::Minor)]);
    b.act(Action::Engine(EngineState::Stopped));
    b.act(make("j_hose_m"));
    b.act(Action::Chocks(false));
    let out = b.act(Action::Engine(EngineState::WarmIdle));
    assert_eq!(rules(&out), [("no_chocks", Gravity::Minor)]);
}

#[test]
fn an_engine_indoors_wants_the_extraction_on() {
    let minor = [("no_extraction", Gravity::Minor)];
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Chocks(true));
    b.act(Action::Key(true));
    assert_eq!(rules(&b.act(Action::Engine(EngineState::WarmIdle))), minor);
    let out = b.act(Action::Wait { s: 320 });
    assert!(out.said.contains(&Notice::Exhaust), "{:?}", out.said);
    b.act(Action::Extraction(true));
    assert_eq!(rules(&b.act(Action::Extraction(false))), minor, "off while the engine runs");
    b.act(Action::Engine(EngineState::Stopped));
    b.act(Action::Extraction(true));
    assert_eq!(rules(&b.act(Action::Engine(EngineState::WarmIdle))), []);
    let out = b.act(Action::Wait { s: 320 });
    assert!(!out.said.contains(&Notice::Exhaust), "{:?}", out.said);
}

#[test]
fn earth_comes_off_first_and_goes_on_last() {
    let mut b = Bench::new(JOB, &[]);
    assert_eq!(rules(&b.act(open("e_battery_plus"))), [("battery_order", Gravity::Major)]);
    let mut b = Bench::new(JOB, &[]);
    for action in
        [open("e_battery_minus"), open("e_battery_plus"), make("e_battery_plus"), make("e_battery_minus")]
    {
        assert_eq!(rules(&b.act(action)), []);
    }
}

#[test]
fn an_ammeter_across_the_battery_melts_its_fuse() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::SetMeter { instrument: "meter".into(), mode: MeterMode::Ampere });
    let mut broken: Vec<(String, Gravity)> = Vec::new();
    for action in [
        fit("meter", &[("v_ohm", "battery.plus"), ("com", "battery.minus")]),
        Action::Wait { s: 2 },
        read("meter"),
    ] {
        let out = b.act(action);
        broken.extend(out.breaches.into_iter().map(|b| (b.rule().to_owned(), b.gravity())));
    }
    assert_eq!(broken, [("melted_fuse".to_owned(), Gravity::Minor)]);
    // It does not say so: it shows nought, give or take a count.
    let shown = b.ws.view().readings.last().map(|r| r.shown);
    assert!(matches!(shown, Some(ShownValue::Steps(-3..=3))), "{shown:?}");
}

#[test]
fn a_drive_or_a_release_without_proof_after_a_change() {
    let mut b = Bench::new(JOB, &[]);
    empty_store(&mut b);
    b.act(cover("scuttle", true));
    b.act(open("j_switch"));
    b.act(make("j_switch"));
    b.act(cover("scuttle", false));
    let out = b.act(sense(Sense::YardDrive));
    assert_eq!(rules(&out), [("drive_without_assist_proven", Gravity::Critical)]);
    assert_eq!(out.reading.map(|r| r.shown), Some(ShownValue::Level(2)), "the car is sound all the same");
}

#[test]
fn handing_back_with_something_left_on_the_car_or_with_no_assist_is_critical() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Finding { units: vec![], certainty: 0.95 });
    assert_eq!(rules(&b.act(Action::HandBack)), [], "an untouched sound car may go");

    let mut b = Bench::new(JOB, &[]);
    empty_store(&mut b);
    b.act(open("j_manifold"));
    b.act(Action::SetStop { port: "engine.manifold".into(), stop: Some(Stop::Plug) });
    b.act(Action::Finding { units: vec![], certainty: 0.95 });
    let out = b.act(Action::HandBack);
    assert!(rules(&out).contains(&("handed_back_with_things_left", Gravity::Critical)), "{out:?}");

    let no_assist = [("booster_rim", 4.0)];
    let mut b = Bench::new(JOB, &no_assist);
    b.act(Action::Finding { units: vec![], certainty: 0.95 });
    let out = b.act(Action::HandBack);
    assert!(rules(&out).contains(&("handed_back_without_assist", Gravity::Critical)), "{out:?}");

    let mut b = Bench::new(JOB, &no_assist);
    b.act(Action::Finding { units: vec![], certainty: 0.0 });
    assert_eq!(rules(&b.act(Action::HandBack)), [], "a car that stays is no danger");
}

#[test]
fn a_repaired_car_without_a_release_check() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Finding { units: vec!["relay".into()], certainty: 0.4 });
    b.act(Action::Swap { unit: "relay".into(), spare: "relay_new".into() });
    b.act(Action::HandBack);
    let out = &b.log.last().unwrap().1;
    assert!(rules(out).contains(&("no_release_check", Gravity::Major)), "{out:?}");
}

/// A sound car where the floor falls away under it.
fn on_slope() -> Bench {
    Bench::new("first-shift/new-in-the-mountains", &[])
}

#[test]
fn on_a_slope_chocks_come_first_and_whoever_goes_on_without_them_gates_himself() {
    let said = [("no_chocks_on_slope", Gravity::Major)];
    let went_on = [("no_chocks_on_slope", Gravity::Critical)];
    let mut b = on_slope();
    for looking in [read("barometer"), sense(Sense::Hum), Action::Key(true), Action::Key(false)] {
        assert_eq!(rules(&b.act(looking)), [], "looking moves nothing");
    }
    let press = || Action::PumpPedal { times: 1, force_n: 100.0 };
    assert_eq!(rules(&b.act(press())), said);
    assert_eq!(rules(&b.act(press())), went_on);
    assert_eq!(rules(&b.act(press())), [], "once is enough");
    // Said and put right: a slip. So is forgetting them once more after the yard.
    let mut b = on_slope();
    assert_eq!(rules(&b.act(press())), said);
    b.act(Action::Chocks(true));
    assert_eq!(rules(&b.act(press())), []);
    b.act(Action::Extraction(true));
    b.act(Action::Key(true));
    assert_eq!(rules(&b.act(Action::Engine(EngineState::WarmIdle))), []);
    b.act(Action::Key(false));
    b.act(Action::Extraction(false));
    b.act(Action::Chocks(false));
    assert_eq!(rules(&b.act(sense(Sense::YardDrive))), [], "the yard is driven in without chocks");
    assert_eq!(rules(&b.act(press())), said, "back on the slope");
    // What is refused was not done.
    let mut b = on_slope();
    let refused = b.ws.act(&Action::Engine(EngineState::WarmIdle));
    assert!(refused.refused.is_some() && refused.breaches.is_empty());
}

#[test]
fn on_a_level_floor_nothing_is_said_of_a_slope() {
    let mut b = Bench::new(JOB, &[]);
    assert_eq!(rules(&b.act(Action::PumpPedal { times: 1, force_n: 100.0 })), []);
}
