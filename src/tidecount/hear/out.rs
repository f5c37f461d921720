//! How the result of `tidecount hear` gets out.

use files::error::Failure;

/// Whether writing failed only because the reader went away (`| head`).
pub fn reader_left(error: &std::io::Error) -> bool {
    error.kind() == std::io::ErrorKind::BrokenPipe
}

/// What a failed write of the result is reported as.
pub fn unwritten(error: &std::io::Error) -> Failure {
    Failure::Output(format!("the result cannot be written ({error}); write it where there is room and you may write"))
}
