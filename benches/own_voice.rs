//! What the command path hears over and beside the tool's own voice: `cargo bench --bench own_voice [-- over after alone safety asked quiet]`.
//!
//! Needs `../shared/data` (people saying "stop": the even-numbered clips of Speech Commands' test part, each heard by the network of
//! five that has not met the speaker; measured and simulated rooms) and Debian's `espeak-ng` and `flite`. `safety`, `asked` and `quiet` are about the main path over our own voice: words of
//! synthetic voices that the recogniser was not trained on, and two and a half hours of our own talk alone.
//! `replay=FOLDER` tells what is heard in a live practice that was kept. `left=FOLDER` writes what our own voice leaves, for training; `left=FOLDER said=LIST` what is said over it.

#[path = "own_voice/ear.rs"]
mod ear;
#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/echo_scene.rs"]
mod echo_scene;
#[path = "own_voice/left.rs"]
mod left;
#[path = "own_voice/scene.rs"]
mod scene;
#[path = "own_voice/voices.rs"]
mod voices;

use ear::Ear;
use figures::{figure, figure_of, share};
use scene::{LOOPS, Mix, PATHS, Talk, people};
use session::listening::SAFETY;
use session::{Command, Listening, VoiceTask, listening};
use speak::Words;

/// Levels of the word over the echo, dB.
const OVER_ECHO_DB: [f64; 3] = [6.0, 1.5, -3.0];

fn main() {
    let chosen: Vec<String> = std::env::args().skip(1).filter(|arg| !arg.starts_with("--")).collect();
    let wanted = |name: &str| chosen.is_empty() || chosen.iter().any(|c| c == name);
    let odd = chosen.iter().any(|c| c == "odd");
    let Some(talk) = Talk::new() else { return };
    if wanted("over") || odd {
        over(&talk, odd, chosen.iter().find_map(|c| c.strip_prefix("only=")));
    }
    if wanted("after") {
        after(&talk);
    }
    if wanted("alone") {
        alone(&talk);
    }
    let Ok(words) = Words::english() else { return };
    if wanted("safety") {
        over_by_voices(&talk, &words, "own.safety", SAFETY);
    }
    if let Some((folder, talk)) = chosen.iter().find_map(|c| c.strip_prefix("left=")).zip(Talk::everything()) {
        let folder = std::path::Path::new(folder);
        match chosen.iter().find_map(|c| c.strip_prefix("said=")) {
            Some(list) => left::write_over(&talk, std::path::Path::new(list), folder),
            None => left::write(&talk, folder),
        }
    }
    if let Some(folder) = chosen.iter().find_map(|c| c.strip_prefix("replay=")) {
        replay(std::path::Path::new(folder), &words);
    }
    if let Some(talk) = Talk::asking().filter(|_| wanted("asked")) {
        over_by_voices(&talk, &words, "own.asked", &[Command::Ready]);
    }
    if let Some(talk) = Talk::everything().filter(|_| wanted("quiet")) {
        main_alone(&talk, &words, chosen.iter().find_map(|c| c.strip_prefix("only=")));
    }
}

fn state(commands: &[Command]) -> Listening {
    Listening {
        commands: listening::with_safety(commands),
        answers: Vec::new(),
        worded: Vec::new(),
        voice: VoiceTask::Idle,
        list: false,
        multiword_only: false,
    }
}

