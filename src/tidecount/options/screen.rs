//! The page of a practice.

use files::error::Failure;
use pages::follow::server::Wanted;

/// How the practice is shown on a page.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct Screen {
    /// Show the practice on a page of this computer, readable at two metres; print its address and open it
    #[arg(long)]
    screen: bool,
    /// Serve the page on this port; 0 takes any that is free
    #[arg(long, value_name = "N", default_value_t = 0)]
    screen_port: u16,
    /// Print the address of the page and open no browser
    #[arg(long)]
    no_open: bool,
}

impl Screen {
    /// The page that is wanted; none without `--screen`.
    ///
    /// # Errors
    /// An option was given that means nothing without `--screen`.
    pub fn wanted(&self) -> Result<Option<Wanted>, Failure> {
        self.wanted_or(false)
    }

    /// The same where the page alone leads: it is wanted then, asked for or not.
    ///
    /// # Errors
    /// As [`Screen::wanted`].
    pub fn wanted_or(&self, page_leads: bool) -> Result<Option<Wanted>, Failure> {
        if self.screen || page_leads {
            return Ok(Some(Wanted { port: self.screen_port, opens_browser: !self.no_open }));
        }
        match self.screen_port != 0 || self.no_open {
            true => Err(Failure::Options("--screen-port and --no-open belong to the page: give --screen, too".into())),
            false => Ok(None),
        }
    }
}
