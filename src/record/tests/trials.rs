use super::*;
use crate::samples::{at, begin, begun, ended, entry, hold, keep, time};
use crate::{Source, WholePart, WholeSession, journal_text};
use jiff::civil::date;
use model::{MissedReason, RatedOver, Rating, SignAnswer, SwallowSign};
use progress::{Discard, Measure, NoteKind, Picture, Window};
use session::{Entry, Fact, LevelCalibration, Trouble};

fn store() -> (tempfile::TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let store = Store::open(folder.path()).expect("opens");
    (folder, store)
}

fn today() -> Date {
    date(2026, 3, 20)
}

fn step_begun(at_s: f64) -> Entry {
    entry(at_s, at(1, 1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None })
}

fn step_done(at_s: f64, done: u32) -> Entry {
    entry(at_s, at(1, 1, 3), Fact::StepDone { exercise: "long-ah".into(), repetitions_done: done, repetitions_prescribed: 3 })
}

fn microphone(name: &str) -> Entry {
    entry(1.0, None, Fact::MicrophoneUsed { system: "PulseAudio".into(), name: name.into(), rate_hz: 48_000, gain: "60 %".into() })
}

fn whole(holds_s: &[f64]) -> Vec<Entry> {
    let mut entries = vec![begun(), microphone("laptop"), step_begun(10.0)];
    entries.extend(holds_s.iter().zip(1_u32..).map(|(hold_s, n)| hold(f64::from(n) * 60.0, at(1, 1, n), "long-ah", *hold_s, true)));
    entries.push(step_done(300.0, 3));
    entries.push(ended(310.0));
    entries
}

#[test]
fn every_trial_is_read_with_its_conditions() {
    let (_folder, mut store) = store();
    keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &whole(&[9.0, 12.0, 10.0]));
    keep(&mut store, "bert", Source::Live, "2026-03-02T19:30:00+01:00[Europe/Berlin]", &whole(&[30.0]));
    keep(&mut store, "anna", Source::Replay, "2026-03-03T18:30:00+01:00[Europe/Berlin]", &whole(&[40.0]));
    keep(&mut store, "anna", Source::Rehearsal, "2026-03-04T18:30:00+01:00[Europe/Berlin]", &whole(&[50.0]));
    let found = store.practised("anna", today()).expect("reads");
    assert_eq!(found.practices.len(), 1, "of this client alone, and no replay or rehearsal");
    let holds: Vec<f64> = found.trials.iter().filter_map(|trial| trial.counted(Measure::HoldS)).collect();
    assert_eq!(holds, [9.0, 12.0, 10.0]);
    let trial = &found.trials[1];
    assert_eq!((trial.day, trial.when.to_string()), (date(2026, 3, 2), "2026-03-02T18:32:00+01:00[Europe/Berlin]".to_owned()));
    assert_eq!(
        trial.conditions.microphone.as_ref().map(|microphone| (microphone.name.as_str(), microphone.rate_hz)),
        Some(("laptop", 48_000))
    );
    assert_eq!((trial.conditions.level_weighting.as_deref(), trial.conditions.calibration), (Some("A"), LevelCalibration::None));
    let practice = &found.practices[0];
    assert_eq!(
        (practice.parts, practice.steps_done, practice.steps_prescribed, practice.end_reason.as_deref()),
        (1, 1, 2, Some("finished"))
    );
    assert!((practice.minutes - 310.0 / 60.0).abs() < 1e-9);
    assert_eq!((practice.steps[0].done, practice.steps[0].prescribed), (3, Some(3)));
    let best = Picture::of(&found, Window::all(&found, today())).best_of_three;
    assert_eq!(
        best.iter().map(|best| (best.trials.clone(), best.best, best.best_index)).collect::<Vec<_>>(),
        [(vec![9.0, 12.0, 10.0], 12.0, 2)]
    );
    assert_eq!(store.practised("nobody", today()).expect("reads").practices, []);
}

