//! The handout for a terminal.

use std::fmt::Write;

use super::handout::Handout;

/// The handout as text, lines of at most `width` characters where words allow it.
#[must_use]
pub fn to_text(page: &Handout, width: usize) -> String {
    let mut text = format!("{}\n", page.title);
    let mut wrapped = |words: &str, first: &str, next: &str| {
        let options = textwrap::Options::new(width.max(30)).initial_indent(first).subsequent_indent(next);
        for line in textwrap::wrap(words, options) {
            // Writing to a string cannot fail.
            let _ = writeln!(text, "{}", line.trim_end());
        }
    };
    for line in &page.under_title {
        wrapped(line, "", "");
    }
    for item in &page.items {
        wrapped("", "", "");
        wrapped(&format!("{}: {}", item.name, item.dose), &format!("{:>2}. ", item.number), "    ");
        wrapped(&item.how, "    ", "    ");
        for phrase in &item.phrases {
            wrapped(&format!("“{phrase}”"), "      ", "      ");
        }
        if let Some(care) = &item.care {
            wrapped(care, "    ", "    ");
        }
        if let Some(not_for) = &item.not_for {
            wrapped(not_for, "    ", "    ");
        }
    }
    wrapped("", "", "");
    wrapped(&format!("{} {}", page.say_title, page.say), "", "  ");
    wrapped("", "", "");
    wrapped(&page.stop_title, "", "");
    for line in &page.stop {
        wrapped(line, "  - ", "    ");
    }
    wrapped("", "", "");
    wrapped(&page.foot, "", "");
    text
}
