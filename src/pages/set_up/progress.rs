//! The page of progress, from the picture that the arithmetic draws.

use jiff::civil::Date;

use crate::set_up::fields::Fields;
use crate::set_up::reports::letter_parts;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use crate::web::pages::{CalendarDay, DayMark, ProgressView, Series, progress};
use files::reports::{abbreviation_lines, goal_lines};
use progress::{DayAdherence, Measure, Picture, PlanBasis, ProgrammeChange, ProgrammeItem, Series as Measured, Window};
use report::{PageWords, by_scale, is_relative, page_chart};
use session::Arg;

const HERE: &str = "/progress";
/// Weeks to choose from; 0: all.
const LENGTHS: [u32; 4] = [4, 12, 26, 0];
const USUAL_WEEKS: u32 = 12;

/// `GET /progress?client=&weeks=`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let mut view = ProgressView::default();
    if let Some(store) = site.store()? {
        let clients = store.clients()?;
        let asked = query.get("client").filter(|client| clients.iter().any(|known| known == client)).map(str::to_owned);
        view.client = asked.or_else(|| if clients.len() == 1 { clients.first().cloned() } else { None });
        if let Some(client) = view.client.clone() {
            let today = site.today();
            let weeks = query.text("weeks").parse::<u32>().ok().filter(|weeks| LENGTHS.contains(weeks)).unwrap_or(USUAL_WEEKS);
            let practised = store.practised(&client, today)?;
            let window = if weeks == 0 { Window::all(&practised, today) } else { Window::weeks(today, weeks) };
            fill(site, &mut view, &Picture::of(&practised, window), (&client, weeks), today);
        }
        // One alone is not chosen.
        if clients.len() > 1 {
            view.clients = clients;
        }
    }
    let main = site.with_texts(|texts| progress(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-progress"), main })
}

fn day_text(day: Date) -> String {
    day.strftime("%-d %B %Y").to_string()
}

fn short(day: Date) -> String {
    day.strftime("%-d %b").to_string()
}

fn fill(site: &Site, view: &mut ProgressView, picture: &Picture, (client, weeks): (&str, u32), today: Date) {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    view.window = say(
        "page-progress-window",
        vec![("from", Arg::Text(day_text(picture.window.from))), ("to", Arg::Text(day_text(picture.window.to)))],
    );
    let client_encoded = encoded(client);
    view.lengths = LENGTHS
        .iter()
        .map(|length| {
            let label = if *length == 0 {
                say("page-progress-all", Vec::new())
            } else {
                say("page-progress-weeks", vec![("n", Arg::Number(f64::from(*length)))])
            };
            (format!("{HERE}?client={client_encoded}&weeks={length}"), label, *length == weeks)
        })
        .collect();
    view.files = crate::set_up::reports::links(site, Some(client), (weeks > 0).then_some(weeks));
    view.letter_parts = letter_parts(site).into_iter().map(|(name, label)| (name.to_owned(), label)).collect();
    view.letter_of = vec![("client", client.to_owned()), ("weeks", if weeks > 0 { weeks.to_string() } else { String::new() })];
    view.letter_pdf = files::pdf::MADE;
    view.adherence = adherence_told(site, picture);
    view.calendar = calendar(site, picture, today);
    // Figures of voice quality are for the clinician's page, which the report is.
    let drawn = drawn_weeks(picture);
    view.series =
        picture.series.iter().filter(|series| !series.measure.is_quality()).filter_map(|series| series_view(site, series, drawn)).collect();
    if !picture.goals.is_empty() {
        let goals = goal_lines(&picture.goals, &site.words);
        (view.goals, view.goals_rule) = (goals.lines, goals.rule);
    }
    let shown: Vec<&Measured> = picture.series.iter().filter(|series| !series.measure.is_quality()).collect();
    view.abbreviations = abbreviation_lines(&shown, &site.words);
    view.lists = lists(site, picture);
}

fn percent(share: f64) -> Arg {
    Arg::Text(format!("{:.0}", share * 100.0))
}

/// What was done of what was prescribed, sentences.
pub fn adherence_told(site: &Site, picture: &Picture) -> Vec<String> {
    let adherence = &picture.adherence;
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let count = |n: u32| Arg::Number(f64::from(n));
    let practices = picture.practices.len() as f64;
    let mut told = vec![say("page-progress-practices", vec![("n", Arg::Number(practices))])];
    match adherence.share() {
        Some(share) => told.push(say(
            "page-progress-done",
            vec![("done", count(adherence.done)), ("of", count(adherence.prescribed)), ("percent", percent(share))],
        )),
        None => told.push(say("page-progress-nothing-prescribed", Vec::new())),
    }
    if adherence.extra > 0 {
        told.push(say("page-progress-extra", vec![("n", count(adherence.extra))]));
    }
    if adherence.days.iter().any(|day| day.basis == PlanBasis::PractisedOnly) {
        told.push(say("page-progress-no-plan", Vec::new()));
    }
    told
}

fn mark(day: &DayAdherence) -> DayMark {
    match (day.planned > 0 || day.prescribed > 0, day.practices > 0) {
        (false, false) => DayMark::Free,
        (false, true) => DayMark::Extra,
        (true, false) if day.open => DayMark::Outside,
        (true, false) => DayMark::Nothing,
        (true, true) if day.done >= day.prescribed => DayMark::All,
        (true, true) => DayMark::Part,
    }
}

fn calendar(site: &Site, picture: &Picture, today: Date) -> Vec<(String, Vec<CalendarDay>, String)> {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let count = |n: u32| Arg::Number(f64::from(n));
    let week = |week: &progress::WeekAdherence| {
        let days = (0..7)
            .filter_map(|n| week.monday.checked_add(jiff::Span::new().days(n)).ok())
            .map(|date| {
                let day = picture.adherence.days.iter().find(|day| day.day == date).filter(|_| date <= today);
                CalendarDay {
                    number: date.day().to_string(),
                    mark: day.map_or(DayMark::Outside, mark),
                    told: day.filter(|day| day.prescribed > 0).map_or(String::new(), |day| {
                        say("page-progress-day", vec![("done", count(day.done)), ("of", count(day.prescribed))])
                    }),
                }
            })
            .collect();
        let share = week.share().map_or_else(|| "–".to_owned(), |share| format!("{:.0} %", share * 100.0));
        (short(week.monday), days, share)
    };
    // The newest week first: it is what is looked for.
    picture.adherence.weeks.iter().rev().map(week).collect()
}

/// The weeks of the charts, from a Monday on; where practice began later, from the week in which it began, as in the report.
fn drawn_weeks(picture: &Picture) -> Window {
    let monday = |day: Date| Window::weeks(day, 1).from;
    let asked = monday(picture.window.from);
    Window { from: picture.first_day.map_or(asked, |first| asked.max(monday(first))), to: picture.window.to }
}

fn number(value: f64, measure: Measure) -> String {
    format!("{value:.*}", measure.decimals())
}

fn with_unit(value: f64, measure: Measure) -> String {
    format!("{} {}", number(value, measure), measure.unit()).trim_end().to_owned()
}

fn series_view(site: &Site, series: &Measured, drawn: Window) -> Option<Series> {
    series.segments.first()?;
    let measure = series.measure;
    let name = |key: String, plain: &str| if site.words.has(&key) { site.s(&key) } else { plain.to_owned() };
    let title = format!(
        "{}: {}",
        name(format!("ex-{}-name", series.exercise), &series.exercise),
        name(format!("page-measure-{}", measure.id()), measure.id())
    );
    let told = told(site, series);
    let described = format!("{title}. {}", told.join(" "));
    let tick = |day: Date, months: bool| if months { day.strftime("%b %Y").to_string() } else { short(day) };
    let columns = ["page-column-day", "page-column-trials", "page-column-median", "page-column-low", "page-column-high"]
        .map(|key| site.s(key))
        .to_vec();
    let rows = series.segments.iter().flat_map(|segment| &segment.days).rev().map(|day| {
        let all: Vec<String> = day.trials.iter().map(|value| number(*value, measure)).collect();
        let (low, high) =
            day.trials.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(*value), high.max(*value)));
        vec![day_text(day.day), all.join(", "), number(day.median, measure), number(low, measure), number(high, measure)]
    });
    Some(Series {
        id: format!("{}-{}", series.exercise, measure.id()),
        charts: by_scale(series)
            .iter()
            .filter_map(|part| page_chart(drawn, part, &PageWords { described: &described, unit: &unit_of(site, part), tick: &tick }))
            .collect(),
        told,
        title,
        columns,
        rows: rows.collect(),
        notes: notes(site, series),
    })
}

