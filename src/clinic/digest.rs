//! All that the caseload needs of one client, worked out when results come in, in the same transaction.

use super::adherence::Share;
use super::change::{Change, Verdict};
use super::engine::{Engine, list, one};
use super::value::values;
use super::{ClinicError, Row, Value};
use jiff::civil::Date;
use jiff::{Span, Timestamp, ToSpan, ZonedDateTime};
use model::LevelCalibration;
use progress::{self, Conditions, Discard, Led, Measure, PlanBasis, Practice, Practised, StepResult, Trial, Window, misdated};
use routine::{PlannedTime, Weekday, doses_of};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// A programme that is older asks for a look, weeks (common practice, no source). Packages themselves do not expire.
pub const REVIEW_WEEKS: i32 = 12;
/// The window whose adherence is compared with the one before, days (own choice, no source).
const RECENT_DAYS: i64 = 14;
const BEFORE_DAYS: i64 = 28;
/// Where no days were agreed, so many days without practice are long (own choice, no source).
const UNPLANNED_GAP_DAYS: u32 = 7;
/// A newer package is expected to be followed so many days after it was made (own choice: it travels by hand; no source).
const TRAVEL_DAYS: i64 = 7;
/// A change of microphone or calibration is told while it is this recent, days (own choice, no source).
const CHANGE_TOLD_DAYS: i64 = 28;

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
    const ALL: [Self; 5] = [Self::Fine, Self::Relative, Self::Changed, Self::Void, Self::AutoGain];

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

    fn of_word(word: &str) -> Self {
        Self::ALL.into_iter().find(|one| one.word() == word).unwrap_or(Self::Fine)
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
    pub dizzy: u32,
    pub pain: u32,
    pub help: u32,
    pub last_safety: Option<Date>,
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

/// What a change of the database brings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum News {
    None,
    Practices,
    /// Somebody looked: day and note.
    Seen,
}

/// The client's row and all that hangs on it are this transaction's until it ends.
///
/// # Errors
/// The client is gone, another desk does not let go, or the database refuses.
pub(super) fn lock(engine: &mut dyn Engine, client: i64) -> Result<(), ClinicError> {
    let sql = format!("SELECT id FROM client WHERE id = $1{}", engine.lock_rows());
    one(engine, &sql, &values![client], |_| Ok(()))?.ok_or_else(|| ClinicError::Client(format!("client #{client} was forgotten meanwhile")))
}

const DIGEST: &str = "g.client, c.name, d.name, g.newest_made_at, g.follows_newest, g.first_day, g.last_day, g.known_to, g.sessions, g.trials, g.practised_s,
    g.planned_week, g.gap_days, g.recent_counted, g.recent_prescribed, g.before_counted, g.before_prescribed, g.planned, g.dizzy, g.pain, g.help, g.last_safety,
    g.left_out, g.left_out_what, g.tired, g.fallen, g.fallen_what, g.risen, g.microphone, g.microphone_since, g.clock_wrong, g.fresh, g.seen_day, g.seen_note
    FROM digest g JOIN client c ON c.id = g.client JOIN desk d ON d.id = c.desk";

/// Every client's row. This is the whole caseload query.
pub(super) fn all_sql() -> String {
    format!("SELECT {DIGEST}")
}

pub(super) fn of_client_sql() -> String {
    format!("SELECT {DIGEST} WHERE g.client = $1")
}

