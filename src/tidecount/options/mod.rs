//! Options that several commands share. Each stands here once, with its help and its default.

mod place;

pub use place::DataFolder;
