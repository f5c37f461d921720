//! The passphrase of an encrypted record: where it comes from, and the key that is made of it.
//!
//! The file is SQLCipher 4 with its own defaults (AES-256 in CBC mode with HMAC-SHA-512 per page; key by PBKDF2-HMAC-SHA-512 with
//! 256,000 rounds over the 16 bytes of salt that the file begins with: <https://www.zetetic.net/sqlcipher/design/>), so that any
//! SQLCipher opens it with the same passphrase. The key is derived here, once in a process, and handed to SQLCipher raw: a page that
//! opens the record for each request does not pay for the derivation each time.

use std::ffi::OsString;
use std::fmt;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use super::error::RecordError;
use zeroize::Zeroizing;

/// Holds the passphrase itself.
pub const VARIABLE: &str = "TIDECOUNT_PASSPHRASE";
/// Names a file whose first line is the passphrase.
pub const FILE_VARIABLE: &str = "TIDECOUNT_PASSPHRASE_FILE";
/// The same two for the passphrase that is to be set.
pub const NEW_VARIABLE: &str = "TIDECOUNT_NEW_PASSPHRASE";
pub const NEW_FILE_VARIABLE: &str = "TIDECOUNT_NEW_PASSPHRASE_FILE";

/// A new passphrase must have so many characters (NIST SP 800-63B, section 5.1.1.1: at least 8).
const SHORTEST: usize = 8;
/// Rounds of SQLCipher 4.
const ROUNDS: u32 = 256_000;
/// A person may mistype so often.
const TRIES: u32 = 3;

/// Words that open a record. Never shown, also not in debug output, and overwritten in memory when they are no longer needed.
#[derive(Clone, PartialEq, Eq)]
pub struct Passphrase(Zeroizing<String>);

impl fmt::Debug for Passphrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Passphrase(…)")
    }
}

impl Passphrase {
    /// One to be set.
    ///
    /// # Errors
    /// It is shorter than eight characters.
    pub fn new(text: &str) -> Result<Self, RecordError> {
        Self(Zeroizing::new(text.to_owned())).checked()
    }

    /// Whether it may be set.
    ///
    /// # Errors
    /// As [`Passphrase::new`].
    pub fn checked(self) -> Result<Self, RecordError> {
        if self.0.chars().count() < SHORTEST {
            return Err(RecordError::Passphrase(format!(
                "the passphrase is too short: take at least {SHORTEST} characters, better four or five words that do not belong together. Nothing was changed"
            )));
        }
        Ok(self)
    }

    /// The one that was given by variable or file; none where there is none.
    ///
    /// # Errors
    /// The file cannot be read, is empty, or others may read it.
    pub fn given() -> Result<Option<Self>, RecordError> {
        from_outside(std::env::var_os(VARIABLE), std::env::var_os(FILE_VARIABLE))
    }

    /// As [`Passphrase::given`], for the one to be set.
    ///
    /// # Errors
    /// As [`Passphrase::given`].
    pub fn given_new() -> Result<Option<Self>, RecordError> {
        from_outside(std::env::var_os(NEW_VARIABLE), std::env::var_os(NEW_FILE_VARIABLE))
    }

    /// Asks at the terminal without showing what is typed; none where nobody sits at one.
    #[must_use]
    pub fn asked(question: &str) -> Option<Self> {
        if !(std::io::stdin().is_terminal() && std::io::stderr().is_terminal()) {
            return None;
        }
        dialoguer::Password::new().with_prompt(question).interact().ok().map(|typed| Self(Zeroizing::new(typed)))
    }
}

fn from_outside(variable: Option<OsString>, file: Option<OsString>) -> Result<Option<Passphrase>, RecordError> {
    if let Some(value) = variable.filter(|value| !value.is_empty()) {
        let text = value
            .into_string()
            .map_err(|_| RecordError::Passphrase(format!("the passphrase in {VARIABLE} is no text in UTF-8: type it anew")))?;
        return Ok(Some(Passphrase(Zeroizing::new(text))));
    }
    file.filter(|name| !name.is_empty()).map(|name| from_file(Path::new(&name))).transpose()
}

fn from_file(path: &Path) -> Result<Passphrase, RecordError> {
    let bad = |cause: String| RecordError::Passphrase(format!("the passphrase file {}: {cause}", path.display()));
    let data = std::fs::metadata(path).map_err(|error| bad(format!("cannot be read ({error}); name another")))?;
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = data.permissions().mode() & 0o777;
        // A pipe of the shell has whatever mode it has.
        if data.is_file() && mode & 0o077 != 0 {
            return Err(bad(format!("others may read it (mode {mode:04o}); do: chmod 600 {}", path.display())));
        }
    }
    let text = Zeroizing::new(
        std::fs::read_to_string(path).map_err(|error| bad(format!("cannot be read ({error}); it must be yours and text in UTF-8")))?,
    );
    match text.lines().next().unwrap_or_default() {
        "" => Err(bad("its first line is empty; the passphrase must stand there".to_owned())),
        line => Ok(Passphrase(Zeroizing::new(line.to_owned()))),
    }
}

