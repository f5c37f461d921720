//! The set-up pages with all that is behind them: files, the record, microphone and loudspeaker.
//!
//! What a page shows is worked out here and drawn in `crate::web::pages`. Every answer is made on a thread of its own; sound has
//! one more ([`desk`]).

mod calibration;
mod caseload;
mod cautions;
pub mod desk;
mod draft;
mod enrolment;
mod fact_words;
pub mod fields;
pub mod files;
mod history;
mod household;
pub mod mic_judge;
mod mic_listen;
mod microphone;
mod now;
mod places;
mod progress;
mod reports;
mod routine_fields;
mod routines;
pub mod site;
mod sound;
mod start;
mod toml_rows;

use std::collections::BTreeSet;
use std::sync::Arc;

use axum::Form;
use axum::Router;
use axum::extract::State;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{MethodRouter, get, post};

use fields::Fields;
use site::{PageError, Shown, Site, answer};

/// Pairs of names and values.
type Pairs = Form<Vec<(String, String)>>;
type Make = fn(&Site, &Fields) -> Result<Shown, PageError>;

/// A page that shows.
fn shows(here: &'static str, make: Make) -> MethodRouter<Arc<Site>> {
    get(move |State(site): State<Arc<Site>>, form: Pairs| answer(site, here, move |site| make(site, &site::fields(form))))
}

/// A form that changes something.
fn takes(here: &'static str, make: Make) -> MethodRouter<Arc<Site>> {
    post(move |State(site): State<Arc<Site>>, form: Pairs| answer(site, here, move |site| make(site, &site::fields(form))))
}

/// The routes of the set-up pages. Whoever has nothing else at `/` sends it to `/setup`: see [`alone`].
pub fn routes(site: Arc<Site>) -> Router {
    let router: Router<Arc<Site>> = Router::new()
        .route("/setup", shows("/setup", start::show))
        .route("/microphone", shows("/microphone", microphone::show).merge(takes("/microphone", microphone::act)))
        .route("/calibration", shows("/calibration", calibration::show).merge(takes("/calibration", calibration::act)))
        .route("/own-voice", shows("/own-voice", enrolment::show).merge(takes("/own-voice", enrolment::act)))
        .route("/cautions", shows("/cautions", cautions::show).merge(takes("/cautions", cautions::act)))
        .route("/routines", shows("/routines", routines::list))
        .route("/routines/view", shows("/routines", routines::view))
        .route("/routines/handout.pdf", shows("/routines", routines::handout_pdf))
        .route("/routines/new", takes("/routines", routines::new))
        .route("/routines/choose", takes("/routines", routines::choose))
        .route("/routines/edit", shows("/routines", routines::edit).merge(takes("/routines", routines::change)))
        .route("/history", shows("/history", history::list))
        .route("/history/practice", shows("/history", history::one))
        .route("/progress", shows("/progress", progress::show))
        .route("/sound", shows("/sound", sound::show).merge(takes("/sound", sound::act)))
        .route("/caseload", shows(caseload::HERE, caseload::list))
        .route("/caseload/client", shows(caseload::HERE, caseload::client).merge(takes(caseload::HERE, caseload::act)))
        .route("/file", shows("/progress", reports::file))
        .route("/break-off", takes("/setup", now::break_off))
        .route("/now", get(now::stream));
    router.with_state(site)
}

/// As [`routes`], with nothing else beside them.
pub fn alone(site: Arc<Site>) -> Router {
    routes(site).route("/", get(|| async { Redirect::to("/setup").into_response() }))
}

/// A text in an address.
fn encoded(text: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte);
    text.bytes().map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}

/// Everybody who is known here: in the household, in the record, in a routine.
fn clients(site: &Site) -> Result<Vec<String>, PageError> {
    let mut names: Vec<String> = household::read(site).unwrap_or_default().names();
    let mut others: BTreeSet<String> = site.store()?.map_or_else(|| Ok(Vec::new()), |store| store.clients())?.into_iter().collect();
    let of_routines = site.routines.names().into_iter().filter_map(|name| site.routines.read(&name).ok());
    others.extend(of_routines.filter_map(|read| routine::doses_of(&read.text)?.client));
    names.extend(others.into_iter().filter(|name| !names.contains(name)).collect::<Vec<_>>());
    Ok(names)
}

#[cfg(test)]
#[path = "tests/served.rs"]
mod tests;