#[test]
fn doubtful_trials_are_kept_with_the_reason() {
    let (_folder, mut store) = store();
    let noisy = entry(61.0, at(1, 1, 1), Fact::HoldInNoise { exercise: "long-ah".into(), over_room_db: 6.5 });
    let cut = hold(120.0, at(1, 1, 2), "long-ah", 4.0, false);
    let entries = [
        begun(),
        step_begun(10.0),
        hold(60.0, at(1, 1, 1), "long-ah", 9.0, true),
        noisy,
        cut,
        hold(180.0, at(1, 1, 2), "long-ah", 8.0, true),
    ];
    keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &entries);
    let found = store.practised("anna", today()).expect("reads");
    let why: Vec<Option<Discard>> = found.trials.iter().map(|trial| trial.value(Measure::HoldS).and_then(|value| value.discard)).collect();
    assert_eq!(why, [Some(Discard::InNoise), Some(Discard::CutOff), None]);
    assert_eq!(found.trials[0].conditions.over_room_db, Some(6.5));
    // Broken off in the step: what was made is counted, what was cut off is not.
    assert_eq!((found.practices[0].steps[0].done, found.practices[0].steps[0].prescribed), (2, None));
    assert_eq!(found.notes.iter().map(|note| (note.kind, note.text.as_str())).collect::<Vec<_>>(), [(NoteKind::EndedEarly, "interrupted")]);
}

#[test]
fn stops_notes_and_what_was_left_out_are_told() {
    let (_folder, mut store) = store();
    let left_out = || entry(5.0, at(2, 1, 1), Fact::StepLeftOut { exercise: "head-lift".into(), reason: "no spoken agreement".into() });
    let entries = [
        begun(),
        left_out(),
        left_out(),
        step_begun(10.0),
        entry(20.0, None, Fact::Troubled { trouble: Trouble::RoomTalks }),
        entry(25.0, None, Fact::MicrophoneNoted { what: "calibration-void".into(), text: "its gain changed".into() }),
        entry(30.0, at(1, 1, 1), Fact::SafetyStop { exercise_before: None, exercise: Some("long-ah".into()), reason: "dizzy".into() }),
        entry(
            30.0,
            at(1, 1, 1),
            Fact::StepStopped { exercise: "long-ah".into(), reason: "dizzy".into(), repetitions_done: 0, repetitions_prescribed: 3 },
        ),
        ended(40.0),
    ];
    keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &entries);
    let found = store.practised("anna", today()).expect("reads");
    let left: Vec<_> = found.left_out.iter().map(|step| (step.exercise.as_str(), step.reason.as_str())).collect();
    assert_eq!(left, [("head-lift", "no spoken agreement"), ("long-ah", "dizzy")]);
    assert_eq!(
        found.safety_stops.iter().map(|stop| (stop.reason.as_str(), stop.exercise.as_deref())).collect::<Vec<_>>(),
        [("dizzy", Some("long-ah"))]
    );
    let notes: Vec<_> = found.notes.iter().map(|note| (note.kind, note.text.as_str())).collect();
    assert_eq!(
        notes,
        [(NoteKind::Trouble, "room-talks"), (NoteKind::CalibrationVoid, "its gain changed"), (NoteKind::EndedEarly, "finished")]
    );
}

