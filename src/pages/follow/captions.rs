//! Captions: every spoken line in rows of at most 42 characters, two at a time and whole sentences where they fit, shown as they are said.
//! Pure; times are seconds on the sample clock.

use std::collections::VecDeque;

use crate::web::live_page::{Row, Said, Who};

/// Characters of a row: "at most 37 to 42" of captions (trade notes 7.2, from memory).
const ROW: usize = 42;
/// Rows and lines that are kept: the page shows two rows, a screen reader whole lines.
const KEPT: usize = 8;
/// A voice at rest, characters a second, until this one has been timed: 165 words a minute of five letters and a space.
const CHARACTERS_PER_S: f64 = 15.0;
/// Lines shorter than this tell little of the voice's speed, characters.
const TIMED_FROM: usize = 24;
/// Rows that stand on the page at one time.
const ROWS: usize = 2;
/// Rows come this much before their first word is said, s.
const AHEAD_S: f64 = 0.3;

/// The line that is being said.
#[derive(Debug, Clone)]
struct Under {
    began_s: f64,
    characters: usize,
    /// Rows that are still to come, those that stand together with their time, s.
    blocks: VecDeque<(f64, Vec<String>)>,
}

/// What was said lately.
#[derive(Debug, Clone)]
pub struct Captions {
    rows: VecDeque<Row>,
    said: VecDeque<Said>,
    next: u64,
    under: Option<Under>,
    characters_per_s: f64,
}

impl Default for Captions {
    fn default() -> Self {
        Self { rows: VecDeque::new(), said: VecDeque::new(), next: 1, under: None, characters_per_s: CHARACTERS_PER_S }
    }
}

impl Captions {
    /// The tool begins a line.
    pub fn began(&mut self, at_s: f64, text: &str) {
        // What was not said to its end by then was hushed or runs on beneath.
        self.finish();
        let (mut blocks, mut passed) = (VecDeque::new(), 0);
        for rows in together(text) {
            let characters: usize = rows.iter().map(|row| row.chars().count() + 1).sum();
            blocks.push_back((at_s + passed as f64 / self.characters_per_s - AHEAD_S, rows));
            passed += characters;
        }
        self.under = Some(Under { began_s: at_s, characters: text.chars().count(), blocks });
        self.whole(Who::Tool, text);
        self.show_until(at_s + AHEAD_S);
    }

    /// The line has been said to its end.
    pub fn ended(&mut self, at_s: f64) {
        if let Some(under) = &self.under
            && under.characters >= TIMED_FROM
            && at_s > under.began_s
        {
            let speed = under.characters as f64 / (at_s - under.began_s);
            self.characters_per_s = (0.7 * self.characters_per_s + 0.3 * speed).clamp(5.0, 40.0);
        }
        self.finish();
    }

    /// Silence: what was not said yet is not shown either.
    pub fn hushed(&mut self) {
        self.under = None;
    }

    /// Time passes; true where another row came.
    pub fn tick(&mut self, now_s: f64) -> bool {
        let before = self.next;
        self.show_until(now_s);
        self.next != before
    }

    /// Somebody else's words, or a note.
    pub fn note(&mut self, who: Who, text: &str) {
        self.whole(who, text);
        broken(text, ROW).into_iter().for_each(|row| self.row(who, row));
    }

    /// For screen readers alone.
    pub fn whole(&mut self, who: Who, text: &str) {
        self.said.push_back(Said { id: self.next, who, text: text.to_owned() });
        self.next += 1;
        while self.said.len() > KEPT {
            self.said.pop_front();
        }
    }

    pub fn rows(&self) -> Vec<&Row> {
        self.rows.iter().collect()
    }

    pub fn said(&self) -> Vec<&Said> {
        self.said.iter().collect()
    }

    fn row(&mut self, who: Who, text: String) {
        self.rows.push_back(Row { id: self.next, who, text });
        self.next += 1;
        while self.rows.len() > KEPT {
            self.rows.pop_front();
        }
    }

    fn show_until(&mut self, now_s: f64) {
        while let Some(under) = &mut self.under
            && under.blocks.front().is_some_and(|(due_s, _)| *due_s <= now_s)
        {
            let Some((_, rows)) = under.blocks.pop_front() else { return };
            self.stand(rows);
        }
    }

    fn finish(&mut self) {
        if let Some(under) = self.under.take() {
            under.blocks.into_iter().for_each(|(_, rows)| self.stand(rows));
        }
    }

    /// Rows that stand together. Above a single one nothing is left of the sentence before it.
    fn stand(&mut self, rows: Vec<String>) {
        (rows.len()..ROWS).for_each(|_| self.row(Who::Tool, String::new()));
        rows.into_iter().for_each(|row| self.row(Who::Tool, row));
    }
}

/// The text in rows that stand together: whole sentences, as many as fit; a sentence that is too long alone, two rows at a time.
fn together(text: &str) -> Vec<Vec<String>> {
    let mut blocks: Vec<Vec<String>> = Vec::new();
    let mut waiting = String::new();
    for sentence in sentences(text) {
        let joined = if waiting.is_empty() { sentence.to_owned() } else { format!("{waiting} {sentence}") };
        if broken(&joined, ROW).len() <= ROWS {
            waiting = joined;
            continue;
        }
        blocks.extend(in_rows(&waiting));
        sentence.clone_into(&mut waiting);
    }
    blocks.extend(in_rows(&waiting));
    blocks
}

fn in_rows(text: &str) -> Vec<Vec<String>> {
    if text.is_empty() { Vec::new() } else { broken(text, ROW).chunks(ROWS).map(<[String]>::to_vec).collect() }
}

/// The sentences of a text, each with its mark.
fn sentences(text: &str) -> Vec<&str> {
    let mut all = Vec::new();
    let mut from = 0;
    for (at, _) in text.match_indices(' ') {
        let before = text.get(from..at).unwrap_or_default().trim_end_matches(['”', '’', '"', ')']);
        if before.ends_with(['.', '?', '!', '…']) {
            all.push(text.get(from..at).unwrap_or_default().trim());
            from = at + 1;
        }
    }
    all.push(text.get(from..).unwrap_or_default().trim());
    all.retain(|sentence| !sentence.is_empty());
    all
}

/// The text in as few rows of at most `width` characters as can be, all about as long as each other.
fn broken(text: &str, width: usize) -> Vec<String> {
    let wrap = |width: usize| {
        textwrap::wrap(text, textwrap::Options::new(width).break_words(true))
            .into_iter()
            .map(|row| row.into_owned())
            .collect::<Vec<String>>()
    };
    let fewest = wrap(width).len();
    let even = text.chars().count().div_ceil(fewest.max(1));
    (even..width).map(wrap).find(|rows| rows.len() == fewest).unwrap_or_else(|| wrap(width))
}

#[cfg(test)]
#[path = "tests/captions.rs"]
mod tests;
