//! One baseline as text.

use std::fmt::Write as _;

use jiff::civil::Date;
use model::{LevelCalibration, Measure};
use progress::{Assessment, Compared, Conditions, Practised, Reading, Taken, compared};
use routine::{Sex, norms_for};
use session::Line;
use speak::Words;

const WIDTH: usize = 100;
/// It stands under every sheet.
const FOOT: &str = "Published values are means of groups, measured under other conditions than these. They say nothing about one person, \
                    and no figure here is a diagnosis. Scatter comes from this person's own practice.";

/// What a baseline is set beside.
pub struct Beside<'a> {
    pub first: &'a Assessment,
    pub practised: &'a Practised,
    pub today: Date,
    /// Years.
    pub age: Option<u32>,
    pub sex: Option<Sex>,
}

/// The figures with their trials, conditions, published values, and how they stand beside the first.
pub fn sheet(client: &str, one: &Assessment, beside: &Beside<'_>, words: &Words) -> String {
    let mut text = format!("Voice baseline of {client}, {}", one.began.strftime("%a %-d %b %Y, %H:%M"));
    if !one.whole {
        text += ", not led to its end";
    }
    if one.misdated {
        text += "; the computer's clock was wrong, so this date is not sure";
    }
    text += "\n";
    if let Some(reading) = one.readings.first() {
        put(&mut text, "  ", &microphone(&reading.conditions));
    }
    for reading in &one.readings {
        text += "\n";
        put(&mut text, "  ", &value(reading, words));
        if reading.measure.is_level() {
            put(&mut text, "      ", &scale(&reading.conditions));
        }
        put(&mut text, "      ", &published(reading, beside));
        if one.session != beside.first.session
            && let Some(how) = compared(reading, beside.first, beside.practised, beside.today)
        {
            put(&mut text, "      ", &against(reading.measure, &how, beside.first));
        }
    }
    text += "\n";
    put(&mut text, "  ", FOOT);
    text
}

fn put(text: &mut String, indent: &str, line: &str) {
    let options = textwrap::Options::new(WIDTH).initial_indent(indent).subsequent_indent(indent);
    let _ = writeln!(text, "{}", textwrap::fill(line, options));
}

fn said(words: &Words, key: String) -> String {
    words.text(&Line { key: key.clone(), args: Vec::new() }).unwrap_or(key)
}

/// "Long ah, hold time: 11.0 s, the best of 9.5, 11.0, 10.0."
fn value(reading: &Reading, words: &Words) -> String {
    let number = |value: f64| format!("{value:.*}", reading.measure.decimals());
    let trials: Vec<String> = reading.trials.iter().map(|trial| number(*trial)).collect();
    let of = match (reading.taken, trials.len()) {
        (_, 1) => String::new(),
        (Taken::Best, _) => format!(", the best of {}", trials.join(", ")),
        (Taken::Median, _) => format!(", the middle one of {}", trials.join(", ")),
    };
    let discarded = if reading.discarded > 0 { format!(" ({} more did not count)", reading.discarded) } else { String::new() };
    format!(
        "{}, {}: {}{of}{discarded}.",
        said(words, format!("ex-{}-name", reading.exercise)),
        said(words, format!("report-measure-{}-shown", reading.measure.id())),
        with_unit(reading.measure, &number(reading.value)),
    )
}

fn with_unit(measure: Measure, number: &str) -> String {
    format!("{number} {}", measure.unit()).trim_end().to_owned()
}

fn microphone(conditions: &Conditions) -> String {
    let name = conditions.microphone.as_ref().map_or("not known", |microphone| microphone.name.as_str());
    let distance = conditions.distance_cm.map_or_else(|| "distance not stated".to_owned(), |cm| format!("{cm:.0} cm from the mouth"));
    format!("Microphone: {name}, {distance}.")
}

fn scale(conditions: &Conditions) -> String {
    let weighting = conditions.level_weighting.as_ref().map_or_else(String::new, |weighting| format!(", {weighting}-weighted"));
    let of = match conditions.calibration {
        LevelCalibration::Meter => "dB SPL, calibrated with a sound level meter",
        LevelCalibration::Source => "dB SPL, calibrated with a source of known level",
        LevelCalibration::Rough => "dB SPL, rough: calibrated with a phone",
        LevelCalibration::Void => "relative: the calibration no longer holds",
        LevelCalibration::None => "relative: the microphone is not calibrated",
    };
    let gain =
        if conditions.auto_gain { "; the microphone changed its own volume, so this level can be compared with nothing" } else { "" };
    format!("Scale: {of}{weighting}{gain}.")
}

fn published(reading: &Reading, beside: &Beside<'_>) -> String {
    if beside.age.is_none() && !norms_known(reading) {
        return "No norm known.".to_owned();
    }
    if beside.age.is_none() {
        return "Published values: give the age with --age, and --sex, to see them.".to_owned();
    }
    let found = norms_for(&reading.exercise, reading.measure.id(), beside.age, beside.sex);
    if found.is_empty() {
        return "No norm known.".to_owned();
    }
    let each = found.iter().map(|norm| format!("{} ({}; {}; {})", norm.text, norm.who, norm.source, norm.status));
    format!("Published: {}.", each.collect::<Vec<_>>().join("; "))
}

fn norms_known(reading: &Reading) -> bool {
    routine::norms().iter().any(|norm| norm.exercise == reading.exercise && norm.measure == reading.measure.id())
}

fn against(measure: Measure, how: &Compared, first: &Assessment) -> String {
    let day = first.began.strftime("%-d %b %Y");
    let number = |value: f64| with_unit(measure, &format!("{:.*}", measure.decimals(), value.abs()));
    let differs = |difference: f64| {
        // What rounds to nothing is neither more nor less.
        let shown = format!("{:.*}", measure.decimals(), difference.abs());
        if shown.chars().all(|c| matches!(c, '0' | '.')) {
            return format!("Against {day}: the same");
        }
        let way = if difference < 0.0 { "less" } else { "more" };
        format!("Against {day}: {} {way}", number(difference))
    };
    match how {
        Compared::OtherConditions => {
            format!("Against {day}: not comparable: the microphone, its place or its scale was another, or nobody said.")
        }
        Compared::ScatterUnknown { difference } => {
            format!("{}. Whether that means anything can't be told: this person's own scatter is not known yet.", differs(*difference))
        }
        Compared::Within { difference, mdc95 } => {
            format!("{}, within this person's own scatter ({}).", differs(*difference), number(*mdc95))
        }
        Compared::Beyond { difference, mdc95 } => {
            format!("{}, beyond this person's own scatter ({}).", differs(*difference), number(*mdc95))
        }
    }
}
