//! `tidecount goal`: goals of a client in their own words, and what the figures say of them. Start at `command.rs`.

pub mod args;
pub mod command;
pub(crate) mod whose;

#[cfg(test)]
mod tests;
