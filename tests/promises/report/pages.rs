//! What stands on which page, and in which words.

use super::*;

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
