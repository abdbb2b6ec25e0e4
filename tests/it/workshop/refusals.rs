//! What is refused, with which sentence; and that a refusal leaves no trace.

use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::parts::instruments::MeterMode;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

/// Asserts that `action` is refused with a sentence that holds `words`, and that nothing has changed.
fn refused(b: &mut Bench, action: Action, words: &str) {
    let (before, tick) = (b.ws.digest(), b.ws.tick());
    let out = b.ws.act(&action);
    let why = out.refused.unwrap_or_else(|| panic!("{action:?} was not refused"));
    let text = crate::told::said(&b.ws, &why);
    assert!(text.contains(words), "{action:?}: {text:?} does not hold {words:?}");
    assert_eq!(b.ws.tick(), tick, "{action:?} took time although refused");
    assert_eq!(b.ws.digest(), before, "{action:?} changed something although refused");
    assert!(out.breaches.is_empty() && out.reading.is_none());
}

fn stop(port: &str, stop: Option<Stop>) -> Action {
    Action::SetStop { port: port.into(), stop }
}

#[test]
fn names_and_numbers_are_checked() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, open("j_boster"), "j_booster");
    refused(&mut b, fit("gauge", &[("stem", "tee.7")]), "tee.1");
    refused(&mut b, fit("gage", &[("stem", "tee.2")]), "gauge");
    refused(&mut b, cover("bonnet", true), "scuttle");
    refused(&mut b, sense(Sense::Touch { part: "exhaust".into() }), "pump");
    refused(&mut b, Action::Pedal(PedalHold::Foot { force_n: 900.0 }), "between 1 and 700");
    refused(&mut b, Action::PumpPedal { times: 0, force_n: 100.0 }, "between 1 and 30");
    refused(&mut b, Action::Pedal(PedalHold::Foot { force_n: f64::NAN }), "between");
    refused(&mut b, Action::Wait { s: 0 }, "between 1 and 43200");
    refused(&mut b, Action::Time { cycle: Cycle::PumpRun, max_s: 8000 }, "7200");
    refused(&mut b, Action::Finding { units: vec!["spark_plug".into()], certainty: 0.6 }, "valve_m");
    refused(&mut b, Action::Finding { units: vec![], certainty: 0.5 }, "0.40, 0.60");
}

#[test]
fn a_cover_bars_what_is_behind_it() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, open("j_pump"), "splash_guard");
    b.act(cover("splash_guard", true));
    b.act(open("j_pump"));
    refused(&mut b, cover("splash_guard", true), "already");
}

#[test]
fn a_foot_on_the_pedal_binds_to_the_seat_and_the_prop_frees() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("scuttle", true));
    b.act(fit("gauge", &[("stem", "tee.2")]));
    b.act(Action::Pedal(PedalHold::Foot { force_n: 100.0 }));
    refused(&mut b, read("gauge"), "prop");
    refused(&mut b, open("j_booster"), "prop");
    b.act(Action::Key(true));
    b.act(sense(Sense::Hum));
    b.act(Action::Pedal(PedalHold::Prop { force_n: 100.0 }));
    b.act(read("gauge"));
    refused(&mut b, Action::PumpPedal { times: 2, force_n: 100.0 }, "prop");
}

#[test]
fn plugs_go_on_open_ports_and_clamps_on_rubber() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("scuttle", true));
    b.act(cover("splash_guard", true));
    refused(&mut b, stop("tee.2", Some(Stop::Plug)), "open the joint first");
    refused(&mut b, stop("pump.plus", Some(Stop::Plug)), "electrical");
    refused(&mut b, stop("tee.2", Some(Stop::Clamp)), "no hose");
    refused(&mut b, stop("tee.2", None), "neither");
    let car = b.ws.setup().car.clone();
    for (part, standing) in car.assembly.parts.iter().zip(&car.stands) {
        if part.kind.name() == "Hose" {
            let end = format!("{}.a", part.id);
            if standing.rubber {
                b.act(stop(&end, Some(Stop::Clamp)));
                refused(&mut b, stop(&end, Some(Stop::Clamp)), "already");
                b.act(stop(&end, None));
            } else {
                refused(&mut b, stop(&end, Some(Stop::Clamp)), "hard pipe");
            }
        }
    }
    b.act(open("j_switch"));
    b.act(stop("tee.2", Some(Stop::Plug)));
    refused(&mut b, make("j_switch"), "take it out first");
    refused(&mut b, fit("gauge", &[("stem", "tee.2")]), "plug");
}

#[test]
fn instruments_need_to_be_what_they_are_used_for() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, fit("meter", &[("v_ohm", "battery.plus")]), "v_ohm, com");
    refused(&mut b, fit("meter", &[("v_ohm", "tee.1"), ("com", "battery.minus")]), "air");
    refused(&mut b, fit("clampmeter", &[("jaw", "tee.1")]), "wire");
    refused(&mut b, fit("angle", &[("arm", "pump")]), "no hose");
    refused(&mut b, fit("barometer", &[]), "used where it is");
    refused(&mut b, read("watch"), "time a run");
    refused(&mut b, read("infrared"), "on the board");
    refused(&mut b, Action::Stroke { instrument: "handpump".into(), times: 5 }, "not connected");
    refused(&mut b, Action::SetMeter { instrument: "gauge".into(), mode: MeterMode::Volt }, "no dial");
    refused(&mut b, Action::WaitUntil { cue: Cue::LampOut, max_s: 10 }, "no test lamp");
    refused(&mut b, Action::PullUnit { unit: "pump".into() }, "no plug-in unit");
    refused(&mut b, Action::Reform { unit: "pump".into() }, "cannot be re-formed");
    refused(&mut b, Action::Clean { unit: "pump".into() }, "nothing");
    refused(&mut b, Action::Swap { unit: "pump".into(), spare: "tee_new".into() }, "it is for tee");
}

