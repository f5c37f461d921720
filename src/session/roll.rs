//! Who of a class is there.

use std::collections::BTreeMap;

/// The roll of a class.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Roll {
    /// It was announced.
    pub announced: bool,
    /// Nobody else is called.
    pub over: bool,
    /// Who is called next, or later, by index from 0.
    pub next: usize,
    /// Who was said to be there or not, by index from 0.
    pub present: BTreeMap<usize, bool>,
}
