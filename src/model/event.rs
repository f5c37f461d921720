//! What the engine is told, what it asks for, and the facts it leaves.

use crate::{Fall, Hold, Response, Trouble, Utterance, VoiceQuality, VoiceTask};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What happened. Times are seconds on the sample clock and never go back.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// The clock moved; every 10 ms.
    Tick { at_s: f64 },
    /// A command was heard.
    Command { at_s: f64, command: Command, confidence: f64, text: String },
    /// One of the accepted answers to a question was heard.
    Answer { at_s: f64, text: String, confidence: f64 },
    /// A hold has surely begun.
    Onset { at_s: f64, onset_s: f64 },
    /// A hold is over.
    Offset { at_s: f64, hold: Hold },
    /// Speech has begun, while the task is speech.
    SpeechBegan { at_s: f64, onset_s: f64 },
    /// A stretch of speech is over.
    Spoken { at_s: f64, utterance: Utterance },
    /// The room has become too loud to measure in, or quiet enough again; `room_db` is its level, dB re full scale.
    RoomLoud { at_s: f64, loud: bool, room_db: f64 },
    /// The first frame of a line left for the loudspeaker.
    LineBegan { at_s: f64, line: LineId },
    /// The last frame of a line left, or it was hushed or could not be spoken.
    LineEnded { at_s: f64, line: LineId },
    /// Something makes hearing or measuring doubtful.
    Trouble { at_s: f64, trouble: Trouble },
    /// Ctrl-C, a closing window: end now, with everything kept.
    Interrupt { at_s: f64 },
}

impl Event {
    /// When it happened, s on the sample clock.
    pub fn at_s(&self) -> f64 {
        match self {
            Event::Tick { at_s }
            | Event::Command { at_s, .. }
            | Event::Answer { at_s, .. }
            | Event::Onset { at_s, .. }
            | Event::Offset { at_s, .. }
            | Event::SpeechBegan { at_s, .. }
            | Event::Spoken { at_s, .. }
            | Event::RoomLoud { at_s, .. }
            | Event::LineBegan { at_s, .. }
            | Event::LineEnded { at_s, .. }
            | Event::Trouble { at_s, .. }
            | Event::Interrupt { at_s } => *at_s,
        }
    }
}

/// Numbers the lines of one session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct LineId(pub u64);

/// Everything that can be said to the tool. The words for each are the message `cmd-NAME`, wordings parted by `|`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Command {
    Ready,
    Done,
    Yes,
    No,
    Stop,
    Pause,
    GoOn,
    Again,
    Skip,
    GoBack,
    HowLong,
    Help,
    Slower,
    Faster,
    Louder,
    Softer,
    Rest,
    Finish,
    Dizzy,
    Hurts,
    Why,
    HowDid,
    Hint,
}

impl Command {
    /// Every command, in the order of the list above.
    pub const ALL: [Command; 23] = [
        Command::Ready,
        Command::Done,
        Command::Yes,
        Command::No,
        Command::Stop,
        Command::Pause,
        Command::GoOn,
        Command::Again,
        Command::Skip,
        Command::GoBack,
        Command::HowLong,
        Command::Help,
        Command::Slower,
        Command::Faster,
        Command::Louder,
        Command::Softer,
        Command::Rest,
        Command::Finish,
        Command::Dizzy,
        Command::Hurts,
        Command::Why,
        Command::HowDid,
        Command::Hint,
    ];

    /// A false one costs the client a step or the session, so an unsure one is asked about first.
    pub fn is_costly(self) -> bool {
        matches!(self, Command::Skip | Command::GoBack | Command::Finish)
    }

    /// Kebab-case name, as in the journal and the message keys.
    pub fn name(self) -> &'static str {
        match self {
            Command::Ready => "ready",
            Command::Done => "done",
            Command::Yes => "yes",
            Command::No => "no",
            Command::Stop => "stop",
            Command::Pause => "pause",
            Command::GoOn => "go-on",
            Command::Again => "again",
            Command::Skip => "skip",
            Command::GoBack => "go-back",
            Command::HowLong => "how-long",
            Command::Help => "help",
            Command::Slower => "slower",
            Command::Faster => "faster",
            Command::Louder => "louder",
            Command::Softer => "softer",
            Command::Rest => "rest",
            Command::Finish => "finish",
            Command::Dizzy => "dizzy",
            Command::Hurts => "hurts",
            Command::Why => "why",
            Command::HowDid => "how-did",
            Command::Hint => "hint",
        }
    }

    /// The message with its wordings, parted by `|`.
    pub fn wordings_key(self) -> String {
        format!("cmd-{}", self.name())
    }

    /// The message with how we name it aloud and on the screen.
    pub fn name_key(self) -> String {
        format!("say-{}", self.name())
    }
}

