//! What a client rates in their own judgement, from 0 to 10.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is rated. 0 is none and 10 the most there could be; of the voice 0 is the worst and 10 the best.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rating {
    Effort,
    Tiredness,
    Pain,
    /// The voice in daily life.
    Voice,
}

impl Rating {
    /// Every one, in the order in which they are shown.
    pub const ALL: [Self; 4] = [Self::Effort, Self::Tiredness, Self::Pain, Self::Voice];

    /// The highest value; the lowest is 0.
    pub const MOST: u8 = 10;

    /// As it stands in the journal.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Effort => "effort",
            Self::Tiredness => "tiredness",
            Self::Pain => "pain",
            Self::Voice => "voice",
        }
    }
}

/// What a rating looks back on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RatedOver {
    /// The practice that is ending.
    Practice,
    /// The days since about a week ago.
    Week,
}

impl RatedOver {
    /// Both, in the order in which they are shown.
    pub const ALL: [Self; 2] = [Self::Practice, Self::Week];

    /// As it stands in the journal.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Practice => "practice",
            Self::Week => "week",
        }
    }
}
