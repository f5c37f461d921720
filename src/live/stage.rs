//! What every party works with: the clock, the voice, the command path, the words, and whoever looks on.

use crate::clock::Clock;
use crate::command_path::CommandPath;
use crate::give_way::GivesWay;
use crate::observe::{Observer, in_words};
use crate::over_own_voice::OverOwnVoice;
use crate::playback::Handed;
use crate::speech::{ActiveUtterance, Speech};
use audio::{AudioError, EchoState};
use command_ear::{CommandEvent, Grammar, HeardPhrase, Path};
use screen::ShownView;
use session::{Command, Line, LineId, View, listening};
use speak::Words;

/// A word that begins so soon before the main path opens was said after our voice: the recogniser's times may be off by as much, s.
const LEAD_S: f64 = 0.36;

/// The shared parts of a session under way.
pub struct Stage {
    pub clock: Clock,
    pub words: Words,
    pub speech: Speech,
    pub observers: Vec<Box<dyn Observer>>,
    pub gives_way: GivesWay,
    /// None where nobody can be heard at present.
    pub path: Option<CommandPath>,
    /// Blocks that were dealt with to their end.
    pub blocks: u64,
}

impl Stage {
    /// Seconds on the sample clock.
    #[must_use]
    pub fn now_s(&self) -> f64 {
        self.clock.now_s()
    }

    /// A line as text; one that is missing shows its key rather than nothing.
    #[must_use]
    pub fn text(&self, line: &Line) -> String {
        self.words.text(line).unwrap_or_else(|_| line.key.clone())
    }

    /// Calls every observer with the time.
    pub fn notify(&mut self, mut tell: impl FnMut(&mut dyn Observer, f64)) {
        let at_s = self.now_s();
        self.observers.iter_mut().for_each(|observer| tell(observer.as_mut(), at_s));
    }

    /// Something that the person at the machine should know.
    pub fn warn(&mut self, warning: &str) {
        self.notify(|observer, at_s| observer.told(at_s, warning));
    }

    /// Says a line; false where it cannot be put into words, which the observers are told.
    pub fn say(&mut self, id: LineId, line: Line, on_beat_s: Option<f64>) -> bool {
        match self.words.text_variant(&line, id.0) {
            Ok(text) => {
                self.speech.say(id, line, text, on_beat_s);
                true
            }
            Err(why) => {
                self.warn(&why.to_string());
                false
            }
        }
    }

    /// Silence at once.
    pub fn hush(&mut self) {
        self.notify(|observer, _| observer.hushed());
        self.speech.hush();
    }

    /// Shows a view, its commands by their `named` names.
    pub fn show(&mut self, view: &View, named: impl Fn(&Words, Command) -> String) {
        let shown = in_words(view, |line| self.text(line), |command| named(&self.words, command));
        self.show_words(Some(view), &shown);
    }

    /// Shows what is in words already.
    pub fn show_words(&mut self, view: Option<&View>, shown: &ShownView) {
        self.notify(|observer, at_s| {
            if let Some(view) = view {
                observer.viewed(at_s, view);
            }
            observer.shown(at_s, shown);
        });
    }

    /// Changes what the main path listens for; what it cannot hear is told.
    pub fn listen_for(&mut self, grammar: &Grammar) {
        if let Some(Err(why)) = self.path.as_mut().map(|path| path.listen_for(grammar)) {
            self.warn(&why.to_string());
        }
    }

    /// Changes what the fast path listens for; what it cannot hear is told.
    pub fn listen_for_fast(&mut self, grammar: &Grammar) {
        if let Some(Err(why)) = self.path.as_mut().map(|path| path.listen_for_fast(grammar)) {
            self.warn(&why.to_string());
        }
    }

