//! Reading the lines of an attempt, each checked as it is taken in.

use std::path::Path;

use super::chain::{CHAIN_KEY, link};
use super::error::AttemptError;
use super::hint_line::HintLine;
use super::mark_line::MarkLine;
use super::override_line::OverrideLine;
use super::record::{Attempt, Header, LONGEST_SEAT, Repair, SCHEMA_1, Sitting, Step};
use super::{json_words, limits};
use crate::locale::sentence::Sentence;
use crate::sentence;

/// Longest line that is read, bytes: a night has a digest for each of its minutes.
const LONGEST_LINE: usize = 256 << 10;

/// The line of the mark.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct MarkBody {
    pub(super) mark: MarkLine,
}

/// The line of an override.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct OverrideBody {
    #[serde(rename = "override")]
    pub(super) line: OverrideLine,
}

/// The line of a sitting.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SittingBody {
    pub(super) sitting: Sitting,
}

/// The line of a repair.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RepairBody {
    pub(super) repair: Repair,
}

/// The line of a hint.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct HintBody {
    pub(super) hint: HintLine,
}

/// How the lines begin that are no action's; a line of an action begins with its number.
const MARK_KEY: &str = "{\"mark\":";
const OVERRIDE_KEY: &str = "{\"override\":";
const SITTING_KEY: &str = "{\"sitting\":";
const REPAIR_KEY: &str = "{\"repair\":";
const HINT_KEY: &str = "{\"hint\":";

/// What the whole lines of a file say, as far as they go.
pub(super) struct Parsed {
    pub(super) attempt: Attempt,
    pub(super) chain: blake3::Hash,
    pub(super) good_len: u64,
    pub(super) torn: bool,
}

/// Lines that have been taken in.
#[derive(Default)]
pub(super) struct Lines {
    pub(super) header: Option<Header>,
    pub(super) steps: Vec<Step>,
    pub(super) sittings: Vec<Sitting>,
    pub(super) repairs: Vec<Repair>,
    pub(super) hints: Vec<HintLine>,
    pub(super) mark: Option<MarkLine>,
    pub(super) overrides: Vec<OverrideLine>,
    pub(super) chain: Option<blake3::Hash>,
    tally: limits::Tally,
    /// Bytes of them.
    pub(super) len: usize,
}

/// Why a line was not taken in.
pub(super) enum Fault {
    What(Sentence),
    Range(limits::Beyond),
}

impl From<Sentence> for Fault {
    fn from(what: Sentence) -> Self {
        Self::What(what)
    }
}

impl From<limits::Beyond> for Fault {
    fn from(beyond: limits::Beyond) -> Self {
        Self::Range(beyond)
    }
}

impl Fault {
    pub(super) fn at(self, path: &Path, line: usize) -> AttemptError {
        let path = path.to_owned();
        match self {
            Self::What(what) => AttemptError::Damaged { path, line, what },
            Self::Range(beyond) => AttemptError::OutOfRange { path, line, beyond },
        }
    }
}

fn json<'a, T: serde::Deserialize<'a>>(body: &'a str) -> Result<T, Fault> {
    serde_json::from_str(body).map_err(|e| Fault::What(json_words::said(&e)))
}

impl Lines {
    /// An action stands after a sitting, with the labels of one, and before the car is handed back.
    fn has_place_for(&self, header: &Header, step: &Step) -> Result<(), Fault> {
        let sat = !self.sittings.is_empty();
        if !sat && header.schema != SCHEMA_1 {
            return Err(sentence!("line-no-sitting", "an action before the first sitting").into());
        }
        if (step.by.is_some(), step.at_unix_ms.is_some()) != (sat, sat) {
            return Err(sentence!(
                "line-labels",
                "an action says its time and its source from the first sitting on, not before"
            )
            .into());
        }
        if self.steps.last().is_some_and(Step::hands_back) {
            return Err(sentence!("line-too-late", "an action after the car was handed back").into());
        }
        Ok(())
    }

    /// A hint is for whoever still works at the car.
    fn has_place_for_hint(&self) -> Result<(), Fault> {
        if self.sittings.is_empty() || self.steps.last().is_some_and(Step::hands_back) {
            return Err(sentence!("line-late-hint", "a hint where nobody was at work").into());
        }
        Ok(())
    }

    /// An override stands behind the mark, and says who, why, and what holds.
    fn has_place_for_override(&self, line: &OverrideLine) -> Result<(), Fault> {
        if self.mark.is_none() {
            return Err(sentence!("line-early-override", "an override before the mark").into());
        }
        if !line.is_whole() {
            return Err(sentence!(
                "line-empty-override",
                "an override without a reason, a name, or a total or verdict"
            )
            .into());
        }
        Ok(())
    }

