//! The result of an evaluation as a table and as JSON.

use crate::hear::evaluate::score::{Tally, poisson, wilson};
use crate::hear::lines::shown;
use crate::hear::rounded::rounded;
use serde::Serialize;
use std::collections::BTreeMap;
use std::io::Write;

/// What was evaluated and what came of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Report {
    /// The conditions in words: "quiet", "10 dB SNR".
    pub condition: String,
    pub phrases: Vec<String>,
    /// By group and by phrase said (the empty phrase: nothing meant for the tool).
    pub rows: BTreeMap<(String, String), Tally>,
    /// Seconds of sound heard, pauses included.
    pub heard_s: f64,
}

/// A share with its 95 % interval, in per cent.
#[derive(Debug, Serialize)]
struct Share {
    percent: f64,
    low_percent: f64,
    high_percent: f64,
}

/// A row as it stands in JSON.
#[derive(Debug, Serialize)]
struct Row<'a> {
    kind: &'static str,
    condition: &'a str,
    group: &'a str,
    /// The phrase said; absent in the row of a whole group.
    #[serde(skip_serializing_if = "Option::is_none")]
    phrase: Option<&'a str>,
    said: u64,
    hits: u64,
    asked: u64,
    substituted: u64,
    missed: u64,
    hit_rate: Option<Share>,
    delay_median_s: Option<f64>,
    delay_95_s: Option<f64>,
    other: u64,
    other_taken: u64,
    other_hours: f64,
    false_actions: u64,
    false_questions: u64,
    false_actions_per_hour: Option<f64>,
    false_actions_per_hour_low: Option<f64>,
    false_actions_per_hour_high: Option<f64>,
}

fn hours(tally: &Tally) -> f64 {
    tally.other_s / 3600.0
}

fn row<'a>(condition: &'a str, group: &'a str, phrase: Option<&'a str>, tally: &Tally) -> Row<'a> {
    let percent = |share: f64| rounded(100.0 * share, 2);
    let (low, high) = poisson(tally.false_actions);
    let per_hour = |count: f64| (hours(tally) > 0.0).then(|| rounded(count / hours(tally), 3));
    Row {
        kind: "evaluation",
        condition,
        group,
        phrase,
        said: tally.said,
        hits: tally.hits,
        asked: tally.asked,
        substituted: tally.substituted,
        missed: tally.missed(),
        hit_rate: wilson(tally.hits, tally.said).map(|(low, high)| Share {
            percent: percent(tally.hits as f64 / tally.said as f64),
            low_percent: percent(low),
            high_percent: percent(high),
        }),
        delay_median_s: tally.delay_s(0.5).map(|s| rounded(s, 3)),
        delay_95_s: tally.delay_s(0.95).map(|s| rounded(s, 3)),
        other: tally.other,
        other_taken: tally.other_taken,
        other_hours: rounded(hours(tally), 4),
        false_actions: tally.false_actions,
        false_questions: tally.false_questions,
        false_actions_per_hour: per_hour(tally.false_actions as f64),
        false_actions_per_hour_low: per_hour(low),
        false_actions_per_hour_high: per_hour(high),
    }
}

impl Report {
    /// The counts of each group, all phrases together.
    fn groups(&self) -> BTreeMap<&str, Tally> {
        let mut groups = BTreeMap::<&str, Tally>::new();
        for ((group, _), tally) in &self.rows {
            groups.entry(group.as_str()).or_default().add(tally);
        }
        groups
    }

    /// One JSON object per group, then one per group and phrase.
    ///
    /// # Errors
    /// `out` refuses.
    pub fn write_json(&self, out: &mut impl Write) -> std::io::Result<()> {
        for (group, tally) in self.groups() {
            serde_json::to_writer(&mut *out, &row(&self.condition, group, None, &tally))?;
            writeln!(out)?;
        }
        for ((group, phrase), tally) in &self.rows {
            serde_json::to_writer(&mut *out, &row(&self.condition, group, Some(phrase), tally))?;
            writeln!(out)?;
        }
        Ok(())
    }

