//! The phrases of `--commands`, and the command ear that listens for them alone.

use crate::hear::args::HearArgs;
use audio::AudioError;
use audio::resample::StreamResampler;
use command_ear::{
    ChildRecogniser, Choice, CommandEarError, CommandEvent, CommandRecogniser, Considered, EnrolledVoice, Grammar, HeardPhrase, Mode,
    Options, RATE_HZ,
};
use files::error::Failure;
use files::load;
use files::spoken::spoken_form;
use live::enrol;
use record::Store;
use session::listening;
use speak::Words;
use std::path::Path;

/// The recogniser is asked for what it heard after this much sound, s.
const ASK_EVERY_S: f64 = 10.0;

/// The phrases of a list separated by commas, each as it was typed, with its spoken form as the wording; those parted by `|` are wordings
/// of one choice.
///
/// # Errors
/// There is no phrase in the list, or one without any word.
pub fn phrases(list: &str) -> Result<Grammar, Failure> {
    let mut choices: Vec<Choice> = Vec::new();
    for typed in list.split(',').map(str::trim).filter(|typed| !typed.is_empty()) {
        let mut wordings: Vec<String> = typed.split('|').map(spoken_form).collect();
        if wordings.iter().any(String::is_empty) {
            return Err(Failure::Options(format!(
                "--commands: {typed:?} contains no word; name words that can be spoken, separated by commas"
            )));
        }
        wordings.retain(|wording| !choices.iter().any(|choice| choice.wordings.contains(wording)));
        if !wordings.is_empty() {
            choices.push(Choice { tag: typed.to_owned(), wordings });
        }
    }
    if choices.is_empty() {
        return Err(Failure::Options(
            "--commands names no phrase; name what to listen for, separated by commas: --commands \"ready,stop,go back\"".to_owned(),
        ));
    }
    Ok(Grammar { choices, ..Grammar::default() })
}

/// Hears the phrases as a session does: beside what sounds like them and isn't, and what a person in trouble says with less sureness.
fn as_in_a_session(mut grammar: Grammar) -> Result<Grammar, Failure> {
    let words = Words::usual()?;
    let safety: Vec<String> = listening::SAFETY.iter().flat_map(|&command| words.wordings(command)).collect();
    let urgent = |choice: &&Choice| choice.wordings.iter().all(|wording| safety.contains(wording));
    grammar.urgent = grammar.choices.iter().filter(urgent).map(|choice| choice.tag.clone()).collect();
    grammar.near = words.near_misses();
    Ok(grammar)
}

/// Those of the phrases that a session hears on the fast path: the wordings of "stop" and "pause".
fn fast_phrases(grammar: &Grammar) -> Result<Grammar, Failure> {
    let words = Words::usual()?;
    let always: Vec<String> = listening::ALWAYS.iter().flat_map(|&command| words.wordings(command)).collect();
    let fast = grammar.choices.iter().filter(|choice| choice.wordings.iter().all(|wording| always.contains(wording)));
    Ok(Grammar { choices: fast.cloned().collect(), ..Grammar::default() })
}

/// The command ear that `--commands` asks for.
///
/// # Errors
/// The phrases or the model cannot be used.
pub fn phrase_ear(args: &HearArgs, mode: Mode) -> Result<Option<PhraseEar>, Failure> {
    let Some(phrases) = args.commands.as_deref() else { return Ok(None) };
    let mut ear = PhraseEar::start(phrases, args.model.model.as_deref(), mode, args.why)?;
    if let Some(client) = &args.enrolled {
        let store = Store::open_existing(&args.data.folder()?)?;
        let own = store.map(|store| enrol::store::own_voice(&store, client)).transpose()?.unwrap_or_default();
        if own.words.is_empty() {
            return Err(Failure::Missing(format!(
                "--enrolled: nothing is kept of the voice of {client:?}; enrol it with `tidecount enrol --client NAME`, or name the folder of the record with --data DIR"
            )));
        }
        ear.weigh_in(&own);
    }
    Ok(Some(ear))
}

/// One recogniser for any number of sounds, one after the other.
pub struct PhraseEar {
    child: ChildRecogniser,
    grammar: Grammar,
    resampler: Option<StreamResampler>,
    mode: Mode,
    /// Samples pushed of this sound, at [`RATE_HZ`].
    pushed: u64,
    asked: u64,
    heard: Vec<HeardPhrase>,
    fault: Option<CommandEarError>,
    block: Vec<f32>,
}

impl PhraseEar {
    /// Starts the recogniser; `list` as in [`phrases`]. All phrases are heard as a state's are, stop and pause besides on the fast path.
    /// `why`: what did not count is kept, too.
    ///
    /// # Errors
    /// The list is empty, holds a word that the model does not know, or the model cannot be used.
    pub fn start(list: &str, model: Option<&Path>, mode: Mode, why: bool) -> Result<Self, Failure> {
        let grammar = as_in_a_session(phrases(list)?)?;
        let model = load::models(model, Words::usual()?.language())?;
        let mut child = ChildRecogniser::start(&Options { model, program: None, fast: fast_phrases(&grammar)?, mode })?;
        if why {
            child.tell_why();
        }
        child.listen_for(&grammar)?;
        Ok(Self { child, grammar, resampler: None, mode, pushed: 0, asked: 0, heard: Vec::new(), fault: None, block: Vec::new() })
    }

