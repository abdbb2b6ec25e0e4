use super::*;
use sim_core::action::*;

#[test]
fn explore() {
    for faults in [&[][..], &[("booster_rim", 0.3)], &[("valve_p_leaks_back", 0.3)]] {
        let t = std::time::Instant::now();
        let mut b = Bench::new("first-shift/hum-at-the-lights", &[]);
        if !faults.is_empty() {
            println!("{:?}", b.ws.setup().car.faults.iter().map(|f| f.id.as_str()).collect::<Vec<_>>());
        }
        println!("arrival took {:?}", t.elapsed());
        let seq = vec![
            Action::ReadCard,
            Action::Chocks(true),
            read("barometer"),
            sense(Sense::BaseBrakes),
            fit("meter", &[("v_ohm", "battery.plus"), ("com", "battery.minus")]),
            Action::SetMeter { instrument: "meter".into(), mode: sim_core::parts::instruments::MeterMode::Volt },
            read("meter"),
            Action::PumpPedal { times: 8, force_n: 120.0 },
            sense(Sense::Applications),
            Action::Key(true),
            Action::Time { cycle: Cycle::PumpRun, max_s: 120 },
            Action::Time { cycle: Cycle::PumpRest, max_s: 1200 },
            read("meter"),
            Action::Key(false),
            Action::PumpPedal { times: 10, force_n: 120.0 },
            sense(Sense::Applications),
            fit("gauge", &[("stem", "tee.2")]),
            read("gauge"),
            Action::Key(true),
            Action::WaitUntil { cue: Cue::PumpStops, max_s: 100 },
            read("gauge"),
            sense(Sense::Hiss { part: "booster".into() }),
            Action::Key(false),
            Action::PumpPedal { times: 10, force_n: 120.0 },
            Action::Pedal(PedalHold::Foot { force_n: 120.0 }),
            sense(Sense::PedalTravel),
            Action::Key(true),
            Action::Engine(EngineState::WarmIdle),
            Action::Wait { s: 5 },
            sense(Sense::PedalMoved),
            sense(Sense::PedalTravel),
            Action::Engine(EngineState::Stopped),
            Action::Wait { s: 30 },
            sense(Sense::PedalMoved),
            Action::Pedal(PedalHold::Released),
            Action::Key(false),
            Action::Unfit { instrument: "gauge".into() },
            Action::Chocks(false),
            sense(Sense::YardDrive),
            Action::Overnight,
        ];
        let t = std::time::Instant::now();
        for a in seq {
            let t0 = std::time::Instant::now();
            let out = b.try_act(a.clone());
            println!("{a:?}\n   {}..{} refused {:?} {:?} pred {:?} breaches {:?} said {:?}  [{:?}]",
                out.start.s(), out.end.s(), out.refused.as_ref().map(|r| r.to_string()),
                out.reading.as_ref().map(|r| r.shown), out.predicted,
                out.breaches.iter().map(|b| b.rule.as_str()).collect::<Vec<_>>(), if out.said.len() < 5 { out.said.clone() } else { vec![] }, t0.elapsed());
        }
        println!("all took {:?}", t.elapsed());
        break;
    }
}
