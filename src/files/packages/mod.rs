//! What was handed over, as files: packages, their settings, the household that they make.

pub mod check;
pub mod goals;
pub mod household;
pub mod practices;
pub mod sealed;
pub mod settings;
