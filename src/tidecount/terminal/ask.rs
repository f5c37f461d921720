//! Questions in the terminal: with line editing where a person sits there, else plain lines, which a screen reader reads out
//! and a file of answers can feed.

use std::io::{BufRead, Write};

/// Why no answer came.
#[derive(Debug, thiserror::Error)]
pub enum AskError {
    /// The input is over.
    #[error("the answers ran out at the question \"{question}\"; nothing was written")]
    Ended { question: String },
    #[error("the terminal cannot be used: {0}; nothing was written")]
    Io(#[from] std::io::Error),
}

/// Asks one question at a time.
pub trait Ask {
    /// The answer without surrounding blanks; the default where nothing was typed.
    ///
    /// # Errors
    /// There is nobody to answer any more.
    fn ask(&mut self, question: &str, default: Option<&str>) -> Result<String, AskError>;

    /// Shows a text; it may have several lines.
    ///
    /// # Errors
    /// The terminal cannot be written.
    fn say(&mut self, text: &str) -> Result<(), AskError>;
}

/// Line by line, nothing else.
pub struct Plain<R, W> {
    input: R,
    out: W,
}

impl<R: BufRead, W: Write> Plain<R, W> {
    /// Reads answers from `input` and writes questions to `out`.
    pub fn new(input: R, out: W) -> Self {
        Self { input, out }
    }
}

impl<R: BufRead, W: Write> Ask for Plain<R, W> {
    fn ask(&mut self, question: &str, default: Option<&str>) -> Result<String, AskError> {
        let shown = default.filter(|default| !default.is_empty()).map_or(String::new(), |default| format!(" [{default}]"));
        write!(self.out, "{question}{shown}: ")?;
        self.out.flush()?;
        let mut line = Vec::new();
        if self.input.read_until(b'\n', &mut line)? == 0 {
            return Err(AskError::Ended { question: question.to_owned() });
        }
        // Bytes that are no text are refused by what judges the answer.
        let typed = String::from_utf8_lossy(&line).trim().to_owned();
        Ok(if typed.is_empty() { default.unwrap_or("").to_owned() } else { typed })
    }

    fn say(&mut self, text: &str) -> Result<(), AskError> {
        Ok(writeln!(self.out, "{text}")?)
    }
}

/// A person at a terminal.
pub struct Terminal;

impl Ask for Terminal {
    fn ask(&mut self, question: &str, default: Option<&str>) -> Result<String, AskError> {
        let mut input = dialoguer::Input::<String>::new().with_prompt(question).allow_empty(true);
        if let Some(default) = default {
            input = input.default(default.to_owned()).show_default(!default.is_empty());
        }
        match input.interact_text() {
            Ok(typed) => Ok(typed.trim().to_owned()),
            Err(dialoguer::Error::IO(why)) => Err(AskError::Io(why)),
        }
    }

    fn say(&mut self, text: &str) -> Result<(), AskError> {
        Ok(writeln!(std::io::stdout(), "{text}")?)
    }
}

/// Asks until the answer can be taken; `judge` says otherwise what is accepted.
///
/// # Errors
/// There is nobody to answer any more.
pub fn until<T>(
    ask: &mut dyn Ask,
    question: &str,
    default: Option<&str>,
    mut judge: impl FnMut(&str) -> Result<T, String>,
) -> Result<T, AskError> {
    loop {
        let answer = ask.ask(question, default)?;
        match judge(&answer) {
            Ok(taken) => return Ok(taken),
            Err(accepted) => ask.say(&format!("  {accepted}"))?,
        }
    }
}

/// A question that is answered with yes or no.
///
/// # Errors
/// There is nobody to answer any more.
pub fn yes_or_no(ask: &mut dyn Ask, question: &str, default: Option<bool>) -> Result<bool, AskError> {
    let default = default.map(|yes| if yes { "yes" } else { "no" });
    until(ask, &format!("{question} (yes/no)"), default, |answer| match answer.to_lowercase().as_str() {
        "yes" | "y" => Ok(true),
        "no" | "n" => Ok(false),
        _ => Err("Please type yes or no.".to_owned()),
    })
}
