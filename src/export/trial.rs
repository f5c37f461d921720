//! Trials and repetitions with their conditions.

use super::practice::{Moment, entries, moment};
use crate::record::{KeptEntry, KeptPractice};
use crate::session::{Fact, LevelCalibration, LevelTerms, Position};

/// What kind of attempt it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum TrialKind {
    Hold,
    Posture,
    Round,
    Repetition,
    Phrase,
    Syllables,
    Question,
    Category,
}

impl TrialKind {
    pub const ALL: [Self; 8] = [Self::Hold, Self::Posture, Self::Round, Self::Repetition, Self::Phrase, Self::Syllables, Self::Question, Self::Category];

    /// The word for it in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Hold => "hold",
            Self::Posture => "posture",
            Self::Round => "round",
            Self::Repetition => "repetition",
            Self::Phrase => "phrase",
            Self::Syllables => "syllables",
            Self::Question => "question",
            Self::Category => "category",
        }
    }
}

/// Why a trial does not count among the results, or why its level does not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doubt {
    /// A command or the end of the practice cut it off.
    CutOff,
    /// It hardly stood out from the room's noise.
    InNoise,
    /// The microphone changed its own volume: its level can be compared with nothing.
    AutomaticGain,
    /// The microphone's loudest parts were cut off: the true level is higher.
    Clipped,
}

impl Doubt {
    pub const ALL: [Self; 4] = [Self::CutOff, Self::InNoise, Self::AutomaticGain, Self::Clipped];

    /// The word for it in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::CutOff => "cut-off",
            Self::InNoise => "in-noise",
            Self::AutomaticGain => "auto-gain",
            Self::Clipped => "clipped",
        }
    }

    /// In plain words.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::CutOff => "A command or the end of the practice cut it off.",
            Self::InNoise => "It hardly stood out from the noise of the room, so its figures are doubtful.",
            Self::AutomaticGain => "The microphone changed its own volume, so its level can be compared with no other.",
            Self::Clipped => "Its loudest parts were beyond what the microphone can take, so the true level is higher.",
        }
    }

    /// The whole trial is discarded for it, not its level alone.
    #[must_use]
    pub fn discards(self) -> bool {
        matches!(self, Self::CutOff | Self::InNoise)
    }
}

/// A level on the scale that it has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Level {
    /// dB SPL at the stated distance.
    Spl(f64),
    /// dB re full scale: comparable only with levels of the same microphone as it stood.
    Relative(f64),
    /// It was not measured, or is on no scale.
    None,
}

/// One trial or repetition.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial<'a> {
    pub kept: &'a KeptEntry,
    pub kind: TrialKind,
    pub exercise: &'a str,
    pub position: Option<Position>,
    /// When it began; none for a phrase or syllables, of which only the end of the pause after them is kept.
    pub began: Option<Moment>,
    /// When it ended; where `began` is none, when it was kept.
    pub ended: Moment,
    pub duration_s: f64,
    pub doubts: Vec<Doubt>,
    /// How far it stood over the room, where that was too little, dB.
    pub over_room_db: Option<f64>,
    /// What was noted of the microphone's scale in this part.
    pub microphone: Option<&'a str>,
}

impl Trial<'_> {
    /// Why it does not count; empty where it does.
    pub fn discarded(&self) -> impl Iterator<Item = Doubt> + '_ {
        self.doubts.iter().copied().filter(|doubt| doubt.discards())
    }

    #[must_use]
    pub fn counts(&self) -> bool {
        self.discarded().next().is_none()
    }

    /// Its level, on the scale that it has.
    #[must_use]
    pub fn level(&self) -> Level {
        let (Fact::HoldMeasured { level_mean_db, level_calibrated, .. } | Fact::PhraseRead { level_mean_db, level_calibrated, .. }) = &self.kept.entry.fact else {
            return Level::None;
        };
        let on_scale = match self.level_terms() {
            Some(terms) => calibrated(terms.calibration),
            None => *level_calibrated,
        };
        let gained = self.doubts.contains(&Doubt::AutomaticGain);
        match (level_mean_db.is_finite(), on_scale, gained) {
            (false, ..) | (_, true, true) => Level::None,
            (true, true, false) => Level::Spl(*level_mean_db),
            (true, false, _) => Level::Relative(*level_mean_db),
        }
    }

    /// What its level refers to; none where it has no level or an older version kept no terms.
    #[must_use]
    pub fn level_terms(&self) -> Option<&LevelTerms> {
        match &self.kept.entry.fact {
            Fact::HoldMeasured { level_terms, .. } | Fact::PhraseRead { level_terms, .. } => level_terms.as_ref(),
            _ => None,
        }
    }
}

