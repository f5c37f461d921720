//! The file of one run: a line for each figure (id, value and sample, parted by tabs), and lines that begin with "#" for what the
//! run was taken on (`# commit` and `# cores`, each with its value after a tab).

use std::collections::BTreeMap;
use std::fs::OpenOptions;
use std::io::Write;
use std::path::Path;

/// A value that a bench has put down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Value {
    /// In the unit that `benches/figures.toml` names.
    pub value: f64,
    /// How many recordings, words, runs … it is taken from.
    pub sample: Option<u64>,
}

impl Value {
    /// Whether nothing was there to be measured: no number, or one of no recordings at all.
    pub fn is_of_nothing(&self) -> bool {
        self.value.is_nan() || self.sample == Some(0)
    }
}

/// A run.
#[derive(Debug, Clone, Default)]
pub struct Run {
    /// The commit that was built; with "+" behind it where files were changed.
    pub commit: Option<String>,
    /// Cores of the machine.
    pub cores: Option<u32>,
    /// By id. Of a figure that was put down twice, the last.
    pub values: BTreeMap<String, Value>,
}

/// A line that is no figure.
#[derive(Debug, thiserror::Error)]
#[error("line {line} is no figure: {text:?}; a figure is an id, a number and perhaps a sample, parted by tabs")]
pub struct BadLine {
    line: usize,
    text: String,
}

/// Adds a figure to a run's file, which is made where it is not there.
///
/// # Errors
/// The file cannot be written.
pub fn add(path: &Path, id: &str, value: f64, sample: Option<u64>) -> std::io::Result<()> {
    let sample = sample.map_or_else(String::new, |sample| format!("\t{sample}"));
    // In one write, so that two benches at a time do not tear each other's lines.
    OpenOptions::new().create(true).append(true).open(path)?.write_all(format!("{id}\t{value}{sample}\n").as_bytes())
}

impl Run {
    /// Reads a run's file.
    ///
    /// # Errors
    /// A line is no figure.
    pub fn read(text: &str) -> Result<Self, BadLine> {
        let mut run = Self::default();
        for (n, line) in text.lines().enumerate() {
            let fields: Vec<&str> = line.split('\t').collect();
            let bad = || BadLine { line: n + 1, text: line.to_owned() };
            match fields[..] {
                [""] => {}
                ["# commit", commit] => run.commit = Some(commit.to_owned()),
                ["# cores", cores] => run.cores = Some(cores.parse().map_err(|_| bad())?),
                [id, value, ref sample @ ..] if sample.len() < 2 && !id.starts_with('#') => {
                    let value = value.parse().map_err(|_| bad())?;
                    let sample = sample.first().map(|sample| sample.parse()).transpose().map_err(|_| bad())?;
                    run.values.insert(id.to_owned(), Value { value, sample });
                }
                _ => return Err(bad()),
            }
        }
        Ok(run)
    }
}
