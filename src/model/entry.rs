//! One line of the journal as data.

use crate::fact::Fact;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A place in the routine, each counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Position {
    pub step: u32,
    pub set: u32,
    pub repetition: u32,
}

/// One line of the journal: a fact, when and where in the routine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Entry {
    /// Seconds on the sample clock.
    pub at_s: f64,
    /// What happened; its `kind` and values stand flat in the entry.
    #[serde(flatten)]
    pub fact: Fact,
    /// Where, if inside a step.
    #[serde(flatten)]
    pub position: Option<Position>,
}
