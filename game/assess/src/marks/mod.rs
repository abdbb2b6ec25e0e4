//! Marks an attempt: `score/2` (without economy where a job has no reference plan; the other weights are rescaled).
//!
//! The marker sees the attempt and the job, nothing else. It does the attempt again, bit for bit, and takes its course
//! down meanwhile; what does not replay is not marked, unless another version made it ([`recorded`]). `docs/marking.md`
//! says why every rule is as it is.

mod chart;
mod economy;
mod fair;
mod hints;
mod parts;
mod recorded;
pub mod score;
pub mod sheet;
pub mod telling;
mod time;
mod truth;
pub mod when;
mod words;

use std::sync::Arc;

use sim_core::Opened;
use sim_core::notice::Gravity;
use sim_core::workshop::Outcome;
use sim_core::world::World;

use crate::attempt::hint_line::HintLine;
use crate::attempt::override_line::OverrideLine;
use crate::attempt::{Attempt, Breached, ENGINE, Step};
use crate::infer::belief::Belief;
use crate::infer::evidence::{Followed, follow};
use crate::infer::hypotheses::Hypotheses;
use crate::locale::sentence::Sentence;
use crate::locale::{Locale, Naming, Speech};
use crate::pack::job::{Job, ReferencePlan};
use crate::plan::cost::{Minutes, Rehearsal};
use crate::plan::test::Test;
use crate::planner::trials;
use crate::play::course::{Course, Deed, Note, Taking, Worth, trace};
use crate::play::script::{self, ScriptError};
use crate::play::{self, Begin, Session, SessionError};
use crate::sentence;
use fair::Fair;
use sheet::{BreachLine, MarkSheet, RecordLine, Recording};
use when::When;

/// Why an attempt could not be marked.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum MarkError {
    /// It is of another job, or does not replay to what it records: it was altered.
    DoesNotReplay(#[from] Box<SessionError>),
}

impl MarkError {
    /// Why, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::DoesNotReplay(error) => {
                sentence!("marks-cannot", "the attempt cannot be marked: {why}", why = error.sentence())
            }
        }
    }
}

/// Everything that was computed about an attempt, before it becomes words.
pub(crate) struct Computed<'a> {
    pub(crate) job: &'a Job,
    pub(crate) course: &'a Course,
    pub(crate) hints: &'a [HintLine],
    pub(crate) followed: &'a Followed,
    pub(crate) fair: &'a Fair,
    pub(crate) reference: Option<Reached>,
    pub(crate) par: Option<Minutes>,
}

/// What the reference attempt reaches in the same world.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Reached {
    /// Best probability of the true classes along it (it is followed no further than [`score::TAU`]).
    pub(crate) p_true: f64,
    /// Notes it took.
    pub(crate) notes: usize,
    /// It is the reference plan's, not the author's script's.
    pub(crate) planned: bool,
}

/// An attempt that has been marked: all that was computed, not yet in words.
#[derive(Debug)]
pub struct Evaluation {
    job: Job,
    attempt: Labels,
    /// Where the course is the file's, not today's.
    recording: Option<Recording>,
    course: Course,
    /// How the belief moved; `None` when the car was not handed back.
    followed: Option<(Followed, Fair)>,
    reference: Option<Reached>,
    /// What the job may take, where economy counts.
    par: Option<Minutes>,
    /// Why the job's reference attempt stops on this very car.
    reference_stops: Option<ScriptError>,
}

/// What an attempt says of itself.
#[derive(Debug)]
struct Labels {
    job_digest: String,
    seat: Option<String>,
    seed: String,
    engine: String,
    when: When,
    hints: Vec<HintLine>,
    overrides: Vec<OverrideLine>,
}

/// Marks an attempt at `job`. Takes some seconds to a minute: every hypothesis is simulated.
///
/// # Errors
/// When the attempt is of another job, or does not replay to what it records (says where) although this version of the
/// program made it.
pub fn mark(attempt: &Attempt, job: &Job) -> Result<Evaluation, MarkError> {
    mark_with(attempt, job, 1)
}

