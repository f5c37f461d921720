//! The reasons in plain words, for the clinician. They say what is known and as of when, and nothing of what it may mean.

use super::adherence::Share;
use super::attention::Reason;
use super::change::Change;
use super::digest::{Microphone, Said};
use model::{LevelCalibration, Measure};
use progress::Conditions;

fn times(count: u32) -> String {
    match count {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        more => format!("{more} times"),
    }
}

fn plural(count: u32, one: &str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") }
}

/// "chest pain once, dizzy twice".
#[must_use]
pub fn safety_text(said: &Said) -> String {
    let all = [
        ("chest pain", said.chest_pain),
        ("couldn't breathe", said.breathless),
        ("choking", said.choking),
        ("dizzy", said.dizzy),
        ("pain", said.pain),
        ("felt sick", said.sick),
        ("asked for help", said.help),
        ("something else was wrong", said.otherwise),
    ];
    all.iter().filter(|(_, count)| *count > 0).map(|(what, count)| format!("{what} {}", times(*count))).collect::<Vec<_>>().join(", ")
}

fn share(share: Share) -> String {
    match (share.percent(), share.band()) {
        (Some(percent), Some(band)) => format!("{percent} % ({}; {} of {} repetitions)", band.word(), share.counted, share.prescribed),
        _ => "nothing prescribed".to_owned(),
    }
}

/// One reason as a sentence without its full stop.
#[must_use]
pub fn reason_text(reason: &Reason) -> String {
    match reason {
        Reason::Safety { said, last } => {
            let last = last.map_or_else(String::new, |day| format!(", the last on {day}"));
            format!("said since the last look: {}{last}", safety_text(said))
        }
        Reason::Sign { times: count, what } => {
            format!("warning signs about swallowing since the last look, yes or not sure {}: {what}", times(*count))
        }
        Reason::NoPractice { last, known_to, days, planned_week, gap_days } => {
            let plan = match planned_week {
                Some(7) => "planned every day".to_owned(),
                Some(week) => format!("planned on {}", plural(*week, "day") + " a week"),
                None => format!("no days agreed, told after {gap_days} days"),
            };
            match last {
                Some(last) => {
                    format!("no practice for {} up to the results of {known_to} ({plan}; the last on {last})", plural(*days, "day"))
                }
                None => format!("no practice yet, {} after the package, in the results of {known_to}", plural(*days, "day")),
            }
        }
        Reason::NoResults { since: Some(since), days, last, .. } => {
            let last = last.map_or_else(String::new, |last| format!(", the last known practice on {last}"));
            format!("no results for {} (the newest are of {since}{last})", plural(*days, "day"))
        }
        Reason::NoResults { since: None, made, days, .. } => {
            let made = made.map_or_else(String::new, |made| format!(" of {made}"));
            format!("no results yet, {} after the package{made}", plural(*days, "day"))
        }
        Reason::Adherence { recent, before, planned, known_to } => {
            let basis = if *planned { "days with a plan count" } else { "no days agreed: only practices that were begun count" };
            let fell = if recent.fell_from(*before) { format!(", down from {}", share(*before)) } else { String::new() };
            format!("adherence of the 14 days up to {known_to}: {}{fell}; {basis}", share(*recent))
        }
        Reason::Decline { what, .. } => format!("fell by more than this person's own scatter: {what}"),
        Reason::LeftOut { times: count, what } => format!("left out for want of agreement {}: {what}", times(*count)),
        Reason::Tired { times: count } => format!("holds or level fell within a practice beyond the usual, {}", times(*count)),
        Reason::OldProgramme { made, weeks } => format!("the programme is {} old (package of {made})", plural(*weeks, "week")),
        Reason::NotFollowed { made } => format!("practises by an earlier package than the newest, of {made}"),
        Reason::Microphone { state, since } => {
            let since = since.map_or_else(String::new, |since| format!(" (since {since})"));
            let what = match state {
                Microphone::AutoGain => "the microphone changes its own volume: levels compare with nothing",
                Microphone::Void => "the calibration no longer holds: levels are relative",
                Microphone::Changed => "microphone, gain, calibration or distance changed: levels compare only from there on",
                Microphone::Relative => "not calibrated: levels are relative",
                Microphone::Fine => "levels as before",
            };
            format!("{what}{since}")
        }
        Reason::Clock { practices } => {
            format!("{} with a date that cannot be believed: the clock of the home computer was wrong", plural(*practices, "practice"))
        }
    }
}

