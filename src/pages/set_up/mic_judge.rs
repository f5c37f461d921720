//! A plain verdict on a microphone: from some seconds of the room, some seconds of speech, and our own voice coming back.

/// What was heard, levels A-weighted, dB re full scale; none where nothing was.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HeardLevels {
    pub room_db: Option<f64>,
    /// Energy mean of the voiced frames.
    pub voice_db: Option<f64>,
    /// Seconds of speech that were voiced.
    pub voiced_s: f64,
    /// Seconds that were clipped.
    pub clipped_s: f64,
    /// Highest sample of all.
    pub peak: f32,
    pub auto_gain: bool,
    pub lost_s: f64,
    /// The level of our own voice in the microphone; none where nothing was played.
    pub own_voice_db: Option<f64>,
    /// The echo canceller found our own voice to drown a soft one.
    pub drowned: bool,
}

/// What is wrong, the most important first; each is a message `page-mic-NAME`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Finding {
    /// Nothing but digital silence.
    Dead,
    /// Nobody was heard to speak.
    NoSpeech,
    Clips,
    RoomLoud,
    TooSoft,
    ChangesVolume,
    OwnVoiceLoud,
    SoundLost,
}

impl Finding {
    /// The message that tells of it.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Dead => "page-mic-dead",
            Self::NoSpeech => "page-mic-no-speech",
            Self::Clips => "page-mic-clips",
            Self::RoomLoud => "page-mic-room-loud",
            Self::TooSoft => "page-mic-too-soft",
            Self::ChangesVolume => "page-mic-changes-volume",
            Self::OwnVoiceLoud => "page-mic-own-voice",
            Self::SoundLost => "page-mic-lost",
        }
    }

    /// Every one.
    pub const ALL: [Self; 8] =
        [Self::Dead, Self::NoSpeech, Self::Clips, Self::RoomLoud, Self::TooSoft, Self::ChangesVolume, Self::OwnVoiceLoud, Self::SoundLost];
}

/// The verdict.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Judged {
    pub levels: HeardLevels,
    /// Empty: it works.
    pub findings: Vec<Finding>,
}

/// A microphone that delivers no more than this, sample for sample, is muted or not there (as `tidecount hear` has it).
const DEAD_PEAK: f32 = 1e-5;
/// A room this loud leaves soft voices no place under full scale (as `tidecount hear` has it).
const LOUD_ROOM_DB: f64 = -40.0;
/// A voice less than this over the room is timed badly: the project's aims end there.
const LEAST_OVER_ROOM_DB: f64 = 10.0;
/// Somebody who spoke for five seconds has voiced at least this much of it, s (common practice, no source).
const LEAST_VOICED_S: f64 = 0.5;
/// More than this of the speech may not be clipped, s (common practice, no source).
const MOST_CLIPPED_S: f64 = 0.02;
/// Our own voice may stand so far over the client's before a word said meanwhile is lost, dB (common practice, no source).
const MOST_OWN_OVER_VOICE_DB: f64 = 15.0;
/// More lost sound than this is told, s.
const MOST_LOST_S: f64 = 0.05;

/// Judges what was heard.
#[must_use]
pub fn judge(levels: &HeardLevels) -> Judged {
    let mut findings = Vec::new();
    if levels.peak <= DEAD_PEAK {
        findings.push(Finding::Dead);
    } else {
        let over_room = levels.voice_db.zip(levels.room_db).map(|(voice, room)| voice - room);
        let spoke = levels.voiced_s >= LEAST_VOICED_S;
        if levels.clipped_s > MOST_CLIPPED_S {
            findings.push(Finding::Clips);
        }
        if levels.room_db.is_some_and(|room| room > LOUD_ROOM_DB) {
            findings.push(Finding::RoomLoud);
        }
        if !spoke {
            findings.push(Finding::NoSpeech);
        } else if over_room.is_some_and(|over| over < LEAST_OVER_ROOM_DB) && !findings.contains(&Finding::RoomLoud) {
            findings.push(Finding::TooSoft);
        }
        if levels.auto_gain {
            findings.push(Finding::ChangesVolume);
        }
        let over_voice = levels.own_voice_db.zip(levels.voice_db.filter(|_| spoke)).map(|(own, voice)| own - voice);
        if levels.drowned || over_voice.is_some_and(|over| over > MOST_OWN_OVER_VOICE_DB) {
            findings.push(Finding::OwnVoiceLoud);
        }
        if levels.lost_s > MOST_LOST_S {
            findings.push(Finding::SoundLost);
        }
    }
    findings.sort_unstable();
    Judged { levels: *levels, findings }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn good() -> HeardLevels {
        HeardLevels {
            room_db: Some(-65.0),
            voice_db: Some(-32.0),
            voiced_s: 3.0,
            peak: 0.3,
            own_voice_db: Some(-40.0),
            ..HeardLevels::default()
        }
    }

    #[test]
    fn a_good_microphone_works() {
        assert!(judge(&good()).findings.is_empty());
        assert!(judge(&HeardLevels { own_voice_db: None, ..good() }).findings.is_empty());
    }

    #[test]
    fn each_trouble_is_told() {
        for (levels, wanted) in [
            (HeardLevels { peak: 0.0, ..good() }, vec![Finding::Dead]),
            (HeardLevels { voiced_s: 0.1, voice_db: None, ..good() }, vec![Finding::NoSpeech]),
            (HeardLevels { clipped_s: 0.4, ..good() }, vec![Finding::Clips]),
            (HeardLevels { room_db: Some(-38.0), ..good() }, vec![Finding::RoomLoud]),
            (HeardLevels { voice_db: Some(-58.0), own_voice_db: None, ..good() }, vec![Finding::TooSoft]),
            (HeardLevels { auto_gain: true, ..good() }, vec![Finding::ChangesVolume]),
            (HeardLevels { own_voice_db: Some(-10.0), ..good() }, vec![Finding::OwnVoiceLoud]),
            (HeardLevels { drowned: true, ..good() }, vec![Finding::OwnVoiceLoud]),
            (HeardLevels { lost_s: 0.3, ..good() }, vec![Finding::SoundLost]),
            (HeardLevels { clipped_s: 0.4, auto_gain: true, ..good() }, vec![Finding::Clips, Finding::ChangesVolume]),
        ] {
            assert_eq!(judge(&levels).findings, wanted, "{levels:?}");
        }
    }
}
