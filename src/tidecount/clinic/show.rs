//! The views of the clinic database as text and as JSON.

use std::fmt::Write;

use jiff::civil::Date;
use serde_json::{Value, json};

use crate::clinic::args::{CaseloadArgs, Format};
use clinic::{Attention, ClientSheet, Digest, MeasureRow, SeenEvent, Share, Standing, reason_text};
use files::clinic_words::{event_words, known};
use files::number_words::counted;

/// The caseload.
pub fn caseload(args: &CaseloadArgs, standings: &[Standing], place: &str, today: Date) -> String {
    let needing = standings.iter().filter(|standing| !standing.attention.reasons.is_empty()).count();
    let limit = if args.all { usize::MAX } else { args.limit };
    let shown: Vec<&Standing> =
        standings.iter().filter(|standing| args.all || !standing.attention.reasons.is_empty()).take(limit).collect();
    let trials: u64 = standings.iter().map(|standing| u64::from(standing.digest.trials)).sum();
    if args.format == Format::Json {
        let clients: Vec<Value> = shown.iter().map(|standing| client_json(&standing.digest, &standing.attention)).collect();
        let whole = json!({"clinic": place, "on": today.to_string(), "clients": standings.len(), "need_attention": needing, "trials": trials, "shown": clients});
        return format!("{whole:#}");
    }
    let why = args.why.map_or_else(String::new, |why| format!(" for {}", why.word()));
    let mut text =
        format!("Caseload on {today}{why}: {}, {needing} need attention, {trials} trials ({place})\n", counted(standings.len(), "client"));
    for (place, standing) in (1..).zip(&shown) {
        let digest = &standing.digest;
        let _ = write!(text, "\n{place}. {} of {}, #{}\n", digest.name, digest.desk, digest.client);
        write_reasons(&mut text, &standing.attention);
        let _ = writeln!(text, "   {}", known(digest));
    }
    let left = if args.all { 0 } else { needing.saturating_sub(shown.len()) };
    if left > 0 {
        let _ = write!(text, "\n{left} more need attention: --limit N shows more, --why REASON those with one reason.\n");
    }
    text.trim_end().to_owned()
}

fn write_reasons(text: &mut String, attention: &Attention) {
    for reason in &attention.reasons {
        let _ = writeln!(text, "   - {}", reason_text(reason));
    }
    if attention.reasons.is_empty() {
        let _ = writeln!(text, "   nothing that is known");
    }
}

fn share_json(share: Share) -> Value {
    json!({"counted": share.counted, "prescribed": share.prescribed, "percent": share.percent(), "band": share.band().map(|band| band.word())})
}

fn day_json(day: Option<Date>) -> Value {
    day.map_or(Value::Null, |day| day.to_string().into())
}

fn client_json(digest: &Digest, attention: &Attention) -> Value {
    let reasons: Vec<Value> =
        attention.reasons.iter().map(|reason| json!({"reason": reason.kind().word(), "text": reason_text(reason)})).collect();
    json!({
        "number": digest.client,
        "name": digest.name,
        "desk": digest.desk,
        "reasons": reasons,
        "known_to": day_json(digest.known_to),
        "first_practice": day_json(digest.first_day),
        "last_practice": day_json(digest.last_day),
        "practices": digest.sessions,
        "trials": digest.trials,
        "practised_s": digest.practised_s,
        "package_made": day_json(digest.newest_made),
        "review_due": day_json(digest.review_due()),
        "planned_days_a_week": digest.planned_week,
        "adherence_basis": if digest.planned { "planned days" } else { "practices begun" },
        "adherence_14_days": share_json(digest.recent),
        "adherence_28_days_before": share_json(digest.before),
        "measures_fallen": digest.fallen,
        "measures_risen": digest.risen,
        "microphone": digest.microphone.word(),
        "microphone_since": day_json(digest.microphone_since),
        "seen": day_json(digest.seen_day),
        "seen_note": digest.seen_note,
    })
}

fn event_text(event: &SeenEvent) -> String {
    format!("{}  {}", event.day, event_words(event, event.exercise.as_deref()))
}

/// What was marked as seen.
pub fn seen(client: &str, events: &[SeenEvent]) -> String {
    let mut text = format!("{client}: marked as seen.");
    if !events.is_empty() {
        text.push_str(" What you saw:");
        for event in events {
            let _ = write!(text, "\n  {}", event_text(event));
        }
    }
    text
}

/// One client's sheet.
pub fn sheet(sheet: &ClientSheet, format: Format, today: Date) -> String {
    match format {
        Format::Text => sheet_text(sheet, today),
        Format::Json => format!("{:#}", sheet_json(sheet, today)),
    }
}

