use super::*;
use crate::Source;
use crate::samples::{begun, ended, keep};

#[test]
fn the_history_comes_a_page_at_a_time_newest_first() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let ids: Vec<SessionId> = (1..=5)
        .map(|day| {
            let client = if day % 2 == 1 { "anna" } else { "Bert" };
            keep(&mut store, client, Source::Live, &format!("2026-11-0{day}T19:00:00+01:00[Europe/Berlin]"), &[begun(), ended(60.0)])
        })
        .collect();
    let page = |client: Option<&str>, skip| -> Vec<SessionId> {
        store.history_page(client, skip, 2).expect("lists").iter().map(|row| row.id).collect()
    };
    assert_eq!(page(None, 0), [ids[4], ids[3]]);
    assert_eq!(page(None, 4), [ids[0]]);
    assert!(page(None, 5).is_empty());
    assert_eq!(page(Some("anna"), 1), [ids[2], ids[0]]);
    assert_eq!((store.practices(None).expect("counts"), store.practices(Some("Bert")).expect("counts")), (5, 2));
    let parts = store.parts_of(ids[0]).expect("lists");
    assert_eq!(parts.iter().map(|part| (part.number, part.entries)).collect::<Vec<_>>(), [(1, 2)]);
}