    /// A table for reading: what was meant for the tool, then what was not.
    ///
    /// # Errors
    /// `out` refuses.
    pub fn write_table(&self, out: &mut impl Write) -> std::io::Result<()> {
        writeln!(out, "{}; listening for {}; {:.1} min of sound", self.condition, self.phrases.join(", "), self.heard_s / 60.0)?;
        let said = |tally: &&Tally| tally.said > 0;
        if self.rows.values().any(|tally| said(&tally)) {
            writeln!(
                out,
                "  {:<34} {:>5} {:>5} {:>6} {:>7} {:>7} {:>8} {:>16}  delay s median, 95 %",
                "said", "of", "hits", "asked", "missed", "other", "hits %", "95 % interval"
            )?;
            for (name, tally) in self.named_rows() {
                let Some((low, high)) = wilson(tally.hits, tally.said) else { continue };
                let delay = |share| tally.delay_s(share).map_or(String::new(), |s| format!("{s:.2}"));
                writeln!(
                    out,
                    "  {name:<34} {:>5} {:>5} {:>6} {:>7} {:>7} {:>8.1} {:>16}  {:>6} {:>6}",
                    tally.said,
                    tally.hits,
                    tally.asked,
                    tally.missed(),
                    tally.substituted,
                    100.0 * tally.hits as f64 / tally.said as f64,
                    format!("{:.1} to {:.1}", 100.0 * low, 100.0 * high),
                    delay(0.5),
                    delay(0.95),
                )?;
            }
        }
        if self.rows.values().any(|tally| tally.other > 0) {
            writeln!(
                out,
                "  {:<34} {:>5} {:>5} {:>6} {:>7} {:>7} {:>8} {:>16}",
                "not meant for it", "of", "taken", "false", "asked", "hours", "false/h", "95 % interval"
            )?;
            for (name, tally) in self.named_rows() {
                if tally.other == 0 {
                    continue;
                }
                let (low, high) = poisson(tally.false_actions);
                let per_hour = |count: f64| if hours(&tally) > 0.0 { count / hours(&tally) } else { 0.0 };
                writeln!(
                    out,
                    "  {name:<34} {:>5} {:>5} {:>6} {:>7} {:>7.2} {:>8.2} {:>16}",
                    tally.other,
                    tally.other_taken,
                    tally.false_actions,
                    tally.false_questions,
                    hours(&tally),
                    per_hour(tally.false_actions as f64),
                    format!("{:.2} to {:.2}", per_hour(low), per_hour(high)),
                )?;
            }
        }
        Ok(())
    }

    /// Groups, each followed by its phrases where it has several.
    fn named_rows(&self) -> Vec<(String, Tally)> {
        let mut named = Vec::new();
        for (group, tally) in self.groups() {
            let phrases: Vec<_> = self.rows.iter().filter(|((g, _), t)| g == group && t.said > 0).collect();
            named.push((shown(if group.is_empty() { "all" } else { group }), tally));
            if phrases.len() > 1 {
                named.extend(phrases.into_iter().map(|((_, phrase), tally)| (format!("  {}", shown(phrase)), tally.clone())));
            }
        }
        named
    }
}

#[cfg(test)]
mod tests {
    use super::super::score::{Taken, Taking};
    use super::*;

    fn report() -> Report {
        let mut report = Report { condition: "quiet".into(), phrases: vec!["stop".into(), "go".into()], ..Report::default() };
        let heard = |phrase: &str, delay_s| [Taking { phrase: phrase.to_owned(), taken: Taken::Acted, delay_s }];
        let mut row = |group: &str, said: &str| report.rows.entry((group.into(), said.into())).or_default().clone();
        let (mut stop, mut go, mut talk) = (row("people", "stop"), row("people", "go"), row("talk", ""));
        stop.count(Some("stop"), &heard("stop", 0.25), 1.0);
        stop.count(Some("stop"), &[], 1.0);
        go.count(Some("go"), &heard("stop", 0.2), 1.0);
        talk.count(None, &heard("go", 0.0), 7_200.0);
        for (group, said, tally) in [("people", "stop", stop), ("people", "go", go), ("talk", "", talk)] {
            report.rows.insert((group.into(), said.into()), tally);
        }
        report
    }

    #[test]
    fn json_gives_groups_and_phrases() {
        let mut out = Vec::new();
        report().write_json(&mut out).unwrap();
        let lines: Vec<serde_json::Value> = String::from_utf8(out).unwrap().lines().map(|l| serde_json::from_str(l).unwrap()).collect();
        assert_eq!(lines.len(), 5);
        let people = &lines[0];
        assert_eq!(
            (&people["group"], &people["said"], &people["hits"], &people["substituted"]),
            (&"people".into(), &3.into(), &1.into(), &1.into())
        );
        assert_eq!(people["hit_rate"]["percent"], 33.33);
        assert!(people["false_actions_per_hour"].is_null() && people.get("phrase").is_none());
        let talk = &lines[1];
        assert_eq!((&talk["false_actions_per_hour"], &talk["other_hours"]), (&0.5.into(), &2.0.into()));
        assert!(talk["hit_rate"].is_null());
        assert_eq!((&lines[3]["phrase"], &lines[3]["delay_median_s"]), (&"stop".into(), &0.25.into()));
    }

    #[test]
    fn the_table_shows_both_halves() {
        let mut out = Vec::new();
        report().write_table(&mut out).unwrap();
        let text = String::from_utf8(out).unwrap();
        let rows: Vec<&str> = text.lines().collect();
        assert!(rows[0].starts_with("quiet; listening for stop, go"), "{text}");
        assert!(rows[1].contains("hits %") && rows[2].contains("people") && rows[2].contains("33.3"), "{text}");
        assert!(text.contains("not meant for it") && rows.last().is_some_and(|r| r.contains("talk") && r.contains("0.50")), "{text}");
    }
}
