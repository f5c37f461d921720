//! `tidecount record …`: backup, check, passphrase, forgetting, kept sound.

pub mod backup;
pub mod command;
pub mod forget;
pub mod household;
pub mod passphrase;
pub mod sounds;
