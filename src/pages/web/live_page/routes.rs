//! The routes of the live page.

use std::convert::Infallible;
use std::sync::Arc;
use std::time::Duration;

use axum::extract::{Form, State};
use axum::http::{StatusCode, header};
use axum::response::sse::{Event, Sse};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use serde::{Deserialize, Serialize};
use tokio::sync::mpsc;
use tokio_stream::wrappers::ReceiverStream;

use super::super::Guard;
use super::hub::{LiveHub, Refused};
use super::page::{LiveWords, live_page};
use live::observe::Asked;

/// A page that hears nothing for some of these takes the connection for dead.
const BEAT: Duration = Duration::from_secs(2);
/// Between two events of one page; what changes meanwhile comes together. A tenth of what a page may be late.
const LEAST_APART: Duration = Duration::from_millis(10);
/// Numbers that are good once, given to a page at a time.
const ONCE: usize = 4;

#[derive(Clone)]
struct Shared {
    guard: Arc<Guard>,
    hub: LiveHub,
    words: Arc<LiveWords>,
}

/// The live page at `/` and what it needs under `/live`.
pub fn routes(guard: Arc<Guard>, hub: LiveHub, words: LiveWords) -> Router {
    let shared = Shared { guard, hub, words: Arc::new(words) };
    Router::new()
        .route("/", get(page))
        .route("/live/events", get(events))
        .route("/live/state", get(state))
        .route("/live/once", get(once))
        .route("/live/command", post(command))
        .with_state(shared)
}

async fn page(State(shared): State<Shared>) -> Response {
    let html = live_page(&shared.words).into_string();
    ([(header::CONTENT_TYPE, "text/html; charset=utf-8")], html).into_response()
}

/// The whole state, then changes, for as long as the page listens.
async fn events(State(shared): State<Shared>) -> Response {
    let Some(mut reader) = shared.hub.reader() else {
        return (StatusCode::SERVICE_UNAVAILABLE, "Too many pages are open already. Close one of them.").into_response();
    };
    // One event waits at most: a page that does not read holds up nobody but itself.
    let (give, take) = mpsc::channel::<Result<Event, Infallible>>(1);
    tokio::spawn(async move {
        loop {
            let event = tokio::select! {
                () = give.closed() => return,
                text = reader.next() => Event::default().data(text),
                () = tokio::time::sleep(BEAT) => Event::default().event("beat").data("{}"),
            };
            if give.send(Ok(event)).await.is_err() {
                return;
            }
            tokio::time::sleep(LEAST_APART).await;
        }
    });
    Sse::new(ReceiverStream::new(take)).into_response()
}

async fn state(State(shared): State<Shared>) -> Response {
    ([(header::CONTENT_TYPE, "application/json")], shared.hub.whole()).into_response()
}

#[derive(Serialize)]
struct Once {
    once: Vec<String>,
}

async fn once(State(shared): State<Shared>) -> Json<Once> {
    Json(Once { once: (0..ONCE).map(|_| shared.guard.once()).collect() })
}

/// What was pressed: a button, or a key; each sends the name of its command.
#[derive(Deserialize)]
struct Pressed {
    command: Option<String>,
    key: Option<String>,
}

#[derive(Serialize)]
struct Answer {
    taken: bool,
    why: Option<String>,
    once: String,
}

/// Also who is refused gets another number, for the next press.
async fn command(State(shared): State<Shared>, Form(pressed): Form<Pressed>) -> Response {
    let taken = match (pressed.command, pressed.key) {
        (Some(name), None) => shared.hub.ask(Asked::Command(name)),
        (None, Some(name)) => shared.hub.ask(Asked::Key(name)),
        _ => Err(Refused::NotNow),
    };
    let status = match taken {
        Ok(()) => StatusCode::OK,
        Err(Refused::NotNow) => StatusCode::UNPROCESSABLE_ENTITY,
        Err(Refused::TooMuch) => StatusCode::TOO_MANY_REQUESTS,
    };
    let why = taken.err().map(|why| why.to_string());
    (status, Json(Answer { taken: why.is_none(), why, once: shared.guard.once() })).into_response()
}
