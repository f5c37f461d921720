use super::*;
use std::collections::BTreeMap;

fn settings(from: &str, to: &str) -> Settings {
    Settings {
        from: from.parse().expect("a date"),
        to: to.parse().expect("a date"),
        summary: "Practice".into(),
        alarms_min: vec![10],
        made_at: "2026-01-01T08:00:00Z".parse().expect("a time"),
    }
}

fn at(days: &[Weekday], at_min: u16) -> PlannedTime {
    PlannedTime { days: days.iter().copied().collect(), at_min }
}

fn one<'a>(plan: &'a [PlannedTime]) -> Planned<'a> {
    Planned { client: "grandpa", title: "Evening voice", plan, minutes: 20 }
}

/// Name and value of each property, by an independent reader.
fn read(text: &str) -> Vec<(BTreeMap<String, String>, Vec<BTreeMap<String, String>>)> {
    let calendar = ical::IcalParser::new(text.as_bytes()).next().expect("a calendar").expect("readable");
    let values = |properties: &[ical::property::Property]| {
        properties.iter().map(|p| (p.name.clone(), p.value.clone().unwrap_or_default())).collect()
    };
    calendar
        .events
        .iter()
        .map(|event| (values(&event.properties), event.alarms.iter().map(|alarm| values(&alarm.properties)).collect()))
        .collect()
}

/// RFC 5545, sections 3.1 (lines), 3.6.1 (events), 3.6.6 (alarms), 3.8.5.3 (recurrence; the start is its first instance).
#[test]
fn the_plan_is_read_back_by_another_library() {
    let plan = [at(&Weekday::ALL, 8 * 60), at(&[Weekday::Tuesday, Weekday::Friday], 18 * 60 + 30)];
    // 2026-03-02 is a Monday.
    let (text, practices) = calendar(&[one(&plan)], &settings("2026-03-02", "2026-04-12")).expect("a calendar");
    assert_eq!(practices, 42 + 12);
    let events = read(&text);
    assert_eq!(events.len(), 2);
    let (daily, alarms) = &events[0];
    assert_eq!((daily["DTSTART"].as_str(), daily["RRULE"].as_str()), ("20260302T080000", "FREQ=DAILY;COUNT=42"));
    assert_eq!(
        (daily["SUMMARY"].as_str(), daily["DURATION"].as_str(), daily["DTSTAMP"].as_str()),
        ("Practice", "PT20M", "20260101T080000Z")
    );
    assert_eq!(alarms.len(), 1);
    assert_eq!(
        (alarms[0]["ACTION"].as_str(), alarms[0]["TRIGGER"].as_str(), alarms[0]["DESCRIPTION"].as_str()),
        ("DISPLAY", "-PT10M", "Practice")
    );
    assert!(!alarms[0].contains_key("DTSTAMP"));
    let (weekly, _) = &events[1];
    assert_eq!((weekly["DTSTART"].as_str(), weekly["RRULE"].as_str()), ("20260303T183000", "FREQ=WEEKLY;BYDAY=TU,FR;COUNT=12"));
}

#[test]
fn it_tells_nothing_of_whom_and_what_and_stays_the_same() {
    let plan = [at(&Weekday::ALL, 8 * 60)];
    let days = settings("2026-03-02", "2026-04-12");
    let (text, _) = calendar(&[one(&plan)], &days).expect("a calendar");
    assert!(!text.to_lowercase().contains("grandpa") && !text.to_lowercase().contains("voice"), "{text}");
    assert_eq!(calendar(&[one(&plan)], &days).expect("a calendar").0, text);
    let uid = |text: &str| read(text)[0].0["UID"].clone();
    let moved = [at(&Weekday::ALL, 9 * 60)];
    assert_eq!(uid(&calendar(&[one(&moved)], &days).expect("a calendar").0), uid(&text), "a time that is changed moves");
    let other = Planned { client: "grandma", ..one(&plan) };
    assert_ne!(uid(&calendar(&[other], &days).expect("a calendar").0), uid(&text));
}

#[test]
fn every_line_ends_with_crlf_and_has_at_most_75_octets() {
    let plan = [at(&[Weekday::Monday], 8 * 60)];
    let summary = "Üben; mit, Zeichen \\ und einer Länge, die über fünfundsiebzig Oktette hinausgeht, äöüäöüäöüäöüäöüäöüäöü".to_owned();
    let days = Settings { summary: summary.clone(), ..settings("2026-03-02", "2026-04-12") };
    let (text, _) = calendar(&[one(&plan)], &days).expect("a calendar");
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "{text}");
    let unescaped = read(&text)[0].0["SUMMARY"].replace("\\,", ",").replace("\\;", ";").replace("\\\\", "\\");
    assert_eq!(unescaped, summary);
}

#[test]
fn days_without_a_planned_time_give_none() {
    let plan = [at(&[Weekday::Monday], 8 * 60)];
    assert_eq!(calendar(&[one(&plan)], &settings("2026-03-03", "2026-03-08")), None);
    assert_eq!(calendar(&[one(&plan)], &settings("2026-03-09", "2026-03-08")), None);
    assert_eq!(calendar(&[one(&[])], &settings("2026-03-02", "2026-03-08")), None);
}
