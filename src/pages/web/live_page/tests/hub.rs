use super::super::{Figure, Offer, Section, Stage};
use super::*;
use serde_json::Value;

fn figure(text: &str) -> Figure {
    Figure { text: text.into(), ..Figure::default() }
}

async fn next(reader: &mut Reader) -> Value {
    serde_json::from_str(&reader.next().await).expect("JSON")
}

#[tokio::test]
async fn a_reader_gets_the_whole_and_then_only_what_changed() {
    let hub = LiveHub::new();
    hub.set(Section::Stage, &Stage { heading: "Long ah".into(), ..Stage::default() });
    let mut reader = hub.reader().expect("a reader");
    let first = next(&mut reader).await;
    assert_eq!((first["whole"].as_bool(), first["stage"]["heading"].as_str()), (Some(true), Some("Long ah")));
    assert!(first.get("figure").is_some());
    hub.set(Section::Figure, &figure("1"));
    let second = next(&mut reader).await;
    assert_eq!((second["whole"].as_bool(), second["figure"]["text"].as_str()), (Some(false), Some("1")));
    assert!(second.get("stage").is_none() && second["seq"].as_u64() > first["seq"].as_u64());
}

#[tokio::test]
async fn a_slow_reader_gets_the_newest_and_nothing_twice() {
    let hub = LiveHub::new();
    let (mut slow, mut quick) = (hub.reader().expect("a reader"), hub.reader().expect("a reader"));
    next(&mut slow).await;
    next(&mut quick).await;
    for n in 1..=1000 {
        hub.set(Section::Figure, &figure(&n.to_string()));
        if n == 500 {
            assert_eq!(next(&mut quick).await["figure"]["text"], "500");
        }
    }
    assert_eq!(next(&mut slow).await["figure"]["text"], "1000");
    assert_eq!(next(&mut quick).await["figure"]["text"], "1000");
    hub.set(Section::Figure, &figure("1000"));
    let nothing = tokio::time::timeout(Duration::from_millis(20), slow.next()).await;
    assert!(nothing.is_err(), "the same again is no news: {nothing:?}");
}

#[test]
fn only_what_is_offered_can_be_asked_for() {
    let hub = LiveHub::new();
    assert_eq!(hub.ask(Asked::Command("stop".into())), Err(Refused::NotNow));
    let list =
        |labels: &[&str]| labels.iter().map(|label| Offer { name: label.replace(' ', "-"), label: (*label).into() }).collect::<Vec<_>>();
    hub.offer(&Offers { now: list(&["ready"]), more: list(&["how long"]), keys: vec!["done".into()], always: list(&["stop", "pause"]) });
    for words in ["ready", "how-long", "stop"] {
        assert_eq!(hub.ask(Asked::Command(words.into())), Ok(()));
        assert_eq!(hub.take_asked(), Some(Asked::Command(words.into())));
    }
    assert_eq!(hub.ask(Asked::Key("done".into())), Ok(()));
    for asked in
        [Asked::Command("done".into()), Asked::Command(String::new()), Asked::Command("how long".into()), Asked::Key("stop".into())]
    {
        assert_eq!(hub.ask(asked), Err(Refused::NotNow));
    }
    let refused = (0..100).map(|_| hub.ask(Asked::Command("stop".into()))).filter(Result::is_err).count();
    assert_eq!(refused, 100 - (MOST_ASKED - 1));
    assert!(!hub.whole().contains("keys"));
}

#[test]
fn so_many_pages_may_follow_and_no_more() {
    let hub = LiveHub::new();
    let readers: Vec<_> = std::iter::from_fn(|| hub.reader()).take(MOST_READERS + 5).collect();
    assert_eq!((readers.len(), hub.readers()), (MOST_READERS, MOST_READERS));
    drop(readers);
    assert_eq!(hub.readers(), 0);
    assert!(hub.reader().is_some());
}
