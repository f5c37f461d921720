//! What can stand on the live page, made up.
#![allow(dead_code, reason = "each test takes what it needs")]

use pages::web::live_page::{
    Bar, BarKind, ByPage, Doing, DoneRow, Figure, LiveHub, Meter, Mood, MoodName, Offer, Offers, Phase, Picture, Row, Said, Section, Stage,
    Who,
};

/// One state of the page.
#[derive(Clone, Copy)]
pub struct Scene {
    pub name: &'static str,
    pub put: fn(&LiveHub),
}

pub const SCENES: [Scene; 12] = [
    Scene { name: "ask", put: ask },
    Scene { name: "hold", put: hold },
    Scene { name: "pitch", put: pitch },
    Scene { name: "paced", put: paced },
    Scene { name: "phrase", put: phrase },
    Scene { name: "told", put: told },
    Scene { name: "posture", put: posture },
    Scene { name: "rising", put: rising },
    Scene { name: "stopped", put: stopped },
    Scene { name: "over", put: over },
    Scene { name: "waiting", put: waiting },
    Scene { name: "class", put: class },
];

/// Where the page alone leads.
pub const BY_PAGE: [Scene; 5] = [
    Scene { name: "by-page-read", put: by_page_read },
    Scene { name: "by-page-turn", put: by_page_turn },
    Scene { name: "by-page-breathe", put: by_page_breathe },
    Scene { name: "by-page-hold", put: by_page_hold },
    Scene { name: "by-page-rest", put: by_page_rest },
];

const MORE: [&str; 10] = ["again", "go back", "how long", "how did I do", "tell me why", "help", "rest", "louder", "I'm dizzy", "it hurts"];

/// Offers with these words, named as most commands are.
pub fn list(labels: &[&str]) -> Vec<Offer> {
    labels.iter().map(|label| Offer { name: label.replace(' ', "-"), label: (*label).to_owned() }).collect()
}

pub fn offers(now: &[&str], more: &[&str]) -> Offers {
    Offers {
        now: list(now),
        more: list(more),
        always: list(&["stop", "pause"]),
        keys: ["done", "again", "skip", "pause"].map(str::to_owned).into(),
    }
}

pub fn rows(rows: &[(Who, &str)]) -> Vec<Row> {
    rows.iter().zip(1..).map(|((who, text), id)| Row { id, who: *who, text: (*text).to_owned() }).collect()
}

pub fn said(lines: &[&str]) -> Vec<Said> {
    lines.iter().zip(1..).map(|(text, id)| Said { id, who: Who::Tool, text: (*text).to_owned() }).collect()
}

fn stage(hub: &LiveHub, phase: Phase, heading: &str, part: &str, prompt: &str) {
    hub.set(Section::Stage, &Stage { phase, heading: heading.into(), part: part.into(), prompt: prompt.into(), ..Stage::default() });
    for section in [Section::Done, Section::Said, Section::Notes] {
        hub.set(section, &[0; 0]);
    }
    hub.set(Section::Picture, &Picture::default());
    hub.set(Section::ByPage, &ByPage::default());
}

fn picture(hub: &LiveHub, name: &str) {
    hub.set(Section::Picture, &Picture { name: name.into(), described: "A person does what is said.".into() });
}

fn figure(hub: &LiveHub, text: &str, label: &str, of: &str, share: Option<f64>) {
    hub.set(Section::Figure, &Figure { text: text.into(), label: label.into(), of: of.into(), share });
}

fn mood(hub: &LiveHub, name: MoodName, words: &str) {
    hub.set(Section::Mood, &Mood { name, words: words.into() });
}

fn no_bar(hub: &LiveHub) {
    hub.set(Section::Bar, &Bar::default());
    hub.set(Section::Meter, &Meter::default());
}

fn level(hub: &LiveHub, timed: bool) {
    let bar = Bar {
        kind: BarKind::Level,
        active: true,
        timed,
        label: "Loudness".into(),
        goal: Some(0.5),
        goal_label: "your usual level".into(),
        ..Bar::default()
    };
    hub.set(Section::Bar, &bar);
    hub.set(Section::Meter, &Meter { at: Some(0.58), top: None, words: "3 dB louder than usual".into() });
}

