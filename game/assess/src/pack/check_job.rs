//! From a pack and a job as written to checked ones.

use std::sync::Arc;

use sim_core::action::certainty_of;
use sim_core::air::Day;
use sim_core::car::{Car, Spare};
use sim_core::instrument::InstrumentCard;

use super::block::Block;
use super::checker::{Checker, is_short_name};
use super::error::{BadCatalogue, BadName, BadValue, Named, PackError};
use super::range::{Range, Unit};
use super::raw::{RawHidden, RawJob, RawPack, RawWeights, SCHEMA, ranges};
use super::wanted::Wanted;
use crate::pack::job::{
    AfterHandBack, CAUTION, Competence, DEFER, Hidden, Job, ReferencePlan, Symptom, Weights,
};
use crate::sentence;

/// A pack: what its jobs have in common.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// Short name, the folder's.
    pub id: String,
    /// Title.
    pub title: String,
    /// Who wrote it.
    pub author: String,
    /// Licence of its texts.
    pub licence: String,
    /// Language tag of its texts.
    pub language: String,
    /// Least total for *competent*, of 100.
    pub cut_score: f64,
    /// Weights of the mark's parts.
    pub weights: Weights,
    /// How sure every finding is taken to be, where the school fixes it.
    pub certainty: Option<f64>,
    /// How often one may ask which test would tell most.
    pub hints: u32,
    /// Instruments allowed, short names.
    pub tools: Vec<String>,
    /// What is told after the hand-back.
    pub after_hand_back: AfterHandBack,
    /// What it exercises.
    pub competences: Vec<Competence>,
    /// Jobs in order, short names.
    pub jobs: Vec<String>,
}

/// Hints that a pack gives which does not say.
const USUAL_HINTS: u32 = 3;

/// Checks a pack; `kit` are the instruments that exist, `job_files` the jobs in its folder.
pub(crate) fn pack(
    raw: RawPack,
    id: &str,
    kit: &[InstrumentCard],
    job_files: &[String],
    file: &str,
) -> Result<Pack, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.lengths::<RawPack>(&[
        ("tools", raw.tools.len()),
        ("competences", raw.competences.len()),
        ("jobs", raw.jobs.len()),
    ])?;
    check.text("title", &raw.title, Wanted::Title);
    check.text("author", &raw.author, Wanted::Author);
    check.text("licence", &raw.licence, Wanted::Licence);
    check.text("language", &raw.language, Wanted::Language);
    check.number("cut_score", raw.cut_score, RawPack::range("cut_score"));
    let certainty = raw.certainty.and_then(|number| certainty(&mut check, number));
    let hints = raw.hints.unwrap_or(USUAL_HINTS);
    check.number("hints", f64::from(hints), RawPack::range("hints"));
    let w = &raw.weights;
    for (key, value) in [
        ("verdict", w.verdict),
        ("evidence", w.evidence),
        ("economy", w.economy),
        ("parts", w.parts),
        ("release", w.release),
        ("record", w.record),
    ] {
        check.number(format!("weights.{key}"), value, RawWeights::range(key));
    }
    let sum = w.verdict + w.evidence + w.parts + w.release + w.record;
    let all = sentence!("data-sum-of-weights", "weights (sum without economy)");
    check.number(all, sum, Range::new(1.0, 500.0, Unit::InName));
    names(&mut check, "tools", Named::Instrument, &raw.tools, &ids(kit));
    check.list("jobs", &raw.jobs, Wanted::Jobs);
    let known: Vec<&str> = job_files.iter().map(String::as_str).collect();
    for (i, job) in raw.jobs.iter().enumerate() {
        check.short_name(&format!("jobs[{i}]"), job, '-');
    }
    names(&mut check, "jobs", Named::Job, &raw.jobs, &known);
    let mut competences = Vec::new();
    for (i, c) in raw.competences.into_iter().enumerate() {
        check.text(&format!("competences[{i}].framework"), &c.framework, Wanted::Framework);
        check.text(&format!("competences[{i}].edition"), &c.edition, Wanted::Edition);
        check.text(&format!("competences[{i}].code"), &c.code, Wanted::Code);
        competences.push(Competence { framework: c.framework, edition: c.edition, code: c.code });
    }
    check.done(Pack {
        id: id.to_owned(),
        title: raw.title,
        author: raw.author,
        licence: raw.licence,
        language: raw.language,
        cut_score: raw.cut_score,
        weights: Weights {
            verdict: raw.weights.verdict,
            evidence: raw.weights.evidence,
            economy: raw.weights.economy,
            parts: raw.weights.parts,
            release: raw.weights.release,
            record: raw.weights.record,
        },
        certainty,
        hints,
        after_hand_back: raw.after_hand_back,
        tools: raw.tools,
        competences,
        jobs: raw.jobs,
    })
}

