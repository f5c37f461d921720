//! The listener with a scripted decoder: words appear when their sound has been taken in.

use super::*;

/// Knows what is said and when, in s from the start of the stream; gives it out with the lag of a network.
struct Scripted {
    said: Vec<(&'static str, f64, f64, f64)>,
    /// Clock at the first sample since the restart; found out by the marks in the sound.
    from_s: Option<f64>,
    taken: usize,
}

/// Each sample tells its batch's number on the clock, so that the scripted decoder knows where it is.
fn batch(at_s: f64) -> Vec<i16> {
    vec![(at_s / 0.03).round() as i16; 480]
}

impl Scripted {
    fn words_until(&self, lag_s: f64) -> Vec<Word> {
        let Some(from_s) = self.from_s else { return Vec::new() };
        let heard_s = from_s + seconds(self.taken) - lag_s;
        let whole = self.said.iter().filter(|w| w.1 >= from_s - 1e-6 && w.2 <= heard_s + 1e-6);
        whole
            .map(|&(text, start_s, end_s, confidence)| Word {
                text: text.into(),
                start_s: start_s - from_s,
                end_s: end_s - from_s,
                confidence,
            })
            .collect()
    }
}

impl Decoder for Scripted {
    fn restart(&mut self) {
        (self.from_s, self.taken) = (None, 0);
    }
    fn accept(&mut self, samples: &[i16]) -> bool {
        if let (None, Some(&first)) = (self.from_s, samples.first()) {
            self.from_s = Some(f64::from(first) * 0.03);
        }
        self.taken += samples.len();
        false
    }
    fn partial_text(&mut self) -> String {
        self.words_until(0.3).iter().map(|word| word.text.as_str()).collect::<Vec<_>>().join(" ")
    }
    fn partial(&mut self) -> Vec<Word> {
        self.words_until(0.3)
    }
    fn finish(&mut self) -> Vec<Word> {
        self.words_until(0.0)
    }
    fn again(&mut self, _: &[i16]) -> Vec<Word> {
        self.words_until(0.0)
    }
}

/// Runs five seconds of a scene: loud where a word or one of `noises` is.
fn run(tuning: Tuning, said: &[(&'static str, f64, f64, f64)], noises: &[(f64, f64)]) -> Vec<(String, f64)> {
    run_and_why(tuning, said, noises).0
}

/// The same, with what was considered and what came of it.
fn run_and_why(
    tuning: Tuning,
    said: &[(&'static str, f64, f64, f64)],
    noises: &[(f64, f64)],
) -> (Vec<(String, f64)>, Vec<(String, Option<Verdict>)>) {
    let choices = [vec!["stop".to_owned(), "stop please".to_owned()], vec!["go".to_owned()], vec!["go on".to_owned()]];
    let mut listener = Listener::new(Scripted { said: said.to_vec(), from_s: None, taken: 0 }, &choices, tuning);
    let mut heard = Vec::new();
    for i in 0..166 {
        let at_s = f64::from(i) * 0.03;
        let inside = |&(from_s, to_s): &(f64, f64)| at_s >= from_s - 1e-6 && at_s < to_s - 1e-6;
        let loud = said.iter().any(|w| inside(&(w.1, w.2))) || noises.iter().any(inside);
        let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
        heard.extend(listener.hear(at_s, &batch(at_s), level).map(|d| (d.phrase.text, d.decided_s)));
    }
    (heard, listener.take_candidates().into_iter().map(|candidate| (candidate.text, candidate.verdict)).collect())
}

#[test]
fn it_tells_why_a_phrase_counted_or_not() {
    use Verdict::{NotYet, OtherSpeech, Taken, Unsure, WaitsForMore};
    let why = |said: &[(&'static str, f64, f64, f64)]| -> Vec<Verdict> {
        run_and_why(Tuning::MAIN, said, &[]).1.into_iter().map(|(_, verdict)| verdict.expect("known by now")).collect()
    };
    assert_eq!(why(&[("stop", 0.9, 1.2, 1.0)]), [Taken]);
    assert_eq!(why(&[("stop", 0.9, 1.2, 0.35)]), [NotYet, Unsure]);
    assert_eq!(why(&[("go", 0.9, 1.2, 1.0)]), [WaitsForMore, Taken]);
    assert_eq!(why(&[(UNKNOWN, 0.6, 0.9, 1.0), ("stop", 0.93, 1.2, 1.0), (UNKNOWN, 1.23, 1.8, 1.0)]), [OtherSpeech]);
    assert_eq!(why(&[("stop", 0.9, 1.2, 1.0), ("go", 1.25, 1.5, 1.0)]), [Verdict::NoPhrase]);
    assert_eq!(why(&[(UNKNOWN, 0.6, 0.9, 1.0)]), [], "nothing known, nothing to tell");
}

fn texts(heard: &[(String, f64)]) -> Vec<&str> {
    heard.iter().map(|h| h.0.as_str()).collect()
}

#[test]
fn a_sure_phrase_is_taken_soon_after_its_end_and_sooner_on_the_fast_path() {
    let said = [("stop", 0.9, 1.2, 1.0)];
    let (main, fast) = (run(Tuning::MAIN, &said, &[]), run(Tuning::FAST, &said, &[]));
    assert_eq!((texts(&main), texts(&fast)), (vec!["stop"], vec!["stop"]));
    assert!((main[0].1 - 1.2 - 0.24).abs() < 0.031, "{main:?}");
    assert!((fast[0].1 - 1.2 - 0.12).abs() < 0.031, "{fast:?}");
}

#[test]
fn what_may_mean_more_waits_and_what_may_not_does_not() {
    let waits = run(Tuning::MAIN, &[("go", 0.9, 1.2, 1.0)], &[]);
    assert_eq!(texts(&waits), ["go"]);
    assert!(waits[0].1 > 1.2 + 0.6, "{waits:?}");
    let paused = run(Tuning::MAIN, &[("go", 0.9, 1.2, 1.0), ("on", 1.62, 1.8, 1.0)], &[]);
    assert_eq!(texts(&paused), ["go on"]);
}

#[test]
fn a_doubtful_phrase_is_reported_only_at_the_end() {
    let heard = run(Tuning::MAIN, &[("stop", 0.9, 1.2, 0.5)], &[]);
    assert_eq!(texts(&heard), ["stop"]);
    assert!(heard[0].1 > 1.2 + 0.6, "{heard:?}");
    assert_eq!(run(Tuning::MAIN, &[("stop", 0.9, 1.2, 0.35)], &[]), []);
}

#[test]
fn clicks_and_words_that_do_not_stand_out_are_nothing() {
    let quiet_word = |noises: &[(f64, f64)]| {
        let choices = [vec!["stop".to_owned()]];
        let said = vec![("stop", 0.9, 1.2, 1.0)];
        let mut listener = Listener::new(Scripted { said, from_s: None, taken: 0 }, &choices, Tuning::MAIN);
        (0..166).any(|i| {
            let at_s = f64::from(i) * 0.03;
            let loud = noises.iter().any(|n| at_s >= n.0 - 1e-6 && at_s < n.1 - 1e-6);
            let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
            listener.hear(at_s, &batch(at_s), level).is_some()
        })
    };
    assert!(!quiet_word(&[]), "below the gate");
    assert!(!quiet_word(&[(0.9, 0.96)]), "a click of 0.06 s");
    assert!(quiet_word(&[(0.9, 1.2)]));
}

#[test]
fn in_lasting_noise_a_standing_phrase_is_taken() {
    let heard = run(Tuning::FAST, &[("stop", 1.5, 1.8, 1.0)], &[(0.3, 5.0)]);
    assert_eq!(texts(&heard), ["stop"]);
    assert!(heard[0].1 < 1.8 + 0.9, "{heard:?}");
}

#[test]
fn stop_after_a_vowel_of_several_seconds_is_heard() {
    let said = [(UNKNOWN, 0.3, 0.6, 1.0), ("stop", 4.2, 4.5, 1.0)];
    assert_eq!(texts(&run(Tuning::FAST, &said, &[(0.3, 4.05)])), ["stop"]);
}

#[test]
fn running_talk_around_the_word_refuses_it() {
    let said = [(UNKNOWN, 0.6, 0.9, 1.0), ("stop", 0.93, 1.2, 1.0), (UNKNOWN, 1.23, 1.8, 1.0)];
    assert_eq!(run(Tuning::MAIN, &said, &[]), []);
    assert_eq!(run(Tuning::FAST, &said, &[]), []);
}

#[test]
fn the_end_of_a_long_sentence_is_judged_with_what_went_before() {
    // Cut after four seconds, of which the last word alone is left.
    let said = [(UNKNOWN, 0.3, 4.35, 1.0), ("stop", 4.38, 4.6, 1.0)];
    assert_eq!(run(Tuning::MAIN, &said, &[]), []);
    assert_eq!(texts(&run(Tuning::FAST, &said, &[])), ["stop"], "it must get through, also out of a vowel");
    let alone = [(UNKNOWN, 0.3, 3.9, 1.0), ("stop", 4.2, 4.5, 1.0)];
    assert_eq!(texts(&run(Tuning::MAIN, &alone, &[(3.9, 4.2)])), ["stop"], "at a distance from the words before it, over a noise");
}

#[test]
fn an_unsure_phrase_said_twice_counts_as_sure() {
    let unsure = |second_s: f64| run(Tuning::MAIN, &[("go on", 0.3, 0.6, 0.35), ("go on", second_s, second_s + 0.3, 0.35)], &[]);
    assert_eq!(texts(&unsure(2.4)), ["go on"]);
    assert_eq!(unsure(3.9), [], "too late");
    let others = run(Tuning::MAIN, &[("go on", 0.3, 0.6, 0.35), ("stop", 2.4, 2.7, 0.35)], &[]);
    assert_eq!(others, [], "another phrase");
}

#[test]
fn an_urgent_phrase_of_several_words_is_reported_at_less_sureness_but_not_over_our_own_voice() {
    let choices = [vec!["i'm choking".to_owned(), "choking".to_owned()], vec!["go on".to_owned()]];
    let run = |text: &'static str, confidence: f64, over_own_voice: bool| {
        let said = [(text, 0.9, 1.4, confidence)];
        let mut listener =
            Listener::new(Scripted { said: said.to_vec(), from_s: None, taken: 0 }, &choices, Tuning::MAIN).with_urgent(vec![0]);
        let mut heard = Vec::new();
        for i in 0..100 {
            let at_s = f64::from(i) * 0.03;
            let loud = (0.9..1.4).contains(&at_s);
            listener.over_own_voice(over_own_voice && loud);
            let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
            heard.extend(listener.hear(at_s, &batch(at_s), level).map(|d| (d.phrase.text, d.phrase.confidence)));
        }
        heard
    };
    assert_eq!(run("i'm choking", 0.35, false), [("i'm choking".to_owned(), ASK_CONFIDENCE)]);
    assert_eq!(run("choking", 0.35, false).len(), 0, "a single word is said too easily");
    assert_eq!(run("go on", 0.35, false).len(), 0, "nor is everything urgent");
    assert_eq!(run("i'm choking", 0.35, true).len(), 0, "what is left of our own voice is no one's");
    assert_eq!(run("i'm choking", 1.0, true).len(), 1);
}

#[test]
fn talk_before_a_phrase_and_sound_beside_it_speak_against_it_on_the_main_path() {
    // Not quite half certain, after three seconds of talk that ends 0.9 s before it.
    let said = [(UNKNOWN, 0.3, 2.9, 1.0), ("stop", 3.8, 4.1, 0.42)];
    assert_eq!(run(Tuning::MAIN, &said, &[]), []);
    assert_eq!(texts(&run(Tuning::FAST, &said, &[])), ["stop"]);
    assert_eq!(texts(&run(Tuning::MAIN, &said[1..], &[])), ["stop"]);
}

#[test]
fn a_word_at_the_very_beginning_of_a_recording_stands_alone() {
    let first_word = |begins: bool| {
        let choices = [vec!["stop".to_owned()]];
        let said = vec![("stop", 0.0, 0.3, 1.0)];
        let mut listener = Listener::new(Scripted { said, from_s: None, taken: 0 }, &choices, Tuning::MAIN);
        if begins {
            listener.begin();
        }
        (0..60).any(|i| {
            let at_s = f64::from(i) * 0.03;
            let loud = at_s < 0.3 - 1e-6;
            let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
            listener.hear(at_s, &batch(at_s), level).is_some()
        })
    };
    assert!(first_word(true));
    assert!(!first_word(false), "what was before is not known");
}

/// Answers of a list may follow each other in one breath; a command, here "stop" (choice 0), keeps standing alone.
#[test]
fn a_list_is_heard_word_by_word_and_a_command_in_it_is_not() {
    let choices = [vec!["stop".to_owned()], vec!["dog".to_owned(), "dogs".to_owned()], vec!["grey cat".to_owned()]];
    let lists = |said: &[(&'static str, f64, f64, f64)]| {
        let mut listener =
            Listener::new(Scripted { said: said.to_vec(), from_s: None, taken: 0 }, &choices, Tuning::MAIN).with_lists(Some(1));
        let mut heard = Vec::new();
        for i in 0..166 {
            let at_s = f64::from(i) * 0.03;
            let loud = said.iter().any(|word| at_s >= word.1 - 1e-6 && at_s < word.2 - 1e-6);
            let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
            let decided = listener.hear(at_s, &batch(at_s), level);
            heard.extend(decided.into_iter().chain(listener.take_further()).map(|decided| decided.phrase.text));
        }
        heard
    };
    assert_eq!(
        lists(&[("dogs", 0.6, 0.9, 1.0), ("grey", 0.96, 1.2, 0.9), ("cat", 1.2, 1.5, 0.9), ("dog", 1.56, 1.8, 0.8)]),
        ["dogs", "grey cat", "dog"]
    );
    assert_eq!(
        lists(&[("dogs", 0.6, 0.9, 1.0), ("stop", 0.96, 1.2, 1.0), ("dog", 1.26, 1.5, 0.3)]),
        ["dogs"],
        "no command, nothing unsure"
    );
    assert_eq!(lists(&[("stop", 0.9, 1.2, 1.0)]), ["stop"], "alone it is heard as ever");
}

/// Takes every window for one phrase.
struct SaysAlways {
    phrases: Vec<String>,
    heard: Vec<f64>,
    asked: usize,
}

impl WordSpotter for SaysAlways {
    fn phrases(&self) -> &[String] {
        &self.phrases
    }
    fn hear(&mut self, _: &[i16]) -> Vec<f64> {
        self.asked += 1;
        self.heard.clone()
    }
}

/// Runs five seconds of a scene beside a second ear that is so sure of "stop"; gives what was heard and how often it was asked.
fn beside_a_second_ear(said: &[(&'static str, f64, f64, f64)], noises: &[(f64, f64)], stop: f64) -> (Vec<String>, usize) {
    let choices = [vec!["stop".to_owned(), "stop please".to_owned()], vec!["yes".to_owned()]];
    let ear =
        Rc::new(RefCell::new(SaysAlways { phrases: vec!["yes".into(), "stop".into()], heard: vec![0.0, stop, 1.0 - stop], asked: 0 }));
    let mut listener = Listener::new(Scripted { said: said.to_vec(), from_s: None, taken: 0 }, &choices, Tuning::MAIN)
        .with_second_ear(Some(Rc::clone(&ear) as Rc<RefCell<dyn WordSpotter>>), false);
    let mut heard = Vec::new();
    for i in 0..166 {
        let at_s = f64::from(i) * 0.03;
        let inside = |&(from_s, to_s): &(f64, f64)| at_s >= from_s - 1e-6 && at_s < to_s - 1e-6;
        let loud = said.iter().any(|w| inside(&(w.1, w.2))) || noises.iter().any(inside);
        let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
        heard.extend(listener.hear(at_s, &batch(at_s), level).map(|d| d.phrase.text));
    }
    let asked = ear.borrow().asked;
    (heard, asked)
}

#[test]
fn the_second_ear_wins_a_word_that_stands_alone_and_that_the_recogniser_missed() {
    assert_eq!(beside_a_second_ear(&[], &[(0.9, 1.3)], 0.999).0, ["stop"]);
    assert_eq!(beside_a_second_ear(&[], &[(0.9, 1.3)], 0.8).0, [""; 0], "not sure enough");
    assert_eq!(beside_a_second_ear(&[], &[(0.9, 1.3), (2.0, 2.3)], 0.999).0, ["stop", "stop"], "each utterance by itself");
    assert_eq!(beside_a_second_ear(&[], &[(0.9, 1.3), (1.45, 1.9)], 0.999).0.len(), 1, "two loud parts close together are one");
}

#[test]
fn the_second_ear_takes_nothing_away_and_is_not_asked_of_what_the_recogniser_found() {
    assert_eq!(beside_a_second_ear(&[("stop", 0.9, 1.2, 1.0)], &[], 0.001), (vec!["stop".to_owned()], 0));
}

#[test]
fn the_second_ear_wins_no_phrase_of_several_words() {
    let choices = [vec!["how long".to_owned()]];
    let ear = SaysAlways { phrases: vec!["how long".into()], heard: vec![1.0, 0.0], asked: 0 };
    let mut listener = Listener::new(Scripted { said: Vec::new(), from_s: None, taken: 0 }, &choices, Tuning::MAIN)
        .with_second_ear(Some(Rc::new(RefCell::new(ear)) as Rc<RefCell<dyn WordSpotter>>), false);
    for i in 0..100 {
        let at_s = f64::from(i) * 0.03;
        let loud = (0.9..1.5).contains(&at_s);
        let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
        assert_eq!(listener.hear(at_s, &batch(at_s), level), None, "at {at_s}");
    }
}

/// Over our own voice, where the recogniser hears this from 0.9 to 1.4 s; gives what was heard and how often the second ear was asked.
fn over_our_own_voice(said: &[(&'static str, f64, f64, f64)], phrase: &str, this: f64) -> (Vec<String>, usize) {
    let choices = [vec!["stop".to_owned()], vec!["help me".to_owned()]];
    let ear = Rc::new(RefCell::new(SaysAlways { phrases: vec![phrase.into()], heard: vec![this, 1.0 - this], asked: 0 }));
    let mut listener = Listener::new(Scripted { said: said.to_vec(), from_s: None, taken: 0 }, &choices, Tuning::MAIN)
        .with_urgent(vec![1])
        .with_second_ear(Some(Rc::clone(&ear) as Rc<RefCell<dyn WordSpotter>>), false);
    let mut heard = Vec::new();
    for i in 0..100 {
        let at_s = f64::from(i) * 0.03;
        let loud = (0.9..1.4).contains(&at_s);
        listener.over_own_voice(at_s < 1.2);
        let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
        heard.extend(listener.hear(at_s, &batch(at_s), level).map(|d| d.phrase.text));
    }
    let asked = ear.borrow().asked;
    (heard, asked)
}

#[test]
fn over_our_own_voice_the_second_ear_wins_a_call_for_help_where_the_recogniser_heard_somebody() {
    let somebody = [(UNKNOWN, 0.9, 1.4, 1.0)];
    assert_eq!(over_our_own_voice(&somebody, "help me", 0.9).0, ["help me"]);
    assert_eq!(over_our_own_voice(&somebody, "help me", 0.8).0, [""; 0], "not sure enough");
    assert_eq!(over_our_own_voice(&somebody, "stop", 0.99).0, [""; 0], "nobody is in trouble");
    assert_eq!(over_our_own_voice(&[], "help me", 0.99), (vec![], 0), "what is left of us is no one");
    assert_eq!(over_our_own_voice(&[("help me", 0.9, 1.4, 1.0)], "stop", 0.99), (vec!["help me".to_owned()], 0), "found already");
}

#[test]
fn talk_costs_the_second_ear_nothing() {
    let said = [(UNKNOWN, 0.6, 3.0, 1.0)];
    assert_eq!(beside_a_second_ear(&said, &[], 0.999), (vec![], 0));
}

/// Runs three seconds of a scene that no recogniser hears, loud where one of `noises` is; the second ear takes every window for `phrase`, so surely. Our
/// own voice may be in the sound within `own`. Gives what was heard, when it was decided and how surely, and how often the ear was asked.
fn heard_alone(tuning: Tuning, phrase: &str, this: f64, noises: &[(f64, f64)], own: (f64, f64)) -> (Vec<(String, f64, f64)>, usize) {
    let choices = [vec!["stopp".to_owned(), "bitte stopp".to_owned()], vec!["es tut weh".to_owned()], vec!["noch einmal".to_owned()]];
    let ear = Rc::new(RefCell::new(SaysAlways { phrases: vec![phrase.into()], heard: vec![this, 1.0 - this], asked: 0 }));
    let mut listener = Listener::new(crate::deaf::DeafDecoder, &choices, tuning.of_second_ear_alone())
        .with_second_ear(Some(Rc::clone(&ear) as Rc<RefCell<dyn WordSpotter>>), false)
        .with_urgent(vec![1]);
    let mut heard = Vec::new();
    for i in 0..200 {
        let at_s = f64::from(i) * 0.03;
        let inside = |&(from_s, to_s): &(f64, f64)| at_s >= from_s - 1e-6 && at_s < to_s - 1e-6;
        let loud = noises.iter().any(inside);
        listener.over_own_voice(inside(&own));
        let level = Level { level_db: if loud { -30.0 } else { -60.0 }, floor_db: -60.0, loud };
        heard.extend(listener.hear(at_s, &batch(at_s), level).map(|d| (d.phrase.text, d.decided_s, d.phrase.confidence)));
    }
    let asked = ear.borrow().asked;
    (heard, asked)
}

const NOT_US: (f64, f64) = (-1.0, -1.0);

#[test]
fn alone_the_second_ear_hears_phrases_of_several_words_and_stop_soonest() {
    let heard = |tuning, phrase| heard_alone(tuning, phrase, 0.9, &[(0.9, 1.3)], NOT_US).0;
    let (main, fast) = (heard(Tuning::MAIN, "noch einmal"), heard(Tuning::FAST, "stopp"));
    assert_eq!((main.len(), main[0].0.as_str(), fast.len(), fast[0].0.as_str()), (1, "noch einmal", 1, "stopp"));
    assert!((main[0].1 - 1.3 - 0.24).abs() < 0.031 && main[0].2 >= ACT_CONFIDENCE, "{main:?}");
    assert!((fast[0].1 - 1.3 - 0.12).abs() < 0.031 && fast[0].2 >= ACT_CONFIDENCE, "{fast:?}");
}

#[test]
fn alone_a_doubtful_phrase_is_asked_about_and_trouble_sooner() {
    let sure = |phrase, this| heard_alone(Tuning::MAIN, phrase, this, &[(0.9, 1.3)], NOT_US).0.first().map(|heard| heard.2);
    assert!(sure("noch einmal", 0.7).is_some_and(|sure| (ASK_CONFIDENCE..ACT_CONFIDENCE).contains(&sure)));
    assert_eq!(sure("noch einmal", 0.55), None);
    assert!(sure("es tut weh", 0.55).is_some_and(|sure| (ASK_CONFIDENCE..ACT_CONFIDENCE).contains(&sure)));
    assert_eq!(sure("es tut weh", 0.45), None);
}

#[test]
fn alone_it_hears_over_our_own_voice_what_it_is_very_sure_of() {
    for (tuning, phrase) in [(Tuning::FAST, "stopp"), (Tuning::MAIN, "es tut weh")] {
        let heard = |this, noises: &[(f64, f64)]| heard_alone(tuning, phrase, this, noises, (0.0, 1.1)).0;
        assert_eq!(heard(0.96, &[(0.9, 1.3)]).len(), 1, "{phrase}");
        assert_eq!(heard(0.9, &[(0.9, 1.3)]), [], "{phrase}");
        assert_eq!(heard(0.9, &[(0.3, 0.6), (0.9, 1.05)]), [], "{phrase}: our own line may sound like it twice");
    }
}

#[test]
fn alone_talk_clicks_and_the_end_of_a_sentence_are_nothing() {
    let scenes: [&[(f64, f64)]; 5] =
        [&[(0.9, 0.96)], &[(0.5, 3.1)], &[(0.5, 1.2), (1.35, 1.9), (2.05, 2.6)], &[(0.3, 2.9), (3.25, 3.65)], &[(0.2, 4.6), (4.65, 4.9)]];
    for tuning in [Tuning::MAIN, Tuning::FAST] {
        for noises in scenes {
            let heard: Vec<String> = heard_alone(tuning, "es tut weh", 0.99, noises, NOT_US).0.into_iter().map(|heard| heard.0).collect();
            // The first part of talk may be over for all that anybody can know; nothing after it counts.
            let ends_soon = noises.first().is_some_and(|first| first.1 - first.0 < 0.8);
            assert!(heard.len() <= usize::from(ends_soon), "{noises:?}: {heard:?}");
        }
    }
}

#[test]
fn alone_a_slow_phrase_of_several_words_is_heard_and_a_slow_word_is_a_voice() {
    let heard = |phrase| heard_alone(Tuning::MAIN, phrase, 0.99, &[(0.6, 2.7)], NOT_US).0.len();
    assert_eq!((heard("es tut weh"), heard("stopp")), (1, 0));
}

#[test]
fn alone_it_is_asked_seldom() {
    assert_eq!(heard_alone(Tuning::FAST, "stopp", 0.1, &[(0.9, 1.3)], NOT_US).1, 2, "at the trial and at the end");
    assert_eq!(heard_alone(Tuning::MAIN, "stopp", 0.9, &[(0.5, 3.5)], NOT_US).1, 0, "not of talk");
}
