//! The table at the end of a session, from its entries alone.

use std::collections::BTreeMap;

use unicode_width::UnicodeWidthStr;

use model::visible_line;
use session::{Arg, Entry, Fact, LevelCalibration, LevelTerms};
use speak::Words;

/// Cells of the widest row.
const WIDTH: usize = 80;
/// Cells of the column of exercises.
const NAME: usize = 26;

/// What a mark at a level means.
const FOOTNOTES: [(LevelCalibration, &str); 5] = [
    (LevelCalibration::None, "table-none-shown"),
    (LevelCalibration::Void, "table-void-shown"),
    (LevelCalibration::Rough, "table-rough-shown"),
    (LevelCalibration::Meter, "table-meter-shown"),
    (LevelCalibration::Source, "table-source-shown"),
];

fn is_relative(scale: LevelCalibration) -> bool {
    matches!(scale, LevelCalibration::None | LevelCalibration::Void)
}

fn mark(scales: &[LevelCalibration]) -> &'static str {
    if scales.iter().any(|scale| is_relative(*scale)) {
        "*"
    } else if scales.contains(&LevelCalibration::Rough) {
        "~"
    } else {
        ""
    }
}

/// What came of one step.
#[derive(Debug, Default)]
struct StepResult {
    exercise: String,
    /// Set by the entry that ends the step.
    done: Option<(u32, u32)>,
    holds_s: Vec<f64>,
    f0_hz: Vec<f64>,
    level_db: Vec<f64>,
    /// What the levels stand on, each kind once.
    scales: Vec<LevelCalibration>,
    auto_gain: bool,
    clipped: u32,
    rates_hz: Vec<f64>,
    questions: (u32, u32),
    masked: u32,
    notes: Vec<String>,
}

/// The table in plain text, at most 80 cells wide: for each step what was done of what was prescribed, the best and mean
/// complete hold, the median over its trials of the fundamental frequency, the energy mean of the level, and what is
/// worth a note. Levels are energy means, A-weighted; those that are not calibrated, and rough ones, are marked.
#[must_use]
pub fn table(entries: &[Entry], words: &Words) -> String {
    let (steps, left_out) = results(entries, words);
    let heads =
        ["exercise", "done", "best", "mean", "f0", "level", "notes"].map(|head| words.shown(&format!("table-{head}-shown"), Vec::new()));
    let mut text = row(heads.each_ref().map(String::as_str));
    text.push_str(&"-".repeat(WIDTH));
    text.push('\n');
    for step in steps.values() {
        let done = step.done.map_or_else(|| "-".to_owned(), |(done, prescribed)| format!("{done}/{prescribed}"));
        let best = step.holds_s.iter().copied().reduce(f64::max);
        let level = energy_mean(&step.level_db).map_or_else(String::new, |db| words.figure(db, 1) + mark(&step.scales));
        let figure = |value: Option<f64>, decimals: usize| value.map_or_else(String::new, |value| words.figure(value, decimals));
        text.push_str(&row([
            &words.exercise(&step.exercise),
            &done,
            &figure(best, 1),
            &figure(mean(&step.holds_s), 1),
            &figure(statistics::median(&step.f0_hz), 0),
            &level,
            &notes(step, words),
        ]));
    }
    for (exercise, reason) in &left_out {
        text.push_str(&row([&words.exercise(exercise), "-", "", "", "", "", &shown_why(words, "table-left-out-shown", reason)]));
    }
    for (scale, key) in FOOTNOTES {
        if steps.values().any(|step| step.scales.contains(&scale)) {
            text.push_str(&(words.shown(key, Vec::new()) + "\n"));
        }
    }
    if steps.values().any(|step| step.auto_gain) {
        text.push_str(&(words.shown("table-auto-gain-shown", Vec::new()) + "\n"));
    }
    if let Some(rated) = looked_back(entries, words) {
        text.push_str(&rated);
    }
    if let Some(Fact::SessionEnded { reason, steps_done, steps_prescribed, .. }) = entries.last().map(|entry| &entry.fact) {
        let args =
            vec![("done", count(*steps_done)), ("all", count(*steps_prescribed)), ("why", Arg::Text(visible_line(&words.reason(reason))))];
        text.push_str(&(words.shown("table-ended-shown", args) + "\n"));
    }
    text
}

