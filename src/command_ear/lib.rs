//! The command ear: closed-grammar recognition of spoken commands, in a supervised child process.
//!
//! Sound goes `ChildRecogniser` (parent) → pipe → `child` → `ear` (level gate, one `listener` per path) → Vosk,
//! and decisions come back the same way. All deciding is in the child, by pure code (`decide`, `level`,
//! `listener`), so that a result depends on the samples alone and not on who waits for whom.

mod alone;
mod batch;
pub mod child;
mod cues;
mod deaf;
mod decide;
pub mod decoder;
mod ear;
mod embedding;
mod file;
mod floor;
mod level;
mod lexicon;
mod listener;
mod models;
mod parent;
mod path;
mod supervise;
pub mod templates;
mod trace;
mod utterance;
mod verdict;
mod why;
mod wire;
mod write_down;

pub use deaf::DeafModel;
pub use decide::UNKNOWN;
pub use file::{recognise_file, recognise_with};
pub use floor::{Floor, to_db};
pub use lexicon::Lexicon;
pub use models::{Models, SECOND_EAR_FOLDER, SecondEarFiles};
pub use parent::{ChildRecogniser, Mode, Options};
pub use templates::EnrolledVoice;
pub use verdict::Verdict;
pub use why::Considered;
pub use write_down::write_down;

/// Rate the command ear works at, Hz.
pub const RATE_HZ: u32 = 16_000;

/// From this confidence on a phrase may be acted upon. Chosen on odd-numbered recordings, see `benches/command_ear.rs`.
pub const ACT_CONFIDENCE: f64 = 0.8;

/// Below this nothing is reported; between this and [`ACT_CONFIDENCE`] the caller asks "was that …?".
pub const ASK_CONFIDENCE: f64 = 0.5;

/// One thing that may be said, and all its everyday wordings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// What is reported when it is heard: "stop", "go-on", "answer:bank".
    pub tag: String,
    /// Lower-case wordings, each one or more words of the lexicon: "ready", "i'm ready". One may end with "[unk]" behind at least two
    /// words: it is heard where some word that nobody listens for follows. Its own words must stand in other wordings.
    pub wordings: Vec<String>,
}

/// A closed list of what may be said now. The unknown-speech path is always added.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Grammar {
    pub choices: Vec<Choice>,
    /// Choices from this one on, counted from 0, may follow each other in one breath, as when a category is named. A command
    /// before them stands alone, as ever.
    pub list_from: Option<usize>,
    /// What sounds like something that is listened for and isn't ("i'm busy", near "i'm dizzy"): recognised so that it is not taken for
    /// it, and never reported. What has a word that the model doesn't know is passed over, as is what is listened for itself.
    pub near: Vec<String>,
    /// Tags of choices that cost more to miss than to take wrongly: in several words they are reported at less sureness, as doubtful.
    pub urgent: Vec<String>,
}

/// A phrase that was heard.
#[derive(Debug, Clone, PartialEq)]
pub struct HeardPhrase {
    /// The [`Choice::tag`].
    pub tag: String,
    /// The wording heard.
    pub text: String,
    /// First and last instant of the phrase, s on the sample clock.
    pub start_s: f64,
    pub end_s: f64,
    /// How far the sound had been heard when it was decided, s on the sample clock.
    pub decided_s: f64,
    /// 0 to 1.
    pub confidence: f64,
    /// Which of the two paths heard it.
    pub path: Path,
}

/// The two recognisers that run side by side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Path {
    /// The grammar of the session's state; fed while neither we speak nor a hold runs.
    Main,
    /// "stop" and its like; fed always, decides sooner.
    Fast,
}

/// What came of feeding the command ear.
#[derive(Debug, Clone, PartialEq)]
pub enum CommandEvent {
    Heard(HeardPhrase),
    /// The child process died and was started again; `lost_s` seconds of sound went unheard.
    Restarted {
        lost_s: f64,
    },
    /// The child keeps dying and is not started again; nothing more will be heard. Said once.
    Failed {
        message: String,
    },
}

/// Why the command ear cannot work. The text names what is wrong and what to do.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct CommandEarError(pub String);

/// Hears commands. Sound comes in blocks of 10 ms at 16 kHz; times come from the caller's clock.
pub trait CommandRecogniser: Send {
    /// Changes what the main path listens for; what it had half heard is dropped.
    ///
    /// # Errors
    /// A word outside the lexicon or an empty wording; the old grammar stays.
    fn listen_for(&mut self, grammar: &Grammar) -> Result<(), CommandEarError>;
    /// Changes what the fast path listens for; a grammar without choices turns it off, and it costs nothing then.
    ///
    /// # Errors
    /// As [`CommandRecogniser::listen_for`].
    fn listen_for_fast(&mut self, _grammar: &Grammar) -> Result<(), CommandEarError> {
        Ok(())
    }
    /// No sound comes for a while: what is half heard is decided now. Never waits; the next block goes on as if nothing had been.
    fn pause(&mut self) {}
    /// Lets a client's own way of saying the commands weigh in from now on; one without words takes it back.
    fn weigh_in(&mut self, _own: &EnrolledVoice) {}
    /// The level that our own voice may have in the blocks pushed from now on, dB re full scale; −∞ for none, as in the beginning. What is
    /// no louder is no beginning of a command, and no going on of one.
    fn expect_own_voice(&mut self, _level_db: f64) {}
    /// One block. `start_s` is the sample clock at its first frame. `main` says whether the main path hears it too.
    fn push(&mut self, start_s: f64, block: &[f32], main: bool);
    /// What was decided so far. Offline it waits until every pushed block is dealt with, live it never waits.
    fn poll(&mut self) -> Vec<CommandEvent>;
}
