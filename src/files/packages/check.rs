//! Checks the routines and word packs of a package, before one is made and before one is taken.

use crate::checker::Checker;
use handover::TextFile;
use model::visible;
use routine::{Hearing, Prescription, check_pack, check_text};

/// Checks every file; `place` stands before each file's name in faults.
///
/// # Errors
/// All faults of all files, one a line: `PLACEevening.toml:12: what. remedy`.
pub fn check_all(checker: &Checker, place: &str, routines: &[TextFile], packs: &[TextFile]) -> Result<Vec<Prescription>, String> {
    // A routine's own packs come with it.
    let beside = |name: &str| {
        let found = packs.iter().find(|file| file.name == name).map(|file| file.text.clone().into_bytes());
        found.ok_or_else(|| "it is not in the package; add it with --pack".to_owned())
    };
    checker.with_hearing(|hearing| check_against(Hearing { pack_file: Some(&beside), ..hearing }, place, routines, packs))
}

fn check_against(hearing: Hearing<'_>, place: &str, routines: &[TextFile], packs: &[TextFile]) -> Result<Vec<Prescription>, String> {
    let mut faults = Vec::new();
    let mut prescriptions = Vec::new();
    for file in routines {
        match check_text(&format!("{place}{}", file.name), &file.text, hearing) {
            Ok(prescription) => prescriptions.push(prescription),
            Err(found) => faults.push(found.to_string()),
        }
    }
    let checked = packs.iter().filter_map(|file| check_pack(&format!("{place}{}", file.name), file.text.as_bytes(), hearing).err());
    faults.extend(checked.map(|found| found.to_string()));
    if faults.is_empty() { Ok(prescriptions) } else { Err(visible(&faults.join("\n"))) }
}
