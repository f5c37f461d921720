//! Goals, ratings, signs, moments and baselines, as they are told to the clinician and the client.

use super::*;

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
