//! Holds in steps of loudness or pitch, and sentences that rise or fall: each is measured against what it was meant to be, and how many
//! went that way is told at the end of the step.

use super::aims::Aims;
use super::outlet::line;
use super::practice::Practice;
use model::{Arg, Climb, Climbs, Fact, Hold, Line, LineId, Utterance};
use routine::{Ladder, Work};

/// What a voice must rise at the end to be heard as rising, or fall to be heard as falling, semitones. In running speech differences
/// under about 1.5 to 2 semitones are hardly noticed ('t Hart 1981, J Acoust Soc Am 69:811, abstract).
const HEARD_ST: f64 = 1.5;

/// The ladder of the present step; none where it has none.
pub(super) fn of(practice: &Practice) -> Option<&Ladder> {
    match &practice.step()?.work {
        Work::Voiced { ladder, .. } => ladder.as_ref(),
        _ => None,
    }
}

/// Says which step of the ladder comes; none where there is no ladder.
pub(super) fn cue(practice: &mut Practice) -> Option<(LineId, Line)> {
    let (rung, _) = of(practice)?.at(practice.here.repetition)?;
    let key = practice.exercise_key(&format!("rung-{}", rung.name()));
    Some((practice.say(&key, &[]), line(key)))
}

/// Puts the step of the ladder into the fact of a hold. Levels of a microphone that changes its own volume make no step.
pub(super) fn climb(practice: &mut Practice, hold: &Hold, fact: &mut Fact) -> Option<Climb> {
    let (climbs, goal, (rung, from)) =
        of(practice).and_then(|ladder| Some((ladder.climbs, ladder.goal, ladder.at(practice.here.repetition)?)))?;
    let before = practice.aims.before.filter(|(before, ..)| from == Some(*before));
    practice.aims.before = Some((rung, hold.level_mean_db, hold.f0_median_hz));
    let way = if from.is_some_and(|from| rung < from) { -1.0 } else { 1.0 };
    let compares = practice.troubles.levels_compare();
    let step_db = before.filter(|_| compares).map_or(f64::NAN, |(_, level_db, _)| way * (hold.level_mean_db - level_db));
    let step_st = before.filter(|(.., f0_hz)| *f0_hz > 0.0 && hold.f0_median_hz > 0.0);
    let step_st = step_st.map_or(f64::NAN, |(.., f0_hz)| way * 12.0 * (hold.f0_median_hz / f0_hz).log2());
    let of_pitch = climbs == Climbs::Pitch;
    let step = Climb {
        rung,
        from: before.map(|(before, ..)| before),
        step_db: if of_pitch { f64::NAN } else { step_db },
        step_st: if of_pitch { step_st } else { f64::NAN },
        goal_db: (!of_pitch).then_some(goal),
        goal_st: of_pitch.then_some(goal),
    };
    practice.aims.judge(step.reached());
    if let Fact::HoldMeasured { climb, .. } = fact {
        *climb = Some(step);
    }
    Some(step)
}

/// "4 decibels louder": what the step was, whichever way it went; none for the first of a set.
pub(super) fn shown(step: &Climb) -> Option<Line> {
    let down = step.from.is_some_and(|from| step.rung < from);
    let (by, ways) = match step.climbs() {
        Climbs::Level => (step.step_db, ["ladder-louder-shown", "ladder-softer-shown"]),
        Climbs::Pitch => (step.step_st, ["ladder-higher-shown", "ladder-lower-shown"]),
    };
    let key = ways[usize::from((by < 0.0) != down)];
    by.is_finite().then(|| Line { key: key.into(), args: vec![("by", Arg::Number(by.abs().round()))] })
}

/// Where the phrase is meant to rise, it does; where it is meant to fall, it does. None where the step has no melody, or too little of
/// the voice was heard. What lies between is neither.
pub(super) fn melody(practice: &mut Practice, phrase: &str, utterance: &Utterance) {
    if !matches!(practice.step().map(|step| &step.work), Some(Work::ReadAloud { melody: true, .. })) {
        return;
    }
    let final_st = utterance.f0_final_st;
    let meant = if rises(phrase) { final_st >= HEARD_ST } else { final_st <= -HEARD_ST };
    practice.aims.judge(final_st.is_finite().then_some(meant));
}

/// A phrase with a question mark is meant to rise at its end.
pub(super) fn rises(phrase: &str) -> bool {
    phrase.trim_end().ends_with('?')
}

/// How many went as they were meant to, said at the end of a step; none where nothing could be judged.
pub(super) fn say_result(practice: &mut Practice) -> Option<LineId> {
    let Aims { reached, judged, .. } = practice.aims;
    if judged == 0 || practice.routine.feedback_every == 0 {
        return None;
    }
    let key = if of(practice).is_some() { "ladder-result" } else { "melody-result" };
    practice.record(Fact::ResultTold { exercise: practice.exercise_id(), asked: false });
    let count = |n: u32| Arg::Number(f64::from(n));
    Some(practice.say(key, &[("reached", count(reached)), ("all", count(judged))]))
}
