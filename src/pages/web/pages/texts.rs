//! The words of the pages, looked up by their keys.

use session::{Arg, Line};

/// The words of the pages, looked up by their keys.
#[derive(Clone, Copy)]
pub struct Texts<'a>(pub &'a dyn Fn(&Line) -> String);

impl Texts<'_> {
    /// The message of this key, which takes no arguments.
    #[must_use]
    pub fn s(&self, key: &str) -> String {
        self.with(key, Vec::new())
    }

    /// The message with its arguments.
    #[must_use]
    pub fn with(&self, key: &str, args: Vec<(&'static str, Arg)>) -> String {
        (self.0)(&Line { key: key.to_owned(), args })
    }

    /// The message with one text put in.
    #[must_use]
    pub fn text(&self, key: &str, name: &'static str, text: &str) -> String {
        self.with(key, vec![(name, Arg::Text(text.to_owned()))])
    }

    /// The message with one number put in.
    #[must_use]
    pub fn number(&self, key: &str, name: &'static str, number: f64) -> String {
        self.with(key, vec![(name, Arg::Number(number))])
    }
}
