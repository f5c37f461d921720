use super::*;
use crate::samples::{at, begin, begun, ended, hold, keep, time};
use std::sync::Arc;

#[test]
fn whole_practices_come_back_in_the_order_in_which_they_began() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let late = keep(
        &mut store,
        "grandpa",
        Source::Live,
        "2026-03-02T18:30:00+01:00[Europe/Berlin]",
        &[begun(), hold(20.0, at(1, 1, 1), "long-ah", 8.0, true), ended(40.0)],
    );
    let early = keep(&mut store, "grandpa", Source::Replay, "2026-03-01T18:30:00+01:00[Europe/Berlin]", &[begun()]);
    keep(&mut store, "grandma", Source::Live, "2026-03-01T09:00:00+01:00[Europe/Berlin]", &[begun()]);
    begin(&mut store, "nobody", Source::Live, "2026-03-01T09:00:00+01:00[Europe/Berlin]").expect("begins");
    assert_eq!(store.clients().expect("clients"), ["grandma", "grandpa", "nobody"]);
    assert_eq!(store.kept_heads(None).expect("heads").len(), 3, "one without entries is no practice");
    let heads = store.kept_heads(Some("grandpa")).expect("heads");
    assert_eq!(heads.iter().map(|head| head.id).collect::<Vec<_>>(), [early, late]);
    assert!(heads[0].end.is_none() && heads[0].source == Source::Replay);
    assert!(Arc::ptr_eq(&heads[0].routine_text, &heads[1].routine_text));
    let (ended_at, reason) = heads[1].end.clone().expect("ended");
    assert_eq!((ended_at, reason.as_str()), (time("2026-03-02T18:30:40+01:00[Europe/Berlin]"), "finished"));
    let whole = store.kept(heads[1].clone()).expect("whole");
    assert_eq!(whole.parts.len(), 1);
    assert_eq!(whole.parts[0].entries.iter().map(|kept| kept.number).collect::<Vec<_>>(), [1, 2, 3]);
    assert!(whole.parts[0].entries[1].line.contains("\"duration_s\":8.0"));
}

#[test]
fn parts_keep_their_own_clocks() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let session = keep(&mut store, "grandpa", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &[begun()]);
    drop(store);
    let mut store = Store::open(dir.path()).expect("opens");
    store.resume(session, &time("2026-03-02T18:40:00+01:00[Europe/Berlin]")).expect("resumes");
    store.append(session, &hold(9.0, at(1, 1, 1), "long-ah", 8.0, true)).expect("keeps");
    let head = store.kept_heads(None).expect("heads").remove(0);
    assert!(head.under_way, "this process leads it");
    let whole = store.kept(head).expect("whole");
    assert_eq!(whole.parts[1].started_at, time("2026-03-02T18:40:00+01:00[Europe/Berlin]"));
    assert_eq!(whole.parts[1].entries[0].number, 2);
}
