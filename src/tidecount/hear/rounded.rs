//! Figures as they are written.

/// Rounded; never NaN, infinite or -0, which JSON or its readers do not know.
pub fn rounded(value: f64, digits: i32) -> f64 {
    let scale = 10f64.powi(digits);
    let value = (value * scale).round() / scale + 0.0;
    if value.is_finite() { value } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_never_senseless() {
        assert_eq!([f64::NAN, f64::INFINITY, -0.0001, 1.23456].map(|x| rounded(x, 2).to_string()), ["0", "0", "0", "1.23"]);
    }
}
