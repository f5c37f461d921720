//! Promise: the report is two minutes' reading for a clinician and one plain page for the client; every figure carries its
//! conditions; nothing in a name or note is markup; the pages are tagged.

#[path = "../support/invented.rs"]
mod invented;

use files::reports::gather;
use invented::{Life, keep};
use jiff::civil::{Date, date};
use model::{MissedReason, RatedOver, Rating, SignAnswer, SwallowSign};
use progress::{
    Aim, BaselineFigure, Baselines, BreakReason, ClockJump, Compared, Conditions, DaysMissed, Direction, Goal, GoalState, Mark, MarkKind,
    Measure, Moment, NotMet, Note, NoteKind, Picture, PlanBasis, Practised, ProgrammeChange, ProgrammeItem, Rated, Reading, SignAnswered,
    Standing, Taken, TooEarly, Window,
};
use record::{NewGoal, Store};
use report::sheet::{About, Sheet, sheet};
use report::to_html;
use session::{Arg, Line};
use speak::Words;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Command, Output};

const TODAY: Date = date(2026, 11, 22);

fn words() -> Words {
    Words::english().expect("the catalogue")
}

fn practised(life: &Life) -> Practised {
    let folder = tempfile::tempdir().expect("a folder");
    keep(folder.path(), std::slice::from_ref(life));
    Store::open(folder.path()).expect("a record").practised(life.client, TODAY).expect("read")
}

fn report(life: &Life, weeks: u32) -> Sheet {
    gather(&practised(life), &Practised::default(), weeks, TODAY, &words()).expect("a report")
}

fn pdf(sheet: &Sheet) -> lopdf::Document {
    lopdf::Document::load_mem(&print::report_pdf(sheet).expect("a PDF")).expect("an independent reader takes it")
}

/// Letters and digits of a page: lines are broken anywhere.
fn page(pdf: &lopdf::Document, number: u32) -> String {
    squeezed(&pdf.extract_text(&[number]).expect("text in the PDF is text"))
}

