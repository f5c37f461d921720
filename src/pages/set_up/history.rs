//! The pages of past practices.

use audio::decode::SoundReader;
use audio::file::wav_bytes;
use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::set_up::fact_words::fact_row;
use crate::set_up::fields::Fields;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use crate::web::pages::{FactRow, HistoryView, PracticeRow, PracticeView, history, practice};
use progress::Moment;
use record::{SessionId, SessionSummary, Source, Store};
use routine::doses_of;
use session::{Arg, Entry, Fact};

const HERE: &str = "/history";
/// Sound around what was told, s.
const AROUND_S: f64 = 0.3;
/// Practices on one page.
const A_PAGE: u32 = 20;

/// "Tuesday 24 November 2026, 19:05".
pub fn when(at: &ZonedDateTime) -> String {
    format!("{}, {}", when_day(at.date()), clock(at))
}

/// "Tuesday 24 November 2026".
pub fn when_day(day: Date) -> String {
    day.strftime("%A %-d %B %Y").to_string()
}

/// "19:05".
pub fn clock(at: &ZonedDateTime) -> String {
    at.strftime("%H:%M").to_string()
}

/// `GET /history`
pub fn list(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let mut view = HistoryView::default();
    if let Some(store) = site.store()? {
        let clients = store.clients()?;
        view.client = query.get("client").filter(|client| clients.iter().any(|known| known == client)).map(str::to_owned);
        let total = store.practices(view.client.as_deref())?;
        let skip = query.text("skip").parse::<u64>().unwrap_or(0).min(total);
        let skip = skip - skip % u64::from(A_PAGE);
        let rows = store.history_page(view.client.as_deref(), skip, A_PAGE)?;
        let whose = view.client.as_ref().map_or(String::new(), |client| format!("client={}&", encoded(client)));
        view.newer = (skip > 0).then(|| format!("{HERE}?{whose}skip={}", skip.saturating_sub(u64::from(A_PAGE))));
        let next = skip + u64::from(A_PAGE);
        view.older = (next < total).then(|| format!("{HERE}?{whose}skip={next}"));
        let number = |n: u64| Arg::Number(n as f64);
        let last = skip + rows.len() as u64;
        view.range = site.with_texts(|texts| {
            texts.with("page-history-range", vec![("from", number(skip + 1)), ("to", number(last)), ("of", number(total))])
        });
        view.rows = rows.iter().map(|row| row_of(site, row)).collect();
        view.newest = rows.first().map(|row| told(site, &store, row.id)).transpose()?;
        if clients.len() > 1 {
            view.clients = clients;
        }
        view.exports = crate::set_up::reports::links(site, view.client.as_deref(), None);
    }
    let main = site.with_texts(|texts| history(texts, &view));
    Ok(Shown::Page { here: HERE, title: site.s("page-nav-history"), main })
}

/// One practice in a line or two.
pub fn row_of(site: &Site, row: &SessionSummary) -> PracticeRow {
    let number = |n: u32| Arg::Number(f64::from(n));
    let best = row.best_holds.iter().map(|hold| format!("{} {:.1}\u{a0}s", site.s(&format!("ex-{}-name", hold.exercise)), hold.duration_s));
    let source = match row.source {
        Source::Live => String::new(),
        Source::Replay => format!(" ({})", site.s("page-source-replay")),
        Source::Rehearsal => format!(" ({})", site.s("page-source-rehearsal")),
    };
    let best = best.collect::<Vec<_>>().join(", ");
    let steps = vec![("done", number(row.steps_done)), ("of", number(row.steps_prescribed))];
    let about = [
        site.with_texts(|texts| texts.with("page-history-steps", steps)),
        site.with_texts(|texts| texts.number("page-history-minutes", "n", row.minutes.round())),
        ended(site, row),
    ];
    PracticeRow {
        id: row.id.0,
        when: when(&row.started_at),
        who: format!("{} · {}{source}", row.client, row.routine),
        about: about.join(" · "),
        best: if best.is_empty() { best } else { site.with_texts(|texts| texts.text("page-history-best", "holds", &best)) },
    }
}

fn ended(site: &Site, row: &SessionSummary) -> String {
    match row.end_reason.as_deref() {
        None if row.under_way => site.s("page-history-under-way"),
        None => site.s("page-end-interrupted"),
        Some(reason) => {
            let key = format!("page-end-{}", reason.replace(' ', "-"));
            if site.words.has(&key) { site.s(&key) } else { reason.to_owned() }
        }
    }
}

