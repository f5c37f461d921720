//! Figures as a language writes them: "12.4", "12,4".

use fluent_bundle::FluentValue;
use intl_memoizer::concurrent::IntlLangMemoizer;

type Formatter = fn(&FluentValue, &IntlLangMemoizer) -> Option<String>;

/// How numbers in messages are written; none where they are written as in English.
pub(super) fn formatter(decimal: char) -> Option<Formatter> {
    match decimal {
        ',' => Some(|value, _| of_value(value, ',')),
        '\u{66b}' => Some(|value, _| of_value(value, '\u{66b}')),
        _ => None,
    }
}

fn of_value(value: &FluentValue, decimal: char) -> Option<String> {
    match value {
        FluentValue::Number(number) => Some(number.as_string().replace('.', &decimal.to_string())),
        _ => None,
    }
}

/// A text that is a figure and nothing else, as "+12.4", with the language's mark; any other text as it is.
pub(super) fn written(text: &str, decimal: char) -> String {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    let is_figure =
        text.trim_start_matches(['+', '-', '\u{2212}']).split_once('.').is_some_and(|(whole, part)| digits(whole) && digits(part));
    if is_figure { text.replace('.', &decimal.to_string()) } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_figures_take_the_mark_of_the_language() {
        for (text, expected) in [("12.4", "12,4"), ("\u{2212}0.5", "\u{2212}0,5"), ("+1.25", "+1,25"), ("12", "12"), ("1.2.3", "1.2.3")] {
            assert_eq!(written(text, ','), expected);
        }
        for text in ["a.b", "2026-11-22", "3.", ".5", "v1.2", ""] {
            assert_eq!(written(text, ','), text);
        }
    }
}