#[test]
fn a_practice_over_midnight_and_over_parts_stays_one() {
    let (folder, mut store) = store();
    let session = begin(&mut store, "anna", Source::Live, "2026-03-28T23:55:00+01:00[Europe/Berlin]").expect("begins");
    for one in [begun(), step_begun(10.0), hold(60.0, at(1, 1, 1), "long-ah", 9.0, true), hold(600.0, at(1, 1, 2), "long-ah", 10.0, true)] {
        store.append(session, &one).expect("keeps");
    }
    drop(store);
    let mut store = Store::open(folder.path()).expect("opens again");
    // Gone on with behind the clock's change to summer time.
    store.resume(session, &time("2026-03-29T03:05:00+02:00[Europe/Berlin]")).expect("resumes");
    for one in [microphone("headset"), hold(30.0, at(1, 1, 3), "long-ah", 11.0, true), step_done(40.0, 3), ended(50.0)] {
        store.append(session, &one).expect("keeps");
    }
    let found = store.practised("anna", date(2026, 4, 1)).expect("reads");
    let days: Vec<(Date, String)> = found.trials.iter().map(|trial| (trial.day, trial.when.to_string())).collect();
    assert_eq!(days[1], (date(2026, 3, 28), "2026-03-29T00:05:00+01:00[Europe/Berlin]".to_owned()));
    assert_eq!(days[2], (date(2026, 3, 29), "2026-03-29T03:05:30+02:00[Europe/Berlin]".to_owned()));
    assert_eq!(found.trials.iter().map(|trial| trial.conditions.microphone.is_some()).collect::<Vec<_>>(), [false, false, true]);
    let practice = &found.practices[0];
    assert_eq!((practice.day, practice.parts, practice.steps[0].done), (date(2026, 3, 28), 2, 3));
    assert!((practice.minutes - 650.0 / 60.0).abs() < 1e-9);
}

#[test]
fn a_wrong_clock_spoils_no_figure() {
    let (_folder, mut store) = store();
    for started in
        ["2026-03-02T18:30:00+01:00[Europe/Berlin]", "1970-01-01T01:00:00+01:00[Europe/Berlin]", "2026-03-03T18:30:00+01:00[Europe/Berlin]"]
    {
        keep(&mut store, "anna", Source::Live, started, &whole(&[9.0]));
    }
    let found = store.practised("anna", today()).expect("reads");
    assert_eq!(found.practices.iter().map(|practice| practice.misdated).collect::<Vec<_>>(), [true, false, false]);
    assert_eq!(found.clock_jumps.len(), 1);
    assert_eq!(found.trials.iter().filter(|trial| trial.counted(Measure::HoldS).is_some()).count(), 2);
    assert_eq!(found.trials[0].value(Measure::HoldS).and_then(|value| value.discard), Some(Discard::Misdated));
}

#[test]
fn a_zone_whose_rules_changed_since_is_still_read() {
    let (_folder, mut store) = store();
    let session = keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &whole(&[9.0]));
    let other = "2026-03-02T18:30:00+03:00[Europe/Berlin]";
    store.connection.execute("UPDATE session SET started_at = ?2 WHERE id = ?1", (session.0, other)).expect("changes");
    store.connection.execute("UPDATE part SET started_at = ?2 WHERE session = ?1", (session.0, other)).expect("changes");
    let found = store.practised("anna", today()).expect("reads");
    assert_eq!(found.practices[0].began.timestamp().to_string(), "2026-03-02T15:30:00Z");
}

#[test]
fn a_line_that_cannot_be_read_is_named() {
    let (_folder, mut store) = store();
    let session = keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &whole(&[9.0]));
    let bad = "INSERT INTO entry (session, seq, part, at_s, kind, json) VALUES (?1, 99, 1, 400.0, 'step_done', '{\"repetitions_done\": \"many\"}')";
    store.connection.execute(bad, [session.0]).expect("adds");
    let error = store.practised("anna", today()).expect_err("a bad line").to_string();
    assert!(error.contains(&format!("practice {}, line 99", session.0)), "{error}");
}

#[test]
fn received_practices_count_with_their_package() {
    let (_folder, mut store) = store();
    let lines = journal_text(&whole(&[9.0, 12.0, 10.0])).expect("lines");
    let part =
        WholePart { started_at: "2026-03-02T18:30:00-05:00[America/New_York]".into(), lines: lines.lines().map(str::to_owned).collect() };
    let session = WholeSession {
        number: 7,
        package: Some("p1".into()),
        started_at: part.started_at.clone(),
        end: Some(("2026-03-02T18:35:10-05:00[America/New_York]".into(), "completed".into())),
        routine_title: "Evening routine".into(),
        routine_text: "title = \"Evening routine\"\n".into(),
        software: "tidecount 0.1.0".into(),
        parts: vec![part],
    };
    store.receive("anna", &[session]).expect("receives");
    let found = store.practised("anna", today()).expect("reads");
    assert_eq!((found.practices[0].package.as_deref(), found.trials.len()), (Some("p1"), 3));
    assert_eq!(found.trials[0].day, date(2026, 3, 2), "the client's own day");
    assert_eq!(found.notes, [], "it was led to its end");
}

