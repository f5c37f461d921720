//! The pages of a clinic's caseload, where a clinic database is at hand.

use jiff::ZonedDateTime;

use crate::set_up::fields::Fields;
use crate::set_up::history::when_day;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::pages::{CaseRow, CaseloadView, FaultTold, Field, Kind, ReasonTold, SheetTable, SheetView, caseload, sheet};
use clinic::{Attention, ClientSheet, Clinic, ClinicError, Digest, MeasureRow, ReasonKind, Standing, reason_text};
use files::clinic_words::{event_words, known};
use progress::Measure;
use session::Arg;

/// The entry in the list of pages.
pub const HERE: &str = "/caseload";
/// Clients on one page.
const A_PAGE: usize = 20;
/// A note to the other desks is no letter.
const LONGEST_NOTE: usize = 300;

impl From<ClinicError> for PageError {
    fn from(error: ClinicError) -> Self {
        let status = if matches!(error, ClinicError::Client(_) | ClinicError::Absent { .. }) {
            axum::http::StatusCode::NOT_FOUND
        } else {
            axum::http::StatusCode::INTERNAL_SERVER_ERROR
        };
        Self { status, what: error.to_string() }
    }
}

fn open(site: &Site) -> Result<Clinic, PageError> {
    let address = site.place.clinic.as_ref().ok_or_else(|| PageError::none(site.s("page-caseload-none")))?;
    Ok(Clinic::open_existing(address)?)
}

/// How many clients need attention, a sentence; none where there is no clinic.
///
/// # Errors
/// The database is named and cannot be used.
pub fn needing(site: &Site) -> Result<Option<String>, PageError> {
    if site.place.clinic.is_none() {
        return Ok(None);
    }
    let standings = open(site)?.caseload(site.today(), None)?;
    Ok(Some(lead(site, &standings)))
}

fn lead(site: &Site, standings: &[Standing]) -> String {
    let number = |n: usize| Arg::Number(n as f64);
    let needing = standings.iter().filter(|standing| !standing.attention.reasons.is_empty()).count();
    let args = vec![("day", Arg::Text(when_day(site.today()))), ("n", number(needing)), ("of", number(standings.len()))];
    site.with_texts(|texts| texts.with("page-caseload-lead", args))
}

