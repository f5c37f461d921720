//! Moments when the voice did what was wanted, as the client told them: written down, or where they can be heard.

use super::table::Table;
use super::terms::{Terms, printable_to};
use progress::{Moment, Picture};

/// Most characters of a moment that stand on a page.
const LONGEST: usize = 300;
/// So many, the latest, stand on the client's page.
const ON_CLIENTS_PAGE: usize = 3;

/// "“I ordered my own coffee.” It can be heard until 5 Oct 2026: practice 14."
fn told(moment: &Moment, terms: &Terms<'_>) -> String {
    let text = moment.text.as_ref().map(|text| terms.text("report-moment-text-shown", &[("text", printable_to(text, LONGEST).into())]));
    let seconds = format!("{:.0}", (moment.until_s - moment.from_s).max(0.0));
    let sound = moment.heard_until.map(|until| {
        let given = [("n", moment.session.to_string().into()), ("s", seconds.into()), ("until", terms.date(until).into())];
        terms.text("report-moment-sound-shown", &given)
    });
    let told: Vec<String> = text.into_iter().chain(sound).collect();
    if told.is_empty() { terms.plain("report-moment-gone-shown") } else { told.join(" ") }
}

/// A line each, with its day.
pub(super) fn lines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let line = |moment: &Moment| {
        terms.text("report-moment-line-shown", &[("date", terms.date(moment.day).into()), ("told", told(moment, terms).into())])
    };
    picture.moments.iter().map(line).collect()
}

/// A row each; none where none was told.
pub(super) fn table(picture: &Picture, terms: &Terms<'_>) -> Option<Table> {
    let row = |moment: &Moment| vec![terms.date(moment.day), told(moment, terms)];
    (!picture.moments.is_empty()).then(|| Table {
        title: terms.plain("report-moments-shown"),
        note: terms.plain("report-moments-note-shown"),
        head: vec![terms.plain("report-head-moment-day-shown"), terms.plain("report-head-moment-told-shown")],
        grows: vec![false, true],
        rows: picture.moments.iter().map(row).collect(),
        wraps: true,
    })
}

/// The latest of which something is left, for the client's own page.
pub(super) fn for_client(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let left = picture.moments.iter().filter(|moment| moment.text.is_some() || moment.heard_until.is_some());
    let line = |moment: &Moment| {
        let date = ("date", terms.date(moment.day).into());
        match (&moment.text, moment.heard_until) {
            (Some(text), _) => terms.text("report-client-moment-text-shown", &[date, ("text", printable_to(text, LONGEST).into())]),
            (None, until) => {
                let until = until.map(|until| terms.date(until)).unwrap_or_default();
                terms.text("report-client-moment-sound-shown", &[date, ("until", until.into())])
            }
        }
    };
    left.collect::<Vec<_>>().into_iter().rev().take(ON_CLIENTS_PAGE).map(line).collect()
}
