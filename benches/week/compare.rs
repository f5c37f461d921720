//! The journal of an evening against the truth: which words were heard, what was done that nobody asked for.

use super::lead::{Led, Said};
use serde_json::Value;
use session::Command;
use speak::Words;
use std::error::Error;

/// A word counts as heard where the tool acted on it within so long of its end, s.
const WITHIN_S: f64 = 3.0;
/// A command is told about so long after its word, shortest and longest, s: where to look for the cause of a false one.
const DELAY_S: (f64, f64) = (0.2, 2.0);

/// A hold told longer or shorter by this, or a phrase, was measured wrongly, s. (A phrase is measured from voice to voice.)
const HOLD_OFF_S: f64 = 0.3;
const PHRASE_OFF_S: f64 = 1.0;

/// Why something was done that nobody asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The client did something else: another word, a hold, a breath.
    OtherDoing,
    /// The same word once more, out of habit, when the tool had gone on.
    SaidAgain,
    Household,
    EnrolledVoice,
    Nothing,
}

impl Cause {
    pub fn name(self) -> &'static str {
        match self {
            Self::OtherDoing => "other doing",
            Self::SaidAgain => "said again",
            Self::Household => "household",
            Self::EnrolledVoice => "own voice",
            Self::Nothing => "nothing",
        }
    }
}

/// Something worth a look: when and what.
pub struct Finding {
    pub at_s: f64,
    pub what: String,
}

/// One evening in figures.
#[derive(Default)]
pub struct Evening {
    pub ended: String,
    pub steps_done: u64,
    pub steps: u64,
    pub duration_s: f64,
    /// Commands and answers, each once however often it was said.
    pub words: usize,
    pub missed: Vec<Finding>,
    pub missed_over_tool: usize,
    /// Holds and glides.
    pub holds: usize,
    pub holds_missed: Vec<Finding>,
    /// Holds and phrases whose length was measured wrongly.
    pub wrong: Vec<Finding>,
    pub false_actions: Vec<(Cause, Finding)>,
    pub repeated: usize,
}

/// One thing said to the tool, perhaps twice.
struct Word<'a> {
    sayings: Vec<(&'a Value, bool)>,
    meaning: Meaning,
}

#[derive(PartialEq)]
enum Meaning {
    Command(Command),
    Answer(String),
}

impl Evening {
    pub fn finished(&self) -> bool {
        self.ended == "completed"
    }

    pub fn of(led: &Led) -> Result<Self, Box<dyn Error>> {
        let end = led.journal.iter().rev().find(|entry| entry["kind"] == "session_ended").ok_or("the journal has no end")?;
        let mut evening = Self {
            ended: end["reason"].as_str().unwrap_or_default().to_owned(),
            steps_done: end["steps_done"].as_u64().unwrap_or_default(),
            steps: end["steps_prescribed"].as_u64().unwrap_or_default(),
            duration_s: number(end, "duration_s"),
            repeated: led.said.iter().filter(|said| is_reminder(&said.key)).count(),
            ..Self::default()
        };
        evening.words(led, &Words::english()?);
        evening.holds(led);
        evening.confirmations(led);
        evening.false_actions.sort_by(|a, b| a.1.at_s.total_cmp(&b.1.at_s));
        Ok(evening)
    }

