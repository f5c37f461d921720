//! What several tests share.

pub mod live_client;
pub mod sound_server;
