//! Who may ask: this computer's own browser, with the key of this start.
//!
//! Any page that the browser has open can send requests to loopback, and a host name can be made to point there. So a request is
//! answered only where its `Host` is ours (against re-bound names), its `Origin` and `Sec-Fetch-Site` are ours (against other pages),
//! and it bears the key of this start (against other people on this computer). What changes something needs a number besides
//! that is good once, so that nothing can be sent a second time.

use std::collections::VecDeque;
use std::sync::{Mutex, PoisonError};

use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use std::sync::Arc;

/// The longest body of a request that is read; a routine file is far shorter.
pub const BODY_LIMIT_BYTES: usize = 256 * 1024;
/// The longest address that is read.
const LONGEST_ADDRESS: usize = 2048;
/// So many numbers that are good once are out at most; the oldest is forgotten first.
const MOST_ONCE: usize = 1024;
/// What the page may do: nothing from elsewhere, no script in the page, no frame around it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; \
                      form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// The key of one start of the program, and the numbers that are good once.
#[derive(Debug)]
pub struct Guard {
    port: u16,
    key: String,
    once: Mutex<VecDeque<String>>,
}

impl Guard {
    /// # Errors
    /// The system gives no random numbers.
    pub(super) fn new(port: u16) -> Result<Self, getrandom::Error> {
        Ok(Self { port, key: random_text()?, once: Mutex::new(VecDeque::new()) })
    }

    pub(super) fn key(&self) -> &str {
        &self.key
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

    fn cookie(&self) -> String {
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

    fn bears_key(&self, headers: &HeaderMap) -> bool {
        let cookies = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
        let name = self.cookie();
        cookies
            .flat_map(|line| line.split(';'))
            .any(|pair| pair.trim().split_once('=').is_some_and(|(own, key)| own == name && self.is_key(key)))
    }

    /// In a time that does not depend on where the first difference is.
    fn is_key(&self, told: &str) -> bool {
        told.len() == self.key.len() && told.bytes().zip(self.key.bytes()).fold(0, |differs, (one, other)| differs | (one ^ other)) == 0
    }
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

async fn admit(guard: &Guard, request: Request<Body>, next: Next) -> Response {
    if let Some((status, why)) = guard.refuses(&request) {
        return (status, why).into_response();
    }
    if request.uri().path() == "/enter" {
        return match query(&request, "key") {
            Some(key) if guard.is_key(key) => {
                let cookie = format!("{}={}; HttpOnly; SameSite=Strict; Path=/", guard.cookie(), guard.key);
                ([(header::SET_COOKIE, cookie)], Redirect::to("/")).into_response()
            }
            _ => no_key(),
        };
    }
    if !guard.bears_key(request.headers()) {
        return no_key();
    }
    if request.method() == Method::POST && !query(&request, "once").is_some_and(|number| guard.use_up(number)) {
        let why = "This was sent already, or the page is out of date. Nothing was changed. Reload the page.";
        return (StatusCode::CONFLICT, why).into_response();
    }
    next.run(request).await
}

fn no_key() -> Response {
    let why = "Open the address that tidecount printed when it started. It holds the key you need.";
    (StatusCode::FORBIDDEN, why).into_response()
}

#[cfg(test)]
#[path = "tests/guard.rs"]
mod tests;
