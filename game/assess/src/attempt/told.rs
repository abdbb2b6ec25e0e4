//! Refusals and breaches of safety as a file keeps them: today's files their kind, the names and the numbers they
//! speak of; files made before (`pinhole-attempt/1` and `/2`) an English sentence. Both are read; a sentence is shown only
//! where an attempt is marked from its recording, else what it told comes out of the workshop once more.

use sim_core::notice::{Gravity, Hazard, Refusal};

/// Why an action was refused.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(untagged)]
pub enum Refused {
    /// By its kind.
    Typed(Refusal),
    /// By a sentence.
    Told(String),
}

/// A breach of safety.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(untagged)]
pub enum Breached {
    /// By its kind.
    Typed(Hazard),
    /// By a sentence.
    Told(InASentence),
}

/// A breach of safety as files made before keep it.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InASentence {
    /// Short name of the rule.
    pub rule: String,
    /// How grave.
    pub gravity: Gravity,
    /// What happened and what should have been done, in English.
    pub text: String,
}

impl Refused {
    /// Whether both say the same, as far as a sentence can be compared.
    #[must_use]
    pub fn agrees(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Told(_), Self::Typed(_)) | (Self::Typed(_), Self::Told(_)) => true,
            (Self::Typed(a), Self::Typed(b)) => a == b,
            (Self::Told(a), Self::Told(b)) => a == b,
        }
    }

    /// The longest text in it.
    pub(crate) fn longest_text(&self) -> &str {
        match self {
            Self::Told(text) => text,
            Self::Typed(Refusal::Unknown { name, known, .. }) => {
                if name.len() < known.len() {
                    known
                } else {
                    name
                }
            }
            // The names in a reason are those of the action, which is held to its own limits, or of the car.
            Self::Typed(Refusal::Cannot(_) | Refusal::Range { .. }) => "",
        }
    }
}

impl Breached {
    /// Short name of the rule.
    #[must_use]
    pub fn rule(&self) -> &str {
        match self {
            Self::Typed(hazard) => hazard.rule(),
            Self::Told(told) => &told.rule,
        }
    }

    /// How grave.
    #[must_use]
    pub fn gravity(&self) -> Gravity {
        match self {
            Self::Typed(hazard) => hazard.gravity(),
            Self::Told(told) => told.gravity,
        }
    }

    /// Whether both say the same, as far as a sentence can be compared: rule and gravity.
    #[must_use]
    pub fn agrees(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Typed(a), Self::Typed(b)) => a == b,
            (Self::Told(_), _) | (_, Self::Told(_)) => {
                (self.rule(), self.gravity()) == (other.rule(), other.gravity())
            }
        }
    }
}
