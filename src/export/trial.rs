//! Trials and repetitions with their conditions.

use super::practice::{Moment, entries, moment};
use model::{KeptEntry, KeptPractice};
use progress::{Conditions, Discard, Measure};
use session::{Fact, LevelCalibration, LevelTerms, Position};

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
    pub const ALL: [Self; 8] =
        [Self::Hold, Self::Posture, Self::Round, Self::Repetition, Self::Phrase, Self::Syllables, Self::Question, Self::Category];

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

/// The word for a reason in every export.
#[must_use]
pub fn discard_name(discard: Discard) -> &'static str {
    match discard {
        Discard::CutOff => "cut-off",
        Discard::InNoise => "in-noise",
        Discard::Masked => "masked",
        Discard::AutoGain => "auto-gain",
        Discard::Clipped => "clipped",
        Discard::Misdated => "misdated",
    }
}

/// What is known of the microphone of a part.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mic<'a> {
    /// Sound system, name, samples a second and gain, as the sound system told them; none for recordings and in old practices.
    pub used: Option<(&'a str, &'a str, u32, &'a str)>,
    /// Its calibration in words, or why it no longer holds.
    pub note: Option<&'a str>,
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
    /// False where a command or the end of the practice cut it off.
    pub complete: bool,
    /// Why it counts in no result; none where it does. The rules are those of the progress arithmetic.
    pub discard: Option<Discard>,
    /// Why its level counts in no result; none where it does, and where it has no level.
    pub level_discard: Option<Discard>,
    /// How far it stood over the room, where that was too little, dB.
    pub over_room_db: Option<f64>,
    pub mic: Mic<'a>,
}

impl Trial<'_> {
    #[must_use]
    pub fn counts(&self) -> bool {
        self.discard.is_none()
    }

    /// The microphone changed its own volume.
    #[must_use]
    pub fn auto_gain(&self) -> bool {
        self.level_terms().is_some_and(|terms| terms.auto_gain)
    }

    /// Its level, on the scale that it has.
    #[must_use]
    pub fn level(&self) -> Level {
        let (Fact::HoldMeasured { level_mean_db, level_calibrated, .. } | Fact::PhraseRead { level_mean_db, level_calibrated, .. }) =
            &self.kept.entry.fact
        else {
            return Level::None;
        };
        let on_scale = match self.level_terms() {
            Some(terms) => calibrated(terms.calibration),
            None => *level_calibrated,
        };
        match (level_mean_db.is_finite(), on_scale, self.auto_gain()) {
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
    let ended = |kind, exercise: &'a str, duration_s: f64, complete| {
        Some((kind, exercise, Some((at_s - duration_s).max(0.0)), at_s, duration_s, complete))
    };
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

/// Every trial of a practice, in order. `misdated`: the practice's date cannot be believed.
pub(super) fn trials(kept: &KeptPractice, misdated: bool) -> Vec<Trial<'_>> {
    let mut found: Vec<Trial<'_>> = Vec::new();
    let (mut part, mut mic) = (0, Mic::default());
    for (number, entry) in entries(kept) {
        if number != part {
            (part, mic) = (number, Mic::default());
        }
        let fact = &entry.entry.fact;
        match fact {
            Fact::MicrophoneUsed { system, name, rate_hz, gain } => mic.used = Some((system, name, *rate_hz, gain)),
            Fact::MicrophoneNoted { text, .. } => mic.note = Some(text),
            Fact::HoldInNoise { exercise, over_room_db } => {
                let hold = found.iter_mut().rev().find(|trial| trial.kind == TrialKind::Hold && trial.ended.part == part);
                if let Some(hold) = hold.filter(|hold| hold.exercise == exercise.as_str()) {
                    hold.over_room_db = Some(*over_room_db);
                    judge(hold, misdated);
                }
            }
            _ => {}
        }
        let Some((kind, exercise, began_s, ended_s, duration_s, complete)) = attempt(entry.entry.at_s, fact) else { continue };
        let Some(ended) = moment(kept, number, ended_s) else { continue };
        let began = began_s.and_then(|began_s| moment(kept, number, began_s));
        let position = entry.entry.position;
        let mut trial = Trial {
            kept: entry,
            kind,
            exercise,
            position,
            began,
            ended,
            duration_s,
            complete,
            discard: None,
            level_discard: None,
            over_room_db: None,
            mic,
        };
        judge(&mut trial, misdated);
        found.push(trial);
    }
    found
}

fn judge(trial: &mut Trial<'_>, misdated: bool) {
    let masked_s = if let Fact::HoldMeasured { masked_s, .. } = &trial.kept.entry.fact { *masked_s } else { 0.0 };
    let terms = trial.level_terms();
    let conditions = Conditions {
        auto_gain: trial.auto_gain(),
        clipped_s: terms.map_or(0.0, |terms| terms.clipped_s),
        masked_s,
        in_noise: trial.over_room_db.is_some(),
        ..Conditions::default()
    };
    let why =
        |measure| if misdated { Some(Discard::Misdated) } else { Discard::of(measure, &conditions, trial.complete, trial.duration_s) };
    let has_level = matches!(trial.kind, TrialKind::Hold | TrialKind::Phrase);
    (trial.discard, trial.level_discard) = (why(Measure::HoldS), why(Measure::LevelDb).filter(|_| has_level));
}

/// A figure that is written as 0 where it could not be had.
pub(super) fn positive(value: f64) -> f64 {
    if value > 0.0 { value } else { f64::NAN }
}