/// As [`mark`], with so many times the cars that a hypothesis is given: what hangs on their number shows so.
///
/// # Errors
/// As [`mark`].
pub fn mark_with(attempt: &Attempt, job: &Job, times: usize) -> Result<Evaluation, MarkError> {
    let (course, recording) = taken(attempt, job).map_err(Box::new)?;
    let mut evaluation = Evaluation {
        job: job.clone(),
        attempt: Labels {
            job_digest: attempt.header.job_digest.clone(),
            seat: attempt.header.seat.clone(),
            seed: attempt.header.seed.to_string(),
            engine: attempt.header.engine.clone(),
            when: When::of(attempt),
            hints: attempt.hints.clone(),
            overrides: attempt.overrides.clone(),
        },
        recording,
        course,
        followed: None,
        reference: None,
        par: None,
        reference_stops: None,
    };
    let deeds = evaluation.course.deeds.clone();
    let follow = || {
        if evaluation.course.handed_back.is_some() {
            evaluation.follow(attempt, times);
        }
    };
    // One car, one thread: beside the many of the belief.
    let (trace, ()) = rayon::join(|| trace(job, &play::truth(job, attempt.header.seed), &deeds), follow);
    evaluation.course.trace = trace;
    Ok(evaluation)
}

/// What is believed along an attempt, as [`mark`] follows it, and nothing else of what stands on a sheet.
///
/// # Errors
/// As [`mark`].
pub fn followed(attempt: &Attempt, job: &Job) -> Result<Followed, MarkError> {
    let (course, _) = taken(attempt, job).map_err(Box::new)?;
    Ok(follow(job, &Hypotheses::of(&job.car), &course, course.deeds.len(), |_| false))
}

/// The course of an attempt so far, as the marker takes it.
///
/// # Errors
/// As [`mark`].
pub(crate) fn course(attempt: &Attempt, job: &Job) -> Result<Course, MarkError> {
    Ok(taken(attempt, job).map_err(Box::new)?.0)
}

impl Evaluation {
    /// Follows the belief along the attempt, and along the reference attempt if that could ask for less.
    fn follow(&mut self, attempt: &Attempt, times: usize) {
        let (job, course) = (&self.job, &self.course);
        let hypotheses = &Hypotheses::of(&job.car).with_cars(times);
        let world = play::truth(job, attempt.header.seed);
        // One car beside the many.
        let (shown, followed) = rayon::join(
            || fair::shown_in(job, course, &world),
            || follow(job, hypotheses, course, course.deeds.len(), |_| false),
        );
        let fair = fair::along(job, course, course, &shown, &followed);
        let reached = fair.mean_before(course.lock());
        // Who has reached τ has reached all that is asked, whatever could be reached.
        if reached < score::TAU {
            let of = |other: &Course, planned| reachable(job, hypotheses, course, &world, other, planned);
            let by_plan = job.planned().map(|tests| of(&planned_course(job, &world, &tests), true));
            self.reference = by_plan;
            let enough = by_plan.is_some_and(|reached| score::TAU <= reached.p_true);
            if let Some(text) = job.reference.as_ref().filter(|_| !enough) {
                match reference_course(attempt, job, text) {
                    Ok(other) => {
                        let by_script = of(&other, false);
                        if by_plan.is_none_or(|by_plan| by_plan.p_true < by_script.p_true) {
                            self.reference = Some(by_script);
                        }
                    }
                    Err(error) => self.reference_stops = Some(error),
                }
            }
        }
        self.followed = Some((followed, fair));
        self.par = economy::par(job);
    }

    /// The job that was attempted.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// How probable the notes before the finding made what is true, on average over drawings of the instruments' errors.
    /// `None` when the car was not handed back.
    #[must_use]
    pub fn p_true_at_finding(&self) -> Option<f64> {
        self.followed.as_ref().map(|(_, fair)| fair.mean_before(self.course.lock()))
    }

