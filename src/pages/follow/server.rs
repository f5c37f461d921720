//! The pages of this computer: their routes, and the browser that is opened on them.

use std::io::Write;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::extract::Request;
use axum::middleware::{Next, from_fn};
use axum::response::{IntoResponse, Redirect, Response};

use crate::follow::follower::WebFollower;
use crate::follow::words::live_words;
use crate::set_up::site::{Place, Site};
use crate::set_up::starting::Starts;
use crate::web::live_page::{self, LiveHub, Note, Section};
use crate::web::{Guard, Server};
use files::error::Failure;
use live::observe::Observer;
use session::{Arg, Line};
use speak::Words;

/// At the end the pages get the summary within this, or not at all.
const FAREWELL: Duration = Duration::from_millis(500);

/// How the pages are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    /// 0 takes any port that is free.
    pub port: u16,
    /// A browser is opened on them, where there is a display.
    pub opens_browser: bool,
}

/// Pages that are being served.
pub struct Pages {
    hub: LiveHub,
    server: Server,
    /// The set-up pages, where they are offered.
    site: Option<Arc<Site>>,
    words: Words,
}

/// Every route of the program's pages.
pub fn routes(guard: Arc<Guard>, hub: &LiveHub, words: &Words) -> Router {
    live_page::routes(guard, hub.clone(), live_words(words))
}

/// As [`routes`], with the set-up pages beside them.
fn routes_with(guard: Arc<Guard>, hub: &LiveHub, words: &Words, site: Option<Arc<Site>>) -> Router {
    let Some(site) = site else { return routes(guard, hub, words) };
    let mut of_live = live_words(words);
    of_live.nav = site.nav();
    live_page::routes(guard, hub.clone(), of_live).merge(crate::set_up::routes(site))
}

/// Where no practice was begun from these pages, there is nothing on the live page yet: its address leads to *today*.
fn home_first(routes: Router, site: Arc<Site>) -> Router {
    let lead = move |request: Request, next: Next| {
        let site = site.clone();
        async move {
            let home: Option<Response> =
                (request.uri().path() == "/" && !site.starts.has_begun()).then(|| Redirect::to("/today").into_response());
            match home {
                Some(home) => home,
                None => next.run(request).await,
            }
        }
    };
    routes.layer(from_fn(lead))
}

/// Serves the pages of this place, with the live page of the practices that are started there; prints their address and opens it.
///
/// # Errors
/// As [`open`].
pub fn open_home(wanted: Wanted, place: Place, words: &Words) -> Result<Pages, Failure> {
    let told = words.text(&Line { key: "page-told-address".into(), args: Vec::new() })?;
    let hub = LiveHub::new();
    let mut site = None;
    let of_site = words.clone();
    let serve = |guard: Arc<Guard>| {
        let own = Arc::new(Site::new(place, of_site, guard.clone()));
        site = Some(own.clone());
        home_first(routes_with(guard, &hub, words, Some(own.clone())), own)
    };
    let server = Server::start(wanted.port, serve).map_err(|why| Failure::Options(why.to_string()))?;
    // Where nobody reads it the browser is all that is left.
    let _ = writeln!(std::io::stdout(), "{told}\n{}", server.address()).and_then(|()| std::io::stdout().flush());
    if wanted.opens_browser && has_display() {
        open_browser(server.address_for_browser());
    }
    Ok(Pages { hub, server, site, words: words.clone() })
}

/// Serves the pages where they are wanted, prints their address and opens it.
///
/// # Errors
/// The port is taken, or the words of the pages cannot be read.
pub fn open(wanted: Option<Wanted>, words: &Words) -> Result<Option<Pages>, Failure> {
    open_with(wanted, None, words)
}

/// As [`open`], with the set-up pages of this place beside the live page, while no practice is under way.
///
/// # Errors
/// As [`open`].
pub fn open_with(wanted: Option<Wanted>, set_up: Option<Place>, words: &Words) -> Result<Option<Pages>, Failure> {
    let Some(wanted) = wanted else { return Ok(None) };
    let hub = LiveHub::new();
    let mut site = None;
    let of_site = words.clone();
    let serve = |guard: Arc<Guard>| {
        site = set_up.map(|place| Arc::new(Site::new(place, of_site, guard.clone())));
        routes_with(guard, &hub, words, site.clone())
    };
    let server = Server::start(wanted.port, serve).map_err(|why| Failure::Options(why.to_string()))?;
    let address = server.address();
    let line = Line { key: "page-address-shown".into(), args: vec![("address", Arg::Text(address.clone()))] };
    // Where nobody reads it the browser is all that is left.
    let _ = writeln!(std::io::stdout(), "{}", words.text(&line)?);
    if wanted.opens_browser && has_display() {
        open_browser(server.address_for_browser());
    }
    Ok(Some(Pages { hub, server, site, words: words.clone() }))
}

/// Who follows a practice for the pages: nobody where there are none.
#[must_use]
pub fn followers(pages: Option<&Pages>) -> Vec<Box<dyn Observer>> {
    match pages {
        Some(pages) => vec![Box::new(pages.follower())],
        None => Vec::new(),
    }
}

impl Pages {
    /// Follows one practice.
    #[must_use]
    pub fn follower(&self) -> WebFollower {
        WebFollower::new(self.hub.clone(), self.words.clone())
    }

    /// A message for whoever looks after the program.
    pub fn tell(&self, text: &str) {
        self.hub.set(Section::Notes, &[Note { text: text.to_owned() }]);
    }

    /// A practice begins, or is over: meanwhile the set-up pages keep away from devices, files and record.
    pub fn practising(&self, now: bool) {
        if let Some(site) = &self.site {
            site.practise(now);
        }
    }

    /// What is asked for on the set-up pages, where they are offered.
    #[must_use]
    pub fn starts(&self) -> Option<&Starts> {
        self.site.as_ref().map(|site| &site.starts)
    }

    /// The microphone and the loudspeaker that were chosen last on the set-up pages.
    #[must_use]
    pub fn devices(&self) -> Option<(String, String)> {
        self.site.as_ref().map(|site| site.devices())
    }

    /// What stands on the live page.
    #[must_use]
    pub fn hub(&self) -> &LiveHub {
        &self.hub
    }

    /// Where the pages are; it holds the key of this start.
    #[must_use]
    pub fn address(&self) -> String {
        self.server.address()
    }

    /// Ends them, when every page has what stands there last.
    pub fn finish(self) {
        self.hub.settle(FAREWELL);
    }
}

/// A screen that a browser could be opened on.
pub fn has_display() -> bool {
    !cfg!(target_os = "linux")
        || ["DISPLAY", "WAYLAND_DISPLAY"].iter().any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
}

/// Never waited for: whether a browser comes is no condition of a practice.
pub fn open_browser(address: String) {
    let opened = std::thread::Builder::new().name("browser".into()).spawn(move || {
        if let Err(why) = open::that_detached(&address) {
            tracing::warn!("no browser could be opened: {why}");
        }
    });
    if let Err(why) = opened {
        tracing::warn!("no browser could be opened: {why}");
    }
}
