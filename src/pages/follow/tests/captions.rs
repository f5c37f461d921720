use super::*;

fn texts(captions: &Captions) -> Vec<&str> {
    captions.rows().into_iter().map(|row| row.text.as_str()).filter(|text| !text.is_empty()).collect()
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

/// What stands on the page: the last two rows.
fn standing(captions: &Captions) -> String {
    let rows = captions.rows();
    let last = rows.iter().skip(rows.len().saturating_sub(ROWS)).map(|row| row.text.as_str());
    last.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
}

#[test]
fn whole_sentences_stand_together_and_nothing_is_cut_that_fits() {
    let short = "Keep both shoulders down. Lift only your head, look at your toes, and keep it up. Breathe.";
    let mut captions = Captions::default();
    captions.began(0.0, short);
    let mut seen = vec![standing(&captions)];
    for n in 1..100 {
        captions.tick(f64::from(n) * 0.1);
        if seen.last() != Some(&standing(&captions)) {
            seen.push(standing(&captions));
        }
    }
    assert_eq!(seen, ["Keep both shoulders down. Lift only your head, look at your toes, and keep it up.", "Breathe."]);
    // One that is too long for two rows is parted, and nothing of it is lost.
    let long = "Sit up, put the tip of your tongue gently between your front teeth, hold it there with your lips closed, and swallow once with it held.";
    assert!(together(long).len() == 2 && together(long).iter().all(|rows| rows.len() <= ROWS), "{:?}", together(long));
    assert_eq!(together(long).concat().join(" "), long);
    assert_eq!(sentences("He said “go.” Then? Yes… 3.5 s."), ["He said “go.”", "Then?", "Yes…", "3.5 s."]);
}

#[test]
fn rows_come_as_they_are_said_and_the_rest_at_the_end() {
    let mut captions = Captions::default();
    captions.began(10.0, LONG);
    assert_eq!(standing(&captions), "I'm a practice aid. I don't make a diagnosis.", "the first sentences at once, no other");
    assert!(!captions.tick(10.5));
    assert!(captions.tick(13.0));
    assert_ne!(standing(&captions), "I'm a practice aid. I don't make a diagnosis.");
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
    let waiting = |captions: &Captions| captions.under.as_ref().map_or(0, |under| under.blocks.len());
    let all = together(LONG).len();
    captions.tick(began_s + 4.0);
    assert_eq!(waiting(&captions), all - 1, "a slow voice is still in its first sentences");
    captions.tick(began_s + 9.0);
    assert_eq!(waiting(&captions), all - 2);
}

#[test]
fn what_was_hushed_is_not_shown() {
    let mut captions = Captions::default();
    captions.began(0.0, LONG);
    captions.hushed();
    captions.tick(60.0);
    captions.began(60.0, "I'll be quiet.");
    assert!(standing(&captions) == "I'll be quiet." && texts(&captions).len() == 3, "{:?}", texts(&captions));
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