/// What the engine asks the outside to do.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Speak a line. Lines without a beat queue behind each other; one with a beat begins exactly then.
    Say { id: LineId, line: Line, on_beat_s: Option<f64> },
    /// Silence now; drop everything queued or scheduled. Each dropped line still gets its `LineEnded`.
    Hush,
    /// What to listen for from now on.
    Listen(Listening),
    /// The client chose to go on with the interrupted session (`true`) or to begin anew. Comes before any `Record`.
    Resume(bool),
    /// Change the loudness of the voice by so many dB.
    Volume { change_db: f64 },
    /// Speak slower (above 1) or faster (below 1) than now by this factor.
    SpeechRate { factor: f64 },
    /// Keep this fact.
    Record(Entry),
    /// Show this.
    Show(View),
    /// The session is over; everything has been said and kept.
    Finish,
}

/// A message of the catalogue with its arguments.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    pub key: String,
    pub args: Vec<(&'static str, Arg)>,
}

/// A value put into a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    Text(String),
    Number(f64),
    /// Another message, resolved first.
    Message(String),
}

/// What both ears are to do now.
#[derive(Debug, Clone, PartialEq)]
pub struct Listening {
    /// Commands of this state, about ten; `Stop` is always heard besides.
    pub commands: Vec<Command>,
    /// Answers to a question, accepted and near ones; wordings of one answer parted by `|`.
    pub answers: Vec<String>,
    /// Several answers may follow each other in one breath.
    pub list: bool,
    /// Many people talk here: only wordings of two words and more count, `stop` and `pause` apart.
    pub firm: bool,
    /// The voice ear's task.
    pub voice: VoiceTask,
}

/// What the screen shows; plain text, large. Lines are resolved by the message catalogue.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct View {
    /// "Long ah, 1 of 3".
    pub heading: Option<Line>,
    /// What to do now, or the clinician's cue words.
    pub prompt: Option<Line>,
    /// The large figure: running hold time or count.
    pub figure: String,
    /// Commands that can be said now, few.
    pub can_say: Vec<Command>,
}

/// A place in the routine, each counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Position {
    pub step: u32,
    pub set: u32,
    pub repetition: u32,
}

/// One line of the journal: a fact, when and where in the routine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Entry {
    /// Seconds on the sample clock.
    pub at_s: f64,
    /// What happened; its `kind` and values stand flat in the entry.
    #[serde(flatten)]
    pub fact: Fact,
    /// Where, if inside a step.
    #[serde(flatten)]
    pub position: Option<Position>,
}

/// What gave a level its scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LevelCalibration {
    /// Nothing: the level is dB re full scale, relative.
    #[default]
    None,
    /// A calibration that no longer holds: relative.
    Void,
    /// A sound level meter: dB SPL.
    Meter,
    /// A source of known level: dB SPL.
    Source,
    /// A phone's number: dB SPL, rough.
    Rough,
}

/// What a level refers to, besides its weighting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LevelTerms {
    /// "energy-mean": the equivalent level over the voiced frames, without Fast or Slow.
    pub time_weighting: String,
    /// Distance from the mouth for which the level holds, cm: 30 where calibrated; otherwise where the microphone stands, and
    /// `null` where nobody said.
    pub distance_cm: Option<f64>,
    pub calibration: LevelCalibration,
    /// The microphone changes its own volume: the level can be compared with nothing.
    pub auto_gain: bool,
    /// Seconds of it that were clipped; the true level is higher.
    pub clipped_s: f64,
}

impl Default for LevelTerms {
    fn default() -> Self {
        Self {
            time_weighting: "energy-mean".into(),
            distance_cm: None,
            calibration: LevelCalibration::None,
            auto_gain: false,
            clipped_s: 0.0,
        }
    }
}

