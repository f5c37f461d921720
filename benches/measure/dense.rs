//! Speed of hearing where there is hardly a pause: people's held vowels and counting, one after the other.

use super::process;
use audio::decode::decode;
use audio::resample::resample_all;
use figures::figure;
use std::error::Error;
use std::path::{Path, PathBuf};

const RATE_HZ: u32 = 16_000;
const LENGTH_S: u32 = 600;

/// Hears the same ten minutes with the voice ear alone, then with ten phrases to listen for.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let Some(sound) = ten_minutes(folder.path())? else {
        println!("skipped: no recordings in ../shared/data/coswara");
        return Ok(());
    };
    for (id, phrases) in [("dense.voice", None), ("dense.phrases", Some("yes,no,stop,ready,again,pause,skip,how long,help,finish"))] {
        let mut command = process::program(true);
        command.args(["hear", "--json"]);
        if let Some(phrases) = phrases {
            command.args(["--commands", phrases]);
        }
        figure(id, f64::from(LENGTH_S) / process::run(command.arg(&sound))?.cpu_s);
    }
    Ok(())
}

/// A vowel and a counting in turn, by name, without a gap between two recordings. None where they are not there.
fn ten_minutes(folder: &Path) -> Result<Option<PathBuf>, Box<dyn Error>> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data/coswara");
    let Ok(entries) = std::fs::read_dir(data) else { return Ok(None) };
    let mut files: Vec<PathBuf> = entries.filter_map(|entry| Some(entry.ok()?.path())).collect();
    files.sort();
    let of = |start: &str| -> Vec<&PathBuf> {
        let begins = |path: &&PathBuf| path.file_name().and_then(|name| name.to_str()).is_some_and(|name| name.starts_with(start));
        files.iter().filter(begins).collect()
    };
    let path = folder.join("dense.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(&path, spec)?;
    let mut left = (LENGTH_S * RATE_HZ) as usize;
    for (vowel, counting) in of("vowel-").into_iter().zip(of("counting")) {
        for file in [vowel, counting] {
            let sound = decode(file)?;
            for sample in resample_all(&sound.samples, sound.rate_hz, RATE_HZ)?.into_iter().take(left) {
                writer.write_sample((sample * 32_767.0).clamp(-32_768.0, 32_767.0) as i16)?;
                left -= 1;
            }
        }
    }
    writer.finalize()?;
    Ok((left == 0).then_some(path))
}