pub(super) fn read(row: &Row) -> Result<Digest, ClinicError> {
    Ok(Digest {
        client: row.int(0)?,
        name: row.text(1)?,
        desk: row.text(2)?,
        newest_made: row.maybe_parsed(3)?,
        follows_newest: row.maybe_int(4)?.map(|value| value != 0),
        first_day: row.maybe_parsed(5)?,
        last_day: row.maybe_parsed(6)?,
        known_to: row.maybe_parsed(7)?,
        sessions: row.count(8)?,
        trials: row.count(9)?,
        practised_s: row.real(10)?,
        planned_week: row.maybe_int(11)?.and_then(|days| u32::try_from(days).ok()),
        gap_days: row.count(12)?,
        recent: Share { counted: row.count(13)?, prescribed: row.count(14)? },
        before: Share { counted: row.count(15)?, prescribed: row.count(16)? },
        planned: row.flag(17)?,
        dizzy: row.count(18)?,
        pain: row.count(19)?,
        help: row.count(20)?,
        last_safety: row.maybe_parsed(21)?,
        left_out: row.count(22)?,
        left_out_what: row.maybe_text(23)?,
        tired: row.count(24)?,
        fallen: row.count(25)?,
        fallen_what: row.maybe_text(26)?,
        risen: row.count(27)?,
        microphone: Microphone::of_word(&row.text(28)?),
        microphone_since: row.maybe_parsed(29)?,
        clock_wrong: row.count(30)?,
        fresh: row.flag(31)?,
        seen_day: row.maybe_parsed(32)?,
        seen_note: row.maybe_text(33)?,
    })
}

/// Works out the client's sums from what is kept, whatever the order in which it came. The client's rows are this transaction's.
///
/// # Errors
/// The database refuses, or what stands in it cannot be read.
pub(super) fn refresh(engine: &mut dyn Engine, client: i64, news: News) -> Result<(), ClinicError> {
    let before = one(engine, "SELECT fresh FROM digest WHERE client = $1", &values![client], |row| row.flag(0))?;
    let fresh = match news {
        News::Practices => true,
        News::Seen => false,
        News::None => before.unwrap_or(false),
    };
    let seen = one(engine, "SELECT at, note FROM look WHERE client = $1 ORDER BY id DESC LIMIT 1", &values![client], |row| {
        Ok((row.parsed::<ZonedDateTime>(0)?.date(), row.maybe_text(1)?))
    })?;
    if news == News::Seen {
        // Nothing else has changed but what was not seen.
        let (seen_day, seen_note) = seen.unzip();
        engine.run(
            "UPDATE digest SET fresh = 0, seen_day = $2, seen_note = $3, dizzy = 0, pain = 0, help = 0, last_safety = NULL, left_out = 0, left_out_what = NULL, tired = 0
             WHERE client = $1",
            &values![client, seen_day, seen_note.flatten()],
        )?;
        return Ok(());
    }
    let found = load(engine, client)?;
    let sums = Sums::of(&found);
    keep_days(engine, client, &sums.adherence)?;
    keep_measures(engine, client, &sums.changes)?;
    let unseen = unseen(engine, client)?;
    let (seen_day, seen_note) = seen.unzip();
    let row = values![
        client,
        sums.newest_made,
        sums.follows_newest,
        sums.first_day,
        sums.last_day,
        found.known_to,
        found.practised.practices.len(),
        found.trials,
        found.practised.practices.iter().map(|practice| practice.minutes * 60.0).sum::<f64>(),
        sums.planned_week,
        sums.gap_days,
        sums.recent.counted,
        sums.recent.prescribed,
        sums.before.counted,
        sums.before.prescribed,
        sums.planned,
        unseen.dizzy,
        unseen.pain,
        unseen.help,
        unseen.last_safety,
        unseen.left_out.values().sum::<u32>(),
        (!unseen.left_out.is_empty()).then(|| unseen.left_out.keys().cloned().collect::<Vec<_>>().join(", ")),
        unseen.tired,
        sums.changes.iter().filter(|change| change.asks()).count(),
        sums.fallen_what(),
        sums.changes.iter().filter(|change| change.verdict == Verdict::Risen).count(),
        sums.microphone.0.word(),
        sums.microphone.1,
        sums.clock_wrong,
        fresh,
        seen_day,
        seen_note.flatten(),
    ];
    if before.is_some() {
        engine.run("DELETE FROM digest WHERE client = $1", &values![client])?;
    }
    engine.add("digest", &COLUMNS, &[row.to_vec()])
}

