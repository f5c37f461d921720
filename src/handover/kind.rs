//! What a sealed file is, and how large it may be.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A larger file is not read, bytes. A package is some hundred kilobytes at most, a year of practices some megabytes.
pub const MAX_SEALED_BYTES: usize = 20_000_000;

/// What a sealed file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// From the clinician to the home computer.
    Package,
    /// From the home computer to the clinician.
    Results,
}

impl Kind {
    pub(super) fn ending(self) -> &'static str {
        match self {
            Self::Package => ".tidepack",
            Self::Results => ".tideback",
        }
    }

    pub(super) fn verb(self) -> &'static str {
        match self {
            Self::Package => "take",
            Self::Results => "read",
        }
    }

    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Package => "package",
            Self::Results => "results",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Package => "client package",
            Self::Results => "file of results",
        })
    }
}