/// `GET /history/practice?id=`
pub fn one(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let id = query.text("id").parse::<i64>().map_err(|_| PageError::none(site.s("page-practice-none")))?;
    let Some(store) = site.store()? else { return Err(PageError::none(site.s("page-practice-none"))) };
    let mut view = told(site, &store, SessionId(id))?;
    let title = format!("{}, {}", view.title, view.when);
    view.others = store.history_page(None, 0, A_PAGE)?.iter().map(|row| row_of(site, row)).collect();
    let main = site.with_texts(|texts| practice(texts, &view));
    Ok(Shown::Page { here: HERE, title, main })
}

/// One practice in words.
fn told(site: &Site, store: &Store, session: SessionId) -> Result<PracticeView, PageError> {
    let summary = store.history_of(session)?;
    let entries = store.entries(session)?;
    // Names of repetitions and phrases come from what was prescribed then.
    let prescription = doses_of(&store.routine_text(session)?);
    let row = row_of(site, &summary);
    let mut view = PracticeView { id: session.0, title: summary.routine.clone(), when: row.when.clone(), ..PracticeView::default() };
    view.about = vec![format!("{} · {}", row.when, summary.client), row.about, summary.software.clone()];
    view.sounds = crate::set_up::sound::of_practice(site, store, &summary.client, session)?;
    let moment = moment_of(store, &summary.client, session, site)?;
    let mut rest = entries.as_slice();
    let parts = store.parts_of(session)?;
    for part in &parts {
        let (own, behind) = rest.split_at((part.entries as usize).min(rest.len()));
        rest = behind;
        let heading = if parts.len() == 1 {
            site.s("page-practice-what")
        } else {
            let args = vec![("n", Arg::Number(f64::from(part.number))), ("when", Arg::Text(when(&part.started_at)))];
            site.with_texts(|texts| texts.with("page-practice-part", args))
        };
        let row = |entry: &Entry| {
            let row = fact_row(site, entry, prescription.as_ref())?;
            Some(FactRow { sound: heard(entry, part.number, moment.as_ref()), ..row })
        };
        let facts = own.iter().filter_map(row).collect();
        view.parts.push((heading, facts));
    }
    Ok(view)
}

/// What the client told at the end of a practice; none where nothing counts any more.
fn moment_of(store: &Store, client: &str, session: SessionId, site: &Site) -> Result<Option<Moment>, PageError> {
    Ok(store.practised(client, site.today())?.moments.into_iter().find(|moment| moment.session == session.0))
}

/// Where an entry can be heard.
fn heard(entry: &Entry, part: u32, moment: Option<&Moment>) -> Option<String> {
    let Fact::MomentTold { from_s: Some(from_s), .. } = entry.fact else { return None };
    let kept = moment.filter(|moment| moment.part == part && moment.from_s == from_s && moment.heard_until.is_some())?;
    Some(format!("{HERE}/moment?id={}", kept.session))
}

/// `GET /history/moment?id=`: what was told, cut out of the kept sound of its practice.
pub fn moment(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let gone = || PageError::none(site.s("page-moment-gone"));
    let session = SessionId(query.text("id").parse::<i64>().map_err(|_| gone())?);
    let store = site.store()?.ok_or_else(gone)?;
    let client = store.history_of(session)?.client;
    let moment = moment_of(&store, &client, session, site)?.ok_or_else(gone)?;
    let sound = store.sound_of_moment(&client, &moment)?.ok_or_else(gone)?;
    let bad = |why: audio::AudioError| PageError::bad(why.to_string());
    let mut reader = SoundReader::of_bytes(store.sound_flac(&sound)?, "flac").map_err(bad)?;
    let rate_hz = reader.rate_hz();
    // Saturates; a breath before the first word and behind the last.
    let place = |at_s: f64| ((at_s - sound.from_s) * f64::from(rate_hz)) as usize;
    let (from, until) = (place(moment.from_s - AROUND_S), place(moment.until_s + AROUND_S));
    let (mut at, mut samples) = (0, Vec::new());
    while let Some(piece) = reader.read().filter(|_| at < until) {
        let (first, last) = (from.saturating_sub(at).min(piece.len()), (until - at).min(piece.len()));
        samples.extend_from_slice(piece.get(first..last).unwrap_or_default());
        at += piece.len();
    }
    let bytes = wav_bytes(&samples, rate_hz).map_err(bad)?;
    Ok(Shown::File { kind: "audio/wav", name: format!("moment-{}.wav", session.0), bytes })
}
