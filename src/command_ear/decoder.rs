//! What the command ear needs of a speech recogniser.

pub use crate::decide::{UNKNOWN, Word};

/// A loaded model of speech.
pub trait SpeechModel {
    type Decoder: Decoder;
    /// It recognises words; without, the second ear hears alone.
    fn recognises(&self) -> bool {
        true
    }
    /// The model's lexicon has this word.
    fn knows(&self, word: &str) -> bool;
    /// A decoder for these phrases and unknown speech. None where there is no phrase, or where one has a word that the lexicon has
    /// not: a library may crash on a list it cannot read.
    fn decoder(&self, phrases: &[String]) -> Option<Self::Decoder>;
}

/// Turns the sound of one utterance into words.
pub trait Decoder {
    /// Forgets everything; the next samples begin an utterance.
    fn restart(&mut self);
    /// Takes samples at [`RATE_HZ`]; true where the decoder itself finds the utterance over.
    fn accept(&mut self, samples: &[i16]) -> bool;
    /// The words so far, parted by spaces, without times or confidences; lags some tenths of a second behind the sound. Cheap.
    fn partial_text(&mut self) -> String;
    /// The same with times and confidences. Costs as much as decoding the utterance so far.
    fn partial(&mut self) -> Vec<Word>;
    /// The words up to the last sample. [`Decoder::restart`] must follow.
    fn finish(&mut self) -> Vec<Word>;
    /// A second opinion on a whole utterance: its words when it is decoded at another speed, times as in the utterance. [`Decoder::restart`]
    /// must follow.
    fn again(&mut self, utterance: &[i16]) -> Vec<Word>;
}
