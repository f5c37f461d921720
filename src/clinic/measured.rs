//! Which measures are kept of a trial, and in which columns: the one place of this room for a new one, besides its migration.

use super::error::ClinicError;
use super::rows::TrialRow;
use super::typed::Columns;
use super::value::{Row, Value};
use model::{Measure, TrialKind, Unit};
use std::collections::BTreeMap;

/// The columns, in the order in which they are written.
const COLUMNS: [&str; 17] = [
    "duration_s",
    "prescribed_s",
    "level_db",
    "level_fall_db",
    "level_slope_db_per_s",
    "f0_median_hz",
    "f0_span_st",
    "f0_sd_st",
    "rate_hz",
    "irregularity_pct",
    "breaks",
    "masked_s",
    "named",
    "cpps_db",
    "jitter_local_pct",
    "shimmer_local_pct",
    "hnr_db",
];

/// The column of a measure; none where it is not kept.
fn column(measure: Measure) -> Option<usize> {
    let name = if measure.is_level() { "level_db" } else { measure.declared().field };
    COLUMNS.iter().position(|column| *column == name)
}

/// As a SELECT names them, of the table called so.
pub(super) fn selected(table: &str) -> String {
    COLUMNS.map(|name| format!("{table}.{name}")).join(", ")
}

/// Every column of a trial: those of its row, then the measures.
pub(super) fn names() -> Vec<&'static str> {
    TrialRow::NAMES.iter().copied().chain(COLUMNS).collect()
}

/// What is written of measured values, in the order of the columns.
pub(super) fn values(measured: &[(Measure, f64)]) -> Vec<Value> {
    let mut values = vec![Value::Null; COLUMNS.len()];
    for (measure, value) in measured {
        if let Some(cell) = column(*measure).and_then(|column| values.get_mut(column)) {
            // A count that is too large saturates.
            *cell = if measure.declared().unit == Unit::Count { Value::Int(*value as i64) } else { Value::from(*value) };
        }
    }
    values
}

/// Where the measures stand in a row that begins with a [`TrialRow`].
pub(super) struct Measured(BTreeMap<Measure, usize>);

impl Default for Measured {
    fn default() -> Self {
        let place = |measure: &Measure| Some((*measure, TrialRow::NAMES.len() + column(*measure)?));
        Self(Measure::ALL.iter().filter_map(place).collect())
    }
}

impl Measured {
    /// What was measured of a trial of that kind.
    pub fn value(&self, row: &Row, kind: TrialKind, measure: Measure) -> Result<Option<f64>, ClinicError> {
        match self.0.get(&measure).filter(|_| measure.declared().kind == kind) {
            Some(place) => row.maybe_real(*place),
            None => Ok(None),
        }
    }

    /// How long it took.
    pub fn duration_s(&self, row: &Row, kind: TrialKind) -> Result<Option<f64>, ClinicError> {
        match Measure::of_kind(kind).find(|measure| measure.declared().field == "duration_s") {
            Some(measure) => self.value(row, kind, measure),
            None => Ok(None),
        }
    }
}
