//! The model of a language that has none: it recognises nothing, so that everything else goes on as ever, and the second ear hears alone.

use super::CommandEarError;
use super::decoder::{Decoder, SpeechModel, Word};

/// Knows every word and hears none.
#[derive(Debug, Clone, Copy, Default)]
pub struct DeafModel;

/// Finds nothing in any sound.
#[derive(Debug, Clone, Copy, Default)]
pub struct DeafDecoder;

impl DeafModel {
    /// # Errors
    /// None; it is loaded where others are.
    pub fn load(_talkative: bool) -> Result<Self, CommandEarError> {
        Ok(Self)
    }
}

impl SpeechModel for DeafModel {
    type Decoder = DeafDecoder;

    fn recognises(&self) -> bool {
        false
    }

    fn knows(&self, _word: &str) -> bool {
        true
    }

    fn decoder(&self, phrases: &[String]) -> Option<DeafDecoder> {
        (!phrases.is_empty()).then_some(DeafDecoder)
    }
}

impl Decoder for DeafDecoder {
    fn restart(&mut self) {}

    fn accept(&mut self, _samples: &[i16]) -> bool {
        false
    }

    fn partial_text(&mut self) -> String {
        String::new()
    }

    fn partial(&mut self) -> Vec<Word> {
        Vec::new()
    }

    fn finish(&mut self) -> Vec<Word> {
        Vec::new()
    }

    fn again(&mut self, _utterance: &[i16]) -> Vec<Word> {
        Vec::new()
    }
}