/// What was given and what help there was is told by the journal: steps from their beginning to their end, in each part.
#[test]
fn the_time_of_each_step_and_the_help_are_read() {
    let (_folder, mut store) = store();
    let asked = |at_s, correct, hint_given| {
        let fact = Fact::QuestionAnswered {
            exercise: "word-riddles".into(),
            clue: "a clue".into(),
            answer: None,
            correct,
            hint_given,
            duration_s: 4.0,
        };
        entry(at_s, at(1, 1, 1), fact)
    };
    let heard = |at_s, command| entry(at_s, None, Fact::CommandHeard { command, text: "again".into(), confidence: 0.9 });
    let entries = vec![
        begun(),
        step_begun(10.0),
        asked(20.0, true, false),
        asked(30.0, true, true),
        asked(40.0, false, true),
        heard(45.0, session::Command::Again),
        heard(46.0, session::Command::Pause),
        entry(50.0, at(1, 1, 2), Fact::NoAnswer { asked: 2 }),
        entry(60.0, None, Fact::Rated { what: Rating::Effort, over: RatedOver::Practice, value: Some(4) }),
        entry(61.0, None, Fact::Rated { what: Rating::Effort, over: RatedOver::Practice, value: Some(6) }),
        entry(62.0, None, Fact::SwallowSign { sign: SwallowSign::WetVoice, answer: SignAnswer::Yes }),
        entry(63.0, None, Fact::SwallowSign { sign: SwallowSign::WetVoice, answer: SignAnswer::NotSure }),
        entry(63.2, None, Fact::MomentTold { from_s: Some(50.0), until_s: Some(58.0), text: None }),
        entry(63.4, None, Fact::MomentTold { from_s: Some(59.0), until_s: Some(63.0), text: Some("I sang".into()) }),
        entry(64.0, None, Fact::DaysMissed { days: 2, reason: Some(MissedReason::Forgot) }),
        step_done(70.0, 3),
        entry(90.0, at(2, 1, 1), Fact::StepBegun { exercise: "word-riddles".into(), ramp_stage: None }),
        ended(100.0),
    ];
    keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &entries);
    let found = store.practised("anna", today()).expect("reads");
    let times: Vec<_> = found.step_times.iter().map(|time| (time.step, time.time_s)).collect();
    assert_eq!(times, [(1, 60.0), (2, 10.0)]);
    let [cueing] = &found.cueing[..] else { panic!("one practice") };
    assert_eq!((cueing.answered_alone, cueing.answered_with_hint, cueing.not_answered), (1, 1, 1));
    assert_eq!((cueing.asked_again, cueing.no_answer), (1, 1));
    let ratings: Vec<_> = found.ratings.iter().map(|rated| (rated.day, rated.what, rated.value)).collect();
    assert_eq!(ratings, [(date(2026, 3, 2), Rating::Effort, Some(6))], "corrected: the last one counts");
    let signs: Vec<_> = found.signs.iter().map(|told| (told.day, &told.sign, &told.answer)).collect();
    assert_eq!(signs, [(date(2026, 3, 2), &SwallowSign::WetVoice, &SignAnswer::NotSure)]);
    let missed: Vec<_> = found.days_missed.iter().map(|told| (told.days, told.reason.clone())).collect();
    assert_eq!(missed, [(2, Some(MissedReason::Forgot))]);
    let [told] = &found.moments[..] else { panic!("told anew: the last one counts") };
    assert_eq!((told.part, told.from_s, told.text.as_deref(), told.heard_until), (1, 59.0, Some("I sang"), None), "no sound was kept");
}
