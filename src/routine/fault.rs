//! What is wrong with a routine file: every fault at once, each with its place and its remedy.

use std::fmt;
use std::ops::Range;
use std::sync::Arc;

use miette::{Diagnostic, LabeledSpan, NamedSource};

/// What sort of fault it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FaultKind {
    /// The file is missing, too large or cannot be opened.
    File,
    /// Not UTF-8, a control character, nothing to speak, too long to be said.
    UnreadableText,
    /// Not valid TOML.
    Syntax,
    /// A key that no routine has.
    UnknownKey,
    /// A key that must be there.
    Missing,
    /// Text where a number belongs, and the like.
    WrongType,
    /// No such exercise in the catalogue.
    UnknownExercise,
    /// A number outside its limits.
    OutOfRange,
    /// A field of another way of timing.
    NotForThisExercise,
    /// Fields that are each within their limits add up to more than anybody may ask for.
    PastLimit,
    /// They add up to more than may be asked for without the clinician's word.
    NeedsClinicianWord,
    /// The cautions were not acknowledged.
    MissingAcknowledgement,
    /// Something is asked for that a clinician must have allowed.
    NotAllowed,
    /// A spoken text holds the wording of a command that is listened for then.
    CommandInText,
    /// A word the recogniser does not know.
    UnknownWord,
    /// A name that is none of those that can be chosen from.
    UnknownName,
    /// The same thing said twice.
    Twice,
}

/// One fault.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    pub kind: FaultKind,
    /// Where in the text, bytes.
    pub span: Range<usize>,
    /// Line, counted from 1.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// What is wrong, without a full stop.
    pub what: String,
    /// What to do about it, a sentence.
    pub remedy: String,
}

/// All faults of one file, in the order of their places.
#[derive(Debug, Clone)]
pub struct Faults {
    /// The file's name as it was given.
    pub file: String,
    /// Never empty.
    pub list: Vec<Fault>,
    source: Arc<NamedSource<String>>,
}

impl Faults {
    /// `text` is what the spans of `list` point into.
    pub fn new(file: &str, text: &str, mut list: Vec<Fault>) -> Self {
        list.sort_by_key(|fault| (fault.line, fault.column));
        list.dedup();
        Self { file: file.to_owned(), list, source: Arc::new(NamedSource::new(file, text.to_owned())) }
    }
}

impl Faults {
    /// The file's name and text, for showing faults under their lines.
    #[must_use]
    pub fn source_code(&self) -> NamedSource<String> {
        NamedSource::clone(&self.source)
    }

    /// The one fault of a file that cannot be looked into at all.
    #[must_use]
    pub fn of_file(file: &str, what: impl Into<String>, remedy: impl Into<String>) -> Self {
        let mut faults = Finder::new("");
        faults.add(FaultKind::File, 0..0, what, remedy);
        Self::new(file, "", faults.list)
    }
}

/// Plain text, one fault a line: `file:line: what. remedy`.
impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, fault) in self.list.iter().enumerate() {
            let end = if n == 0 { "" } else { "\n" };
            write!(f, "{end}{}:{}: {}. {}", self.file, fault.line, fault.what, fault.remedy)?;
        }
        Ok(())
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: {}", self.line, self.what)
    }
}

impl std::error::Error for Faults {}
impl std::error::Error for Fault {}

impl Diagnostic for Fault {
    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(&self.remedy))
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let label = LabeledSpan::new(None, self.span.start, self.span.len());
        Some(Box::new(std::iter::once(label)))
    }
}

/// More faults than this are of no use at once, and a hostile file could have millions.
const MAX_FAULTS: usize = 100;

/// Gathers faults while a text is looked through.
pub struct Finder<'t> {
    text: &'t str,
    /// The first byte of each line.
    line_starts: Vec<usize>,
    pub list: Vec<Fault>,
}

impl<'t> Finder<'t> {
    pub fn new(text: &'t str) -> Self {
        let line_starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Self { text, line_starts, list: Vec::new() }
    }

    /// Notes one fault; a span that is out of the text is moved to its end. Beyond a hundred nothing is noted any more.
    pub fn add(&mut self, kind: FaultKind, span: Range<usize>, what: impl Into<String>, remedy: impl Into<String>) {
        if self.list.len() >= MAX_FAULTS {
            return;
        }
        let span = within(self.text, &span);
        let (line, column) = self.place(span.start);
        let fault = Fault { kind, span, line, column, what: what.into(), remedy: remedy.into() };
        if !self.list.contains(&fault) {
            self.list.push(fault);
        }
    }

    /// Line and column of a character's first byte, both from 1.
    pub fn place(&self, at: usize) -> (usize, usize) {
        let line = self.line_starts.partition_point(|&start| start <= at);
        let start = self.line_starts.get(line.saturating_sub(1)).copied().unwrap_or(0);
        let column = self.text.get(start..at).map_or(0, |before| before.chars().count()) + 1;
        (line, column)
    }
}

/// The span cut to the text and to whole characters.
fn within(text: &str, span: &Range<usize>) -> Range<usize> {
    let whole = |mut at: usize| {
        at = at.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let start = whole(span.start);
    start..whole(span.end).max(start)
}

/// "did you mean" where something near enough is known; otherwise what there is to choose from.
pub fn suggestion<'a>(typed: &str, known: impl Iterator<Item = &'a str> + Clone) -> String {
    let like = |name: &str| strsim::jaro_winkler(&typed.to_lowercase(), name);
    let best = known.clone().max_by(|a, b| like(a).total_cmp(&like(b)));
    match best {
        // 0.8 lets through slips of one or two letters and keeps out mere likeness of length.
        Some(best) if like(best) >= 0.8 => format!("Did you mean `{best}`?"),
        _ => format!("Choose one of: {}.", known.collect::<Vec<_>>().join(", ")),
    }
}
