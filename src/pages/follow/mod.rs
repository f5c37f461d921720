//! The live page of a practice: what the engine tells becomes what stands on the page.

pub mod bar;
pub mod captions;
pub mod done;
pub mod figure;
pub mod follower;
pub mod picture;
pub mod server;
pub mod words;
