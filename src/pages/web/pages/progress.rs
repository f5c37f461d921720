//! Progress of one client: what was done of what was prescribed, and every measure over time with a table beside its drawing.

use maud::{Markup, PreEscaped, html};

use super::texts::Texts;

/// How much of a day's programme was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayMark {
    /// Before the first practice, or still to come.
    Outside,
    /// Nothing was planned and nothing done.
    Free,
    All,
    Part,
    /// Planned, and nothing done.
    Nothing,
    /// Done without a plan.
    Extra,
}

impl DayMark {
    fn sign(self) -> &'static str {
        match self {
            Self::Outside => "",
            Self::Free => "·",
            Self::All => "●",
            Self::Part => "◐",
            Self::Nothing => "○",
            Self::Extra => "◆",
        }
    }

    fn key(self) -> &'static str {
        match self {
            Self::Outside => "page-day-outside",
            Self::Free => "page-day-free",
            Self::All => "page-day-all",
            Self::Part => "page-day-part",
            Self::Nothing => "page-day-nothing",
            Self::Extra => "page-day-extra",
        }
    }

    /// Those that stand in the legend.
    const TOLD: [Self; 5] = [Self::All, Self::Part, Self::Nothing, Self::Extra, Self::Free];
}

/// One day of the calendar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CalendarDay {
    /// Day of the month.
    pub number: String,
    pub mark: DayMark,
    /// "24 of 30 repetitions"; may be empty.
    pub told: String,
}

/// One exercise and measure.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    pub id: String,
    /// "Long ah: hold time".
    pub title: String,
    /// What can be said of it, sentences.
    pub told: Vec<String>,
    /// As SVG: one for each unit that it was measured in.
    pub charts: Vec<String>,
    pub columns: Vec<String>,
    pub rows: Vec<Vec<String>>,
    /// Where it is broken and why; why values count in no figure; conditions.
    pub notes: Vec<String>,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ProgressView {
    pub clients: Vec<String>,
    pub client: Option<String>,
    /// "12 weeks, 2 September to 24 November 2026".
    pub window: String,
    /// Other lengths: address, label, chosen.
    pub lengths: Vec<(String, String, bool)>,
    pub adherence: Vec<String>,
    /// By week: its Monday in words, seven days, done over prescribed.
    pub calendar: Vec<(String, Vec<CalendarDay>, String)>,
    /// Goals and how each stands, sentences; and how they are judged.
    pub goals: Vec<String>,
    pub goals_rule: String,
    pub series: Vec<Series>,
    /// What the units on the page mean, a line each.
    pub abbreviations: Vec<String>,
    /// Stops, steps left out, changes of the programme: heading and sentences.
    pub lists: Vec<(String, Vec<String>)>,
    /// Reports and exports: address and label.
    pub files: Vec<(String, String)>,
    /// What can be ticked for a letter: name and label; and what goes with it, name and value.
    pub letter_parts: Vec<(String, String)>,
    pub letter_of: Vec<(&'static str, String)>,
    /// A letter can be had as PDF.
    pub letter_pdf: bool,
}

/// The page.
#[must_use]
pub fn progress(texts: Texts<'_>, view: &ProgressView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-progress")) }
        (super::history::whose(texts, "/progress", &view.clients, view.client.as_deref(), false))
        @if view.client.is_none() {
            p class="lead" { (texts.s("page-progress-nobody")) }
        } @else {
            p class="lead" { @if view.clients.is_empty() { @if let Some(client) = &view.client { (client) " · " } } (view.window) }
            @if !view.lengths.is_empty() {
                nav class="whose" aria-label=(texts.s("page-progress-lengths")) {
                    ul class="choose" { @for (path, label, chosen) in &view.lengths { li { a href=(path) aria-current=[chosen.then_some("true")] { (label) } } } }
                }
            }
            @if !view.goals.is_empty() {
                h2 { (texts.s("page-progress-goals")) }
                ul { @for sentence in &view.goals { li { (sentence) } } }
                p class="hint" { (view.goals_rule) }
            }
            h2 { (texts.s("page-progress-adherence")) }
            @for sentence in &view.adherence { p { (sentence) } }
            (calendar(texts, view))
            @if view.series.is_empty() { p { (texts.s("page-progress-none")) } }
            div class="charts" { @for one in &view.series { (series(texts, one)) } }
            @for (heading, sentences) in &view.lists {
                @if !sentences.is_empty() {
                    h2 { (heading) }
                    ul { @for sentence in sentences { li { (sentence) } } }
                }
            }
            @for line in &view.abbreviations { p class="hint" { (line) } }
            @if !view.files.is_empty() {
                h2 { (texts.s("page-progress-files")) }
                ul class="choose" { @for (path, label) in &view.files { li { a href=(path) { (label) } } } }
            }
            @if !view.letter_parts.is_empty() { (letter(texts, view)) }
            p class="hint" { (texts.s("page-progress-foot")) }
        }
    }
}

