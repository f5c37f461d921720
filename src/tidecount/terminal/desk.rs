//! Where a command says something and asks for a yes.

use std::io::{BufRead, Write};

use model::visible;

/// Where a command asks and answers.
pub struct Desk<'a> {
    pub input: &'a mut dyn BufRead,
    pub out: &'a mut dyn Write,
}

impl Desk<'_> {
    /// Shows a text. A reader that went away (`| head`) is no reason to break off half-way.
    pub fn say(&mut self, text: &str) {
        let _ = writeln!(self.out, "{}", visible(text));
    }

    /// True where "yes" is typed. The end of the input is no yes.
    pub fn yes(&mut self, question: &str) -> bool {
        let _ = write!(self.out, "{} ", visible(question));
        let _ = self.out.flush();
        let mut line = Vec::new();
        // A line without end is no answer.
        let read = std::io::Read::take(&mut *self.input, 1000).read_until(b'\n', &mut line);
        let yes = read.is_ok() && String::from_utf8_lossy(&line).trim().eq_ignore_ascii_case("yes");
        if line.last() != Some(&b'\n') {
            let _ = writeln!(self.out);
        }
        yes
    }
}