fn squeezed(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// Every length of life that a page must bear.
fn lives() -> Vec<(&'static str, Life, u32)> {
    let others =
        &["shoulder-rolls", "neck-turns", "neck-tilts", "jaw-opening", "effortful-swallow", "tongue-hold-swallow", "lip-press-smile"];
    vec![
        ("eventful", Life::eventful(), 12),
        ("shown", Life::shown(), 12),
        ("one practice", Life { first: TODAY, days: 1, diligence: 1.0, ..Life::weeks(1) }, 12),
        ("nothing for three weeks", Life { days: 63, ..Life::weeks(12) }, 3),
        ("idle of late", Life { days: 63, ..Life::weeks(12) }, 12),
        ("not calibrated", Life { calibrated: None, ..Life::weeks(12) }, 12),
        (
            "many exercises",
            Life { client: "Somebody with a name that is longer than most names ever are", also: others, ..Life::eventful() },
            12,
        ),
    ]
}

/// The sheet of a picture. A missing message would leave a blank on the page.
fn worded(name: &str, picture: &Picture) -> Sheet {
    let words = words();
    let missing = RefCell::new(BTreeSet::new());
    let say = |key: &str, given: &[(&'static str, Arg)]| {
        words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_else(|why| {
            // These are asked for by names out of the record; what has no words of its own is shown as it stands there.
            if !["report-field-", "report-scale-"].iter().any(|open| key.starts_with(open)) {
                missing.borrow_mut().insert(why.to_string());
            }
            String::new()
        })
    };
    let about = About { made: TODAY, last_practice: Some(TODAY), software: "tidecount" };
    let sheet = sheet(picture, &about, &say).expect("a report");
    assert!(missing.borrow().is_empty(), "{name}: {:?}", missing.borrow());
    let front = (&sheet.front.glance, &sheet.front.breaks, &sheet.front.columns);
    let all = serde_json::to_string(&(front, &sheet.tables, &sheet.client.voice, &sheet.client.goals, &sheet.chart)).expect("text");
    for broken in ["{ $", "NaN", "inf ", "null"] {
        assert!(!all.contains(broken), "{name}: {broken} in {all}");
    }
    sheet
}

#[test]
fn every_word_of_every_report_is_in_the_catalogue() {
    for (name, life, weeks) in lives() {
        worded(name, &Picture::of(&practised(&life), Window::weeks(TODAY, weeks)));
    }
}

/// What no invented life holds: every kind of note, break and change.
#[test]
fn every_kind_of_event_has_its_words() {
    let mut picture = Picture::of(&practised(&Life::eventful()), Window::weeks(TODAY, 12));
    for kind in
        [NoteKind::Trouble, NoteKind::CalibrationVoid, NoteKind::LoudLimit, NoteKind::Fall, NoteKind::SoundLost, NoteKind::EndedEarly]
    {
        let text = if kind == NoteKind::Trouble { "room-talks" } else { "duration" };
        let when = picture.practices[0].began.clone();
        picture.notes.push(Note { session: 1, when, day: TODAY, kind, exercise: Some("long-ah".into()), text: text.into() });
    }
    let began = picture.practices[0].began.clone();
    picture.clock_jumps.push(ClockJump { session: 1, began: began.clone(), before: began });
    let [exercise, dose, from, to] = ["long-ah", "3 ×", "3", "5"].map(str::to_owned);
    let items = vec![
        ProgrammeItem::RoutineBegun { exercises: vec![exercise.clone()] },
        ProgrammeItem::RoutineReplaced { by: "Other".into() },
        ProgrammeItem::ExerciseAdded { exercise: exercise.clone(), dose: dose.clone() },
        ProgrammeItem::ExerciseRemoved { exercise: exercise.clone(), dose: dose.clone() },
        ProgrammeItem::DoseChanged { exercise: exercise.clone(), field: "hold_s".into(), from: from.clone(), to: to.clone() },
        ProgrammeItem::StageChanged { exercise, from: 1, to: 2, dose },
        ProgrammeItem::OrderChanged,
        ProgrammeItem::PlanChanged { from: from.clone(), to: to.clone() },
        ProgrammeItem::SettingChanged { field: "feedback_every".into(), from: from.clone(), to: to.clone() },
    ];
    let count = items.len();
    picture.programme.push(ProgrammeChange { day: TODAY, session: 1, routine_title: "Voice".into(), items });
    let reasons = vec![
        BreakReason::Gap { days: 9 },
        BreakReason::Microphone { from: from.clone(), to: to.clone() },
        BreakReason::Gain { from: from.clone(), to: to.clone() },
        BreakReason::Calibration { from: "relative".into(), to: "a phone's number, rough".into() },
        BreakReason::Calibration { from: "one long note".into(), to: "another long note".into() },
        BreakReason::Weighting { from: from.clone(), to: to.clone() },
        BreakReason::Distance { from, to },
    ];
    for broken in picture.series.iter_mut().flat_map(|series| &mut series.segments).filter_map(|segment| segment.broken_by.as_mut()) {
        broken.reasons = reasons.clone();
    }
    // As where no days were agreed.
    for day in &mut picture.adherence.days {
        (day.basis, day.planned) = (PlanBasis::PractisedOnly, 0);
    }
    let sheet = worded("everything", &picture);
    // What was wrong, and what waits for the clinician, come first.
    let glance = &sheet.front.glance;
    assert!(glance[0].contains("stop event") && glance[1].starts_with("Waiting for your word: Head lift, held."), "{glance:?}");
    assert!(glance[2].contains("no days were planned"), "{glance:?}");
    let changes = &sheet.front.columns[2].items[0];
    assert_eq!(changes.matches(';').count(), count - 1, "{changes}");
    assert!(
        sheet.front.breaks[0].contains("calibrated with a phone’s number, rough") && sheet.front.breaks[0].contains("another calibration"),
        "{:?}",
        sheet.front.breaks
    );
    assert!(sheet.front.columns[1].items.iter().any(|line| line.contains("the clock was set back")));
}

/// ISO 14289-1 (PDF/UA-1): tagged, with language and title, drawings described.
#[test]
fn the_pdf_is_tagged_and_holds_the_clinicians_the_tables_and_the_clients_page() {
    let sheet = report(&Life::eventful(), 12);
    // For the pictures in docs/report.md.
    if let Some(file) = std::env::var_os("KEEP_REPORT") {
        std::fs::write(file, print::report_pdf(&sheet).expect("a PDF")).expect("writes");
    }
    let pdf = pdf(&sheet);
    let catalog = pdf.catalog().expect("a catalog");
    assert!(catalog.has(b"StructTreeRoot") && catalog.has(b"MarkInfo"));
    assert_eq!(catalog.get(b"Lang").and_then(lopdf::Object::as_str).expect("a language"), b"en");
    let info = pdf.trailer.get(b"Info").and_then(lopdf::Object::as_reference).and_then(|id| pdf.get_dictionary(id)).expect("information");
    let title = lopdf::decode_text_string(info.get(b"Title").expect("a title")).expect("text");
    assert_eq!(title, "Practice report, grandma, 31 Aug to 22 Nov 2026");
    let metadata = catalog
        .get(b"Metadata")
        .and_then(lopdf::Object::as_reference)
        .and_then(|id| pdf.get_object(id))
        .and_then(lopdf::Object::as_stream)
        .expect("metadata");
    let metadata = metadata.decompressed_content().unwrap_or_else(|_| metadata.content.clone());
    assert!(String::from_utf8_lossy(&metadata).contains("pdfuaid:part"), "it claims PDF/UA");
    let tagged = |name: &[u8]| {
        pdf.objects
            .values()
            .filter_map(|object| object.as_dict().ok())
            .filter(|dict| dict.get(b"S").and_then(lopdf::Object::as_name).is_ok_and(|tag| tag == name))
            .count()
    };
    // A drawing for the calendar, one for each chart, one on the client's page; each with its words.
    assert_eq!(tagged(b"Figure"), 2 + sheet.front.charts.len());
    let described = pdf.objects.values().filter_map(|object| object.as_dict().ok()).filter(|dict| dict.has(b"Alt")).count();
    assert!(described >= tagged(b"Figure"));
    assert!(tagged(b"TH") >= 8 + 7 + 4 + 9 && tagged(b"H1") == 3, "{} {}", tagged(b"TH"), tagged(b"H1"));
    let last = u32::try_from(pdf.get_pages().len()).expect("few");
    assert_eq!(last, 4, "the clinician's page, two of tables, the client's");
    let (front, tables, client) = (page(&pdf, 1), page(&pdf, 2) + &page(&pdf, 3), page(&pdf, last));
    for line in &sheet.front.glance {
        assert!(front.contains(&squeezed(line)), "{line}\n{front}");
    }
    assert!(front.contains("Leftoutandwhy") && front.contains("anothermicrophone") && front.contains("12dayswithoutatrial"), "{front}");
    assert!(tables.contains("Tablesandconditions") && tables.contains("Aweighted30cm") && tables.contains("cutoffbyacommand"), "{tables}");
    assert!(client.contains("Yourpracticegrandma") && client.contains("Theymakenodiagnosis"), "{client}");
    // The same record makes the same bytes.
    assert!(print::report_pdf(&sheet).expect("a PDF") == print::report_pdf(&report(&Life::eventful(), 12)).expect("a PDF"));
}

/// Large print: 18 points at the least on the client's page.
#[test]
fn with_many_exercises_and_a_long_name_each_page_stays_one_and_the_clients_stays_large() {
    let (_, life, weeks) = lives().pop().expect("the last");
    let pdf = pdf(&report(&life, weeks));
    let pages = pdf.get_pages();
    let last = u32::try_from(pages.len()).expect("few");
    assert!(page(&pdf, 1).contains("Practicereport") && page(&pdf, 2).contains("Tablesandconditions"));
    assert!(page(&pdf, last).contains("Yourpractice") && page(&pdf, last).contains("Theymakenodiagnosis"));
    let content = pdf.get_page_content(pages[&last]);
    let content = lopdf::content::Content::decode(&content).expect("operators");
    let sizes: Vec<f32> = content
        .operations
        .iter()
        .filter(|operation| operation.operator == "Tf")
        .filter_map(|operation| operation.operands.get(1)?.as_float().ok())
        .collect();
    assert!(!sizes.is_empty() && sizes.iter().all(|size| *size >= 18.0), "{sizes:?}");
}

#[test]
fn names_are_data_wherever_they_come_from() {
    let client = "#emph[x] *b* $a$ <b onload=1> & \"q\" \u{7} 語";
    let life = Life { client, days: 10, first: date(2026, 11, 13), ..Life::weeks(1) };
    let sheet = report(&life, 2);
    let html = to_html(&sheet);
    assert!(html.contains("#emph[x] *b* $a$ &lt;b onload=1&gt; &amp; &quot;q&quot; 語") && !html.contains("<b onload"));
    let front = pdf(&sheet).extract_text(&[1]).expect("text");
    for part in ["#emph[x]", "*b*", "$a$", "onload=1"] {
        assert!(squeezed_marks(&front).contains(&squeezed_marks(part)), "{part}\n{front}");
    }
}

fn squeezed_marks(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

#[test]
fn a_gap_and_another_microphone_break_the_charts_and_are_told() {
    let sheet = report(&Life::eventful(), 12);
    let breaks = &sheet.front.breaks;
    assert_eq!(breaks.len(), 2, "{breaks:?}");
    assert!(
        breaks[0].contains("12 days without a trial")
            && breaks[1].contains("another microphone: “Headset microphone”, previously “Desk microphone”"),
        "{breaks:?}"
    );
    for chart in &sheet.front.charts {
        for number in ["\n1\n", "\n2\n"] {
            assert!(chart.svg.contains(number), "{}", chart.title);
        }
        assert!(chart.described.contains("broken 2 times") && chart.figures[0].value == "5 Nov 2026", "{chart:?}");
    }
    let unbroken = report(&Life::weeks(12), 12);
    assert!(unbroken.front.breaks.is_empty() && unbroken.front.charts.iter().all(|chart| !chart.svg.contains("\n1\n")));
}

#[test]
fn levels_without_calibration_are_called_relative_everywhere() {
    let sheet = report(&Life { calibrated: None, ..Life::weeks(12) }, 12);
    let all = serde_json::to_string(&sheet).expect("text");
    assert!(!all.contains("SPL"), "no sound pressure level is known");
    assert!(sheet.front.glance.iter().any(|line| line.contains("Levels are relative")));
    assert!(sheet.front.charts.iter().filter(|chart| chart.title.contains("level")).all(|chart| chart.title.contains("relative")));
    let calibrated = serde_json::to_string(&report(&Life::weeks(12), 12)).expect("text");
    assert!(calibrated.contains("dB SPL, A-weighted, 30 cm") && calibrated.contains("calibrated with a sound level meter"));
}

/// Within the usual scatter nothing is praised and nothing regretted, and beyond it the fact is told.
#[test]
fn the_clients_page_tells_a_change_only_beyond_the_usual_scatter() {
    let voice = |hold_gain_s: f64| report(&Life { hold_gain_s, level_gain_db: 0.0, ..Life::weeks(12) }, 12).client.voice.concat();
    assert!(voice(0.3).contains("That is within your usual ups and downs."), "{}", voice(0.3));
    assert!(voice(9.0).contains("That is longer, by more than your usual ups and downs."), "{}", voice(9.0));
    assert!(voice(-8.0).contains("That is shorter, by more than your usual ups and downs."), "{}", voice(-8.0));
    let one = report(&Life { first: TODAY, days: 1, diligence: 1.0, ..Life::weeks(1) }, 12);
    assert!(
        one.client.voice.concat().contains("too early to tell") && one.client.practised == "You practised on 1 day; 1 was planned.",
        "{:?}",
        one.client
    );
}

/// Goals in the client's own words, as the record keeps them: one that the figures judge, one that people mark.
fn with_goals(life: &Life) -> Practised {
    let folder = tempfile::tempdir().expect("a folder");
    keep(folder.path(), std::slice::from_ref(life));
    let mut store = Store::open(folder.path()).expect("a record");
    let new = |words, aim| NewGoal { words, aim, set_on: date(2026, 9, 7), due: date(2026, 11, 15), set_by: "M., clinician" };
    let aim = Aim { exercise: "long-ah".into(), measure: Measure::HoldS, direction: Direction::AtLeast, target: 30.0 };
    store.add_goal(life.client, &new("Read a whole page to my grandson.", Some(aim))).expect("kept");
    let activity = store.add_goal(life.client, &new("Order coffee without being asked twice.", None)).expect("kept");
    let mark = Mark { kind: MarkKind::Met, on: date(2026, 11, 2), by: "grandma".into() };
    store.mark_goal(life.client, activity, &mark).expect("marked");
    store.practised(life.client, TODAY).expect("read")
}

#[test]
fn goals_stand_on_every_page_with_the_rule_by_which_they_are_judged() {
    let sheet = gather(&with_goals(&Life::weeks(12)), &Practised::default(), 12, TODAY, &words()).expect("a report");
    let told = sheet.front.goals.as_ref().expect("goals");
    assert!(
        told.lines[0]
            .starts_with("“Read a whole page to my grandson.” Long ah, hold time at least 30.0 s by 15 Nov 2026: not met, the typical"),
        "{told:?}"
    );
    assert!(told.lines[1].contains("met, as marked by grandma on 2 Nov 2026"), "{told:?}");
    assert!(told.rule.contains("beyond this client’s own scatter") && told.rule.contains("marked by people"), "{told:?}");
    assert_eq!((sheet.tables.tables[0].title.as_str(), sheet.tables.tables[0].rows.len()), ("Goals", 2));
    let [not_met, met] = &sheet.client.goals[..] else { panic!("{:?}", sheet.client.goals) };
    assert!(not_met.contains("Not met. Your clinician") && met.ends_with("” Met."), "{not_met} {met}");
    let pdf = pdf(&sheet);
    let last = u32::try_from(pdf.get_pages().len()).expect("few");
    for number in [1, 2, last] {
        assert!(page(&pdf, number).contains("Readawholepagetomygrandson"), "page {number}: {}", page(&pdf, number));
    }
    assert_eq!(to_html(&sheet).matches("Read a whole page to my grandson.").count(), 6, "front, table, three times in the chart, client");
}

/// Whatever a goal comes to has its words, and page one bears many of them.
#[test]
fn every_state_of_a_goal_has_its_words() {
    let mut picture = Picture::of(&with_goals(&Life::eventful()), Window::weeks(TODAY, 12));
    let marks = vec![Mark { kind: MarkKind::NotMet, on: TODAY, by: "M.".into() }];
    let goal = Goal { words: "w".repeat(200), marks, ..picture.goals[0].goal.clone() };
    let early = [TooEarly::NoTrials, TooEarly::FewDays, TooEarly::NotCalibrated, TooEarly::BeforeDue, TooEarly::NotMarked];
    let not = [NotMet::Short, NotMet::WithinScatter, NotMet::Marked];
    let all = early.map(Standing::TooEarly).into_iter().chain(not.map(Standing::NotMet)).chain([Standing::Met]);
    picture.goals = all.map(|standing| GoalState { goal: goal.clone(), standing, typical: Some(14.0) }).collect();
    let sheet = worded("goals", &picture);
    let told: BTreeSet<&String> = sheet.tables.tables[0].rows.iter().filter_map(|row| row.last()).collect();
    assert_eq!((told.len(), sheet.front.goals.as_ref().map(|goals| goals.lines.len())), (9, Some(4)), "{told:?}");
    let pdf = pdf(&sheet);
    assert!(page(&pdf, 1).contains("Changestotheprogramme") && page(&pdf, 2).contains("Tablesandconditions"));
}

#[test]
fn the_clients_own_ratings_are_told_as_they_were_said() {
    let mut practised = practised(&Life::weeks(12));
    let rated = |what, over, value| Rated { session: 1, day: TODAY, what, over, value };
    practised.ratings = Rating::ALL
        .into_iter()
        .flat_map(|what| RatedOver::ALL.map(|over| [rated(what, over, Some(4)), rated(what, over, Some(7)), rated(what, over, None)]))
        .flatten()
        .collect();
    let sheet = worded("ratings", &Picture::of(&practised, Window::weeks(TODAY, 12)));
    let table = &sheet.tables.tables[0];
    assert_eq!((table.title.as_str(), table.rows.len()), ("Own ratings, 0 to 10", 8));
    assert_eq!(table.rows[0], ["Effort, after practice", "5.5", "4 to 7", "7 on 22 Nov 2026", "2 (1)"]);
    assert!(sheet.chart.text.contains("- Voice in daily life, over the week: median 5.5 (4 to 7), latest 7 on 2026-11-22; 2 ratings"));
}

/// A warning sign about swallowing comes before adherence and figures; a "no" is nothing to look at.
#[test]
fn a_warning_sign_stands_first_and_in_the_text_for_the_chart() {
    let mut practised = practised(&Life::weeks(12));
    let told = |session, sign, answer| SignAnswered { session, day: TODAY, sign, answer };
    practised.signs = vec![
        told(1, SwallowSign::Cough, SignAnswer::Yes),
        told(2, SwallowSign::Cough, SignAnswer::Yes),
        told(2, SwallowSign::WetVoice, SignAnswer::No),
        told(2, SwallowSign::Weight, SignAnswer::NotSure),
    ];
    practised.days_missed = vec![DaysMissed { session: 1, day: TODAY, days: 2, reason: Some(MissedReason::Tired) }];
    let sheet = worded("signs", &Picture::of(&practised, Window::weeks(TODAY, 12)));
    assert_eq!(sheet.front.glance[0], "1 stop event: dizzy.");
    assert_eq!(
        sheet.front.glance[1],
        "Asked about swallowing once a week, the client said yes or wasn’t sure: coughing or choking at meals (2×), losing weight (not sure)."
    );
    let text = &sheet.chart.text;
    for line in [
        "- Swallowing, coughing or choking at meals: yes 2x, not sure 0x; last on 2026-11-22.",
        "Planned days missed, as the client said: too tired (2x).",
        "- There were warning signs about swallowing: look at the swallow work before anything else.",
    ] {
        assert!(text.contains(line), "{text}");
    }
}

/// What was told of a week stands with its day, as it was written or where it can be heard; what is no longer kept is not on the client's page.
#[test]
fn moments_stand_for_the_clinician_and_for_the_client() {
    let mut practised = practised(&Life::weeks(12));
    let told = |session, text: Option<&str>, heard_until| Moment {
        session,
        day: TODAY,
        part: 1,
        from_s: 400.0,
        until_s: 412.4,
        text: text.map(str::to_owned),
        heard_until,
    };
    practised.moments =
        vec![told(1, None, None), told(2, None, Some(date(2026, 12, 22))), told(3, Some("i rang my sister"), Some(date(2026, 12, 22)))];
    let sheet = worded("moments", &Picture::of(&practised, Window::weeks(TODAY, 12)));
    let table = sheet.tables.tables.iter().find(|table| table.title.starts_with("When the voice worked")).expect("a table");
    let cells: Vec<&str> = table.rows.iter().map(|row| row[1].as_str()).collect();
    assert_eq!(
        cells,
        [
            "Told; its recording is no longer kept.",
            "Recorded, 12 s: practice 2, until 22 Dec 2026.",
            "“i rang my sister” Recorded, 12 s: practice 3, until 22 Dec 2026."
        ]
    );
    let own = ["22 Nov 2026: “i rang my sister”", "22 Nov 2026: you told of one. Your recording is kept until 22 Dec 2026."];
    assert_eq!(sheet.client.moments, own);
    assert!(sheet.chart.text.contains("- 2026-11-22: \"i rang my sister\""), "{}", sheet.chart.text);
    assert!(to_html(&sheet).contains("When your voice worked"));
}

/// Baseline and re-test stand beside practice, each difference beside the person's own scatter, with conditions and published values or
/// the words that there are none.
#[test]
fn baseline_and_re_test_stand_beside_practice() {
    let conditions = |distance_cm| Conditions { distance_cm, ..Conditions::default() };
    let reading = |exercise: &str, measure, taken, trials: &[f64], distance_cm| Reading {
        exercise: exercise.to_owned(),
        measure,
        taken,
        value: trials.iter().copied().fold(f64::MIN, f64::max),
        trials: trials.to_vec(),
        discarded: 0,
        conditions: conditions(distance_cm),
    };
    let hold = |trials: &[f64]| reading("long-ah", Measure::HoldS, Taken::Best, trials, Some(30.0));
    let level = |value| reading("comfortable-ah", Measure::LevelDb, Taken::Median, &[value], Some(30.0));
    let (first_on, last_on) = (date(2026, 8, 31), date(2026, 11, 20));
    let figures = vec![
        BaselineFigure {
            first: hold(&[9.5, 11.0, 10.0]),
            first_on,
            latest: Some((last_on, hold(&[14.0, 15.5]))),
            compared: Some(Compared::Beyond { difference: 4.5, mdc95: 1.8 }),
        },
        BaselineFigure { first: level(-30.0), first_on, latest: Some((last_on, level(-28.0))), compared: Some(Compared::OtherConditions) },
        BaselineFigure {
            first: reading("comfortable-ah", Measure::F0SdSt, Taken::Median, &[0.2], None),
            first_on,
            latest: None,
            compared: None,
        },
    ];
    let baselines = Some(Baselines { figures, led: vec![(first_on, true), (last_on, false)] });
    let picture = Picture { baselines, ..Picture::of(&practised(&Life::weeks(12)), Window::weeks(TODAY, 12)) };
    let sheet = worded("baselines", &picture);
    let table = sheet.tables.tables.iter().find(|table| table.title.starts_with("Baseline and re-test")).expect("a table");
    let row = &table.rows[0];
    assert_eq!(row[1..4], ["11.0, the best of 9.5, 11.0, 10.0", "15.5, the best of 14.0, 15.5", "+4.5, beyond own scatter (1.8)"]);
    assert!(row[4].parse::<f64>().is_ok(), "what practice gives of late: {row:?}");
    assert!(row[5] == "below", "{row:?}");
    let row = &table.rows[1];
    assert!(row[3].starts_with("can’t be compared") && row[5] == "no norm known", "{row:?}");
    for told in [
        "31 Aug 2026, 20 Nov 2026 (not led to its end)",
        "30 cm",
        "not calibrated",
        "Published, Long ah: hold time, s: healthy women aged 60 to 89, all trials: mean 21.0 s",
        "Maslan et al. 2011",
        "no figure here is a diagnosis",
    ] {
        assert!(table.note.contains(told), "{told}: {}", table.note);
    }
    assert!(sheet.chart.text.contains("beyond own scatter (1.8)"), "{}", sheet.chart.text);
    for explained in ["SD: standard deviation", "F0: fundamental frequency", "st: semitones", "dB, relative: "] {
        assert!(table.note.contains(explained) && sheet.chart.text.contains(explained), "{explained}: {}", sheet.chart.text);
    }
}

/// What can be pasted into a chart: the order of a chart, the assessment left to the clinician, plain short lines, ISO days.
#[test]
fn the_text_for_the_chart_is_plain_and_leaves_the_assessment_to_the_clinician() {
    let sheet = gather(&with_goals(&Life::eventful()), &Practised::default(), 12, TODAY, &words()).expect("a report");
    let text = &sheet.chart.text;
    insta::assert_snapshot!("text_for_the_chart", text);
    assert!(text.lines().all(|line| line.chars().count() <= 100), "{text}");
    assert!(text.chars().all(|c| c.is_ascii_graphic() || c == ' ' || c == '\n'), "{text}");
    let places: Vec<usize> = ["SUBJECTIVE", "OBJECTIVE", "ASSESSMENT", "PLAN"]
        .iter()
        .map(|heading| text.find(&format!("\n{heading}\n")).expect(heading))
        .collect();
    assert!(places.is_sorted(), "{places:?}");
    assert!(text.contains("\nASSESSMENT\n(for you to write)\n\nPLAN\n(for you to decide;"), "{text}");
    assert!(text.contains("MDC95: the smallest change") && text.contains("Help from a carer: not recorded."));
    assert!(to_html(&sheet).contains("SUBJECTIVE"), "it can be copied from the page");
}

/// One vowel may grow louder while speech stays as it was: "louder" is said of daily speech alone.
#[test]
fn the_client_is_told_louder_only_of_daily_speech() {
    let mut practised = practised(&Life { level_gain_db: 25.0, ..Life::weeks(12) });
    let voice = |practised: &Practised| gather(practised, &Practised::default(), 12, TODAY, &words()).expect("a report").client.voice;
    let both = voice(&practised);
    assert!(both.iter().any(|line| line.starts_with("Loudness in Own phrases: louder than at first")), "{both:?}");
    assert!(!both.iter().any(|line| line.starts_with("Loudness in Long ah")), "{both:?}");
    practised.trials.retain(|trial| trial.exercise != "functional-phrases");
    let vowel = voice(&practised).concat();
    assert!(vowel.contains("Loudness in Long ah: it has gone up in this one sound.") && !vowel.contains("louder"), "{vowel}");
}

/// Whoever reads a report needs no other page to know what its letters stand for.
#[test]
fn every_abbreviation_is_explained_on_the_page_where_it_stands() {
    for (name, life, weeks) in lives() {
        let sheet = report(&life, weeks);
        let charts = serde_json::to_string(&sheet.front.charts).expect("text");
        let keys = sheet.front.key.as_ref().map(|key| key.abbreviations.join(" ")).unwrap_or_default();
        let tables = serde_json::to_string(&sheet.tables.tables).expect("text");
        for (stands, explained) in [
            ("MDC95", "MDC95: "),
            ("dB SPL", "dB SPL: "),
            ("dB, relative", "dB, relative: "),
            ("A-weighted", "A-weighted: "),
            (" st\"", "st: "),
        ] {
            assert!(!charts.contains(stands) || keys.contains(explained), "{name}: {stands} on page one");
        }
        let all = [
            ("MDC95", "MDC95: "),
            (", st\"", "st: "),
            ("F0", "F0: "),
            ("SD of", "SD: "),
            ("CPPS", "CPPS: "),
            ("HNR", "HNR: "),
            ("Hz", "Hz: "),
        ];
        for (stands, explained) in all.into_iter().chain([("†", "† "), ("dB SPL", "dB SPL: "), ("dB, relative", "dB, relative: ")]) {
            assert!(!tables.contains(stands) || tables.contains(explained), "{name}: {stands} in the tables");
        }
    }
}

#[test]
fn weeks_without_practice_say_so_and_when_the_last_one_was() {
    let sheet = report(&Life { days: 63, diligence: 1.0, ..Life::weeks(12) }, 3);
    assert_eq!(sheet.front.glance, ["No practices between 2 Nov 2026 and 22 Nov 2026; the last one was on 1 Nov 2026."]);
    assert!(sheet.front.charts.is_empty() && sheet.front.key.is_none());
    assert!(sheet.client.practised.starts_with("You did not practise") && sheet.client.voice.is_empty());
}

#[test]
fn the_html_is_one_file_that_loads_nothing_and_can_be_heard() {
    let sheet = report(&Life::eventful(), 12);
    let html = to_html(&sheet);
    assert!(html.contains("<html lang=\"en\">") && html.contains("default-src 'none'"));
    for loads in ["src=", "href=", "url(", "@import", "<script"] {
        assert!(!html.contains(loads), "{loads}");
    }
    let drawings = sheet.front.charts.len() + 2;
    assert_eq!((html.matches("role=\"img\"").count(), html.matches("<desc ").count()), (drawings, drawings));
    assert_eq!(html.matches("<table ").count(), sheet.tables.tables.len());
    assert!(html.matches("scope=\"col\"").count() >= 15 && html.matches("scope=\"row\"").count() >= 20);
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut order = Command::new(env!("CARGO_BIN_EXE_tidecount"));
    order.current_dir(folder).arg("report").args(arguments).args(["--data", "record", "--until", "2026-11-22", "--format", "html"]);
    order.output().expect("runs")
}

#[test]
fn the_command_asks_whose_report_and_never_writes_over_a_file_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let said = |output: &Output| String::from_utf8_lossy(&output.stderr).into_owned();
    let none = run(here, &[]);
    assert!(!none.status.success() && said(&none).contains("there is no record in record"), "{}", said(&none));
    assert!(!here.join("record").exists(), "nothing is made where there is nothing");
    let week = Life { days: 7, first: date(2026, 11, 16), ..Life::weeks(1) };
    keep(&here.join("record"), std::slice::from_ref(&week));
    assert!(run(here, &[]).status.success());
    let file = here.join("report-grandma-2026-11-22.html");
    let first = std::fs::read(&file).expect("written");
    let again = run(here, &[]);
    assert!(!again.status.success() && said(&again).contains("left as it is") && said(&again).contains("--force"), "{}", said(&again));
    assert!(run(here, &["--force"]).status.success() && std::fs::read(&file).expect("written") == first);
    assert_eq!(run(here, &["--out", "-"]).stdout, first);
    keep(&here.join("record"), &[Life { client: "grandpa", ..week }]);
    let several = run(here, &[]);
    assert!(
        !several.status.success() && said(&several).contains("--client NAME:\n  grandma (") && said(&several).contains("\n  grandpa ("),
        "{}",
        said(&several)
    );
    assert!(said(&run(here, &["--client", "nobody"])).contains("has not practised"));
    assert!(run(here, &["--client", "grandpa", "--out", "x.html"]).status.success());
    assert!(said(&run(here, &["--client", "grandpa", "--out", "no/such/x.html"])).contains("Make sure the folder is there"));
    assert_eq!(std::fs::read_dir(here).expect("a folder").count(), 3, "nothing half written is left");
}

/// A letter tells what was ticked and nothing else; the carer's page tells stops first. Both are tagged pages that another reader takes.
#[test]
fn a_letter_and_a_carers_page_are_made_of_the_same_record() {
    let practised = practised(&Life::eventful());
    let picture = Picture::of(&practised, Window::weeks(TODAY, 12));
    let words = words();
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).expect("a message");
    let about = About { made: TODAY, last_practice: None, software: "tidecount" };
    let whole = report::sheet::letter(&picture, &about, &report::sheet::Part::ALL, &say);
    let ticked = report::sheet::letter(&picture, &about, &[report::sheet::Part::Practice], &say);
    assert_eq!((whole.sections.len(), ticked.sections.len()), (report::sheet::Part::ALL.len() + 1, 2), "and a place to sign");
    assert_eq!(ticked.sections[0], whole.sections[1]);
    let measures = whole.sections[3].lines.join("\n");
    assert!(measures.contains("(MDC95 ") && measures.contains("\nMDC95: the smallest change"), "{measures}");
    let carer = report::sheet::carer(&picture, &about, &say);
    assert!(!picture.safety_stops.is_empty() && carer.sections[0].lines.len() > 1, "{:?}", carer.sections[0]);
    for letter in [&whole, &ticked, &carer] {
        let pdf = lopdf::Document::load_mem(&print::letter_pdf(letter).expect("a PDF")).expect("an independent reader takes it");
        let all: String = (1..=u32::try_from(pdf.get_pages().len()).expect("few")).map(|number| page(&pdf, number)).collect();
        let html = report::letter_html(letter);
        for line in letter.sections.iter().flat_map(|section| std::iter::once(&section.title).chain(&section.lines)) {
            assert!(all.contains(&squeezed(line)), "{line}\n{all}");
            assert!(html.matches("<li>").count() >= letter.sections.len());
        }
    }
}
