//! One evening, closed loop.

use command_ear::Lexicon;
use files::load;
use live::follow::SharedScreen;
use live::levels::Levels;
use live::observe::Observer;
use live::practice::Practice;
use live::rehearsal::{self, ClientsEar, ROOM_HZ};
use record::Source;
use rehearse::Script;
use screen::NoScreen;
use serde::Deserialize;
use serde_json::Value;
use session::Line;
use speak::Words;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

/// Nobody's evening takes so long; an endless one is broken off, s.
const LONGEST_S: f64 = 1_200.0;

/// Which routine on which evening.
#[derive(Deserialize)]
pub struct Week {
    pub client: String,
    #[serde(rename = "evening")]
    pub evenings: Vec<WeekEvening>,
}

#[derive(Deserialize)]
pub struct WeekEvening {
    pub day: String,
    pub routine: PathBuf,
    #[serde(skip)]
    pub client: String,
}

impl Week {
    /// Its first evenings, with whole paths.
    pub fn read(path: &Path, evenings: usize) -> Result<Self, Box<dyn Error>> {
        let text = fs::read_to_string(path).map_err(|why| format!("{}: {why}", path.display()))?;
        let mut week: Self = toml::from_str(&text).map_err(|why| format!("{}: {why}", path.display()))?;
        week.evenings.truncate(evenings);
        for evening in &mut week.evenings {
            evening.routine = path.with_file_name(&evening.routine);
            evening.client.clone_from(&week.client);
        }
        Ok(week)
    }
}

/// A line that the tool said.
pub struct Said {
    pub began_s: f64,
    /// The same as the begin for one that was hushed.
    pub ended_s: f64,
    pub key: String,
}

/// What became of an evening.
pub struct Led {
    pub journal: Vec<Value>,
    /// What client and household really did.
    pub truth: Vec<Value>,
    pub said: Vec<Said>,
}

/// Leads the `n`-th evening of this client; `folder` holds its record and keeps what happened.
pub fn lead(mut script: Script, n: usize, evening: &WeekEvening, folder: &Path) -> Result<(), Box<dyn Error>> {
    fs::create_dir_all(folder)?;
    // Another evening, other chances.
    script.seed = script.seed * 100 + n as u64;
    let words = Words::english()?;
    let model = load::model_folder(None)?;
    let lexicon = Lexicon::open(&model)?;
    let (prescription, routine_text) = load::routine(&evening.routine, &words, &lexicon)?;
    let (mut io, rehearsed) = rehearsal::devices(script, ROOM_HZ)?;
    io.ends_after(LONGEST_S);
    let file = |what| kept(n, evening, folder, what);
    io.write_wav(&file("wav"))?;
    // A journal is added to, never replaced.
    let _ = fs::remove_file(file("jsonl"));
    let practice = Practice {
        mic_gates: false,
        prescription,
        routine_text,
        words,
        model: model.into(),
        lexicon,
        hears_itself: true,
        voice: Some("espeak-ng".into()),
        // As if live, so that the record of one evening counts on the next.
        source: Source::Live,
        client: evening.client.clone(),
        data: folder.join("record"),
        journal: Some(file("jsonl")),
        emergency_number: None,
        levels: Levels::default(),
        by_page: false,
        protocol: None,
        recogniser: Some(env!("CARGO_BIN_EXE_tidecount").into()),
    };
    let said = SaidLog::default();
    let ears: Vec<Box<dyn Observer>> = vec![Box::new(ClientsEar(rehearsed.clone())), Box::new(said.clone())];
    // Dropping the outcome is the end: the journal has been written by then.
    drop(practice.lead(Box::new(io), SharedScreen::new(NoScreen), ears)?);
    let lines: Vec<String> = said.0.lock().map_err(|_| "the listener broke off")?.iter().map(Said::line).collect();
    fs::write(file("said.tsv"), lines.join("\n") + "\n")?;
    // Last, for it shows that the evening was led to its end.
    rehearsal::write_truth(&file("truth.jsonl"), &rehearsed)?;
    Ok(())
}

/// True where an earlier run has led this evening.
pub fn was_led(n: usize, evening: &WeekEvening, folder: &Path) -> bool {
    kept(n, evening, folder, "truth.jsonl").exists()
}

/// What was kept of an evening.
pub fn read(n: usize, evening: &WeekEvening, folder: &Path) -> Result<Led, Box<dyn Error>> {
    let text = |what| {
        let path = kept(n, evening, folder, what);
        fs::read_to_string(&path).map_err(|why| format!("{}: {why}", path.display()))
    };
    let json = |what| -> Result<Vec<Value>, Box<dyn Error>> {
        Ok(text(what)?.lines().filter(|line| !line.is_empty()).map(serde_json::from_str).collect::<Result<_, _>>()?)
    };
    Ok(Led { journal: json("jsonl")?, truth: json("truth.jsonl")?, said: text("said.tsv")?.lines().filter_map(Said::of).collect() })
}

fn kept(n: usize, evening: &WeekEvening, folder: &Path, what: &str) -> PathBuf {
    folder.join(format!("{}-{}.{what}", n + 1, evening.day))
}

impl Said {
    fn line(&self) -> String {
        format!("{:.2}\t{:.2}\t{}", self.began_s, self.ended_s, self.key)
    }

    fn of(line: &str) -> Option<Self> {
        let mut parts = line.split('\t');
        Some(Self { began_s: parts.next()?.parse().ok()?, ended_s: parts.next()?.parse().ok()?, key: parts.next()?.to_owned() })
    }
}

/// Writes down when the tool spoke.
#[derive(Clone, Default)]
struct SaidLog(Arc<Mutex<Vec<Said>>>);

impl Observer for SaidLog {
    fn line_began(&mut self, at_s: f64, line: &Line, _: &str) {
        if let Ok(mut said) = self.0.lock() {
            said.push(Said { began_s: at_s, ended_s: at_s, key: line.key.clone() });
        }
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, _: &str) {
        if let Ok(mut said) = self.0.lock()
            && let Some(last) = said.iter_mut().rev().find(|said| said.key == line.key)
        {
            last.ended_s = at_s;
        }
    }
}
