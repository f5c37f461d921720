//! The tables, for both engines. What was once given out is never changed, only added to.

use super::measured;

/// SQLite: what takes the file from form n to form n + 1.
pub(super) const SQLITE: [&str; 3] = [
    include_str!("migration_1.sqlite.sql"),
    include_str!("migration_2.sqlite.sql"),
    concat!(include_str!("migration_3.sqlite.sql"), include_str!("migration_3.sql")),
];
/// PostgreSQL: the same tables.
#[cfg(any(feature = "postgres", test))]
pub(super) const POSTGRES: [&str; 3] = [
    include_str!("migration_1.postgres.sql"),
    include_str!("migration_2.postgres.sql"),
    concat!(include_str!("migration_3.postgres.sql"), include_str!("migration_3.sql")),
];

/// The newest form that this version knows.
pub(super) fn known() -> i64 {
    SQLITE.len() as i64
}

/// Every table with what makes a row known again on another database: numbers that a database gives by itself, and times of
/// arrival, are left out. For comparing two databases.
pub(super) fn content() -> Vec<(&'static str, String)> {
    // By session, not by the numbers that the database gives.
    let columns: Vec<String> =
        measured::names().iter().filter(|name| !["session", "condition"].contains(name)).map(|name| format!("t.{name}")).collect();
    let trial = format!(
        "SELECT p.id, s.started_at, s.number, {}, c.label FROM trial t JOIN session s ON s.id = t.session
         LEFT JOIN condition c ON c.id = t.condition JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = s.client",
        columns.join(", ")
    );
    let others = CONTENT.iter().map(|(table, sql)| (*table, (*sql).to_owned()));
    others.chain([("trial", trial)]).collect()
}

const CONTENT: [(&str, &str); 12] = [
    ("desk", "SELECT key, name FROM desk"),
    ("package", "SELECT p.id, p.reply_key, p.made_at, d.key, c.name FROM package p JOIN client c ON c.id = p.client JOIN desk d ON d.id = c.desk"),
    ("arrival", "SELECT package, hash, made_at, sessions FROM arrival"),
    ("routine", "SELECT p.id, r.hash, r.title, r.body FROM routine r JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = r.client"),
    (
        "session",
        "SELECT p.id, s.started_at, s.number, s.day, s.began_s, s.ended_at, s.end_reason, r.hash, s.package, s.software, s.entries, s.marks, s.practised_s,
             s.steps_done, s.steps_prescribed, s.part_starts
         FROM session s JOIN routine r ON r.id = s.routine JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = s.client",
    ),
    ("condition", "SELECT p.id, c.label, c.weighting, c.time_weighting, c.calibration, c.calibration_note, c.distance_cm, c.auto_gain,
             c.microphone_system, c.microphone_name, c.microphone_rate_hz, c.microphone_gain FROM condition c JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = c.client"),
    (
        "step",
        "SELECT p.id, s.started_at, s.number, t.step, t.exercise, t.ramp_stage, t.done, t.prescribed, t.stopped FROM step t JOIN session s ON s.id = t.session
         JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = s.client",
    ),
    ("forgotten", "SELECT package, reply_key FROM forgotten"),
    ("event", "SELECT p.id, s.started_at, s.number, e.seq, e.kind, e.what, e.exercise, e.day FROM event e JOIN session s ON s.id = e.session JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = s.client"),
    ("day", "SELECT p.id, d.day, d.sessions, d.done, d.counted, d.prescribed, d.planned FROM day d JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = d.client"),
    (
        "measure",
        "SELECT p.id, m.exercise, m.measure, m.label, m.since, m.until, m.trials, m.baseline, m.latest, m.smallest_change, m.verdict
         FROM measure m JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = m.client",
    ),
    (
        "digest",
        "SELECT p.id, g.newest_made_at, g.follows_newest, g.first_day, g.last_day, g.known_to, g.sessions, g.trials, g.practised_s, g.planned_week, g.gap_days,
             g.recent_counted, g.recent_prescribed, g.before_counted, g.before_prescribed, g.planned, g.dizzy, g.pain, g.help, g.last_safety, g.left_out,
             g.left_out_what, g.tired, g.fallen, g.fallen_what, g.risen, g.microphone, g.microphone_since, g.clock_wrong, g.fresh, g.seen_day, g.seen_note,
             g.signs, g.signs_what, g.chest_pain, g.breathless, g.choking, g.sick, g.said_else
         FROM digest g JOIN (SELECT client, min(id) AS id FROM package GROUP BY client) p ON p.client = g.client",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// An older database counted them all as pain; what nobody has seen is counted anew, what somebody has seen is not.
    #[test]
    fn what_was_counted_as_pain_stands_by_itself() {
        let db = rusqlite::Connection::open_in_memory().expect("opens");
        db.execute_batch(&format!("PRAGMA foreign_keys = OFF; {} {}", SQLITE[0], SQLITE[1])).expect("the older form");
        let zeros = "recent_counted, recent_prescribed, before_counted, before_prescribed, planned, dizzy, left_out, tired, fallen, risen, clock_wrong, fresh";
        let none = vec!["0"; zeros.split(',').count()].join(", ");
        db.execute_batch(&format!(
            "INSERT INTO digest (client, sessions, trials, practised_s, gap_days, microphone, pain, help, {zeros}) VALUES (1, 1, 1, 1, 1, 'fine', 4, 1, {none});"
        ))
        .expect("a row");
        let said = [("chest pain", None), ("choking", None), ("pain", None), ("faint", None), ("help", None), ("feels sick", Some(7))];
        for (seq, (what, look)) in (1_i64..).zip(said) {
            let row = rusqlite::params![seq, what, look];
            db.execute("INSERT INTO event VALUES (1, ?1, 1, 'safety', ?2, NULL, '2026-03-01', ?3)", row).expect("an event");
        }
        db.execute_batch(SQLITE[2]).expect("the newer form");
        let columns = "chest_pain, breathless, choking, sick, pain, said_else, help";
        let counts: Vec<i64> =
            db.query_row(&format!("SELECT {columns} FROM digest"), [], |row| (0..7).map(|n| row.get(n)).collect()).expect("reads");
        assert_eq!(counts, [1, 0, 1, 0, 1, 1, 1]);
    }

    #[test]
    fn both_engines_know_the_same_forms() {
        assert_eq!(SQLITE.len(), POSTGRES.len());
    }

    /// The same tables and columns in the same order, whatever their types are called.
    #[test]
    fn both_engines_have_the_same_tables() {
        let tables = |all: &[&str]| -> Vec<(String, Vec<String>)> {
            let text = all.join("\n");
            let made = text.split("CREATE TABLE ").skip(1);
            let read = made.map(|table| {
                let (name, rest) = table.split_once(" (").expect("a table");
                let body = rest.split_once("\n)").expect("its end").0;
                let column = |line: &str| {
                    let word = line.trim().split(' ').next()?.to_owned();
                    word.chars().next().is_some_and(char::is_lowercase).then_some(word)
                };
                (name.to_owned(), body.lines().filter_map(column).collect())
            });
            read.filter(|(name, _): &(String, Vec<String>)| name != "about").collect()
        };
        assert_eq!(tables(&SQLITE), tables(&POSTGRES));
        assert!(tables(&SQLITE).len() >= 12);
    }
}
