//! Names that become folders and files on another computer.

use super::error::HandoverError;

/// Longest name of a client or a file, characters.
const MAX_CHARS: usize = 60;

/// Names that one system or another takes for a device, whatever the ending (Windows; from memory).
const DEVICES: [&str; 4] = ["con", "prn", "aux", "nul"];

fn refuse(name: &str, why: &'static str, remedy: &'static str) -> HandoverError {
    let shown: String = name.chars().take(MAX_CHARS + 1).map(|c| if c.is_control() { '\u{FFFD}' } else { c }).collect();
    HandoverError::Name { shown, why, remedy }
}

/// Why a name cannot be a single part of a path everywhere; nothing where it can.
fn unfit(name: &str) -> Option<&'static str> {
    if name.is_empty() {
        return Some("it is empty");
    }
    if name.chars().count() > MAX_CHARS {
        return Some("it is longer than 60 characters");
    }
    if name.contains(['/', '\\', ':']) || name.contains("..") {
        return Some("it holds parts of a path");
    }
    if name.chars().any(|c| !(c.is_alphanumeric() || matches!(c, ' ' | '-' | '_' | '.'))) {
        return Some("it holds other characters than letters, digits, blanks, `-`, `_` and `.`");
    }
    if name.starts_with(['.', ' ', '-']) || name.ends_with(['.', ' ']) {
        return Some("it begins or ends with a mark or a blank");
    }
    let stem = name.split('.').next().unwrap_or_default().to_lowercase();
    let numbered = |of: &str| stem.strip_prefix(of).is_some_and(|rest| rest.len() == 1 && rest.chars().all(|c| c.is_ascii_digit()));
    (DEVICES.contains(&stem.as_str()) || numbered("com") || numbered("lpt")).then_some("some systems take it for a device")
}

/// Checks a client's short name, which becomes a folder.
///
/// # Errors
/// It could lead elsewhere, or not be a folder's name everywhere.
pub fn client_name(name: &str) -> Result<(), HandoverError> {
    unfit(name).map_or(Ok(()), |why| Err(refuse(name, why, "Use a short name such as `grandpa`; no real name is needed")))
}

/// Checks the name of a routine or word pack inside a package. It must end in `.toml` and not be taken by the package itself.
///
/// # Errors
/// It could lead elsewhere, is no TOML file's name, or is taken.
pub fn file_name(name: &str) -> Result<(), HandoverError> {
    let taken = name.to_lowercase() == super::settings::FILE_NAME;
    let why = unfit(name)
        .or_else(|| (!name.ends_with(".toml")).then_some("it does not end in `.toml`"))
        .or_else(|| taken.then_some("it is kept for the settings"));
    why.map_or(Ok(()), |why| Err(refuse(name, why, "Give the file a plain name such as `evening.toml`")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_names_of_any_language_pass() {
        for name in ["evening.toml", "Abend 2.toml", "соседи.toml", "a-b_c.v2.toml"] {
            assert_eq!(file_name(name), Ok(()), "{name}");
        }
        for name in ["grandpa", "client 7", "Омa"] {
            assert_eq!(client_name(name), Ok(()), "{name}");
        }
    }

    #[test]
    fn names_that_lead_elsewhere_or_nowhere_are_refused_with_a_remedy() {
        let long = format!("{}.toml", "a".repeat(60));
        let tricks = [
            "",
            ".",
            "..",
            "../evening.toml",
            "a/b.toml",
            "/etc/evening.toml",
            "a\\b.toml",
            "C:evening.toml",
            "evening..toml",
            ".hidden.toml",
            "eve\nning.toml",
            "eve\u{0}ning.toml",
            "evening.toml ",
            "evening.toml.",
            "-o.toml",
            "NUL.toml",
            "com1.toml",
            "a\u{202E}b.toml",
            "evening.txt",
            "evening",
            "Settings.toml",
            "a$b.toml",
            &long,
        ];
        for name in tricks {
            let text = file_name(name).expect_err(name).to_string();
            assert!(text.contains("plain name") && !text.contains('\n'), "{text}");
        }
        for name in ["", "..", "a/b", "con", "LPT1", "~", "a\tb"] {
            assert!(client_name(name).is_err(), "{name}");
        }
    }
}