/// True where levels are dB SPL.
#[must_use]
pub fn calibrated(calibration: LevelCalibration) -> bool {
    matches!(calibration, LevelCalibration::Meter | LevelCalibration::Source | LevelCalibration::Rough)
}

/// The word for a calibration state in every export.
#[must_use]
pub fn calibration_name(calibration: LevelCalibration) -> &'static str {
    match calibration {
        LevelCalibration::None => "none",
        LevelCalibration::Void => "void",
        LevelCalibration::Meter => "meter",
        LevelCalibration::Source => "source",
        LevelCalibration::Rough => "rough",
    }
}

/// Kind, exercise, beginning and end (s; the former only where it is known), duration and whether it came to its end.
type Attempt<'a> = (TrialKind, &'a str, Option<f64>, f64, f64, bool);

fn attempt<'a>(at_s: f64, fact: &'a Fact) -> Option<Attempt<'a>> {
    let ended = |kind, exercise: &'a str, duration_s: f64, complete| Some((kind, exercise, Some((at_s - duration_s).max(0.0)), at_s, duration_s, complete));
    match fact {
        Fact::HoldMeasured { exercise, onset_s, offset_s, duration_s, complete, .. } => {
            Some((TrialKind::Hold, exercise, Some(*onset_s), *offset_s, *duration_s, *complete))
        }
        Fact::PostureHeld { exercise, duration_s, complete, .. } => ended(TrialKind::Posture, exercise, *duration_s, *complete),
        Fact::RoundPaced { exercise, duration_s, complete, .. } => ended(TrialKind::Round, exercise, *duration_s, *complete),
        Fact::RepetitionDone { exercise, duration_s, .. } => ended(TrialKind::Repetition, exercise, *duration_s, true),
        Fact::CategoryNamed { exercise, duration_s, complete, .. } => ended(TrialKind::Category, exercise, *duration_s, *complete),
        // These are kept after the pause that ended them, or after time that does not count as thinking.
        Fact::PhraseRead { exercise, duration_s, .. } => Some((TrialKind::Phrase, exercise, None, at_s, *duration_s, true)),
        Fact::SyllablesCounted { exercise, duration_s, .. } => Some((TrialKind::Syllables, exercise, None, at_s, *duration_s, true)),
        Fact::QuestionAnswered { exercise, duration_s, .. } => Some((TrialKind::Question, exercise, None, at_s, *duration_s, true)),
        _ => None,
    }
}

/// Every trial of a practice, in order.
pub(super) fn trials(kept: &KeptPractice) -> Vec<Trial<'_>> {
    let mut found: Vec<Trial<'_>> = Vec::new();
    let (mut part, mut microphone) = (0, None);
    for (number, entry) in entries(kept) {
        if number != part {
            (part, microphone) = (number, None);
        }
        let fact = &entry.entry.fact;
        match fact {
            Fact::MicrophoneNoted { text, .. } => microphone = Some(text.as_str()),
            Fact::HoldInNoise { exercise, over_room_db } => {
                let hold = found.iter_mut().rev().find(|trial| trial.kind == TrialKind::Hold && trial.ended.part == part);
                if let Some(hold) = hold.filter(|hold| hold.exercise == exercise.as_str()) {
                    hold.over_room_db = Some(*over_room_db);
                    hold.doubts.push(Doubt::InNoise);
                }
            }
            _ => {}
        }
        let Some((kind, exercise, began_s, ended_s, duration_s, complete)) = attempt(entry.entry.at_s, fact) else { continue };
        let Some(ended) = moment(kept, number, ended_s) else { continue };
        let began = began_s.and_then(|began_s| moment(kept, number, began_s));
        let mut trial = Trial { kept: entry, kind, exercise, position: entry.entry.position, began, ended, duration_s, doubts: Vec::new(), over_room_db: None, microphone };
        let (gain, clipped) = trial.level_terms().map_or((false, false), |terms| (terms.auto_gain, terms.clipped_s > 0.0));
        let doubts = [(Doubt::CutOff, !complete), (Doubt::AutomaticGain, gain), (Doubt::Clipped, clipped)];
        trial.doubts.extend(doubts.into_iter().filter(|(_, holds)| *holds).map(|(doubt, _)| doubt));
        found.push(trial);
    }
    found
}
