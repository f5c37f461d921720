//! Numbers as they are written.

/// A number with so many decimals and a true minus sign; what rounds to nothing has none.
pub(crate) fn number(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", value.abs());
    let is_nothing = text.chars().all(|c| matches!(c, '0' | '.'));
    if value < 0.0 && !is_nothing { format!("\u{2212}{text}") } else { text }
}
