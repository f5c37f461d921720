//! Routine files, read and checked; and their faults, written for a person.

use std::io::{self, Read, Write};
use std::path::Path;

use miette::GraphicalReportHandler;
use routine::{Faults, Hearing, MAX_FILE_BYTES, Prescription, check_bytes};

/// Reads a routine file and checks it.
///
/// # Errors
/// All faults of the file, or why it cannot be read.
pub fn load_routine(path: &Path, hearing: Hearing<'_>) -> Result<Prescription, Faults> {
    let name = path.display().to_string();
    let bytes = read_limited(path)
        .map_err(|error| Faults::of_file(&name, format!("cannot be read: {error}"), "Check the file's name and that you may read it."))?;
    // A pack named by its file lies beside the routine.
    let beside = |pack: &str| read_limited(&path.with_file_name(pack)).map_err(|error| error.to_string());
    check_bytes(&name, &bytes, Hearing { pack_file: Some(&beside), ..hearing })
}

/// At most one byte more than a file may have, so that a huge one is known without being read.
pub fn read_limited(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let limit = u64::try_from(MAX_FILE_BYTES).unwrap_or(u64::MAX).saturating_add(1);
    std::fs::File::open(path)?.take(limit).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Writes every fault: with its lines for a terminal, else as `file:line: what. remedy`.
///
/// # Errors
/// `out` cannot be written.
pub fn write_faults(faults: &Faults, fancy: bool, out: &mut dyn Write) -> io::Result<()> {
    if fancy {
        let mut drawn = String::new();
        for fault in &faults.list {
            let report = miette::Report::new(fault.clone()).with_source_code(faults.source_code());
            if GraphicalReportHandler::new().render_report(&mut drawn, report.as_ref()).is_ok() {
                continue;
            }
            // Drawing failed half-way: the plain text says as much.
            return writeln!(out, "{faults}");
        }
        write!(out, "{drawn}")
    } else {
        writeln!(out, "{faults}")
    }
}