    /// The spoken forms of the phrases.
    pub fn wordings(&self) -> Vec<String> {
        self.grammar.choices.iter().flat_map(|choice| choice.wordings.iter().cloned()).collect()
    }

    /// Both are wordings of one choice.
    pub fn mean_the_same(&self, one: &str, other: &str) -> bool {
        let has = |choice: &Choice, wording: &str| choice.wordings.iter().any(|own| own == wording);
        self.grammar.choices.iter().any(|choice| has(choice, one) && has(choice, other))
    }

    /// Lets a client's own voice weigh in.
    pub fn weigh_in(&mut self, own: &EnrolledVoice) {
        self.child.weigh_in(own);
    }

    /// A new sound of `rate_hz` begins; its times are seconds from its first sample.
    ///
    /// # Errors
    /// The rate cannot be turned into the recogniser's.
    pub fn begin(&mut self, rate_hz: u32) -> Result<(), AudioError> {
        self.resampler = Some(StreamResampler::new(rate_hz, RATE_HZ)?);
        (self.pushed, self.asked, self.fault) = (0, 0, None);
        self.heard.clear();
        Ok(())
    }

    /// Hears samples of any number.
    pub fn push(&mut self, samples: &[f32]) {
        let Some(resampler) = &mut self.resampler else { return };
        self.block.clear();
        resampler.push(samples, &mut self.block);
        self.pass_on();
        if self.mode == Mode::Offline && (self.pushed - self.asked) as f64 > ASK_EVERY_S * f64::from(RATE_HZ) {
            self.asked = self.pushed;
            let events = self.child.poll();
            self.take(events);
        }
    }

    /// What was heard since the last call, without waiting for more.
    ///
    /// # Errors
    /// The recogniser keeps dying.
    pub fn heard(&mut self) -> Result<Vec<HeardPhrase>, CommandEarError> {
        let events = self.child.poll();
        self.take(events);
        self.result()
    }

    /// What was considered, taken or not, in the sound so far; after [`PhraseEar::end`], in all of it. Nothing where nobody asked why.
    pub fn considered(&mut self) -> Vec<Considered> {
        self.child.take_considered()
    }

    /// The sound is over: everything heard in it and not yet given.
    ///
    /// # Errors
    /// The recogniser died on this sound.
    pub fn end(&mut self) -> Result<Vec<HeardPhrase>, CommandEarError> {
        if let Some(mut resampler) = self.resampler.take() {
            self.block.clear();
            resampler.finish(&mut self.block);
            self.pass_on();
        }
        let events = self.child.finish();
        self.take(events);
        self.result()
    }

    fn pass_on(&mut self) {
        if !self.block.is_empty() {
            self.child.push(self.pushed as f64 / f64::from(RATE_HZ), &self.block, true);
            self.pushed += self.block.len() as u64;
        }
    }

    fn take(&mut self, events: Vec<CommandEvent>) {
        for event in events {
            match event {
                CommandEvent::Heard(phrase) => self.heard.push(phrase),
                // Live the next words count more than the lost ones.
                CommandEvent::Restarted { .. } if self.mode == Mode::Live => {}
                CommandEvent::Restarted { lost_s } => {
                    self.fault = Some(CommandEarError(format!(
                        "the recogniser stopped on this recording and missed {lost_s:.1} s of it; try again, or cut the recording there"
                    )));
                }
                CommandEvent::Failed { message } => self.fault = Some(CommandEarError(message)),
            }
        }
    }

    fn result(&mut self) -> Result<Vec<HeardPhrase>, CommandEarError> {
        self.fault.take().map_or_else(|| Ok(std::mem::take(&mut self.heard)), Err)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn phrases_are_trimmed_and_empties_ignored() {
        let grammar = phrases(" ready, ,Go  Back,go back,, I'm ready ").unwrap();
        let found: Vec<(&str, &str)> = grammar.choices.iter().map(|c| (c.tag.as_str(), c.wordings[0].as_str())).collect();
        assert_eq!(found, [("ready", "ready"), ("Go  Back", "go back"), ("I'm ready", "i'm ready")]);
        let grammar = phrases("help | Help me, it hurts, help me").unwrap();
        assert_eq!(grammar.choices.iter().map(|c| c.wordings.clone()).collect::<Vec<_>>(), [vec!["help", "help me"], vec!["it hurts"]]);
        for (list, complaint) in [("", "no phrase"), (" , ,", "no phrase"), ("stop,?!", "\"?!\""), ("stop|", "\"stop|\"")] {
            let error = phrases(list).unwrap_err().to_string();
            assert!(error.contains(complaint) && error.contains("separated by commas"), "{error}");
        }
    }
}
