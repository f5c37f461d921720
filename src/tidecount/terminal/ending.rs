//! Whoever asks the program to end, as a flag that a loop looks at.

use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use files::error::Failure;
use live::interrupt::{Endings, raise_when_asked};

/// True from when it is first asked to end: Ctrl-C, a closed terminal, the system shutting down. Asked twice it does not wait.
///
/// # Errors
/// The system gives no thread.
pub fn watch_for_its_end() -> Result<Arc<AtomicBool>, Failure> {
    let failed =
        |why: std::io::Error| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again"));
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().map_err(failed)?;
    let mut endings = runtime.block_on(async { Endings::watch() }).map_err(failed)?;
    let interrupted = Arc::new(AtomicBool::new(false));
    let flag = interrupted.clone();
    let watch = move || runtime.block_on(raise_when_asked(&mut endings, &flag));
    std::thread::Builder::new().name("endings".into()).spawn(watch).map_err(failed)?;
    Ok(interrupted)
}
