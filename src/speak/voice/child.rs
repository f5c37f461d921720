//! Runs a voice's program on one text and gives what it wrote, within a time.

use std::ffi::OsStr;
use std::io::{Read, Write};
use std::process::{Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

/// More than ten minutes of speech at 48 kHz: a program that writes more has run wild.
const MOST_BYTES: u64 = 64 << 20;

/// Why the program gave nothing.
#[derive(Debug, thiserror::Error)]
pub(super) enum ChildError {
    #[error("the program is not installed")]
    NotFound,
    #[error("it cannot be run: {0}")]
    Io(std::io::Error),
    #[error("it gave no end within {0:?} and was stopped")]
    TimedOut(Duration),
    #[error("it failed ({0})")]
    Failed(String),
}

/// Writes `input` to the program, reads all it writes to standard output.
pub(super) fn run<A: AsRef<OsStr>>(program: &OsStr, arguments: &[A], input: &str, limit: Duration) -> Result<Vec<u8>, ChildError> {
    let deadline = Instant::now() + limit;
    let mut child = Command::new(program)
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .map_err(|why| if why.kind() == std::io::ErrorKind::NotFound { ChildError::NotFound } else { ChildError::Io(why) })?;
    // Each pipe has its own thread: a program that fills one while we wait on another would never end.
    if let Some(mut pipe) = child.stdin.take() {
        let input = input.to_owned();
        // A program that does not read its input to the end tells why by its exit status.
        std::thread::spawn(move || drop(pipe.write_all(input.as_bytes())));
    }
    let output = child.stdout.take().map(read_all);
    let complaint = child.stderr.take().map(read_all);

    let written = output.and_then(|pipe| pipe.recv_timeout(deadline.saturating_duration_since(Instant::now())).ok());
    let status = loop {
        match child.try_wait() {
            Ok(Some(status)) => break status,
            Ok(None) if written.is_some() && Instant::now() < deadline => std::thread::sleep(Duration::from_millis(1)),
            Ok(None) => {
                // Both may fail only if it has just ended by itself.
                let _ = child.kill();
                let _ = child.wait();
                return Err(ChildError::TimedOut(limit));
            }
            Err(why) => return Err(ChildError::Io(why)),
        }
    };
    if !status.success() {
        let said = complaint.and_then(|pipe| pipe.recv_timeout(Duration::from_millis(200)).ok()).unwrap_or_default();
        let said = String::from_utf8_lossy(&said);
        let last = said.lines().rev().find(|line| !line.trim().is_empty()).unwrap_or("").trim().to_owned();
        return Err(ChildError::Failed(if last.is_empty() { status.to_string() } else { format!("{status}: {last}") }));
    }
    written.ok_or(ChildError::TimedOut(limit))
}

fn read_all(pipe: impl Read + Send + 'static) -> Receiver<Vec<u8>> {
    let (give, take) = channel();
    std::thread::spawn(move || {
        let mut bytes = Vec::new();
        // What was read before a fault counts; the exit status tells the fault.
        let _ = pipe.take(MOST_BYTES).read_to_end(&mut bytes);
        let _ = give.send(bytes);
    });
    take
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sh(script: &str, input: &str, limit: Duration) -> Result<Vec<u8>, ChildError> {
        run(OsStr::new("sh"), &["-c", script], input, limit)
    }

    const LONG: Duration = Duration::from_secs(60);

    #[test]
    fn gives_what_was_written_also_when_it_is_much() {
        assert_eq!(sh("cat", "hello", LONG).unwrap(), b"hello");
        let much = "x".repeat(1 << 20);
        assert_eq!(sh("cat; head -c 300000 /dev/zero >&2", &much, LONG).unwrap().len(), much.len());
    }

    #[test]
    fn faults_are_told_apart() {
        let missing = run(OsStr::new("no-such-program-here"), &["-x"], "", LONG);
        assert!(matches!(missing, Err(ChildError::NotFound)));
        let failed = sh("echo first >&2; echo bad voice >&2; exit 3", "", LONG).unwrap_err().to_string();
        assert!(failed.contains("bad voice") && failed.contains('3'), "{failed}");
    }

    #[test]
    fn a_program_that_hangs_is_stopped() {
        for script in ["exec sleep 600", "exec >&-; exec sleep 600"] {
            let hung = sh(script, "", Duration::from_millis(100));
            assert!(matches!(hung, Err(ChildError::TimedOut(_))), "{hung:?}");
        }
    }
}
