//! How files are kept on the disk: for their owner alone, and with room left. It knows nothing of what is in them. Start at
//! `private.rs`.

pub mod private;
pub mod room;
