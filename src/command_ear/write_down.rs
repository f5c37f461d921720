//! Has what somebody told written down: a process of its own, with a model that knows a whole language, gets the sound and gives the
//! words. It is no command ear: nothing is decided by what it gives.

use super::CommandEarError;
use super::child::PARENT_VARIABLE;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The hidden command that does it.
const ORDER: &str = "__write-down";
/// Longer texts are cut off, bytes: nobody tells so much in a minute and a half.
const LONGEST: u64 = 16 << 10;

/// The words of a sound at [`super::RATE_HZ`], in small letters, none where nothing was understood. `program`: what runs as that process;
/// none for the running one, which a test is not. Takes as long as the model takes, seconds to tens of seconds.
///
/// # Errors
/// The process cannot be started, or the model cannot be used.
pub fn write_down(model: &Path, program: Option<&PathBuf>, samples: &[i16]) -> Result<Option<String>, CommandEarError> {
    let cannot = |why: &dyn std::fmt::Display| {
        CommandEarError(format!(
            "{}: what was told cannot be written down: {why}; take the folder away, or unpack the model anew",
            model.display()
        ))
    };
    let own = std::env::current_exe().map_err(|why| cannot(&why))?;
    let mut command = Command::new(program.unwrap_or(&own));
    command.arg(ORDER).arg("--model").arg(model).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null());
    command.env("OPENBLAS_NUM_THREADS", "1").env(PARENT_VARIABLE, std::process::id().to_string());
    // Ctrl-C goes to the program alone, which still waits for the words.
    #[cfg(unix)]
    std::os::unix::process::CommandExt::process_group(&mut command, 0);
    let mut process = command.spawn().map_err(|why| cannot(&why))?;
    let bytes: Vec<u8> = samples.iter().flat_map(|sample| sample.to_le_bytes()).collect();
    if let Some(mut input) = process.stdin.take() {
        // Where it has ended already, its status tells.
        let _ = input.write_all(&bytes);
    }
    let mut text = String::new();
    let read = process.stdout.take().map(|output| output.take(LONGEST).read_to_string(&mut text));
    let status = process.wait().map_err(|why| cannot(&why))?;
    if !status.success() {
        return Err(cannot(&status));
    }
    if let Some(Err(why)) = read {
        return Err(cannot(&why));
    }
    let text = text.trim().to_owned();
    Ok((!text.is_empty()).then_some(text))
}
