//! Random attempts: whatever is done, in whatever order, nothing panics, a refusal leaves no trace, time
//! is accounted for, and the same world replays to the same bits.

use dice::Dice;
use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::parts::instruments::MeterMode;

use super::*;

/// Attempts and actions in each: some tens of thousands of simulated minutes, a few seconds of work.
const ATTEMPTS: u64 = 40;
const ACTIONS: usize = 70;

/// Every name a person could type, of one car.
struct Names {
    parts: Vec<String>,
    ports: Vec<String>,
    joints: Vec<String>,
    units: Vec<String>,
    covers: Vec<String>,
    spares: Vec<String>,
    instruments: Vec<String>,
    record: Vec<String>,
}

impl Names {
    fn of(setup: &Setup) -> Self {
        let assembly = &setup.car.assembly;
        let mut ports: Vec<String> = assembly.ports().map(|p| assembly.port_name(p)).collect();
        ports.push("handpump.stem".into());
        ports.push("nowhere.at_all".into());
        Self {
            parts: assembly.parts.iter().map(|p| p.id.clone()).collect(),
            ports,
            joints: assembly.joints.iter().map(|j| j.id.clone()).collect(),
            units: setup.car.units.iter().map(|u| u.id.clone()).collect(),
            covers: setup.car.covers.iter().map(|c| c.id.clone()).collect(),
            spares: setup.spares.iter().map(|s| s.id.clone()).collect(),
            instruments: setup.kit.iter().map(|c| c.id.clone()).collect(),
            record: setup.car.record.iter().map(|r| r.id.clone()).collect(),
        }
    }

    fn action(&self, d: &mut Dice) -> Action {
        let name = |d: &mut Dice, of: &[String]| d.pick(of).clone();
        let instrument = name(d, &self.instruments);
        let force_n = *d.pick(&[0.0, 20.0, 120.0, 300.0]);
        match d.below(32) {
            0 if d.below(2) == 0 => Action::Extraction(d.below(2) == 0),
            0 => Action::Chocks(d.below(2) == 0),
            1..=3 => Action::Key(d.below(3) != 0),
            4 => {
                Action::Engine(*d.pick(&[EngineState::WarmIdle, EngineState::Stopped, EngineState::Overrun]))
            }
            5 => Action::Pedal(*d.pick(&[
                PedalHold::Released,
                PedalHold::Foot { force_n },
                PedalHold::Prop { force_n },
            ])),
            6 => Action::Pedal(PedalHold::Released),
            7 => Action::PumpPedal { times: d.below(6) as u32, force_n },
            8 | 9 => Action::Cover { cover: name(d, &self.covers), off: d.below(3) != 0 },
            10 => Action::OpenJoint { joint: name(d, &self.joints) },
            11 => Action::MakeJoint { joint: name(d, &self.joints) },
            12 => Action::SetStop {
                port: name(d, &self.ports),
                stop: *d.pick(&[None, Some(Stop::Plug), Some(Stop::Clamp)]),
            },
            13 => Action::PullUnit { unit: (*d.pick(&["relay", "fuse", "pump"])).into() },
            14 => Action::PushUnit { unit: (*d.pick(&["relay", "fuse"])).into() },
            15 => Action::Fit {
                instrument: (*d.pick(&["gauge", "handpump"])).into(),
                ends: vec![("stem".into(), name(d, &self.ports))],
            },
            16 => Action::Fit {
                instrument: "meter".into(),
                ends: vec![("v_ohm".into(), name(d, &self.ports)), ("com".into(), name(d, &self.ports))],
            },
            17 => Action::Fit {
                instrument: (*d.pick(&["lamp", "button"])).into(),
                ends: vec![("a".into(), name(d, &self.ports)), ("b".into(), name(d, &self.ports))],
            },
            18 => Action::Unfit { instrument },
            19 => Action::SetMeter {
                instrument: "meter".into(),
                mode: *d.pick(&[MeterMode::Volt, MeterMode::Ohm, MeterMode::Ampere, MeterMode::Off]),
            },
            20 => {
                Action::Press { instrument: (*d.pick(&["button", "handpump"])).into(), down: d.below(2) == 0 }
            }
            21 => Action::Stroke { instrument: "handpump".into(), times: d.below(30) as u32 },
            22 => Action::Swap { unit: name(d, &self.units), spare: name(d, &self.spares) },
            23 => Action::Clean { unit: name(d, &self.units) },
            24 => Action::Read { instrument },
            25 => Action::Sense(match d.below(8) {
                0 => Sense::Hiss { part: name(d, &self.parts) },
                1 => Sense::Hum,
                2 => Sense::Touch { part: name(d, &self.parts) },
                3 => Sense::PedalTravel,
                4 => Sense::PedalMoved,
                5 => Sense::Applications,
                6 => Sense::Lamp { instrument: "lamp".into() },
                _ => Sense::YardDrive,
            }),
            26 => Action::Time {
                cycle: *d.pick(&[Cycle::PumpRun, Cycle::PumpRest]),
                max_s: d.below(900) as u32,
            },
            27 => Action::WaitUntil {
                cue: *d.pick(&[Cue::PumpStarts, Cue::PumpStops, Cue::LampOn, Cue::LampOut]),
                max_s: d.below(400) as u32,
            },
            28 => Action::Wait { s: d.below(500) as u32 },
            29 => Action::Note {
                reading: d.below(20) as u32,
                written: (d.below(2) == 0).then(|| Written { value: -60.0, unit: "kPa".into() }),
                record: (d.below(2) == 0).then(|| name(d, &self.record)),
            },
            30 => Action::Overnight,
            _ => Action::Finding {
                units: vec![name(d, &self.units)],
                certainty: *d.pick(&[0.0, 0.4, 0.95, 7.0]),
            },
        }
    }
}

#[test]
fn inv_random_attempts_never_panic_and_replay_to_the_same_bits() {
    let car = setup("first-shift/hum-at-the-lights", &[]).0.car;
    let mut done = 0;
    for n in 0..ATTEMPTS {
        let mut d = Dice::of(n);
        let fault = d.pick(&car.faults).clone();
        let setup = setup("first-shift/hum-at-the-lights", &[(&fault.id, fault.severity_max)]);
        let names = Names::of(&setup.0);
        let mut live = bring_in(setup.clone());
        let mut again = bring_in(setup);
        for _ in 0..ACTIONS {
            let action = names.action(&mut d);
            let before = live.digest();
            let out = live.act(&action);
            if out.refused.is_some() {
                assert_eq!(live.digest(), before, "{n} {}: refused {action:?} left a trace", fault.id);
                assert_eq!(out.start, out.end);
                continue;
            }
            done += 1;
            let second = again.replay(&action, out.end);
            assert_eq!(second, out, "{n} {}: {action:?}", fault.id);
            assert_eq!(again.digest(), live.digest(), "{n} {}: {action:?}", fault.id);
            let view = live.view();
            let minutes = view.attended_min + view.unattended_min;
            assert!((minutes - view.tick.s() / 60.0).abs() < 1e-6, "{n}: {action:?}");
        }
        assert_eq!(live.take_minute_digests(), again.take_minute_digests());
    }
    assert!(ATTEMPTS as usize * ACTIONS / 4 < done, "only {done} actions were possible");
}