/// Every wording of these commands over our sentences, in the state that waits for "ready".
fn over_by_voices(talk: &Talk, words: &Words, id: &str, commands: &[Command]) {
    let said: Vec<(Command, String)> = commands.iter().flat_map(|&c| words.wordings(c).into_iter().map(move |w| (c, w))).collect();
    let mut groups: std::collections::BTreeMap<&str, (usize, usize)> = std::collections::BTreeMap::new();
    for (n, path) in PATHS.iter().enumerate() {
        for (m, over_db) in OVER_ECHO_DB.into_iter().enumerate() {
            let of: Vec<(Command, &str, Vec<f32>)> = said
                .iter()
                .enumerate()
                .filter_map(|(k, (command, wording))| Some((*command, wording.as_str(), voices::say(n + m + k, wording)?)))
                .collect();
            if of.is_empty() {
                return;
            }
            let clips: Vec<Vec<f32>> = of.iter().map(|(.., clip)| clip.clone()).collect();
            let mix = Mix::over(talk, path, &clips, over_db);
            let mut ear = Ear::of_state(words, &state(listening::READY));
            let loud = ear.hear_over(&mix, words);
            // As in a practice: our voice gets softer where it would have in the scene as it is.
            let mix = mix.giving_way(ear.softer());
            let heard = Ear::of_state(words, &state(listening::READY)).hear_over(&mix, words);
            let missed = |heard: &[ear::Heard]| -> Vec<&str> {
                let hit = |command: Command, (from_s, to_s): (f64, f64)| {
                    heard.iter().any(|h| h.tag == command.name() && h.at_s > from_s && h.start_s < to_s + 0.2)
                };
                of.iter().zip(&mix.words).filter(|((command, ..), at)| !hit(*command, **at)).map(|((_, wording, _), _)| *wording).collect()
            };
            let unducked = of.len() - missed(&loud).len();
            let missed = missed(&heard);
            let others = heard
                .iter()
                .filter(|h| !of.iter().zip(&mix.words).any(|((c, ..), at)| h.tag == c.name() && h.start_s < at.1 + 0.2 && h.at_s > at.0));
            let others: Vec<&str> = others.map(|h| h.text.as_str()).collect();
            println!(
                "{:<34} {over_db:>+5.1} dB: {} of {} ({unducked} where we do not get softer); missed {missed:?}, others {others:?}",
                path.name,
                of.len() - missed.len(),
                of.len()
            );
            let group = groups.entry(path.group).or_default();
            *group = (group.0 + of.len() - missed.len(), group.1 + of.len());
        }
    }
    for (group, (hits, all)) in groups {
        share(&format!("{id}.{}", if group == "common clock" { "common" } else { "drift" }), hits, all);
    }
}

/// Two and a half hours of all that we say, with the main path open: what it takes for a command.
fn main_alone(talk: &Talk, words: &Words, only: Option<&str>) {
    let (mut taken, mut hours) = (0, 0.0);
    for (n, path) in PATHS.iter().chain(LOOPS).enumerate().filter(|(_, path)| only.is_none_or(|only| path.name.contains(only))) {
        // Each begins elsewhere, so that all is said somewhere.
        let mix = Mix::alone(&talk.from(n * talk.len() / PATHS.len()), path, 1200.0);
        let commands = if n % 2 == 0 { listening::READY } else { listening::YES_NO };
        for heard in Ear::of_state(words, &state(commands)).hear_over(&mix, words) {
            taken += 1;
            let said: Vec<&str> = mix.said_between(heard.start_s, heard.at_s).iter().map(|line| line.text).collect();
            let (text, at_s, sure, over_db) = (heard.text, heard.start_s, heard.confidence, heard.over_db);
            println!("{}: \"{text}\" at {at_s:.1} s, confidence {sure:.2}, {over_db:.1} dB over us, while we say {said:?}", path.name);
        }
        hours += mix.seconds() / 3600.0;
    }
    println!("{hours:.2} h of our own talk");
    figure("own.main", f64::from(taken));
}

/// What is heard in a live practice that was kept.
fn replay(folder: &std::path::Path, words: &Words) {
    let mix = Mix::recorded(folder);
    for heard in Ear::of_state(words, &state(listening::READY)).hear(&mix, |_| true) {
        let (text, at_s, sure, over_db) = (heard.text, heard.start_s, heard.confidence, heard.over_db);
        println!("\"{text}\" at {at_s:.1} s, confidence {sure:.2}, {over_db:.1} dB over us");
    }
}

