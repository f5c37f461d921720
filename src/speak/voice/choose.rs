//! Which voice a name means.

use super::espeak::{EspeakOptions, EspeakVoice};
use super::piper::PiperVoice;
use super::system::SYSTEM_VOICE;
use crate::{Language, SpeakError, Voice};
use std::path::PathBuf;

/// The voice of a name: none gives Piper where it is installed, else espeak-ng.
///
/// "espeak-ng", "espeak-ng:en-us+f3" (a voice and variant of that program), "piper", "piper:FILE.onnx".
///
/// # Errors
/// The name is unknown (the text lists those there are) or the voice does not work.
pub fn choose_voice(name: Option<&str>) -> Result<Box<dyn Voice>, SpeakError> {
    let Some(name) = name else {
        if let Some(file) = PiperVoice::installed().first() {
            match PiperVoice::new(file) {
                Ok(voice) => return Ok(Box::new(voice)),
                Err(why) => tracing::warn!("{why}"),
            }
        }
        return Ok(Box::new(EspeakVoice::new(EspeakOptions::default())?));
    };
    let (program, rest) = name.split_once(':').map_or((name, None), |(program, rest)| (program, Some(rest)));
    match program {
        "espeak-ng" => {
            let mut options = EspeakOptions::default();
            if let Some(voice) = rest {
                options.voice = voice.into();
            }
            Ok(Box::new(EspeakVoice::new(options)?))
        }
        "piper" => {
            let file = rest.map(PathBuf::from).or_else(|| PiperVoice::installed().into_iter().next());
            let file = file.ok_or_else(|| {
                let folder = PiperVoice::folder().map_or_else(|| "the folder of voices".into(), |f| f.display().to_string());
                SpeakError(format!(
                    "no Piper voice is installed: put NAME.onnx and NAME.onnx.json into {folder}, or name the file: --voice piper:FILE.onnx"
                ))
            })?;
            Ok(Box::new(PiperVoice::new(&file)?))
        }
        SYSTEM_VOICE => {
            Err(SpeakError("the system's voice speaks by itself and gives no samples; it cannot be used where samples are needed".into()))
        }
        _ => Err(SpeakError(format!(
            "there is no voice {name:?}; there are \"espeak-ng\", \"espeak-ng:VOICE\" (such as en-us or en-gb+f3), {}\"{SYSTEM_VOICE}\"",
            PiperVoice::installed().iter().map(|file| format!("\"piper:{}\", ", file.display())).collect::<String>()
        ))),
    }
}

/// The name of the voice that is meant in a language: what was named, else Piper's where one of the language is installed, else that of
/// espeak-ng. English keeps what [`choose_voice`] makes of no name.
#[must_use]
pub fn voice_of(name: Option<&str>, language: &Language) -> Option<String> {
    let espeak = || language.voices.first().map(|voice| format!("espeak-ng:{voice}"));
    if language.tag == "en" {
        return name.map(str::to_owned);
    }
    let is_of_language = |file: &PathBuf| {
        let name = file.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        language.piper.as_ref().is_some_and(|beginning| name.starts_with(beginning.as_str()))
    };
    let piper = || PiperVoice::installed().into_iter().find(is_of_language).map(|file| format!("piper:{}", file.display()));
    match name {
        None => piper().or_else(espeak),
        Some("piper") => piper().or_else(|| name.map(str::to_owned)),
        Some("espeak-ng") => espeak(),
        Some(other) => Some(other.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fault(name: &str) -> String {
        choose_voice(Some(name)).err().map(|why| why.0).unwrap_or_default()
    }

    #[test]
    fn names_mean_voices_and_unknown_ones_list_those_there_are() {
        assert!(choose_voice(None).is_ok());
        assert!(choose_voice(Some("espeak-ng")).unwrap().id().contains("en-gb"));
        assert!(choose_voice(Some("espeak-ng:en-us")).unwrap().id().contains("en-us"));
        let unknown = fault("nobody");
        assert!(unknown.contains("nobody") && unknown.contains("espeak-ng") && unknown.contains("system"), "{unknown}");
        assert!(fault("espeak-ng:nothing").contains("en-gb"));
        assert!(!fault("piper:nowhere.onnx").is_empty());
        let german = Language::find("de").unwrap();
        assert_eq!(voice_of(Some("espeak-ng"), &german).as_deref(), Some("espeak-ng:de"));
        assert_eq!(voice_of(Some("espeak-ng:en-us"), &german).as_deref(), Some("espeak-ng:en-us"));
        assert!(voice_of(None, &german).is_some() && voice_of(None, &Language::find("en").unwrap()).is_none());
        for language in Language::built_in().unwrap() {
            for voice in &language.voices {
                assert!(choose_voice(Some(&format!("espeak-ng:{voice}"))).is_ok(), "{voice}");
            }
        }
        assert!(fault("system").contains("by itself"));
    }
}
