//! Numbers, names and joints of a car, its catalogue.

use super::{alder, change, good, library, only, refused};
use crate::pack::error::{BadCar, BadCatalogue, BadName, BadValue, Fault, Named, PackError, PackErrors};
use crate::pack::raw::RawVehicle;
use crate::pack::{check_car, read};

#[test]
fn alder_has_the_breadth_it_must_have() {
    let library = library();
    let alder = library.car("alder").unwrap();
    assert!(18 <= alder.faults.len());
    assert!(15 <= alder.tolerances.iter().filter(|t| t.serviceable.0 < t.serviceable.1).count());
    assert!(10 <= library.kit().len());
    let spares = library.spares(&alder).unwrap();
    for (i, unit) in alder.units.iter().enumerate() {
        let new = spares.iter().any(|s| usize::from(s.unit) == i && s.params.is_empty());
        assert!(new, "no new spare for {}", unit.id);
    }
    for fault in &alder.faults {
        assert!(alder.assembly.param(&fault.param).is_some(), "{}", fault.id);
    }
}

#[test]
fn numbers_out_of_range_give_path_value_and_range() {
    refused!(
        only(alder("displacement_cm3: 6.0", "displacement_cm3: 600.0")),
        Fault::Value(BadValue::OutOfRange { value, .. }) if *value == 600.0,
        "parts[9].kind.displacement_cm3 = 600", "allowed 1 to 100"
    );
    refused!(
        only(alder("price: 320.0", "price: -1.0")),
        Fault::Value(BadValue::OutOfRange { .. }),
        "units[0].price = -1",
        "0 to 10000 shop money"
    );
    for word in ["NaN", "inf", "-inf"] {
        let errors = alder("altitude_limit_m: 2000.0", &format!("altitude_limit_m: {word}"));
        refused!(
            only(errors),
            Fault::Value(BadValue::NotFinite { .. }),
            "altitude_limit_m",
            "finite",
            "0 to 5000"
        );
    }
}

