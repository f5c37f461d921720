//! The text to paste into a chart: subjective, objective, assessment, plan. Plain lines, days as ISO 8601, no markup. The
//! assessment is the clinician's and is left blank; the plan only asks.

use serde::Serialize;

use super::about::About;
use super::terms::{Given, Terms, Verdict, printable, verdict};
use super::{abbreviations, baselines, dose, events, front, goals, moments, panels, ratings};
use crate::handout::Say;
use crate::number::number;
use progress::{GoalState, Picture, Series, Standing};

/// Longest line, characters.
const WIDTH: usize = 100;

/// The text and what stands over it on a page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChartText {
    pub title: String,
    pub hint: String,
    pub text: String,
}

/// What is written, line by line.
struct Lines(Vec<String>);

impl Lines {
    fn heading(&mut self, text: &str) {
        self.0.extend([String::new(), text.to_uppercase()]);
    }

    fn line(&mut self, text: &str) {
        self.wrapped(text, "", "  ");
    }

    fn list<S: AsRef<str>>(&mut self, title: &str, items: &[S]) {
        if !items.is_empty() {
            self.line(title);
            items.iter().for_each(|item| self.wrapped(item.as_ref(), "- ", "  "));
        }
    }

    fn wrapped(&mut self, text: &str, first: &str, next: &str) {
        let text = typed(text);
        let options = textwrap::Options::new(WIDTH).initial_indent(first).subsequent_indent(next);
        self.0.extend(textwrap::wrap(&text, options).into_iter().map(|line| line.trim_end().to_owned()));
    }
}

/// The text of a picture.
pub(super) fn chart_text(picture: &Picture, about: &About<'_>, say: Say<'_>) -> ChartText {
    let terms = &Terms::with_iso_days(say);
    let of = |name: &str| terms.plain(&format!("report-soap-{name}-shown"));
    let span = terms.span(picture.window.from, picture.window.to);
    let mut lines = Lines(Vec::new());
    lines.line(&terms.text("report-soap-of-shown", &[("client", terms.name(&picture.client)), ("span", span.into())]));

    lines.heading(&of("subjective"));
    let own_words: Vec<String> = picture.goals.iter().map(|state| quoted(state, terms)).collect();
    lines.list(&of("own-words"), &own_words);
    let stops = events::stops(picture, terms);
    lines.list(&of("stops"), &stops);
    if stops.is_empty() {
        lines.line(&terms.plain("report-glance-stops-none-shown"));
    }
    lines.list(&of("signs"), &events::signs(picture, terms));
    events::missed(picture, terms).iter().for_each(|line| lines.line(line));
    lines.list(&of("ratings"), &ratings::lines(&picture.ratings, terms));
    lines.line(&if picture.ratings.is_empty() { of("ratings-none") } else { terms.plain("report-ratings-note-shown") });
    lines.list(&terms.plain("report-moments-shown"), &moments::lines(picture, terms));

    lines.heading(&of("objective"));
    lines.line(&front::adherence(picture, about, terms));
    given(&mut lines, picture, terms);
    lines.list(&of("cueing"), &dose::cueing(picture, terms));
    let explained = measured(&mut lines, picture, terms);
    lines.list(&terms.plain("report-baseline-shown"), &baselines::lines(picture, terms));
    let new = abbreviations::of_baselines(picture, terms).into_iter().filter(|line| !explained.contains(line));
    new.for_each(|line| lines.line(&line));
    if !picture.goals.is_empty() {
        let told = goals::of(&picture.goals, terms);
        lines.list(&of("goals"), &told.lines);
        lines.line(&told.rule);
    }
    lines.list(&of("left-out"), &events::left_out(picture, terms));
    let programme = events::programme(picture, terms);
    lines.list(&of("programme"), &programme);
    if programme.is_empty() {
        lines.line(&of("programme-none"));
    }

    lines.heading(&of("assessment"));
    lines.line(&of("yours"));

    lines.heading(&of("plan"));
    lines.line(&of("decide"));
    lines.list(&of("proposed"), &proposals(picture, terms));
    lines.0.push(String::new());
    let made = [("date", terms.date(about.made).into()), ("software", printable(about.software).into())];
    lines.line(&format!("{}. {}", terms.text("report-made-shown", &made), terms.plain("report-foot-shown")));
    ChartText { title: of("title"), hint: of("hint"), text: lines.0.iter().map(|line| format!("{line}\n")).collect() }
}

/// Minutes and repetitions, by group and by day.
fn given(lines: &mut Lines, picture: &Picture, terms: &Terms<'_>) {
    lines.list(&terms.plain("report-soap-by-group-shown"), &dose::group_lines(picture, terms));
    let weeks = dose::weeks(picture);
    if weeks.is_empty() {
        return;
    }
    lines.line(&terms.plain("report-soap-by-day-shown"));
    let names = terms.weekdays();
    for (monday, days) in weeks {
        let cell = |(name, day): (&String, &Option<progress::DayGiven>)| {
            let told = day.map_or_else(|| "-".to_owned(), |day| dose::cell(day.minutes, day.repetitions));
            format!("{name} {told:<6}")
        };
        let cells: Vec<String> = names.iter().zip(&days).map(cell).collect();
        // Columns, not sentences: never wrapped, and at most 97 characters.
        lines.0.push(format!("{monday}  {}", cells.join(" ")).trim_end().to_owned());
    }
}

