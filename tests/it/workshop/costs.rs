//! What things cost in time, and whether it counts as worked or waited.

use sim_core::action::{Action, Cycle, PedalHold, Sense, Station};
use sim_core::units::Tick;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

fn took_s(out: &Outcome) -> f64 {
    out.end.s() - out.start.s()
}

#[test]
fn the_attempt_begins_at_tick_zero_whatever_happened_on_arrival() {
    let b = Bench::new(JOB, &[]);
    assert_eq!(b.ws.tick(), Tick(0));
    assert_eq!(b.ws.view().station, Station::Desk);
}

#[test]
fn walking_costs_twenty_seconds_and_only_between_stations() {
    let mut b = Bench::new(JOB, &[]);
    let first = took_s(&b.act(Action::Key(true)));
    let second = took_s(&b.act(Action::Key(false)));
    assert!((first - 21.0).abs() < 1e-9, "desk to seat 20 s, then 1 s: {first}");
    assert!((second - 1.0).abs() < 1e-9, "already in the seat: {second}");
    assert_eq!(b.ws.view().station, Station::Cab);
}

#[test]
fn waits_over_two_minutes_are_unattended_unless_the_foot_is_bound() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::Wait { s: 120 });
    assert!(b.ws.view().unattended_min.abs() < 1e-9);
    b.act(Action::Wait { s: 121 });
    assert!((b.ws.view().unattended_min - 121.0 / 60.0).abs() < 1e-9);
    let worked = b.ws.view().attended_min;
    b.act(Action::Pedal(PedalHold::Foot { force_n: 50.0 }));
    b.act(Action::Wait { s: 600 });
    assert!((b.ws.view().unattended_min - 121.0 / 60.0).abs() < 1e-9);
    assert!(worked + 10.0 < b.ws.view().attended_min);
}

#[test]
fn every_tick_of_the_attempt_is_worked_or_waited() {
    let mut b = Bench::new(JOB, &[]);
    for action in [
        Action::ReadCard,
        Action::Chocks(true),
        Action::Extraction(true),
        cover("splash_guard", true),
        sense(Sense::BaseBrakes),
        Action::PumpPedal { times: 6, force_n: 120.0 },
        Action::Key(true),
        Action::Time { cycle: Cycle::PumpRun, max_s: 60 },
        Action::Time { cycle: Cycle::PumpRest, max_s: 900 },
        Action::Key(false),
        Action::Overnight,
    ] {
        b.act(action);
    }
    let view = b.ws.view();
    let total = view.tick.s() / 60.0;
    assert!((view.attended_min + view.unattended_min - total).abs() < 1e-9);
    assert!((view.unattended_min - (12.0 * 60.0 + 15.0)).abs() < 1e-9, "{}", view.unattended_min);
}

#[test]
fn applications_are_real_and_take_two_and_a_half_seconds_each() {
    let mut b = Bench::new(JOB, &[]);
    b.act(Action::PumpPedal { times: 1, force_n: 120.0 });
    let out = b.act(Action::PumpPedal { times: 4, force_n: 120.0 });
    assert!((took_s(&out) - 10.0).abs() < 1e-9);
}

#[test]
fn a_tee_lets_the_air_into_the_store() {
    let mut b = Bench::new(JOB, &[]);
    b.act(cover("scuttle", true));
    let booster = b.ws.circuit().assembly().port("booster.vacuum").unwrap();
    let kpa = |b: &Bench| b.ws.circuit().pressure(booster).gauge(b.ws.circuit().ambient()).kpa();
    assert!(kpa(&b) < -30.0, "the car came in with a full store: {}", kpa(&b));
    b.act(fit("gauge", &[("stem", "tee.2")]));
    assert!(-1.0 < kpa(&b), "the joint stood open while the tee went in: {}", kpa(&b));
}