const COLUMNS: [&str; 32] = [
    "client",
    "newest_made_at",
    "follows_newest",
    "first_day",
    "last_day",
    "known_to",
    "sessions",
    "trials",
    "practised_s",
    "planned_week",
    "gap_days",
    "recent_counted",
    "recent_prescribed",
    "before_counted",
    "before_prescribed",
    "planned",
    "dizzy",
    "pain",
    "help",
    "last_safety",
    "left_out",
    "left_out_what",
    "tired",
    "fallen",
    "fallen_what",
    "risen",
    "microphone",
    "microphone_since",
    "clock_wrong",
    "fresh",
    "seen_day",
    "seen_note",
];

/// What is kept of one client, as the arithmetic wants it.
pub(super) struct Found {
    pub practised: Practised,
    pub trials: u32,
    pub known_to: Option<Date>,
    /// Packages with when they were made, oldest first.
    packages: Vec<(String, Timestamp)>,
}

impl Found {
    fn zone(&self) -> jiff::tz::TimeZone {
        self.practised.practices.last().map_or(jiff::tz::TimeZone::UTC, |practice| practice.began.time_zone().clone())
    }

    pub(super) fn window(&self) -> Option<Window> {
        let first = self.practised.practices.iter().map(|practice| practice.day).min()?;
        let to = self.known_to?;
        (first <= to).then_some(Window { from: first, to })
    }

    fn adherence(&self) -> progress::Adherence {
        self.window().map(|window| progress::adherence(&self.practised, window)).unwrap_or_default()
    }
}

/// Reads all of a client.
pub(super) fn load(engine: &mut dyn Engine, client: i64) -> Result<Found, ClinicError> {
    let mut packages: Vec<(String, Timestamp)> =
        list(engine, "SELECT id, made_at FROM package WHERE client = $1", &values![client], |row| Ok((row.text(0)?, row.parsed(1)?)))?;
    packages.sort_by(|one, other| (one.1, &one.0).cmp(&(other.1, &other.0)));
    let handed = list(engine, "SELECT made_at FROM arrival WHERE client = $1", &values![client], |row| row.parsed::<Timestamp>(0))?
        .into_iter()
        .max();
    let mut steps: HashMap<i64, Vec<StepResult>> = HashMap::new();
    engine.each(
        "SELECT t.session, t.step, t.exercise, t.ramp_stage, t.done, t.prescribed, t.stopped FROM session s JOIN step t ON t.session = s.id
         WHERE s.client = $1 ORDER BY t.session, t.step",
        &values![client],
        &mut |row| {
            let count = |column| row.maybe_int(column).map(|value| value.and_then(|value| u32::try_from(value).ok()));
            let step = StepResult {
                step: row.count(1)?,
                exercise: row.text(2)?,
                ramp_stage: count(3)?,
                done: row.count(4)?,
                prescribed: count(5)?,
                stopped: row.maybe_text(6)?,
            };
            steps.entry(row.int(0)?).or_default().push(step);
            Ok(())
        },
    )?;
    let mut parts: HashMap<i64, Vec<ZonedDateTime>> = HashMap::new();
    let (mut practices, mut numbers): (Vec<Practice>, Vec<i64>) = (Vec::new(), Vec::new());
    engine.each(
        "SELECT s.id, s.started_at, r.title, r.body, s.package, s.software, s.end_reason, s.steps_done, s.steps_prescribed, s.practised_s, s.part_starts, s.number
         FROM session s JOIN routine r ON r.id = s.routine WHERE s.client = $1 ORDER BY s.began_s, s.number, s.started_at",
        &values![client],
        &mut |row| {
            let (id, began) = (row.int(0)?, row.parsed::<ZonedDateTime>(1)?);
            let starts: Vec<ZonedDateTime> = row.text(10)?.lines().filter_map(|line| line.parse().ok()).collect();
            practices.push(Practice {
                session: id,
                day: began.date(),
                began,
                routine_title: row.text(2)?,
                routine_text: row.text(3)?,
                package: row.maybe_text(4)?,
                software: row.text(5)?,
                end_reason: row.maybe_text(6)?,
                steps_done: row.count(7)?,
                steps_prescribed: row.count(8)?,
                minutes: row.real(9)? / 60.0,
                parts: u32::try_from(starts.len()).unwrap_or(u32::MAX),
                steps: steps.remove(&id).unwrap_or_default(),
                misdated: false,
            });
            numbers.push(row.int(11)?);
            parts.insert(id, starts);
            Ok(())
        },
    )?;
    let zone = practices.last().map_or(jiff::tz::TimeZone::UTC, |practice| practice.began.time_zone().clone());
    let known_to = handed.map(|made| made.to_zoned_datetime(zone).date());
    let wrong = mark_misdated(&mut practices, &numbers, known_to);
    let conditions = conditions(engine, client)?;
    let (mut trials, mut count) = (Vec::new(), 0_u32);
    engine.each(
        "SELECT t.session, t.seq, t.exercise, t.kind, t.part, t.at_s, t.complete, t.duration_s, t.level_db, t.level_slope_db_per_s, t.f0_median_hz, t.f0_span_st,
             t.f0_sd_st, t.rate_hz, t.irregularity_pct, t.named, t.cpps_db, t.hnr_db, t.jitter_local_pct, t.shimmer_local_pct, t.condition,
             t.clipped_s, t.masked_s, t.breaks, t.in_noise, t.over_room_db
         FROM session s JOIN trial t ON t.session = s.id WHERE s.client = $1 ORDER BY s.began_s, s.number, s.started_at, t.seq",
        &values![client],
        &mut |row| {
            count = count.saturating_add(1);
            trials.extend(trial(row, &parts, &conditions, &wrong)?);
            Ok(())
        },
    )?;
    let practised = Practised { practices, trials, today: known_to, ..Practised::default() };
    Ok(Found { practised, trials: count, known_to, packages })
}

