//! `tidecount doctor`: looks whether everything is ready, and says what is not and how to mend it. `gather.rs` asks the computer,
//! `checks.rs` judges (pure), `report.rs` writes it down, without personal data where it leaves the house.

pub mod checks;
pub mod command;
pub mod facts;
pub mod gather;
pub mod report;
