//! Replay: the same world gives the same bits, another world takes the recorded time.

use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::observe::Reading;
use sim_core::parts::instruments::MeterMode;
use sim_core::units::Tick;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

/// A long attempt that touches every kind of action.
fn script() -> Vec<Action> {
    let note = |reading, value: f64, unit: &str| Action::Note {
        reading,
        written: Some(Written { value, unit: unit.into() }),
        record: Some("day".into()),
    };
    let pedal = |force_n| Action::Pedal(PedalHold::Foot { force_n });
    let stop = |port: &str, stop| Action::SetStop { port: port.into(), stop };
    vec![
        Action::ReadCard,
        Action::Chocks(true),
        Action::Extraction(true),
        read("barometer"),
        note(1, 100.0, "kPa"),
        sense(Sense::BaseBrakes),
        Action::PumpPedal { times: 9, force_n: 120.0 },
        sense(Sense::Applications),
        Action::Key(true),
        Action::Time { cycle: Cycle::PumpRun, max_s: 60 },
        Action::Time { cycle: Cycle::PumpRest, max_s: 900 },
        Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 },
        sense(Sense::Hum),
        fit("clampmeter", &[("jaw", "wire_pump.b")]),
        Action::WaitUntil { cue: Cue::PumpStarts, max_s: 900 },
        read("clampmeter"),
        Action::Key(false),
        pedal(150.0),
        sense(Sense::PedalTravel),
        Action::Key(true),
        Action::Engine(EngineState::WarmIdle),
        Action::Wait { s: 7 },
        sense(Sense::PedalMoved),
        Action::Engine(EngineState::Stopped),
        Action::Wait { s: 31 },
        sense(Sense::PedalMoved),
        Action::Pedal(PedalHold::Prop { force_n: 90.0 }),
        sense(Sense::Hiss { part: "booster".into() }),
        Action::Pedal(PedalHold::Released),
        Action::Key(false),
        Action::PumpPedal { times: 12, force_n: 150.0 },
        cover("scuttle", true),
        open("j_switch"),
        fit("handpump", &[("stem", "switch.vacuum")]),
        Action::Stroke { instrument: "handpump".into(), times: 12 },
        read("handpump"),
        fit("lamp", &[("a", "battery.plus"), ("b", "wire_switch.b")]),
        Action::WaitUntil { cue: Cue::LampOut, max_s: 30 },
        sense(Sense::Lamp { instrument: "lamp".into() }),
        Action::Unfit { instrument: "lamp".into() },
        Action::Unfit { instrument: "handpump".into() },
        make("j_switch"),
        open("j_hose_m"),
        stop("valve_m.source", Some(Stop::Plug)),
        Action::Key(true),
        Action::Time { cycle: Cycle::PumpRest, max_s: 300 },
        stop("valve_m.source", None),
        make("j_hose_m"),
        Action::SetMeter { instrument: "meter".into(), mode: MeterMode::Volt },
        fit("meter", &[("v_ohm", "battery.plus"), ("com", "pump.plus")]),
        read("meter"),
        Action::Unfit { instrument: "meter".into() },
        Action::Key(false),
        Action::Suspect { text: "the valve towards the engine".into() },
        Action::Finding { units: vec!["valve_m".into()], certainty: 0.8 },
        Action::Swap { unit: "valve_m".into(), spare: "valve_m_new".into() },
        Action::Overnight,
        Action::PumpPedal { times: 3, force_n: 120.0 },
        sense(Sense::Applications),
        Action::Chocks(false),
        Action::Extraction(false),
        sense(Sense::YardDrive),
        Action::HandBack,
    ]
}

/// An action, what came of it, and the digest after it.
type Played = (Action, Outcome, u64);

/// Plays the script live; returns each action played, and every minute's digest.
fn live(car: (Setup, World)) -> (Opened, Vec<Played>, Vec<(Tick, u64)>) {
    let mut ws = bring_in(car);
    let played = script()
        .into_iter()
        .map(|action| {
            let out = ws.act(&action);
            let digest = ws.digest();
            (action, out, digest)
        })
        .collect();
    let minutes = ws.take_minute_digests();
    (ws, played, minutes)
}

