//! Who needs attention, and why: the order of the caseload. Pure; what is known of a client is [`Digest`], what day it is the
//! caller says. Nothing here says what the reason behind a reason is.
//!
//! The order: the gravest reason first, in the order of [`ReasonKind`]; of the same reason the graver (more safety stops, longer
//! without practice, lower adherence, more measures fallen); then whoever has more reasons; then name, desk and number, so
//! that equal ones always stand in the same order.

use super::adherence::{Band, Share};
use super::digest::{Digest, Microphone, REVIEW_WEEKS, Said};
use jiff::ToSpan;
use jiff::civil::Date;

/// Results are expected at least so often, days (own choice: they travel by hand; no source).
const RESULTS_DAYS: i64 = 14;
/// What time alone brings is told again so long after somebody looked, days (own choice, no source).
const AGAIN_DAYS: i64 = 14;

/// Why a client needs attention, the gravest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ReasonKind {
    /// The client said that something was wrong, and nobody has looked since.
    Safety,
    /// The client said yes or was not sure when asked for a warning sign about swallowing, and nobody has looked since.
    Sign,
    /// Longer without practice than planned, as known from the results.
    NoPractice,
    /// No results for long: nothing is known since.
    NoResults,
    /// Adherence is low or has fallen to a lower band.
    Adherence,
    /// A measure fell by more than this person's own scatter.
    Decline,
    /// Steps were left out for want of agreement, and nobody has looked since.
    LeftOut,
    /// Holds or level fell within a practice beyond the usual, and nobody has looked since.
    Tired,
    /// The programme is old, or the newest package is not followed.
    Programme,
    /// Levels cannot be compared: microphone, calibration, automatic gain.
    Microphone,
    /// Practices carry a date that cannot be believed.
    Clock,
}

impl ReasonKind {
    /// Every kind, the gravest first.
    pub const ALL: [Self; 11] = [
        Self::Safety,
        Self::Sign,
        Self::NoPractice,
        Self::NoResults,
        Self::Adherence,
        Self::Decline,
        Self::LeftOut,
        Self::Tired,
        Self::Programme,
        Self::Microphone,
        Self::Clock,
    ];

    /// As it is typed and written in JSON.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Safety => "safety",
            Self::Sign => "swallow-sign",
            Self::NoPractice => "no-practice",
            Self::NoResults => "no-results",
            Self::Adherence => "adherence",
            Self::Decline => "decline",
            Self::LeftOut => "left-out",
            Self::Tired => "tired",
            Self::Programme => "programme",
            Self::Microphone => "microphone",
            Self::Clock => "clock",
        }
    }

    /// The kind of that name.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }
}

/// One reason with what it rests on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    Safety {
        said: Said,
        last: Option<Date>,
    },
    Sign {
        times: u32,
        what: String,
    },
    /// `days` without practice up to the results of `known_to`; longer than `gap_days`. `last` is none where nothing was practised.
    NoPractice {
        last: Option<Date>,
        known_to: Date,
        days: u32,
        gap_days: u32,
        planned_week: Option<u32>,
    },
    /// `since`: the newest results; none where none have come since the package of `made`.
    NoResults {
        since: Option<Date>,
        made: Option<Date>,
        days: u32,
        last: Option<Date>,
    },
    Adherence {
        recent: Share,
        before: Share,
        planned: bool,
        known_to: Date,
    },
    Decline {
        measures: u32,
        what: String,
    },
    LeftOut {
        times: u32,
        what: String,
    },
    Tired {
        times: u32,
    },
    OldProgramme {
        made: Date,
        weeks: u32,
    },
    NotFollowed {
        made: Date,
    },
    Microphone {
        state: Microphone,
        since: Option<Date>,
    },
    Clock {
        practices: u32,
    },
}

impl Reason {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> ReasonKind {
        match self {
            Self::Safety { .. } => ReasonKind::Safety,
            Self::Sign { .. } => ReasonKind::Sign,
            Self::NoPractice { .. } => ReasonKind::NoPractice,
            Self::NoResults { .. } => ReasonKind::NoResults,
            Self::Adherence { .. } => ReasonKind::Adherence,
            Self::Decline { .. } => ReasonKind::Decline,
            Self::LeftOut { .. } => ReasonKind::LeftOut,
            Self::Tired { .. } => ReasonKind::Tired,
            Self::OldProgramme { .. } | Self::NotFollowed { .. } => ReasonKind::Programme,
            Self::Microphone { .. } => ReasonKind::Microphone,
            Self::Clock { .. } => ReasonKind::Clock,
        }
    }

    /// How grave among its kind; more is graver.
    fn weight(&self) -> u64 {
        match self {
            // Chest pain, no breath and choking before any number of others; dizziness, pain and sickness before any number of calls for
            // help, which may be about the tool.
            Self::Safety { said, .. } => {
                let level = |count: u32| u64::from(count.min(0xF_FFFF));
                level(said.urgent()) << 40 | level(said.unwell()) << 20 | level(said.help)
            }
            // Longer beyond what was planned.
            Self::NoPractice { days, gap_days, .. } => u64::from(days.saturating_sub(*gap_days)),
            Self::NoResults { days, .. } => u64::from(*days),
            Self::Adherence { recent, .. } => u64::from(100_u32.saturating_sub(recent.percent().unwrap_or(100))),
            Self::Decline { measures, .. } => u64::from(*measures),
            Self::Sign { times, .. } | Self::LeftOut { times, .. } | Self::Tired { times } => u64::from(*times),
            Self::NotFollowed { .. } => u64::from(u32::MAX),
            Self::OldProgramme { weeks, .. } => u64::from(*weeks),
            Self::Microphone { state, .. } => *state as u64,
            Self::Clock { practices } => u64::from(*practices),
        }
    }
}

