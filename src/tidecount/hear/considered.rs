//! What the command ear considered, as a line of output: `tidecount hear --why`.

use crate::hear::rounded::rounded;
use command_ear::{Considered, Verdict};
use serde::Serialize;

/// A phrase that was considered, as it stands in a line of output; confidences and shares are 0 to 1.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ConsideredLine {
    pub kind: &'static str,
    pub file: String,
    #[serde(flatten)]
    pub considered: Considered,
}

impl ConsideredLine {
    /// For a phrase considered in `file`.
    pub fn new(file: &str, considered: Considered) -> Self {
        let c = considered;
        let considered = Considered {
            start_s: rounded(c.start_s, 3),
            end_s: rounded(c.end_s, 3),
            decided_s: rounded(c.decided_s, 3),
            first: rounded(c.first, 3),
            second: rounded(c.second, 3),
            rival: rounded(c.rival, 3),
            second_ear: c.second_ear.map(|likely| rounded(likely, 3)),
            elsewhere_s: rounded(c.elsewhere_s, 2),
            talk: rounded(c.talk, 2),
            above_db: rounded(c.above_db, 1),
            sureness: rounded(c.sureness, 3),
            ..c
        };
        Self { kind: "considered", file: file.to_owned(), considered }
    }

    /// Its row of the table.
    pub fn row(&self) -> String {
        let c = &self.considered;
        let second_ear = c.second_ear.map_or_else(|| "not asked".to_owned(), |likely| format!("{likely:.2}"));
        let path = if c.fast { ", fast path" } else { "" };
        format!(
            "  heard as {:>8.2} {:>8.2} {:>9.2}  \"{}\"{path}: {}\n           recogniser {:.2}, faster {:.2}, another word {:.2}; second ear {second_ear}; {:.2} s of other sound, talk before {:.0} %, {:.0} dB over the room; sure {:.2}",
            c.start_s,
            c.end_s,
            c.end_s - c.start_s,
            c.text,
            in_words(c.verdict),
            c.first,
            c.second,
            c.rival,
            c.elsewhere_s,
            100.0 * c.talk,
            c.above_db,
            c.sureness,
        )
    }
}

fn in_words(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Taken => "counts",
        Verdict::Doubtful => "counts; a command that costs something is asked about",
        Verdict::Unsure => "not sure enough",
        Verdict::NotYet => "not sure enough yet, listened on",
        Verdict::WaitsForMore => "a longer phrase may follow, listened on",
        Verdict::NoPhrase => "no phrase that is listened for",
        Verdict::OtherSpeech => "other speech is too close",
        Verdict::TooLong => "drawn out too long for a command",
        Verdict::TooSoft => "hardly stands out from the room",
        Verdict::NotInTheWhole => "only in the end of a longer utterance",
        Verdict::EnrolledVoice => "the enrolled voice speaks against it",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_tells_what_each_ear_found_and_why_it_did_not_count() {
        let considered = Considered {
            fast: false,
            text: "stop".into(),
            start_s: 1.23456,
            end_s: 1.6,
            decided_s: 2.0,
            first: 0.61234,
            second: 0.0,
            rival: 0.3,
            second_ear: Some(0.7),
            elsewhere_s: 0.5,
            talk: 0.25,
            above_db: 21.0,
            sureness: 0.4,
            verdict: Verdict::Unsure,
        };
        let line = ConsideredLine::new("a.wav", considered);
        let row = line.row();
        assert!(
            row.contains("\"stop\": not sure enough") && row.contains("recogniser 0.61, faster 0.00") && row.contains("second ear 0.70"),
            "{row}"
        );
        let json = serde_json::to_value(&line).unwrap();
        assert_eq!((&json["kind"], &json["verdict"], &json["start_s"]), (&"considered".into(), &"unsure".into(), &1.235.into()));
    }
}
