//! Everyday wordings in synthetic voices, each within the grammar of a state.

use super::{ear, grammar, hear, sound};
use command_ear::{ACT_CONFIDENCE, Choice, CommandRecogniser, Grammar, Lexicon};
use std::process::Command;

/// Wordings by command, several for each.
const WORDINGS: [(&str, &[&str]); 20] = [
    ("ready", &["ready", "i'm ready", "i am ready", "okay", "all set"]),
    ("done", &["done", "i'm done", "all done", "finished"]),
    ("yes", &["yes", "yes please", "yeah", "that's right"]),
    ("no", &["no", "no thanks", "nope", "not now"]),
    ("stop", &["stop", "stop please", "please stop", "stop now"]),
    ("pause", &["pause", "pause please", "wait", "wait a moment", "hold on"]),
    ("go on", &["go on", "continue", "carry on", "keep going", "resume"]),
    ("again", &["again", "once more", "repeat", "say again", "say that again", "one more time"]),
    ("skip", &["skip", "next", "skip this", "next exercise", "skip it"]),
    ("go back", &["go back", "back", "previous", "last one"]),
    ("how long", &["how long", "how long was that", "time", "what time", "how much"]),
    ("help", &["help", "help me", "i need help", "call for help"]),
    ("slower", &["slower", "slow down", "too fast", "more slowly"]),
    ("faster", &["faster", "speed up", "too slow", "more quickly"]),
    ("louder", &["louder", "speak up", "too quiet", "turn it up"]),
    ("softer", &["softer", "quieter", "too loud", "turn it down"]),
    ("rest", &["rest", "take a rest", "i need a rest", "take a break", "break"]),
    ("finish", &["finish", "finish now", "end", "that's enough", "that's all", "end practice"]),
    ("dizzy", &["dizzy", "i'm dizzy", "i feel dizzy", "i feel faint"]),
    ("hurts", &["it hurts", "that hurts", "pain", "i have pain", "i'm in pain", "ouch"]),
];

/// States of about ten choices; each wording is tried in the first that has its command.
const STATES: [&[&str]; 3] = [
    &["ready", "yes", "no", "stop", "help", "skip", "finish", "dizzy", "hurts", "again"],
    &["done", "pause", "again", "skip", "rest", "how long", "slower", "faster", "stop", "dizzy"],
    &["go on", "go back", "louder", "softer", "slower", "finish", "help", "skip", "rest", "stop"],
];

const VOICES: [(&str, &str, &str); 9] = [
    ("slt", "flite", "slt"),
    ("awb", "flite", "awb"),
    ("rms", "flite", "rms"),
    ("kal16", "flite", "kal16"),
    ("kal", "flite", "kal"),
    ("en-gb", "espeak-ng", "en-gb"),
    ("en-us", "espeak-ng", "en-us"),
    ("us+f3", "espeak-ng", "en-us+f3"),
    ("gb+m3", "espeak-ng", "en-gb+m3"),
];

fn say(program: &str, voice: &str, text: &str) -> Option<Vec<f32>> {
    let file = std::env::temp_dir().join(format!("command-ear-{}.wav", std::process::id()));
    let path = file.to_str()?;
    let arguments = if program == "flite" { ["-voice", voice, "-t", text, "-o", path] } else { ["-v", voice, "-w", path, "--", text] };
    let done = Command::new(program).args(arguments).status().ok()?;
    let sound = done.success().then(|| sound::read(&file).ok()).flatten();
    let _ = std::fs::remove_file(&file);
    sound
}

pub fn run() {
    let mut ear = ear(&[], &[]);
    let lexicon: Lexicon = ear.lexicon().clone();
    let voices: Vec<_> = VOICES.into_iter().filter(|v| say(v.1, v.2, "yes").is_some()).collect();
    if voices.is_empty() {
        println!("skipped: neither flite nor espeak-ng is installed");
        return;
    }
    println!(
        "\nsynthetic voices: confidence / delay from word end to decision, s; - not heard, x another phrase taken, ? below {ACT_CONFIDENCE}"
    );
    print!("{:<20}", "");
    for voice in &voices {
        print!(" {:>10}", voice.0);
    }
    println!("   heard");
    let mut heard_by_voice = vec![0; voices.len()];
    let mut wordings_tried = 0;
    for (command, wordings) in WORDINGS {
        let Some(state) = STATES.iter().find(|s| s.contains(&command)) else { continue };
        let known = |w: &&str| lexicon.validate(&grammar(&[w])).is_ok();
        let choices = WORDINGS
            .iter()
            .filter(|(c, _)| state.contains(c))
            .map(|(c, w)| Choice { tag: (*c).to_owned(), wordings: w.iter().filter(|w| known(w)).map(|w| (*w).to_owned()).collect() });
        ear.listen_for(&Grammar { choices: choices.collect(), ..Grammar::default() }).unwrap_or_else(|e| panic!("{e}"));
        for wording in wordings {
            if !known(wording) {
                println!("{wording:<20} not in the lexicon");
                continue;
            }
            wordings_tried += 1;
            print!("{wording:<20}");
            let mut heard_by = 0;
            for (i, voice) in voices.iter().enumerate() {
                let raw = say(voice.1, voice.2, wording).unwrap_or_default();
                let loudest = raw.iter().fold(1e-6f32, |m, x| m.max(x.abs()));
                let raw: Vec<f32> = raw.iter().map(|x| x * 0.3 / loudest).collect();
                let end_s = 0.8 + sound::word_end_s(&raw);
                let heard = hear(&mut ear, &sound::between_pauses(&raw, 0.8, 1.2), true);
                let cell = match heard.first() {
                    None => "-".to_owned(),
                    Some(h) if h.tag != command => format!("x{}", h.text),
                    Some(h) => {
                        if h.confidence >= ACT_CONFIDENCE {
                            heard_by += 1;
                            heard_by_voice[i] += 1;
                        }
                        let mark = if h.confidence < ACT_CONFIDENCE { "?" } else { "" };
                        format!("{mark}{:.2}/{:.2}", h.confidence, h.decided_s - end_s)
                    }
                };
                print!(" {cell:>10}");
            }
            println!("   {heard_by}");
        }
    }
    println!(
        "heard of {wordings_tried}: {}",
        voices.iter().zip(&heard_by_voice).map(|(v, n)| format!("{} {n}", v.0)).collect::<Vec<_>>().join(", ")
    );
}
