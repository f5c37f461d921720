//! Where everything stands: pure functions from what is to be shown to rows of text.

use super::digits;
use super::shown::ShownView;
use model::visible_line;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// The look of a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Look {
    Plain,
    Bold,
    /// Of lesser weight.
    Faint,
}

/// One row of the block; never wider than the terminal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Row {
    pub(super) text: String,
    pub(super) look: Look,
}

/// Room on the terminal, cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Size {
    pub(super) columns: usize,
    pub(super) rows: usize,
}

/// Text that cannot steer the terminal: control characters become spaces, runs of spaces one; what would turn the order of the others
/// unseen is written out.
pub(super) fn clean(text: &str) -> String {
    visible_line(text).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The text cut to `width` cells, with an ellipsis where something is missing.
pub(super) fn cut(text: &str, width: usize) -> String {
    if text.width() <= width {
        return text.to_owned();
    }
    let mut used = 0;
    let mut kept: String = text
        .chars()
        .take_while(|c| {
            used += c.width().unwrap_or(0);
            used < width
        })
        .collect();
    if width > 0 {
        kept.push('…');
    }
    kept
}

/// Printed lines, broken between words where they are wider than `columns`; what goes on stands as far in as its line began.
pub(super) fn fitted(text: &str, columns: usize) -> String {
    let fit = |line: &str| {
        let indent: String = line.chars().take_while(|c| *c == ' ').collect();
        let further = if line.trim_start().starts_with("- ") { format!("{indent}  ") } else { indent.clone() };
        let options = textwrap::Options::new(columns.max(further.len() + 10)).initial_indent(&indent).subsequent_indent(&further);
        textwrap::wrap(line.trim_start(), options).join("\n")
    };
    text.split('\n').map(fit).collect::<Vec<_>>().join("\n")
}

fn wrapped(text: &str, width: usize) -> Vec<String> {
    textwrap::wrap(text, width.max(1)).into_iter().map(|row| cut(&row, width)).collect()
}

/// The block at the foot of the terminal. The last column stays free, so that no terminal breaks a row by itself.
/// Where rows are few the large figure gives way first, then the rule, then what can be said.
/// `keys` tells the keys, where there are some; it is the first to give way of all.
pub(super) fn block(shown: &ShownView, keys: &str, size: Size, ink: char) -> Vec<Row> {
    let width = size.columns.saturating_sub(1).max(1);
    let room = size.rows.saturating_sub(1).max(1);
    let row = |text: String, look: Look| Row { text, look };
    let heading = [row(cut(&clean(&shown.heading), width), Look::Bold)];
    let prompt: Vec<Row> = wrapped(&clean(&shown.prompt), width).into_iter().take(3).map(|text| row(text, Look::Plain)).collect();
    let aside: Vec<Row> = wrapped(&clean(&shown.aside), width)
        .into_iter()
        .filter(|text| !text.is_empty())
        .take(2)
        .map(|text| row(text, Look::Bold))
        .collect();
    let figure = clean(&shown.figure);
    let small = if figure.is_empty() { Vec::new() } else { vec![row(cut(&figure, width), Look::Bold)] };
    let large = digits::large(&figure, width.saturating_sub(2), ink).map(|rows| {
        let mut rows: Vec<Row> = rows.iter().map(|text| row(format!("  {text}").trim_end().to_owned(), Look::Bold)).collect();
        rows.insert(0, row(String::new(), Look::Plain));
        rows.push(row(String::new(), Look::Plain));
        rows
    });
    let can_say = if shown.can_say.is_empty() {
        Vec::new()
    } else {
        let words: Vec<String> = shown.can_say.iter().map(|word| format!("\"{}\"", clean(&word.label))).collect();
        wrapped(&words.join(" · "), width).into_iter().take(2).map(|text| row(text, Look::Faint)).collect()
    };
    let rule = vec![row("-".repeat(width), Look::Faint)];

    let base = heading.len() + prompt.len() + aside.len();
    let use_large = large.as_ref().is_some_and(|rows| rule.len() + base + rows.len() + can_say.len() <= room);
    let figure = if use_large { large.unwrap_or_default() } else { small };
    let mut rows = Vec::new();
    if rule.len() + base + figure.len() + can_say.len() <= room {
        rows.extend(rule);
    }
    rows.extend(heading);
    rows.extend(prompt);
    rows.extend(aside);
    let left = room.saturating_sub(rows.len() + figure.len());
    rows.extend(figure);
    rows.extend(can_say.into_iter().take(left));
    let keys = wrapped(&clean(keys), width).into_iter().filter(|text| !text.is_empty()).map(|text| row(text, Look::Faint));
    let keys: Vec<Row> = keys.collect();
    if rows.len() + keys.len() <= room {
        rows.extend(keys);
    }
    rows.truncate(room);
    rows
}

/// Who speaks in a line of dialogue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Who {
    Tool,
    Client,
    Note,
}

impl Who {
    fn mark(self) -> char {
        match self {
            Self::Tool => 'T',
            Self::Client => 'C',
            Self::Note => '-',
        }
    }
}

/// One line of dialogue, "   40.3  T  Rest."; broken at `width` with the text kept in its column, or unbroken without one.
pub(super) fn dialogue(at_s: f64, who: Who, text: &str, width: Option<usize>) -> Vec<String> {
    let start = format!("{at_s:7.1}  {}  ", who.mark());
    let text = clean(text);
    match width {
        Some(width) if width > start.len() + 10 => {
            let indent = " ".repeat(start.len());
            let options = textwrap::Options::new(width).initial_indent(&start).subsequent_indent(&indent);
            textwrap::wrap(&text, options).into_iter().map(|row| cut(&row, width)).collect()
        }
        Some(width) => wrapped(&format!("{} {text}", who.mark()), width),
        None => vec![format!("{start}{text}").trim_end().to_owned()],
    }
}

#[cfg(test)]
#[path = "tests/layout.rs"]
mod tests;
