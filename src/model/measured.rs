//! How a measured number is written: finite, or `null` where it could not be measured (JSON knows no NaN or infinity).

use serde::{Deserialize, Deserializer, Serializer};

/// Writes a finite number as it is and anything else as `null`.
pub(crate) fn serialize<S: Serializer>(value: &f64, to: S) -> Result<S::Ok, S::Error> {
    if value.is_finite() { to.serialize_f64(*value) } else { to.serialize_none() }
}

/// Reads what [`serialize`] wrote; `null` becomes NaN.
pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<f64, D::Error> {
    Ok(Option::<f64>::deserialize(from)?.unwrap_or(f64::NAN))
}
