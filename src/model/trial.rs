//! Which facts are trials, and what all trials have.

use crate::fact::Fact;
use crate::level::LevelOf;

/// What kind of attempt it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TrialKind {
    /// A sustained vowel or glide.
    Hold,
    /// A posture or a sequence of phases.
    Posture,
    /// A paced cycle.
    Round,
    /// A self-paced repetition.
    Repetition,
    /// A phrase read aloud.
    Phrase,
    /// Talk on a prompt, or a passage read aloud.
    Talk,
    /// Rapid syllables.
    Syllables,
    /// A word question.
    Question,
    /// Members named of a category.
    Category,
}

impl TrialKind {
    /// Every kind.
    pub const ALL: [Self; 9] = [
        Self::Hold,
        Self::Posture,
        Self::Round,
        Self::Repetition,
        Self::Phrase,
        Self::Talk,
        Self::Syllables,
        Self::Question,
        Self::Category,
    ];

    /// The word for it in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Hold => "hold",
            Self::Posture => "posture",
            Self::Round => "round",
            Self::Repetition => "repetition",
            Self::Phrase => "phrase",
            Self::Talk => "talk",
            Self::Syllables => "syllables",
            Self::Question => "question",
            Self::Category => "category",
        }
    }

    /// The kind of that name.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

/// What every trial has, as it stands in its fact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrialOf<'a> {
    pub kind: TrialKind,
    pub exercise: &'a str,
    pub duration_s: f64,
    /// False where a command cut it off.
    pub complete: bool,
}

impl Fact {
    /// What every trial has; none where this is no trial.
    #[must_use]
    pub fn trial(&self) -> Option<TrialOf<'_>> {
        let (kind, exercise, duration_s, complete) = match self {
            Self::HoldMeasured { exercise, duration_s, complete, .. } => (TrialKind::Hold, exercise, duration_s, *complete),
            Self::PostureHeld { exercise, duration_s, complete, .. } => (TrialKind::Posture, exercise, duration_s, *complete),
            Self::RoundPaced { exercise, duration_s, complete, .. } => (TrialKind::Round, exercise, duration_s, *complete),
            Self::RepetitionDone { exercise, duration_s, .. } => (TrialKind::Repetition, exercise, duration_s, true),
            Self::PhraseRead { exercise, duration_s, .. } => (TrialKind::Phrase, exercise, duration_s, true),
            Self::Talked { exercise, duration_s, complete, .. } => (TrialKind::Talk, exercise, duration_s, *complete),
            Self::SyllablesCounted { exercise, duration_s, .. } => (TrialKind::Syllables, exercise, duration_s, true),
            Self::QuestionAnswered { exercise, duration_s, .. } => (TrialKind::Question, exercise, duration_s, true),
            Self::CategoryNamed { exercise, duration_s, complete, .. } => (TrialKind::Category, exercise, duration_s, *complete),
            _ => return None,
        };
        Some(TrialOf { kind, exercise, duration_s: *duration_s, complete })
    }

    /// The level of a trial that has one.
    #[must_use]
    pub fn level(&self) -> Option<LevelOf<'_>> {
        match self {
            Self::HoldMeasured { level_mean_db, level_weighting, level_calibrated, level_terms, .. }
            | Self::PhraseRead { level_mean_db, level_weighting, level_calibrated, level_terms, .. }
            | Self::Talked { level_mean_db, level_weighting, level_calibrated, level_terms, .. } => Some(LevelOf {
                mean_db: *level_mean_db,
                weighting: level_weighting,
                calibrated: *level_calibrated,
                terms: level_terms.as_ref(),
            }),
            _ => None,
        }
    }
}
