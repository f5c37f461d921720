//! Talk on a prompt for a given time, or a passage read aloud: level, F0 and pauses are measured over the whole.

use super::listening;
use super::next::{NextAction, Turn};
use super::patience::Patience;
use super::practice::Practice;
use super::waiting::Reminders;
use model::{Arg, Command, Fact, LevelTerms, Line, LineId, Response, Utterance, VoiceTask};
use routine::Work;

/// A quiet of this length is a pause, s. Shorter ones are mostly stops of consonants (Goldman-Eisler 1968, from memory).
const PAUSE_S: f64 = 0.25;
/// A passage is over when it has been quiet for so long, s; common practice, no source.
const PASSAGE_OVER_S: f64 = 4.0;
/// Whoever has read less than half of a passage is waited for so long, s.
const READS_ON_S: f64 = 15.0;
/// After so long without a word in a talk, it says that there is time to go on, s; common practice, no source.
const SILENT_S: f64 = 10.0;
/// A sentence under way when the time is over may be ended within this, s.
const LAST_WORDS_S: f64 = 4.0;
/// Reading aloud takes about 15 letters a second (150 words a minute; common practice, no source); a passage read in less than
/// half of the time that this makes is not read to its end.
const LETTERS_PER_S: f64 = 15.0;
const REMINDERS: Reminders = Reminders { again: "talk-again", once_more: "talk-once-more", waits: "wait-for-ready" };

/// One talk, or one reading, under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct TalkRun {
    pub patience: Patience,
    /// What was said so far, pause by pause.
    parts: Vec<Utterance>,
    /// The client is speaking since, s.
    speaks_since_s: Option<f64>,
    /// It has been encouraged since the last word.
    encouraged: bool,
}

/// What is talked about, or read, in this repetition.
struct Task {
    passage: Option<String>,
    prompt: Option<String>,
    length_s: f64,
}

fn task(practice: &Practice) -> Option<Task> {
    let Work::Talk { passage, prompts, length_s } = &practice.step()?.work else { return None };
    let prompt = if prompts.is_empty() { None } else { prompts.get(practice.turn() % prompts.len()).cloned() };
    Some(Task { passage: passage.clone(), prompt, length_s: *length_s })
}

