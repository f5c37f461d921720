//! A client's row of the caseload: worked out anew and read, all in typed rows.

use super::adherence::Share;
use super::change::{Change, Verdict};
use super::digest::{Digest, Microphone, Said};
use super::engine::{Engine, list, one};
use super::error::ClinicError;
use super::found::load;
use super::rows::{DayRow, DigestRow, MeasureRow};
use super::sums::Sums;
use super::typed::{self, Columns};
use super::value::{Row, values};
use super::words;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use model::{StepReason, Symptom};
use progress::PlanBasis;
use std::collections::BTreeMap;

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

/// Every client's row. This is the whole caseload query.
pub(super) fn all_sql() -> String {
    format!("SELECT {}, c.name, d.name FROM digest g JOIN client c ON c.id = g.client JOIN desk d ON d.id = c.desk", DigestRow::of("g"))
}

pub(super) fn of_client_sql() -> String {
    format!("{} WHERE g.client = $1", all_sql())
}

pub(super) fn read(row: &Row) -> Result<Digest, ClinicError> {
    let behind = DigestRow::NAMES.len();
    let (name, desk) = (row.text(behind)?, row.text(behind + 1)?);
    let kept = DigestRow::read(row)?;
    Ok(Digest {
        client: kept.client,
        name,
        desk,
        newest_made: kept.newest_made_at,
        follows_newest: kept.follows_newest,
        first_day: kept.first_day,
        last_day: kept.last_day,
        known_to: kept.known_to,
        sessions: kept.sessions,
        trials: kept.trials,
        practised_s: kept.practised_s,
        planned_week: kept.planned_week,
        gap_days: kept.gap_days,
        recent: Share { counted: kept.recent_counted, prescribed: kept.recent_prescribed },
        before: Share { counted: kept.before_counted, prescribed: kept.before_prescribed },
        planned: kept.planned,
        said: Said {
            chest_pain: kept.chest_pain,
            breathless: kept.breathless,
            choking: kept.choking,
            dizzy: kept.dizzy,
            pain: kept.pain,
            sick: kept.sick,
            help: kept.help,
            otherwise: kept.said_else,
        },
        last_safety: kept.last_safety,
        signs: kept.signs,
        signs_what: kept.signs_what,
        left_out: kept.left_out,
        left_out_what: kept.left_out_what,
        tired: kept.tired,
        fallen: kept.fallen,
        fallen_what: kept.fallen_what,
        risen: kept.risen,
        microphone: Microphone::of_word(&kept.microphone),
        microphone_since: kept.microphone_since,
        clock_wrong: kept.clock_wrong,
        fresh: kept.fresh,
        seen_day: kept.seen_day,
        seen_note: kept.seen_note,
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
            "UPDATE digest SET fresh = 0, seen_day = $2, seen_note = $3, dizzy = 0, pain = 0, help = 0, chest_pain = 0, breathless = 0, choking = 0, sick = 0, said_else = 0, last_safety = NULL, signs = 0, signs_what = NULL, left_out = 0, left_out_what = NULL, tired = 0
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
    let count = |many: usize| u32::try_from(many).unwrap_or(u32::MAX);
    let row = DigestRow {
        client,
        newest_made_at: sums.newest_made,
        follows_newest: sums.follows_newest,
        first_day: sums.first_day,
        last_day: sums.last_day,
        known_to: found.known_to,
        sessions: count(found.practised.practices.len()),
        trials: found.trials,
        practised_s: found.practised.practices.iter().map(|practice| practice.minutes * 60.0).sum::<f64>(),
        planned_week: sums.planned_week,
        gap_days: sums.gap_days,
        recent_counted: sums.recent.counted,
        recent_prescribed: sums.recent.prescribed,
        before_counted: sums.before.counted,
        before_prescribed: sums.before.prescribed,
        planned: sums.planned,
        chest_pain: unseen.said.chest_pain,
        breathless: unseen.said.breathless,
        choking: unseen.said.choking,
        dizzy: unseen.said.dizzy,
        pain: unseen.said.pain,
        sick: unseen.said.sick,
        help: unseen.said.help,
        said_else: unseen.said.otherwise,
        last_safety: unseen.last_safety,
        signs: unseen.signs.values().sum::<u32>(),
        signs_what: (!unseen.signs.is_empty()).then(|| unseen.signs.keys().cloned().collect::<Vec<_>>().join(", ")),
        left_out: unseen.left_out.values().sum::<u32>(),
        left_out_what: (!unseen.left_out.is_empty()).then(|| unseen.left_out.keys().cloned().collect::<Vec<_>>().join(", ")),
        tired: unseen.tired,
        fallen: count(sums.changes.iter().filter(|change| change.asks()).count()),
        fallen_what: words::fallen(&sums.changes),
        risen: count(sums.changes.iter().filter(|change| change.verdict == Verdict::Risen).count()),
        microphone: sums.microphone.0.word().to_owned(),
        microphone_since: sums.microphone.1,
        clock_wrong: sums.clock_wrong,
        fresh,
        seen_day,
        seen_note: seen_note.flatten(),
    };
    if before.is_some() {
        engine.run("DELETE FROM digest WHERE client = $1", &values![client])?;
    }
    typed::add(engine, "digest", [row])
}

/// What was not seen yet.
#[derive(Default)]
struct Unseen {
    said: Said,
    last_safety: Option<Date>,
    /// Warning signs about swallowing, by which.
    signs: BTreeMap<String, u32>,
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
                unseen.said.count(&Symptom::from(what.as_str()));
                unseen.last_safety = unseen.last_safety.max(Some(row.parsed(3)?));
            }
            ("left-out", what) if StepReason::NoSpokenAgreement == what => *unseen.left_out.entry(exercise).or_default() += 1,
            ("swallow-sign", what) => *unseen.signs.entry(what.to_owned()).or_default() += 1,
            ("tired", _) => unseen.tired += 1,
            _ => {}
        }
        Ok(())
    })?;
    Ok(unseen)
}

