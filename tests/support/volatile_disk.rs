//! A disk that forgets: what a system wrote and what it had made sure of, so that a power cut can be made at any instant.
//!
//! What was written since a file's last `fsync` survives a cut sector by sector or not at all; names that were made, changed or taken away
//! since the folder's last `fsync` survive up to some point in their order, as with a journalling file system. That is POSIX's promise
//! (IEEE Std 1003.1, `fsync`) and no more.

use rand::Rng;
use std::collections::BTreeMap;
use std::path::Path;

/// The least that a disk writes as a whole, bytes.
const SECTOR: usize = 512;

/// What a system did to the files of one folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Deed {
    /// A new, empty file, by a number of its own.
    Make {
        name: String,
        file: usize,
    },
    Write {
        file: usize,
        at: usize,
        bytes: Vec<u8>,
    },
    Cut {
        file: usize,
        length: usize,
    },
    Sync {
        file: usize,
    },
    Rename {
        from: String,
        to: String,
    },
    /// A second name.
    Link {
        from: String,
        to: String,
    },
    Remove {
        name: String,
    },
    SyncFolder,
    /// The system told something to the outside.
    Told(String),
}

#[derive(Debug, Clone)]
enum Change {
    Write(usize, Vec<u8>),
    Cut(usize),
}

#[derive(Debug, Clone, Default)]
struct File {
    sure: Vec<u8>,
    unsure: Vec<Change>,
}

/// How much of what is not sure survives the cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Survives {
    Nothing,
    Some,
    Everything,
}

/// Before its first deed the folder holds what was given, surely.
#[derive(Debug, Clone, Default)]
pub struct VolatileDisk {
    files: BTreeMap<usize, File>,
    sure_names: BTreeMap<String, usize>,
    unsure_names: Vec<Deed>,
}

impl VolatileDisk {
    /// Puts a file there, surely.
    pub fn hold(&mut self, name: &str, file: usize, content: Vec<u8>) {
        self.files.insert(file, File { sure: content, unsure: Vec::new() });
        self.sure_names.insert(name.into(), file);
    }

    pub fn take(&mut self, deed: &Deed) {
        match deed {
            Deed::Make { file, .. } => {
                self.files.entry(*file).or_default();
                self.unsure_names.push(deed.clone());
            }
            Deed::Rename { .. } | Deed::Link { .. } | Deed::Remove { .. } => self.unsure_names.push(deed.clone()),
            Deed::Write { file, at, bytes } => self.file(*file).unsure.push(Change::Write(*at, bytes.clone())),
            Deed::Cut { file, length } => self.file(*file).unsure.push(Change::Cut(*length)),
            Deed::Sync { file } => {
                let file = self.file(*file);
                for change in std::mem::take(&mut file.unsure) {
                    change.apply(&mut file.sure, &mut |_| true);
                }
            }
            Deed::SyncFolder => {
                for deed in std::mem::take(&mut self.unsure_names) {
                    rename(&mut self.sure_names, &deed);
                }
            }
            Deed::Told(_) => {}
        }
    }

    fn file(&mut self, number: usize) -> &mut File {
        self.files.entry(number).or_default()
    }

    /// Writes what is left after a power cut into an empty folder.
    pub fn cut_power(&self, survives: Survives, dice: &mut impl Rng, folder: &Path) {
        let mut keeps = |_: usize| match survives {
            Survives::Nothing => false,
            Survives::Some => dice.random_bool(0.5),
            Survives::Everything => true,
        };
        let contents: BTreeMap<usize, Vec<u8>> = self
            .files
            .iter()
            .map(|(number, file)| {
                let mut content = file.sure.clone();
                file.unsure.iter().for_each(|change| change.apply(&mut content, &mut keeps));
                (*number, content)
            })
            .collect();
        let names_kept = match survives {
            Survives::Nothing => 0,
            Survives::Some => dice.random_range(0..=self.unsure_names.len()),
            Survives::Everything => self.unsure_names.len(),
        };
        let mut names = self.sure_names.clone();
        self.unsure_names.iter().take(names_kept).for_each(|deed| rename(&mut names, deed));
        for (name, file) in names {
            std::fs::write(folder.join(name), contents.get(&file).map_or(&[][..], Vec::as_slice)).expect("writes");
        }
    }
}

impl Change {
    /// Changes the content; of a write only the sectors that `keeps` lets through, each asked for once.
    fn apply(&self, content: &mut Vec<u8>, keeps: &mut impl FnMut(usize) -> bool) {
        match self {
            Self::Cut(length) => {
                if keeps(0) {
                    content.resize(*length, 0);
                }
            }
            Self::Write(at, bytes) => {
                let mut from = 0;
                while from < bytes.len() {
                    let sector = (at + from) / SECTOR;
                    let until = ((sector + 1) * SECTOR - at).min(bytes.len());
                    if keeps(sector) {
                        if content.len() < at + until {
                            content.resize(at + until, 0);
                        }
                        content[at + from..at + until].copy_from_slice(&bytes[from..until]);
                    }
                    from = until;
                }
            }
        }
    }
}

fn rename(names: &mut BTreeMap<String, usize>, deed: &Deed) {
    match deed {
        Deed::Make { name, file } => {
            names.insert(name.clone(), *file);
        }
        Deed::Rename { from, to } => {
            if let Some(file) = names.remove(from) {
                names.insert(to.clone(), file);
            }
        }
        Deed::Link { from, to } => {
            if let Some(file) = names.get(from).copied() {
                names.insert(to.clone(), file);
            }
        }
        Deed::Remove { name } => {
            names.remove(name);
        }
        _ => {}
    }
}
