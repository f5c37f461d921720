//! What the typeface can print of a text.

use serde_json::Value;
use typeface::REGULAR;
use typst::text::FontInfo;

/// Stands for a letter that the typeface lacks. A page with a letter missing cannot be accessible (PDF/UA-1, ISO 14289-1,
/// forbids glyphs without a shape), and the rest of it is worth having.
const NO_LETTER: char = '\u{fffd}';

/// Replaces what cannot be printed in every text of `data`: control characters become blanks, letters that the typeface lacks
/// become [`NO_LETTER`].
pub(super) fn printable(data: &mut Value) {
    // Without the typeface nothing can be set anyway, which is told there.
    let Some(face) = FontInfo::new(REGULAR, 0) else { return };
    walk(data, &|c| match c {
        c if c.is_control() => ' ',
        c if c.is_whitespace() || face.coverage.contains(u32::from(c)) => c,
        _ => NO_LETTER,
    });
}

fn walk(data: &mut Value, keep: &dyn Fn(char) -> char) {
    match data {
        Value::String(text) if text.chars().any(|c| keep(c) != c) => *text = text.chars().map(keep).collect(),
        Value::Array(values) => values.iter_mut().for_each(|value| walk(value, keep)),
        Value::Object(values) => values.iter_mut().for_each(|(_, value)| walk(value, keep)),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use typeface::BOLD;

    #[test]
    fn what_cannot_be_printed_is_replaced_and_nothing_else() {
        let mut data = serde_json::json!({ "name": "Åsa Ωmega\u{7}", "list": ["語", "✓ – “a”", 3, null] });
        printable(&mut data);
        assert_eq!(data, serde_json::json!({ "name": "Åsa Ωmega ", "list": ["\u{fffd}", "✓ – “a”", 3, null] }));
        assert!(FontInfo::new(BOLD, 0).is_some_and(|face| face.coverage.contains(u32::from(NO_LETTER))));
    }
}