/// A client's reasons, the gravest first; none where all is well as far as is known.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Attention {
    pub reasons: Vec<Reason>,
}

/// A client in the caseload.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    pub digest: Digest,
    pub attention: Attention,
}

/// Whole days from one date to another, 0 where it is none or earlier.
fn days(from: Date, to: Date) -> u32 {
    from.until(to).ok().and_then(|span| u32::try_from(span.get_days()).ok()).unwrap_or(0)
}

/// Why this client needs attention on this day.
#[must_use]
pub fn attention(digest: &Digest, today: Date) -> Attention {
    // What rests on results alone has been looked at until new ones come; what time brings, for a while.
    let is_news = digest.seen_day.is_none() || digest.fresh;
    let is_again = digest.seen_day.is_none_or(|seen| i64::from(days(seen, today)) >= AGAIN_DAYS);
    let mut reasons = Vec::new();
    if !digest.said.is_nothing() {
        reasons.push(Reason::Safety { said: digest.said, last: digest.last_safety });
    }
    if digest.signs > 0 {
        reasons.push(Reason::Sign { times: digest.signs, what: digest.signs_what.clone().unwrap_or_default() });
    }
    reasons.extend(practice(digest, is_news));
    reasons.extend(results(digest, today).filter(|_| is_again));
    let (recent, before) = (digest.recent, digest.before);
    if let Some(known_to) = digest.known_to.filter(|_| is_news)
        && (recent.band() == Some(Band::Low) || recent.fell_from(before))
    {
        reasons.push(Reason::Adherence { recent, before, planned: digest.planned, known_to });
    }
    if digest.fallen > 0 && is_news {
        reasons.push(Reason::Decline { measures: digest.fallen, what: digest.fallen_what.clone().unwrap_or_default() });
    }
    if digest.left_out > 0 {
        reasons.push(Reason::LeftOut { times: digest.left_out, what: digest.left_out_what.clone().unwrap_or_default() });
    }
    if digest.tired > 0 {
        reasons.push(Reason::Tired { times: digest.tired });
    }
    if let Some(made) = digest.newest_made {
        let weeks = days(made, today) / 7;
        if digest.follows_newest == Some(false) && is_news {
            reasons.push(Reason::NotFollowed { made });
        } else if i32::try_from(weeks).unwrap_or(i32::MAX) >= REVIEW_WEEKS && is_again {
            reasons.push(Reason::OldProgramme { made, weeks });
        }
    }
    let is_new_state = digest.seen_day.is_none_or(|seen| digest.microphone_since.is_some_and(|since| since > seen));
    if digest.microphone != Microphone::Fine && is_new_state {
        reasons.push(Reason::Microphone { state: digest.microphone, since: digest.microphone_since });
    }
    if digest.clock_wrong > 0 && is_news {
        reasons.push(Reason::Clock { practices: digest.clock_wrong });
    }
    Attention { reasons }
}

/// Longer without practice than planned, up to the newest results.
fn practice(digest: &Digest, is_news: bool) -> Option<Reason> {
    let known_to = digest.known_to.filter(|_| is_news)?;
    let from = digest.last_day.or(digest.newest_made)?;
    let without = days(from, known_to);
    (without > digest.gap_days).then_some(Reason::NoPractice {
        last: digest.last_day,
        known_to,
        days: without,
        gap_days: digest.gap_days,
        planned_week: digest.planned_week,
    })
}

/// Nothing has come for long.
fn results(digest: &Digest, today: Date) -> Option<Reason> {
    // Whoever has just been given a package has just been seen.
    let from = digest.known_to.max(digest.newest_made)?;
    let due = RESULTS_DAYS.max(i64::from(digest.gap_days));
    let without = days(digest.known_to.unwrap_or(from), today);
    (i64::from(days(from, today)) > due).then_some(Reason::NoResults {
        since: digest.known_to,
        made: digest.newest_made,
        days: without,
        last: digest.last_day,
    })
}

/// The whole caseload in its order, those without a reason last. `why`: only clients with this reason.
#[must_use]
pub fn caseload(digests: Vec<Digest>, today: Date, why: Option<ReasonKind>) -> Vec<Standing> {
    let mut all: Vec<Standing> = digests
        .into_iter()
        .map(|digest| Standing { attention: attention(&digest, today), digest })
        .filter(|standing| why.is_none_or(|why| standing.attention.reasons.iter().any(|reason| reason.kind() == why)))
        .collect();
    all.sort_by(|one, other| {
        let key = |standing: &Standing| {
            let reasons = &standing.attention.reasons;
            // Of those asked for by a reason, that reason orders them.
            let first = reasons.iter().find(|reason| why.is_none_or(|why| reason.kind() == why));
            (first.is_none(), first.map(Reason::kind), std::cmp::Reverse(first.map(Reason::weight)), std::cmp::Reverse(reasons.len()))
        };
        let name = |standing: &Standing| (standing.digest.name.clone(), standing.digest.desk.clone(), standing.digest.client);
        key(one).cmp(&key(other)).then_with(|| name(one).cmp(&name(other)))
    });
    all
}

impl Digest {
    /// The programme was made at least [`REVIEW_WEEKS`] ago.
    #[must_use]
    pub fn review_due(&self) -> Option<Date> {
        self.newest_made.and_then(|made| made.checked_add(REVIEW_WEEKS.weeks()).ok())
    }
}

#[cfg(test)]
#[path = "tests/attention.rs"]
mod tests;
