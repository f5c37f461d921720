use super::*;
use crate::Store;
use crate::encrypt::tests::filled;

#[test]
fn a_file_that_is_there_is_never_written_over() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    let store = Store::open(dir.path()).expect("opens");
    let to = dir.path().join("there");
    std::fs::write(&to, "somebody's").expect("writes");
    assert!(export(&store.connection, &store.path(), &to, None).expect_err("refuses").to_string().contains("left as it is"));
    assert_eq!(std::fs::read(&to).expect("reads"), b"somebody's");
}

#[test]
fn a_copy_is_of_one_instant_while_another_program_writes() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    let done = std::sync::atomic::AtomicBool::new(false);
    std::thread::scope(|scope| {
        let (done, folder) = (&done, dir.path());
        scope.spawn(move || {
            let mut store = Store::open(folder).expect("opens");
            while !done.load(std::sync::atomic::Ordering::Relaxed) {
                crate::samples::keep(
                    &mut store,
                    "grandpa",
                    crate::Source::Replay,
                    "2026-11-24T19:00:00+01:00[Europe/Berlin]",
                    &[crate::samples::begun()],
                );
            }
        });
        let store = Store::open(folder).expect("opens");
        for n in 0..5 {
            let to = folder.join(format!("copy-{n}"));
            let made = export(&store.connection, &store.path(), &to, None);
            if n == 4 || made.is_err() {
                done.store(true, std::sync::atomic::Ordering::Relaxed);
            }
            made.expect("copies");
            // Every session in it has its entry but the one whose begin was the last thing seen.
            let db = Connection::open(&to).expect("opens");
            let torn: i64 = db
                .query_row("SELECT count(*) FROM session WHERE id NOT IN (SELECT session FROM entry)", [], |row| row.get(0))
                .expect("counts");
            assert!(torn <= 1, "{torn}");
        }
    });
}

#[test]
fn what_replaces_a_file_is_whole_and_the_old_bytes_are_gone() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("file");
    std::fs::write(&path, "old secret").expect("writes");
    let old = File::open(&path).expect("opens");
    replace_file(&path, b"new").expect("replaces");
    assert_eq!(std::fs::read(&path).expect("reads"), b"new");
    let mut left = Vec::new();
    std::io::Read::read_to_end(&mut &old, &mut left).expect("reads");
    assert_eq!(left, vec![0; 10], "the old file's blocks");
}