    fn words(&mut self, led: &Led, wordings: &Words) {
        let mut words = said_to_the_tool(&led.truth, wordings);
        for entry in led.journal.iter() {
            let (acted, what) = match entry["kind"].as_str() {
                Some("command_heard") => {
                    let Some(command) = Command::ALL.into_iter().find(|command| entry["command"] == command.name()) else { continue };
                    (Meaning::Command(command), format!("\"{}\" ({:.2})", command.name(), number(entry, "confidence")))
                }
                Some("question_answered") => {
                    let Some(answer) = entry["answer"].as_str() else { continue };
                    (Meaning::Answer(answer.to_owned()), format!("answer \"{answer}\""))
                }
                _ => continue,
            };
            let at_s = number(entry, "at_s");
            let mut sayings = words.iter_mut().filter(|word| same(&word.meaning, &acted)).flat_map(|word| &mut word.sayings);
            let fits = |saying: &&mut (&Value, bool)| {
                !saying.1 && (number(saying.0, "onset_s") - 0.2..number(saying.0, "offset_s") + WITHIN_S).contains(&at_s)
            };
            match sayings.find(fits) {
                Some(saying) => {
                    saying.1 = true;
                    if saying.0["again"] == true {
                        self.false_actions.push((Cause::SaidAgain, Finding { at_s, what: place(entry, &what) }));
                    }
                }
                None => {
                    let cause = cause(led, at_s - DELAY_S.1, at_s - DELAY_S.0);
                    let heard_in = describe(led, at_s - DELAY_S.1, at_s - DELAY_S.0);
                    self.false_actions.push((cause, Finding { at_s, what: format!("{} {heard_in}", place(entry, &what)) }));
                }
            }
        }
        self.words = words.len();
        // The second saying of a word whose first was missed is no false action, it is what the habit is good for.
        let mut rescued: Vec<f64> = Vec::new();
        for word in &words {
            let (Some(first), heard) = (word.sayings.first(), word.sayings.iter().any(|saying| saying.1)) else { continue };
            if heard && !first.1 {
                rescued.extend(word.sayings.iter().filter(|saying| saying.1).map(|saying| number(saying.0, "offset_s")).take(1));
            }
            if heard {
                continue;
            }
            let over = led.said.iter().any(|said| overlaps(said, number(first.0, "onset_s"), number(first.0, "offset_s")));
            self.missed_over_tool += usize::from(over);
            let what = format!(
                "{} on {}{}",
                first.0["words"],
                first.0["on"].as_str().unwrap_or_default(),
                if over { ", over the tool's voice" } else { "" }
            );
            self.missed.push(Finding { at_s: number(first.0, "onset_s"), what });
        }
        self.false_actions.retain(|(cause, finding)| {
            *cause != Cause::SaidAgain || !rescued.iter().any(|end_s| (-1.0..WITHIN_S).contains(&(finding.at_s - end_s)))
        });
    }

    /// What was measured against what was made: holds, phrases, syllables.
    fn holds(&mut self, led: &Led) {
        let made =
            |kinds: &'static [&'static str]| led.truth.iter().filter(move |did| kinds.contains(&did["kind"].as_str().unwrap_or_default()));
        for (kind, kinds, what) in [
            ("hold_measured", &["held", "glided"][..], "a hold"),
            ("phrase_read", &["said", "called"][..], "a phrase"),
            ("syllables_counted", &["syllables"][..], "syllables"),
        ] {
            for entry in led.journal.iter().filter(|entry| entry["kind"] == kind) {
                let (from_s, to_s) = span(entry);
                let whole = made(kinds).filter(|did| number(did, "onset_s") < to_s && number(did, "offset_s") > from_s);
                let (begun_s, over_s) = whole.fold((f64::MAX, f64::MIN), |(first_s, last_s), did| {
                    (number(did, "onset_s").min(first_s), number(did, "offset_s").max(last_s))
                });
                let off_s = number(entry, "duration_s") - (over_s - begun_s);
                let within_s = if kind == "hold_measured" { HOLD_OFF_S } else { PHRASE_OFF_S };
                if kind != "syllables_counted" && begun_s < over_s && off_s.abs() > within_s && entry["complete"] != false {
                    let (told_s, true_s) = (number(entry, "duration_s"), over_s - begun_s);
                    let what = format!("{} told as {told_s:.1} s, was {true_s:.1} s {}", place(entry, what), describe(led, from_s, to_s));
                    self.wrong.push(Finding { at_s: from_s, what });
                }
                if !made(kinds).any(|did| number(did, "onset_s") < to_s && number(did, "offset_s") > from_s) {
                    let finding = Finding { at_s: from_s, what: format!("{} {}", place(entry, what), describe(led, from_s, to_s)) };
                    self.false_actions.push((cause(led, from_s, to_s), finding));
                }
            }
        }
        for did in made(&["held", "glided"]) {
            self.holds += 1;
            let (from_s, to_s) = (number(did, "onset_s"), number(did, "offset_s"));
            let measured = led.journal.iter().filter(|entry| entry["kind"] == "hold_measured").map(span);
            if !measured.into_iter().any(|(onset_s, offset_s)| onset_s < to_s && offset_s > from_s) {
                let what = format!("{:.1} s on {}", to_s - from_s, did["on"].as_str().unwrap_or_default());
                self.holds_missed.push(Finding { at_s: from_s, what });
            }
        }
    }

    /// "Was that skip?" to somebody who said nothing of the kind.
    fn confirmations(&mut self, led: &Led) {
        for said in led.said.iter().filter(|said| said.key == "ask-confirm") {
            let (from_s, to_s) = (said.began_s - DELAY_S.1, said.began_s - DELAY_S.0);
            let what = format!("\"was that…?\" {}", describe(led, from_s, to_s));
            self.false_actions.push((cause(led, from_s, to_s), Finding { at_s: said.began_s, what }));
        }
    }
}