/// The step of certainty that a number means.
fn certainty(check: &mut Checker<'_>, number: f64) -> Option<f64> {
    let in_range = check.number("certainty", number, RawPack::range("certainty"));
    let step = certainty_of(number);
    if in_range && step.is_none() {
        check.push(BadValue::NoStep { path: "certainty".into(), value: number });
    }
    step
}

fn ids(kit: &[InstrumentCard]) -> Vec<&str> {
    kit.iter().map(|c| c.id.as_str()).collect()
}

/// Every name of a list exists and stands once.
fn names(check: &mut Checker<'_>, list: &str, what: Named, given: &[String], known: &[&str]) {
    for (i, name) in given.iter().enumerate() {
        let path = format!("{list}[{i}]");
        check.index(&path, what, name, known);
        if let Some(first) = given[..i].iter().position(|g| g == name) {
            check.push(BadName::Duplicate {
                path,
                what,
                name: name.clone(),
                first: format!("{list}[{first}]"),
            });
        }
    }
}

/// What a job is checked against.
pub(crate) struct Around<'a> {
    pub(crate) pack: &'a Pack,
    pub(crate) car: &'a Arc<Car>,
    pub(crate) kit: &'a [InstrumentCard],
    pub(crate) spares: &'a [Spare],
}

/// What is hidden in the car: a fault of its catalogue each, no number of the car twice, inside the catalogue's severities.
fn hidden(check: &mut Checker<'_>, raw: &[RawHidden], car: &Car) -> Vec<(u16, f64)> {
    let known: Vec<&str> = car.faults.iter().map(|f| f.id.as_str()).collect();
    let mut faults: Vec<(u16, f64)> = Vec::new();
    for (i, h) in raw.iter().enumerate() {
        let path = format!("hidden[{i}]");
        let Some(f) = check.index(&format!("{path}.fault"), Named::Fault, &h.fault, &known) else { continue };
        let def = &car.faults[f as usize];
        let clash = |g: &(u16, f64)| car.faults[g.0 as usize].param == def.param;
        if let Some(first) = faults.iter().position(clash) {
            check.push(BadName::Duplicate {
                path: format!("{path}.fault"),
                what: Named::Param,
                name: def.param.clone(),
                first: format!("hidden[{first}].fault"),
            });
        }
        let (low, high) = (def.severity_min.min(def.severity_max), def.severity_min.max(def.severity_max));
        let here = format!("{path}.severity");
        if !h.severity.is_finite() {
            check.number(&here, h.severity, Range::new(low, high, Unit::InName));
        } else if h.severity < low || high < h.severity {
            check.push(BadCatalogue::SeverityOutsideCatalogue {
                path: here,
                value: h.severity,
                fault: def.id.clone(),
                min: low,
                max: high,
            });
        }
        faults.push((f, h.severity));
    }
    faults
}

