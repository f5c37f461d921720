//! The voice that is always there: the `espeak-ng` program (Debian package of that name).
//!
//! The program is run, not linked: it is under the GPL, and its output is the same bytes each time.

use super::child::{self, ChildError};
use super::sound;
use crate::{Pcm, SpeakError, Voice, finish};
use std::ffi::OsStr;
use std::time::Duration;

const PROGRAM: &str = "espeak-ng";
/// A line takes 20 to 80 ms; a program that needs so long hangs.
const LIMIT: Duration = Duration::from_secs(15);

/// Slower than this synthetic speech is understood worse, not better (Roring 2007); faster than this older listeners lose it
/// (Sutton et al. 1995), words a minute.
const SLOWEST_WPM: f64 = 100.0;
const FASTEST_WPM: f64 = 220.0;

/// How it speaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EspeakOptions {
    /// A language as `espeak-ng --voices` lists it, with a variant after `+` if wanted: "en-gb", "en-us+f3".
    pub voice: String,
    /// Words a minute, 80 to 300. Default 150: calm, for listeners of age (common practice, no source).
    pub words_per_minute: u32,
    /// Pitch as the program counts it, 0 to 99. Default 50.
    pub pitch: u32,
}

impl Default for EspeakOptions {
    fn default() -> Self {
        Self { voice: "en-gb".into(), words_per_minute: 150, pitch: 50 }
    }
}

/// Renders by running `espeak-ng`.
#[derive(Debug)]
pub struct EspeakVoice {
    options: EspeakOptions,
    version: String,
}

fn fault(why: &ChildError) -> SpeakError {
    SpeakError(match why {
        ChildError::NotFound => {
            format!("there is no voice: the program {PROGRAM} is not installed; run ./setup.sh, or install the package {PROGRAM}")
        }
        why => format!("the voice {PROGRAM} does not work: {why}"),
    })
}

