//! The local pages: the live page of a practice and the set-up pages. `web` draws and guards them, `follow` turns what the engine tells
//! into what stands on the live page, `set_up` does what the set-up pages ask for. They answer on loopback alone and fetch nothing from
//! elsewhere; no page waits for the sound thread, nor it for a page. Start at `follow/server.rs`.

pub mod follow;
pub mod set_up;
pub mod web;
