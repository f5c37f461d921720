//! Starting `tidecount attend` at login: the user's service manager does it, by the unit that the package brings.

use std::path::Path;
use std::process::Command;

/// The unit of the package.
pub const UNIT: &str = "tidecount-attend.service";

/// What is typed to switch it on.
pub const BY_HAND: &str = "systemctl --user enable --now tidecount-attend";

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SwitchedOn {
    Done,
    /// This computer is not run by systemd.
    NoManager,
    /// It refused, and why.
    Failed(String),
}

impl SwitchedOn {
    /// In plain words, with what to do.
    #[must_use]
    pub fn told(&self) -> String {
        match self {
            Self::Done => "From now on it waits for a practice whenever this user is logged in. It waits now.\n\
                 For a computer that nobody logs in to, also type: loginctl enable-linger"
                .to_owned(),
            Self::NoManager => {
                format!("This computer is not run by systemd, so nothing was switched on. With systemd this would be typed: {BY_HAND}")
            }
            Self::Failed(why) => format!("It could not be switched on: {why}. When that is mended, type: {BY_HAND}"),
        }
    }
}

/// Switches it on for this user, now and at each login.
#[must_use]
pub fn switch_on() -> SwitchedOn {
    // The manager's own sign that it runs: sd_booted(3).
    if !Path::new("/run/systemd/system").exists() {
        return SwitchedOn::NoManager;
    }
    match Command::new("systemctl").args(["--user", "enable", "--now", UNIT]).output() {
        Ok(done) if done.status.success() => SwitchedOn::Done,
        Ok(refused) => SwitchedOn::Failed(String::from_utf8_lossy(&refused.stderr).trim().trim_end_matches('.').to_owned()),
        Err(why) => SwitchedOn::Failed(why.to_string()),
    }
}
