//! The recogniser's own process: Vosk, fed by the command ear's service. It decides nothing; `command_ear` does. Nothing but the
//! program may depend on it, for Vosk's C++ core aborts the process on an inner contradiction. Start at `vosk_decoder.rs`.

mod vosk_decoder;
mod write_down;

use std::path::Path;
use std::process::ExitCode;

pub use vosk_decoder::{VoskDecoder, VoskModel};
pub use write_down::write_down_main;

/// Runs the recogniser on standard input and output until the input ends. `model` is a folder in the Vosk layout; without one no word is
/// recognised, and the second ear hears alone. `second_ear` is the folder of its network; none for the one that comes with the program.
#[must_use]
pub fn child_main(model: Option<&Path>, second_ear: Option<&Path>) -> ExitCode {
    // Where the system does not end it with its parent, it ends with the next read.
    let _ = foreign::parent::end_with_parent();
    // The parent may have ended before that.
    if command_ear::child::is_orphan() {
        return ExitCode::FAILURE;
    }
    foreign::small_product::provide();
    match model {
        Some(model) => command_ear::child::serve(|talkative| VoskModel::load(model, talkative), second_ear),
        None => command_ear::child::serve(command_ear::DeafModel::load, second_ear),
    }
}