/// The home computer's numbers tell the true order of its practices.
fn mark_misdated(practices: &mut [Practice], numbers: &[i64], known_to: Option<Date>) -> BTreeSet<i64> {
    let Some(today) = known_to else { return BTreeSet::new() };
    let mut led: Vec<(i64, Led)> = practices
        .iter()
        .zip(numbers)
        .map(|(practice, number)| (*number, Led { session: practice.session, began: practice.began.clone(), here: true }))
        .collect();
    led.sort_by(|one, other| (one.0, &one.1.began).cmp(&(other.0, &other.1.began)));
    let led: Vec<Led> = led.into_iter().map(|(_, led)| led).collect();
    let (wrong, _) = misdated(&led, today);
    let wrong: BTreeSet<i64> = led.iter().zip(wrong).filter(|(_, wrong)| *wrong).map(|(led, _)| led.session).collect();
    for practice in practices {
        practice.misdated = wrong.contains(&practice.session);
    }
    wrong
}

fn conditions(engine: &mut dyn Engine, client: i64) -> Result<HashMap<i64, Conditions>, ClinicError> {
    let rows = list(
        engine,
        "SELECT id, weighting, time_weighting, calibration, calibration_note, distance_cm, auto_gain, microphone_system, microphone_name, microphone_rate_hz,
             microphone_gain FROM condition WHERE client = $1",
        &values![client],
        |row| {
            let microphone = match (row.maybe_text(7)?, row.maybe_text(8)?, row.maybe_int(9)?, row.maybe_text(10)?) {
                (Some(system), Some(name), Some(rate), Some(gain)) => Some(progress::Microphone { system, name, rate_hz: u32::try_from(rate).unwrap_or(0), gain }),
                _ => None,
            };
            let conditions = Conditions {
                level_weighting: row.maybe_text(1)?,
                time_weighting: row.maybe_text(2)?,
                calibration: calibration_of(&row.text(3)?),
                calibration_note: row.maybe_text(4)?,
                distance_cm: row.maybe_real(5)?,
                auto_gain: row.flag(6)?,
                microphone,
                ..Conditions::default()
            };
            Ok((row.int(0)?, conditions))
        },
    )?;
    Ok(rows.into_iter().collect())
}