/// "stop" said over the tool's sentences.
fn over(talk: &Talk, odd: bool, only: Option<&str>) {
    let words = people("stop", odd);
    if words.is_empty() {
        println!("skipped: no ../shared/data");
        return;
    }
    let mut groups: std::collections::BTreeMap<&str, [usize; 4]> = std::collections::BTreeMap::new();
    for (n, path) in PATHS.iter().enumerate().filter(|(_, path)| only.is_none_or(|only| path.name.contains(only))) {
        for (m, over_db) in OVER_ECHO_DB.into_iter().enumerate() {
            let scene = OVER_ECHO_DB.len() * n + m;
            let (fold, of) = &words[scene % words.len()];
            let clips: Vec<Vec<f32>> = of.iter().cycle().skip(10 * (scene / words.len())).take(10).cloned().collect();
            let start = || Ear::start(Some(*fold), "stop", None);
            let mix = Mix::over(talk, path, &clips, over_db);
            let mut ear = start();
            let heard = ear.hear(&mix, |_| false);
            let count = |heard: &[ear::Heard]| {
                mix.words.iter().filter(|(from_s, to_s)| heard.iter().any(|h| h.at_s > *from_s && h.start_s < to_s + 0.2)).count()
            };
            let hits = count(&heard);
            // As in a practice: our voice gets softer where it would have in the scene as it is.
            let giving_way = count(&start().hear(&mix.giving_way(ear.softer()), |_| false));
            let others =
                heard.iter().filter(|h| !mix.words.iter().any(|(from_s, to_s)| h.at_s > *from_s && h.start_s < to_s + 0.2)).count();
            let without = count(&start().hear(&mix.without_talk(), |_| false));
            println!(
                "{:<34} {over_db:>+5.1} dB: {hits} of {} heard ({giving_way} where we get softer, {without} without our sentence), {others} others   ({})",
                path.name,
                mix.words.len(),
                ear.state()
            );
            let group = groups.entry(path.group).or_default();
            for (sum, more) in group.iter_mut().zip([hits, giving_way, without, mix.words.len()]) {
                *sum += more;
            }
        }
    }
    for (group, [hits, giving_way, without, all]) in groups {
        let id = if group == "common clock" { "own.over.common" } else { "own.over.drift" };
        share(&format!("{id}.unducked"), hits, all);
        share(id, giving_way, all);
        share(&format!("{id}.without"), without, all);
    }
}

/// An ordinary command just after a sentence, on the main path.
fn after(talk: &Talk) {
    for gap_s in [0.1, 0.2, 0.3] {
        let words = people("yes", false);
        let (mut hits, mut alone, mut all) = (0, 0, 0);
        for (path, (fold, clips)) in PATHS.iter().filter(|p| p.group == "common clock").zip(&words) {
            let mix = Mix::after(talk, path, &clips[..clips.len().min(12)], gap_s);
            let start = || Ear::start(Some(*fold), "pause", Some("yes"));
            let near = |at: &(f64, f64), heard: &[ear::Heard]| heard.iter().any(|h| h.at_s > at.0 && h.start_s < at.1 + 0.2);
            let heard = start().hear(&mix, |at_s| mix.is_open(at_s));
            let without = start().hear(&mix.without_talk(), |_| true);
            hits += mix.words.iter().filter(|at| near(at, &heard)).count();
            alone += mix.words.iter().filter(|at| near(at, &without)).count();
            all += mix.words.len();
        }
        let id = format!("own.after.{:.0}ms", 1e3 * gap_s);
        share(&id, hits, all);
        figure_of(&format!("{id}.lost"), alone as f64 - hits as f64, all);
    }
}

/// An hour of the tool's own talk.
fn alone(talk: &Talk) {
    let (mut false_commands, mut hours, mut softer_s, mut softer_times) = (0, 0.0, 0.0, 0);
    for path in PATHS {
        let mix = Mix::alone(talk, path, 600.0);
        let mut ear = Ear::start(None, "stop", Some("yes,no,ready,done,again,skip,help,rest,finish,go on"));
        for heard in ear.hear(&mix, |at_s| mix.is_open(at_s)) {
            false_commands += 1;
            println!("{}: \"{}\" at {:.1} s, confidence {:.2}", path.name, heard.text, heard.start_s, heard.confidence);
        }
        hours += mix.seconds() / 3600.0;
        let softer = ear.softer();
        softer_s += softer.iter().filter(|softer| **softer).count() as f64 * 0.01;
        softer_times += softer.windows(2).filter(|pair| !pair[0] && pair[1]).count();
    }
    println!("{hours:.2} h of our own talk; got softer {softer_times} times, {softer_s:.1} s");
    figure("own.alone", f64::from(false_commands));
    figure("own.alone.softer", softer_times as f64);
}