/// The unit of a series that has one.
fn unit_of(site: &Site, series: &Measured) -> String {
    match series.segments.last() {
        Some(last) if series.measure.is_level() => {
            site.s(if is_relative(last.conditions.calibration) { "report-unit-relative-shown" } else { "report-unit-spl-shown" })
        }
        _ => series.measure.unit().to_owned(),
    }
}

/// What can be said of it, of the last stretch alone: others cannot be compared with it.
fn told(site: &Site, series: &Measured) -> Vec<String> {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let measure = series.measure;
    let value = |value: f64| Arg::Text(with_unit(value, measure));
    let mut told = Vec::new();
    let Some(segment) = series.segments.last() else { return told };
    match &segment.baseline {
        Some(baseline) => {
            let args = vec![
                ("median", value(baseline.median)),
                ("low", value(baseline.low)),
                ("high", value(baseline.high)),
                ("days", Arg::Number(f64::from(baseline.days))),
                ("from", Arg::Text(day_text(baseline.from))),
            ];
            told.push(say("page-progress-baseline", args));
        }
        None => told.push(say("page-progress-no-baseline", Vec::new())),
    }
    if let Some(week) = segment.weeks.last() {
        let args = vec![
            ("median", value(week.median)),
            ("monday", Arg::Text(day_text(week.monday))),
            ("trials", Arg::Number(f64::from(week.trials))),
        ];
        told.push(say("page-progress-week-median", args));
    }
    if let Some(slope) = &segment.slope {
        let args = vec![("slope", value(slope.per_week)), ("low", value(slope.interval.low)), ("high", value(slope.interval.high))];
        told.push(say("page-progress-slope", args));
    }
    if let Some(change) = &segment.change {
        told.push(say("page-progress-mdc", vec![("mdc", value(change.mdc95))]));
        if let Some(from_baseline) = change.from_baseline {
            let key = match (change.exceeds_95.unwrap_or(false), from_baseline >= 0.0) {
                (false, _) => "page-progress-within-scatter",
                (true, true) => "page-progress-higher",
                (true, false) => "page-progress-lower",
            };
            told.push(say(key, vec![("change", value(from_baseline.abs()))]));
        }
    }
    told
}