/// A trial as the arithmetic wants it; none where nothing of it was measured.
fn trial(
    row: &Row,
    parts: &HashMap<i64, Vec<ZonedDateTime>>,
    conditions: &HashMap<i64, Conditions>,
    wrong: &BTreeSet<i64>,
) -> Result<Option<Trial>, ClinicError> {
    let kind = row.text(3)?;
    let column = |measure: Measure| match measure {
        Measure::HoldS => 7,
        Measure::LevelDb | Measure::PhraseLevelDb => 8,
        Measure::LevelSlopeDbPerS => 9,
        Measure::F0MedianHz | Measure::PhraseF0Hz => 10,
        Measure::F0SpanSt => 11,
        Measure::F0SdSt => 12,
        Measure::SyllableRateHz => 13,
        Measure::SyllableIrregularityPct => 14,
        Measure::NamedCount => 15,
        Measure::CppsDb => 16,
        Measure::HnrDb => 17,
        Measure::JitterPct => 18,
        Measure::ShimmerPct => 19,
    };
    let measures = super::facts::measures(&kind);
    if measures.is_empty() {
        return Ok(None);
    }
    let (session, part, at_s) = (row.int(0)?, row.int(4)?, row.real(5)?);
    let start = parts.get(&session).and_then(|starts| starts.get(usize::try_from(part).ok()?.checked_sub(1)?));
    let Some(start) = start else { return Ok(None) };
    let day = start.date();
    // Saturates, and a span too long for the calendar leaves the start.
    #[allow(clippy::cast_possible_truncation, reason = "saturates")]
    let when = Span::new()
        .try_milliseconds((at_s * 1000.0).round() as i64)
        .ok()
        .and_then(|span| start.checked_add(span).ok())
        .unwrap_or_else(|| start.clone());
    let mut terms = row.maybe_int(20)?.and_then(|id| conditions.get(&id)).cloned().unwrap_or_default();
    terms.clipped_s = row.maybe_real(21)?.unwrap_or(0.0);
    terms.masked_s = row.maybe_real(22)?.unwrap_or(0.0);
    terms.breaks = row.maybe_int(23)?.and_then(|breaks| u32::try_from(breaks).ok()).unwrap_or(0);
    terms.in_noise = row.maybe_int(24)?.is_some_and(|flag| flag != 0);
    terms.over_room_db = row.maybe_real(25)?;
    let (complete, duration_s, misdated) = (row.flag(6)?, row.maybe_real(7)?.unwrap_or(0.0), wrong.contains(&session));
    let mut values = Vec::new();
    for measure in measures {
        let Some(value) = row.maybe_real(column(*measure))? else { continue };
        let discard = if misdated { Some(Discard::Misdated) } else { Discard::of(*measure, &terms, complete, duration_s) };
        values.push(progress::Value { measure: *measure, value, discard });
    }
    Ok(Some(Trial {
        when,
        day,
        session,
        seq: row.int(1)?,
        exercise: row.text(2)?,
        position: None,
        values,
        conditions: terms,
        complete,
        duration_s,
        misdated,
    }))
}

/// What is worked out of what was found. Pure.
struct Sums {
    newest_made: Option<Date>,
    follows_newest: Option<bool>,
    first_day: Option<Date>,
    last_day: Option<Date>,
    planned_week: Option<u32>,
    gap_days: u32,
    recent: Share,
    before: Share,
    planned: bool,
    adherence: progress::Adherence,
    changes: Vec<Change>,
    microphone: (Microphone, Option<Date>),
    clock_wrong: u32,
}

