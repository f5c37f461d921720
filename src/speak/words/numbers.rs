//! Numbers as they are said: functions for the catalogue whose words stand in `numbers.ftl`.
//!
//! `SPOKEN($n)`: "twelve", "twelve point four"; `SECONDS($s)`: "one second", "twelve point four seconds";
//! `DIGITS($text)`: "One. One. Two.", a telephone number slowly, figure by figure;
//! `DURATION($s)`: "fifty seconds", "two minutes and ten seconds", from ten minutes on whole minutes.

use super::{WordsError, number, parse};
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::sync::Arc;

/// Stands in a text in place of a number that was none; never said.
pub(super) const NOT_A_NUMBER: char = '\u{fffd}';

/// From here on minutes are told without seconds, s.
const WHOLE_MINUTES_FROM_S: f64 = 600.0;

type Bundle = FluentBundle<FluentResource>;

/// Adds the functions to a catalogue. They cannot reach the catalogue they belong to, so they keep one of numbers alone.
pub(super) fn add_functions(bundle: &mut Bundle, text: &str) -> Result<(), WordsError> {
    let fault = |why: String| WordsError::Unreadable { file: super::NUMBERS_FILE.into(), line: 1, why };
    let mut own = FluentBundle::new_concurrent(bundle.locales.clone());
    own.set_use_isolating(false);
    // Messages that use the functions are not said by them and may stand in the same file.
    own.add_resource(parse(super::NUMBERS_FILE, text)?).map_err(|_| fault("a message stands twice".into()))?;
    let numbers = Arc::new(Numbers(own));
    type Say = fn(&Numbers, f64) -> Option<String>;
    for (name, say) in [("SPOKEN", Numbers::spoken as Say), ("SECONDS", Numbers::seconds), ("DURATION", Numbers::duration)] {
        let numbers = numbers.clone();
        bundle
            .add_function(name, move |values, _| {
                let text = number(values.first()).filter(|n| n.is_finite()).and_then(|n| say(&numbers, n));
                FluentValue::String(text.unwrap_or_else(|| NOT_A_NUMBER.into()).into())
            })
            .map_err(|why| fault(why.to_string()))?;
    }
    bundle
        .add_function("DIGITS", move |values, _| {
            let text = match values.first() {
                Some(FluentValue::String(text)) => numbers.digits(text),
                _ => None,
            };
            FluentValue::String(text.unwrap_or_else(|| NOT_A_NUMBER.into()).into())
        })
        .map_err(|why| fault(why.to_string()))?;
    Ok(())
}

struct Numbers(Bundle);

impl Numbers {
    fn message(&self, key: &str, args: &[(&str, FluentValue)]) -> Option<String> {
        let message = self.0.get_message(key)?;
        let args: FluentArgs = args.iter().map(|(name, value)| (*name, value.clone())).collect();
        let mut faults = Vec::new();
        let text = self.0.format_pattern(message.value()?, Some(&args), &mut faults).into_owned();
        faults.is_empty().then_some(text)
    }

    /// To one decimal at most.
    fn spoken(&self, n: f64) -> Option<String> {
        if n < 0.0 {
            let number = self.spoken(-n)?;
            // What rounds to nothing has no sign.
            return if (n * 10.0).round() == 0.0 { Some(number) } else { self.message("number-minus", &[("number", number.into())]) };
        }
        let tenths = (n * 10.0).round();
        let whole = self.whole((tenths / 10.0).floor())?;
        let digit = tenths % 10.0;
        if digit == 0.0 {
            return Some(whole);
        }
        let digit = self.whole(digit)?;
        self.message("number-point", &[("whole", whole.into()), ("digit", digit.into())])
    }

    /// Whole numbers to 999 in words; larger ones as figures, which every voice can read.
    fn whole(&self, n: f64) -> Option<String> {
        if n > 999.0 {
            return Some(format!("{n:.0}"));
        }
        let n = n as u32;
        // What a language says in its own way stands whole: "veintiuno", "einundzwanzig".
        if let Some(said) = self.plain(n) {
            return Some(said);
        }
        let (hundreds, tens, ones) = (n / 100, n % 100 / 10 * 10, n % 10);
        if n < 100 {
            return self.message("number-tens", &[("tens", self.plain(tens)?.into()), ("ones", self.plain(ones)?.into())]);
        }
        let count = ("hundreds-count", hundreds.into());
        let digit = ("hundreds", self.plain(hundreds)?.into());
        if n.is_multiple_of(100) {
            return self.message("number-hundreds", &[digit, count]);
        }
        // "hundert", "zweihundert": where the hundreds have words of their own.
        let whole = ("whole", self.plain(100 * hundreds).unwrap_or_default().into());
        let rest = self.whole(f64::from(n % 100))?;
        self.message("number-hundreds-rest", &[digit, count, whole, ("rest", rest.into())])
    }

    /// A number that has a message of its own.
    fn plain(&self, n: u32) -> Option<String> {
        self.message(&format!("number-{n}"), &[])
    }

    /// Each figure a sentence of its own, so that every voice says it slowly. Spaces and dashes are not said; none for anything else.
    fn digits(&self, text: &str) -> Option<String> {
        let said = text.chars().filter(|c| !matches!(c, ' ' | '-')).map(|c| match c {
            '+' => self.message("number-plus", &[]),
            c => self.whole(f64::from(c.to_digit(10)?)),
        });
        let said: Vec<String> = said.collect::<Option<_>>()?;
        (!said.is_empty()).then(|| format!("{}.", said.join(". ")))
    }

    fn seconds(&self, s: f64) -> Option<String> {
        self.message("spoken-seconds", &[("count", ((s * 10.0).round() / 10.0).into()), ("number", self.spoken(s)?.into())])
    }

    fn duration(&self, s: f64) -> Option<String> {
        let total = s.max(0.0).round();
        if total < 60.0 {
            return self.seconds(total);
        }
        let minutes = if total < WHOLE_MINUTES_FROM_S { (total / 60.0).floor() } else { (total / 60.0).round() };
        let spoken = self.message("spoken-minutes", &[("count", minutes.into()), ("number", self.spoken(minutes)?.into())])?;
        let rest = total - 60.0 * minutes;
        if total >= WHOLE_MINUTES_FROM_S || rest == 0.0 {
            return Some(spoken);
        }
        self.message("spoken-and", &[("first", spoken.into()), ("second", self.seconds(rest)?.into())])
    }
}