/// Checks a job; tests, digest, reference and plan are filled in by the library.
pub(crate) fn job(raw: RawJob, id: &str, around: &Around<'_>, file: &str) -> Result<Job, Vec<PackError>> {
    let Around { pack, car, kit, spares } = *around;
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.lengths::<RawJob>(&[
        ("complaint", raw.complaint.len()),
        ("hidden", raw.hidden.len()),
        ("hazards", raw.hazards.len()),
        ("debrief", raw.debrief.len()),
        ("spares", raw.spares.as_ref().map_or(0, Vec::len)),
        ("tools", raw.tools.as_ref().map_or(0, Vec::len)),
    ])?;
    check.text("title", &raw.title, Wanted::Title);
    check.number("time_limit_min", raw.time_limit_min, RawJob::range("time_limit_min"));
    for (key, lines, expected) in [
        ("complaint", &raw.complaint, Wanted::Complaint),
        ("hazards", &raw.hazards, Wanted::Hazards),
        ("debrief", &raw.debrief, Wanted::Debrief),
    ] {
        check.list(key, lines, expected);
        for (i, line) in lines.iter().enumerate() {
            check.text(&format!("{key}[{i}]"), line, expected);
        }
    }
    day(&mut check, &raw.day, car);
    check.number("arrival.stood_min", f64::from(raw.arrival.stood_min), ranges::STOOD_MIN);
    symptom(&mut check, &raw.symptom);
    reference_name(&mut check, &raw.reference);

    let faults = hidden(&mut check, &raw.hidden, car);

    if let Some(tools) = &raw.tools {
        let allowed: Vec<&str> = pack.tools.iter().map(String::as_str).collect();
        names(&mut check, "tools", Named::Instrument, tools, &allowed);
    }
    let allowed = raw.tools.as_ref().unwrap_or(&pack.tools);
    let kit: Vec<InstrumentCard> = kit.iter().filter(|c| allowed.contains(&c.id)).cloned().collect();
    if let Some(store) = &raw.spares {
        let known: Vec<&str> = spares.iter().map(|s| s.id.as_str()).collect();
        names(&mut check, "spares", Named::Spare, store, &known);
    }
    let in_store = |s: &&Spare| raw.spares.as_ref().is_none_or(|store| store.contains(&s.id));
    let spares: Vec<Spare> = spares.iter().filter(in_store).cloned().collect();

    let mut card = raw.complaint;
    card.extend(raw.hazards.iter().map(|h| format!("{CAUTION}{h}")));
    card.push(format!("{CAUTION}{DEFER}"));
    check.done(Job {
        id: id.to_owned(),
        pack_id: pack.id.clone(),
        title: raw.title,
        car: Arc::clone(car),
        kit: Arc::new(kit),
        spares: Arc::new(spares),
        tests: Arc::default(),
        day: raw.day,
        arrival: raw.arrival,
        card,
        faults: Hidden(faults),
        symptom: raw.symptom,
        debrief: raw.debrief.join("\n\n"),
        time_limit_min: raw.time_limit_min,
        cut_score: pack.cut_score,
        weights: pack.weights,
        certainty: pack.certainty,
        hints: pack.hints,
        after_hand_back: pack.after_hand_back,
        competences: pack.competences.clone(),
        reference: None,
        plan: ReferencePlan::Missing,
        digest: [0; 32],
        digests_before: Vec::new(),
    })
}

fn day(check: &mut Checker<'_>, day: &Day, car: &Car) {
    let ok = check.number("day.altitude_m", day.altitude_m, ranges::ALTITUDE_M);
    if ok && car.altitude_limit_m < day.altitude_m {
        check.push(BadCatalogue::AboveAltitudeLimit {
            altitude_m: day.altitude_m,
            car: car.id.clone(),
            limit_m: car.altitude_limit_m,
        });
    }
    check.number("day.weather_kpa", day.weather_kpa, ranges::WEATHER_KPA);
    check.number("day.ambient_c", day.ambient_c, ranges::AMBIENT_C);
    check.number("day.night_drop_k", day.night_drop_k, ranges::NIGHT_DROP_K);
}

fn symptom(check: &mut Checker<'_>, symptom: &Symptom) {
    match symptom {
        Symptom::ShortRest { below_s } => {
            check.number("symptom.below_s", *below_s, ranges::SYMPTOM_S);
        }
        Symptom::LongRun { above_s } => {
            check.number("symptom.above_s", *above_s, ranges::SYMPTOM_S);
        }
        Symptom::HardPedalAfterNight { above_kpa_gauge } => {
            check.number("symptom.above_kpa_gauge", *above_kpa_gauge, ranges::SYMPTOM_KPA);
        }
        Symptom::HumsKeyOff => {}
    }
}

/// A plain file name `<words>.script`: nothing that leaves the folder.
fn reference_name(check: &mut Checker<'_>, name: &str) {
    let stem = name.strip_suffix(".script").unwrap_or("");
    if !is_short_name(stem, '-') {
        check.push(BadName::NoScript { name: name.to_owned() });
    }
}
