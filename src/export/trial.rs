//! Trials and repetitions with their conditions.

use super::moment::{Moment, entries, moment};
use model::{Fact, KeptEntry, KeptPractice, LevelTerms, Measure, Position, TrialKind, TrialOf};
use progress::{Conditions, Discard};

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
        let Some(level) = self.kept.entry.fact.level() else { return Level::None };
        let on_scale = level.terms.map_or(level.calibrated, |terms| terms.calibration.is_spl());
        match (level.mean_db.is_finite(), on_scale, self.auto_gain()) {
            (false, ..) | (_, true, true) => Level::None,
            (true, true, false) => Level::Spl(level.mean_db),
            (true, false, _) => Level::Relative(level.mean_db),
        }
    }

    /// What its level refers to; none where it has no level or an older version kept no terms.
    #[must_use]
    pub fn level_terms(&self) -> Option<&LevelTerms> {
        self.kept.entry.fact.level().and_then(|level| level.terms)
    }
}

/// When an attempt began and ended on the sample clock, s; the former only where it is known.
fn span_s(at_s: f64, fact: &Fact, duration_s: f64) -> (Option<f64>, f64) {
    match fact {
        Fact::HoldMeasured { onset_s, offset_s, .. } => (Some(*onset_s), *offset_s),
        // These are kept after the pause that ended them, or after time that does not count as thinking.
        Fact::PhraseRead { .. } | Fact::Talked { .. } | Fact::SyllablesCounted { .. } | Fact::QuestionAnswered { .. } => (None, at_s),
        _ => (Some((at_s - duration_s).max(0.0)), at_s),
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
        let Some(TrialOf { kind, exercise, duration_s, complete }) = fact.trial() else { continue };
        let (began_s, ended_s) = span_s(entry.entry.at_s, fact, duration_s);
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
    let conditions = Conditions { in_noise: trial.over_room_db.is_some(), ..Conditions::of(&trial.kept.entry.fact, None, None) };
    let why =
        |measure| if misdated { Some(Discard::Misdated) } else { Discard::of(measure, &conditions, trial.complete, trial.duration_s) };
    let has_level = trial.kept.entry.fact.level().is_some();
    (trial.discard, trial.level_discard) = (why(Measure::HoldS), why(Measure::LevelDb).filter(|_| has_level));
}