fn ask(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Evening routine", "", "Strong swallow: has your clinician agreed to it for you?");
    figure(hub, "", "", "", None);
    no_bar(hub);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&offers(&["yes", "no"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Has your clinician agreed to it"), (Who::Tool, "for you? Yes, no, or not sure?")]));
}

fn hold(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Long ah", "2 of 3", "Strong voice");
    picture(hub, "long-ah");
    figure(hub, "7", "Seconds held", "of 12 seconds", Some(0.583));
    level(hub, true);
    mood(hub, MoodName::Holding, "I hear you");
    hub.offer(&offers(&["skip"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Number two."), (Who::Tool, "Breathe in… and ah.")]));
}

fn pitch(hub: &LiveHub) {
    stage(hub, Phase::Practice, "High ee", "set 2 of 3 · 4 of 5", "A high, light ee");
    picture(hub, "high-ee");
    figure(hub, "3", "Seconds held", "of 4 seconds", Some(0.75));
    let bar = Bar {
        kind: BarKind::Pitch,
        active: true,
        timed: true,
        label: "Pitch".into(),
        goal: Some(0.667),
        goal_label: "your usual high note".into(),
        base: Some(0.333),
        base_label: "your usual voice".into(),
    };
    hub.set(Section::Bar, &bar);
    hub.set(Section::Meter, &Meter { at: Some(0.583), top: Some(0.62), words: "9 semitones higher".into() });
    mood(hub, MoodName::Holding, "I hear you");
    hub.offer(&offers(&["skip"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Number four."), (Who::Tool, "Easy breath, and a high, light ee.")]));
}

fn paced(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Nasal breathing", "2 of 5", "Out");
    picture(hub, "nasal-breathing-out");
    figure(hub, "5", "Count", "of 8", None);
    no_bar(hub);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&offers(&["slower", "faster"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Out."), (Who::Client, "You: “slower”")]));
}

fn phrase(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Functional phrases", "3 of 10", "Could you pass me the newspaper from the table, please?");
    figure(hub, "", "", "", None);
    level(hub, false);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&offers(&["skip"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Could you pass me the newspaper"), (Who::Tool, "from the table, please?")]));
}

/// An exercise is told, at length.
fn told(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Head lift, held", "1 of 3", "Flat on your back. Lift only your head, look at your toes, and breathe.");
    picture(hub, "head-lift-sustained");
    figure(hub, "", "", "", None);
    no_bar(hub);
    mood(hub, MoodName::Speaking, "Speaking");
    hub.offer(&offers(&["ready", "skip"], &MORE));
    hub.set(
        Section::Rows,
        &rows(&[(Who::Tool, "Keep both shoulders down. Lift only your"), (Who::Tool, "head, look at your toes, and keep it up.")]),
    );
}

/// A posture is held and counted.
fn posture(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Neck turns", "1 of 1", "Turn slowly to the left, and stay.");
    picture(hub, "neck-turns-left");
    figure(hub, "12", "Seconds", "of 45 seconds", Some(0.27));
    no_bar(hub);
    mood(hub, MoodName::Idle, "");
    hub.offer(&offers(&["skip"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Turn slowly to the left, and stay."), (Who::Tool, "Ten.")]));
}

/// A part of getting up has its time.
fn rising(hub: &LiveHub) {
    let prompt = "Push yourself up until you sit, with both feet on the floor. Stay sitting, and breathe.";
    stage(hub, Phase::Practice, "Evening routine", "", prompt);
    picture(hub, "rise-sit");
    figure(hub, "45", "Seconds", "", None);
    no_bar(hub);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&offers(&[], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Stay sitting, and breathe.")]));
}

fn stopped(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Lip press and smile", "1 of 2", "Stopped");
    figure(hub, "", "", "", None);
    no_bar(hub);
    mood(hub, MoodName::Speaking, "Speaking");
    hub.offer(&offers(&["go on", "skip", "finish"], &MORE));
    hub.set(Section::Rows, &rows(&[(Who::Client, "You: “stop”"), (Who::Tool, "I'll be quiet. Say go on, skip, or finish.")]));
}

fn over(hub: &LiveHub) {
    stage(hub, Phase::Over, "Evening routine", "", "8 of 9 exercises done");
    figure(hub, "", "", "", None);
    no_bar(hub);
    mood(hub, MoodName::Idle, "");
    hub.offer(&Offers::default());
    hub.set(
        Section::Rows,
        &rows(&[(Who::Tool, "That's all for today. Eight of nine done;"), (Who::Tool, "head lift is left for another day.")]),
    );
    let done = [
        ("Long ah", "3 of 3"),
        ("Glide up", "2 of 2"),
        ("Nasal breathing", "5 of 5"),
        ("Lip press and smile", "2 of 2"),
        ("Effortful swallow", "10 of 10"),
        ("Functional phrases", "8 of 8"),
        ("Syllables", "2 of 2"),
        ("Word questions", "4 of 4"),
        ("Head lift", "left out"),
    ];
    hub.set(Section::Done, &done.map(|(name, done)| DoneRow { name: name.into(), done: done.into() }));
}

fn waiting(hub: &LiveHub) {
    stage(hub, Phase::Waiting, "Next: evening routine for Grandpa, 18:30", "", "Waiting. Say \"start my practice\".");
    figure(hub, "", "", "", None);
    no_bar(hub);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&Offers { always: list(&["stop"]), keys: Vec::new(), ..offers(&["start my practice", "what is left today"], &[]) });
    hub.set(Section::Rows, &rows(&[]));
}

/// A class, at an exercise that not everybody does like the others.
fn class(hub: &LiveHub) {
    posture(hub);
    let aside = "Leaving this one out: Plum, 7.\nSeated for this one: Hazel.".into();
    let prompt = "\"Here we go\", or the key".into();
    hub.set(Section::Stage, &Stage { phase: Phase::Practice, heading: "Neck turns".into(), part: "1 of 5".into(), prompt, aside });
    figure(hub, "", "", "", None);
    hub.offer(&Offers { now: list(&["here we go", "next exercise"]), ..offers(&[], &MORE) });
    hub.set(Section::Rows, &rows(&[(Who::Tool, "When everyone is ready, say here we go.")]));
}

fn by_page(hub: &LiveHub, sentence: &str, doing: Doing, words: &str) {
    hub.set(Section::ByPage, &ByPage { leads: true, sentence: sentence.into(), doing, words: words.into() });
}

fn by_page_read(hub: &LiveHub) {
    told(hub);
    by_page(
        hub,
        "Keep both shoulders down. Lift only your head, look at your toes, and keep it up. Breathe all the while, and put your head down \
         at once if your neck hurts or you feel dizzy.",
        Doing::Read,
        "Read",
    );
}

fn by_page_turn(hub: &LiveHub) {
    ask(hub);
    by_page(hub, "Has your clinician agreed to it for you? Yes, no, or not sure?", Doing::Turn, "Your turn");
    hub.set(Section::Rows, &rows(&[(Who::Client, "You: “louder”")]));
}

fn by_page_breathe(hub: &LiveHub) {
    paced(hub);
    by_page(hub, "Out.", Doing::Go, "Now");
}

fn by_page_hold(hub: &LiveHub) {
    hold(hub);
    by_page(hub, "Breathe in… and ah.", Doing::Go, "Now");
}

fn by_page_rest(hub: &LiveHub) {
    stage(hub, Phase::Practice, "Long ah", "2 of 3", "Rest");
    figure(hub, "4", "Seconds of rest left", "", Some(0.4));
    no_bar(hub);
    mood(hub, MoodName::Listening, "Listening");
    hub.offer(&offers(&["ready"], &MORE));
    hub.set(Section::Rows, &rows(&[]));
    by_page(hub, "And relax.", Doing::Rest, "Rest");
}