#[test]
fn inv_replay_in_the_same_world_gives_the_same_bits() {
    for faults in [&[][..], &[("valve_m_leaks_back", 0.25)], &[("relay_welded", 50.0)], &[("pump_worn", 0.8)]]
    {
        let setup = setup(JOB, faults);
        let (ws, played, minutes) = live(setup.clone());
        let done = played.iter().filter(|(_, out, _)| out.refused.is_none()).count();
        assert!(script().len() - 8 < done, "{faults:?}: only {done} actions were possible");
        let mut again = bring_in(setup);
        for (action, out, digest) in &played {
            if out.refused.is_some() {
                continue;
            }
            let second = again.replay(action, out.end);
            assert_eq!(&second, out, "{faults:?}: {action:?}");
            assert_eq!(again.digest(), *digest, "{faults:?}: {action:?}");
        }
        assert_eq!(again.take_minute_digests(), minutes);
        assert_eq!(again.view(), ws.view());
    }
}

#[test]
fn inv_replay_in_another_world_takes_the_recorded_time_and_is_never_refused() {
    let (_, played, _) = live(setup(JOB, &[("valve_m_leaks_back", 0.25)]));
    let car = setup(JOB, &[]).0.car.clone();
    for fault in &car.faults {
        for severity in [fault.severity_min, fault.severity_max] {
            let mut other = bring_in(setup(JOB, &[(&fault.id, severity)]));
            for (action, out, _) in played.iter().filter(|(_, out, _)| out.refused.is_none()) {
                let second = other.replay(action, out.end);
                assert_eq!(second.refused, None, "{} {severity}: {action:?}", fault.id);
                assert_eq!((second.start, second.end), (out.start, out.end), "{}: {action:?}", fault.id);
                let what = |r: &Option<Reading>| r.as_ref().map(|r| (r.what.clone(), r.epoch));
                assert_eq!(what(&second.reading), what(&out.reading));
            }
        }
    }
}

#[test]
fn inv_a_timed_interval_is_predicted_to_its_own_end_in_another_world() {
    let leaky = setup(JOB, &[("valve_m_leaks_back", 0.25)]);
    let start = [Action::Key(true), Action::WaitUntil { cue: Cue::PumpStops, max_s: 60 }];
    let time = Action::Time { cycle: Cycle::PumpRest, max_s: 3600 };
    let mut live = bring_in(leaky.clone());
    let ends: Vec<Tick> = start.iter().map(|a| live.act(a).end).collect();
    let timed = live.act(&time);
    let Some(Predicted::Value(true_rest)) = live.predicted() else { panic!("{timed:?}") };
    // A smaller leak rests longer than the record is long, and the marker still learns how long.
    let mut other = bring_in(setup(JOB, &[("valve_m_leaks_back", 0.15)]));
    start.iter().zip(&ends).for_each(|(a, end)| drop(other.replay(a, *end)));
    let second = other.replay(&time, timed.end);
    let Some(Predicted::Value(rest)) = other.predicted() else { panic!("{second:?}") };
    assert_eq!(other.tick(), timed.end);
    assert!(1.8 * true_rest < rest, "area goes with the diameter squared: {rest} against {true_rest}");
}

#[test]
fn inv_free_running_time_replays_too() {
    let mut live = bring_in(setup(JOB, &[("valve_m_leaks_back", 0.25)]));
    let mut log = Vec::new();
    for (until_s, action) in [
        (13.37, Action::Key(true)),
        (60.01, Action::Engine(EngineState::WarmIdle)),
        (95.0, Action::Engine(EngineState::Stopped)),
        (400.5, Action::Key(false)),
    ] {
        live.run_free(Tick::from_s(until_s));
        let out = live.act(&action);
        log.push((action, out));
    }
    for (faults, same) in [([("valve_m_leaks_back", 0.25)], true), ([("pump_worn", 1.0)], false)] {
        let mut again = bring_in(setup(JOB, &faults));
        for (action, out) in &log {
            again.run_free_cut(out.start);
            assert_eq!(again.tick(), out.start);
            let second = again.replay(action, out.end);
            assert_eq!(second.end, out.end);
        }
        assert_eq!(again.digest() == live.digest(), same, "{faults:?}");
    }
}