fn ask(arguments: &[&str]) -> Result<String, SpeakError> {
    let bytes = child::run(OsStr::new(PROGRAM), arguments, "", LIMIT).map_err(|why| fault(&why))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

impl EspeakVoice {
    /// Asks the program for its version and whether it has the voice: it would silently take another otherwise.
    ///
    /// # Errors
    /// The program is missing or does not work, or a setting is none it knows; the text names those it has.
    pub fn new(options: EspeakOptions) -> Result<Self, SpeakError> {
        if !(80..=300).contains(&options.words_per_minute) || options.pitch > 99 {
            return Err(SpeakError(format!(
                "{PROGRAM} speaks 80 to 300 words a minute at pitch 0 to 99, not {} at {}",
                options.words_per_minute, options.pitch
            )));
        }
        let version = ask(&["--version"])?
            .split_whitespace()
            .find(|word| word.starts_with(|c: char| c.is_ascii_digit()))
            .unwrap_or("unknown")
            .to_owned();
        let (language, variant) = options.voice.split_once('+').map_or((options.voice.as_str(), None), |(l, v)| (l, Some(v)));
        // The first part is the language: "en-gb" stands among the English ones.
        let main: String = language.chars().take_while(char::is_ascii_lowercase).collect();
        let mut of_language = Self::listed(&format!("--voices={main}"), 1)?;
        if !of_language.iter().any(|name| name == language) {
            if of_language.is_empty() {
                of_language = Self::listed("--voices=en", 1)?;
            }
            return Err(SpeakError(format!(
                "{PROGRAM} has no voice {language:?}; it has {}. `{PROGRAM} --voices` lists those of all languages",
                of_language.join(", ")
            )));
        }
        if let Some(variant) = variant {
            let variants = Self::listed("--voices=variant", 4)?;
            if !variants.iter().any(|name| name == variant) {
                return Err(SpeakError(format!("{PROGRAM} has no variant {variant:?}; it has {}", variants.join(", "))));
            }
        }
        Ok(Self { options, version })
    }

    /// One column of a list of voices. Voices of the MBROLA back end are left out: they need data that is not installed.
    fn listed(which: &str, column: usize) -> Result<Vec<String>, SpeakError> {
        let mut names: Vec<String> = ask(&[which])?
            .lines()
            .skip(1)
            .map(|line| line.split_whitespace().collect::<Vec<_>>())
            .filter(|fields| fields.get(4).is_some_and(|file| !file.starts_with("mb/")))
            .filter_map(|fields| fields.get(column).map(|name| name.trim_start_matches("!v/").to_owned()))
            .filter(|name| name != "variant")
            .collect();
        names.sort();
        names.dedup();
        Ok(names)
    }
}

impl Voice for EspeakVoice {
    fn id(&self) -> String {
        let EspeakOptions { voice, words_per_minute, pitch } = &self.options;
        format!("{PROGRAM} {} {voice} {words_per_minute} wpm pitch {pitch} line 1", self.version)
    }

    fn render(&mut self, text: &str) -> Result<Pcm, SpeakError> {
        let (speed, pitch) = (self.options.words_per_minute.to_string(), self.options.pitch.to_string());
        // The text goes through standard input: as an argument one that begins with a dash would be an option.
        let arguments = ["-v", &self.options.voice, "-s", &speed, "-p", &pitch, "-b", "1", "-z", "--stdin", "--stdout"];
        let bytes = child::run(OsStr::new(PROGRAM), &arguments, text, LIMIT).map_err(|why| fault(&why))?;
        let raw = sound::from_wav(&bytes).map_err(|why| SpeakError(format!("the voice {PROGRAM} does not work: {why}")))?;
        finish(&raw).ok_or_else(|| SpeakError(format!("the voice {PROGRAM} gives no sound for {text:?}")))
    }

    fn change_rate(&mut self, factor: f64) {
        let wanted = f64::from(self.options.words_per_minute) / factor;
        if wanted.is_finite() {
            self.options.words_per_minute = wanted.clamp(SLOWEST_WPM, FASTEST_WPM).round() as u32;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn voice() -> EspeakVoice {
        EspeakVoice::new(EspeakOptions::default()).expect("espeak-ng is a package of ./setup.sh")
    }

    #[test]
    fn the_same_text_is_the_same_sound() {
        let (first, second) = (voice().render("Twenty-four."), voice().render("Twenty-four."));
        assert_eq!(first.unwrap().samples, second.unwrap().samples);
    }

    #[test]
    fn speed_and_voice_are_heard() {
        let options = EspeakOptions { words_per_minute: 90, ..EspeakOptions::default() };
        let mut slow = EspeakVoice::new(options).unwrap();
        let text = "Breathe in through the nose, and out through the mouth.";
        let (slow_line, line) = (slow.render(text).unwrap(), voice().render(text).unwrap());
        assert!(slow_line.duration_s() > 1.3 * line.duration_s(), "{} {}", slow_line.duration_s(), line.duration_s());
        assert_ne!(slow.id(), voice().id());
    }

    #[test]
    fn a_missing_program_is_told_with_its_remedy() {
        let why = fault(&ChildError::NotFound).0;
        assert!(why.contains("espeak-ng") && why.contains("./setup.sh"), "{why}");
    }

    #[test]
    fn unknown_names_and_silent_texts_are_errors_that_help() {
        let named = |voice: &str| EspeakOptions { voice: voice.into(), ..EspeakOptions::default() };
        let unknown = EspeakVoice::new(named("en-xx")).unwrap_err().0;
        assert!(unknown.contains("en-xx") && unknown.contains("en-gb") && unknown.contains("en-us"), "{unknown}");
        let variant = EspeakVoice::new(named("en-us+nobody")).unwrap_err().0;
        assert!(variant.contains("nobody") && variant.contains("f3"), "{variant}");
        assert!(EspeakVoice::new(named("en-us+f3")).is_ok());
        let silent = voice().render("...").unwrap_err().0;
        assert!(silent.contains("no sound"), "{silent}");
        assert!(voice().render("--help").is_ok_and(|line| line.duration_s() < 3.0), "a text is never an option");
    }
}
