//! The only room that knows all others: builds the parts and joins them.

pub mod hear_files;
