//! `tidecount routine show FILE [--pdf OUT.pdf]`: the handout of a routine.

use std::io::{self, Write};

use crate::routine::args::ShowArgs;
use files::error::{Failure, delivered};
use files::pdf;
use files::routine_files::load_routine;
use report::{handout, to_text};
use routine::Hearing;
use session::{Arg, Line};
use speak::Words;

/// Shows the handout on `out`, or writes it as PDF and says so.
///
/// # Errors
/// The routine has faults, or a file cannot be written.
pub fn run(args: &ShowArgs, words: &Words, hearing: Hearing<'_>, out: &mut dyn Write) -> Result<(), Failure> {
    let prescription = load_routine(&args.file, hearing)?;
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default();
    let page = handout(&prescription, &say);
    let Some(path) = &args.pdf else {
        let width = terminal_size::terminal_size().map_or(80, |(width, _)| usize::from(width.0)).min(100);
        return delivered(out.write_all(to_text(&page, width).as_bytes()));
    };
    if path == &args.file {
        return Err(Failure::Options(format!("{} is the routine itself; name another file with --pdf", path.display())));
    }
    let pdf = pdf::handout(&page)?;
    let cannot = |why: io::Error| Failure::file(path, format!("cannot be written: {why}; name another file with --pdf"));
    disk::private::write(path, &pdf).map_err(cannot)?;
    delivered(writeln!(out, "Written to {}", path.display()))
}
