//! What several tests share; each test compiles all of it and uses a part.
#![allow(dead_code, reason = "each test uses a part")]

pub mod live_client;
pub mod sound_server;