/// What opens one file. Overwritten in memory when it is no longer needed.
#[derive(Clone, PartialEq, Eq)]
pub(super) struct Key {
    key: Zeroizing<[u8; 32]>,
    salt: [u8; 16],
}

impl fmt::Debug for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Key(…)")
    }
}

impl Key {
    /// The key of a file that begins with this salt.
    pub fn derive(passphrase: &Passphrase, salt: [u8; 16]) -> Self {
        let mut key = Zeroizing::new([0; 32]);
        pbkdf2::pbkdf2_hmac::<sha2::Sha512>(passphrase.0.as_bytes(), &salt, ROUNDS, key.as_mut_slice());
        Self { key, salt }
    }

    /// For a file that is to be made.
    pub fn fresh(passphrase: &Passphrase) -> Result<Self, RecordError> {
        Ok(Self::derive(passphrase, random()?))
    }

    /// A key that no passphrase leads to.
    pub fn from_bytes(key: [u8; 32], salt: [u8; 16]) -> Self {
        Self { key: Zeroizing::new(key), salt }
    }

    /// As SQLCipher takes it: key and salt in hexadecimal, without derivation.
    pub fn spec(&self) -> Zeroizing<String> {
        // As long as it gets from the start: a text that grows leaves its beginning where it was.
        let mut spec = Zeroizing::new(String::with_capacity(2 * (self.key.len() + self.salt.len()) + 3));
        spec.push_str("x'");
        for byte in self.key.iter().chain(&self.salt) {
            for digit in [byte >> 4, byte & 15] {
                spec.push(char::from_digit(u32::from(digit), 16).unwrap_or('0'));
            }
        }
        spec.push('\'');
        spec
    }
}

/// Bytes that nobody can guess.
pub(super) fn random<const N: usize>() -> Result<[u8; N], RecordError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|error| {
        RecordError::Passphrase(format!("this system gives no random numbers for a key ({error}): try again after a restart"))
    })?;
    Ok(bytes)
}

/// Keys that have opened a file in this process, by salt.
static KEYS: Mutex<Vec<Key>> = Mutex::new(Vec::new());

fn keys() -> MutexGuard<'static, Vec<Key>> {
    KEYS.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Remembers a key for as long as the process lives.
pub(super) fn remember(key: &Key) {
    let mut keys = keys();
    keys.retain(|known| known.salt != key.salt);
    keys.push(key.clone());
}

/// The key of an encrypted file that begins with `salt`, from what is remembered, given, or asked at the terminal. `opens` tries one.
pub(super) fn unlock(path: &Path, salt: [u8; 16], opens: impl Fn(&Key) -> Result<bool, RecordError>) -> Result<Key, RecordError> {
    let known = keys().iter().find(|key| key.salt == salt).cloned();
    if let Some(key) = known
        && opens(&key)?
    {
        return Ok(key);
    }
    if let Some(passphrase) = Passphrase::given()? {
        let key = Key::derive(&passphrase, salt);
        return if opens(&key)? { Ok(remembered(key)) } else { Err(RecordError::WrongPassphrase { path: path.to_path_buf() }) };
    }
    for _ in 0..TRIES {
        let Some(passphrase) = Passphrase::asked(&format!("Passphrase of {}", path.display())) else {
            return Err(RecordError::Locked { path: path.to_path_buf() });
        };
        let key = Key::derive(&passphrase, salt);
        if opens(&key)? {
            return Ok(remembered(key));
        }
        eprintln!("That is not it.");
    }
    Err(RecordError::WrongPassphrase { path: path.to_path_buf() })
}

fn remembered(key: Key) -> Key {
    remember(&key);
    key
}

/// Told once a process and file.
static TOLD: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// A passphrase is at hand, but the record is not encrypted: that must not go unseen.
pub(super) fn warn_of_plain(path: &Path) {
    let mut told = TOLD.lock().unwrap_or_else(PoisonError::into_inner);
    if !told.iter().any(|known| known == path) {
        told.push(path.to_path_buf());
        eprintln!("{} is not encrypted, although a passphrase is given: `tidecount record passphrase set` encrypts it.", path.display());
    }
}

#[cfg(test)]
#[path = "tests/passphrase.rs"]
mod tests;
