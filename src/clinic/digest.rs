//! One client for the caseload: what was worked out when results came in. Plain data; the arithmetic is `sums`, the rows `refresh`.

use super::adherence::Share;
use jiff::civil::Date;
use model::Symptom;

/// A programme that is older asks for a look, weeks (common practice, no source). Packages themselves do not expire.
pub const REVIEW_WEEKS: i32 = 12;

/// What bears on the levels of the latest practice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Microphone {
    /// No level was taken, or it is calibrated and as before.
    Fine,
    /// Levels are relative: no calibration.
    Relative,
    /// Another microphone, gain, calibration or distance than before.
    Changed,
    /// A calibration no longer holds.
    Void,
    /// The microphone changes its own volume.
    AutoGain,
}

impl Microphone {
    pub(super) const ALL: [Self; 5] = [Self::Fine, Self::Relative, Self::Changed, Self::Void, Self::AutoGain];

    /// As it stands in the database.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Relative => "relative",
            Self::Changed => "changed",
            Self::Void => "void",
            Self::AutoGain => "auto-gain",
        }
    }

    pub(super) fn of_word(word: &str) -> Self {
        Self::ALL.into_iter().find(|one| one.word() == word).unwrap_or(Self::Fine)
    }
}

/// What the client said was wrong, how often each.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Said {
    pub chest_pain: u32,
    pub breathless: u32,
    pub choking: u32,
    pub dizzy: u32,
    pub pain: u32,
    pub sick: u32,
    pub help: u32,
    /// In a word that this version does not know.
    pub otherwise: u32,
}

impl Said {
    /// Once more.
    pub fn count(&mut self, symptom: &Symptom) {
        *match symptom {
            Symptom::ChestPain => &mut self.chest_pain,
            Symptom::Breathless => &mut self.breathless,
            Symptom::Choking => &mut self.choking,
            Symptom::Dizzy => &mut self.dizzy,
            Symptom::Pain => &mut self.pain,
            Symptom::Sick => &mut self.sick,
            Symptom::Help => &mut self.help,
            Symptom::Other(_) => &mut self.otherwise,
        } += 1;
    }

    /// What cannot wait anywhere: chest pain, no breath, choking.
    #[must_use]
    pub fn urgent(&self) -> u32 {
        self.chest_pain.saturating_add(self.breathless).saturating_add(self.choking)
    }

    /// Dizziness, pain, sickness, and what is not known.
    #[must_use]
    pub fn unwell(&self) -> u32 {
        self.dizzy.saturating_add(self.pain).saturating_add(self.sick).saturating_add(self.otherwise)
    }

    /// Nothing was said.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == Self::default()
    }
}

/// One client for the caseload. Days are local dates of the client's computer; none where there is nothing to tell.
#[derive(Debug, Clone, PartialEq)]
pub struct Digest {
    /// The client's number in this database, short name, and the desk that makes the packages.
    pub client: i64,
    pub name: String,
    pub desk: String,
    /// When the newest package was made.
    pub newest_made: Option<Date>,
    /// Whether the latest practice, some days after that, followed it; none where that cannot be told.
    pub follows_newest: Option<bool>,
    pub first_day: Option<Date>,
    /// The last practice.
    pub last_day: Option<Date>,
    /// When the newest results were handed back: what was done later is not known.
    pub known_to: Option<Date>,
    pub sessions: u32,
    pub trials: u32,
    pub practised_s: f64,
    /// Planned days a week; none where no days were agreed.
    pub planned_week: Option<u32>,
    /// More days than this without practice are longer than planned.
    pub gap_days: u32,
    /// The last 14 days up to `known_to`, and the 28 before.
    pub recent: Share,
    pub before: Share,
    /// Adherence counts days on which a planned practice was not begun; otherwise only practices that were begun.
    pub planned: bool,
    /// Not seen yet.
    pub said: Said,
    pub last_safety: Option<Date>,
    /// Warning signs about swallowing, and which.
    pub signs: u32,
    pub signs_what: Option<String>,
    pub left_out: u32,
    pub left_out_what: Option<String>,
    pub tired: u32,
    /// Measures that have fallen beyond this person's scatter, and which.
    pub fallen: u32,
    pub fallen_what: Option<String>,
    pub risen: u32,
    pub microphone: Microphone,
    pub microphone_since: Option<Date>,
    /// Practices whose date cannot be believed.
    pub clock_wrong: u32,
    /// Practices have come since somebody looked.
    pub fresh: bool,
    pub seen_day: Option<Date>,
    pub seen_note: Option<String>,
}
