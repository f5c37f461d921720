//! What was found, before anybody judges it.

/// What must not leave the house: a name, a path, a device, the words of an error. Shown on the terminal alone.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Private(pub String);

/// Why something could not be found out.
pub type Trouble = Private;

/// Everything the checks look at.
#[derive(Debug, Clone)]
pub struct Facts {
    pub version: &'static str,
    /// "Debian GNU/Linux 12 (bookworm), x86_64".
    pub system: String,
    pub microphone: Result<Listened, Trouble>,
    pub loudspeaker: Played,
    pub clock: Clock,
    /// Room on the disk that holds the data folder, bytes.
    pub room_bytes: Result<u64, Trouble>,
    pub model: Result<(), Trouble>,
    /// The voice renders a line: how it is called, and how long the line lasts, s; none for one that speaks by itself.
    pub voice: Result<(Private, Option<f64>), Trouble>,
    pub folder: Folder,
    pub record: Record,
    pub household: House,
}

/// A second of the microphone.
#[derive(Debug, Clone, PartialEq)]
pub struct Listened {
    pub device: Private,
    pub rate_hz: u32,
    /// Minus infinity for digital silence, dB re full scale.
    pub peak_dbfs: f64,
    pub rms_dbfs: f64,
    /// Every sample was the same.
    pub constant: bool,
    /// Frames that the device lost.
    pub lost_frames: u64,
}

/// The loudspeaker.
#[derive(Debug, Clone, PartialEq)]
pub enum Played {
    /// It was opened and took half a second of silence.
    Works {
        device: Private,
        rate_hz: u32,
    },
    Fails(Trouble),
    /// None was to be tried.
    NotTried,
}

/// The clock of the computer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clock {
    pub year: i16,
    /// Set from the network; none where nobody can tell.
    pub synchronised: Option<bool>,
    /// The record has later entries, or none for more than a year.
    pub record_doubts: bool,
}

/// The data folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Folder {
    /// It is made with the first practice.
    Missing(Private),
    There {
        path: Private,
        writable: bool,
        /// Its mode lets others in.
        open_to_others: bool,
        /// So many files in it can be read by others.
        files_open_to_others: usize,
    },
    Unknown(Trouble),
}

/// The record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Record {
    None,
    Looked { practices: u64, encrypted: bool, faults: Vec<Private> },
    Fails(Trouble),
}

/// Whether what starts a practice can be heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StartPhrase {
    Heard,
    /// Some of it has words that the recogniser does not know.
    Unknown(Private),
    /// The language has no recogniser, and its second ear, where it has one, never learnt these phrases.
    NotInThisLanguage {
        commands: bool,
    },
}

/// The household file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum House {
    None,
    /// Persons, planned times, and whether every wording that starts a practice can be heard.
    Read {
        persons: usize,
        planned: usize,
        start_phrase: StartPhrase,
    },
    Faults {
        count: usize,
        told: Private,
    },
    /// It cannot be judged without a model.
    Unknown(Trouble),
}
