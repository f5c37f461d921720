//! Runs a program under `strace` and reads from its notes what it did to the files of one folder.

use super::volatile_disk::Deed;
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

/// Calls that change files or their names, or tell what is sure.
const CALLS: &str = "trace=open,openat,creat,close,lseek,write,pwrite64,writev,pwritev,pwritev2,ftruncate,truncate,fallocate,fsync,fdatasync,sync,\
rename,renameat,renameat2,link,linkat,unlink,unlinkat,copy_file_range,sendfile";

/// What the command did to the files of `folder` (no folders in it), and what it told on its standard output, in order. None where this system
/// lets no program be traced.
///
/// # Panics
/// The command fails, or does something to the folder that these notes do not show whole.
pub fn deeds(command: &Command, folder: &Path, held: &[String]) -> Option<Vec<Deed>> {
    let notes = tempfile::NamedTempFile::new().expect("a file");
    let mut strace = Command::new("strace");
    strace.args(["-f", "-y", "-xx", "-s", "100000000", "-e", CALLS, "-o"]).arg(notes.path()).arg(command.get_program());
    strace.args(command.get_args());
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => strace.env(name, value),
            None => strace.env_remove(name),
        };
    }
    let done = strace.output().ok()?;
    let why = String::from_utf8_lossy(&done.stderr).into_owned();
    if why.contains("ptrace") && !done.status.success() {
        return None;
    }
    assert!(done.status.success(), "{why}");
    let notes = std::fs::read_to_string(notes.path()).expect("notes");
    let mut reader = Reader::new(folder, held);
    whole_calls(&notes).iter().for_each(|call| reader.read(call));
    Some(reader.deeds)
}

/// One call a line, without the process's number; those that another thread broke into are joined.
fn whole_calls(notes: &str) -> Vec<String> {
    let (mut begun, mut calls) = (BTreeMap::new(), Vec::new());
    for line in notes.lines() {
        let Some((process, call)) = line.split_once(' ') else { continue };
        let call = call.trim_start();
        if let Some(begin) = call.strip_suffix("<unfinished ...>") {
            begun.insert(process, begin.to_owned());
        } else if let Some((_, end)) = call.strip_prefix("<... ").and_then(|rest| rest.split_once(" resumed>")) {
            calls.push(begun.remove(process).expect("begun") + end);
        } else {
            calls.push(call.to_owned());
        }
    }
    calls
}

struct Reader {
    folder: String,
    deeds: Vec<Deed>,
    /// Files by their names now.
    names: BTreeMap<String, usize>,
    /// Files by descriptor, with where the next plain write goes; none at its end.
    open: BTreeMap<u32, (usize, Option<usize>)>,
    lengths: BTreeMap<usize, usize>,
}

impl Reader {
    fn new(folder: &Path, held: &[String]) -> Self {
        let names: BTreeMap<String, usize> = held.iter().cloned().zip(0..).collect();
        let lengths = names.iter().map(|(name, file)| {
            let length = std::fs::metadata(folder.join(name)).map_or(0, |data| data.len());
            (*file, usize::try_from(length).expect("small"))
        });
        Self { folder: format!("{}/", folder.display()), deeds: Vec::new(), lengths: lengths.collect(), names, open: BTreeMap::new() }
    }

