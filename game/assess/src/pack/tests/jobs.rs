//! Instruments, spares, packs and jobs.

use std::path::Path;

use super::{change, copied, good, library, only, refused};
use crate::pack::error::{BadCar, BadCatalogue, BadName, BadValue, Fault, Miswritten, Named, Unread};
use crate::pack::raw::{RawInstrument, RawJob, RawPack, RawSpares};
use crate::pack::{Library, check_catalogue, check_instrument, read};

#[test]
fn instruments_are_checked() {
    let card = |from: &str, to: &str| {
        let text = change(&good("assets/instruments/gauge.ron"), from, to);
        match read::parse::<RawInstrument>(&text, "gauge.ron") {
            Err(e) => only(e.0),
            Ok(raw) => only(check_instrument::card(raw, "gauge", "gauge.ron").unwrap_err()),
        }
    };
    refused!(
        card("class: 1.6", "class: 60.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "kind.dial.class = 60",
        "0.05 to 10 % of span"
    );
    refused!(card("max: 0.0", "max: -100.0"), Fault::Value(BadValue::RangeReversed { .. }), "kind.dial");
    refused!(
        card("lag_s: 0.3", "lag_ms: 300.0"),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "lag_ms",
        "lag_s"
    );
    refused!(
        card("volume_cm3: 12.0", "volume_cm3: 0.5"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "part.volume_cm3",
        "2 to 500"
    );
    refused!(
        card(
            "VacuumGauge((volume_cm3: 12.0, bore_mm: 4.0, lag_s: 0.3))",
            "TestLamp((rated_w: 21.0, rated_v: 12.0))"
        ),
        Fault::Car(BadCar::WrongPart { .. }),
        "a Gauge needs VacuumGauge, found TestLamp"
    );
    refused!(card("id: \"gauge\"", "id: \"dial\""), Fault::Name(BadName::NotTheFile { .. }), "\"dial\"");
}

#[test]
fn spares_are_checked() {
    let alder = library().car("alder").unwrap();
    let spares = |from: &str, to: &str| {
        let text = change(&good("assets/spares/alder.ron"), from, to);
        let raw = read::parse::<RawSpares>(&text, "spares.ron").unwrap();
        only(check_catalogue::spares(raw, "alder", &alder, "spares.ron").unwrap_err())
    };
    refused!(
        spares("unit: \"tee\"", "unit: \"t\""),
        Fault::Name(BadName::Unknown { what: Named::Unit, .. }),
        "spares[2].unit"
    );
    refused!(
        spares("pump.wear_mm2\", value: 0.1", "pump.wear_mm2\", value: 99.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "99"
    );
    refused!(
        spares("pump.wear_mm2", "tee.crack_mm"),
        Fault::Catalogue(BadCatalogue::NotOfUnit { .. }),
        "tee.crack_mm"
    );
    refused!(
        spares("id: \"tee_new\"", "id: \"booster_new\""),
        Fault::Name(BadName::Duplicate { .. }),
        "booster_new"
    );
}

#[test]
fn jobs_are_checked() {
    const FILE: &str = "scenarios/first-shift/jobs/hum-at-the-lights.ron";
    let job = |from: &str, to: &str| only(copied(FILE, from, to, "first-shift/hum-at-the-lights"));
    refused!(
        job("valve_m_leaks_back", "valve_m_leaks"),
        Fault::Name(BadName::Unknown { what: Named::Fault, .. }),
        "hidden[0].fault",
        "valve_m_stuck_shut"
    );
    refused!(
        job("severity: 0.23", "severity: 5.0"),
        Fault::Catalogue(BadCatalogue::SeverityOutsideCatalogue { .. }),
        "0.06 to 0.6"
    );
    refused!(
        job("severity: 0.23", "severity: NaN"),
        Fault::Value(BadValue::NotFinite { .. }),
        "hidden[0].severity"
    );
    refused!(
        job("vehicle: \"alder\"", "vehicle: \"yew\""),
        Fault::Name(BadName::Unknown { what: Named::Car, .. }),
        "known: alder"
    );
    refused!(
        job("altitude_m: 120.0", "altitude_m: 2500.0"),
        Fault::Catalogue(BadCatalogue::AboveAltitudeLimit { .. }),
        "2500",
        "2000 m"
    );
    refused!(
        job("weather_kpa", "weather_mbar"),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "`Day`",
        "weather_kpa"
    );
    refused!(
        job("weather_kpa: 0.4", "weather_kpa: 40.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "-6 to 5"
    );
    refused!(
        job("below_s: 120.0", "below_s: -1.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "symptom.below_s"
    );
    refused!(
        job("ShortRest", "Squeak"),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "Squeak",
        "HumsKeyOff"
    );
    refused!(
        job("hum-at-the-lights.script", "../../x.script"),
        Fault::Name(BadName::NoScript { .. }),
        "reference"
    );
    refused!(
        job("debrief: [", "tools: [\"crystal_ball\"],\n    debrief: ["),
        Fault::Name(BadName::Unknown { what: Named::Instrument, .. }),
        "tools[0]",
        "crystal_ball",
        "handpump"
    );
    refused!(
        job("debrief: [", "spares: [\"moon\"],\n    debrief: ["),
        Fault::Name(BadName::Unknown { what: Named::Spare, .. }),
        "spares[0]",
        "valve_m_new"
    );
    let text = change(&good(FILE), "hazards:", "hazard:");
    refused!(
        only(read::parse::<RawJob>(&text, FILE).unwrap_err().0),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "hazards"
    );
}

#[test]
fn packs_are_checked() {
    const FILE: &str = "scenarios/first-shift/pack.ron";
    let pack = |from: &str, to: &str| only(copied(FILE, from, to, "first-shift/hum-at-the-lights"));
    refused!(
        pack("cut_score: 70.0", "cut_score: 170.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "1 to 100 of 100"
    );
    refused!(
        pack("schema: 1,", "schema: 1, certainty: 0.7,"),
        Fault::Value(BadValue::NoStep { .. }),
        "certainty = 0.7",
        "0.40, 0.60, 0.80 or 0.95"
    );
    refused!(
        pack("schema: 1,", "schema: 1, certainty: 0.0,"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "certainty = 0, allowed 0.4 to 0.95"
    );
    refused!(
        pack("\"tube\"", "\"trumpet\""),
        Fault::Name(BadName::Unknown { what: Named::Instrument, .. }),
        "trumpet"
    );
    refused!(
        pack("\"hard-first-press\"", "\"hard-last-press\""),
        Fault::Name(BadName::Unknown { what: Named::Job, .. }),
        "hard-last-press"
    );
    refused!(
        pack("verdict: 30.0", "verdict: -30.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "weights.verdict"
    );
    let text = change(&good(FILE), "title: \"First shift\"", "title: \" \"");
    assert!(read::parse::<RawPack>(&text, FILE).is_ok());
    refused!(pack("title: \"First shift\"", "title: \" \""), Fault::Value(BadValue::Empty { .. }), "title");
}

#[test]
fn unknown_packs_jobs_and_cars_are_named() {
    let library = library();
    let job = |name: &str| only(library.job(name).unwrap_err().0);
    refused!(
        job("first-shift/nope"),
        Fault::Name(BadName::Unknown { what: Named::Job, .. }),
        "nope",
        "first-shift/hum-at-the-lights"
    );
    refused!(
        job("last-shift/nope"),
        Fault::Name(BadName::Unknown { what: Named::Pack, .. }),
        "last-shift",
        "first-shift"
    );
    refused!(job("../../etc"), Fault::Name(BadName::Unknown { .. }), "known: first-shift");
    refused!(job(""), Fault::Name(BadName::Unknown { .. }), "first-shift");
    refused!(
        only(library.car("yew").unwrap_err().0),
        Fault::Name(BadName::Unknown { what: Named::Car, .. }),
        "alder"
    );
    let nowhere = Library::open(Path::new("/nowhere/at/all")).unwrap_err();
    refused!(only(nowhere.0), Fault::Unread(Unread::System { .. }), "/nowhere/at/all");
}
