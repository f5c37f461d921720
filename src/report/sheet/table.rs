//! One table of the second page.

use serde::Serialize;

/// A table; the first cell of each row is the row's heading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Table {
    pub title: String,
    pub note: String,
    pub head: Vec<String>,
    /// Columns that share the room which the others leave.
    pub grows: Vec<bool>,
    pub rows: Vec<Vec<String>>,
    /// Sentences stand in its cells: they are broken into lines and begin at the left.
    pub wraps: bool,
}
