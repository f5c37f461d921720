//! People of the Speech Commands test part who say a command at least four times.

use super::evaluate::Speaker;
use super::sound;
use session::Command;
use std::collections::BTreeMap;
use std::path::Path;

const COMMANDS: [(&str, Command); 3] = [("stop", Command::Stop), ("yes", Command::Yes), ("no", Command::No)];
/// Clips of strangers that each speaker is tested beside.
const STRANGERS: usize = 12;

pub fn speakers() -> Vec<Speaker> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data");
    let Ok(index) = std::fs::read_to_string(data.join("index.tsv")) else {
        println!("skipped: no recordings in {}", data.display());
        return Vec::new();
    };
    let mut by_speaker: BTreeMap<String, BTreeMap<String, Vec<String>>> = BTreeMap::new();
    for line in index.lines().skip(1) {
        let [file, set, label, speaker, ..] = line.split('\t').collect::<Vec<_>>()[..] else { continue };
        if set == "speech_commands_test_v002" && label != "(noise)" && data.join(file).is_file() {
            by_speaker.entry(speaker.into()).or_default().entry(label.into()).or_default().push(file.into());
        }
    }
    let read = |file: &String| sound::read(&data.join(file)).ok();
    let is_command = |label: &str| COMMANDS.iter().any(|c| c.0 == label);
    let is_other = |label: &str| !is_command(label);
    let mut speakers = Vec::new();
    for (number, (name, clips)) in by_speaker.iter().enumerate() {
        let words: Vec<(Command, Vec<Vec<f32>>)> = COMMANDS
            .iter()
            .filter_map(|(label, command)| {
                clips.get(*label).filter(|c| c.len() >= 4).map(|c| (*command, c.iter().filter_map(read).collect()))
            })
            .collect();
        if words.is_empty() {
            continue;
        }
        let of_strangers = |wanted: &dyn Fn(&str) -> bool, many: usize| -> Vec<(String, String)> {
            let all = by_speaker.iter().filter(|(other, _)| *other != name).flat_map(|(_, c)| c.iter());
            let all =
                all.filter(|(label, _)| wanted(label)).flat_map(|(label, files)| files.iter().map(move |f| (label.clone(), f.clone())));
            let all: Vec<(String, String)> = all.collect();
            let step = (all.len() / many.max(1)).max(1);
            all.into_iter().skip(number % step).step_by(step).take(many).collect()
        };
        let strangers = of_strangers(&is_other, STRANGERS).iter().filter_map(|(_, f)| read(f)).collect();
        let guests =
            of_strangers(&is_command, 4).iter().filter_map(|(l, f)| Some((COMMANDS.iter().find(|c| c.0 == l)?.1, read(f)?))).collect();
        let filler = |label: &str, files: &Vec<String>| is_other(label) && files.len() >= 4;
        let fillers = clips.iter().filter(|(l, f)| filler(l, f)).map(|(_, f)| f.iter().filter_map(read).collect()).collect();
        let others = clips.iter().filter(|(l, f)| is_other(l) && !filler(l, f)).flat_map(|(_, files)| files).filter_map(read).collect();
        speakers.push(Speaker { name: name.clone(), words, fillers, others, strangers, guests });
    }
    speakers
}