fn sheet_text(sheet: &ClientSheet, today: Date) -> String {
    let digest = &sheet.digest;
    let mut text = format!("{} of {}, #{}, on {today}\n", digest.name, digest.desk, digest.client);
    let _ = writeln!(text, "{}", known(digest));
    text.push_str("\nWhy attention\n");
    write_reasons(&mut text, &sheet.attention);
    if !sheet.events.is_empty() {
        text.push_str("\nWhat happened in the practices, newest first (* not seen yet)\n");
        for (event, seen) in &sheet.events {
            let _ = writeln!(text, "  {} {}", if *seen { " " } else { "*" }, event_text(event));
        }
    }
    if !sheet.days.is_empty() {
        let basis = if digest.planned { "planned days count" } else { "no days agreed: only practices that were started count" };
        let _ = write!(text, "\nAdherence, repetitions done of those prescribed ({basis}; more than prescribed is not counted)\n");
        for day in &sheet.days {
            let percent = day.share().percent().map_or_else(|| "-".to_owned(), |percent| format!("{percent} %"));
            let _ = writeln!(
                text,
                "  {}  {:>5}  {} of {}, {}",
                day.day,
                percent,
                day.counted,
                day.prescribed,
                counted(day.sessions, "practice")
            );
        }
    }
    if !sheet.measures.is_empty() {
        text.push_str("\nMeasures: baseline → latest, smallest change beyond this person's own scatter (95 %)\n");
        for measure in &sheet.measures {
            let _ = writeln!(text, "  {}", measure_text(measure));
        }
    }
    if !sheet.sessions.is_empty() {
        text.push_str("\nPractices, newest first\n");
        for session in &sheet.sessions {
            let discarded =
                if session.discarded > 0 { format!(", {} with values that no figure uses", session.discarded) } else { String::new() };
            let _ = writeln!(
                text,
                "  {}  {}: {} of {} steps, {:.0} min, {} trials{discarded}; {}; {}",
                session.started_at.strftime("%Y-%m-%d %H:%M"),
                session.routine,
                session.steps_done,
                session.steps_prescribed,
                session.practised_s / 60.0,
                session.trials,
                session.end_reason.as_deref().unwrap_or("interrupted"),
                session.software
            );
        }
    }
    if !sheet.looks.is_empty() {
        text.push_str("\nSeen\n");
        for clinic::LookRow { at, note } in &sheet.looks {
            let _ = writeln!(text, "  {}  {}", at.strftime("%Y-%m-%d %H:%M"), note.as_deref().unwrap_or(""));
        }
    }
    text.trim_end().to_owned()
}

fn measure_text(measure: &MeasureRow) -> String {
    let figure = |value: Option<f64>| value.map_or_else(|| "-".to_owned(), |value| format!("{value:.2}"));
    let label = if measure.label.is_empty() { String::new() } else { format!("; {}", measure.label) };
    format!(
        "{} {}: {} → {}, ±{}, {}; {} trials, {} to {}{label}",
        measure.exercise,
        measure.measure,
        figure(measure.baseline),
        figure(measure.latest),
        figure(measure.smallest_change),
        measure.verdict,
        measure.trials,
        measure.since,
        measure.until
    )
}

fn sheet_json(sheet: &ClientSheet, today: Date) -> Value {
    let sessions: Vec<Value> = sheet
        .sessions
        .iter()
        .map(|session| {
            json!({"started_at": session.started_at.to_string(), "routine": session.routine, "steps_done": session.steps_done, "steps_prescribed": session.steps_prescribed,
                "practised_s": session.practised_s, "end_reason": session.end_reason, "package": session.package, "software": session.software,
                "trials": session.trials, "trials_with_discarded_values": session.discarded})
        })
        .collect();
    let days: Vec<Value> = sheet
        .days
        .iter()
        .map(|day| json!({"day": day.day.to_string(), "practices": day.sessions, "done": day.done, "adherence": share_json(day.share()), "planned": day.planned}))
        .collect();
    let measures: Vec<Value> = sheet
        .measures
        .iter()
        .map(|measure| {
            json!({"exercise": measure.exercise, "measure": measure.measure, "conditions": measure.label, "since": measure.since.to_string(), "until": measure.until.to_string(),
                "trials": measure.trials, "baseline": measure.baseline, "latest": measure.latest, "smallest_change_95": measure.smallest_change, "verdict": measure.verdict})
        })
        .collect();
    let events: Vec<Value> = sheet
        .events
        .iter()
        .map(|(event, seen)| json!({"kind": event.kind.word(), "what": event.what, "exercise": event.exercise, "day": event.day.to_string(), "seen": seen}))
        .collect();
    let looks: Vec<Value> = sheet.looks.iter().map(|look| json!({"at": look.at.to_string(), "note": look.note})).collect();
    let packages: Vec<Value> = sheet.packages.iter().map(|package| json!({"id": package.id, "made_at": package.made_at})).collect();
    json!({"on": today.to_string(), "client": client_json(&sheet.digest, &sheet.attention), "events": events, "days": days, "measures": measures, "practices": sessions,
        "seen": looks, "packages": packages})
}
