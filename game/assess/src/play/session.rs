//! A workshop with its attempt: every action goes through the workshop and onto the disk.
//!
//! `act` returns only when the line is safe. Resuming and replaying do the recorded actions again and
//! compare tick, shown value and state digest, bit for bit.

use std::path::Path;
use std::sync::Arc;

use rand_core::Rng as _;
use sim_core::action::{Action, Written};
use sim_core::observe::Reading;
use sim_core::units::Tick;
use sim_core::workshop::{Outcome, View, Workshop};
use sim_core::world::World;

use crate::attempt::clock::{By, Clock, Opening};
use crate::attempt::limits::{self, Beyond, Unknown};
use crate::attempt::mark_line::MarkLine;
use crate::attempt::marked::{self, Kept};
use crate::attempt::{
    Attempt, AttemptError, Breached, ENGINE, Header, Refused, SCHEMA, Seed, SeedFrom, Sitting, StateDigest,
    Step, Writer,
};
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::marks::sheet::MarkSheet;
use crate::pack::job::{AfterHandBack, Job};
use crate::{sentence, words};

/// Stream of the random numbers of an attempt's truth; another use of the same seed takes another.
const TRUTH_STREAM: u128 = 0x7069_6e68_6f6c_6501;

/// How an attempt is begun.
#[derive(Clone, Debug)]
pub struct Begin {
    /// What tolerances and instrument errors are drawn from.
    pub seed: Seed,
    /// Where it came from.
    pub seed_from: SeedFrom,
    /// Seat in a class.
    pub seat: Option<String>,
    /// Who begins it, with which clock.
    pub opening: Opening,
}

impl Begin {
    /// Played by a program with a given seed, at no time of day: for the marker's reference attempts, pictures and
    /// tests.
    #[must_use]
    pub fn rehearsal(seed: Seed) -> Self {
        let opening = Opening { by: By::Script, clock: Clock::standing(0) };
        Self { seed, seed_from: SeedFrom::Given, seat: None, opening }
    }
}

