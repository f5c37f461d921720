//! The list of recordings of an evaluation and what is said in each.

use crate::hear::evaluate::args::Half;
use files::error::Failure;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// One recording and what is said in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Labelled {
    /// Where it lies; relative paths were taken from the list's folder.
    pub path: PathBuf,
    /// The phrase said, in spoken form; empty where nothing in it is meant for the tool.
    pub label: String,
    /// The row of the report it counts in; empty where the list has no groups.
    pub group: String,
    /// Which of the two halves it is in.
    pub half: Half,
}

/// Reads the list: tab-separated lines `path`, `label`, `group`; the last may be left out, lines that are empty or begin with # are passed over, and
/// the first line may be the heading `path label…`. Paths are relative to the list's folder.
///
/// # Errors
/// The file cannot be read, a line has the wrong number of columns or no path, or no recording is named. The text names file, line and remedy.
pub fn read(list: &Path) -> Result<Vec<Labelled>, Failure> {
    let text = std::fs::read_to_string(list)
        .map_err(|why| Failure::file(list, format!("cannot be read ({why}); name a list of recordings with --labels")))?;
    let folder = list.parent().unwrap_or(Path::new(""));
    parse(&text, folder).map_err(|fault| Failure::file(list, fault))
}

fn parse(text: &str, folder: &Path) -> Result<Vec<Labelled>, String> {
    let mut numbers = BTreeMap::<(String, String), usize>::new();
    let mut all = Vec::new();
    for (number, line) in text.lines().enumerate() {
        let line = line.strip_suffix('\r').unwrap_or(line);
        if line.trim().is_empty() || line.starts_with('#') || (number == 0 && line.starts_with("path\t")) {
            continue;
        }
        let columns: Vec<&str> = line.split('\t').collect();
        let (path, label, group) = match columns[..] {
            [path, label] => (path, label, ""),
            [path, label, group] => (path, label, group),
            _ => {
                let count = columns.len();
                return Err(format!("line {} has {count} columns; write path, label and, if wanted, group, parted by tabs", number + 1));
            }
        };
        if path.trim().is_empty() {
            return Err(format!("line {} names no recording; write its path first", number + 1));
        }
        let (label, group) = (files::spoken::spoken_form(label), group.trim().to_owned());
        let counted = numbers.entry((group.clone(), label.clone())).or_default();
        *counted += 1;
        let half = if *counted % 2 == 1 { Half::Odd } else { Half::Even };
        all.push(Labelled { path: folder.join(path), label, group, half });
    }
    if all.is_empty() {
        return Err("names no recording; write one on a line: path, tab, what is said in it".to_owned());
    }
    Ok(all)
}

/// The recordings of one half, and of these every `every`-th of each group and label.
pub fn chosen(all: Vec<Labelled>, half: Half, every: usize) -> Vec<Labelled> {
    let mut numbers = BTreeMap::<(String, String), usize>::new();
    let mut keep = |one: &Labelled| {
        let counted = numbers.entry((one.group.clone(), one.label.clone())).or_default();
        *counted += 1;
        (*counted - 1).is_multiple_of(every.max(1))
    };
    all.into_iter().filter(|one| half == Half::All || one.half == half).filter(|one| keep(one)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_become_recordings_in_two_halves() {
        let text =
            "path\tlabel\tgroup\na/1.flac\tStop\tpeople\n# a word\n\na/2.flac\tstop\tpeople\r\n/abs/3.wav\t\ttalk\nb.wav\tgo  back\n";
        let all = parse(text, Path::new("lists")).unwrap();
        let seen: Vec<_> = all.iter().map(|l| (l.path.to_str().unwrap(), l.label.as_str(), l.group.as_str(), l.half)).collect();
        assert_eq!(
            seen,
            [
                ("lists/a/1.flac", "stop", "people", Half::Odd),
                ("lists/a/2.flac", "stop", "people", Half::Even),
                ("/abs/3.wav", "", "talk", Half::Odd),
                ("lists/b.wav", "go back", "", Half::Odd),
            ]
        );
        assert_eq!(chosen(all.clone(), Half::Even, 1).len(), 1);
        assert_eq!(chosen(all.clone(), Half::All, 1).len(), 4);
        assert_eq!(chosen(all, Half::All, 2).len(), 3);
    }

    #[test]
    fn faults_name_the_line() {
        for (text, complaint) in [
            ("a.wav\tstop\nonly-a-path\n", "line 2 has 1 columns"),
            ("a\tb\tc\td\n", "line 1 has 4 columns"),
            ("\tstop\n", "line 1 names no recording"),
            ("path\tlabel\n", "names no recording"),
        ] {
            let fault = parse(text, Path::new("")).unwrap_err();
            assert!(fault.contains(complaint), "{fault}");
        }
        assert!(read(Path::new("no/such/list.tsv")).unwrap_err().to_string().contains("no/such/list.tsv"));
    }
}