    /// The mark sheet in a language. Numbers and what is decided are the same in all.
    #[must_use]
    pub fn sheet(&self, locale: &Locale, naming: Naming) -> MarkSheet {
        let s = &Speech::new(locale, &self.job, naming);
        let mut sheet = frame(self, s);
        let Some((followed, fair)) = &self.followed else {
            sheet.notices.insert(0, s.say("told-not-finished"));
            return sheet;
        };
        if let Some(error) = &self.reference_stops {
            let goal = locale.number(100.0 * score::TAU, 0);
            let values = [("error", error.told(s).into()), ("goal", goal.into())];
            sheet.notices.push(s.say_with("told-reference-stops", &values));
        }
        if self.job.plan == ReferencePlan::OutOfDate {
            sheet.notices.push(s.say("told-plan-out-of-date"));
        }
        if 0 < followed.set_aside {
            let values = [("n", followed.set_aside.into()), ("all", followed.cars.into())];
            sheet.notices.push(s.say_with("told-set-aside", &values));
        }
        let computed = Computed {
            job: &self.job,
            course: &self.course,
            hints: &self.attempt.hints,
            followed,
            fair,
            reference: self.reference,
            par: self.par,
        };
        sheet.marks = Some(parts::marks(&computed, s));
        sheet.with_overrides(&self.attempt.overrides)
    }
}

/// How far the reference plan, or the reference attempt, gets on the same car.
fn reachable(
    job: &Job,
    hypotheses: &Hypotheses,
    course: &Course,
    world: &World,
    reference: &Course,
    planned: bool,
) -> Reached {
    let enough = |belief: &Belief| score::TAU <= truth::p_true(hypotheses, course, belief);
    let (shown, followed) = rayon::join(
        || fair::shown_in(job, reference, world),
        || follow(job, hypotheses, reference, reference.lock(), enough),
    );
    let fair = fair::along(job, course, reference, &shown, &followed);
    Reached { p_true: fair.best(), notes: followed.links.len(), planned }
}

/// Takes down the course of an attempt while it is done again and compared.
struct Scribe<'a> {
    job: &'a Job,
    taking: Taking,
    index: usize,
}

impl play::Watch for Scribe<'_> {
    fn before(&mut self, opened: &Opened) {
        self.taking.before(opened);
    }

    fn after(&mut self, recorded: &Step, outcome: &Outcome, opened: &Opened) {
        self.taking.after(self.index, &recorded.action, self.job, outcome, opened);
        self.index += 1;
    }
}

/// The course of a recorded attempt, done again bit for bit; or that of its file, where another version made it and it comes
/// out otherwise today.
fn taken(attempt: &Attempt, job: &Job) -> Result<(Course, Option<Recording>), SessionError> {
    let scribe = |opened: &Opened| Scribe { job, taking: Taking::new(opened), index: 0 };
    let (course, recording) = match play::replay_watched(attempt, job, scribe) {
        Ok((opened, scribe)) => (scribe.taking.end(&opened, deeds(attempt)), None),
        Err(SessionError::Differs(difference)) if attempt.may_differ(difference.n) => {
            let (course, recording) = recorded::course(attempt, job, difference.n)?;
            (course, Some(recording))
        }
        Err(error) => return Err(error),
    };
    Ok((course, recording))
}

fn deeds(attempt: &Attempt) -> Vec<Deed> {
    let deed = |step: &Step| Deed {
        action: step.action.clone(),
        start: step.start,
        end: step.end,
        refused: step.refused.is_some(),
    };
    attempt.steps.iter().map(deed).collect()
}

/// Does the tests of the reference plan in the world of an attempt.
fn planned_course(job: &Job, world: &World, tests: &[&Test]) -> Course {
    let mut work = Rehearsal::of(Opened::of(job.setup(), world.clone()));
    work.all(tests);
    Course::play(job, world, trials::deeds(work))
}

/// Plays the job's reference script in the world of `attempt`. A certainty that the school fixes is none of the script's
/// business: it says how sure its author was, and only its readings are asked for.
fn reference_course(attempt: &Attempt, job: &Job, text: &str) -> Result<Course, ScriptError> {
    let begin = Begin::rehearsal(attempt.header.seed);
    let free = Job { certainty: None, ..job.clone() };
    let mut session = Session::rehearse(Arc::new(free), &begin);
    script::play(&mut session, text, |_, _, _, _| {})?;
    let deeds = deeds(&session.into_attempt());
    Ok(Course::play(job, &play::truth(job, attempt.header.seed), deeds))
}

