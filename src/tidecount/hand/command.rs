//! `tidecount hand …`: a client's package out, results back. Nothing goes over a network.

use std::process::ExitCode;

use crate::hand::args::{HandArgs, HandCommand};
use crate::hand::make;
use crate::hand::results;
use crate::hand::take;
use crate::terminal::desk::Desk;
use files::error::Failure;
use files::packages::sealed;
use handover::PublicKey;
use record::Store;

/// Runs the command.
///
/// # Errors
/// A file is refused, with the reason and the remedy; nothing has been taken or written then.
pub fn run(args: &HandArgs) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    let (mut input, mut out) = (std::io::stdin().lock(), std::io::stdout().lock());
    let mut desk = Desk { input: &mut input, out: &mut out };
    match &args.command {
        HandCommand::Make(args) => make::run(args, &data, &mut desk)?,
        HandCommand::Take(args) => take::run(args, &data, &mut desk)?,
        HandCommand::Results(args) => results::write(args, &data, &mut desk)?,
        HandCommand::Read { file } => results::read(file, &data, &mut desk)?,
        HandCommand::Key => {
            let own = sealed::clinician_key(&data)?.public().fingerprint();
            desk.say(&format!("Packages made on this computer carry the key\n\n    {own}\n\nRead it out when the household asks."));
            let in_force = Store::open_existing(&data)?.map(|store| store.packages_in_force()).transpose()?.unwrap_or_default();
            for package in in_force {
                let key = PublicKey::from_hex(&package.clinician_key)
                    .map_or_else(|| "an unreadable key".to_owned(), |key| key.fingerprint().to_string());
                desk.say(&format!("\nIn force here for {}: package {} with the clinician's key\n\n    {key}", package.client, package.id));
            }
        }
    }
    Ok(ExitCode::SUCCESS)
}