fn notes(site: &Site, series: &Measured) -> Vec<String> {
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let mut notes: Vec<String> = series
        .segments
        .iter()
        .filter_map(|segment| segment.broken_by.as_ref())
        .map(|broken| {
            let why: Vec<String> = broken.reasons.iter().map(progress::BreakReason::words).collect();
            say("page-progress-break", vec![("day", Arg::Text(day_text(broken.after))), ("why", Arg::Text(why.join("; ")))])
        })
        .collect();
    notes.extend(series.discarded.iter().map(|(why, count)| {
        say("page-progress-discarded", vec![("n", Arg::Number(f64::from(*count))), ("why", Arg::Text(why.words().to_owned()))])
    }));
    if let Some(segment) = series.segments.last() {
        let conditions = &segment.conditions;
        let unknown = || site.s("page-figure-none");
        let microphone = conditions.microphone.as_ref().map_or_else(unknown, |microphone| microphone.name.clone());
        if series.measure.is_level() {
            let distance = conditions.distance_cm.map_or_else(unknown, |cm| format!("{cm} cm"));
            let weighting = conditions.level_weighting.clone().map_or_else(unknown, String::from);
            let scale = site.s(&format!(
                "page-scale-{}",
                serde_json::to_value(conditions.calibration).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
            ));
            let args = vec![
                ("weighting", Arg::Text(weighting)),
                ("distance", Arg::Text(distance)),
                ("scale", Arg::Text(scale)),
                ("microphone", Arg::Text(microphone)),
            ];
            notes.push(say("page-progress-conditions", args));
        } else {
            notes.push(say("page-progress-conditions-mic", vec![("microphone", Arg::Text(microphone))]));
        }
    }
    notes
}

