//! From bytes to a routine as it was typed: size, UTF-8, TOML, shape.

use serde::de::DeserializeOwned;
use serde_json::Value;
use toml::de::DeTable;

use super::fault::{FaultKind, Finder};
use super::file::RoutineFile;
use super::{schema, shape};

/// Larger files are no routines, bytes. A reader need not read further than one byte more.
pub const MAX_FILE_BYTES: usize = 1_000_000;

/// The text of a file; bytes that are no UTF-8 become U+FFFD and are named by the returned places (line, byte).
pub fn text_of(bytes: &[u8]) -> (String, Option<(usize, usize)>) {
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => (text.to_owned(), None),
        Err(bad) => {
            let at = bad.valid_up_to();
            let line = bytes.iter().take(at).filter(|&&byte| byte == b'\n').count() + 1;
            (String::from_utf8_lossy(bytes).into_owned(), Some((line, at)))
        }
    }
}

/// The file as typed, without what was faulty. Every fault of syntax and shape is noted.
pub(super) fn routine_file(text: &str, faults: &mut Finder<'_>) -> RoutineFile {
    typed_file(text, schema::of_file(), ("the routine", "step"), faults)
}

/// A file of the shape that `schema` describes, without what was faulty; `place` is what the whole is called in faults, and its main kind of table.
pub fn typed_file<T: DeserializeOwned + Default>(text: &str, schema: &Value, (place, table): (&str, &str), faults: &mut Finder<'_>) -> T {
    let (mut root, errors) = DeTable::parse_recoverable(text);
    let mut broken_lines = Vec::new();
    for error in &errors {
        // An error at the end of the text has no span.
        let span = error.span().unwrap_or(text.len()..text.len());
        let (line, _) = faults.place(span.start);
        // One slip often brings several errors; the first on a line says it.
        if broken_lines.last() != Some(&line) {
            broken_lines.push(line);
            let what = format!("this is not TOML: {}", one_line(error.message()));
            faults.add(FaultKind::Syntax, span, what, syntax_remedy(error.message(), table));
        }
    }
    let syntax_ok = errors.is_empty();
    let before = faults.list.len();
    let span = root.span().start..root.span().start;
    shape::fit_table(root.get_mut(), span, schema, place, faults);
    if !syntax_ok {
        // What is missing may stand in the broken line.
        let mut n = 0;
        faults.list.retain(|fault| {
            n += 1;
            n <= before || (fault.kind != FaultKind::Missing && !broken_lines.contains(&fault.line))
        });
    }
    match T::deserialize(toml::de::Deserializer::from(root)) {
        Ok(file) => file,
        Err(error) => {
            // The shape fits, so this is a value that the type cannot hold.
            faults.add(FaultKind::WrongType, error.span().unwrap_or(0..0), one_line(error.message()), "Give a value that can be read.");
            T::default()
        }
    }
}

fn one_line(message: &str) -> String {
    message.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn syntax_remedy(message: &str, table: &str) -> String {
    if message.contains("duplicate key") {
        "Keep one of the two lines.".to_owned()
    } else if message.contains("string") || message.contains("quote") {
        "Put the text between two straight quotes, as in `title = \"Evening routine\"`.".to_owned()
    } else if message.contains("newline") {
        "Give each setting a line of its own, as in `repetitions = 3`.".to_owned()
    } else {
        format!("Write each setting as `key = value`, texts in straight quotes, and each {table} under a line `[[{table}]]`.")
    }
}
