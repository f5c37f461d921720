//! The files of handing over: read with a limit, written whole or not at all, never over another.

use std::fs::File;
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};

use crate::error::Failure;
use handover::{HandoverError, Kind, MAX_SEALED_BYTES, Opened, SecretKey, hex, open};
use record::create_folder;
use routine::Faults;

/// At most `limit` bytes of a file and one more.
fn read_some(path: &Path, limit: usize) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(u64::try_from(limit).unwrap_or(u64::MAX).saturating_add(1)).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Opens a sealed file: its bytes and what stood under the seal.
///
/// # Errors
/// It cannot be read, or the seal does not fit.
pub fn open_sealed(path: &Path, kind: Kind) -> Result<(Vec<u8>, Opened), Failure> {
    let bytes = read_some(path, MAX_SEALED_BYTES)
        .map_err(|error| Failure::file(path, format!("cannot be read: {error}. Check the file's name and that you may read it")))?;
    let opened = open(kind, &bytes).map_err(|error| Failure::file(path, error))?;
    Ok((bytes, opened))
}

/// The text of a routine or word pack.
///
/// # Errors
/// It cannot be read, is too large or is not UTF-8.
pub fn text_file(path: &Path, limit: usize) -> Result<String, Failure> {
    let name = path.display().to_string();
    let fault = |what: String, remedy: &str| Failure::Routine(Faults::of_file(&name, what, remedy));
    let bytes = read_some(path, limit)
        .map_err(|error| fault(format!("cannot be read: {error}"), "Check the file's name and that you may read it."))?;
    if bytes.len() > limit {
        return Err(fault(format!("the file is larger than {limit} bytes"), "Check that it is the right one."));
    }
    String::from_utf8(bytes).map_err(|_| fault("this is not UTF-8 text".to_owned(), "Save the file as UTF-8."))
}

/// Writes a new file, whole or not at all, readable for its owner alone.
///
/// # Errors
/// There is one of that name already, which is left as it is; or it cannot be written.
pub fn write_new(path: &Path, text: &str) -> Result<(), Failure> {
    let exists = || Failure::file(path, "this file already exists and was left as it is: name another with -o FILE");
    if path.symlink_metadata().is_ok() {
        return Err(exists());
    }
    let name = path.file_name().ok_or_else(|| Failure::file(path, "this is not the name of a file: name one with -o FILE"))?;
    let beside = path.with_file_name(format!(".{}.{}", name.to_string_lossy(), std::process::id()));
    // A link fails where the name has been taken meanwhile; memory sticks often know no links, and there a rename must do.
    let written = private_file(&beside, text).and_then(|()| match std::fs::hard_link(&beside, path) {
        Err(error) if error.kind() != ErrorKind::AlreadyExists => std::fs::rename(&beside, path),
        other => other,
    });
    let _ = std::fs::remove_file(&beside);
    written.map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => exists(),
        _ => Failure::file(
            path,
            format!("cannot be written: {error}. Make sure the folder is there, that you may write to it, and that it has room"),
        ),
    })
}

/// A new file for its owner alone, on the disk when this returns.
pub fn private_file(path: &Path, text: &str) -> std::io::Result<()> {
    let mut file = disk::private::create_new(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}

/// Bytes that nobody can guess.
///
/// # Errors
/// The system gives none.
pub fn random<const N: usize>() -> Result<[u8; N], Failure> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes)
        .map_err(|error| Failure::Again(format!("this computer gave no random numbers for a key ({error}): restart it and try again")))?;
    Ok(bytes)
}

/// 16 hexadecimal digits by chance.
///
/// # Errors
/// As [`random`].
pub fn random_id() -> Result<String, Failure> {
    random::<8>().map(|bytes| hex(&bytes))
}

const KEY_HEAD: &str = "tidecount clinician key 1";

/// The key with which this computer seals packages; made the first time.
///
/// # Errors
/// It cannot be read or made, or the file is damaged; then it is left as it is.
pub fn clinician_key(data: &Path) -> Result<SecretKey, Failure> {
    let folder = data.join("handover");
    create_folder(&folder)?;
    let path = folder.join("clinician.key");
    if !path.exists() {
        let key = SecretKey::from_bytes(&random()?);
        match write_new(&path, &format!("{KEY_HEAD}\n{}\n", key.to_hex())) {
            Ok(()) => return Ok(key),
            // Another process was first: its key counts.
            Err(_) if path.exists() => {}
            Err(error) => return Err(error),
        }
    }
    let text = std::fs::read_to_string(&path)
        .map_err(|error| Failure::file(&path, format!("the clinician's key cannot be read: {error}. Make sure the file is yours")))?;
    let key = text.strip_prefix(KEY_HEAD).and_then(|rest| SecretKey::from_hex(rest.trim()));
    key.ok_or_else(|| Failure::file(&path, "the clinician's key is damaged and was left as it is. Put it back from a backup; without one, set the file aside, and every household must confirm a new key"))
}

/// The folder in which a client's package is in force.
///
/// # Errors
/// The client's name could lead elsewhere.
pub fn package_folder(data: &Path, client: &str) -> Result<PathBuf, HandoverError> {
    handover::client_name(client).map(|()| data.join("clients").join(client).join("package"))
}

/// A folder that is filled beside its place and then moved there; what was left half-done goes when it is dropped.
#[derive(Debug)]
pub struct Filling {
    at: PathBuf,
    place: PathBuf,
}

impl Filling {
    /// Begins a folder that is to become `place`.
    ///
    /// # Errors
    /// It cannot be made.
    pub fn begin(place: &Path) -> Result<Self, Failure> {
        let parent = place.parent().unwrap_or(place);
        create_folder(parent)?;
        let this = Self { at: parent.join(format!(".taking-{}-{}", std::process::id(), random_id()?)), place: place.to_owned() };
        create_folder(&this.at)?;
        Ok(this)
    }

    /// Adds a file. `name` has been checked to be a plain one.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn add(&self, name: &str, text: &str) -> Result<(), Failure> {
        let path = self.at.join(name);
        private_file(&path, text).map_err(|error| Failure::file(&path, format!("cannot be written: {error}. Make sure the disk has room")))
    }

    /// Moves the folder to its place; what was there goes to `earlier/NAME` beside it. On failure all is as before.
    ///
    /// # Errors
    /// The system refuses to move one of them.
    pub fn put(self, earlier_name: &str) -> Result<(), Failure> {
        let wrap = |error: std::io::Error| {
            Failure::file(&self.place, format!("the package could not be put in its place: {error}. Make sure you may write to the folder"))
        };
        let mut moved = None;
        if self.place.symlink_metadata().is_ok() {
            let earlier = self.place.with_file_name("earlier");
            create_folder(&earlier)?;
            let free = (1..).map(|n| if n == 1 { earlier.join(earlier_name) } else { earlier.join(format!("{earlier_name}-{n}")) });
            let aside = free.into_iter().find(|path| path.symlink_metadata().is_err()).unwrap_or_else(|| earlier.join(earlier_name));
            std::fs::rename(&self.place, &aside).map_err(wrap)?;
            moved = Some(aside);
        }
        std::fs::rename(&self.at, &self.place).map_err(|error| {
            if let Some(aside) = moved {
                // If even this fails, the earlier package still lies whole beside.
                let _ = std::fs::rename(aside, &self.place);
            }
            wrap(error)
        })
    }
}

impl Drop for Filling {
    fn drop(&mut self) {
        // Nothing is there any more once it was put.
        let _ = std::fs::remove_dir_all(&self.at);
    }
}