impl Sums {
    fn of(found: &Found) -> Self {
        let practices = &found.practised.practices;
        let known_to = found.known_to.unwrap_or(Date::MIN);
        let clock_wrong = practices.iter().filter(|practice| practice.misdated).count();
        let dated_well: Vec<&Practice> = practices.iter().filter(|practice| !practice.misdated).collect();
        let last_day = dated_well.iter().map(|practice| practice.day).max();
        let newest = found.packages.last();
        let newest_made = newest.map(|(_, made)| made.to_zoned_datetime(found.zone()).date());
        let last = dated_well.last();
        let follows_newest = last.zip(newest).and_then(|(last, (id, made))| {
            let followed = last.package.as_ref()?;
            let late = last.began.timestamp().duration_since(*made).as_hours() > TRAVEL_DAYS * 24;
            (followed == id || late).then_some(followed == id)
        });
        let planned_days = last.map(|last| planned_days(practices, last)).unwrap_or_default();
        let adherence = found.adherence();
        let shares = |from: i64, to: i64| -> Share {
            let at = |back: i64| known_to.checked_sub(back.days()).unwrap_or(Date::MIN);
            let days = adherence.days.iter().filter(|day| !day.open && day.day > at(from) && day.day <= at(to));
            days.map(|day| Share { counted: day.done, prescribed: day.prescribed }).fold(Share::default(), |sum, one| sum + one)
        };
        let changes = found.window().map(|window| progress::series(&found.practised, window)).unwrap_or_default();
        Self {
            newest_made,
            follows_newest,
            first_day: dated_well.iter().map(|practice| practice.day).min(),
            last_day,
            planned_week: (!planned_days.is_empty()).then(|| u32::try_from(planned_days.len()).unwrap_or(7)),
            gap_days: longest_gap(&planned_days).map_or(UNPLANNED_GAP_DAYS, |gap| 2 * gap),
            recent: shares(RECENT_DAYS, 0),
            before: shares(RECENT_DAYS + BEFORE_DAYS, RECENT_DAYS),
            planned: adherence.days.iter().any(|day| day.basis == PlanBasis::Planned),
            adherence,
            changes: changes.iter().filter_map(Change::of).collect(),
            microphone: microphone(&found.practised.trials, known_to),
            clock_wrong: u32::try_from(clock_wrong).unwrap_or(u32::MAX),
        }
    }

    fn fallen_what(&self) -> Option<String> {
        let what: Vec<String> = self.changes.iter().filter(|change| change.asks()).map(fallen_in_words).collect();
        (!what.is_empty()).then(|| what.join("; "))
    }
}

fn fallen_in_words(change: &Change) -> String {
    let (unit, decimals) = (change.measure.unit(), change.measure.decimals());
    let figures = change
        .baseline
        .zip(change.latest)
        .map_or_else(String::new, |(from, to)| format!(" from {from:.decimals$} to {to:.decimals$} {unit}"));
    let scatter = change.smallest.map_or_else(String::new, |smallest| format!(", own scatter ±{smallest:.decimals$} {unit}"));
    let label = if change.label.is_empty() { String::new() } else { format!(", {}", change.label) };
    format!("{} of {}{figures}{scatter}{label}", measure_in_words(change.measure), change.exercise)
}

pub(super) fn measure_in_words(measure: Measure) -> &'static str {
    match measure {
        Measure::HoldS => "hold time",
        Measure::LevelDb => "level",
        Measure::F0MedianHz => "pitch (F0)",
        Measure::F0SpanSt => "pitch span",
        Measure::F0SdSt => "unsteadiness of pitch",
        Measure::LevelSlopeDbPerS => "slope of level",
        Measure::PhraseLevelDb => "level of phrases",
        Measure::PhraseF0Hz => "pitch of phrases",
        Measure::SyllableRateHz => "syllable rate",
        Measure::SyllableIrregularityPct => "irregularity of syllables",
        Measure::NamedCount => "words named",
        Measure::CppsDb => "CPPS",
        Measure::HnrDb => "harmonics to noise",
        Measure::JitterPct => "jitter",
        Measure::ShimmerPct => "shimmer",
    }
}

