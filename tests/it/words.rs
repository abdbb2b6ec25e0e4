//! Plain words: what is typed becomes the action that is meant, and an action says words that mean it.

use assess::locale::Locale;
use assess::pack::Library;
use assess::words::{self, Ask, Said, Vocabulary, WordsError, parse, say};
use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense, Written};
use sim_core::assembly::Stop;
use sim_core::observe::{Observed, Reading, ShownValue};
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;
use sim_core::units::Tick;

fn library() -> Library {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    Library::open(&root).unwrap()
}

fn names_of(car: &str) -> Vocabulary {
    let library = library();
    let car = library.car(car).unwrap();
    let spares = library.spares(&car).unwrap();
    Vocabulary::of(&car, library.kit(), &spares)
}

fn names() -> Vocabulary {
    names_of("alder")
}

fn reading(id: u32, what: Observed, shown: ShownValue) -> Reading {
    Reading { id, tick: Tick(100), what, shown, epoch: 0 }
}

fn readings() -> Vec<Reading> {
    let gauge = Observed::Instrument {
        instrument: "gauge".into(),
        mode: None,
        at: vec![("stem".into(), "tee.2".into())],
    };
    vec![
        reading(1, gauge, ShownValue::Steps(-58)),
        reading(2, Observed::Sense(Sense::PedalMoved), ShownValue::Level(1)),
    ]
}

/// As many as examples speak of.
fn many_readings() -> Vec<Reading> {
    let gauge = readings().remove(0).what;
    let gauged = (1..=9).map(|n| reading(n, gauge.clone(), ShownValue::Steps(-58)));
    // The last needs no number to be noted.
    gauged.chain([reading(10, Observed::Sense(Sense::PedalMoved), ShownValue::Level(1))]).collect()
}

fn said(line: &str) -> Said {
    parse(line, &names(), &readings()).unwrap_or_else(|e| panic!("{line}: {e}"))
}

fn action(line: &str) -> Action {
    match said(line) {
        Said::Do(action) => action,
        other => panic!("{line}: {other:?}"),
    }
}

fn refusal(line: &str) -> String {
    match parse(line, &names(), &readings()) {
        Err(e) => e.to_string(),
        Ok(said) => panic!("{line}: understood as {said:?}"),
    }
}