/// What the client answered at the end, a line for the ratings and one for warning signs; none where nothing was answered. An answer
/// that was corrected stands as it was given last.
fn looked_back(entries: &[Entry], words: &Words) -> Option<String> {
    let (mut ratings, mut signs): (Vec<(&str, Option<u8>)>, Vec<(&str, &str)>) = (Vec::new(), Vec::new());
    let mut told = false;
    for entry in entries {
        match &entry.fact {
            Fact::Rated { what, value, .. } => {
                ratings.retain(|(known, _)| *known != what.name());
                ratings.push((what.name(), *value));
            }
            Fact::MomentTold { from_s, .. } => told = from_s.is_some(),
            Fact::SwallowSign { sign, answer } => {
                signs.retain(|(known, _)| *known != sign.as_str());
                if answer.is_warning() {
                    signs.push((sign, answer));
                }
            }
            _ => {}
        }
    }
    let rated: Vec<String> = ratings
        .iter()
        .filter_map(|(what, value)| {
            let what = words.shown(&format!("report-rating-{what}-shown"), Vec::new());
            Some(words.shown("table-rating-shown", vec![("what", Arg::Text(what)), ("value", Arg::Text((*value)?.to_string()))]))
        })
        .collect();
    let sign = |(sign, answer): &(&str, &str)| {
        let [what, answer] = [sign, answer].map(|kept| Arg::Text(visible_line(&words.reason(kept))));
        words.shown("table-sign-shown", vec![("what", what), ("answer", answer)])
    };
    let signs: Vec<String> = signs.iter().map(sign).collect();
    let line = |key: &str, all: &[String]| match all {
        [] => String::new(),
        all => words.shown(key, vec![("list", Arg::Text(all.join(", ")))]) + "\n",
    };
    let told = if told { words.shown("table-moment-shown", Vec::new()) + "\n" } else { String::new() };
    let text = line("table-ratings-shown", &rated) + &told + &line("table-signs-shown", &signs);
    (!text.is_empty()).then_some(text)
}

/// Results by step, in the routine's order, and what was left out with the reason.
fn results(entries: &[Entry], words: &Words) -> (BTreeMap<u32, StepResult>, Vec<(String, String)>) {
    let mut steps: BTreeMap<u32, StepResult> = BTreeMap::new();
    let mut left_out = Vec::new();
    for entry in entries {
        if let Fact::StepLeftOut { exercise, reason } = &entry.fact {
            // Said again where an interrupted session is gone on with.
            let pair = (exercise.clone(), reason.to_string());
            if !left_out.contains(&pair) {
                left_out.push(pair);
            }
            continue;
        }
        if let Some(at) = entry.position {
            steps.entry(at.step).or_default().add(&entry.fact, words);
        }
    }
    steps.retain(|_, step| !step.exercise.is_empty());
    (steps, left_out)
}

impl StepResult {
    fn add(&mut self, fact: &Fact, words: &Words) {
        match fact {
            Fact::StepBegun { exercise, .. } => self.exercise.clone_from(exercise),
            Fact::HoldMeasured { duration_s, f0_median_hz, level_mean_db, level_terms, masked_s, complete: true, .. } => {
                self.holds_s.push(*duration_s);
                self.voice(*f0_median_hz, *level_mean_db, level_terms.as_ref());
                self.masked += u32::from(*masked_s > 0.0);
            }
            Fact::PostureHeld { duration_s, complete: true, .. } => self.holds_s.push(*duration_s),
            Fact::PhraseRead { f0_median_hz, level_mean_db, level_terms, .. }
            | Fact::Talked { f0_median_hz, level_mean_db, level_terms, complete: true, .. } => {
                self.voice(*f0_median_hz, *level_mean_db, level_terms.as_ref());
            }
            Fact::SyllablesCounted { rate_hz, .. } if rate_hz.is_finite() => self.rates_hz.push(*rate_hz),
            Fact::QuestionAnswered { correct, .. } => {
                self.questions.0 += u32::from(*correct);
                self.questions.1 += 1;
            }
            Fact::StepDone { repetitions_done, repetitions_prescribed, .. } => {
                self.done = Some((*repetitions_done, *repetitions_prescribed))
            }
            Fact::StepStopped { repetitions_done, repetitions_prescribed, reason, .. } => {
                self.done = Some((*repetitions_done, *repetitions_prescribed));
                self.notes.push(shown_why(words, "table-stopped-shown", reason));
            }
            _ => {}
        }
    }

