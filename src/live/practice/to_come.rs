//! What a routine will have said, so that the voice can render it ahead.

use routine::{Routine, Work};
use session::{Arg, Line};
use speak::Words;

/// The lines that this routine will need, the counts first: they must be there on the beat.
pub fn lines_to_come(routine: &Routine, words: &Words) -> Vec<String> {
    let mut lines: Vec<Line> = Vec::new();
    let plain = |key: String| Line { key, args: Vec::new() };
    for step in &routine.steps {
        let longest = match &step.work {
            Work::Timed { phases, .. } => phases.iter().map(|phase| phase.length_s).fold(0.0, f64::max),
            Work::Paced { phases, .. } => phases.iter().map(|phase| f64::from(phase.counts)).fold(0.0, f64::max),
            _ => 0.0,
        };
        for n in 1..=longest as u32 {
            lines.push(Line { key: "count".into(), args: vec![("n", Arg::Number(f64::from(n)))] });
        }
        if let Work::Paced { phases, .. } = &step.work {
            lines.extend(phases.iter().map(|phase| plain(format!("paced-{}", phase.name))));
            lines.extend(["paced-last-round", "paced-over"].map(|key| plain(key.into())));
        }
        let id = &step.exercise.id;
        if let Work::Timed { phases, .. } = &step.work {
            lines.extend(phases.iter().map(|phase| plain(format!("ex-{id}-phase-{}", phase.name))));
            lines.push(plain("posture-over".into()));
        }
        lines.extend(["cue", "short", "instruction"].map(|part| plain(format!("ex-{id}-{part}"))));
    }
    let fixed =
        ["stopped", "paused", "resting", "going-on", "help", "help-more", "help-go-on", "voice-again", "ask-ready-again", "trial-over"];
    lines.extend(fixed.map(|key| plain(key.into())));
    let mut texts: Vec<String> = lines.iter().filter_map(|line| words.text(line).ok()).collect();
    let mut seen = std::collections::BTreeSet::new();
    texts.retain(|text| seen.insert(text.clone()));
    texts
}
