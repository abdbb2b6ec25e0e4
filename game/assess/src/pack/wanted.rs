//! What should stand where a file has an empty text or list.

use crate::locale::sentence::Sentence;
use crate::sentence;

/// What is wanted of a text or list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Name of a car.
    CarName,
    /// Name of a part.
    PartName,
    /// Name of a part on the diagram.
    PartLabel,
    /// Name of a cover.
    CoverName,
    /// Name of a repair unit.
    UnitName,
    /// Name of a fault.
    FaultName,
    /// Name of a spare.
    SpareName,
    /// Name of an instrument.
    InstrumentName,
    /// What an instrument is for.
    InstrumentHelp,
    /// Parts of a car.
    Parts,
    /// Parts of a repair unit.
    UnitParts,
    /// Cautions of a data sheet.
    Cautions,
    /// One of them.
    Caution,
    /// A line of the data sheet.
    Limit,
    /// A line of the record.
    Record,
    /// Title of a pack or job.
    Title,
    /// Author of a pack.
    Author,
    /// Licence of a pack's texts.
    Licence,
    /// Language of a pack's texts.
    Language,
    /// Jobs of a pack.
    Jobs,
    /// Framework of a competence.
    Framework,
    /// Its edition.
    Edition,
    /// Code within it.
    Code,
    /// The customer's words.
    Complaint,
    /// Cautions of a job.
    Hazards,
    /// What is told after the hand-back.
    Debrief,
    /// The job whose car is measured.
    Job,
    /// A line as at the prompt.
    Line,
    /// Tests of a car.
    Tests,
    /// Name of a test.
    TestName,
}

impl Wanted {
    /// In words.
    #[must_use]
    pub fn sentence(self) -> Sentence {
        match self {
            Self::CarName => sentence!("data-want-car-name", "write the car's name in words"),
            Self::PartName => sentence!("data-want-part-name", "write the part's name in words"),
            Self::PartLabel => sentence!("data-want-part-label", "write the part's name in a word or two"),
            Self::CoverName => sentence!("data-want-cover-name", "write the cover's name in words"),
            Self::UnitName => sentence!("data-want-unit-name", "write the unit's name in words"),
            Self::FaultName => sentence!("data-want-fault-name", "write the fault's name in words"),
            Self::SpareName => sentence!("data-want-spare-name", "write the spare's name in words"),
            Self::InstrumentName => {
                sentence!("data-want-instrument-name", "write the instrument's name in words")
            }
            Self::InstrumentHelp => sentence!(
                "data-want-instrument-help",
                "say in a sentence what it is for and what it cannot do"
            ),
            Self::Parts => sentence!("data-want-parts", "a car has parts"),
            Self::UnitParts => sentence!("data-want-unit-parts", "a repair unit has at least one part"),
            Self::Cautions => sentence!("data-want-cautions", "a data sheet has cautions"),
            Self::Caution => sentence!("data-want-caution", "write the caution as a sentence"),
            Self::Limit => sentence!("data-want-limit", "say what is measured and how"),
            Self::Record => {
                sentence!("data-want-record", "say what is recorded and under which condition")
            }
            Self::Title => sentence!("data-want-title", "write a title"),
            Self::Author => sentence!("data-want-author", "say who wrote it"),
            Self::Licence => sentence!("data-want-licence", "state the licence of the texts"),
            Self::Language => sentence!("data-want-language", "state the language as a tag: en"),
            Self::Jobs => sentence!("data-want-jobs", "a pack has at least one job"),
            Self::Framework => sentence!("data-want-framework", "name the framework"),
            Self::Edition => sentence!("data-want-edition", "state its edition"),
            Self::Code => sentence!("data-want-code", "state the code within it"),
            Self::Complaint => sentence!("data-want-complaint", "write what the customer said"),
            Self::Hazards => sentence!("data-want-hazards", "write the cautions of this job"),
            Self::Debrief => sentence!("data-want-debrief", "write what is told after the hand-back"),
            Self::Job => sentence!("data-want-job", "write the job as pack/job"),
            Self::Tests => sentence!("data-want-tests", "a file of tests has one at least"),
            Self::TestName => sentence!("data-want-test-name", "write the test's name in words"),
            Self::Line => {
                sentence!("data-want-line", "write a line of plain words, as at the prompt")
            }
        }
    }
}
