//! Which actions hands can reach, and how.

use std::collections::{BTreeMap, BTreeSet};

use sim_core::action::{Action, PedalHold};

use super::*;
use front::shop::Shop;
use crate::stage;
use crate::ui::menu::{form_action, open_form};

/// A name for each thing that can be asked of the workshop. A new action does not compile until it has a
/// name here, and then the test below asks how one reaches it.
fn name(action: &Action) -> String {
    let told = match action {
        Action::ReadCard => "read card",
        Action::ReadSheet => "read sheet",
        Action::Chocks(true) => "chocks on",
        Action::Chocks(false) => "chocks off",
        Action::Extraction(true) => "extraction on",
        Action::Extraction(false) => "extraction off",
        Action::Key(true) => "key on",
        Action::Key(false) => "key off",
        Action::Engine(state) => return format!("engine {state:?}"),
        Action::Pedal(PedalHold::Released) => "pedal released",
        Action::Pedal(PedalHold::Foot { .. }) => "pedal by foot",
        Action::Pedal(PedalHold::Prop { .. }) => "pedal by prop",
        Action::PumpPedal { .. } => "pump pedal",
        Action::Cover { off: true, .. } => "cover off",
        Action::Cover { off: false, .. } => "cover on",
        Action::OpenJoint { .. } => "open joint",
        Action::MakeJoint { .. } => "make joint",
        Action::SetStop { stop, .. } => return format!("stop {stop:?}"),
        Action::PullUnit { .. } => "pull unit",
        Action::PushUnit { .. } => "push unit",
        Action::Fit { .. } => "fit",
        Action::Unfit { .. } => "unfit",
        Action::SetMeter { mode, .. } => return format!("meter {mode:?}"),
        Action::Press { instrument, down } => return format!("press {instrument} {down}"),
        Action::Stroke { .. } => "stroke",
        Action::Swap { .. } => "swap",
        Action::Clean { .. } => "clean",
        Action::Reform { .. } => "reform",
        Action::Read { .. } => "read",
        Action::Sense(sense) => {
            let text = format!("{sense:?}");
            return format!("sense {}", text.split([' ', '{']).next().unwrap_or_default());
        }
        Action::Time { cycle, .. } => return format!("time {cycle:?}"),
        Action::Wait { .. } => "wait",
        Action::WaitUntil { cue, .. } => return format!("wait until {cue:?}"),
        Action::Overnight => "overnight",
        Action::Note { .. } => "note",
        Action::Suspect { .. } => "suspect",
        Action::Finding { .. } => "finding",
        Action::HandBack => "hand back",
    };
    told.to_owned()
}

/// Everything that can be reached now, and from which thing.
fn reach(shop: &Shop, found: &mut BTreeMap<String, Thing>) {
    for thing in all_things(shop) {
        take_all(shop, thing, offers(shop, None, thing), found, 0);
    }
}

fn take_all(shop: &Shop, thing: Thing, list: Vec<Offer>, found: &mut BTreeMap<String, Thing>, depth: u32) {
    for offer in list {
        match offer.then {
            Then::Do(action) => {
                found.entry(name(&action)).or_insert(thing);
            }
            Then::DoAll(actions) => {
                for action in actions {
                    found.entry(name(&action)).or_insert(thing);
                }
            }
            Then::Form(form) => {
                let action = form_action(shop, open_form(form)).unwrap();
                found.entry(name(&action)).or_insert(thing);
            }
            Then::More(lines) => take_all(shop, thing, lines, found, depth),
            // Two ends are the most an instrument has.
            Then::Carry(carry) if depth < 2 => {
                for place in all_things(shop) {
                    take_all(shop, place, offers(shop, Some(&carry), place), found, depth + 1);
                }
            }
            Then::Carry(_) | Then::Turn(_) | Then::PutBack | Then::Pace(_) => {}
        }
    }
}

/// What the clipboard asks for, where one writes.
const WRITTEN: [&str; 3] = ["finding", "note", "suspect"];

