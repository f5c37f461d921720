//! `tidecount record …`: backup, check, passphrase, forgetting, kept sound.

pub mod args;
pub mod backup;
pub mod beside;
pub mod check;
pub mod command;
pub mod forget;
pub mod household;
pub mod passphrase;
pub mod sounds;
