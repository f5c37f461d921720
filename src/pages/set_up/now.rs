//! What is under way with the devices, for the page that shows it: as a page, and as a stream of events for its script.

use std::convert::Infallible;
use std::sync::Arc;
use std::time::Duration;

use axum::extract::State;
use axum::response::sse::{Event, KeepAlive, Sse};
use serde_json::json;
use tokio_stream::wrappers::IntervalStream;
use tokio_stream::{Stream, StreamExt};

use crate::set_up::desk::{Job, Now};
use crate::set_up::fields::Fields;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::pages::{Listening, listening};

/// The bar moves so often.
const EVERY: Duration = Duration::from_millis(100);

/// The page while something is under way.
pub fn page(site: &Site, job: &Job, title_key: &str) -> Result<Shown, PageError> {
    let Now { told, figure, level_db, room_db, can_say } = job.shown();
    let here = job.task.page();
    let view =
        Listening { title: site.s(title_key), told, figure, level_db, room_db, can_say, here: here.to_owned(), to: site.to("/break-off") };
    Ok(Shown::Page { here, title: view.title.clone(), main: site.with_texts(|texts| listening(texts, &view)) })
}

/// `POST /break-off`
pub fn break_off(site: &Site, _form: &Fields) -> Result<Shown, PageError> {
    let page = site.desk.job().map_or("/today", |job| job.task.page());
    site.desk.stop();
    Ok(Shown::To(page.to_owned()))
}

/// `GET /now`: how it stands ten times a second, and `over` when it is over.
pub async fn stream(State(site): State<Arc<Site>>) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let mut over = false;
    let mut before = String::new();
    let steps = IntervalStream::new(tokio::time::interval(EVERY)).map_while(move |_| {
        if over {
            return None;
        }
        let Some(job) = site.desk.job() else {
            over = true;
            return Some(Some(Event::default().event("over").data("over")));
        };
        let now = job.shown();
        let words = site.with_texts(|texts| if now.can_say.is_empty() { String::new() } else { texts.text("page-can-say", "words", &now.can_say.join(" · ")) });
        let data = json!({ "told": now.told, "figure": now.figure, "level": now.level_db.filter(|db| db.is_finite()), "room": now.room_db.filter(|db| db.is_finite()), "say": words }).to_string();
        if data == before {
            return Some(None);
        }
        before.clone_from(&data);
        Some(Some(Event::default().data(data)))
    });
    Sse::new(steps.filter_map(|event| event.map(Ok))).keep_alive(KeepAlive::default())
}
