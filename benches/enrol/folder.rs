//! Speakers in a folder: `SPEAKER/COMMAND/N.wav`, `SPEAKER/other/N.wav`, `SPEAKER/stranger/N.wav`, `SPEAKER/guest/COMMAND/N.wav`.

use super::evaluate::Speaker;
use super::sound;
use session::Command;
use std::path::{Path, PathBuf};

fn sorted(folder: &Path) -> Vec<PathBuf> {
    let mut all: Vec<PathBuf> = std::fs::read_dir(folder).map(|d| d.filter_map(|e| Some(e.ok()?.path())).collect()).unwrap_or_default();
    all.sort();
    all
}

fn sounds(folder: &Path) -> Vec<Vec<f32>> {
    sorted(folder).iter().filter_map(|file| sound::read(file).ok()).collect()
}

fn commands(folder: &Path) -> Vec<(Command, Vec<Vec<f32>>)> {
    let found = Command::ALL.into_iter().map(|command| (command, sounds(&folder.join(command.name()))));
    found.filter(|(_, clips)| !clips.is_empty()).collect()
}

pub fn speakers(folder: &Path) -> Vec<Speaker> {
    let speaker = |path: PathBuf| Speaker {
        name: path.file_name().unwrap_or_default().to_string_lossy().into_owned(),
        words: commands(&path).into_iter().filter(|(_, clips)| clips.len() > 3).collect(),
        fillers: Vec::new(),
        others: sounds(&path.join("other")),
        strangers: sounds(&path.join("stranger")),
        guests: commands(&path.join("guest")).into_iter().flat_map(|(c, clips)| clips.into_iter().map(move |clip| (c, clip))).collect(),
    };
    let speakers: Vec<Speaker> = sorted(folder).into_iter().map(speaker).filter(|s| !s.words.is_empty()).collect();
    if speakers.is_empty() {
        println!("skipped: no speakers in {}", folder.display());
    }
    speakers
}
