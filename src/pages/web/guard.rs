//! Who may ask: this computer's own browser, let in with the key of this start.
//!
//! Any page that the browser has open can send requests to loopback, and a host name can be made to point there. So a request is
//! answered only where its `Host` is ours (against re-bound names), its `Origin` and `Sec-Fetch-Site` are ours (against other pages),
//! and it bears the cookie that whoever had the key was given (against other people on this computer). What changes something needs a number besides
//! that is good once, so that nothing can be sent a second time.

use std::collections::VecDeque;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use std::sync::Arc;

use super::peer::Peer;

/// The longest body of a request that is read; a routine file is far shorter.
pub const BODY_LIMIT_BYTES: usize = 256 * 1024;
/// The longest address that is read.
const LONGEST_ADDRESS: usize = 2048;
/// A browser that was started takes so long at most to come with its ticket.
const TICKET_TIME: Duration = Duration::from_secs(60);
/// So many numbers that are good once are out at most; the oldest is forgotten first.
const MOST_ONCE: usize = 1024;
/// What the page may do: nothing from elsewhere, no script in the page, no frame around it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; media-src 'self'; connect-src 'self'; \
                      form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// The key of one start of the program, the cookie for whoever has it, and the numbers that are good once.
pub struct Guard {
    port: u16,
    key: String,
    /// Not the key: a cookie goes with every request to this computer, whatever the port.
    cookie: String,
    /// The last one that was given, and when.
    ticket: Mutex<Option<(String, Instant)>>,
    once: Mutex<VecDeque<String>>,
    body_time: Duration,
}

/// What it holds opens the pages.
impl std::fmt::Debug for Guard {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Guard").field("port", &self.port).finish_non_exhaustive()
    }
}

impl Guard {
    /// # Errors
    /// The system gives no random numbers.
    pub(super) fn new(port: u16, body_time: Duration) -> Result<Self, getrandom::Error> {
        Ok(Self {
            port,
            key: random_text()?,
            cookie: random_text()?,
            ticket: Mutex::new(None),
            once: Mutex::new(VecDeque::new()),
            body_time,
        })
    }

    pub(super) fn key(&self) -> &str {
        &self.key
    }

    /// Lets in once, within a minute; an earlier one is void. Empty (and good for nothing) where the system gives no random numbers.
    pub(super) fn ticket(&self) -> String {
        let Ok(ticket) = random_text() else { return String::new() };
        *self.ticket.lock().unwrap_or_else(PoisonError::into_inner) = Some((ticket.clone(), Instant::now()));
        ticket
    }

    fn takes_ticket(&self, told: &str) -> bool {
        let mut ticket = self.ticket.lock().unwrap_or_else(PoisonError::into_inner);
        let good = ticket.as_ref().is_some_and(|(own, given)| same(told, own) && given.elapsed() <= TICKET_TIME);
        if good {
            *ticket = None;
        }
        good
    }

    /// A number that is good for one `POST …?once=NUMBER`; empty (and good for nothing) where the system gives no random numbers.
    #[must_use]
    pub fn once(&self) -> String {
        let Ok(number) = random_text() else { return String::new() };
        let mut out = self.once.lock().unwrap_or_else(PoisonError::into_inner);
        if out.len() >= MOST_ONCE {
            out.pop_front();
        }
        out.push_back(number.clone());
        number
    }

    fn use_up(&self, number: &str) -> bool {
        let mut out = self.once.lock().unwrap_or_else(PoisonError::into_inner);
        let place = out.iter().position(|known| known == number);
        place.and_then(|place| out.remove(place)).is_some()
    }

    /// By port: two servers on one computer share their cookies.
    fn cookie_name(&self) -> String {
        format!("tidecount_{}", self.port)
    }

    fn hosts(&self) -> [String; 2] {
        ["127.0.0.1", "localhost"].map(|name| format!("{name}:{}", self.port))
    }

    /// Why the request is refused; none where it is this browser's own.
    fn refuses(&self, request: &Request) -> Option<(StatusCode, &'static str)> {
        let headers = request.headers();
        let host = single(headers, header::HOST);
        if !self.hosts().iter().any(|own| host == Some(own)) {
            return Some((StatusCode::MISDIRECTED_REQUEST, "This address is not this page's. Open the address that tidecount printed."));
        }
        if request.uri().path_and_query().is_some_and(|asked| asked.as_str().len() > LONGEST_ADDRESS) {
            return Some((StatusCode::URI_TOO_LONG, "The address is too long. Open the address that tidecount printed."));
        }
        if ![Method::GET, Method::HEAD, Method::POST].contains(request.method()) {
            return Some((StatusCode::METHOD_NOT_ALLOWED, "Only GET and POST are answered."));
        }
        // What tells its length is refused unread; what does not is cut off by the router's own limit.
        let length = single(headers, header::CONTENT_LENGTH).and_then(|length| length.parse::<usize>().ok());
        if length.is_some_and(|length| length > BODY_LIMIT_BYTES) {
            return Some((StatusCode::PAYLOAD_TOO_LARGE, "That is too much at once. Send less."));
        }
        let changes = request.method() == Method::POST;
        let own = |origin: &str| self.hosts().iter().any(|host| origin.strip_prefix("http://") == Some(host));
        let elsewhere = "This request came from another page. Use the pages that tidecount opened.";
        match (headers.contains_key(header::ORIGIN), single(headers, header::ORIGIN)) {
            (true, Some(origin)) if own(origin) => {}
            (false, _) if !changes => {}
            _ => return Some((StatusCode::FORBIDDEN, elsewhere)),
        }
        let site = single(headers, HeaderName::from_static("sec-fetch-site"));
        if !matches!(site, None | Some("same-origin")) && (changes || site != Some("none")) {
            return Some((StatusCode::FORBIDDEN, elsewhere));
        }
        None
    }

