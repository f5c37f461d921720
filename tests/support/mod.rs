//! What several tests share.

pub mod sound_server;