/// What stands on every sheet, finished or not.
fn frame(e: &Evaluation, s: &Speech<'_>) -> MarkSheet {
    let (job, course, labels) = (&e.job, &e.course, &e.attempt);
    let mut notices = vec![s.say("told-sheet-defer")];
    if let Some(recording) = &e.recording {
        notices.extend(recorded::notices(recording, s));
    } else if labels.engine != ENGINE {
        let values = [("made", labels.engine.as_str().into()), ("now", ENGINE.into())];
        notices.push(s.say_with("told-other-version", &values));
    }
    MarkSheet {
        scheme: score::SCHEME.to_owned(),
        engine: ENGINE.to_owned(),
        job: job.name(),
        title: s.title(),
        car: s.locale.say_or(&format!("{}-name", job.car.id), &job.car.name),
        job_digest: labels.job_digest.clone(),
        seat: labels.seat.clone(),
        seed: labels.seed.clone(),
        scripted: labels.when.is_played(),
        when: labels.when.clone(),
        attended_min: course.attended_min,
        unattended_min: course.unattended_min,
        time_limit_min: job.time_limit_min,
        marks: None,
        breaches: breaches(course, s),
        record: record(job, course, s),
        not_noted: not_noted(course, s),
        notices,
        recording: e.recording.clone(),
        overrides: Vec::new(),
        holds: None,
    }
}

fn breaches(course: &Course, s: &Speech<'_>) -> Vec<BreachLine> {
    let line = |(deed, breach): &(usize, Breached)| BreachLine {
        at_min: course.at_min(*deed),
        rule: breach.rule().to_owned(),
        gravity: breach.gravity(),
        text: match breach {
            Breached::Typed(hazard) => s.tell(hazard),
            Breached::Told(told) => told.text.clone(),
        },
    };
    course.breaches.iter().map(line).collect()
}

pub(crate) fn count_breaches(course: &Course) -> score::Breaches {
    let of =
        |gravity| course.breaches.iter().filter(|(_, breach)| breach.gravity() == gravity).count() as u32;
    score::Breaches { critical: of(Gravity::Critical), major: of(Gravity::Major), minor: of(Gravity::Minor) }
}

/// Every line of the car's record, with what is missing.
pub(crate) fn record(job: &Job, course: &Course, s: &Speech<'_>) -> Vec<RecordLine> {
    job.car
        .record
        .iter()
        .map(|item| {
            let release = item.kind.is_release();
            let meant = |note: &&Note| note.record.as_ref().is_some_and(|entry| entry.item == item.id);
            let after = |note: &Note| {
                course.last_change.is_none_or(|change| change < course.looked[note.looked].deed)
            };
            // What stands in the line is what was written last.
            let last = course.notes.iter().rev().find(meant);
            let entry = last.and_then(|meant| {
                // A correction need not name the line again.
                let same = course.notes.iter().rev().find(|note| note.looked == meant.looked);
                Some((same.unwrap_or(meant), meant.record.as_ref()?))
            });
            let filled = entry.is_some_and(|(note, entry)| note.fills() && entry.condition_met);
            let within = entry.is_some_and(|(note, entry)| after(note) && entry.within_limit != Some(false));
            let passed = release.then_some(filled && within);
            let why = match entry {
                None => s.word("not-noted"),
                Some((note, _)) if note.worth == Worth::Guessed => s.word("guessed"),
                Some((note, _)) if !note.fills() && last.is_some_and(|meant| meant.right) => {
                    s.word("overwritten")
                }
                Some((note, _)) if !note.fills() => s.word("misread"),
                Some((_, entry)) if !filled => match &entry.unmet {
                    Some(unmet) => s.tell(unmet),
                    None => s.word("not-the-reading-or-not-the-condition-the-line-asks-for"),
                },
                Some((note, _)) if release && !after(note) => {
                    s.word("done-before-the-last-joint-was-touched")
                }
                Some(_) if passed == Some(false) => s.word("outside-its-limit"),
                Some(_) => String::new(),
            };
            let text = s.record_line(&item.id);
            RecordLine { item: item.id.clone(), text, release, filled, passed, why }
        })
        .collect()
}

/// What was read or sensed but never noted, each once, without values.
fn not_noted(course: &Course, s: &Speech<'_>) -> Vec<String> {
    let mut list: Vec<String> = Vec::new();
    for (index, looked) in course.looked.iter().enumerate() {
        let noted = course.notes.iter().any(|note| {
            note.looked == index || course.looked[note.looked].reading.what == looked.reading.what
        });
        let words = s.observed(&looked.reading.what);
        if !noted && !list.contains(&words) {
            list.push(words);
        }
    }
    list
}
