//! Recordings of people, words, vowels and noise.

use super::{ear, grammar, hear, one_choice, sound};
use command_ear::{ACT_CONFIDENCE, ASK_CONFIDENCE, CommandRecogniser, HeardPhrase};
use figures::figure_of;
use std::collections::BTreeMap;
use std::path::Path;

#[derive(Clone, Copy, PartialEq)]
pub enum Half {
    Odd,
    Even,
    All,
}

impl Half {
    pub fn named(name: &str) -> Self {
        match name {
            "odd" => Self::Odd,
            "all" => Self::All,
            _ => Self::Even,
        }
    }
}

/// A realistic state: after a repetition.
const STATE: [&str; 10] = ["yes", "no", "stop", "ready", "again", "pause", "skip", "how long", "help", "finish"];
const FAST: [&str; 3] = ["stop", "stop please", "please stop"];

#[derive(Default)]
struct Count {
    clips: usize,
    seconds: f64,
    hit: usize,
    hit_doubtful: usize,
    other: usize,
    other_doubtful: usize,
    delays: Vec<f64>,
}

struct Clip {
    file: String,
    set: String,
    label: String,
}

fn clips(data: &Path, half: Half) -> Option<Vec<Clip>> {
    let index = std::fs::read_to_string(data.join("index.tsv")).ok()?;
    let mut numbers = BTreeMap::<String, usize>::new();
    let mut clips = Vec::new();
    for line in index.lines().skip(1) {
        let [file, set, label, ..] = line.split('\t').collect::<Vec<_>>()[..] else { continue };
        if !data.join(file).is_file() {
            continue;
        }
        let number = numbers.entry(format!("{set} {label}")).or_default();
        *number += 1;
        if half == Half::All || (half == Half::Odd) == (*number % 2 == 1) {
            clips.push(Clip { file: file.into(), set: set.into(), label: label.to_lowercase() });
        }
    }
    Some(clips)
}

pub fn run(half: Half, path: &str, label: &str) {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data");
    let Some(mut clips) = clips(&data, half) else {
        println!("skipped: no recordings in {}", data.display());
        return;
    };
    clips.retain(|c| label.is_empty() || c.label == label);
    let mut ear = ear(&STATE, &FAST);
    println!("main path: {STATE:?}; fast path: {FAST:?}; act from {ACT_CONFIDENCE}, ask from {ASK_CONFIDENCE}");
    let begun = std::time::Instant::now();
    let mut total_s = 0.0;
    for (name, main) in [("main path", true), ("fast path", false)] {
        if path != "both" && path != if main { "main" } else { "fast" } {
            continue;
        }
        if main {
            ear.listen_for_fast(&grammar(&[])).expect("no words");
        } else {
            ear.listen_for_fast(&one_choice(&FAST)).expect("known words");
            ear.listen_for(&grammar(&[])).expect("no words");
        }
        let mut counts = BTreeMap::<String, Count>::new();
        let (mut wrong, mut missed) = (Vec::new(), Vec::new());
        for clip in &clips {
            let Ok(raw) = sound::read(&data.join(&clip.file)) else { continue };
            let end_s = 0.5 + sound::word_end_s(&raw);
            let padded = sound::between_pauses(&raw, 0.5, 1.5);
            let wanted = if main { STATE.contains(&clip.label.as_str()) } else { FAST.contains(&clip.label.as_str()) };
            let heard = hear(&mut ear, &padded, main);
            total_s += padded.len() as f64 / 16_000.0;
            let row = match clip.set.as_str() {
                "speech_commands_test_v002" if wanted => format!("people say {}", clip.label),
                "an4" if wanted => "an4: the words".to_owned(),
                "speech_commands_test_v002" if matches!(clip.label.as_str(), "go" | "on") => "other words: go, on".to_owned(),
                "speech_commands_test_v002" if clip.label == "(noise)" => "pieces of noise".to_owned(),
                "speech_commands_test_v002" => "other words".to_owned(),
                "coswara_subset" => format!("coswara {}", clip.label),
                _ if clip.file.contains("babble") => "babble".to_owned(),
                set => set.to_owned(),
            };
            let count = counts.entry(row).or_default();
            count.clips += 1;
            count.seconds += raw.len() as f64 / 16_000.0;
            if wanted && !heard.iter().any(|h| h.text == clip.label) {
                missed.push(clip.file.clone());
            }
            note(count, &heard, wanted.then_some(clip.label.as_str()), end_s);
            wrong.extend(heard.into_iter().filter(|h| !(wanted && h.text == clip.label)).map(|h| (clip.file.clone(), h)));
        }
        println!(
            "\n{name}\n{:<34} {:>5} {:>6}  {:>9} {:>7}  {:>9} {:>7}  delay median, 90 %, max / s",
            "", "clips", "min", "heard", "asked", "taken", "asked"
        );
        for (row, c) in &mut counts {
            c.delays.sort_by(f64::total_cmp);
            let at = |q: f64| c.delays.get((q * (c.delays.len() as f64 - 1.0)).round() as usize).copied().unwrap_or(f64::NAN);
            if let Some(word) = row.strip_prefix("people say ").filter(|word| {
                half == Half::Even && label.is_empty() && (if main { ["yes", "no", "stop"].contains(word) } else { *word == "stop" })
            }) {
                let id = format!("people.{}.{word}", if main { "main" } else { "fast" });
                figure_of(&format!("{id}.median"), at(0.5), c.delays.len());
                figure_of(&format!("{id}.p90"), at(0.9), c.delays.len());
            }
            let delays = if c.delays.is_empty() { String::new() } else { format!("{:.2} {:.2} {:.2}", at(0.5), at(0.9), at(1.0)) };
            println!(
                "{row:<34} {:>5} {:>6.1}  {:>9} {:>7}  {:>9} {:>7}  {delays}",
                c.clips,
                c.seconds / 60.0,
                c.hit,
                c.hit_doubtful,
                c.other,
                c.other_doubtful
            );
        }
        println!("  missed: {}", missed.join(" "));
        for (file, h) in wrong {
            println!("  not said: {:?} {:.2} at {:.2}-{:.2} in {file}", h.text, h.confidence, h.start_s, h.end_s);
        }
    }
    println!("\n{:.0} s of sound in {:.0} s", total_s, begun.elapsed().as_secs_f64());
}

fn note(count: &mut Count, heard: &[HeardPhrase], wanted: Option<&str>, end_s: f64) {
    let sure = |h: &&HeardPhrase| h.confidence >= ACT_CONFIDENCE;
    let right: Vec<&HeardPhrase> = heard.iter().filter(|h| wanted == Some(h.text.as_str())).collect();
    if let Some(hit) = right.iter().copied().find(sure) {
        count.hit += 1;
        count.delays.push(hit.decided_s - end_s);
    } else if !right.is_empty() {
        count.hit_doubtful += 1;
    }
    let others: Vec<&HeardPhrase> = heard.iter().filter(|h| wanted != Some(h.text.as_str())).collect();
    let sure_others = others.iter().copied().filter(sure).count();
    count.other += sure_others;
    count.other_doubtful += others.len() - sure_others;
}
