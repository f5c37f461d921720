//! Numbers as they are written for other programs.

/// To a thousandth: milliseconds for a number of seconds.
pub(crate) fn thousandths(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