    fn voice(&mut self, f0_hz: f64, level_db: f64, terms: Option<&LevelTerms>) {
        if f0_hz.is_finite() && f0_hz > 0.0 {
            self.f0_hz.push(f0_hz);
        }
        if level_db.is_finite() {
            self.level_db.push(level_db);
            let scale = terms.map_or(LevelCalibration::None, |terms| terms.calibration);
            // Relative levels and those in dB SPL have no common mean: from the change on, the new scale counts.
            if self.scales.iter().any(|known| is_relative(*known) != is_relative(scale)) {
                self.level_db = vec![level_db];
                self.scales.clear();
            }
            if !self.scales.contains(&scale) {
                self.scales.push(scale);
            }
            self.auto_gain |= terms.is_some_and(|terms| terms.auto_gain);
            self.clipped += u32::from(terms.is_some_and(|terms| terms.clipped_s > 0.0));
        }
    }
}

fn notes(step: &StepResult, words: &Words) -> String {
    let mut notes = step.notes.clone();
    if let Some(rate) = mean(&step.rates_hz) {
        notes.push(words.shown("table-rate-shown", vec![("rate", Arg::Text(format!("{rate:.1}")))]));
    }
    if step.questions.1 > 0 {
        notes.push(words.shown("table-right-shown", vec![("right", count(step.questions.0)), ("all", count(step.questions.1))]));
    }
    if step.clipped > 0 {
        notes.push(words.shown("table-clipped-shown", vec![("n", count(step.clipped))]));
    }
    if step.auto_gain {
        notes.push(words.shown("table-not-comparable-shown", Vec::new()));
    }
    if step.masked > 0 {
        notes.push(words.shown("table-masked-shown", vec![("n", count(step.masked))]));
    }
    notes.join("; ")
}

fn shown_why(words: &Words, key: &str, reason: &str) -> String {
    words.shown(key, vec![("why", Arg::Text(visible_line(&words.reason(reason))))])
}

fn count(n: u32) -> Arg {
    Arg::Number(f64::from(n))
}

fn mean(values: &[f64]) -> Option<f64> {
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
}

/// 10·log10 of the mean of 10^(L/10): levels add by energy (ISO 1996-1, equivalent level).
fn energy_mean(levels_db: &[f64]) -> Option<f64> {
    let energies: Vec<f64> = levels_db.iter().map(|db| 10_f64.powf(db / 10.0)).collect();
    mean(&energies).map(|energy| 10.0 * energy.log10())
}

/// One row; what is too long for its column is cut, and the notes, last, are broken into further rows.
fn row(cells: [&str; 7]) -> String {
    let [name, done, best, mean, f0, level, notes] = cells;
    let name = fit(&visible_line(name), NAME);
    let pad = " ".repeat(NAME.saturating_sub(name.width()));
    let start = format!("{name}{pad} {done:>5} {best:>6} {mean:>6} {f0:>5} {level:>6}  ");
    let indent = " ".repeat(start.width());
    let wrapped = textwrap::wrap(notes, WIDTH.saturating_sub(start.width()).max(8));
    let mut text = String::new();
    for (index, part) in wrapped.iter().enumerate() {
        text.push_str(format!("{}{part}", if index == 0 { &start } else { &indent }).trim_end());
        text.push('\n');
    }
    text
}

fn fit(text: &str, width: usize) -> String {
    if text.width() <= width {
        return text.to_owned();
    }
    let mut kept = String::new();
    for character in text.chars() {
        if kept.width() + unicode_width::UnicodeWidthChar::width(character).unwrap_or(0) >= width {
            break;
        }
        kept.push(character);
    }
    kept + "…"
}

#[cfg(test)]
#[path = "tests/summary.rs"]
mod tests;
