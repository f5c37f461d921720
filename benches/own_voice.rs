//! What the command path hears over and beside the tool's own voice: `cargo bench --bench own_voice [-- over after alone]`.
//!
//! Needs `../shared/data` (people saying "stop": the even-numbered clips of Speech Commands' test part; measured and
//! simulated rooms) and Debian's `espeak-ng`.

#[path = "own_voice/ear.rs"]
mod ear;
#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/echo_scene.rs"]
mod echo_scene;
#[path = "own_voice/scene.rs"]
mod scene;

use ear::Ear;
use figures::{figure, figure_of, share};
use scene::{Mix, PATHS, Talk, people};

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
}

/// "stop" said over the tool's sentences.
fn over(talk: &Talk, odd: bool, only: Option<&str>) {
    let words = people("stop", odd);
    if words.is_empty() {
        println!("skipped: no ../shared/data");
        return;
    }
    let mut next = words.iter().cycle();
    let mut groups: std::collections::BTreeMap<&str, (usize, usize, usize)> = std::collections::BTreeMap::new();
    for path in PATHS.iter().filter(|path| only.is_none_or(|only| path.name.contains(only))) {
        for over_db in OVER_ECHO_DB {
            let clips: Vec<Vec<f32>> = next.by_ref().take(10).cloned().collect();
            let mix = Mix::over(talk, path, &clips, over_db);
            let mut ear = Ear::start("stop", None);
            let heard = ear.hear(&mix, |_| false);
            let hits = mix.words.iter().filter(|(from_s, to_s)| heard.iter().any(|h| h.at_s > *from_s && h.start_s < to_s + 0.2)).count();
            let others =
                heard.iter().filter(|h| !mix.words.iter().any(|(from_s, to_s)| h.at_s > *from_s && h.start_s < to_s + 0.2)).count();
            let quiet = Ear::start("stop", None).hear(&mix.without_talk(), |_| false);
            let without =
                mix.words.iter().filter(|(from_s, to_s)| quiet.iter().any(|h| h.at_s > *from_s && h.start_s < to_s + 0.2)).count();
            println!(
                "{:<34} {over_db:>+5.1} dB: {hits} of {} heard ({without} without our sentence), {others} others   ({})",
                path.name,
                mix.words.len(),
                ear.state()
            );
            let group = groups.entry(path.group).or_default();
            *group = (group.0 + hits, group.1 + without, group.2 + mix.words.len());
        }
    }
    for (group, (hits, without, all)) in groups {
        let id = if group == "common clock" { "own.over.common" } else { "own.over.drift" };
        share(id, hits, all);
        share(&format!("{id}.without"), without, all);
    }
}

/// An ordinary command just after a sentence, on the main path.
fn after(talk: &Talk) {
    for gap_s in [0.1, 0.2, 0.3] {
        let words = people("yes", false);
        let (mut hits, mut alone, mut all) = (0, 0, 0);
        for (path, clips) in PATHS.iter().filter(|p| p.group == "common clock").zip(words.chunks(12)) {
            let mix = Mix::after(talk, path, clips, gap_s);
            let near = |at: &(f64, f64), heard: &[ear::Heard]| heard.iter().any(|h| h.at_s > at.0 && h.start_s < at.1 + 0.2);
            let heard = Ear::start("pause", Some("yes")).hear(&mix, |at_s| mix.is_open(at_s));
            let without = Ear::start("pause", Some("yes")).hear(&mix.without_talk(), |_| true);
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
    let (mut false_commands, mut hours) = (0, 0.0);
    for path in PATHS {
        let mix = Mix::alone(talk, path, 600.0);
        let mut ear = Ear::start("stop", Some("yes,no,ready,done,again,skip,help,rest,finish,go on"));
        for heard in ear.hear(&mix, |at_s| mix.is_open(at_s)) {
            false_commands += 1;
            println!("{}: \"{}\" at {:.1} s, confidence {:.2}", path.name, heard.text, heard.start_s, heard.confidence);
        }
        hours += mix.seconds() / 3600.0;
    }
    println!("{hours:.2} h of our own talk");
    figure("own.alone", f64::from(false_commands));
}