/// What can be kept. Units are in the names. A value that could not be measured is NaN here and `null` in the journal.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Fact {
    SessionBegun {
        routine: String,
        steps: u32,
        software: String,
    },
    /// Went on from here after an interruption.
    SessionResumed {
        from: String,
    },
    /// The spoken answer to the cautions; `given` false also where none came.
    Agreement {
        given: bool,
        exercises: Vec<String>,
    },
    /// The spoken answer to whether the sound of practices may be kept for so many days, as the page asks; `null` where none came.
    SoundConsent {
        given: Option<bool>,
        days: u32,
    },
    /// Left out for want of agreement.
    StepLeftOut {
        exercise: String,
        reason: String,
    },
    StepBegun {
        exercise: String,
        /// The stage of a dose that grows over the weeks, from 1.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ramp_stage: Option<u32>,
    },
    /// A voiced trial.
    HoldMeasured {
        exercise: String,
        onset_s: f64,
        offset_s: f64,
        duration_s: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        f0_median_hz: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        f0_span_st: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        level_mean_db: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        level_fall_db: f64,
        level_weighting: String,
        level_calibrated: bool,
        /// Standard deviation of F0 about its median, semitones.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        f0_sd_st: Option<f64>,
        /// Slope of the level over the hold, dB a second; negative where the voice fades.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        level_slope_db_per_s: Option<f64>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        level_terms: Option<LevelTerms>,
        /// For the clinician's page alone. A louder voice alone makes these figures better.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        quality: Option<VoiceQuality>,
        breaks: u32,
        masked_s: f64,
        /// False where it was cut off by a command.
        complete: bool,
    },
    /// A posture or phase sequence was held.
    PostureHeld {
        exercise: String,
        duration_s: f64,
        prescribed_s: f64,
        complete: bool,
    },
    /// One paced cycle.
    RoundPaced {
        exercise: String,
        duration_s: f64,
        beat_s: f64,
        complete: bool,
    },
    /// One self-paced repetition; `ended_by` is "done" or "next cue".
    RepetitionDone {
        exercise: String,
        duration_s: f64,
        ended_by: String,
    },
    PhraseRead {
        exercise: String,
        phrase: String,
        duration_s: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        level_mean_db: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        f0_median_hz: f64,
        level_weighting: String,
        level_calibrated: bool,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        level_terms: Option<LevelTerms>,
    },
    SyllablesCounted {
        exercise: String,
        syllables: u32,
        duration_s: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        rate_hz: f64,
        #[serde(with = "crate::measured")]
        #[schemars(with = "Option<f64>")]
        irregularity_pct: f64,
    },
    QuestionAnswered {
        exercise: String,
        clue: String,
        answer: Option<String>,
        correct: bool,
        hint_given: bool,
        duration_s: f64,
    },
    /// What was named of a category, each once, in the order in which it was heard.
    CategoryNamed {
        exercise: String,
        category: String,
        named: Vec<String>,
        duration_s: f64,
        complete: bool,
    },
    Rested {
        duration_s: f64,
    },
    /// How long the client took, from the end of our line.
    ResponseTimed {
        to: Response,
        after_s: f64,
    },
    /// Holds or level fell over the last trials beyond this person's usual scatter; s or dB, as `of` says.
    FallNoticed {
        exercise: String,
        of: Fall,
        reference: f64,
        latest: f64,
        usual: f64,
    },
    /// A rest was offered because of it; `taken` also where nobody answered.
    RestOffered {
        taken: bool,
    },
    /// A measured result was told: after so many trials, or because the client asked.
    ResultTold {
        exercise: String,
        asked: bool,
    },
    /// Loud holds have reached the routine's limit for one practice.
    LoudLimitReached {
        loud_s: f64,
        limit_s: f64,
    },
    CommandHeard {
        command: Command,
        text: String,
        confidence: f64,
    },
    /// A repetition that nobody made.
    NoAnswer {
        asked: u32,
    },
    StepDone {
        exercise: String,
        repetitions_done: u32,
        repetitions_prescribed: u32,
    },
    StepStopped {
        exercise: String,
        reason: String,
        repetitions_done: u32,
        repetitions_prescribed: u32,
    },
    /// Said by the client: dizzy, pain, help.
    SafetyStop {
        exercise: Option<String>,
        reason: String,
    },
    /// The recogniser died and was restarted.
    RecogniserRestarted {
        lost_s: f64,
    },
    /// Hearing or measuring was doubtful from here on; each trouble is kept once.
    Troubled {
        trouble: Trouble,
    },
    /// The microphone of a live practice, as the sound system knows it; `gain` is "unknown" where that does not tell.
    MicrophoneUsed {
        system: String,
        name: String,
        rate_hz: u32,
        gain: String,
    },
    /// Something about the microphone's scale that bears on the figures, told once: `what` is "calibration" (what holds) or
    /// "calibration-void".
    MicrophoneNoted {
        what: String,
        text: String,
    },
    /// The room has become too loud to measure in, or quiet enough again; its level, dB re full scale, A-weighted.
    RoomLoud {
        loud: bool,
        room_db: f64,
    },
    /// The hold just measured stood so little over the room that its figures are doubtful.
    HoldInNoise {
        exercise: String,
        over_room_db: f64,
    },
    /// Microphone frames were lost.
    SoundLost {
        lost_s: f64,
    },
    SessionEnded {
        reason: String,
        steps_done: u32,
        steps_prescribed: u32,
        duration_s: f64,
    },
}
