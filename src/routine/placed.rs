//! Lying, sitting, standing.

use serde::{Deserialize, Serialize};

/// How somebody is placed while an exercise is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Posture {
    Lying,
    Sitting,
    Standing,
}

impl Posture {
    pub(super) const ALL: [Self; 3] = [Self::Lying, Self::Sitting, Self::Standing];

    /// As it is written in a routine file, "sitting".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Lying => "lying",
            Self::Sitting => "sitting",
            Self::Standing => "standing",
        }
    }
}