/// What the charted measures tell, each with the smallest change that counts; gives the abbreviations that were explained.
fn measured(lines: &mut Lines, picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let told = measured_lines(picture, terms);
    if told.is_empty() {
        return Vec::new();
    }
    let explained = abbreviations::with_change(&panels::chosen(picture), terms);
    lines.list(&terms.plain("report-soap-measured-shown"), &told);
    explained.iter().for_each(|line| lines.line(line));
    lines.0.extend(front::levels(picture, terms, "report-soap-levels-mixed-shown").map(|line| typed(&line)));
    explained
}

/// A line for each of the charted measures, and what their abbreviations mean.
pub(super) fn explained_lines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let mut told = measured_lines(picture, terms);
    if !told.is_empty() {
        told.extend(abbreviations::with_change(&panels::chosen(picture), terms));
    }
    told
}

/// A line for each of the charted measures.
fn measured_lines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    panels::chosen(picture).into_iter().filter_map(|series| one_measured(series, terms)).collect()
}

fn one_measured(series: &Series, terms: &Terms<'_>) -> Option<String> {
    let last = series.segments.last()?;
    let unit = terms.unit(series.measure, last.conditions.calibration);
    let with_unit = |value: String| {
        if unit.is_empty() { value } else { terms.text("report-value-shown", &[("value", value.into()), ("unit", unit.clone().into())]) }
    };
    let value = |value: f64| with_unit(number(value, series.measure.decimals()));
    let (key, by) = match verdict(last) {
        Verdict::Early => ("report-soap-measure-early-shown", None),
        Verdict::Within(by) => ("report-soap-measure-within-shown", Some(by)),
        Verdict::Beyond(by) => ("report-soap-measure-beyond-shown", Some(by)),
    };
    let change = last.change;
    let given: Vec<(&'static str, Given)> = vec![
        ("name", terms.series(series).into()),
        ("first", last.baseline.as_ref().map(|baseline| value(baseline.median)).unwrap_or_default().into()),
        ("now", change.and_then(|change| change.latest).map(value).unwrap_or_default().into()),
        ("change", by.map(|by| terms.change(series.measure, by)).unwrap_or_default().into()),
        ("mdc", change.map(|change| terms.value(series.measure, change.mdc95)).unwrap_or_default().into()),
    ];
    Some(terms.text(key, &given))
}

/// What a clinician may want to decide. Nothing of it is done by the program.
fn proposals(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let goal = |state: &GoalState| {
        let name = match state.standing {
            Standing::Met => "met",
            Standing::NotMet(_) => "not-met",
            Standing::TooEarly(_) => return None,
        };
        Some(terms.text(&format!("report-propose-goal-{name}-shown"), &[("words", quoted(state, terms).into())]))
    };
    let mut lines: Vec<String> = picture.goals.iter().filter_map(goal).collect();
    // Whoever stopped, or could not swallow well, is not asked for more.
    let well = picture.safety_stops.is_empty() && picture.signs.is_empty();
    let doses = picture.proposed.iter().filter(|dose| well || !dose.is_up());
    lines.extend(doses.map(|step| dose::proposed(step, terms)));
    if !picture.safety_stops.is_empty() {
        lines.push(terms.plain("report-propose-stops-shown"));
    }
    if !picture.signs.is_empty() {
        lines.push(terms.plain("report-propose-signs-shown"));
    }
    let unagreed = events::unsettled(picture, terms);
    if !unagreed.is_empty() {
        lines.push(terms.text("report-propose-agreement-shown", &[("list", unagreed.join(", ").into())]));
    }
    lines
}

fn quoted(state: &GoalState, terms: &Terms<'_>) -> String {
    terms.text("report-soap-quoted-shown", &[("words", goals::words(&state.goal).into())])
}

/// As a keyboard types it: charts often take nothing else. Names and own words keep their letters.
fn typed(text: &str) -> String {
    let one = |c: char| match c {
        '“' | '”' => "\"".to_owned(),
        '‘' | '’' => "'".to_owned(),
        '–' | '—' | '−' | '‐' | '‑' => "-".to_owned(),
        '×' => "x".to_owned(),
        '·' => "*".to_owned(),
        '±' => "+/-".to_owned(),
        '→' => "->".to_owned(),
        '…' => "...".to_owned(),
        '√' => "root of ".to_owned(),
        c if c.is_whitespace() => " ".to_owned(),
        c => c.to_string(),
    };
    text.chars().map(one).collect()
}