fn lists(site: &Site, picture: &Picture) -> Vec<(String, Vec<String>)> {
    let name = |id: &str| {
        let key = format!("ex-{id}-name");
        if site.words.has(&key) { site.s(&key) } else { id.to_owned() }
    };
    let stops = picture.safety_stops.iter().map(|stop| {
        let during = stop.exercise.as_deref().map_or(String::new(), |id| format!(" ({})", name(id)));
        format!("{}: {}{during}", day_text(stop.day), stop.reason)
    });
    let why = |word: &str| crate::set_up::fact_words::why(site, word);
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let count = |n: u32| Arg::Number(f64::from(n));
    let signs = picture.signs.iter().map(|sign| {
        let given = [("what", Arg::Text(why(&sign.sign))), ("yes", count(sign.yes)), ("unsure", count(sign.not_sure))];
        say("report-sign-shown", given.into_iter().chain([("last", Arg::Text(day_text(sign.last)))]).collect())
    });
    let rated = picture.ratings.iter().map(|rated| {
        let of = |name: &str| Arg::Text(site.s(&format!("report-rating-{name}-shown")));
        let args = vec![
            ("what", of(rated.what.name())),
            ("over", of(&format!("of-{}", rated.over.name()))),
            ("median", Arg::Number(rated.median)),
            ("low", count(u32::from(rated.low))),
            ("high", count(u32::from(rated.high))),
            ("latest", count(u32::from(rated.latest))),
            ("last", Arg::Text(day_text(rated.latest_day))),
        ];
        say("page-progress-rated", args)
    });
    let missed = picture.missed_for.iter().map(|missed| {
        let args = vec![("what", Arg::Text(why(&missed.reason))), ("n", count(missed.days)), ("last", Arg::Text(day_text(missed.last)))];
        say("page-progress-missed-for", args)
    });
    let left = picture.left_out.iter().map(|step| format!("{}: {}, {}", day_text(step.day), name(&step.exercise), step.reason));
    let changes = picture.programme.iter().map(|change| changed(site, change, &name));
    vec![
        (site.s("page-progress-stops"), stops.chain(signs).collect()),
        (site.s("page-progress-ratings"), rated.collect()),
        (site.s("page-progress-missed"), missed.collect()),
        (site.s("page-progress-left-out"), left.collect()),
        (site.s("page-progress-programme"), changes.collect()),
    ]
}

fn changed(site: &Site, change: &ProgrammeChange, name: &dyn Fn(&str) -> String) -> String {
    let field = |field: &str| {
        let key = format!("page-field-{field}");
        if site.words.has(&key) { site.s(&key) } else { field.replace('_', " ") }
    };
    let say = |key: &str, args: Vec<(&'static str, Arg)>| site.with_texts(|texts| texts.with(key, args));
    let t = |text: &str| Arg::Text(text.to_owned());
    let item = |item: &ProgrammeItem| match item {
        ProgrammeItem::RoutineBegun { exercises } => say("page-programme-begun", vec![("n", Arg::Number(exercises.len() as f64))]),
        ProgrammeItem::RoutineReplaced { by } => say("page-programme-replaced", vec![("by", t(by))]),
        ProgrammeItem::ExerciseAdded { exercise, dose } => {
            say("page-programme-added", vec![("name", t(&name(exercise))), ("dose", t(dose))])
        }
        ProgrammeItem::ExerciseRemoved { exercise, .. } => say("page-programme-removed", vec![("name", t(&name(exercise)))]),
        ProgrammeItem::DoseChanged { exercise, field: changed, from, to } => {
            say("page-programme-dose", vec![("name", t(&name(exercise))), ("field", t(&field(changed))), ("from", t(from)), ("to", t(to))])
        }
        ProgrammeItem::StageChanged { exercise, to, dose, .. } => {
            say("page-programme-stage", vec![("name", t(&name(exercise))), ("n", Arg::Number(f64::from(*to))), ("dose", t(dose))])
        }
        ProgrammeItem::OrderChanged => say("page-programme-order", Vec::new()),
        ProgrammeItem::PlanChanged { from, to } => say("page-programme-plan", vec![("from", t(from)), ("to", t(to))]),
        ProgrammeItem::SettingChanged { field: changed, from, to } => {
            say("page-programme-setting", vec![("field", t(&field(changed))), ("from", t(from)), ("to", t(to))])
        }
    };
    let items: Vec<String> = change.items.iter().map(item).collect();
    format!("{}, {}: {}", day_text(change.day), change.routine_title, items.join("; "))
}