/// The days of the week on which a practice is planned by the programme that the latest practice followed.
fn planned_days(practices: &[Practice], last: &Practice) -> BTreeSet<Weekday> {
    let mut texts: BTreeMap<&str, &str> = BTreeMap::new();
    for practice in practices.iter().filter(|practice| practice.package == last.package) {
        texts.insert(&practice.routine_title, &practice.routine_text);
    }
    let plans = texts.values().filter_map(|text| doses_of(text)).flat_map(|prescription| prescription.plan);
    plans.flat_map(|PlannedTime { days, .. }| days).collect()
}

/// The most days from one planned day to the next; none where no days are planned.
fn longest_gap(days: &BTreeSet<Weekday>) -> Option<u32> {
    let number = |day: &Weekday| Weekday::ALL.iter().position(|one| one == day).and_then(|number| u32::try_from(number).ok());
    let numbers: Vec<u32> = days.iter().filter_map(number).collect();
    let first = *numbers.first()?;
    let next = numbers.iter().skip(1).copied().chain([first + 7]);
    numbers.iter().zip(next).map(|(day, next)| next - day).max()
}

/// What bears on levels now, and since when.
fn microphone(trials: &[Trial], known_to: Date) -> (Microphone, Option<Date>) {
    let levels: Vec<&Trial> =
        trials.iter().filter(|trial| !trial.misdated && trial.values.iter().any(|value| value.measure.is_level())).collect();
    let Some(last) = levels.last() else { return (Microphone::Fine, None) };
    let differs = |one: &Conditions| {
        let now = &last.conditions;
        let key = |of: &Conditions| {
            (of.calibration, of.calibration_note.clone(), of.distance_cm.map(f64::to_bits), of.auto_gain, of.level_weighting.clone())
        };
        // A microphone that was not kept before is not another one.
        let other = one
            .microphone
            .as_ref()
            .zip(now.microphone.as_ref())
            .is_some_and(|(one, now)| (&one.system, &one.name, &one.gain) != (&now.system, &now.name, &now.gain));
        other || key(one) != key(now)
    };
    let stretch = levels.iter().rposition(|trial| differs(&trial.conditions));
    let since = levels.get(stretch.map_or(0, |before| before + 1)).map(|trial| trial.day);
    let recent = since.is_some_and(|since| known_to.checked_sub(CHANGE_TOLD_DAYS.days()).is_ok_and(|from| since >= from));
    let state = match last.conditions.calibration {
        _ if last.conditions.auto_gain => Microphone::AutoGain,
        LevelCalibration::Void => Microphone::Void,
        _ if stretch.is_some() && recent => Microphone::Changed,
        LevelCalibration::None => Microphone::Relative,
        _ => Microphone::Fine,
    };
    (state, since)
}

/// What is told beside a figure of a measure: for levels what they refer to, otherwise nothing.
pub(super) fn conditions_in_words(conditions: &Conditions, measure: Measure) -> String {
    if !measure.is_level() {
        return String::new();
    }
    let weighting = conditions.level_weighting.as_deref().unwrap_or("?");
    let distance = conditions.distance_cm.map_or_else(|| "distance unknown".to_owned(), |distance| format!("{distance:.0} cm"));
    let scale = match conditions.calibration {
        LevelCalibration::None => "relative, not calibrated",
        LevelCalibration::Void => "relative, calibration void",
        LevelCalibration::Meter => "SPL, calibrated by sound level meter",
        LevelCalibration::Source => "SPL, calibrated by source",
        LevelCalibration::Rough => "SPL, rough",
    };
    format!("{weighting}-weighted, {}, {distance}, {scale}", conditions.time_weighting.as_deref().unwrap_or("energy-mean"))
}

pub(super) fn calibration_word(calibration: LevelCalibration) -> &'static str {
    match calibration {
        LevelCalibration::None => "none",
        LevelCalibration::Void => "void",
        LevelCalibration::Meter => "meter",
        LevelCalibration::Source => "source",
        LevelCalibration::Rough => "rough",
    }
}

fn calibration_of(word: &str) -> LevelCalibration {
    use LevelCalibration::{Meter, None, Rough, Source, Void};
    [None, Void, Meter, Source, Rough].into_iter().find(|one| calibration_word(*one) == word).unwrap_or_default()
}

