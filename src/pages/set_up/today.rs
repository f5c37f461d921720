//! Today: what can be practised, by whom, what is planned and done, and what stands in the way.

use jiff::civil::Weekday as CivilDay;

use super::{caseload, household, start};
use crate::set_up::fields::Fields;
use crate::set_up::history::{clock, when_day};
use crate::set_up::routines::{length_of, read_of_household};
use crate::set_up::site::{PageError, Shown, Site};
use crate::set_up::starting::{NotBegun, Wish};
use crate::web::pages::{Hindrance, Standing, Startable, TodayView, today};
use record::SessionSummary;
use routine::{PlannedTime, Weekday, check_text};
use session::Arg;

const HERE: &str = "/today";
/// A client has no more practices on one day than these.
const A_DAY: u32 = 24;
/// Whose practice it is where neither household nor routine says.
const NOBODY: &str = "client";

/// `GET /today`
pub fn show(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let read = household::read(site);
    let residents = read.clone().unwrap_or_default();
    let (mut own, mut others) = (Vec::new(), Vec::new());
    for name in residents.names() {
        for file in residents.files_of(&name) {
            own.push(startable(site, Some(&name), &file)?);
        }
    }
    // What is due comes first, and in its order otherwise.
    own.sort_by_key(|(minute, one)| (!one.due, *minute));
    for file in site.routines.names().into_iter().filter(|file| residents.who_practises(file).is_empty()) {
        others.push(startable(site, None, &file)?.1);
    }
    let items = start::items(site)?;
    let missing = items.into_iter().filter(|item| item.standing == Standing::Missing);
    let mut hindrances: Vec<Hindrance> = missing.map(|item| Hindrance { path: item.path, label: item.label, told: item.told }).collect();
    if let Err(why) = read {
        hindrances.insert(0, Hindrance { path: "/routines".into(), label: site.s("page-nav-routines"), told: why });
    }
    if site.lexicon().is_none() {
        hindrances.insert(0, Hindrance { path: "/setup".into(), label: site.s("page-nav-setup"), told: site.s("page-no-model") });
    }
    let may_start = site.starts.is_open();
    let view = TodayView {
        day: when_day(site.today()),
        notice: (query.text("told") == "over").then(|| site.s("page-today-over")),
        own: own.into_iter().map(|(_, one)| one).collect(),
        others,
        hindrances,
        caseload: caseload::needing(site)?,
        to: may_start.then(|| site.to("/start")),
        how: site.s(if may_start { "page-today-how" } else { "page-today-how-else" }),
    };
    let main = site.with_texts(|texts| today(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-today"), main })
}

/// One routine with the minute of the day that it is planned for, if it is.
fn startable(site: &Site, person: Option<&str>, file: &str) -> Result<(u16, Startable), PageError> {
    let linked = site.routines.names().iter().any(|name| name == file);
    let base = Startable {
        title: file.trim_end_matches(".toml").to_owned(),
        client: person.unwrap_or_default().to_owned(),
        file: file.to_owned(),
        linked,
        faulty: true,
        ..Startable::default()
    };
    let text = match read_of_household(site, file) {
        Ok(text) => text,
        Err(why) => return Ok((u16::MAX, Startable { about: why, ..base })),
    };
    let checked = site.with_hearing(|hearing| check_text(file, &text, hearing));
    let prescription = match checked {
        Ok(prescription) => prescription,
        Err(faults) => {
            let about = site.with_texts(|texts| texts.number("page-routines-faults", "n", faults.list.len() as f64));
            return Ok((u16::MAX, Startable { about, ..base }));
        }
    };
    let client = person.map_or_else(|| prescription.client.clone().unwrap_or_else(|| NOBODY.to_owned()), str::to_owned);
    let title = prescription.routine.title.clone();
    let done = done_today(site, &client, &title)?;
    let (minute, when, planned) = planned(site, &prescription.plan);
    let one = Startable {
        about: length_of(site, &prescription),
        due: planned && done.is_empty(),
        faulty: false,
        title,
        client,
        when,
        done,
        ..base
    };
    Ok((minute, one))
}

/// What was done of this routine today, a sentence for each practice.
fn done_today(site: &Site, client: &str, title: &str) -> Result<Vec<String>, PageError> {
    let Some(store) = site.store()? else { return Ok(Vec::new()) };
    let today = site.today();
    let of_today = |row: &&SessionSummary| row.started_at.date() == today && row.routine == title;
    let rows = store.history_page(Some(client), 0, A_DAY)?;
    let told = |row: &SessionSummary| {
        let args = vec![
            ("at", Arg::Text(clock(&row.started_at))),
            ("done", Arg::Number(f64::from(row.steps_done))),
            ("of", Arg::Number(f64::from(row.steps_prescribed))),
        ];
        site.with_texts(|texts| texts.with("page-today-done", args))
    };
    Ok(rows.iter().filter(of_today).map(told).collect())
}

fn weekday(day: CivilDay) -> Weekday {
    let index = usize::try_from(day.to_monday_zero_offset()).unwrap_or(0);
    Weekday::ALL.get(index).copied().unwrap_or(Weekday::Monday)
}

/// When it is planned: the minute of today, a sentence, and whether it is today.
fn planned(site: &Site, plan: &[PlannedTime]) -> (u16, String, bool) {
    if plan.is_empty() {
        return (u16::MAX - 1, site.s("page-today-any-time"), false);
    }
    let today = weekday(site.today().weekday());
    let mut times: Vec<&PlannedTime> = plan.iter().filter(|time| time.days.contains(&today)).collect();
    times.sort_by_key(|time| time.at_min);
    if let Some(first) = times.first() {
        let at = times.iter().map(|time| time.at_text()).collect::<Vec<_>>().join(", ");
        return (first.at_min, site.with_texts(|texts| texts.text("page-today-planned", "at", &at)), true);
    }
    let ahead = (1..=6).filter_map(|days| {
        let day = weekday(site.today().checked_add(jiff::Span::new().days(days)).ok()?.weekday());
        let first = plan.iter().filter(|time| time.days.contains(&day)).min_by_key(|time| time.at_min)?;
        let args = vec![("day", Arg::Text(site.s(day.key()))), ("at", Arg::Text(first.at_text()))];
        Some(site.with_texts(|texts| texts.with("page-today-next", args)))
    });
    (u16::MAX - 2, ahead.into_iter().next().unwrap_or_default(), false)
}

/// `POST /start`: a practice begins, on the page that shows it.
pub fn begin(site: &Site, form: &Fields) -> Result<Shown, PageError> {
    let (client, file) = (form.text("client").trim(), form.text("file"));
    if client.is_empty() {
        return Err(PageError::bad(site.s("page-client-missing")));
    }
    let known = household::read(site).unwrap_or_default().files_of(client).iter().any(|own| own == file)
        || site.routines.names().iter().any(|name| name == file);
    if !known {
        return Err(PageError::none(site.with_texts(|texts| texts.text("page-file-none", "file", file))));
    }
    if !site.starts.is_open() {
        return Err(PageError::bad(site.s("page-today-how-else")));
    }
    match site.starts.ask(Wish { client: client.to_owned(), file: file.to_owned() }) {
        Ok(()) => Ok(Shown::To("/".to_owned())),
        Err(NotBegun::Refused(why)) => Err(PageError::bad(why)),
        Err(NotBegun::Asked) => Err(PageError::bad(site.s("page-start-asked"))),
        Err(NotBegun::Unanswered) => Err(PageError::bad(site.s("page-start-unanswered"))),
    }
}