#[test]
fn words_mean_actions() {
    let port = |p: &str, stop| Action::SetStop { port: p.into(), stop };
    let joint = |j: &str| Action::OpenJoint { joint: j.into() };
    let instrument = "meter".to_string();
    let cases = [
        ("chocks on", Action::Chocks(true)),
        ("chocks", Action::Chocks(true)),
        ("extraction on", Action::Extraction(true)),
        ("extraction off", Action::Extraction(false)),
        ("exhaust", Action::Extraction(true)),
        ("key on", Action::Key(true)),
        ("engine start", Action::Engine(EngineState::WarmIdle)),
        ("engine cold", Action::Engine(EngineState::ColdIdle)),
        ("pedal press 200", Action::Pedal(PedalHold::Foot { force_n: 200.0 })),
        ("pedal prop 150 N", Action::Pedal(PedalHold::Prop { force_n: 150.0 })),
        ("pedal pump 5", Action::PumpPedal { times: 5, force_n: 120.0 }),
        ("pedal pump 5 300", Action::PumpPedal { times: 5, force_n: 300.0 }),
        ("cover scuttle off", Action::Cover { cover: "scuttle".into(), off: true }),
        ("cover on splash-guard", Action::Cover { cover: "splash_guard".into(), off: false }),
        ("open j_hose_m", joint("j_hose_m")),
        ("open J-Hose-M", joint("j_hose_m")),
        ("open hose_m.b", joint("j_manifold")),
        ("disconnect e_switch_p", joint("e_switch_p")),
        ("unplug switch.p", joint("e_switch_p")),
        ("unplug tee.3", port("tee.3", None)),
        ("plug tee.3", port("tee.3", Some(Stop::Plug))),
        ("clamp hose-m.a", port("hose_m.a", Some(Stop::Clamp))),
        (
            "swap valve_m with valve_m_new",
            Action::Swap { unit: "valve_m".into(), spare: "valve_m_new".into() },
        ),
        ("swap valve_m", Action::Swap { unit: "valve_m".into(), spare: "valve_m_new".into() }),
        (
            "fit gauge to tee.2",
            Action::Fit { instrument: "gauge".into(), ends: vec![("stem".into(), "tee.2".into())] },
        ),
        (
            "fit meter red=relay.87 black=body.31a",
            Action::Fit {
                instrument: instrument.clone(),
                ends: vec![("com".into(), "body.31a".into()), ("v_ohm".into(), "relay.87".into())],
            },
        ),
        (
            "fit clampmeter wire_pump",
            Action::Fit { instrument: "clampmeter".into(), ends: vec![("jaw".into(), "wire_pump.a".into())] },
        ),
        (
            "fit ir pump",
            Action::Fit { instrument: "infrared".into(), ends: vec![("beam".into(), "pump".into())] },
        ),
        ("meter volt", Action::SetMeter { instrument, mode: MeterMode::Volt }),
        ("press lead", Action::Press { instrument: "button".into(), down: true }),
        ("let go of lead", Action::Press { instrument: "button".into(), down: false }),
        ("stroke hand-pump 10", Action::Stroke { instrument: "handpump".into(), times: 10 }),
        ("hiss hose_m", Action::Sense(Sense::Hiss { part: "hose_m".into() })),
        ("feel moved", Action::Sense(Sense::PedalMoved)),
        ("look lamp", Action::Sense(Sense::Lamp { instrument: "lamp".into() })),
        ("time rest 15min", Action::Time { cycle: Cycle::PumpRest, max_s: 900 }),
        ("wait 30", Action::Wait { s: 30 }),
        ("wait 2 h", Action::Wait { s: 7200 }),
        ("wait until pump stops 120", Action::WaitUntil { cue: Cue::PumpStops, max_s: 120 }),
        ("wait until the lamp goes out", Action::WaitUntil { cue: Cue::LampOut, max_s: 1800 }),
        ("finding valve-m sure 95%", Action::Finding { units: vec!["valve_m".into()], certainty: 0.95 }),
        (
            "finding pump, switch sure 0.6",
            Action::Finding { units: vec!["pump".into(), "switch".into()], certainty: 0.6 },
        ),
        ("finding none sure 0.8", Action::Finding { units: vec![], certainty: 0.8 }),
        ("finding unknown", Action::Finding { units: vec![], certainty: 0.0 }),
        ("suspect it's the pump's valve", Action::Suspect { text: "it's the pump's valve".into() }),
        ("start engine", Action::Engine(EngineState::WarmIdle)),
        ("turn the key off", Action::Key(false)),
        ("press brake", Action::Pedal(PedalHold::Foot { force_n: 200.0 })),
        ("remove scuttle", Action::Cover { cover: "scuttle".into(), off: true }),
        ("refit scuttle", Action::Cover { cover: "scuttle".into(), off: false }),
        ("take the fuse out", Action::PullUnit { unit: "fuse".into() }),
        ("unplug relay", Action::PullUnit { unit: "relay".into() }),
        (
            "connect gauge tee.2",
            Action::Fit { instrument: "gauge".into(), ends: vec![("stem".into(), "tee.2".into())] },
        ),
        ("check brakes", Action::Sense(Sense::BaseBrakes)),
        ("hand back", Action::HandBack),
        ("handback", Action::HandBack),
    ];
    for (line, meant) in cases {
        assert_eq!(action(line), meant, "{line}");
        // What an action says means the action again.
        let words = say(&meant);
        assert_eq!(action(&words), meant, "{line} says {words}");
    }
}

#[test]
fn notes_take_reading_value_unit_and_line() {
    let note = |reading, value: Option<(f64, &str)>, record: Option<&str>| Action::Note {
        reading,
        written: value.map(|(value, unit)| Written { value, unit: unit.into() }),
        record: record.map(Into::into),
    };
    assert_eq!(action("note"), note(2, None, None), "a sense needs no number");
    assert_eq!(action("note for drop"), note(2, None, Some("drop")));
    assert_eq!(action("note 1 -58 kPa"), note(1, Some((-58.0, "kPa")), None));
    assert_eq!(action("note #1 −58kpa for cut_out"), note(1, Some((-58.0, "kPa")), Some("cut-out")));
    assert_eq!(action("note -58,5 kPa"), note(2, Some((-58.5, "kPa")), None));
    assert_eq!(action("note 2"), note(2, None, None));
    assert_eq!(
        said("note 1 shown for cut-out"),
        Said::NoteShown { reading: 1, record: Some("cut-out".into()) }
    );
    assert!(refusal("note 1").contains("write what you read"), "{}", refusal("note 1"));
    assert!(refusal("note 1 -58").contains("unit"), "{}", refusal("note 1 -58"));
    assert!(refusal("note 9").contains("no reading 9"), "{}", refusal("note 9"));
    assert!(refusal("note 1 -58 bananas").contains("no unit"));
}

#[test]
fn slips_get_a_hint_that_helps() {
    for (line, hint) in [
        ("opne j_hose_m", "open"),
        ("open j_hose_n", "j_hose_m"),
        ("open tee", "j_valve_m"),
        ("plug tee.9", "tee.4"),
        ("swap valve_m with valve_n_new", "valve_m_new"),
        ("engine ilde", "idle"),
        ("key", "on"),
        ("finding valve_m", "sure 0.40, 0.60, 0.80 or 0.95"),
        ("finding valve_m sure 0.9", "0.80 or 0.95"),
        ("wait until doomsday", "pump stops"),
        ("fit gauge", "fit gauge tee.2"),
        ("fit watch tee.2", "time rest 900"),
        ("press gauge.stem", "no instrument"),
        ("note for", "line of the record"),
        ("xyzzy", "type help"),
        ("go to the bay", "by yourself"),
        ("measure tee.2", "fit"),
        ("gauge tee.2", "is an instrument"),
        ("booster", "is a part of the car"),
    ] {
        let text = refusal(line);
        assert!(text.contains(hint), "{line}: {text}");
        assert!(
            !text.contains("subcommand") && !text.contains("argument"),
            "{line}: no program talk in {text:?}"
        );
    }
    assert!(matches!(
        parse("open j_nothing_like_it", &names(), &[]),
        Err(WordsError::NoSuch { kind: words::Kind::Joint, .. })
    ));
}

