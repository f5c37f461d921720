//! Puts the growing doses of a routine where the client stands with them.

use jiff::SignedDuration;
use jiff::ZonedDateTime;

use record::{RecordError, Source, Store, Unfinished};
use routine::Prescription;

/// Each growing dose gets the stage that is due on the day of `now`, as the client's live sessions tell. For a recording or
/// a rehearsal all stay at the first, for the same sound must give the same journal.
///
/// # Errors
/// The record cannot be read.
pub fn take_stages(
    prescription: &mut Prescription,
    store: &Store,
    client: &str,
    source: Source,
    now: &ZonedDateTime,
) -> Result<(), RecordError> {
    if source != Source::Live {
        return Ok(());
    }
    let mut stages = Vec::new();
    for ramp in &prescription.ramps {
        stages.push(ramp.stage_on(now.date(), &store.stages_done(client, ramp)?));
    }
    let mut stages = stages.into_iter();
    prescription.take_stages(|_| stages.next().unwrap_or(1));
    Ok(())
}

/// What can be gone on with, after the growing doses got their stages: an interrupted practice keeps those of its own day.
///
/// # Errors
/// The record cannot be read.
pub fn stages_and_unfinished(
    prescription: &mut Prescription,
    routine_text: &str,
    store: &Store,
    client: &str,
    source: Source,
    now: &ZonedDateTime,
    within: SignedDuration,
) -> Result<Option<Unfinished>, RecordError> {
    take_stages(prescription, store, client, source, now)?;
    let unfinished = store.unfinished(client, &prescription.routine, routine_text, source, now, within)?;
    let Some(found) = unfinished.as_ref().filter(|_| !prescription.ramps.is_empty()) else { return Ok(unfinished) };
    let began = store.history_of(found.session)?.started_at;
    if began.date() == now.date() {
        return Ok(unfinished);
    }
    // Its places hold for the doses of that day.
    take_stages(prescription, store, client, source, &began)?;
    store.unfinished(client, &prescription.routine, routine_text, source, now, within)
}