/// The measures that fell so that it asks for a look, each with its figures; none where none did.
#[must_use]
pub(super) fn fallen(changes: &[Change]) -> Option<String> {
    let what: Vec<String> = changes.iter().filter(|change| change.asks()).map(fallen_in_words).collect();
    (!what.is_empty()).then(|| what.join("; "))
}

fn fallen_in_words(change: &Change) -> String {
    let (unit, decimals) = (change.measure.unit(), change.measure.decimals());
    let figures = change
        .baseline
        .zip(change.latest)
        .map_or_else(String::new, |(from, to)| format!(" from {from:.decimals$} to {to:.decimals$} {unit}"));
    let scatter = change.smallest.map_or_else(String::new, |smallest| format!(", own scatter ±{smallest:.decimals$} {unit}"));
    let label = conditions(&change.conditions, change.measure);
    let label = if label.is_empty() { label } else { format!(", {label}") };
    format!("{} of {}{figures}{scatter}{label}", measure_in_words(change.measure), change.exercise)
}

fn measure_in_words(measure: Measure) -> &'static str {
    match measure {
        Measure::HoldS => "hold time",
        Measure::LevelDb => "level",
        Measure::F0MedianHz => "pitch (F0)",
        Measure::F0SpanSt => "pitch span",
        Measure::F0SdSt => "unsteadiness of pitch",
        Measure::LevelSlopeDbPerS => "slope of level",
        Measure::StepDb => "step of loudness",
        Measure::StepSt => "step of pitch",
        Measure::PhraseSpanSt => "pitch span of phrases",
        Measure::PhraseRateHz => "speech rate of phrases",
        Measure::PhraseLevelDb => "level of phrases",
        Measure::PhraseF0Hz => "pitch of phrases",
        Measure::TalkLevelDb => "level of talk",
        Measure::TalkF0Hz => "pitch of talk",
        Measure::PauseSharePct => "share of pauses",
        Measure::SyllableRateHz => "syllable rate",
        Measure::SyllableIrregularityPct => "irregularity of syllables",
        Measure::NamedCount => "words named",
        Measure::CppsDb => "CPPS",
        Measure::HnrDb => "harmonics to noise",
        Measure::JitterPct => "jitter",
        Measure::ShimmerPct => "shimmer",
        other => other.declared().meaning,
    }
}

/// What is told beside a figure of a measure: for levels what they refer to, otherwise nothing.
pub(super) fn conditions(of: &Conditions, measure: Measure) -> String {
    if !measure.is_level() {
        return String::new();
    }
    let weighting = of.level_weighting.as_deref().unwrap_or("?");
    let distance = of.distance_cm.map_or_else(|| "distance unknown".to_owned(), |distance| format!("{distance:.0} cm"));
    let scale = match of.calibration {
        LevelCalibration::None => "relative, not calibrated",
        LevelCalibration::Void => "relative, calibration void",
        LevelCalibration::Meter => "SPL, calibrated by sound level meter",
        LevelCalibration::Source => "SPL, calibrated by source",
        LevelCalibration::Rough => "SPL, rough",
    };
    format!("{weighting}-weighted, {}, {distance}, {scale}", of.time_weighting.as_deref().unwrap_or("energy-mean"))
}

#[cfg(test)]
#[path = "tests/words.rs"]
mod tests;
