//! What enrolling a client's own voice changes: hits and false alarms before and after, through the same child process as in a session.
//!
//! `cargo bench --bench enrol -- [people|voices|world DIR] [odd|even]`. *people*: speakers of the recordings in `../shared/data/speech-commands`
//! who say a command at least four times. *voices*: synthetic voices varied in speed, pitch, loudness, noise and room from take to
//! take. *world*: the folder that `benches/enrol/reference/hard_speakers.py` makes, people's own words made breathy, soft, monotone and
//! slow. Thresholds were chosen on every other speaker ("odd") with `benches/enrol/reference/likeness.py`; the figures to quote are the other half's
//! ("even", the default).

#[path = "enrol/evaluate.rs"]
mod evaluate;
#[path = "enrol/folder.rs"]
mod folder;
#[path = "enrol/people.rs"]
mod people;
#[path = "command_ear/sound.rs"]
mod sound;
#[path = "enrol/voices.rs"]
mod voices;

use evaluate::{Bench, Speaker};

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    let even = !arguments.iter().any(|a| a == "odd");
    let half = |speakers: Vec<Speaker>| -> Vec<Speaker> { speakers.into_iter().skip(usize::from(even)).step_by(2).collect() };
    let words: Vec<&str> = arguments.iter().map(String::as_str).filter(|a| !["odd", "even"].contains(a)).collect();
    let mut bench = Bench::new();
    match words[..] {
        ["people"] => bench.run("people", half(people::speakers())),
        ["voices"] => bench.run("voices", half(voices::speakers())),
        ["world", folder] => bench.run("world", half(folder::speakers(folder.as_ref()))),
        _ => {
            bench.run("people", half(people::speakers()));
            bench.run("voices", half(voices::speakers()));
            match std::env::var_os("TIDECOUNT_HARD_SPEAKERS") {
                Some(made) => bench.run("world", half(folder::speakers(made.as_ref()))),
                None => println!("skipped: no TIDECOUNT_HARD_SPEAKERS (benches/enrol/reference/hard_speakers.py makes that folder)"),
            }
        }
    }
}