/// Writes the days that differ from what is kept.
fn keep_days(engine: &mut dyn Engine, client: i64, adherence: &progress::Adherence) -> Result<(), ClinicError> {
    let sql = format!("SELECT {} FROM day WHERE client = $1", DayRow::of("day"));
    let kept = list(engine, &sql, &values![client], DayRow::read)?;
    let mut new: Vec<DayRow> = Vec::new();
    for day in &adherence.days {
        if day.prescribed == 0 && day.practices == 0 {
            continue;
        }
        new.push(DayRow {
            client,
            day: day.day,
            sessions: day.practices,
            done: day.done.saturating_add(day.extra),
            counted: day.done,
            prescribed: day.prescribed,
            planned: day.basis == PlanBasis::Planned,
        });
    }
    for day in kept.iter().filter(|day| !new.contains(day)) {
        engine.run("DELETE FROM day WHERE client = $1 AND day = $2", &values![client, day.day])?;
    }
    new.retain(|day| !kept.contains(day));
    typed::add(engine, "day", new)
}

fn keep_measures(engine: &mut dyn Engine, client: i64, changes: &[Change]) -> Result<(), ClinicError> {
    engine.run("DELETE FROM measure WHERE client = $1", &values![client])?;
    let row = |change: &Change| MeasureRow {
        client,
        exercise: change.exercise.clone(),
        measure: change.measure.id().to_owned(),
        label: words::conditions(&change.conditions, change.measure),
        since: change.since,
        until: change.until,
        trials: change.trials,
        baseline: change.baseline,
        latest: change.latest,
        smallest_change: change.smallest,
        verdict: change.verdict.word().to_owned(),
    };
    typed::add(engine, "measure", changes.iter().map(row))
}