/// `GET /caseload?why=&all=&skip=`
pub fn list(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let mut clinic = open(site)?;
    let today = site.today();
    let why = ReasonKind::of_word(query.text("why"));
    let all = why.is_none() && query.text("all") == "yes";
    let standings = clinic.caseload(today, None)?;
    let needing = standings.iter().filter(|standing| !standing.attention.reasons.is_empty()).count();
    let chosen: Vec<&Standing> = standings
        .iter()
        .filter(|standing| all || standing.attention.reasons.iter().any(|reason| why.is_none_or(|why| reason.kind() == why)))
        .collect();
    let skip = query.text("skip").parse::<usize>().unwrap_or(0).min(chosen.len().saturating_sub(1));
    let skip = skip - skip % A_PAGE;
    let rows: Vec<CaseRow> =
        chosen.iter().skip(skip).take(A_PAGE).map(|standing| row(site, &standing.digest, &standing.attention)).collect();
    let own = match (all, why) {
        (true, _) => format!("{HERE}?all=yes&"),
        (false, Some(why)) => format!("{HERE}?why={}&", why.word()),
        (false, None) => format!("{HERE}?"),
    };
    let number = |n: usize| Arg::Number(n as f64);
    let view = CaseloadView {
        lead: lead(site, &standings),
        place: clinic.place().to_owned(),
        choices: choices(site, &standings, needing, (all, why)),
        range: site.with_texts(|texts| {
            texts.with(
                "page-caseload-range",
                vec![("from", number(skip + 1)), ("to", number(skip + rows.len())), ("of", number(chosen.len()))],
            )
        }),
        before: (skip > 0).then(|| format!("{own}skip={}", skip.saturating_sub(A_PAGE))),
        behind: (skip + A_PAGE < chosen.len()).then(|| format!("{own}skip={}", skip + A_PAGE)),
        rows,
    };
    let main = site.with_texts(|texts| caseload(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-caseload"), main })
}

/// Those who need attention, those with one reason each, everybody.
fn choices(site: &Site, standings: &[Standing], needing: usize, (all, why): (bool, Option<ReasonKind>)) -> Vec<(String, String, bool)> {
    let counted = |label: String, count: usize| format!("{label} ({count})");
    let mut choices = vec![(HERE.to_owned(), counted(site.s("page-caseload-needing"), needing), !all && why.is_none())];
    for kind in ReasonKind::ALL {
        let count = standings.iter().filter(|standing| standing.attention.reasons.iter().any(|reason| reason.kind() == kind)).count();
        if count > 0 || why == Some(kind) {
            choices.push((format!("{HERE}?why={}", kind.word()), counted(kind_text(site, kind), count), why == Some(kind)));
        }
    }
    choices.push((format!("{HERE}?all=yes"), counted(site.s("page-everybody"), standings.len()), all));
    choices
}

fn kind_text(site: &Site, kind: ReasonKind) -> String {
    site.s(&format!("page-reason-{}", kind.word()))
}

fn row(site: &Site, digest: &Digest, attention: &Attention) -> CaseRow {
    CaseRow {
        path: format!("{HERE}/client?number={}", digest.client),
        name: digest.name.clone(),
        desk: digest.desk.clone(),
        reasons: attention
            .reasons
            .iter()
            .map(|reason| ReasonTold { kind: kind_text(site, reason.kind()), told: in_names(site, &reason_text(reason)) })
            .collect(),
        known: known(digest),
    }
}

/// Exercises as they are called everywhere else on the pages; the database keeps their ids.
fn in_names(site: &Site, text: &str) -> String {
    let id = |c: char| c.is_ascii_lowercase() || c == '-';
    let mut told = String::new();
    let mut rest = text;
    while let Some(at) = rest.find(id) {
        let (before, from) = rest.split_at(at);
        let (word, after) = from.split_at(from.find(|c| !id(c)).unwrap_or(from.len()));
        told += before;
        let known = word.contains('-') && routine::find(word).is_some();
        told += &if known { site.words.exercise(word) } else { word.to_owned() };
        rest = after;
    }
    told + rest
}

/// `GET /caseload/client?number=`
pub fn client(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    page(site, query, None)
}

fn page(site: &Site, typed: &Fields, fault: Option<String>) -> Result<Shown, PageError> {
    let number = typed.text("number").parse::<i64>().map_err(|_| PageError::none(site.s("page-caseload-no-client")))?;
    let mut clinic = open(site)?;
    let all = clinic.sheet(number, site.today())?;
    let needing = clinic.caseload(site.today(), None)?;
    let needing = needing.iter().filter(|standing| !standing.attention.reasons.is_empty());
    let mut note = Field::new("note", site.s("page-caseload-note"), Kind::Line, typed.text("note")).hint(site.s("page-caseload-note-hint"));
    note.faults.extend(fault.clone().map(FaultTold::short));
    let view = SheetView {
        row: row(site, &all.digest, &all.attention),
        others: needing.take(A_PAGE).map(|standing| row(site, &standing.digest, &standing.attention)).collect(),
        number,
        shown: shown(&all),
        notice: (typed.text("told") == "seen").then(|| site.s("page-caseload-told-seen")),
        faults: fault.into_iter().map(|fault| (Some("note".to_owned()), FaultTold::short(fault))).collect(),
        to: site.to("/caseload/client"),
        note,
        tables: tables(site, &all),
    };
    let main = site.with_texts(|texts| sheet(texts, &view));
    Ok(Shown::Page { here: HERE, title: all.digest.name.clone(), main })
}

/// What a sheet rests on: with new results it is another.
fn shown(all: &ClientSheet) -> String {
    let unseen = all.events.iter().filter(|(_, seen)| !seen).count();
    format!("{}-{}-{unseen}", all.digest.sessions, all.digest.trials)
}

/// `POST /caseload/client`
pub fn act(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let note = form.text("note").trim();
    if note.chars().count() > LONGEST_NOTE {
        let fault = site.with_texts(|texts| texts.number("page-caseload-note-long", "n", LONGEST_NOTE as f64));
        return page(site, form, Some(fault));
    }
    let number = form.text("number").parse::<i64>().map_err(|_| PageError::none(site.s("page-caseload-no-client")))?;
    if form.text("do") != "seen" {
        return Err(PageError::bad(site.s("page-no-such-button")));
    }
    let mut clinic = open(site)?;
    let client = clinic.client(&format!("#{number}"))?;
    // Another desk may have taken in results since this page was made: nobody has looked at those.
    if form.text("shown") != shown(&clinic.sheet(client, site.today())?) {
        return page(site, form, Some(site.s("page-caseload-news")));
    }
    clinic.seen(client, &ZonedDateTime::now(), (!note.is_empty()).then_some(note))?;
    Ok(Shown::To(format!("{HERE}/client?number={number}&told=seen")))
}

fn table(site: &Site, key: &str, columns: &[&str], rows: Vec<Vec<String>>) -> SheetTable {
    let hint = format!("{key}-hint");
    SheetTable {
        title: site.s(key),
        hint: if site.words.has(&hint) { site.s(&hint) } else { String::new() },
        columns: columns.iter().map(|column| site.s(column)).collect(),
        rows,
    }
}

fn tables(site: &Site, all: &ClientSheet) -> Vec<SheetTable> {
    let none = || site.s("page-figure-none");
    let yes_no = |seen: bool| site.s(if seen { "page-caseload-event-seen" } else { "page-caseload-event-new" });
    let events = all
        .events
        .iter()
        .map(|(event, seen)| {
            vec![
                event.day.to_string(),
                event_words(event, event.exercise.as_deref().map(|id| site.words.exercise(id)).as_deref()),
                yes_no(*seen),
            ]
        })
        .collect();
    // The newest first: it is what is looked for.
    let days = all.days.iter().rev().map(|day| {
        let percent = day.share().percent().map_or_else(none, |percent| format!("{percent} %"));
        vec![day.day.to_string(), percent, format!("{} / {}", day.counted, day.prescribed), day.sessions.to_string()]
    });
    let practices = all.sessions.iter().map(|session| {
        vec![
            session.started_at.strftime("%Y-%m-%d %H:%M").to_string(),
            session.routine.clone(),
            format!("{} / {}", session.steps_done, session.steps_prescribed),
            format!("{:.0} min", session.practised_s / 60.0),
            if session.discarded > 0 {
                format!("{} ({} {})", session.trials, session.discarded, site.s("page-caseload-discarded"))
            } else {
                session.trials.to_string()
            },
            session.end_reason.clone().unwrap_or_else(|| site.s("page-end-interrupted")),
        ]
    });
    let looks = all.looks.iter().map(|look| vec![look.at.strftime("%Y-%m-%d %H:%M").to_string(), look.note.clone().unwrap_or_default()]);
    let days_key = if all.digest.planned { "page-caseload-days" } else { "page-caseload-days-begun" };
    vec![
        table(site, "page-caseload-events", &["page-column-day", "page-caseload-event", "page-caseload-event-state"], events),
        table(site, "page-caseload-measures", &MEASURE_COLUMNS, all.measures.iter().map(|row| measure_row(site, row)).collect()),
        table(site, days_key, &["page-column-day", "page-caseload-share", "page-caseload-reps", "page-caseload-practices"], days.collect()),
        table(
            site,
            "page-caseload-sessions",
            &[
                "page-history-when",
                "page-history-routine",
                "page-history-done",
                "page-history-length",
                "page-column-trials",
                "page-history-ended",
            ],
            practices.collect(),
        ),
        table(site, "page-caseload-looks", &["page-history-when", "page-caseload-note"], looks.collect()),
    ]
}

const MEASURE_COLUMNS: [&str; 6] = [
    "page-caseload-measure",
    "page-caseload-baseline",
    "page-caseload-latest",
    "page-caseload-smallest",
    "page-caseload-verdict",
    "page-caseload-conditions",
];

fn measure_row(site: &Site, row: &MeasureRow) -> Vec<String> {
    let name = |key: String, plain: &str| if site.words.has(&key) { site.s(&key) } else { plain.to_owned() };
    let measure = Measure::of_id(&row.measure);
    let figure = |value: Option<f64>| {
        let (decimals, unit) = measure.map_or((2, ""), |measure| (measure.decimals(), measure.unit()));
        value.map_or_else(|| site.s("page-figure-none"), |value| format!("{value:.decimals$} {unit}").trim_end().to_owned())
    };
    let of_trials = site.with_texts(|texts| texts.number("page-caseload-trials", "n", f64::from(row.trials)));
    let conditions = format!("{of_trials}, {} – {}", row.since, row.until);
    vec![
        format!("{}: {}", site.words.exercise(&row.exercise), name(format!("page-measure-{}", row.measure), &row.measure)),
        figure(row.baseline),
        figure(row.latest),
        row.smallest_change.map_or_else(|| site.s("page-figure-none"), |change| format!("± {}", figure(Some(change)))),
        if row.latest.is_some() { name(format!("page-verdict-{}", row.verdict), &row.verdict) } else { site.s("page-verdict-unknown") },
        if row.label.is_empty() { conditions } else { format!("{conditions}; {}", row.label) },
    ]
}
