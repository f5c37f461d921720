//! The local pages: one small server on loopback, for this computer's own browser alone.
//!
//! `server` binds and runs it, `guard` refuses every request that is not this browser's own, `layout` is the frame of every page,
//! `assets` what is built in. Whoever has pages gives their routes to [`Server::start`].

pub mod address;
mod assets;
mod guard;
mod layout;
pub mod live_page;
pub mod pages;
mod peer;
mod server;

pub use guard::{BODY_LIMIT_BYTES, Guard};
pub use layout::{NavItem, PageFrame, page};
pub use server::{Limits, Server, WebError};