/// What went wrong with a session.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SessionError {
    /// The attempt's file.
    #[error(transparent)]
    File(#[from] AttemptError),
    /// The attempt belongs to another job.
    #[error("the attempt is of the job {}, not of {}", quote::quoted(attempt), quote::quoted(job))]
    OtherJob {
        /// Job of the attempt.
        attempt: String,
        /// Job given.
        job: String,
    },
    /// The files behind the job are not those of the attempt.
    #[error(
        "the files of the job {} have changed since the attempt was made (digest {found:.12}…, the attempt \
         has {expected:.12}…); use the pack it was made with",
        quote::quoted(job)
    )]
    JobChanged {
        /// The job.
        job: String,
        /// Digest now.
        found: String,
        /// Digest in the attempt.
        expected: String,
    },
    /// It names things that the job does not have.
    #[error("{0}")]
    Unknown(#[from] Unknown),
    /// A text or number that no attempt can hold, or the attempt has come to the end of what one can hold. Nothing was
    /// done.
    #[error("not done: {0}")]
    Beyond(#[from] Beyond),
    /// Replaying gave something else than what is recorded.
    #[error("{0}")]
    Differs(#[from] Difference),
    /// The model could not go on: nothing is computed from there on, and nothing was written down.
    #[error("{0}")]
    Fault(#[from] Uncomputed),
    /// The attempt is over.
    #[error("the car has been handed back; this attempt is over. Begin a new one with --new")]
    Over,
}

impl SessionError {
    /// What is wrong, for every language, where it is more than the number of an action and what was found there.
    #[must_use]
    pub fn sentence(&self) -> Option<Sentence> {
        match self {
            Self::File(error) => Some(error.sentence()),
            Self::OtherJob { attempt, job } => Some(sentence!(
                "session-other-job",
                "the attempt is of the job {attempt}, not of {job}",
                attempt = quote::quoted(attempt),
                job = quote::quoted(job)
            )),
            Self::Over => Some(sentence!(
                "session-over",
                "the car has been handed back; this attempt is over. Begin a new one with --new"
            )),
            _ => None,
        }
    }
}

/// Where the model could not go on.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "the model stops at second {:.2} of the work: the numbers of {} are beyond what can be computed. Every action before \
     this one is kept; the author of the pack must mend the car",
    tick.s(),
    part.as_deref().unwrap_or("this car")
)]
pub struct Uncomputed {
    /// Tick of the attempt; 0 for the way to the workshop.
    pub tick: Tick,
    /// Short name of the part to look at first.
    pub part: Option<String>,
}

/// An error when the model of `workshop` could not go on.
///
/// # Errors
/// Where it stopped, and which part to look at first.
pub fn computed(workshop: &Workshop) -> Result<(), Uncomputed> {
    let Some(fault) = workshop.fault() else { return Ok(()) };
    let parts = &workshop.circuit().assembly().parts;
    let part = fault.part.and_then(|part| parts.get(usize::from(part))).map(|part| part.id.clone());
    Err(Uncomputed { tick: fault.tick, part })
}

/// First place where a replay differs from the record.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("action {n} ({action:.60}): {what} is {found:.60}, recorded is {recorded:.60}{hint}")]
pub struct Difference {
    /// Number of the action.
    pub n: u32,
    /// The action in words.
    pub action: String,
    /// What differs.
    pub what: &'static str,
    /// What came out now.
    pub found: String,
    /// What the file says.
    pub recorded: String,
    /// A likely reason.
    pub hint: String,
}

/// The hidden numbers of an attempt at `job`.
#[must_use]
pub fn truth(job: &Job, seed: Seed) -> World {
    let mut rng = rand_pcg::Pcg64::new(seed.0, TRUTH_STREAM);
    // 53 random bits: every double in [0, 1) that is a multiple of 2⁻⁵³.
    let mut u = || (rng.next_u64() >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0);
    World::draw(&job.car, &job.kit, &job.faults, &mut u)
}

/// The workshop of an attempt at `job`, before the first action.
#[must_use]
pub fn workshop(job: &Job, seed: Seed) -> Workshop {
    Workshop::new(job.setup(truth(job, seed)))
}

fn header(job: &Job, begin: &Begin) -> Header {
    Header {
        schema: SCHEMA.to_owned(),
        engine: ENGINE.to_owned(),
        pack: job.pack_id.clone(),
        job: job.name(),
        job_digest: hex::encode(job.digest),
        seat: begin.seat.clone(),
        seed: begin.seed,
        scripted: None,
        created_unix_s: begin.opening.clock.now_ms() / 1000,
        seed_from: Some(begin.seed_from),
    }
}

fn sitting(opening: &Opening, after: usize) -> Sitting {
    Sitting {
        after: after as u32,
        by: opening.by,
        at_unix_ms: opening.clock.now_ms(),
        engine: ENGINE.to_owned(),
    }
}

/// Whether an attempt may be carried on or replayed with `job`.
fn check_job(header: &Header, job: &Job) -> Result<(), SessionError> {
    if header.job != job.name() {
        return Err(SessionError::OtherJob { attempt: header.job.clone(), job: job.name() });
    }
    if !job.is_of(&header.job_digest) {
        let found = hex::encode(job.digest);
        return Err(SessionError::JobChanged { job: job.name(), found, expected: header.job_digest.clone() });
    }
    Ok(())
}

/// Does an action and writes down what came of it, without the labels of time and source.
fn step(workshop: &mut Workshop, n: u32, action: &Action) -> (Step, Outcome) {
    let outcome = workshop.act(action);
    let minutes = workshop.take_minute_digests().into_iter().map(|(t, d)| (t, StateDigest(d))).collect();
    let step = Step {
        n,
        by: None,
        at_unix_ms: None,
        action: action.clone(),
        start: outcome.start,
        end: outcome.end,
        refused: outcome.refused.clone().map(Refused::Typed),
        reading: outcome.reading.clone(),
        read_right: outcome.read_right,
        record: outcome.record.clone(),
        breaches: outcome.breaches.iter().cloned().map(Breached::Typed).collect(),
        minutes,
        digest: StateDigest(workshop.digest()),
    };
    (step, outcome)
}

/// In a pack that tells nothing after the hand-back, neither the screen nor the journal says what was dangerous about
/// the car as it was handed back: some of that is the answer. The marker finds it out by itself.
fn keep_quiet(job: &Job, step: &mut Step, outcome: &mut Outcome) {
    if job.after_hand_back == AfterHandBack::Nothing && step.hands_back() {
        step.breaches.clear();
        outcome.breaches.clear();
        outcome.said.clear();
    }
}

/// Who looks on while an attempt is done again.
pub trait Watch {
    /// The workshop before an action.
    fn before(&mut self, workshop: &Workshop);

    /// The workshop after it, and what came of it, told in full.
    fn after(&mut self, recorded: &Step, outcome: &Outcome, workshop: &Workshop);
}

/// Nobody looks on.
struct Alone;

impl Watch for Alone {
    fn before(&mut self, _: &Workshop) {}

    fn after(&mut self, _: &Step, _: &Outcome, _: &Workshop) {}
}

/// Does a recorded action again and compares.
fn redo(
    workshop: &mut Workshop,
    job: &Job,
    recorded: &Step,
    engine: &str,
    watch: &mut dyn Watch,
) -> Result<Outcome, Difference> {
    if workshop.tick() < recorded.start {
        workshop.run_free_cut(recorded.start);
    }
    watch.before(workshop);
    let (mut now, mut outcome) = step(workshop, recorded.n, &recorded.action);
    watch.after(recorded, &outcome, workshop);
    keep_quiet(job, &mut now, &mut outcome);
    // Labels are nobody's business here.
    (now.by, now.at_unix_ms) = (recorded.by, recorded.at_unix_ms);
    // Files made before it was written down do not say why a note did not fill its line.
    if let (Some(now), Some(then)) = (&mut now.record, &recorded.record)
        && then.unmet.is_none()
    {
        now.unmet = None;
    }
    let hint = if engine == ENGINE {
        String::new()
    } else {
        format!(" (the attempt was made with version {engine}, this is {ENGINE})")
    };
    let differs = |what, found: String, recorded_text: String| Difference {
        n: recorded.n,
        action: words::say(&recorded.action),
        what,
        found,
        recorded: recorded_text,
        hint: hint.clone(),
    };
    if now.start != recorded.start {
        return Err(differs("its first tick", now.start.0.to_string(), recorded.start.0.to_string()));
    }
    let alike = match (&now.refused, &recorded.refused) {
        (Some(now), Some(recorded)) => now.agrees(recorded),
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    };
    if !alike {
        return Err(differs("its refusal", format!("{:?}", now.refused), format!("{:?}", recorded.refused)));
    }
    if now.end != recorded.end {
        return Err(differs("its last tick", now.end.0.to_string(), recorded.end.0.to_string()));
    }
    if now.reading != recorded.reading {
        return Err(differs("the reading", format!("{:?}", now.reading), format!("{:?}", recorded.reading)));
    }
    for (a, b) in now.minutes.iter().zip(&recorded.minutes) {
        if a != b {
            let text = |m: &(Tick, StateDigest)| format!("{} at tick {}", m.1, m.0.0);
            return Err(differs("the state digest", text(a), text(b)));
        }
    }
    if now.minutes.len() != recorded.minutes.len() {
        let text = |n: usize| format!("{n} minute digests");
        return Err(differs("their number", text(now.minutes.len()), text(recorded.minutes.len())));
    }
    if now.digest != recorded.digest {
        return Err(differs("the state digest", now.digest.to_string(), recorded.digest.to_string()));
    }
    let alike = |(now, recorded): (&Breached, &Breached)| now.agrees(recorded);
    if now.breaches.len() == recorded.breaches.len() && now.breaches.iter().zip(&recorded.breaches).all(alike)
    {
        now.breaches.clone_from(&recorded.breaches);
    }
    now.refused.clone_from(&recorded.refused);
    if now != *recorded {
        return Err(differs("the notes, record or breaches", format!("{now:?}"), format!("{recorded:?}")));
    }
    Ok(outcome)
}

/// Replays a whole attempt in the world it was made in and compares everything that is recorded.
/// Returns the workshop as it stood at the end.
///
/// # Errors
/// When the attempt is of another job, or at the first difference.
pub fn replay(attempt: &Attempt, job: &Job) -> Result<Workshop, SessionError> {
    replay_watched(attempt, job, |_| Alone).map(|(workshop, _)| workshop)
}

/// As [`replay`], with somebody looking on from the moment the car has come in.
///
/// # Errors
/// As [`replay`].
pub fn replay_watched<W: Watch>(
    attempt: &Attempt,
    job: &Job,
    watch: impl FnOnce(&Workshop) -> W,
) -> Result<(Workshop, W), SessionError> {
    check_job(&attempt.header, job)?;
    limits::against(&attempt.steps, job)?;
    let mut workshop = workshop(job, attempt.header.seed);
    computed(&workshop)?;
    let mut watch = watch(&workshop);
    for recorded in &attempt.steps {
        let done = redo(&mut workshop, job, recorded, &attempt.header.engine, &mut watch);
        computed(&workshop)?;
        done?;
    }
    Ok((workshop, watch))
}

/// Ticks in which the clock ran on by itself.
fn free_ticks(steps: &[Step]) -> u64 {
    let ends = std::iter::once(0).chain(steps.iter().map(|step| step.end.0));
    steps.iter().zip(ends).map(|(step, end)| step.start.0 - end).sum()
}

/// Someone at work on a car, with the attempt behind it.
#[derive(Debug)]
pub struct Session {
    job: Arc<Job>,
    workshop: Workshop,
    /// `None`: a rehearsal that leaves no file.
    writer: Option<Writer>,
    attempt: Attempt,
    opening: Opening,
    /// Ticks in which the clock ran on by itself, before the last action.
    free: u64,
}

impl Session {
    /// Begins an attempt in a new file.
    ///
    /// # Errors
    /// When the file exists or cannot be made, or the car cannot be computed as it came in.
    pub fn start(job: Arc<Job>, begin: &Begin, path: &Path) -> Result<Self, SessionError> {
        let mut session = Self::rehearse(job, begin);
        computed(&session.workshop)?;
        session.writer = Some(Writer::create(path, &session.attempt.header, &session.attempt.sittings[0])?);
        Ok(session)
    }

    /// Begins an attempt without a file: for the marker's reference attempts and for tests.
    #[must_use]
    pub fn rehearse(job: Arc<Job>, begin: &Begin) -> Self {
        let workshop = workshop(&job, begin.seed);
        let attempt = Attempt {
            header: header(&job, begin),
            steps: Vec::new(),
            sittings: vec![sitting(&begin.opening, 0)],
            repairs: Vec::new(),
            mark: None,
        };
        Self { job, workshop, writer: None, attempt, opening: begin.opening.clone(), free: 0 }
    }

    /// Carries an attempt on: locks and reads the file, does everything in it again, compares, and writes down that it
    /// was opened. The second value tells whether a torn last line was dropped. `job` gives the job of a name, as
    /// `Library::job` does.
    ///
    /// # Errors
    /// When the file is in use, damaged, of another job, replays to something else, or may not be written.
    pub fn resume<E: From<SessionError>>(
        path: &Path,
        opening: &Opening,
        job: impl FnOnce(&str) -> Result<Arc<Job>, E>,
    ) -> Result<(Self, bool), E> {
        let (mut writer, mut attempt, torn) = Writer::open(path).map_err(SessionError::from)?;
        let job = job(&attempt.header.job)?;
        let workshop = replay(&attempt, &job)?;
        // A finished one is opened to be looked at; nothing can be done in it any more.
        if !attempt.is_finished() {
            let sitting = sitting(opening, attempt.steps.len());
            writer.append_sitting(&sitting).map_err(SessionError::from)?;
            attempt.sittings.push(sitting);
        }
        let free = free_ticks(&attempt.steps);
        Ok((Self { job, workshop, writer: Some(writer), attempt, opening: opening.clone(), free }, torn))
    }

    /// Does an action; it is on the disk when this returns.
    ///
    /// # Errors
    /// When it cannot be written, holds what no attempt can hold, or the car has been handed back. A refusal is no
    /// error: see [`Outcome::refused`].
    pub fn act(&mut self, action: &Action) -> Result<Outcome, SessionError> {
        if self.attempt.is_finished() {
            return Err(SessionError::Over);
        }
        computed(&self.workshop)?;
        limits::action(action)?;
        limits::room_for(action, self.attempt.steps.len(), self.workshop.tick())?;
        let at_unix_ms = self.opening.clock.now_ms();
        let n = self.attempt.steps.len() as u32 + 1;
        let (mut step, mut outcome) = match action {
            // Free text is kept as it can be read again: without controls, and no longer than a page.
            Action::Suspect { text } => {
                let text = quote::tidied(text).chars().take(words::LONGEST_SUSPICION).collect();
                step(&mut self.workshop, n, &Action::Suspect { text })
            }
            action => step(&mut self.workshop, n, action),
        };
        keep_quiet(&self.job, &mut step, &mut outcome);
        computed(&self.workshop)?;
        (step.by, step.at_unix_ms) = (Some(self.opening.by), Some(at_unix_ms));
        if let Some(writer) = &mut self.writer {
            writer.append(&step)?;
        }
        self.free += step.start.0 - self.last_end().0;
        self.attempt.steps.push(step);
        Ok(outcome)
    }

    fn last_end(&self) -> Tick {
        self.attempt.steps.last().map_or(Tick(0), |step| step.end)
    }

    /// Writes the mark into the attempt's file, or compares it with the one that stands there
    /// ([`crate::attempt::marked`]). `None` for a rehearsal, for a sheet without marks, and in a pack that tells nothing.
    ///
    /// # Errors
    /// When it cannot be written. The mark is then merely not kept; the attempt is as whole as before.
    pub fn keep_mark(&mut self, sheet: &MarkSheet) -> Result<Option<Kept>, AttemptError> {
        if self.is_handed_in() {
            return Ok(None);
        }
        let (Some(writer), Some(line)) = (&mut self.writer, MarkLine::of(sheet)) else { return Ok(None) };
        let kept = marked::keep(writer, self.attempt.mark.as_ref(), &line)?;
        if kept == Kept::Written {
            self.attempt.mark = Some(line);
        }
        Ok(Some(kept))
    }

    /// Whether the car was handed back in a pack that tells nothing after it: then there is no mark, no answer, no
    /// what-if, only that it was handed in.
    #[must_use]
    pub fn is_handed_in(&self) -> bool {
        self.attempt.is_finished() && self.job.after_hand_back == AfterHandBack::Nothing
    }

    /// Lets time run to `to` without an action, no further than [`Self::free_until`]; the next action records it.
    pub fn run_free(&mut self, to: Tick) {
        self.workshop.run_free(to.min(self.free_until()));
    }

    /// Whether the model can go on.
    ///
    /// # Errors
    /// Where it could not: the attempt stops there.
    pub fn computed(&self) -> Result<(), Uncomputed> {
        computed(&self.workshop)
    }

    /// Tick at which time stands still until something is done.
    #[must_use]
    pub fn free_until(&self) -> Tick {
        limits::free_until(self.last_end(), self.free)
    }

    /// By which way actions come in.
    #[must_use]
    pub fn by(&self) -> By {
        self.opening.by
    }

    /// What a reading showed, as someone who reads exactly would write it; `None` for a sense.
    #[must_use]
    pub fn written_as_shown(&self, reading: &Reading) -> Option<Written> {
        words::as_shown(reading.shown, &self.workshop.scale(&reading.what))
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> &Arc<Job> {
        &self.job
    }

    /// The workshop, to look at.
    #[must_use]
    pub fn workshop(&self) -> &Workshop {
        &self.workshop
    }

    /// What can be seen.
    #[must_use]
    pub fn view(&self) -> View {
        self.workshop.view()
    }

    /// The attempt so far.
    #[must_use]
    pub fn attempt(&self) -> &Attempt {
        &self.attempt
    }

    /// The attempt, when it is no longer worked on.
    #[must_use]
    pub fn into_attempt(self) -> Attempt {
        self.attempt
    }

    /// The file, unless this is a rehearsal.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.writer.as_ref().map(Writer::path)
    }
}
