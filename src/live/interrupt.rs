//! Ctrl-C while the sound loop runs.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use audio::AudioError;
use files::error::Failure;
use screen::restore_terminal;

/// Runs the sound loop on a thread of its own while this one waits for its end or for Ctrl-C; a second Ctrl-C does not wait.
pub fn until_interrupted(lead: impl FnOnce(Arc<AtomicBool>) -> Result<(), AudioError> + Send + 'static) -> Result<Option<String>, Failure> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .map_err(|why| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again")))?;
    let interrupted = Arc::new(AtomicBool::new(false));
    let flag = interrupted.clone();
    runtime.block_on(async move {
        let mut led = tokio::task::spawn_blocking(move || lead(flag));
        loop {
            tokio::select! {
                ended = &mut led => return match ended {
                    Ok(outcome) => Ok(outcome.err().map(|error| error.to_string())),
                    Err(panic) => Ok(Some(format!("the practice was cut short: {panic}. What was measured is saved."))),
                },
                signal = tokio::signal::ctrl_c() => {
                    if signal.is_err() || interrupted.swap(true, Ordering::Relaxed) {
                        restore_terminal();
                        std::process::exit(130);
                    }
                }
            }
        }
    })
}
