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

use crate::attempt::{Attempt, AttemptError, ENGINE, Header, SCHEMA, Seed, StateDigest, Step, Writer};
use crate::job::Job;
use crate::marked::{self, Kept, MarkLine};
use crate::marks::sheet::MarkSheet;
use crate::words;

/// Stream of the random numbers of an attempt's truth; another use of the same seed takes another.
const TRUTH_STREAM: u128 = 0x7069_6e68_6f6c_6501;

/// How an attempt is begun.
#[derive(Clone, Debug)]
pub struct Begin {
    /// What tolerances and instrument errors are drawn from.
    pub seed: Seed,
    /// Played from a script.
    pub scripted: bool,
    /// Seat in a class.
    pub seat: Option<String>,
}

/// What went wrong with a session.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SessionError {
    /// The attempt's file.
    #[error(transparent)]
    File(#[from] AttemptError),
    /// The attempt belongs to another job.
    #[error("the attempt is of the job {attempt:?}, not of {job:?}")]
    OtherJob {
        /// Job of the attempt.
        attempt: String,
        /// Job given.
        job: String,
    },
    /// The files behind the job are not those of the attempt.
    #[error(
        "the files of the job {job:?} have changed since the attempt was made (digest {found}, the attempt \
         has {expected}); use the pack it was made with"
    )]
    JobChanged {
        /// The job.
        job: String,
        /// Digest now.
        found: String,
        /// Digest in the attempt.
        expected: String,
    },
    /// Replaying gave something else than what is recorded.
    #[error("{0}")]
    Differs(#[from] Difference),
    /// The attempt is over.
    #[error("the car has been handed back; this attempt is over. Begin a new one with --new")]
    Over,
}

/// First place where a replay differs from the record.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("action {n} ({action}): {what} is {found}, recorded is {recorded}{hint}")]
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
    let created_unix_s =
        std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).map_or(0, |d| d.as_secs());
    Header {
        schema: SCHEMA.to_owned(),
        engine: ENGINE.to_owned(),
        pack: job.pack_id.clone(),
        job: job.name(),
        job_digest: hex::encode(job.digest),
        seat: begin.seat.clone(),
        seed: begin.seed,
        scripted: begin.scripted,
        created_unix_s,
    }
}

/// Whether an attempt may be carried on or replayed with `job`.
fn check_job(header: &Header, job: &Job) -> Result<(), SessionError> {
    if header.job != job.name() {
        return Err(SessionError::OtherJob { attempt: header.job.clone(), job: job.name() });
    }
    let found = hex::encode(job.digest);
    if header.job_digest != found {
        return Err(SessionError::JobChanged { job: job.name(), found, expected: header.job_digest.clone() });
    }
    Ok(())
}

/// Does an action and writes down what came of it.
fn step(workshop: &mut Workshop, n: u32, action: &Action) -> (Step, Outcome) {
    let outcome = workshop.act(action);
    let minutes = workshop.take_minute_digests().into_iter().map(|(t, d)| (t, StateDigest(d))).collect();
    let step = Step {
        n,
        action: action.clone(),
        start: outcome.start,
        end: outcome.end,
        refused: outcome.refused.as_ref().map(ToString::to_string),
        reading: outcome.reading.clone(),
        read_right: outcome.read_right,
        record: outcome.record.clone(),
        breaches: outcome.breaches.clone(),
        minutes,
        digest: StateDigest(workshop.digest()),
    };
    (step, outcome)
}

/// Does a recorded action again and compares.
fn redo(workshop: &mut Workshop, recorded: &Step, engine: &str) -> Result<Outcome, Difference> {
    if workshop.tick() < recorded.start {
        workshop.run_free_cut(recorded.start);
    }
    let (mut now, outcome) = step(workshop, recorded.n, &recorded.action);
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
    if now.refused != recorded.refused {
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
    check_job(&attempt.header, job)?;
    let mut workshop = workshop(job, attempt.header.seed);
    for recorded in &attempt.steps {
        redo(&mut workshop, recorded, &attempt.header.engine)?;
    }
    Ok(workshop)
}

/// Someone at work on a car, with the attempt behind it.
#[derive(Debug)]
pub struct Session {
    job: Arc<Job>,
    workshop: Workshop,
    /// `None`: a rehearsal that leaves no file.
    writer: Option<Writer>,
    attempt: Attempt,
}

impl Session {
    /// Begins an attempt in a new file.
    ///
    /// # Errors
    /// When the file exists or cannot be made.
    pub fn start(job: Arc<Job>, begin: &Begin, path: &Path) -> Result<Self, SessionError> {
        let header = header(&job, begin);
        let writer = Writer::create(path, &header)?;
        let workshop = workshop(&job, begin.seed);
        Ok(Self {
            job,
            workshop,
            writer: Some(writer),
            attempt: Attempt { header, steps: Vec::new(), mark: None },
        })
    }

    /// Begins an attempt without a file: for the marker's reference attempts and for tests.
    #[must_use]
    pub fn rehearse(job: Arc<Job>, begin: &Begin) -> Self {
        let header = Header { created_unix_s: 0, ..header(&job, begin) };
        let workshop = workshop(&job, begin.seed);
        Self { job, workshop, writer: None, attempt: Attempt { header, steps: Vec::new(), mark: None } }
    }

    /// Carries an attempt on: locks and reads the file, does everything in it again, compares. The
    /// second value tells whether a torn last line was dropped. `job` gives the job of a name, as
    /// `Library::job` does.
    ///
    /// # Errors
    /// When the file is in use, damaged, of another job, or replays to something else.
    pub fn resume<E: From<SessionError>>(
        path: &Path,
        job: impl FnOnce(&str) -> Result<Arc<Job>, E>,
    ) -> Result<(Self, bool), E> {
        let (writer, attempt, torn) = Writer::open(path).map_err(SessionError::from)?;
        let job = job(&attempt.header.job)?;
        let workshop = replay(&attempt, &job)?;
        Ok((Self { job, workshop, writer: Some(writer), attempt }, torn))
    }

    /// Does an action; it is on the disk when this returns.
    ///
    /// # Errors
    /// When it cannot be written, or the car has been handed back. A refusal is no error: see
    /// [`Outcome::refused`].
    pub fn act(&mut self, action: &Action) -> Result<Outcome, SessionError> {
        if self.attempt.is_finished() {
            return Err(SessionError::Over);
        }
        let n = self.attempt.steps.len() as u32 + 1;
        let (step, outcome) = step(&mut self.workshop, n, action);
        if let Some(writer) = &mut self.writer {
            writer.append(&step)?;
        }
        self.attempt.steps.push(step);
        Ok(outcome)
    }

    /// Writes the mark into the attempt's file, or compares it with the one that stands there
    /// ([`crate::marked`]). `None` for a rehearsal, and for a sheet without marks.
    ///
    /// # Errors
    /// When it cannot be written. The mark is then merely not kept; the attempt is as whole as before.
    pub fn keep_mark(&mut self, sheet: &MarkSheet) -> Result<Option<Kept>, AttemptError> {
        let (Some(writer), Some(line)) = (&mut self.writer, MarkLine::of(sheet)) else { return Ok(None) };
        let kept = marked::keep(writer, self.attempt.mark.as_ref(), &line)?;
        if kept == Kept::Written {
            self.attempt.mark = Some(line);
        }
        Ok(Some(kept))
    }

    /// Lets time run to `to` without an action; the next action records it.
    pub fn run_free(&mut self, to: Tick) {
        self.workshop.run_free(to);
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