    /// Lets the command path hear 10 ms of the raw microphone. `main`: the main path hears it, too.
    ///
    /// # Errors
    /// A block of another length than 10 ms.
    pub fn hear_commands(&mut self, mic: &[f32], block_s: f64, delay_s: f64, main: bool) -> Result<Vec<CommandEvent>, AudioError> {
        let Some(path) = &mut self.path else { return Ok(Vec::new()) };
        let heard = path.hear(mic, block_s, delay_s, main)?;
        self.speech.give_way(self.gives_way.hear(block_s, path.somebody_speaks()));
        Ok(heard)
    }

    /// With a canceller that works, the main path may open sooner after our own voice. Gives the canceller's state.
    pub fn follow_echo_canceller(&mut self) -> EchoState {
        let state = self.path.as_ref().map(CommandPath::echo_state).unwrap_or_default();
        self.speech.playback.set_reduction_db(state.reduction_db);
        state
    }

    /// The phrase is not our own voice, as far as can be told.
    #[must_use]
    pub fn is_not_ours(&self, heard: &HeardPhrase) -> bool {
        let playback = &self.speech.playback;
        if heard.path == Path::Fast && !playback.fast_path_is_open(heard.start_s) {
            return false;
        }
        let over_own_voice = playback.masks(heard.start_s) || playback.masks(heard.end_s);
        let exceeds = |path: &CommandPath| path.exceeds_residual_echo(heard);
        if over_own_voice && !self.path.as_ref().is_none_or(exceeds) {
            tracing::debug!(text = heard.text, at_s = heard.start_s, "taken for our own voice");
            return false;
        }
        true
    }

    /// Whatever began at this time counts: our own voice is no part of it.
    #[must_use]
    pub fn may_act_at(&self, start_s: f64) -> bool {
        let playback = &self.speech.playback;
        playback.main_path_is_open(start_s) || playback.main_path_is_open(start_s + LEAD_S)
    }

    /// A phrase that the main path heard counts where it may act, and over our own voice where it cannot wait.
    #[must_use]
    pub fn counts_where_it_was_said(&self, command: Command, wordings: &[String], heard: &HeardPhrase) -> bool {
        if heard.path == Path::Fast || self.may_act_at(heard.start_s) {
            return true;
        }
        let Some(path) = &self.path else { return true };
        let said = self.speech.said_between(heard.start_s, heard.end_s);
        let over = OverOwnVoice { said: &said, echo: path.echo_state(), over_residual_db: path.over_residual_echo_db(heard) };
        let counts = over.counts(command, wordings, heard);
        if !counts {
            tracing::debug!(text = heard.text, at_s = heard.start_s, "can wait until we are silent");
        }
        counts
    }

    /// It lies within one short word of ours, as a count is: such a word alone can pass for another where the canceller leaves much of it.
    pub fn is_over_a_count(&self, heard: &HeardPhrase) -> bool {
        let said = self.speech.said_between(heard.start_s, heard.end_s);
        self.speech.playback.masks(heard.end_s) && matches!(said.as_slice(), [word] if !word.text.trim().contains(' '))
    }

    /// A line began; the observers are told.
    pub fn line_began(&mut self, id: LineId, at_s: f64, at: Handed) -> bool {
        let Some(line) = self.speech.began(id, at) else { return false };
        for observer in &mut self.observers {
            observer.line_began(at_s, &line.line, &line.text);
        }
        true
    }

    /// A line ended; the observers are told, unless it was cut short.
    pub fn line_ended(&mut self, id: LineId, at_s: f64, at: Handed) -> bool {
        let Some(ended) = self.speech.ended(id, at) else { return false };
        let ActiveUtterance { line, text, .. } = &ended;
        if ended.is_complete() {
            self.observers.iter_mut().for_each(|observer| observer.line_ended(at_s, line, text));
        }
        true
    }
}

/// What the fast path listens for in every session.
#[must_use]
pub fn live_phrases(words: &Words) -> Vec<String> {
    listening::ALWAYS.iter().flat_map(|&command| words.wordings(command)).collect()
}
