//! The sound files with known truth, and the recordings they were made from.

use audio::decode::decode;
use std::error::Error;
use std::path::{Path, PathBuf};

pub struct Set {
    /// Where `reference/run.sh` wrote.
    pub folder: PathBuf,
    /// The open recordings.
    pub data: PathBuf,
    /// "odd": thresholds were tuned on it. "even": they were not.
    pub group: &'static str,
    /// Says each file that went wrong.
    pub verbose: bool,
}

impl Set {
    pub fn find(group: &'static str, verbose: bool) -> Result<Self, String> {
        let folder = match (std::env::var_os("TIDECOUNT_VOICE_SET"), std::env::var_os("HOME")) {
            (Some(folder), _) => PathBuf::from(folder),
            (None, Some(home)) => Path::new(&home).join(".cache/tidecount/voice-set"),
            (None, None) => return Err("name the folder of the sound files in TIDECOUNT_VOICE_SET".to_owned()),
        };
        if !folder.join("f0/truth.tsv").exists() {
            return Err(format!("no sound files in {}; benches/voice/reference/run.sh makes them", folder.display()));
        }
        let data =
            std::env::var_os("TIDECOUNT_DATA").map_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data"), PathBuf::from);
        Ok(Self { folder, data, group, verbose })
    }

    /// The rows of a table after its heading.
    pub fn rows(&self, table: &str) -> Result<Vec<Vec<String>>, Box<dyn Error>> {
        let text = std::fs::read_to_string(self.folder.join(table)).map_err(|e| format!("{table}: {e}"))?;
        Ok(text.lines().filter(|l| !l.starts_with("file\t")).map(|l| l.split('\t').map(str::to_owned).collect()).collect())
    }

    pub fn sound(&self, name: &str) -> Result<(Vec<f32>, u32), Box<dyn Error>> {
        let sound = decode(&self.folder.join(name))?;
        Ok((sound.samples, sound.rate_hz))
    }
}