#[test]
fn help_is_everywhere_and_every_word_has_an_example_that_works() {
    assert_eq!(said("help"), Said::Ask(Ask::Help(None)));
    assert_eq!(said("fit help"), Said::Ask(Ask::Help(Some("fit".into()))));
    assert_eq!(said("help fit"), Said::Ask(Ask::Help(Some("fit".into()))));
    assert_eq!(said("   # a remark"), Said::Nothing);
    let overview = words::overview(&names(), &Locale::built_in());
    for verb in words::verbs() {
        if verb == "help" {
            continue;
        }
        let page = words::help(&verb, &names(), &Locale::built_in()).unwrap();
        assert!(page.contains("Example"), "{verb} has no example:\n{page}");
        assert!(page.lines().all(|l| l.chars().count() <= 110), "{verb}: too wide\n{page}");
        assert!(
            overview.split_whitespace().any(|w| w == verb) || verb == "unplug",
            "{verb} is missing in the overview"
        );
    }
    assert!(overview.lines().all(|l| l.chars().count() <= 80), "{overview}");
    assert!(words::help("opne", &names(), &Locale::built_in()).unwrap_err().to_string().contains("open"));
}

/// The example lines of a word's page: without the explanation beside each.
fn examples(page: &str) -> Vec<String> {
    let from = page.find("Example").map(|at| &page[at..]).unwrap_or_default();
    let (first, rest) = from.split_once(':').unwrap_or_default();
    let one = first == "Example" || !rest.starts_with('\n');
    let lines: Vec<&str> = if one { rest.lines().take(1).collect() } else { rest.lines().collect() };
    let lines = lines.into_iter().filter(|l| one || l.starts_with("  "));
    let alternatives = lines.flat_map(|l| l.split(" · ")).flat_map(|l| l.split("  or: "));
    let bare = alternatives.map(|l| {
        let line = l.trim_start().split("   ").next().unwrap_or_default();
        line.split(" (").next().unwrap_or_default().trim().to_owned()
    });
    bare.filter(|l| !l.is_empty()).collect()
}

#[test]
fn examples_are_lines_that_work_at_the_car_at_hand() {
    let (mut all, mut wrong) = (0, Vec::new());
    for car in library().cars().unwrap() {
        let names = names_of(&car);
        assert!(!words::overview(&names, &Locale::built_in()).contains('<'));
        for verb in words::verbs().into_iter().filter(|v| v != "help") {
            let page = words::help(&verb, &names, &Locale::built_in()).unwrap();
            let after = page.find("Example").map(|at| &page[at..]).unwrap_or_default();
            assert!(!after.contains('<'), "{car}: {page}");
            for line in examples(&page) {
                all += 1;
                // A car without plug-in units has none to pull, and the example says what they are.
                let none = ["pull", "push"].contains(&verb.as_str()) && car == "birch";
                match parse(&line, &names, &many_readings()) {
                    Ok(_) => {}
                    Err(WordsError::NoSuch { .. }) if none => {}
                    Err(e) => wrong.push(format!("{car}: {line}: {e}")),
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(150 < all, "{all}");
}

/// Where the school fixes how sure a finding is, nobody need say it, and nobody can say another.
#[test]
fn a_fixed_certainty_is_taken_and_no_other() {
    let fixed = names().with_certainty(Some(0.80));
    let finding = |line: &str| match parse(line, &fixed, &readings()) {
        Ok(Said::Do(Action::Finding { units, certainty })) => Ok((units, certainty)),
        Ok(other) => panic!("{line}: {other:?}"),
        Err(e) => Err(e.to_string()),
    };
    let valve = || vec!["valve_m".to_owned()];
    for line in
        ["finding valve_m", "finding valve_m sure 0.80", "finding valve-m sure 80%", "finding valve_m at 0,8"]
    {
        assert_eq!(finding(line), Ok((valve(), 0.80)), "{line}");
    }
    assert_eq!(finding("finding none"), Ok((Vec::new(), 0.80)));
    assert_eq!(finding("finding unknown"), Ok((Vec::new(), 0.0)));
    for line in [
        "finding valve_m sure 0.95",
        "finding none sure 0.4",
        "finding valve_m sure very",
        "finding valve_m sure",
    ] {
        let error = finding(line).unwrap_err();
        assert!(error.contains("the school fixes how sure a finding is, at 0.80"), "{line}: {error}");
        assert!(!error.contains("example: finding valve_m sure"), "{line}: {error}");
    }
}
