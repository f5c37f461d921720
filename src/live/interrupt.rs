//! Who asks the program to end, while the sound loop runs: Ctrl-C, a closed terminal, and the system when it shuts down.

use std::io;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use audio::AudioError;
use files::error::Failure;
use screen::restore_terminal;

/// What was asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// By somebody: Ctrl-C, or TERM. Asked a second time it cannot wait.
    Asked,
    /// The terminal was closed (HUP), which shells and systems tell more than once.
    TerminalClosed,
}

/// Waits for whoever asks the program to end.
pub struct Endings {
    #[cfg(unix)]
    signals: [Option<tokio::signal::unix::Signal>; 3],
}

impl Endings {
    /// From now on what asks the program to end does not kill it. Within a runtime.
    ///
    /// # Errors
    /// The system does not let signals be waited for.
    pub fn watch() -> io::Result<Self> {
        #[cfg(unix)]
        {
            use tokio::signal::unix::{SignalKind, signal};
            // Whoever started it with `nohup` wants it to outlive the terminal.
            let hangup = if ignores_hangup() { None } else { Some(signal(SignalKind::hangup())?) };
            Ok(Self { signals: [Some(signal(SignalKind::interrupt())?), Some(signal(SignalKind::terminate())?), hangup] })
        }
        #[cfg(not(unix))]
        Ok(Self {})
    }

    /// The next time that it is asked for.
    ///
    /// # Errors
    /// Ctrl-C cannot be waited for.
    pub async fn next(&mut self) -> io::Result<Ending> {
        #[cfg(unix)]
        {
            let [interrupt, terminate, hangup] = &mut self.signals;
            Ok(tokio::select! {
                () = came(interrupt) => Ending::Asked,
                () = came(terminate) => Ending::Asked,
                () = came(hangup) => Ending::TerminalClosed,
            })
        }
        #[cfg(not(unix))]
        tokio::signal::ctrl_c().await.map(|()| Ending::Asked)
    }
}

/// One that is not waited for never comes.
#[cfg(unix)]
async fn came(signal: &mut Option<tokio::signal::unix::Signal>) {
    match signal {
        Some(signal) => drop(signal.recv().await),
        None => std::future::pending().await,
    }
}

/// The program was started with a closed terminal to be ignored, as `nohup` does. Linux alone tells.
#[cfg(unix)]
fn ignores_hangup() -> bool {
    std::fs::read_to_string("/proc/self/status").is_ok_and(|status| hangup_ignored(&status))
}

/// The mask of ignored signals of `/proc/PID/status` holds HUP, signal 1, the lowest bit (proc(5)).
#[cfg(unix)]
fn hangup_ignored(status: &str) -> bool {
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok()).is_some_and(|mask| mask & 1 == 1)
}

/// Sets `flag` when it is asked to end, and goes on watching; asked by somebody a second time it ends at once.
pub async fn raise_when_asked(endings: &mut Endings, flag: &AtomicBool) {
    loop {
        let ending = endings.next().await;
        let again = flag.swap(true, Ordering::Relaxed);
        if ending.is_err() || (again && matches!(ending, Ok(Ending::Asked))) {
            restore_terminal();
            std::process::exit(130);
        }
    }
}

/// Runs the sound loop on a thread of its own while this one waits for its end or for whoever asks it to end; asked twice it does not wait.
pub fn until_interrupted(lead: impl FnOnce(Arc<AtomicBool>) -> Result<(), AudioError> + Send + 'static) -> Result<Option<String>, Failure> {
    let cannot =
        |why: io::Error| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again"));
    let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(1).enable_all().build().map_err(cannot)?;
    let interrupted = Arc::new(AtomicBool::new(false));
    let flag = interrupted.clone();
    runtime.block_on(async move {
        // Before the practice begins: whatever asks for its end from here on is kept as its end.
        let mut endings = Endings::watch().map_err(cannot)?;
        let mut led = tokio::task::spawn_blocking(move || lead(flag));
        tokio::select! {
            ended = &mut led => match ended {
                Ok(outcome) => Ok(outcome.err().map(|error| error.to_string())),
                Err(panic) => Ok(Some(format!("the practice was cut short: {panic}. What was measured is saved."))),
            },
            () = raise_when_asked(&mut endings, &interrupted) => Ok(None),
        }
    })
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;

    #[test]
    fn a_terminal_whose_closing_is_ignored_is_known_by_the_lowest_bit() {
        assert!(hangup_ignored("Name:\tx\nSigIgn:\t0000000000001001\n"));
        assert!(!hangup_ignored("Name:\tx\nSigIgn:\t0000000000001000\n"));
        assert!(!hangup_ignored("Name:\tx\n"));
    }
}
