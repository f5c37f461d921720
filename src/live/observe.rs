//! Whoever follows a session from outside: the screen, the journal, the rehearsed client.

use std::collections::BTreeMap;

use crate::levels::LevelScale;
use hear::VoiceFrame;
use record::UsualVoice;
use routine::Routine;
use screen::{Offer, ShownView};
use session::{Entry, Line, Listening, View};

/// What a page asks for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asked {
    /// A button was pressed: the name of what it offers, "go-on".
    Command(String),
    /// A key that stands for the command of this name.
    Key(String),
}

/// What is known when a practice begins.
#[derive(Debug, Clone, Copy)]
pub struct Beginning<'a> {
    /// With the doses of today.
    pub routine: &'a Routine,
    /// What is usual for this client, by exercise.
    pub usual: &'a BTreeMap<String, UsualVoice>,
    /// A class is led: nobody is measured.
    pub class: bool,
    /// The page alone leads: nothing is heard.
    pub by_page: bool,
}

/// Follows a session. Called by the sound thread, so nothing here may wait. Times are seconds on the sample clock.
#[allow(unused_variables, reason = "a follower takes what it cares about and names all arguments for the reader")]
pub trait Observer: Send {
    /// A practice begins.
    fn begins(&mut self, beginning: &Beginning<'_>) {}
    /// The first frame of a line left for the loudspeaker.
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {}
    /// The last frame left; not called for a line that was hushed.
    fn line_ended(&mut self, at_s: f64, line: &Line, text: &str) {}
    /// A command or an answer was heard.
    fn heard(&mut self, at_s: f64, text: &str) {}
    /// What stands on the screen from now on, before it is put into words; `shown` follows.
    fn viewed(&mut self, at_s: f64, view: &View) {}
    /// What stands on the screen from now on, in words.
    fn shown(&mut self, at_s: f64, view: &ShownView) {}
    /// A fact of the session.
    fn kept(&mut self, entry: &Entry) {}
    /// In a class: whether somebody is there; none where nobody says so, or no longer.
    fn attended(&mut self, at_s: f64, participant: &str, present: Option<bool>) {}
    /// The client chose whether to go on with the interrupted session.
    fn resumed(&mut self, go_on: bool) {}
    /// The raw sound of the microphone, block by block, and how many frames were lost before it. It may be kept only where the client
    /// agreed, by page and by voice.
    fn sound(&mut self, lost_frames: u64, mic: &[f32]) {}
    /// Asked every tenth of a second: something that everybody who follows should be told.
    fn notice(&mut self) -> Option<String> {
        None
    }
    /// Every tenth of a second.
    fn tick(&mut self) {}
    /// The same with its time.
    fn passes(&mut self, now_s: f64) {}
    /// Something that the person at the machine should know.
    fn told(&mut self, at_s: f64, warning: &str) {}
    /// What is listened for from now on, and the commands among it as a button offers them.
    fn listens(&mut self, at_s: f64, listening: &Listening, may_say: &[Offer]) {}
    /// Silence: lines under way are not said to their end.
    fn hushed(&mut self) {}
    /// One look of the voice ear, every 10 ms, and what its level means.
    fn voice(&mut self, frame: &VoiceFrame, scale: LevelScale) {}
    /// What somebody asks for beside the voice; asked every 10 ms.
    fn asked(&mut self) -> Option<Asked> {
        None
    }
}

/// Puts a view into words; a message that is missing shows its key rather than nothing.
pub fn in_words(view: &View, text: impl Fn(&Line) -> String, named: impl Fn(session::Command) -> String) -> ShownView {
    ShownView {
        heading: view.heading.as_ref().map(&text).unwrap_or_default(),
        prompt: view.prompt.as_ref().map(&text).unwrap_or_default(),
        figure: view.figure.clone(),
        aside: view.aside.iter().map(&text).collect::<Vec<_>>().join("\n"),
        can_say: view.can_say.iter().map(|&command| Offer { name: command.name().to_owned(), label: named(command) }).collect(),
    }
}