    fn bears_cookie(&self, headers: &HeaderMap) -> bool {
        let cookies = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
        let name = self.cookie_name();
        cookies
            .flat_map(|line| line.split(';'))
            .any(|pair| pair.trim().split_once('=').is_some_and(|(own, value)| own == name && same(value, &self.cookie)))
    }
}

/// In a time that does not depend on where the first difference is.
fn same(told: &str, own: &str) -> bool {
    told.len() == own.len() && told.bytes().zip(own.bytes()).fold(0, |differs, (one, other)| differs | (one ^ other)) == 0
}

/// Its one value; none where it is missing, given twice or no text.
fn single(headers: &HeaderMap, name: impl axum::http::header::AsHeaderName) -> Option<&str> {
    let mut values = headers.get_all(name).iter();
    let first = values.next()?;
    if values.next().is_some() { None } else { first.to_str().ok() }
}

/// 128 random bits, hexadecimal.
fn random_text() -> Result<String, getrandom::Error> {
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

fn query<'a>(request: &'a Request, name: &str) -> Option<&'a str> {
    let pairs = request.uri().query()?.split('&');
    pairs.filter_map(|pair| pair.split_once('=')).find(|(own, _)| *own == name).map(|(_, value)| value)
}

/// Stands before every route.
pub(super) async fn guard(State(guard): State<Arc<Guard>>, request: Request, next: Next) -> Response {
    let mut answer = admit(&guard, request, next).await;
    let headers = answer.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        // With "no-referrer" a browser sends a form with the origin "null", which cannot be told from another page's.
        (header::REFERRER_POLICY, "same-origin"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (header::CACHE_CONTROL, "no-store"),
        (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
        (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
        (HeaderName::from_static("permissions-policy"), "camera=(), geolocation=(), microphone=()"),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    answer
}

async fn admit(guard: &Guard, mut request: Request<Body>, next: Next) -> Response {
    if let Some((status, why)) = guard.refuses(&request) {
        return (status, why).into_response();
    }
    if request.uri().path() == "/enter" {
        let has_key = query(&request, "key").is_some_and(|key| same(key, &guard.key));
        // Other users of this computer can read a ticket where it stands, on a command line; but the connection tells who comes with it.
        let own = || request.extensions().get::<Peer>().is_some_and(|peer| peer.is_own());
        if has_key || query(&request, "ticket").is_some_and(|ticket| own() && guard.takes_ticket(ticket)) {
            let cookie = format!("{}={}; HttpOnly; SameSite=Strict; Path=/", guard.cookie_name(), guard.cookie);
            return ([(header::SET_COOKIE, cookie)], Redirect::to("/")).into_response();
        }
        return no_key();
    }
    if !guard.bears_cookie(request.headers()) {
        return no_key();
    }
    // A HEAD is answered as a GET is; the connection itself leaves the body out.
    if request.method() == Method::HEAD {
        *request.method_mut() = Method::GET;
    }
    if request.method() == Method::POST {
        request = match with_body(request, guard.body_time).await {
            Ok(request) => request,
            Err(refused) => return refused,
        };
    }
    if request.method() == Method::POST && !query(&request, "once").is_some_and(|number| guard.use_up(number)) {
        let why = "This was sent already, or the page is out of date. Nothing was changed. Reload the page.";
        return (StatusCode::CONFLICT, why).into_response();
    }
    next.run(request).await
}

/// The request with its body read: within the time and the length, or not at all.
async fn with_body(request: Request<Body>, time: Duration) -> Result<Request<Body>, Response> {
    let (head, body) = request.into_parts();
    match tokio::time::timeout(time, to_bytes(body, BODY_LIMIT_BYTES)).await {
        Ok(Ok(bytes)) => Ok(Request::from_parts(head, Body::from(bytes))),
        Ok(Err(_)) => {
            Err((StatusCode::PAYLOAD_TOO_LARGE, "That is too much at once, or it broke off. Nothing was changed.").into_response())
        }
        Err(_) => Err((StatusCode::REQUEST_TIMEOUT, "That came too slowly. Nothing was changed. Send it again.").into_response()),
    }
}

fn no_key() -> Response {
    let why = "Open the address that tidecount printed when it started. It holds the key you need.";
    (StatusCode::FORBIDDEN, why).into_response()
}

#[cfg(test)]
#[path = "tests/guard.rs"]
mod tests;
