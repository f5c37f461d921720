//! Man pages, shell completions and the desktop entry, made from the definition of the commands for whoever packs the program.

use std::io;
use std::path::Path;
use std::process::ExitCode;

use clap::{Command, CommandFactory};
use clap_complete::Shell;

use crate::command_line::Arguments;
use files::error::Failure;

const NAME: &str = "tidecount";

/// Writes them into a folder.
///
/// # Errors
/// Something cannot be written.
pub fn run(folder: &Path) -> Result<ExitCode, Failure> {
    write(folder).map_err(|why| Failure::file(folder, format!("cannot be written to: {why}")))?;
    Ok(ExitCode::SUCCESS)
}

fn write(folder: &Path) -> io::Result<()> {
    std::fs::create_dir_all(folder)?;
    clap_mangen::generate_to(shown(), folder)?;
    for shell in [Shell::Bash, Shell::Zsh, Shell::Fish] {
        clap_complete::generate_to(shell, &mut shown(), NAME, folder)?;
    }
    std::fs::write(folder.join(format!("{NAME}.desktop")), desktop_entry(&shown()))
}

/// The program without what only itself calls, which completions would offer.
fn shown() -> Command {
    let all = Arguments::command();
    let commands: Vec<Command> = all.get_subcommands().filter(|command| !command.is_hide_set()).cloned().collect();
    let about = all.get_about().cloned().unwrap_or_default();
    Command::new(NAME).about(about).version(env!("CARGO_PKG_VERSION")).subcommand_required(true).subcommands(commands)
}

/// The pages, as a desktop starts them: the window of the terminal ends them. <https://specifications.freedesktop.org/desktop-entry-spec/>
fn desktop_entry(program: &Command) -> String {
    let about = |command: &Command| command.get_about().map(ToString::to_string).unwrap_or_default();
    let pages = program.find_subcommand("pages").map(about).unwrap_or_default();
    format!(
        "[Desktop Entry]\nType=Application\nName={NAME}\nGenericName={}\nComment={pages}\nExec={NAME} pages\nIcon={NAME}\n\
         Terminal=true\nCategories=Education;MedicalSoftware;\n",
        about(program)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_that_can_be_chosen_has_a_page_and_is_completed_in_every_shell() {
        let dir = tempfile::tempdir().expect("a folder");
        write(dir.path()).expect("writes");
        let read = |name: &str| std::fs::read_to_string(dir.path().join(name)).unwrap_or_else(|why| panic!("{name}: {why}"));
        let all = Arguments::command();
        let shown: Vec<&Command> = all.get_subcommands().filter(|command| !command.is_hide_set()).collect();
        assert!(shown.len() > 15 && shown.len() < all.get_subcommands().count());
        let (top, shells) = (read("tidecount.1"), ["tidecount.bash", "_tidecount", "tidecount.fish"].map(read));
        for command in shown {
            let name = command.get_name();
            assert!(read(&format!("tidecount-{name}.1")).contains(".SH SYNOPSIS"), "{name}");
            assert!(top.contains(name), "{name}");
            assert!(shells.iter().all(|shell| shell.contains(name)), "{name}");
        }
        for hidden in all.get_subcommands().filter(|command| command.is_hide_set()).map(Command::get_name) {
            assert!(!dir.path().join(format!("tidecount-{hidden}.1")).exists(), "{hidden}");
            assert!(shells.iter().all(|shell| !shell.contains(hidden)), "{hidden}");
        }
    }

    #[test]
    fn the_desktop_entry_starts_the_pages_and_says_what_they_are() {
        let entry = desktop_entry(&shown());
        assert!(entry.contains("\nExec=tidecount pages\n"), "{entry}");
        let comment = entry.lines().find_map(|line| line.strip_prefix("Comment=")).expect("a comment");
        assert!(comment.len() > 10, "{entry}");
    }
}
