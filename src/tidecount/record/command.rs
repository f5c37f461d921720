//! `tidecount record`: keeps the record safe: backup, check, passphrase, and what is kept of whom.

use std::io::Write;
use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::record::args::{RecordArgs, RecordOrder};
use crate::record::backup;
use crate::record::check::check;
use crate::record::forget;
use crate::record::passphrase;
use crate::record::sounds;
use files::error::{Failure, delivered};

/// Runs the command.
///
/// # Errors
/// The record cannot be used; the message says what was left as it was.
pub fn run(args: &RecordArgs) -> Result<ExitCode, Failure> {
    let folder = args.data.folder()?;
    let now = ZonedDateTime::now();
    let mut text = String::new();
    let code = match &args.order {
        RecordOrder::Backup { file, without_sound } => backup::backup(&folder, file, !without_sound, &now, &mut text),
        RecordOrder::Restore { file, replace } => backup::restore(&folder, file, *replace, &now, &mut text),
        RecordOrder::Check => check(&folder, &now, &mut text),
        RecordOrder::Passphrase { order } => passphrase::run(&folder, *order, &mut text),
        RecordOrder::Forget { client, yes } => forget::run(&folder, client, *yes, &mut text),
        RecordOrder::Sound { order } => sounds::run(&folder, order, &now, &mut text),
    }?;
    delivered(std::io::stdout().write_all(model::visible(&text).as_bytes())).map(|()| code)
}
