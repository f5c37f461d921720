//! `tidecount export`: wiring.

use std::process::ExitCode;

use crate::export::args::{ExportArgs, What};
use ::export::fhir::BundleKind;
use files::error::Failure;
use files::exports::tables::CsvExport;
use files::exports::textgrid::Recording;
use files::exports::{calendar, journals, tables, textgrid};

/// Runs the command.
///
/// # Errors
/// There is nothing to export, or it cannot be read or written.
pub fn run(args: &ExportArgs) -> Result<ExitCode, Failure> {
    match &args.what {
        What::Csv(args) => {
            tables::write_csv(&CsvExport { selection: args.selection.meant()?, target: args.into(), table: args.table })?;
        }
        What::Json(args) => journals::write_json(&args.selection.meant()?, &(&args.target).into())?,
        What::Fhir(args) => {
            let kind = if args.transaction { BundleKind::Transaction } else { BundleKind::Collection };
            journals::write_fhir(&args.selection.meant()?, kind, &(&args.target).into())?;
        }
        What::Calendar(args) => calendar::write_calendar(&args.meant()?)?,
        What::Textgrid(args) => match (&args.journal, &args.sound) {
            (Some(journal), Some(sound)) => {
                let recording = Recording { journal: journal.clone(), sound: sound.clone(), part: args.part };
                textgrid::of_recording(&recording, &args.into())?;
            }
            _ => textgrid::of_record(&args.selection.meant()?, &args.into())?,
        },
        What::Dictionary(args) => tables::write_dictionary(args.csvw, &(&args.target).into())?,
    }
    Ok(ExitCode::SUCCESS)
}
