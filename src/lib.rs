//! The program: its commands.

pub mod app;
