use super::*;

fn texts(captions: &Captions) -> Vec<&str> {
    captions.rows().into_iter().map(|row| row.text.as_str()).collect()
}

const LONG: &str =
    "I'm a practice aid. I don't make a diagnosis. What your own clinician says, and the rules where you are, come before anything I say.";

#[test]
fn rows_are_short_and_even_and_nothing_is_lost() {
    for text in [LONG, "Rest.", "", "Supercalifragilisticexpialidociousandevenmorethanthat", "naïve café – “so”"] {
        let rows = broken(text, ROW);
        assert!(rows.iter().all(|row| row.chars().count() <= ROW), "{rows:?}");
        let squeezed = |text: &str| text.split_whitespace().collect::<String>();
        assert_eq!(squeezed(&rows.concat()), squeezed(text));
    }
    let rows = broken(LONG, ROW);
    assert_eq!(rows.len(), 4, "{rows:?}");
}

#[test]
fn rows_come_as_they_are_said_and_the_rest_at_the_end() {
    let mut captions = Captions::default();
    captions.began(10.0, LONG);
    assert_eq!(texts(&captions).len(), 1, "the first at once, no other");
    assert!(!captions.tick(10.5));
    assert!(captions.tick(13.0));
    assert_eq!(texts(&captions).len(), 2);
    captions.ended(16.0);
    assert_eq!(texts(&captions).join(" "), LONG);
    assert_eq!(captions.said().len(), 1);
}

#[test]
fn a_voice_is_timed_so_that_the_next_rows_come_with_it() {
    let mut captions = Captions::default();
    for n in 0..20 {
        let at_s = f64::from(n) * 30.0;
        captions.began(at_s, LONG);
        captions.ended(at_s + 20.0);
    }
    let began_s = 1_000.0;
    captions.began(began_s, LONG);
    let shown = |captions: &Captions| captions.under.as_ref().map_or(4, |under| 4 - under.rows.len());
    captions.tick(began_s + 4.0);
    assert_eq!(shown(&captions), 1, "a slow voice is still in its first row");
    captions.tick(began_s + 5.5);
    assert_eq!(shown(&captions), 2);
}

#[test]
fn what_was_hushed_is_not_shown() {
    let mut captions = Captions::default();
    captions.began(0.0, LONG);
    captions.hushed();
    captions.tick(60.0);
    captions.began(60.0, "I'll be quiet.");
    assert_eq!(texts(&captions).len(), 2, "{:?}", texts(&captions));
    captions.note(Who::Client, "You: “stop”");
    let last = captions.rows().last().map(|row| (row.who, row.text.clone()));
    assert_eq!(last, Some((Who::Client, "You: “stop”".to_owned())));
}

#[test]
fn little_is_kept() {
    let mut captions = Captions::default();
    for n in 0..100 {
        captions.began(f64::from(n), LONG);
    }
    assert!(captions.rows().len() == KEPT && captions.said().len() == KEPT);
}