pub(super) fn discard_word(why: Discard) -> &'static str {
    match why {
        Discard::CutOff => "cut-off",
        Discard::InNoise => "in-noise",
        Discard::Masked => "masked",
        Discard::AutoGain => "auto-gain",
        Discard::Clipped => "clipped",
        Discard::Misdated => "misdated",
    }
}

/// What was not seen yet.
#[derive(Default)]
struct Unseen {
    dizzy: u32,
    pain: u32,
    help: u32,
    last_safety: Option<Date>,
    /// By exercise.
    left_out: BTreeMap<String, u32>,
    tired: u32,
}

fn unseen(engine: &mut dyn Engine, client: i64) -> Result<Unseen, ClinicError> {
    let mut unseen = Unseen::default();
    engine.each("SELECT kind, what, exercise, day FROM event WHERE client = $1 AND look IS NULL", &values![client], &mut |row| {
        let (kind, what, exercise) = (row.text(0)?, row.text(1)?, row.maybe_text(2)?.unwrap_or_default());
        match (kind.as_str(), what.as_str()) {
            ("safety", _) => {
                match what.as_str() {
                    "dizzy" => unseen.dizzy += 1,
                    "help" => unseen.help += 1,
                    // Whatever else was said to be wrong hurts until it is known better.
                    _ => unseen.pain += 1,
                }
                unseen.last_safety = unseen.last_safety.max(Some(row.parsed(3)?));
            }
            ("left-out", "no spoken agreement") => *unseen.left_out.entry(exercise).or_default() += 1,
            ("tired", _) => unseen.tired += 1,
            _ => {}
        }
        Ok(())
    })?;
    Ok(unseen)
}

/// Writes the days that differ from what is kept.
fn keep_days(engine: &mut dyn Engine, client: i64, adherence: &progress::Adherence) -> Result<(), ClinicError> {
    let kept: BTreeMap<String, Vec<Value>> =
        list(engine, "SELECT day, sessions, done, counted, prescribed, planned FROM day WHERE client = $1", &values![client], |row| {
            Ok((row.text(0)?, row.values().iter().skip(1).cloned().collect()))
        })?
        .into_iter()
        .collect();
    let mut new: BTreeMap<String, Vec<Value>> = BTreeMap::new();
    for day in &adherence.days {
        if day.prescribed == 0 && day.practices == 0 {
            continue;
        }
        let planned = day.basis == PlanBasis::Planned;
        new.insert(
            day.day.to_string(),
            values![day.practices, day.done.saturating_add(day.extra), day.done, day.prescribed, planned].to_vec(),
        );
    }
    for day in kept.iter().filter(|(day, values)| new.get(*day) != Some(*values)).map(|(day, _)| day) {
        engine.run("DELETE FROM day WHERE client = $1 AND day = $2", &values![client, day])?;
    }
    let rows: Vec<Vec<Value>> = new
        .into_iter()
        .filter(|(day, values)| kept.get(day) != Some(values))
        .map(|(day, values)| values![client, day].into_iter().chain(values).collect())
        .collect();
    engine.add("day", &["client", "day", "sessions", "done", "counted", "prescribed", "planned"], &rows)
}

fn keep_measures(engine: &mut dyn Engine, client: i64, changes: &[Change]) -> Result<(), ClinicError> {
    engine.run("DELETE FROM measure WHERE client = $1", &values![client])?;
    let row = |change: &Change| {
        values![
            client,
            &change.exercise,
            change.measure.id(),
            &change.label,
            change.since,
            change.until,
            change.trials,
            change.baseline,
            change.latest,
            change.smallest,
            change.verdict.word()
        ]
        .to_vec()
    };
    let rows: Vec<Vec<Value>> = changes.iter().map(row).collect();
    engine.add(
        "measure",
        &["client", "exercise", "measure", "label", "since", "until", "trials", "baseline", "latest", "smallest_change", "verdict"],
        &rows,
    )
}

#[cfg(test)]
#[path = "tests/digest.rs"]
mod tests;