fn said_to_the_tool<'a>(truth: &'a [Value], wordings: &Words) -> Vec<Word<'a>> {
    let mut words: Vec<Word<'a>> = Vec::new();
    for did in truth.iter().filter(|did| matches!(did["kind"].as_str(), Some("said" | "called"))) {
        let (said, on) = (did["words"].as_str().unwrap_or_default(), did["on"].as_str().unwrap_or_default());
        let command = Command::ALL.into_iter().find(|&command| wordings.wordings(command).iter().any(|wording| wording == said));
        let meaning = match command {
            Some(command) => Meaning::Command(command),
            None if on.starts_with("question-") => Meaning::Answer(said.to_owned()),
            // Read aloud, and nothing that is to be acted upon.
            None => continue,
        };
        match words.last_mut() {
            Some(word) if did["again"] == true && word.meaning == meaning => word.sayings.push((did, false)),
            _ => words.push(Word { sayings: vec![(did, false)], meaning }),
        }
    }
    words
}

/// "glasses" may be told as "the glasses".
fn same(said: &Meaning, acted: &Meaning) -> bool {
    match (said, acted) {
        (Meaning::Answer(said), Meaning::Answer(acted)) => acted.contains(said.as_str()) || said.contains(acted.as_str()),
        _ => said == acted,
    }
}

fn span(entry: &Value) -> (f64, f64) {
    match (entry["onset_s"].as_f64(), entry["offset_s"].as_f64()) {
        (Some(onset_s), Some(offset_s)) => (onset_s, offset_s),
        // The end pause has passed when it is written down.
        _ => (number(entry, "at_s") - number(entry, "duration_s") - 1.5, number(entry, "at_s") - 0.5),
    }
}

/// The loudest suspect: the client's own mouth, then the household, then the tool.
fn cause(led: &Led, from_s: f64, to_s: f64) -> Cause {
    let did = |household: bool| {
        led.truth.iter().any(|did| {
            (did["on"] == "household") == household
                && !matches!(did["kind"].as_str(), Some("nothing" | "waited" | "swallowed"))
                && number(did, "onset_s") < to_s
                && number(did, "offset_s") > from_s
        })
    };
    if did(false) {
        Cause::OtherDoing
    } else if led.said.iter().any(|said| overlaps(said, from_s, to_s)) && !did(true) {
        Cause::EnrolledVoice
    } else if did(true) {
        Cause::Household
    } else {
        Cause::Nothing
    }
}

/// What sounded then, for whoever looks for the reason.
fn describe(led: &Led, from_s: f64, to_s: f64) -> String {
    let sounded = led.truth.iter().filter(|did| {
        !matches!(did["kind"].as_str(), Some("nothing" | "waited" | "swallowed"))
            && number(did, "onset_s") < to_s
            && number(did, "offset_s") > from_s
    });
    let mut all: Vec<String> = sounded
        .map(|did| {
            format!(
                "{} {}",
                did["kind"].as_str().unwrap_or_default(),
                did["words"].as_str().map(|words| format!("\"{words}\"")).unwrap_or_default()
            )
        })
        .collect();
    all.extend(led.said.iter().filter(|said| overlaps(said, from_s, to_s)).map(|said| format!("tool: {}", said.key)));
    format!("[{}]", all.join("; "))
}

fn overlaps(said: &Said, from_s: f64, to_s: f64) -> bool {
    said.began_s < to_s && said.ended_s > from_s
}

fn place(entry: &Value, what: &str) -> String {
    match entry["step"].as_u64() {
        Some(step) => format!("{what} in step {step}, repetition {}", entry["repetition"]),
        None => format!("{what} before the first step"),
    }
}

fn is_reminder(key: &str) -> bool {
    key.ends_with("-again") || key.ends_with("-once-more") || key.starts_with("wait-for-") || key == "halted-reminder"
}

fn number(entry: &Value, field: &str) -> f64 {
    entry[field].as_f64().unwrap_or_default()
}
