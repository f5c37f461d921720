//! Microphone, loudspeaker, voice and recognition model.

use std::path::PathBuf;

use attend::Home;
use audio::file::names_file;
use files::error::Failure;
use hear::calibration::BELIEVABLE_CM;

/// What is listened to.
#[derive(Debug, Clone, clap::Args)]
pub struct Microphone {
    /// Listen to a microphone from `tidecount devices`, or to a recording
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav")]
    pub mic: String,
}

impl Default for Microphone {
    fn default() -> Self {
        Self { mic: "default".to_owned() }
    }
}

/// Who speaks.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct Voice {
    /// Speak with `espeak-ng[:VARIANT]`, `piper[:FILE.onnx]` or `system` [default: Piper where it is installed, else espeak-ng]
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
}

/// Help of `--speaker` where the usual loudspeaker plays beside a recording, too.
pub const ALOUD: &str = "Play on a loudspeaker from `tidecount devices`, into a WAV file, or nowhere [default: default]";

/// What recognises commands.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct Model {
    /// Recognise commands with this model, a folder in the Vosk layout [default: the built-in English model]
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
}

/// All that is heard and played, as it was typed.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct Sound {
    #[command(flatten)]
    microphone: Microphone,
    /// Play on a loudspeaker from `tidecount devices`, into a WAV file, or nowhere [default: default; none if --mic is a recording]
    #[arg(long, value_name = "default|NAME|FILE.wav|none")]
    speaker: Option<String>,
    #[command(flatten)]
    voice: Voice,
    #[command(flatten)]
    model: Model,
}

/// All that is heard and played, as it was meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SoundPath {
    pub mic: String,
    pub speaker: String,
    /// None: the usual one.
    pub voice: Option<String>,
    /// None: the built-in one.
    pub model: Option<PathBuf>,
    /// A recording takes the place of the microphone.
    pub recording: bool,
    /// What is played can come back through the microphone.
    pub hears_itself: bool,
}

impl Sound {
    /// What was meant: beside a recording nothing is played unless a loudspeaker is named.
    #[must_use]
    pub fn meant(&self) -> SoundPath {
        self.path(if names_file(&self.microphone.mic) { "none" } else { "default" })
    }

    /// What was meant where the usual loudspeaker plays beside a recording, too.
    #[must_use]
    pub fn meant_aloud(&self) -> SoundPath {
        self.path("default")
    }

    /// A loudspeaker or a voice was named.
    #[must_use]
    pub fn names_voice(&self) -> bool {
        self.speaker.is_some() || self.voice.voice.is_some()
    }

    fn path(&self, usual_speaker: &str) -> SoundPath {
        let mic = self.microphone.mic.clone();
        let speaker = self.speaker.clone().unwrap_or_else(|| usual_speaker.to_owned());
        let recording = names_file(&mic);
        SoundPath {
            // Nothing that we play can be in a recording, nor in a microphone when we play nothing.
            hears_itself: !recording && mic != "none" && !names_file(&speaker) && speaker != "none",
            recording,
            mic,
            speaker,
            voice: self.voice.voice.clone(),
            model: self.model.model.clone(),
        }
    }
}

impl SoundPath {
    /// With the devices that were arranged for this place, where none was named.
    #[must_use]
    pub fn at_home(mut self, home: Option<&Home>) -> Self {
        let arranged = |device: &mut String, of_home: Option<&String>| {
            if let Some(name) = of_home.filter(|_| device == "default") {
                device.clone_from(name);
            }
        };
        arranged(&mut self.mic, home.and_then(|home| home.microphone.as_ref()));
        arranged(&mut self.speaker, home.and_then(|home| home.loudspeaker.as_ref()));
        self
    }

    /// No loudspeaker is opened, and nothing can come back from one.
    pub fn play_nowhere(&mut self) {
        "none".clone_into(&mut self.speaker);
        self.hears_itself = false;
    }
}

/// How fast a recording is gone through.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct Fast {
    /// Go through a recording as fast as the machine allows, not in real time
    #[arg(long)]
    fast: bool,
}

impl Fast {
    /// Whether it was asked for.
    ///
    /// # Errors
    /// It was, and there is no recording.
    pub fn with(&self, sound: &SoundPath) -> Result<bool, Failure> {
        if self.fast && !sound.recording {
            return Err(Failure::Options(
                "--fast needs a recording: name a file with --mic FILE.wav; a live microphone runs in real time".to_owned(),
            ));
        }
        Ok(self.fast)
    }
}

/// A distance from the mouth, cm.
///
/// # Errors
/// No microphone stands there.
pub fn distance(text: &str) -> Result<f64, String> {
    let value: f64 = text.parse().map_err(|_| "not a number of cm".to_owned())?;
    if BELIEVABLE_CM.contains(&value) { Ok(value) } else { Err(format!("give {} to {} cm", BELIEVABLE_CM.start(), BELIEVABLE_CM.end())) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sound(mic: &str, speaker: Option<&str>) -> Sound {
        Sound { microphone: Microphone { mic: mic.to_owned() }, speaker: speaker.map(str::to_owned), ..Sound::default() }
    }

    #[test]
    fn beside_a_recording_nothing_is_played_unless_it_is_asked_for() {
        assert_eq!(Sound::default().meant().speaker, "default");
        assert_eq!(sound("said.wav", None).meant().speaker, "none");
        assert_eq!(sound("said.wav", Some("default")).meant().speaker, "default");
        assert_eq!(sound("said.wav", None).meant_aloud().speaker, "default");
    }

    #[test]
    fn only_a_live_microphone_hears_what_a_loudspeaker_plays() {
        let hears_itself = |mic: &str, speaker: Option<&str>| sound(mic, speaker).meant().hears_itself;
        assert!(hears_itself("default", None) && hears_itself("desk", Some("big one")));
        assert!(!hears_itself("said.wav", Some("default")) && !hears_itself("none", None));
        assert!(!hears_itself("default", Some("none")) && !hears_itself("default", Some("out.wav")));
    }

    #[test]
    fn the_devices_of_the_place_are_taken_where_none_is_named() {
        let home = Home { microphone: Some("desk".into()), loudspeaker: Some("shelf".into()), ..Home::default() };
        let taken = |sound: SoundPath| (sound.mic, sound.speaker);
        let at_home = |mic: &str, speaker: Option<&str>| taken(sound(mic, speaker).meant().at_home(Some(&home)));
        assert_eq!(at_home("default", None), ("desk".to_owned(), "shelf".to_owned()));
        assert_eq!(at_home("said.wav", None), ("said.wav".to_owned(), "none".to_owned()));
        assert_eq!(at_home("other", Some("big one")), ("other".to_owned(), "big one".to_owned()));
        assert_eq!(taken(Sound::default().meant().at_home(None)).0, "default");
    }

    #[test]
    fn hurry_needs_a_recording() {
        let fast = Fast { fast: true };
        assert!(fast.with(&sound("said.wav", None).meant()).is_ok_and(|fast| fast));
        assert!(fast.with(&Sound::default().meant()).is_err_and(|why| why.to_string().contains("--mic FILE.wav")));
        assert!(Fast::default().with(&Sound::default().meant()).is_ok_and(|fast| !fast));
    }

    #[test]
    fn distances_are_believable() {
        assert!(distance("30").is_ok() && distance("0").is_err() && distance("far").is_err());
    }
}
