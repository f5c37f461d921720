//! The pages of this computer: their options, their routes, and the browser that is opened on them.

use std::sync::Arc;
use std::time::Duration;

use axum::Router;

use crate::follow::follower::WebFollower;
use crate::follow::words::live_words;
use crate::set_up::site::{Place, Site};
use crate::web::live_page::{self, LiveHub, Note, Section};
use crate::web::{Guard, Server};
use files::error::Failure;
use live::observe::Observer;
use session::{Arg, Line};
use speak::Words;

/// At the end the pages get the summary within this, or not at all.
const FAREWELL: Duration = Duration::from_millis(500);

/// How the practice is shown on a page.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct ScreenArgs {
    /// Show the practice on a page of this computer, readable at two metres; print its address and open it
    #[arg(long)]
    pub screen: bool,
    /// Serve the page on this port; 0 takes any that is free
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub screen_port: u16,
    /// Print the address of the page and open no browser
    #[arg(long)]
    pub no_open: bool,
}

/// Pages that are being served.
#[derive(Debug)]
pub struct Pages {
    hub: LiveHub,
    server: Server,
    /// The set-up pages, where they are offered.
    site: Option<Arc<Site>>,
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

/// Serves the pages where `--screen` asks for them, prints their address and opens it.
///
/// # Errors
/// The port is taken, or an option was given that means nothing without `--screen`.
pub fn open(args: &ScreenArgs) -> Result<Option<Pages>, Failure> {
    open_with(args, None)
}

/// As [`open`], with the set-up pages of this place beside the live page, while no practice is under way.
///
/// # Errors
/// As [`open`].
pub fn open_with(args: &ScreenArgs, set_up: Option<Place>) -> Result<Option<Pages>, Failure> {
    if !args.screen {
        if args.screen_port != 0 || args.no_open {
            return Err(Failure::Options("--screen-port and --no-open belong to the page: give --screen, too".into()));
        }
        return Ok(None);
    }
    let words = Words::english()?;
    let hub = LiveHub::new();
    let mut site = None;
    let of_site = Words::english()?;
    let serve = |guard: Arc<Guard>| {
        site = set_up.map(|place| Arc::new(Site::new(place, of_site, guard.clone())));
        routes_with(guard, &hub, &words, site.clone())
    };
    let server = Server::start(args.screen_port, serve).map_err(|why| Failure::Options(why.to_string()))?;
    let address = server.address();
    let line = Line { key: "page-address-shown".into(), args: vec![("address", Arg::Text(address.clone()))] };
    println!("{}", words.text(&line)?);
    if !args.no_open && has_display() {
        open_browser(address);
    }
    Ok(Some(Pages { hub, server, site }))
}

/// Who follows a practice for the pages: nobody where there are none.
///
/// # Errors
/// The words of the page cannot be read.
pub fn followers(pages: Option<&Pages>) -> Result<Vec<Box<dyn Observer>>, Failure> {
    Ok(match pages {
        Some(pages) => vec![Box::new(pages.follower()?)],
        None => Vec::new(),
    })
}

impl Pages {
    /// Follows one practice.
    ///
    /// # Errors
    /// The words of the page cannot be read.
    pub fn follower(&self) -> Result<WebFollower, Failure> {
        Ok(WebFollower::new(self.hub.clone(), Words::english()?))
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
