//! `tidecount hear --commands … --labels LIST`: how well commands are heard in labelled recordings.

pub mod args;
mod condition;
mod labels;
mod report;
mod score;
mod stretch;

use crate::hear::evaluate::args::{ConditionArgs, EvaluationArgs};
use crate::hear::out::{reader_left, unwritten};
use crate::hear::phrases::PhraseEar;
use crate::hear::rounded::rounded;
use command_ear::{ACT_CONFIDENCE, HeardPhrase, Mode, RATE_HZ};
use condition::Condition;
use files::error::Failure;
use labels::Labelled;
use report::Report;
use score::{Outcome, Taken, Taking};
use serde::Serialize;
use session::Command;
use speak::Words;
use std::io::Write;
use std::path::{Path, PathBuf};

/// Quiet put before and after each recording, s.
const PAUSES_S: (f64, f64) = (1.0, 1.5);

/// One recording's line of `--details`.
#[derive(Debug, Serialize)]
struct Detail<'a> {
    kind: &'static str,
    path: String,
    group: &'a str,
    said: &'a str,
    outcome: &'static str,
    word_end_s: f64,
    heard: Vec<DetailHeard<'a>>,
}

#[derive(Debug, Serialize)]
struct DetailHeard<'a> {
    text: &'a str,
    start_s: f64,
    end_s: f64,
    decided_s: f64,
    confidence: f64,
    path: &'static str,
}

/// Hears every recording of the list and writes the result to `out`; recordings that cannot be heard are named on `err`. True if all were heard.
///
/// # Errors
/// List, conditions, phrases or model cannot be used, or the result cannot be written.
pub fn run(
    args: &EvaluationArgs,
    list: &Path,
    (phrases, model, json): (&str, Option<&Path>, bool),
    out: &mut impl Write,
    err: &mut impl Write,
) -> Result<bool, Failure> {
    let recordings = labels::chosen(labels::read(list)?, args.half, args.every);
    if recordings.is_empty() {
        return Err(Failure::file(list, "none of its recordings is in the half asked for; leave --half out"));
    }
    let condition = Condition::load(&args.condition, if args.bare { (0.0, 0.0) } else { PAUSES_S })?;
    let mut ear = PhraseEar::start(phrases, model, Mode::Offline, false)?;
    let listening = ear.wordings();
    let costly = costly_wordings()?;
    let mut report = Report { condition: condition_name(&args.condition), phrases: listening.clone(), ..Report::default() };
    let mut all = true;
    for (number, recording) in recordings.iter().enumerate() {
        let heard = condition::load(&recording.path).and_then(|sound| {
            let prepared = condition.prepare(&sound, number);
            ear.begin(RATE_HZ)?;
            ear.push(&prepared.sound);
            let heard = ear.end().map_err(|why| Failure::file(&recording.path, why))?;
            report.heard_s += prepared.sound.len() as f64 / f64::from(RATE_HZ);
            Ok((prepared, heard))
        });
        let (prepared, heard) = match heard {
            Ok(both) => both,
            Err(error) => {
                all = false;
                let _ = writeln!(err, "tidecount: {error}");
                continue;
            }
        };
        let said = listening.contains(&recording.label).then_some(recording.label.as_str());
        let takings = heard.iter().map(|phrase| {
            let taking = taking(phrase, &costly, prepared.word_end_s);
            // Another wording of what was said is no other command.
            match said.filter(|said| ear.mean_the_same(said, &phrase.text)) {
                Some(said) => Taking { phrase: said.to_owned(), ..taking },
                None => taking,
            }
        });
        let takings: Vec<Taking> = takings.collect();
        let key = (recording.group.clone(), said.unwrap_or_default().to_owned());
        let outcome = report.rows.entry(key).or_default().count(said, &takings, prepared.length_s);
        if args.details {
            let line = detail(recording, outcome, prepared.word_end_s, &heard);
            let written = serde_json::to_writer(&mut *out, &line).map_err(std::io::Error::from).and_then(|()| writeln!(out));
            match written {
                Err(error) if reader_left(&error) => return Ok(all),
                outcome => outcome.map_err(|error| unwritten(&error))?,
            }
        }
    }
    let written = if json { report.write_json(out) } else { report.write_table(out) };
    match written.and_then(|()| out.flush()) {
        Err(error) if reader_left(&error) => Ok(all),
        outcome => outcome.map(|()| all).map_err(|error| unwritten(&error)),
    }
}

/// What a session does with a phrase: costly commands are asked about unless it is sure.
fn taking(heard: &HeardPhrase, costly: &[String], word_end_s: f64) -> Taking {
    let asks = costly.contains(&heard.text) && heard.confidence < ACT_CONFIDENCE;
    let taken = if asks { Taken::Asked } else { Taken::Acted };
    Taking { phrase: heard.text.clone(), taken, delay_s: heard.decided_s - word_end_s }
}

/// The wordings of commands that a session asks about where it is not sure.
fn costly_wordings() -> Result<Vec<String>, Failure> {
    let words = Words::usual()?;
    Ok(Command::ALL.into_iter().filter(|command| command.is_costly()).flat_map(|command| words.wordings(command)).collect())
}

fn condition_name(args: &ConditionArgs) -> String {
    let name =
        |path: &Option<PathBuf>| path.as_deref().and_then(Path::file_name).map_or(String::new(), |n| n.to_string_lossy().into_owned());
    let mut parts = Vec::new();
    parts.extend(args.snr.map(|db| format!("{db} dB SNR of {}", name(&args.noise))));
    parts.extend(args.room.as_ref().map(|_| format!("room {}", name(&args.room))));
    parts.extend(args.level.map(|db| format!("{db} dBFS")));
    parts.extend(args.slow.map(|factor| format!("speed {factor}")));
    if parts.is_empty() { "as recorded".to_owned() } else { parts.join(", ") }
}

fn detail<'a>(recording: &'a Labelled, outcome: Outcome, word_end_s: f64, heard: &'a [HeardPhrase]) -> Detail<'a> {
    let heard = heard.iter().map(|phrase| DetailHeard {
        text: &phrase.text,
        start_s: rounded(phrase.start_s, 3),
        end_s: rounded(phrase.end_s, 3),
        decided_s: rounded(phrase.decided_s, 3),
        confidence: rounded(phrase.confidence, 3),
        path: match phrase.path {
            command_ear::Path::Main => "main",
            command_ear::Path::Fast => "fast",
        },
    });
    Detail {
        kind: "recording",
        path: recording.path.display().to_string(),
        group: &recording.group,
        said: &recording.label,
        outcome: outcome.name(),
        word_end_s: rounded(word_end_s, 3),
        heard: heard.collect(),
    }
}