/// Says what to talk about; a passage is shown, for a voice that read it first would be imitated.
pub(super) fn cue(practice: &mut Practice) -> Turn {
    practice.listen(listening::TALKING, VoiceTask::Idle);
    let Some(task) = task(practice) else { return Turn::Go(NextAction::EndStep) };
    let (last, shown) = match (task.passage, task.prompt) {
        (Some(passage), _) => (practice.say_cue(), Line { key: "read-passage-shown".into(), args: vec![("passage", Arg::Text(passage))] }),
        (None, Some(prompt)) => {
            let args = vec![("prompt", Arg::Text(prompt))];
            (practice.say("talk-prompt", &args), Line { key: "talk-prompt-shown".into(), args })
        }
        (None, None) => (practice.say_cue(), Line { key: practice.exercise_key("cue"), args: Vec::new() }),
    };
    practice.show_prompt(shown, &[Command::Done, Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform).into()
}

impl TalkRun {
    pub fn open(practice: &mut Practice) -> Self {
        practice.listen(listening::TALKING, VoiceTask::Speech { end_pause_s: PAUSE_S });
        practice.turn_began_s = practice.now_s;
        Self { patience: Patience::opened(practice.now_s), parts: Vec::new(), speaks_since_s: None, encouraged: false }
    }

    pub fn speech_began(&mut self, practice: &mut Practice, onset_s: f64) {
        let now_s = practice.now_s;
        if self.parts.is_empty() && self.speaks_since_s.is_none() {
            practice.responded(Response::Voice, self.patience.response_s(now_s));
        }
        self.speaks_since_s = Some(onset_s);
        self.encouraged = false;
        self.patience.heard(now_s);
    }

    pub fn spoken(&mut self, practice: &mut Practice, utterance: &Utterance) -> Turn {
        self.speaks_since_s = None;
        self.parts.push(utterance.clone());
        self.patience.heard(practice.now_s);
        Turn::Stay
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        let Some(task) = task(practice) else { return Turn::Stay };
        let now_s = practice.now_s;
        let Some(began_s) = self.parts.first().map(|part| part.onset_s).or(self.speaks_since_s) else {
            return practice.wait_kindly(&mut self.patience, Response::Voice, REMINDERS);
        };
        let over_s = now_s - began_s - task.length_s;
        if over_s >= LAST_WORDS_S || (over_s >= 0.0 && self.speaks_since_s.is_none()) {
            self.break_off(now_s);
            return self.keep(practice);
        }
        let (None, Some(last)) = (self.speaks_since_s, self.parts.last()) else { return Turn::Stay };
        let quiet_s = now_s - last.offset_s;
        let whole = task.passage.as_ref().map(|passage| self.speaking_s() >= 0.5 * passage.chars().count() as f64 / LETTERS_PER_S);
        match whole {
            Some(true) if quiet_s >= PASSAGE_OVER_S => return self.keep(practice),
            Some(false) if quiet_s >= READS_ON_S => return self.keep(practice),
            Some(false) if quiet_s >= PASSAGE_OVER_S => self.encourage(practice, "talk-read-on"),
            None if quiet_s >= SILENT_S => self.encourage(practice, "talk-go-on"),
            _ => {}
        }
        // Nobody is there any more: what was said counts.
        if quiet_s >= practice.routine.no_answer.give_up_after_s { self.keep(practice) } else { Turn::Stay }
    }

    /// "Done": what was said so far counts.
    pub fn done(&self, practice: &mut Practice) -> Turn {
        if self.parts.is_empty() { Turn::Stay } else { self.keep(practice) }
    }

    /// Writes down what a command cuts off.
    pub fn cut(&self, practice: &mut Practice) {
        self.record(practice, false);
    }

    fn encourage(&mut self, practice: &mut Practice, key: &str) {
        if !self.encouraged && !practice.is_speaking() {
            self.encouraged = true;
            practice.remind(key);
        }
    }

    fn speaking_s(&self) -> f64 {
        self.parts.iter().map(|part| part.duration_s).sum()
    }

    /// What is still being said when the time is over: it has been heard without a pause up to now, but how loud and how high it was
    /// is known only of what has ended.
    fn break_off(&mut self, now_s: f64) {
        let Some(onset_s) = self.speaks_since_s.take() else { return };
        self.parts.push(Utterance {
            onset_s,
            offset_s: now_s,
            duration_s: now_s - onset_s,
            level_mean_db: f64::NAN,
            f0_median_hz: 0.0,
            f0_span_st: f64::NAN,
            f0_final_st: f64::NAN,
            syllables: 0,
            syllable_rate_hz: 0.0,
            syllable_irregularity_pct: 0.0,
        });
    }

    fn keep(&self, practice: &mut Practice) -> Turn {
        self.record(practice, true);
        practice.repetition_complete();
        practice.listen(listening::READY, VoiceTask::Idle);
        let last: LineId = practice.say("talk-over", &[]);
        practice.after(last, 0.0, NextAction::AfterRepetition).into()
    }

    fn record(&self, practice: &mut Practice, complete: bool) {
        let (Some(first), Some(last)) = (self.parts.first(), self.parts.last()) else { return };
        let duration_s = last.offset_s - first.onset_s;
        let speaking_s = self.speaking_s();
        let pauses = self.parts.windows(2).filter(|two| two[1].onset_s - two[0].offset_s >= PAUSE_S).count();
        let task = task(practice);
        practice.record(Fact::Talked {
            exercise: practice.exercise_id(),
            prompt: task.and_then(|task| task.prompt),
            duration_s,
            speaking_s,
            pauses: u32::try_from(pauses).unwrap_or(u32::MAX),
            pause_share_pct: if duration_s > 0.0 { 100.0 * (1.0 - speaking_s / duration_s).clamp(0.0, 1.0) } else { f64::NAN },
            level_mean_db: energy_mean_db(&self.parts),
            f0_median_hz: median_f0_hz(&self.parts),
            level_weighting: "A".into(),
            level_calibrated: false,
            level_terms: Some(LevelTerms::default()),
            complete,
        });
    }
}

/// Energy mean of the levels, each weighted by its length, dB.
fn energy_mean_db(parts: &[Utterance]) -> f64 {
    let told = || parts.iter().filter(|part| part.level_mean_db.is_finite());
    let (energy, seconds) = told().fold((0.0, 0.0), |(energy, seconds), part| {
        (energy + part.duration_s * 10.0_f64.powf(part.level_mean_db / 10.0), seconds + part.duration_s)
    });
    if seconds > 0.0 { 10.0 * (energy / seconds).log10() } else { f64::NAN }
}

/// Median of the parts' medians, each weighted by its length, Hz; 0 where no part had any.
fn median_f0_hz(parts: &[Utterance]) -> f64 {
    let mut voiced: Vec<(f64, f64)> =
        parts.iter().filter(|part| part.f0_median_hz > 0.0).map(|part| (part.f0_median_hz, part.duration_s)).collect();
    voiced.sort_by(|one, other| one.0.total_cmp(&other.0));
    let half_s = voiced.iter().map(|(_, seconds)| seconds).sum::<f64>() / 2.0;
    let mut seconds = 0.0;
    let middle = voiced.iter().find(|(_, length_s)| {
        seconds += length_s;
        seconds >= half_s
    });
    middle.map_or(0.0, |(f0_hz, _)| *f0_hz)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn part(onset_s: f64, duration_s: f64, level_mean_db: f64, f0_median_hz: f64) -> Utterance {
        Utterance {
            f0_span_st: f64::NAN,
            f0_final_st: f64::NAN,
            onset_s,
            offset_s: onset_s + duration_s,
            duration_s,
            level_mean_db,
            f0_median_hz,
            syllables: 4,
            syllable_rate_hz: 4.0,
            syllable_irregularity_pct: 20.0,
        }
    }

    #[test]
    fn the_level_is_the_mean_of_the_energy_and_long_parts_weigh_more() {
        let mean = energy_mean_db(&[part(0.0, 1.0, -20.0, 0.0), part(2.0, 1.0, -30.0, 0.0)]);
        // (0.01 + 0.001) / 2
        assert!((mean - 10.0 * 0.0055_f64.log10()).abs() < 1e-9);
        let long = energy_mean_db(&[part(0.0, 9.0, -20.0, 0.0), part(2.0, 1.0, -30.0, 0.0)]);
        assert!(long > mean && energy_mean_db(&[]).is_nan());
    }

    #[test]
    fn the_pitch_is_that_of_most_of_the_time() {
        let parts = [part(0.0, 1.0, -20.0, 300.0), part(2.0, 5.0, -20.0, 180.0), part(8.0, 1.0, -20.0, 0.0)];
        assert_eq!(median_f0_hz(&parts), 180.0);
        assert_eq!(median_f0_hz(&parts[2..]), 0.0);
    }
}
