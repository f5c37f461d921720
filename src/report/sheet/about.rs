//! What a report is told besides the picture of what was practised.

use jiff::civil::Date;

/// What is known besides the picture.
#[derive(Debug, Clone)]
pub struct About<'a> {
    /// The day on which the report is made.
    pub made: Date,
    /// The last day of practice of all, which may lie before the weeks that are reported.
    pub last_practice: Option<Date>,
    /// Name and version of the program that makes it.
    pub software: &'a str,
}