#[test]
fn a_job_without_an_instrument_does_without_what_it_does() {
    let (mut setup, world) = setup(JOB, &[]);
    let kit = setup.kit.iter().filter(|c| !["watch", "prop", "plugs"].contains(&c.id.as_str())).cloned();
    setup.kit = Arc::new(kit.collect::<Vec<_>>());
    let mut b = Bench { ws: Opened::of(setup, world), log: Vec::new() };
    refused(&mut b, Action::Time { cycle: Cycle::PumpRun, max_s: 60 }, "no stopwatch");
    refused(&mut b, Action::Pedal(PedalHold::Prop { force_n: 100.0 }), "no pedal prop");
}

#[test]
fn the_engine_needs_the_key_and_a_battery() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, Action::Engine(EngineState::WarmIdle), "ignition is off");
    b.act(open("e_battery_minus"));
    b.act(Action::Key(true));
    refused(&mut b, Action::Engine(EngineState::WarmIdle), "starter only clicks");
}

#[test]
fn a_button_binds_the_hand() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("splash_guard", true));
    b.act(fit("button", &[("a", "battery.plus"), ("b", "battery.plus")]));
    b.act(Action::Press { instrument: "button".into(), down: true });
    refused(&mut b, Action::Key(true), "let it go");
    refused(&mut b, make("e_earth"), "already");
    refused(&mut b, open("e_battery_plus"), "let it go");
    b.act(Action::Press { instrument: "button".into(), down: false });
    b.act(Action::Key(true));
}

#[test]
fn the_notebook_takes_a_reading_with_its_number() {
    let mut b = Bench::new(JOB, &[]);
    let note = |reading, written: Option<(f64, &str)>, record: Option<&str>| Action::Note {
        reading,
        written: written.map(|(value, unit)| Written { value, unit: unit.into() }),
        record: record.map(Into::into),
    };
    refused(&mut b, note(1, None, None), "none yet");
    b.act(read("barometer"));
    refused(&mut b, note(2, None, None), "1 to 1");
    refused(&mut b, note(1, None, Some("day")), "write down the number");
    refused(&mut b, note(1, Some((100.0, "kPa")), Some("weather")), "day");
    b.act(note(1, Some((100.0, "kPa")), Some("day")));
    // A slip of the pen is struck out and written anew.
    b.act(note(1, Some((99.5, "kPa")), Some("day")));
    assert_eq!(b.ws.record_now().len(), 1);
}

#[test]
fn senses_need_something_to_sense() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, sense(Sense::PedalTravel), "nobody holds the pedal");
    refused(&mut b, sense(Sense::Applications), "pump it first");
    b.act(Action::Pedal(PedalHold::Foot { force_n: 80.0 }));
    refused(&mut b, sense(Sense::PedalMoved), "held while the engine");
    b.act(Action::Pedal(PedalHold::Released));
    b.act(Action::Chocks(true));
    refused(&mut b, sense(Sense::YardDrive), "chocks");
}

#[test]
fn the_extraction_hangs_in_one_place_and_does_not_go_out_with_the_car() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, Action::Extraction(false), "hangs on the wall");
    b.act(Action::Pedal(PedalHold::Foot { force_n: 80.0 }));
    refused(&mut b, Action::Extraction(true), "foot holds the brake pedal");
    b.act(Action::Pedal(PedalHold::Released));
    b.act(Action::Extraction(true));
    assert!(b.ws.view().extracted);
    refused(&mut b, Action::Extraction(true), "on the exhaust already");
    refused(&mut b, sense(Sense::YardDrive), "take it off before you drive");
    b.act(Action::Finding { units: Vec::new(), certainty: 0.0 });
    refused(&mut b, Action::HandBack, "take it off before you hand the car back");
    b.act(Action::Extraction(false));
    b.act(Action::HandBack);
}

#[test]
fn after_hand_back_the_attempt_is_over() {
    let mut b = Bench::new(JOB, &[]);
    refused(&mut b, Action::HandBack, "finding first");
    b.act(Action::Finding { units: vec![], certainty: 0.95 });
    b.act(Action::Key(true));
    refused(&mut b, Action::HandBack, "ignition off");
    b.act(Action::Key(false));
    b.act(Action::HandBack);
    assert!(b.ws.view().handed_back);
    refused(&mut b, Action::ReadCard, "over");
}

#[test]
fn a_spare_is_there_once_and_repairs_lock_the_first_finding() {
    let mut b = Bench::new(JOB, &[]);
    let swap = Action::Swap { unit: "relay".into(), spare: "relay_new".into() };
    b.act(swap.clone());
    refused(&mut b, swap, "once already".trim_start_matches("once "));
    assert!(b.ws.repaired_before_finding());
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Finding { units: vec!["relay".into()], certainty: 0.4 });
    b.act(Action::Swap { unit: "relay".into(), spare: "relay_new".into() });
    assert!(!b.ws.repaired_before_finding());
}
