//! `tidecount routine check FILE…`.

use std::io::{self, Write};
use std::path::PathBuf;

use ::routine::Hearing;
use files::routine_files::{load_routine, write_faults};

/// Checks each file. `fancy` shows faults with the lines they are about, for a terminal. True: all is well; false: faults were
/// found and written to `out`.
///
/// # Errors
/// `out` cannot be written.
pub fn check(files: &[PathBuf], hearing: Hearing<'_>, fancy: bool, out: &mut dyn Write) -> io::Result<bool> {
    let mut all_well = true;
    for file in files {
        match load_routine(file, hearing) {
            Ok(checked) => {
                let steps = checked.routine.steps.len();
                let minutes = (checked.routine.planned_duration_s() / 60.0).ceil();
                let s = |n: f64| if n == 1.0 { "" } else { "s" };
                let (of_steps, of_minutes) = (s(steps as f64), s(minutes));
                writeln!(out, "{}: no faults; {steps} step{of_steps}, about {minutes} minute{of_minutes}", file.display())?;
            }
            Err(faults) => {
                all_well = false;
                write_faults(&faults, fancy, out)?;
            }
        }
    }
    Ok(all_well)
}