/// What a letter tells: only what is ticked.
fn letter(texts: Texts<'_>, view: &ProgressView) -> Markup {
    html! {
        details {
            summary { (texts.s("page-letter")) }
            form action="/file" {
                @for (name, value) in &view.letter_of { input type="hidden" name=(name) value=(value); }
                fieldset {
                    legend { (texts.s("page-letter-parts")) }
                    @for (name, label) in &view.letter_parts {
                        div class="check" {
                            input type="checkbox" id=(format!("part-{name}")) name=(format!("part-{name}")) value="1" checked;
                            label for=(format!("part-{name}")) { (label) }
                        }
                    }
                }
                @if view.letter_pdf { button name="kind" value="letter-pdf" { (texts.s("page-letter-pdf")) } }
                " "
                button name="kind" value="letter-html" { (texts.s("page-letter-html")) }
            }
        }
    }
}

/// So many weeks are seen at once; the others can be opened.
const WEEKS_SHOWN: usize = 6;

fn calendar(texts: Texts<'_>, view: &ProgressView) -> Markup {
    let (shown, earlier) = view.calendar.split_at(WEEKS_SHOWN.min(view.calendar.len()));
    html! {
        @if !shown.is_empty() {
            (weeks(texts, &texts.s("page-progress-calendar"), shown))
            p class="legend" { @for mark in DayMark::TOLD { span { span aria-hidden="true" { (mark.sign()) } " " (texts.s(mark.key())) } " " } }
        }
        @if !earlier.is_empty() {
            details { summary { (texts.s("page-progress-earlier")) } (weeks(texts, &texts.s("page-progress-earlier"), earlier)) }
        }
    }
}

fn weeks(texts: Texts<'_>, name: &str, weeks: &[(String, Vec<CalendarDay>, String)]) -> Markup {
    html! {
        div class="table" tabindex="0" role="region" aria-label=(name) {
            table class="calendar" {
                caption class="unseen" { (name) }
                thead { tr {
                    th scope="col" { (texts.s("page-progress-week")) }
                    @for day in routine::Weekday::ALL { th scope="col" { (texts.s(&format!("page-short-{}", day.name()))) } }
                    th scope="col" { (texts.s("page-progress-share")) }
                } }
                tbody {
                    @for (week, days, share) in weeks {
                        tr {
                            th scope="row" { (week) }
                            @for day in days {
                                td {
                                    @if day.mark != DayMark::Outside {
                                        span class="day" { (day.number) }
                                        " " span class="sign" aria-hidden="true" { (day.mark.sign()) }
                                        span class="unseen" { " " (texts.s(day.mark.key())) @if !day.told.is_empty() { ", " (day.told) } }
                                    }
                                }
                            }
                            td { (share) }
                        }
                    }
                }
            }
        }
    }
}

fn series(texts: Texts<'_>, one: &Series) -> Markup {
    html! {
        section class="series" aria-labelledby=(one.id) {
            h2 id=(one.id) { (one.title) }
            @for sentence in &one.told { p { (sentence) } }
            @for svg in &one.charts { (PreEscaped(svg)) }
            @if !one.notes.is_empty() { ul class="hint" { @for note in &one.notes { li { (note) } } } }
            details {
                summary { (texts.s("page-progress-table")) span class="unseen" { " " (one.title) } }
                div class="table" tabindex="0" role="region" aria-label=(texts.text("page-progress-table-of", "title", &one.title)) {
                    table {
                        caption class="unseen" { (one.title) }
                        thead { tr { @for column in &one.columns { th scope="col" { (column) } } } }
                        tbody {
                            @for row in &one.rows {
                                tr { @for (n, cell) in row.iter().enumerate() { @if n == 0 { th scope="row" { (cell) } } @else { td { (cell) } } } }
                            }
                        }
                    }
                }
            }
        }
    }
}