#[test]
fn inv_every_action_is_reached_by_hands_or_on_the_clipboard() {
    let states = [
        "",
        "chocks on\nextraction on\nkey on\nengine idle\npedal press 100",
        "cover scuttle off\nfit gauge tee.2\nfit lamp battery.plus battery.minus\nfit meter battery.plus battery.minus",
        "cover scuttle off\npull relay\nfit handpump booster.vacuum\nfit button battery.plus relay.87",
        "cover scuttle off\nfit handpump booster.vacuum\nfit button battery.plus wire_pump.a\npress handpump",
        "cover scuttle off\nfit button battery.plus wire_pump.a\npress button",
        "cover scuttle off\nopen j_booster\nplug booster.vacuum\nclamp hose_m.a\nmeter volt",
    ];
    let mut found = BTreeMap::new();
    for script in states {
        reach(&stage::shop(script), &mut found);
    }
    let mut wanted: BTreeSet<String> = [
        "read card",
        "read sheet",
        "chocks on",
        "chocks off",
        "extraction on",
        "extraction off",
        "key on",
        "key off",
        "engine Stopped",
        "engine ColdIdle",
        "engine WarmIdle",
        "engine Cruise",
        "engine Overrun",
        "engine WideOpen",
        "pedal released",
        "pedal by foot",
        "pedal by prop",
        "pump pedal",
        "cover off",
        "cover on",
        "open joint",
        "make joint",
        "stop None",
        "stop Some(Plug)",
        "stop Some(Clamp)",
        "pull unit",
        "push unit",
        "fit",
        "unfit",
        "meter Off",
        "meter Volt",
        "meter Ohm",
        "meter Ampere",
        "press button true",
        "press button false",
        "press handpump true",
        "press handpump false",
        "stroke",
        "swap",
        "clean",
        "reform",
        "read",
        "sense Hiss",
        "sense Hum",
        "sense Touch",
        "sense PedalTravel",
        "sense PedalMoved",
        "sense Applications",
        "sense BaseBrakes",
        "sense YardDrive",
        "time PumpRun",
        "time PumpRest",
        "wait",
        "wait until PumpStarts",
        "wait until PumpStops",
        "wait until LampOn",
        "wait until LampOut",
        "overnight",
        "hand back",
    ]
    .map(str::to_owned)
    .into();
    for action in &wanted {
        assert!(found.contains_key(action), "{action:?} cannot be reached by hands");
    }
    // A lamp is looked at by reading it: the same reading as the sense of its own name.
    wanted.insert("sense Lamp".to_owned());
    for action in found.keys() {
        assert!(wanted.contains(action), "{action:?} is reached, but this test does not know it");
        assert!(!WRITTEN.contains(&action.as_str()), "{action:?} belongs on the clipboard");
    }
}

#[test]
fn what_is_in_the_hand_goes_where_it_fits_and_nowhere_else() {
    let shop = stage::shop("");
    let kit = &shop.session().unwrap().workshop().setup().kit;
    let card = |id: &str| kit.iter().position(|c| c.id == id).unwrap() as u16;
    let carry = |id: &str| {
        let list = offers(&shop, None, Thing::Instrument(card(id)));
        list.into_iter().find_map(|o| if let Then::Carry(c) = o.then { Some(c) } else { None }).unwrap()
    };
    let at = |name: &str| place(&shop, name).unwrap();
    for (tool, fits, does_not) in [
        ("gauge", "valve_m.store", "battery.plus"),
        ("lamp", "battery.plus", "valve_m.store"),
        ("clampmeter", "wire_pump.a", "hose_b.a"),
        ("angle", "hose_b", "pump"),
        ("infrared", "pump", "no_such_thing"),
        ("plugs", "booster.vacuum", "relay.30"),
        ("clamps", "hose_m.a", "relay.30"),
        ("tube", "pump", "fuse"),
        ("prop", "booster", "pump"),
    ] {
        let carry = carry(tool);
        assert!(can_take(&shop, &carry, at(fits)), "{tool} should go on {fits}");
        if let Some(other) = place(&shop, does_not) {
            assert!(!can_take(&shop, &carry, other), "{tool} should not go on {does_not}");
        }
    }
    assert!(can_take(&shop, &carry("prop"), Thing::Pedal));
}

#[test]
fn the_second_lead_does_not_go_where_the_first_one_is() {
    let shop = stage::shop("");
    let plus = place(&shop, "battery.plus").unwrap();
    let first = offers(&shop, None, plus).into_iter().find(|o| o.key == "offer-fit-end").unwrap();
    let Then::Carry(carry) = first.then else { panic!("an instrument with two ends is carried on") };
    assert!(!can_take(&shop, &carry, plus));
    assert!(can_take(&shop, &carry, place(&shop, "battery.minus").unwrap()));
}

#[test]
fn a_unit_goes_to_the_bench_joint_by_joint_and_a_battery_does_not() {
    let shop = stage::shop("cover scuttle off");
    let bench = |part: &str| {
        let list = offers(&shop, None, place(&shop, part).unwrap());
        list.into_iter().find(|o| o.key == "offer-to-bench").map(|o| o.then)
    };
    let Some(Then::DoAll(actions)) = bench("valve_m") else { panic!("a check valve can be taken off") };
    let joints: Vec<&str> = actions
        .iter()
        .map(|a| if let Action::OpenJoint { joint } = a { joint.as_str() } else { panic!("{a:?}") })
        .collect();
    assert_eq!(joints, ["j_valve_m", "j_hose_m"]);
    // Which pole comes off first is the trainee's own decision.
    assert_eq!(bench("battery"), None);
}
