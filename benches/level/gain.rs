//! Simulated automatic gains, and the same sessions without one. No limit was tuned on these sessions.

use audio::decode::decode;
use figures::share;
use hear::VoiceEar;
use std::collections::BTreeMap;
use std::error::Error;
use std::path::Path;

/// `folder`: what `benches/level/reference/sessions.py` made.
pub fn run(folder: &Path) -> Result<(), Box<dyn Error>> {
    let Ok(table) = std::fs::read_to_string(folder.join("list.tsv")) else {
        println!("skipped: no sessions in {}; benches/level/reference/sessions.py makes them", folder.display());
        return Ok(());
    };
    let mut found: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for line in table.lines() {
        let fields: Vec<&str> = line.split('\t').collect();
        let [file, gain, _] = fields[..] else { return Err("the list has a bad line".into()) };
        let sound = decode(&folder.join(file))?;
        let mut ear = VoiceEar::new(sound.rate_hz);
        ear.push(&sound.samples, false, &mut |_| {});
        let slot = found.entry(gain.to_owned()).or_default();
        slot.0 += usize::from(ear.auto_gain_found());
        slot.1 += 1;
    }
    for (gain, (hits, all)) in found {
        match gain.as_str() {
            "exp-0.5" | "speech-6" => println!("automatic gain {gain} found (hardly to be heard in pauses): {hits} of {all} sessions"),
            _ => share(&format!("level.gain.{gain}"), hits, all),
        }
    }
    Ok(())
}
