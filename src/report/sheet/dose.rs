//! What was practised, in minutes and repetitions: by day, by group of exercises; and the help that was given.

use jiff::civil::Date;

use super::table::Table;
use super::terms::{Given, Terms};
use crate::number::number;
use progress::{DayGiven, GroupGiven, Picture, ProposedDose, Window};

/// A week of days, from Monday; none for a day without practice.
pub(super) type Week = (Date, Vec<Option<DayGiven>>);

/// The weeks from the first practice in the window to its end.
pub(super) fn weeks(picture: &Picture) -> Vec<Week> {
    let days = &picture.given.days;
    let Some(first) = days.first() else { return Vec::new() };
    let after = |day: Date, n: i64| day.checked_add(jiff::Span::new().days(n)).ok();
    let week = |monday: Date| {
        let day = |n: i64| after(monday, n).and_then(|date| days.iter().find(|given| given.day == date).copied());
        (monday, (0..7).map(day).collect())
    };
    let mondays = std::iter::successors(Some(Window::weeks(first.day, 1).from), |monday| after(*monday, 7));
    mondays.take_while(|monday| *monday <= picture.window.to).map(week).collect()
}

/// Minutes and repetitions of some days together.
pub(super) fn sum<'a>(days: impl Iterator<Item = &'a DayGiven>) -> (f64, u32) {
    days.fold((0.0, 0), |(minutes, repetitions), day| (minutes + day.minutes, repetitions.saturating_add(day.repetitions)))
}

/// "17/31"
pub(super) fn cell(minutes: f64, repetitions: u32) -> String {
    format!("{}/{repetitions}", number(minutes, 0))
}

/// A row for each week, a column for each day.
pub(super) fn by_day(picture: &Picture, terms: &Terms<'_>) -> Option<Table> {
    let none = || terms.plain("report-cell-none-shown");
    let row = |(monday, days): &Week| {
        let (minutes, repetitions) = sum(days.iter().flatten());
        let cells = days.iter().map(|day| day.map_or_else(none, |day| cell(day.minutes, day.repetitions)));
        std::iter::once(terms.date(*monday)).chain(cells).chain([cell(minutes, repetitions)]).collect()
    };
    let rows: Vec<Vec<String>> = weeks(picture).iter().map(row).collect();
    let head = [vec![terms.plain("report-head-week-shown")], terms.weekdays(), vec![terms.plain("report-head-sum-shown")]].concat();
    (!rows.is_empty()).then(|| Table {
        title: terms.plain("report-table-by-day-shown"),
        note: terms.plain("report-table-by-day-note-shown"),
        grows: vec![true; head.len()],
        head,
        rows,
        wraps: false,
    })
}

/// A row for each group of exercises.
pub(super) fn by_group(picture: &Picture, terms: &Terms<'_>) -> Option<Table> {
    let row =
        |given: &GroupGiven| vec![group(given, terms), number(given.minutes, 0), given.repetitions.to_string(), given.days.to_string()];
    let rows: Vec<Vec<String>> = picture.given.groups.iter().map(row).collect();
    let head: Vec<String> =
        ["group", "minutes", "repetitions", "days"].iter().map(|head| terms.plain(&format!("report-head-{head}-shown"))).collect();
    (!rows.is_empty()).then(|| Table {
        title: terms.plain("report-table-by-group-shown"),
        note: terms.plain("report-table-by-group-note-shown"),
        grows: (0..head.len()).map(|n| n == 0).collect(),
        head,
        rows,
        wraps: false,
    })
}

/// "Voice: 84 min, 120 repetitions, on 12 days", a line for each group of exercises.
pub(super) fn group_lines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let line = |given: &GroupGiven| {
        let all: [(&'static str, Given); 4] = [
            ("group", group(given, terms).into()),
            ("minutes", number(given.minutes, 0).into()),
            ("repetitions", given.repetitions.into()),
            ("days", given.days.into()),
        ];
        terms.text("report-soap-group-shown", &all)
    };
    picture.given.groups.iter().map(line).collect()
}

/// The group's name in the catalogue.
pub(super) fn group(given: &GroupGiven, terms: &Terms<'_>) -> String {
    given.group.map_or_else(|| terms.plain("report-group-other-shown"), str::to_owned)
}

/// What help the journal knows of, and what it does not know.
pub(super) fn cueing(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    if picture.practices.is_empty() {
        return Vec::new();
    }
    let cueing = &picture.cueing;
    let mut lines = Vec::new();
    if cueing.questions() > 0 {
        let given = [
            ("n", cueing.questions().into()),
            ("alone", cueing.answered_alone.into()),
            ("hinted", cueing.answered_with_hint.into()),
            ("rest", cueing.not_answered.into()),
        ];
        lines.push(terms.text("report-cueing-questions-shown", &given));
    }
    lines.push(terms.text("report-cueing-again-shown", &[("n", cueing.asked_again.into())]));
    lines.push(terms.text("report-cueing-no-answer-shown", &[("n", cueing.no_answer.into())]));
    lines.push(terms.plain("report-cueing-led-shown"));
    lines.push(terms.plain("report-cueing-carer-shown"));
    lines
}

/// "Long ah: 9 of the last 10 reached 12 s. A longer goal?"
pub(super) fn proposed(dose: &ProposedDose, terms: &Terms<'_>) -> String {
    let given = [
        ("exercise", terms.exercise(&dose.exercise).into()),
        ("reached", dose.reached.into()),
        ("of", dose.of.into()),
        ("target", number(dose.target_s, 0).into()),
    ];
    terms.text(if dose.is_up() { "report-propose-longer-shown" } else { "report-propose-shorter-shown" }, &given)
}
