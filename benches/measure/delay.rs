//! Delay from the end of a spoken command to the instant at which the engine acts on it, both on the sample clock.
//!
//! Rehearsed clients go through a routine of many commands (`tidecount demo`, closed loop: room, echo of the tool's own
//! voice, the real ears). Their own log tells when each word ended, the journal when it was acted upon. What a live
//! device adds, its capture delay, is not in it; the loudspeaker's delay until silence is heard neither.

use super::{ROOT, process};
use figures::{Spread, figure, share};
use serde_json::Value;
use session::Command;
use speak::Words;
use std::error::Error;
use std::fs;
use std::path::Path;

/// Voices of flite with their speed.
const CLIENTS: [(&str, f64); 4] = [("slt", 0.9), ("rms", 1.0), ("awb", 0.9), ("kal16", 1.0)];
/// A command heard this long after the word's end is another matter (asked back, said again), s.
const LATEST_S: f64 = 4.0;

/// Words said and what became of them.
#[derive(Default)]
struct Heard {
    said: usize,
    /// From the end of the word to the action, s.
    delays_s: Vec<f64>,
}

pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let script = fs::read_to_string(Path::new(ROOT).join("benches/measure/delay-client.toml"))?;
    let (mut plain, mut over) = (Heard::default(), Heard::default());
    for (n, (voice, speed)) in CLIENTS.into_iter().enumerate() {
        let client = folder.path().join("client.toml");
        let filled = script.replace("VOICE", voice).replace("SPEED", &format!("{speed:.1}")).replace("SEED", &n.to_string());
        fs::write(&client, filled)?;
        let out = folder.path().join(voice);
        let mut command = process::program(false);
        command.arg("demo").arg("--routine").arg(Path::new(ROOT).join("benches/measure/delay.toml"));
        command.arg("--client").arg(&client).arg("--out").arg(&out).args(["--voice", "espeak-ng"]);
        process::run(&mut command)?;
        compare(voice, &out, &mut plain, &mut over)?;
    }
    // In silence, and over the program's voice.
    if plain.said == 0 || over.said == 0 {
        return Err("the simulated clients said nothing, or nothing over the program's voice".into());
    }
    for (what, heard) in [("quiet", &plain), ("over", &over)] {
        let delays = Spread::new(heard.delays_s.clone());
        figure(&format!("delay.{what}.median"), delays.at(0.5));
        figure(&format!("delay.{what}.p90"), delays.at(0.9));
        share(&format!("delay.{what}.acted"), delays.count(), heard.said);
    }
    Ok(())
}

fn compare(voice: &str, out: &Path, plain: &mut Heard, over: &mut Heard) -> Result<(), Box<dyn Error>> {
    let (truth, journal) = (lines(&out.join("client.jsonl"))?, lines(&out.join("journal.jsonl"))?);
    println!("{voice}: {}", journal.last().map(ToString::to_string).unwrap_or_default());
    let wordings = Words::english()?;
    let mut acted: Vec<(f64, &str)> = journal
        .iter()
        .filter(|fact| fact["kind"] == "command_heard")
        .filter_map(|fact| Some((fact["at_s"].as_f64()?, fact["command"].as_str()?)))
        .collect();
    for did in &truth {
        let (Some(words), Some(from_s), Some(to_s)) = (did["words"].as_str(), did["onset_s"].as_f64(), did["offset_s"].as_f64()) else {
            continue;
        };
        let class = if did["kind"] == "called" { &mut *over } else { &mut *plain };
        class.said += 1;
        // What counts is the command: "i'm ready" may well be heard as "ready".
        let meant = Command::ALL.into_iter().find(|&command| wordings.wordings(command).iter().any(|wording| wording == words));
        match acted
            .iter()
            .position(|(at_s, command)| meant.is_some_and(|meant| meant.name() == *command) && *at_s > from_s && *at_s < to_s + LATEST_S)
        {
            Some(index) => {
                let delay_s = acted.remove(index).0 - to_s;
                println!("  {:>7.2} s  \"{words}\" acted upon {delay_s:+.2} s after its end", to_s);
                class.delays_s.push(delay_s);
            }
            None => println!("  {to_s:>7.2} s  \"{words}\" not acted upon ({})", did["on"].as_str().unwrap_or_default()),
        }
    }
    for (at_s, text) in acted {
        println!("  {at_s:>7.2} s  \"{text}\" acted upon, but not said just before");
    }
    Ok(())
}

fn lines(path: &Path) -> Result<Vec<Value>, Box<dyn Error>> {
    let text = fs::read_to_string(path).map_err(|why| format!("{}: {why}", path.display()))?;
    Ok(text.lines().map(serde_json::from_str).collect::<Result<_, _>>()?)
}