    fn read(&mut self, line: &str) {
        let Some((call, rest)) = line.split_once('(') else { return };
        let Some((arguments, result)) =
            rest.rsplit_once(") ").and_then(|(arguments, end)| Some((arguments, end.trim().strip_prefix("= ")?)))
        else {
            return;
        };
        let arguments: Vec<&str> = arguments.split(", ").collect();
        let number = |text: &str| text.split(['<', ' ']).next().and_then(|n| n.parse::<usize>().ok());
        let Some(result) = number(result) else { return };
        let file = || arguments.first().and_then(|fd| number(fd)).and_then(|fd| u32::try_from(fd).ok());
        // What is written may begin with a path, too.
        let paths = if call.starts_with("write") || call.starts_with("pwrite") { &[][..] } else { &arguments };
        let names: Vec<String> = paths.iter().filter_map(|argument| self.own_name(&quoted(argument)?)).collect();
        match call {
            "open" | "openat" | "creat" => self.opened(&names, line, result),
            "close" => drop(file().map(|fd| self.open.remove(&fd))),
            "lseek" => {
                if let Some(open) = file().and_then(|fd| self.open.get_mut(&fd)) {
                    open.1 = open.1.map(|_| result);
                }
            }
            "write" if arguments[0].starts_with("1<") => {
                let told = String::from_utf8_lossy(&quoted(arguments[1]).expect("bytes")).into_owned();
                self.deeds.push(Deed::Told(told));
            }
            "write" | "pwrite64" => {
                let Some((fd, (file, position))) = file().and_then(|fd| Some((fd, *self.open.get(&fd)?))) else { return };
                let bytes = quoted(arguments[1]).expect("bytes");
                assert_eq!(bytes.len(), result, "a short write");
                let length = self.lengths.entry(file).or_default();
                let at = if call == "pwrite64" { number(arguments[3]).expect("a place") } else { position.unwrap_or(*length) };
                *length = (*length).max(at + result);
                if call == "write" {
                    self.open.insert(fd, (file, position.map(|at| at + result)));
                }
                self.deeds.push(Deed::Write { file, at, bytes });
            }
            "ftruncate" => {
                let Some(&(file, _)) = file().and_then(|fd| self.open.get(&fd)) else { return };
                let length = number(arguments[1]).expect("a length");
                self.lengths.insert(file, length);
                self.deeds.push(Deed::Cut { file, length });
            }
            "fsync" | "fdatasync" => match file().and_then(|fd| self.open.get(&fd)) {
                Some(&(file, _)) => self.deeds.push(Deed::Sync { file }),
                None if self.is_folder(arguments[0]) => self.deeds.push(Deed::SyncFolder),
                None => {}
            },
            "rename" | "renameat" | "renameat2" | "link" | "linkat" => {
                let [from, to] = names.as_slice() else {
                    assert!(names.is_empty(), "{line}: comes from elsewhere");
                    return;
                };
                let moved = call.starts_with("rename");
                let file = if moved { self.names.remove(from) } else { self.names.get(from).copied() };
                self.names.insert(to.clone(), file.expect("a file of the folder"));
                let (from, to) = (from.clone(), to.clone());
                self.deeds.push(if moved { Deed::Rename { from, to } } else { Deed::Link { from, to } });
            }
            "unlink" | "unlinkat" => {
                for name in names {
                    self.names.remove(&name);
                    self.deeds.push(Deed::Remove { name });
                }
            }
            _ => {
                let touches = names.len() + usize::from(file().is_some_and(|fd| self.open.contains_key(&fd)));
                assert_eq!(touches, 0, "a call that is not understood: {}", &line[..line.len().min(200)]);
            }
        }
    }

    fn opened(&mut self, names: &[String], line: &str, fd: usize) {
        let fd = u32::try_from(fd).expect("a descriptor");
        let Some(name) = names.first() else {
            self.open.remove(&fd);
            return;
        };
        let file = *self.names.entry(name.clone()).or_insert_with(|| {
            let file = 1 + self.lengths.keys().next_back().copied().unwrap_or(0);
            self.lengths.insert(file, 0);
            self.deeds.push(Deed::Make { name: name.clone(), file });
            file
        });
        if line.contains("O_TRUNC") {
            self.lengths.insert(file, 0);
            self.deeds.push(Deed::Cut { file, length: 0 });
        }
        self.open.insert(fd, (file, (!line.contains("O_APPEND")).then_some(0)));
    }

    /// The name of a file in the folder itself.
    fn own_name(&self, path: &[u8]) -> Option<String> {
        let name = std::str::from_utf8(path).ok()?.strip_prefix(&self.folder)?;
        assert!(!name.contains('/'), "{name}: a folder in the folder");
        (!name.is_empty()).then(|| name.to_owned())
    }

    fn is_folder(&self, descriptor: &str) -> bool {
        let path = descriptor.split_once('<').and_then(|(_, path)| bytes(path.strip_suffix('>')?));
        path.is_some_and(|path| path == self.folder.trim_end_matches('/').as_bytes())
    }
}

/// The bytes of `"\x61\x62"`.
fn quoted(argument: &str) -> Option<Vec<u8>> {
    bytes(argument.strip_prefix('"')?.strip_suffix('"')?)
}

fn bytes(hex: &str) -> Option<Vec<u8>> {
    hex.split("\\x").skip(1).map(|byte| u8::from_str_radix(byte, 16).ok()).collect()
}
