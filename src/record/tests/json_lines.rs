use super::*;
use crate::samples::{at, begun, ended, hold};

fn entries() -> [Entry; 3] {
    [begun(), hold(9.0, at(1, 1, 1), "long-ah", 4.0, true), hold(19.0, at(1, 1, 2), "long-ah", 5.0, true)]
}

#[test]
fn the_same_practice_gives_the_same_bytes_and_another_is_never_mixed_in() {
    let dir = tempfile::tempdir().expect("a folder");
    let paths = [dir.path().join("a.jsonl"), dir.path().join("b.jsonl")];
    std::fs::write(&paths[1], "").expect("an empty file is as good as none");
    for path in &paths {
        let mut lines = JsonLines::create(path).expect("creates");
        entries().iter().for_each(|entry| lines.append(entry).expect("writes"));
    }
    let read = |path: &Path| std::fs::read(path).expect("reads");
    assert_eq!(read(&paths[0]), read(&paths[1]));
    let before = read(&paths[0]);
    let text = JsonLines::create(&paths[0]).expect_err("refuses").to_string();
    assert!(text.contains("a.jsonl") && text.contains("another practice"), "{text}");
    assert_eq!(read(&paths[0]), before);
}

#[test]
fn a_file_cut_anywhere_is_mended_when_its_practice_goes_on() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("a.jsonl");
    let whole = journal_text(&entries()).expect("text");
    for cut in 0..=whole.len() {
        std::fs::write(&path, whole.get(..cut).expect("ASCII")).expect("writes");
        let mut lines = JsonLines::resume(&path, &entries()).expect("resumes");
        lines.append(&ended(30.0)).expect("writes");
        let mut wanted = entries().to_vec();
        wanted.push(ended(30.0));
        assert_eq!(std::fs::read_to_string(&path).expect("reads"), journal_text(&wanted).expect("text"), "cut at {cut}");
    }
}

#[test]
fn a_file_of_another_practice_is_not_gone_on_with() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("a.jsonl");
    for other in ["{\"a\":1}\n".to_owned(), journal_text(&[begun(), ended(3.0)]).expect("text")] {
        std::fs::write(&path, &other).expect("writes");
        assert!(matches!(JsonLines::resume(&path, &entries()), Err(RecordError::JournalInUse { .. })));
        assert_eq!(std::fs::read_to_string(&path).expect("reads"), other);
    }
}

#[test]
fn a_file_that_cannot_be_written_is_named() {
    let dir = tempfile::tempdir().expect("a folder");
    let text = JsonLines::create(&dir.path().join("none/a.jsonl")).expect_err("refuses").to_string();
    assert!(text.contains("none/a.jsonl") && text.contains("--journal"), "{text}");
}
