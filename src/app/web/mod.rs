//! The live page of a practice: what the engine tells becomes what stands on the page.

pub(in crate::app) mod bar;
pub(in crate::app) mod captions;
pub(in crate::app) mod done;
pub(in crate::app) mod figure;
pub mod follower;
pub mod server;
pub(in crate::app) mod words;