    /// Takes in the next line, with its end. A line that does not fit changes nothing.
    fn take(&mut self, raw: &[u8]) -> Result<(), Fault> {
        if LONGEST_LINE < raw.len() {
            let (bytes, most) = (raw.len(), LONGEST_LINE);
            return Err(sentence!(
                "line-too-long",
                "{bytes} bytes in one line (at most {most})",
                bytes = bytes,
                most = most
            )
            .into());
        }
        let text =
            std::str::from_utf8(&raw[..raw.len() - 1]).map_err(|_| sentence!("line-not-text", "not text"))?;
        let (body, said) = text
            .rsplit_once(CHAIN_KEY)
            .and_then(|(head, tail)| Some((format!("{head}}}"), tail.strip_suffix("\"}")?)))
            .ok_or_else(|| sentence!("line-no-chain", "no chain at the end of the line"))?;
        let chained = |chain: &blake3::Hash| {
            let next = link(chain, &body);
            if next.to_hex().as_str() == said {
                Ok(next)
            } else {
                Err(Fault::What(sentence!(
                    "line-changed",
                    "changed after it was written (its chain does not fit)"
                )))
            }
        };
        if let Some(what) = json_words::control_in(&body) {
            return Err(what.into());
        }
        // What the line says comes first: its error tells more than "the chain is broken".
        match (&self.header, &self.chain) {
            (Some(header), Some(chain)) => {
                let stands_last = !body.starts_with(OVERRIDE_KEY) && !body.starts_with(REPAIR_KEY);
                if self.mark.is_some() && stands_last {
                    return Err(sentence!(
                        "line-after-mark",
                        "a line after the mark; only overrides and repairs stand there"
                    )
                    .into());
                }
                let done = self.steps.len() as u32;
                if body.starts_with(MARK_KEY) {
                    let MarkBody { mark } = json(&body)?;
                    if !self.steps.iter().any(Step::hands_back) {
                        return Err(
                            sentence!("line-early-mark", "a mark, but the car was not handed back").into()
                        );
                    }
                    limits::mark(&mark)?;
                    self.chain = Some(chained(chain)?);
                    self.mark = Some(mark);
                } else if body.starts_with(OVERRIDE_KEY) {
                    let OverrideBody { line } = json(&body)?;
                    self.has_place_for_override(&line)?;
                    limits::override_line(&line, self.overrides.len())?;
                    self.chain = Some(chained(chain)?);
                    self.overrides.push(line);
                } else if body.starts_with(SITTING_KEY) {
                    let SittingBody { sitting } = json(&body)?;
                    limits::sitting(&sitting, done, self.sittings.len())?;
                    self.chain = Some(chained(chain)?);
                    self.sittings.push(sitting);
                } else if body.starts_with(REPAIR_KEY) {
                    let RepairBody { repair } = json(&body)?;
                    limits::repair(&repair, done, self.repairs.len())?;
                    self.chain = Some(chained(chain)?);
                    self.repairs.push(repair);
                } else if body.starts_with(HINT_KEY) {
                    let HintBody { hint } = json(&body)?;
                    self.has_place_for_hint()?;
                    limits::hint(&hint, done, self.hints.len())?;
                    self.chain = Some(chained(chain)?);
                    self.hints.push(hint);
                } else {
                    let step: Step = json(&body)?;
                    self.has_place_for(header, &step)?;
                    let mut tally = self.tally;
                    tally.take(&step)?;
                    self.chain = Some(chained(chain)?);
                    self.tally = tally;
                    self.steps.push(step);
                }
            }
            _ => {
                let header: Header = json(&body)?;
                limits::header(&header)?;
                if header.seat.as_ref().is_some_and(|seat| LONGEST_SEAT < seat.chars().count()) {
                    return Err(sentence!(
                        "line-long-seat",
                        "a seat of more than {most} characters",
                        most = LONGEST_SEAT
                    )
                    .into());
                }
                self.chain = Some(chained(&blake3::hash(header.schema.as_bytes()))?);
                self.header = Some(header);
            }
        }
        self.len += raw.len();
        Ok(())
    }
}

/// Reads lines as far as they are whole; the error is that of the first that is not, with its number.
pub(super) fn read_lines(bytes: &[u8]) -> (Lines, Option<(usize, Fault)>) {
    let whole = bytes.iter().rposition(|b| *b == b'\n').map_or(0, |i| i + 1);
    let mut lines = Lines::default();
    for (i, raw) in bytes[..whole].split_inclusive(|b| *b == b'\n').enumerate() {
        if let Err(fault) = lines.take(raw) {
            return (lines, Some((i + 1, fault)));
        }
    }
    (lines, None)
}

pub(super) fn parse(bytes: &[u8], path: &Path) -> Result<Parsed, AttemptError> {
    let (lines, fault) = read_lines(bytes);
    if let Some((line, fault)) = fault {
        return Err(fault.at(path, line));
    }
    let Lines {
        header: Some(header),
        steps,
        sittings,
        repairs,
        hints,
        mark,
        overrides,
        chain: Some(chain),
        len,
        ..
    } = lines
    else {
        let what = sentence!("line-no-header", "no whole header; nothing was done in this attempt");
        return Err(Fault::What(what).at(path, 1));
    };
    let attempt = Attempt { header, steps, sittings, repairs, hints, mark, overrides };
    Ok(Parsed { attempt, chain, good_len: len as u64, torn: len < bytes.len() })
}
