//! Vosk behind the traits of the command ear.

use audio::resample::resample_all;
use command_ear::decoder::{Decoder, SpeechModel, UNKNOWN, Word};
use command_ear::{CommandEarError, RATE_HZ};
use std::cell::RefCell;
use std::path::Path;
use std::rc::Rc;
use vosk::{CompleteResult, DecodingState, LogLevel, Model, Recognizer};

/// The second opinion hears the sound this much faster and higher, 10/9: slow and deep voices come nearer to what the model was trained
/// on. Of 104 recordings of "yes" and "stop" it heard 8 that the first decoding missed, and missed 1 that it heard; 9/10, another level and
/// another tilt of the spectrum brought nothing (odd-numbered recordings of `benches/command_ear/`).
const FASTER: (u32, u32) = (10, 9);

/// A loaded model.
#[derive(Clone)]
pub struct VoskModel(Rc<RefCell<Model>>);

impl VoskModel {
    /// Loads it, some tenths of a second. `talkative` lets the library write to standard error.
    ///
    /// # Errors
    /// The folder's name is no UTF-8, the library does not take the model, or the model has no unknown-speech symbol.
    pub fn load(folder: &Path, talkative: bool) -> Result<Self, CommandEarError> {
        vosk::set_log_level(if talkative { LogLevel::Info } else { LogLevel::Error });
        let shown = folder.display();
        let name = folder.to_str().ok_or_else(|| {
            CommandEarError(format!("{shown}: the folder's name has characters that the recogniser cannot take; rename it"))
        })?;
        let model = Model::new(name).ok_or_else(|| {
            CommandEarError(format!(
                "{shown}: the recogniser does not take this model; the folder may be damaged or made for another version. Unpack the model anew"
            ))
        })?;
        let model = Self(Rc::new(RefCell::new(model)));
        if !model.knows(UNKNOWN) {
            return Err(CommandEarError(format!(
                "{shown}: the model has no word {UNKNOWN}, so it would take any sound for a command; use a model that has one"
            )));
        }
        Ok(model)
    }
}

impl SpeechModel for VoskModel {
    type Decoder = VoskDecoder;

    fn knows(&self, word: &str) -> bool {
        self.0.borrow_mut().find_word(word).is_some()
    }

    fn decoder(&self, phrases: &[String]) -> Option<VoskDecoder> {
        let sound = !phrases.is_empty()
            && phrases.iter().all(|p| !p.contains(['"', '\\']) && !p.chars().any(char::is_control) && p.split(' ').all(|w| self.knows(w)));
        let mut grammar = phrases.to_vec();
        grammar.extend(decoys(phrases).filter(|d| self.knows(d)).map(str::to_owned));
        grammar.push(UNKNOWN.to_owned());
        sound.then(|| VoskDecoder { model: self.clone(), grammar, recogniser: None })
    }
}

/// Words that are listened for beside the phrases and never reported, because they are taken for a phrase otherwise. One pair only
/// paid: beside "no", "go" said by people was taken for it 5 instead of 12 times in 84, and "no" was heard as often as before
/// (odd-numbered recordings of `benches/command_ear.rs`). More words cost more hits than they saved.
fn decoys(phrases: &[String]) -> impl Iterator<Item = &'static str> {
    const DECOYS: [(&str, &str); 1] = [("no", "go")];
    let has = |word: &str| phrases.iter().any(|p| p == word);
    DECOYS.into_iter().filter(|(phrase, decoy)| has(phrase) && !has(decoy)).map(|(_, decoy)| decoy).collect::<Vec<_>>().into_iter()
}

/// Decodes one utterance after another, each by a new recogniser (set-up under a millisecond): nothing is left over
/// from the one before, times begin at 0, and memory cannot grow.
pub struct VoskDecoder {
    model: VoskModel,
    grammar: Vec<String>,
    recogniser: Option<Recognizer>,
}

impl VoskDecoder {
    fn recogniser(&mut self) -> Option<&mut Recognizer> {
        if self.recogniser.is_none() {
            let new = Recognizer::new_with_grammar(&self.model.0.borrow(), RATE_HZ as f32, &self.grammar);
            self.recogniser = new.map(|mut r| {
                r.set_words(true);
                r
            });
        }
        self.recogniser.as_mut()
    }
}

fn words(of: &[vosk::Word]) -> Vec<Word> {
    of.iter()
        .map(|w| Word {
            text: w.word.to_owned(),
            start_s: f64::from(w.start),
            end_s: f64::from(w.end),
            confidence: f64::from(w.conf).clamp(0.0, 1.0),
        })
        .collect()
}

impl Decoder for VoskDecoder {
    fn restart(&mut self) {
        self.recogniser = None;
    }

    fn accept(&mut self, samples: &[i16]) -> bool {
        let state = self.recogniser().map(|r| r.accept_waveform(samples));
        matches!(state, Some(Ok(DecodingState::Finalized)))
    }

    fn partial_text(&mut self) -> String {
        self.recogniser().map(|r| r.partial_result().partial.to_owned()).unwrap_or_default()
    }

    fn partial(&mut self) -> Vec<Word> {
        let Some(recogniser) = self.recogniser() else { return Vec::new() };
        // Words cost a lattice of the whole utterance each time, so they are asked for only here.
        recogniser.set_partial_words(true);
        let found = words(&recogniser.partial_result().partial_result);
        recogniser.set_partial_words(false);
        found
    }

    fn again(&mut self, utterance: &[i16]) -> Vec<Word> {
        let sound: Vec<f32> = utterance.iter().map(|&x| f32::from(x)).collect();
        // 900 samples for every 1000, played at the old rate.
        let Ok(faster) = resample_all(&sound, FASTER.0 * 100, FASTER.1 * 100) else { return Vec::new() };
        let faster: Vec<i16> = faster.iter().map(|x| x.round().clamp(-32768.0, 32767.0) as i16).collect();
        self.restart();
        self.accept(&faster);
        let mut words = self.finish();
        let scale = f64::from(FASTER.0) / f64::from(FASTER.1);
        for word in &mut words {
            (word.start_s, word.end_s) = (word.start_s * scale, word.end_s * scale);
        }
        words
    }

    fn finish(&mut self) -> Vec<Word> {
        let result = match self.recogniser().map(Recognizer::final_result) {
            Some(CompleteResult::Single(result)) => words(&result.result),
            _ => Vec::new(),
        };
        self.recogniser = None;
        result
    }
}
