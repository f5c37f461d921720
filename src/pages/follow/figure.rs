//! What the large figure means: seconds held, seconds of rest, a count, and of how many. Pure.

use crate::web::live_page::Figure;
use routine::{Step, Work};
use session::{Arg, Line};

/// The figure with its meaning. `prompt` is the key of what stands over it; `text` puts a message into words.
pub fn figure(figure: &str, prompt: &str, step: Option<&Step>, text: &dyn Fn(&Line) -> String) -> Figure {
    if figure.is_empty() {
        return Figure::default();
    }
    let named = |key: &str| text(&Line { key: key.to_owned(), args: Vec::new() });
    let shown = |label: &str| Figure { text: figure.to_owned(), label: named(label), ..Figure::default() };
    let of = |key: &str, n: f64| text(&Line { key: key.to_owned(), args: vec![("n", Arg::Number(n))] });
    let counted: Option<f64> = figure.parse().ok();
    // A result stands in the rest behind its trial until the rest is counted; it alone has tenths.
    let rests = prompt == "resting-shown" && !figure.contains('.');
    match step.map(|step| &step.work) {
        _ if rests => shown("page-seconds-rest-shown"),
        Some(Work::Voiced { target_s, .. }) => with_goal(shown("page-seconds-held-shown"), *target_s, counted, &of),
        Some(Work::Timed { phases, .. }) => {
            let length_s = phases.iter().map(|phase| phase.length_s).sum();
            with_goal(shown("page-seconds-shown"), Some(length_s), counted, &of)
        }
        Some(Work::Paced { phases, .. }) => {
            let phase = phases.iter().find(|phase| prompt.strip_prefix("paced-") == Some(&phase.name));
            Figure { of: phase.map(|phase| of("page-of-shown", f64::from(phase.counts))).unwrap_or_default(), ..shown("page-count-shown") }
        }
        Some(Work::Rapid { .. }) => shown("page-syllables-shown"),
        _ => shown("page-count-shown"),
    }
}

fn with_goal(figure: Figure, goal_s: Option<f64>, counted: Option<f64>, of: &dyn Fn(&str, f64) -> String) -> Figure {
    let Some(goal_s) = goal_s.filter(|goal_s| *goal_s > 0.0) else { return figure };
    let share = counted.map(|counted| (counted / goal_s).clamp(0.0, 1.0));
    Figure { of: of("page-of-seconds-shown", goal_s), share, ..figure }
}

#[cfg(test)]
mod tests {
    use super::*;
    use routine::{CountedPhase, Exercise, Timing};

    fn step(work: Work) -> Step {
        let exercise =
            Exercise { id: "x".into(), timing: Timing::Voiced, cautions: Vec::new(), needs_agreement: false, waits_for_ready: false };
        Step { exercise, sets: 1, repetitions: 1, rest_s: 0.0, set_rest_s: 0.0, work, posture: None, ramp_stage: None }
    }

    fn text(line: &Line) -> String {
        format!(
            "{} {:?}",
            line.key.trim_start_matches("page-").trim_end_matches("-shown"),
            line.args.iter().map(|(_, arg)| arg).collect::<Vec<_>>()
        )
    }

    #[test]
    fn a_figure_says_what_it_counts_and_of_how_many() {
        let voiced = step(Work::Voiced {
            target_s: Some(12.0),
            max_break_s: 0.3,
            min_hold_s: 1.0,
            glide: false,
            cues_at_s: Vec::new(),
            ladder: None,
        });
        let shown = figure("6", "cue-words-shown", Some(&voiced), &text);
        assert_eq!((shown.label.as_str(), shown.of.as_str(), shown.share), ("seconds-held []", "of-seconds [Number(12.0)]", Some(0.5)));
        assert_eq!(figure("15", "cue-words-shown", Some(&voiced), &text).share, Some(1.0));
        assert_eq!(figure("7.2", "resting-shown", Some(&voiced), &text).label, "seconds-held []");
        let rest = figure("9", "resting-shown", Some(&voiced), &text);
        assert_eq!((rest.label.as_str(), rest.of.as_str(), rest.share), ("seconds-rest []", "", None));
        let paced = step(Work::Paced { phases: vec![CountedPhase { name: "out".into(), counts: 8 }], beat_s: 1.0 });
        assert_eq!(figure("5", "paced-out", Some(&paced), &text).of, "of [Number(8.0)]");
        assert_eq!(figure("", "paced-out", Some(&paced), &text), Figure::default());
    }
}
