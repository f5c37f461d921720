//! What the eye gets in the terminal: large plain text, and keys beside the voice. It puts nothing into words and knows nothing of
//! sound or time but what it is given; a terminal that fails is left as it was found. Start at `show.rs`, then `terminal.rs`.

mod digits;
mod keys;
mod layout;
mod show;
mod shown;
mod terminal;

pub use keys::{Keys, restore_terminal};
pub use show::{NoScreen, Screen};
pub use shown::{Offer, ShownView};
pub use terminal::{TerminalScreen, fitted_to_terminal};
