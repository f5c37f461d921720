//! Where things are kept.

use std::path::PathBuf;

use record::{RecordError, data_folder};

/// The folder of the record.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct DataFolder {
    /// Keep the record in this folder [default: $TIDECOUNT_DATA, else the user data folder]
    #[arg(long, value_name = "DIR")]
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
    /// Keep the record in this folder [default: $TIDECOUNT_DATA, else the user data folder]
    #[arg(long, value_name = "DIR", global = true)]
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
