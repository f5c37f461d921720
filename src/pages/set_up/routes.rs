//! Which page answers which address.

use std::sync::Arc;

use axum::Form;
use axum::Router;
use axum::extract::State;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{MethodRouter, get, post};

use super::fields::Fields;
use super::site::{PageError, Shown, Site, answer, fields};
use super::{
    calibration, caseload, cautions, enrolment, history, microphone, now, progress, reports, results, routines, sound, start, today,
};

/// Pairs of names and values.
type Pairs = Form<Vec<(String, String)>>;
type Make = fn(&Site, &Fields) -> Result<Shown, PageError>;

/// A page that shows.
fn shows(here: &'static str, make: Make) -> MethodRouter<Arc<Site>> {
    get(move |State(site): State<Arc<Site>>, form: Pairs| answer(site, here, move |site| make(site, &fields(form))))
}

/// A form that changes something.
fn takes(here: &'static str, make: Make) -> MethodRouter<Arc<Site>> {
    post(move |State(site): State<Arc<Site>>, form: Pairs| answer(site, here, move |site| make(site, &fields(form))))
}

/// The routes of the set-up pages. Whoever has nothing else at `/` sends it to `/today`: see [`alone`].
pub fn routes(site: Arc<Site>) -> Router {
    let router: Router<Arc<Site>> = Router::new()
        .route("/today", shows("/today", today::show))
        .route("/start", takes("/today", today::begin))
        .route("/results", shows("/results", results::show))
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
        .route("/history/moment", shows("/history", history::moment))
        .route("/progress", shows("/progress", progress::show))
        .route("/sound", shows("/sound", sound::show).merge(takes("/sound", sound::act)))
        .route("/caseload", shows(caseload::HERE, caseload::list))
        .route("/caseload/client", shows(caseload::HERE, caseload::client).merge(takes(caseload::HERE, caseload::act)))
        .route("/file", shows("/progress", reports::file))
        .route("/break-off", takes("/today", now::break_off))
        .route("/now", get(now::stream));
    router.with_state(site)
}

/// As [`routes`], with nothing else beside them.
pub fn alone(site: Arc<Site>) -> Router {
    routes(site).route("/", get(|| async { Redirect::to("/today").into_response() }))
}

#[cfg(test)]
#[path = "tests/served.rs"]
mod served;

#[cfg(test)]
#[path = "tests/damaged_forms.rs"]
mod damaged_forms;
