//! How something written is said.

/// An answer as the lexicon has its words: lower case, no punctuation but apostrophes inside words.
pub fn spoken_form(answer: &str) -> String {
    let plain: String =
        answer.to_lowercase().replace('\u{2019}', "'").chars().map(|c| if c.is_alphanumeric() || c == '\'' { c } else { ' ' }).collect();
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}
