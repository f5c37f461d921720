//! Where things are kept.

use std::path::PathBuf;

use record::{RecordError, data_folder};

/// Where the record is kept unless another folder is named, as help says it everywhere. The path is the one of `directories` for this system.
macro_rules! kept_in {
    ($what:literal) => {
        if cfg!(target_os = "macos") {
            concat!($what, " [default: $TIDECOUNT_DATA, else ~/Library/Application Support/tidecount]")
        } else if cfg!(windows) {
            concat!($what, " [default: $TIDECOUNT_DATA, else %APPDATA%\\tidecount\\data]")
        } else {
            concat!($what, " [default: $TIDECOUNT_DATA, else ~/.local/share/tidecount]")
        }
    };
}
pub(crate) use kept_in;

const KEPT_IN: &str = kept_in!("Keep the record in this folder");

/// The folder of the record.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct DataFolder {
    #[arg(long, value_name = "DIR", help = KEPT_IN)]
    data: Option<PathBuf>,
}

impl DataFolder {
    /// This folder.
    #[must_use]
    pub fn of(folder: PathBuf) -> Self {
        Self { data: Some(folder) }
    }

    /// The folder that is meant.
    ///
    /// # Errors
    /// None was named, and this computer has no folder for the data of programs.
    pub fn folder(&self) -> Result<PathBuf, RecordError> {
        data_folder(self.data.as_deref())
    }
}

/// The folder of the record, for commands with subcommands: it may be named before or after them.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct GlobalDataFolder {
    #[arg(long, value_name = "DIR", global = true, help = KEPT_IN)]
    data: Option<PathBuf>,
}

impl GlobalDataFolder {
    /// As [`DataFolder::folder`].
    ///
    /// # Errors
    /// As [`DataFolder::folder`].
    pub fn folder(&self) -> Result<PathBuf, RecordError> {
        data_folder(self.data.as_deref())
    }
}
