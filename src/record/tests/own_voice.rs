use super::*;

fn word(command: &str, takes: &[&[u8]]) -> StoredWord {
    let at = "2030-01-02T03:04:05+00:00[UTC]";
    StoredWord {
        command: command.into(),
        wording: command.into(),
        agreed_at: at.into(),
        said_at: at.into(),
        takes: takes.iter().map(|t| t.to_vec()).collect(),
    }
}

#[test]
fn words_come_back_and_a_second_enrolment_takes_their_place() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    assert_eq!(store.own_words("a").expect("reads"), []);
    store.keep_own_word("a", &word("stop", &[b"one", b"two"]), Source::Live).expect("keeps");
    store.keep_own_word("b", &word("stop", &[b"other"]), Source::Live).expect("keeps");
    store.keep_own_word("a", &word("stop", &[b"three"]), Source::Live).expect("keeps");
    store.keep_own_word("a", &word("no", &[b"four"]), Source::Live).expect("keeps");
    assert_eq!(store.own_words("a").expect("reads"), [word("no", &[b"four"]), word("stop", &[b"three"])]);
    assert_eq!(store.enrolled_clients().expect("reads"), ["a", "b"]);
}

#[test]
fn what_is_forgotten_is_nowhere_in_the_files() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let secret: Vec<u8> = (0..3_000_u32).flat_map(|n| n.wrapping_mul(2_654_435_761).to_le_bytes()).collect();
    store.keep_own_word("a", &word("stop", &[&secret]), Source::Live).expect("keeps");
    store.keep_own_word("b", &word("no", &[b"kept"]), Source::Live).expect("keeps");
    let found = || {
        let files = std::fs::read_dir(dir.path()).expect("lists").filter_map(|f| std::fs::read(f.ok()?.path()).ok());
        files.map(|bytes| bytes.windows(64).filter(|w| *w == &secret[6_000..6_064]).count()).sum::<usize>()
    };
    assert!(found() > 0, "the picture is in the files before");
    assert_eq!(store.forget_own_voice("a").expect("forgets"), 1);
    assert_eq!(found(), 0);
    assert_eq!(store.forget_own_voice("a").expect("forgets"), 0);
    assert_eq!(store.own_words("b").expect("reads").len(), 1);
}
