//! Memory and speed of hearing two hours of sound against ten minutes: memory must not grow with time.

use super::process::{self, Cost};
use super::{ROOT, client};
use figures::figure;
use std::error::Error;
use std::path::{Path, PathBuf};

/// Lengths, s.
const SHORT_S: u32 = 600;
const LONG_S: u32 = 7200;

/// What both ears find in the recorded client of the ten-minute routine, over and over, for ten minutes and for two hours.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let recording = client::record(&Path::new(ROOT).join("demo/evening.toml"), folder.path())?;
    let short = hear(folder.path(), &recording, SHORT_S)?;
    let long = hear(folder.path(), &recording, LONG_S)?;
    let both_mb = |cost: &Cost| cost.program_mb + cost.recogniser_mb;
    figure("lasting.short", both_mb(&short));
    figure("lasting.long", both_mb(&long));
    figure("lasting.growth", both_mb(&long) - both_mb(&short));
    figure("lasting.speed", f64::from(LONG_S) / long.cpu_s);
    Ok(())
}

fn hear(folder: &Path, recording: &Path, seconds: u32) -> Result<Cost, Box<dyn Error>> {
    let sound = repeated(recording, folder, seconds)?;
    let mut command = process::program(true);
    command.args(["hear", "--json", "--commands", "yes,no,stop,ready,again,pause,skip,how long,help,finish"]).arg(&sound);
    process::run(&mut command)
}

/// The recording over and over, for so many seconds.
fn repeated(recording: &Path, folder: &Path, seconds: u32) -> Result<PathBuf, Box<dyn Error>> {
    let path = folder.join(format!("sound-{seconds}.wav"));
    let mut reader = hound::WavReader::open(recording)?;
    let spec = reader.spec();
    let samples = reader.samples::<i16>().collect::<Result<Vec<_>, _>>()?;
    let mut writer = hound::WavWriter::create(&path, spec)?;
    let frames = seconds as usize * spec.sample_rate as usize * usize::from(spec.channels);
    for sample in samples.iter().cycle().take(frames) {
        writer.write_sample(*sample)?;
    }
    writer.finalize()?;
    Ok(path)
}