#[test]
fn limits_and_serviceable_ranges_must_nest() {
    let line = "Tolerance(param: \"pump.slip_mm2\", serviceable: (0.28, 0.38), limit: (0.2, 0.5))";
    let with = |serviceable: &str, limit: &str| {
        let to = format!("Tolerance(param: \"pump.slip_mm2\", serviceable: {serviceable}, limit: {limit})");
        only(alder(line, &to))
    };
    refused!(
        with("(0.28, 0.6)", "(0.2, 0.5)"),
        Fault::Catalogue(BadCatalogue::ServiceableOutsideLimit { .. }),
        "serviceable (0.28, 0.6) reaches outside limit (0.2, 0.5)"
    );
    refused!(
        with("(0.38, 0.28)", "(0.2, 0.5)"),
        Fault::Value(BadValue::RangeReversed { .. }),
        "serviceable = (0.38, 0.28)"
    );
    refused!(
        with("(0.28, 0.3)", "(0.2, 0.31)"),
        Fault::Catalogue(BadCatalogue::NewOutsideLimit { .. }),
        "0.32",
        "(0.2, 0.31)"
    );
    refused!(
        with("(0.28, 0.38)", "(0.2, 50.0)"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "limit.1 = 50",
        "0.01 to 20"
    );
}

#[test]
fn a_fault_must_breach_its_limit() {
    refused!(
        only(alder("severity_min: 0.3,", "severity_min: 0.1,")),
        Fault::Catalogue(BadCatalogue::SeverityInsideLimit { .. }),
        "severity_min = 0.1",
        "pump.wear_mm2 (0, 0.15)"
    );
    refused!(
        only(alder("severity_min: 0.3, severity_max: 1.5", "severity_min: 1.5, severity_max: 0.3")),
        Fault::Catalogue(BadCatalogue::SeverityOrder { .. }),
        "severity_max = 0.3",
        "severity_min = 1.5"
    );
    refused!(
        only(alder("Tolerance(param: \"pump.wear_mm2\", serviceable: (0.0, 0.0), limit: (0.0, 0.15)),", "")),
        Fault::Catalogue(BadCatalogue::NoLimit { .. }),
        "pump.wear_mm2",
        "tolerances"
    );
    refused!(
        only(alder(
            "unit: \"pump\",\n            param: \"pump.wear_mm2\"",
            "unit: \"tee\",\n            param: \"pump.wear_mm2\""
        )),
        Fault::Catalogue(BadCatalogue::NotOfUnit { .. }),
        "pump.wear_mm2",
        "\"tee\""
    );
}

#[test]
fn a_controller_must_start_its_pump_above_where_it_stops_it() {
    let text = change(&good("assets/vehicles/cedar.ron"), "cut_in_kpa: -47.0", "cut_in_kpa: -62.0");
    let raw = read::parse::<RawVehicle>(&text, "cedar.ron").unwrap();
    let errors = check_car::car(raw, "cedar", "cedar.ron").unwrap_err();
    let reversed = |e: &PackError| matches!(&e.fault, Fault::Car(BadCar::SwitchPointsReversed { .. }));
    assert!(errors.iter().any(reversed), "{errors:?}");
}

#[test]
fn a_switch_must_close_above_its_opening_point() {
    let errors = alder("cut_in_kpa: -47.0", "cut_in_kpa: -62.0");
    assert!(errors.iter().any(
        |e| matches!(&e.fault, Fault::Car(BadCar::SwitchPointsReversed { cut_in, .. }) if *cut_in == -62.0)
    ));
}

#[test]
fn unknown_names_list_the_known_ones() {
    let named = |from: &str, to: &str, what: Named, known: &str| {
        let e = only(alder(from, to));
        assert!(matches!(&e.fault, Fault::Name(BadName::Unknown { what: w, .. }) if *w == what), "{e:#?}");
        assert!(e.to_string().contains(known), "{e}");
    };
    named("a: \"tee.2\"", "a: \"tee.9\"", Named::Port, "known: tee.1, tee.2, tee.3, tee.4");
    named("a: \"tee.2\"", "a: \"cross.2\"", Named::Part, "joints[2].a: there is no part called \"cross\"");
    named("a: \"tee.2\"", "a: \"tee\"", Named::Port, "known: tee.1");
    named("param: \"pump.slip_mm2\"", "param: \"pump.slip_cm2\"", Named::Param, "pump.slip_mm2");
    named("behind: \"splash_guard\"", "behind: \"undertray\"", Named::Cover, "known: scuttle, splash_guard");
    named("unit: \"valve_m\"", "unit: \"valve_x\"", Named::Unit, "known: booster, hose_b");
    named("parts: [\"relay\"]", "parts: [\"relais\"]", Named::Part, "\"relais\"");
    named("limit: \"cut-out\"", "limit: \"cutout\"", Named::Limit, "dead-head");
}

#[test]
fn names_are_short_and_unique() {
    let errors = alder("id: \"wire_15\", name", "id: \"Wire 15\", name");
    assert!(
        errors
            .iter()
            .any(|e| matches!(&e.fault, Fault::Name(BadName::NotShort { name, .. }) if name == "Wire 15")),
        "{errors:#?}"
    );
    refused!(
        only(alder("id: \"e_strap\"", "id: \"e_earth\"")),
        Fault::Name(BadName::Duplicate { what: Named::Joint, .. }),
        "joints[19].id",
        "\"e_earth\"",
        "joints[17].id"
    );
    refused!(
        only(alder("Tolerance(param: \"valve_m.crack_kpa\"", "Tolerance(param: \"valve_p.crack_kpa\"")),
        Fault::Name(BadName::Duplicate { what: Named::Param, .. }),
        "valve_p.crack_kpa"
    );
    refused!(
        only(alder("id: \"alder\"", "id: \"elder\"")),
        Fault::Name(BadName::NotTheFile { .. }),
        "\"elder\"",
        "\"alder\""
    );
}

#[test]
fn joints_join_what_belongs_together() {
    refused!(
        only(alder("b: \"switch.vacuum\"", "b: \"switch.p\"")),
        Fault::Car(BadCar::DomainMismatch { .. }),
        "tee.2 (air)",
        "switch.p (current)"
    );
    refused!(
        only(alder("b: \"switch.vacuum\"", "b: \"tee.2\"")),
        Fault::Car(BadCar::JoinedToItself { .. }),
        "joints[2]",
        "tee.2"
    );
    refused!(
        only(alder("b: \"switch.vacuum\"", "b: \"hose_b.a\"")),
        Fault::Car(BadCar::PortTaken { .. }),
        "joints[2].b",
        "hose_b.a",
        "j_booster"
    );
}

#[test]
fn units_of_limits_are_those_of_the_notebook() {
    refused!(
        only(alder("id: \"dead-head\", unit: \"kPa\"", "id: \"dead-head\", unit: \"bar\"")),
        Fault::Value(BadValue::WrongUnit { .. }),
        "limits[0].unit = \"bar\"",
        "known: kPa, V, A, ohm"
    );
    refused!(
        only(alder("unit: \"V\", max: 0.2,", "unit: \"V\",")),
        Fault::Value(BadValue::NoBound { .. }),
        "limits[9]",
        "`min` nor `max`"
    );
}

#[test]
fn every_fault_of_a_file_is_reported() {
    let mut text = good("assets/vehicles/alder.ron");
    for (from, to) in [
        ("displacement_cm3: 6.0", "displacement_cm3: 600.0"),
        ("b: \"switch.vacuum\"", "b: \"switch.p\""),
        ("price: 320.0", "price: NaN"),
        ("limit: \"cut-out\"", "limit: \"cutout\""),
        ("severity_min: 0.3,", "severity_min: 0.1,"),
    ] {
        text = change(&text, from, to);
    }
    let raw = read::parse::<RawVehicle>(&text, "alder.ron").unwrap();
    let errors = PackErrors(check_car::car(raw, "alder", "alder.ron").unwrap_err());
    assert_eq!(errors.0.len(), 5, "{errors}");
    assert_eq!(errors.to_string().lines().count(), 5);
}
