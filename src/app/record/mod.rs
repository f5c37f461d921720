//! `tidecount record …`: backup, check, passphrase, forgetting, kept sound.

pub(in crate::app) mod backup;
pub mod command;
pub(in crate::app) mod forget;
pub(in crate::app) mod household;
pub(in crate::app) mod passphrase;
pub mod sound;
pub(in crate::app) mod sounds;
