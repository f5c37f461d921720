//! What can be said to the tool.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Everything that can be said to the tool. The words for each are the message `cmd-NAME`, wordings parted by `|`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Command {
    Ready,
    Done,
    Yes,
    No,
    Stop,
    Pause,
    GoOn,
    Again,
    Skip,
    GoBack,
    HowLong,
    Help,
    Slower,
    Faster,
    Louder,
    Softer,
    Rest,
    /// The mouth or throat is dry.
    Dry,
    Finish,
    Dizzy,
    Hurts,
    ChestPain,
    CantBreathe,
    Choking,
    FeelSick,
    /// It has passed: the answer to what was said after one of the above.
    AllRight,
    /// Neither yes nor no.
    NotSure,
    Why,
    HowDid,
    Hint,
}

impl Command {
    /// Every command, in the order of the list above.
    pub const ALL: [Command; 30] = [
        Command::Ready,
        Command::Done,
        Command::Yes,
        Command::No,
        Command::Stop,
        Command::Pause,
        Command::GoOn,
        Command::Again,
        Command::Skip,
        Command::GoBack,
        Command::HowLong,
        Command::Help,
        Command::Slower,
        Command::Faster,
        Command::Louder,
        Command::Softer,
        Command::Rest,
        Command::Dry,
        Command::Finish,
        Command::Dizzy,
        Command::Hurts,
        Command::ChestPain,
        Command::CantBreathe,
        Command::Choking,
        Command::FeelSick,
        Command::AllRight,
        Command::NotSure,
        Command::Why,
        Command::HowDid,
        Command::Hint,
    ];

    /// A false one costs the client a step or the session, so an unsure one is asked about first.
    pub fn is_costly(self) -> bool {
        matches!(self, Command::Skip | Command::GoBack | Command::Finish) || self.is_emergency()
    }

    /// It ends the practice and has the client call for help.
    pub fn is_emergency(self) -> bool {
        matches!(self, Command::ChestPain | Command::CantBreathe)
    }

    /// Kebab-case name, as in the journal and the message keys.
    pub fn name(self) -> &'static str {
        match self {
            Command::Ready => "ready",
            Command::Done => "done",
            Command::Yes => "yes",
            Command::No => "no",
            Command::Stop => "stop",
            Command::Pause => "pause",
            Command::GoOn => "go-on",
            Command::Again => "again",
            Command::Skip => "skip",
            Command::GoBack => "go-back",
            Command::HowLong => "how-long",
            Command::Help => "help",
            Command::Slower => "slower",
            Command::Faster => "faster",
            Command::Louder => "louder",
            Command::Softer => "softer",
            Command::Rest => "rest",
            Command::Dry => "dry",
            Command::Finish => "finish",
            Command::Dizzy => "dizzy",
            Command::Hurts => "hurts",
            Command::ChestPain => "chest-pain",
            Command::CantBreathe => "cant-breathe",
            Command::Choking => "choking",
            Command::FeelSick => "feel-sick",
            Command::AllRight => "all-right",
            Command::NotSure => "not-sure",
            Command::Why => "why",
            Command::HowDid => "how-did",
            Command::Hint => "hint",
        }
    }

    /// The message with its wordings, parted by `|`.
    pub fn wordings_key(self) -> String {
        format!("cmd-{}", self.name())
    }

    /// The message with how we name it aloud and on the screen.
    pub fn name_key(self) -> String {
        format!("say-{}", self.name())
    }
}
