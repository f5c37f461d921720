//! Voiced trials: from voice onset to offset, led in silence.

use super::ladder;
use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::patience::Patience;
use super::practice::Practice;
use super::tiring::{Noticed, Trial};
use super::waiting::Reminders;
use model::{Arg, Command, Fact, Hold, HoldSettings, LOUD_ROOM_DB, Line, Position, Response, VoiceTask};
use routine::{Amount, Work, is_soft};

const REMINDERS: Reminders = Reminders { again: "voice-again", once_more: "voice-once-more", waits: "wait-for-ready" };

/// One voiced trial under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct VoicedRun {
    pub patience: Patience,
    /// Onset of the hold, once it is sure, s.
    onset_s: Option<f64>,
    /// How many brief cues have been given in this hold.
    cues_given: usize,
}

pub(super) fn cue(practice: &mut Practice) -> Speaking {
    practice.listen(listening::BEFORE_ONSET, VoiceTask::Idle);
    if let Some((last, prompt)) = ladder::cue(practice) {
        practice.show_prompt(prompt, &[Command::Skip, Command::Stop]);
        return practice.after(last, 0.0, NextAction::Perform);
    }
    let last = practice.say_cue();
    let prompt = match practice.routine.cue_words.clone().filter(|_| practice.is_loud()) {
        Some(words) => Line { key: "cue-words-shown".into(), args: vec![("words", Arg::Text(words))] },
        None => line(practice.exercise_key("cue")),
    };
    practice.show_prompt(prompt, &[Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform)
}

impl VoicedRun {
    pub fn open(practice: &mut Practice, settings: HoldSettings) -> Self {
        practice.listen(listening::BEFORE_ONSET, VoiceTask::Hold(settings));
        Self { patience: Patience::opened(practice.now_s), onset_s: None, cues_given: 0 }
    }

    pub fn voice_began(&mut self, practice: &mut Practice, onset_s: f64) {
        let now_s = practice.now_s;
        if self.onset_s.is_none() {
            practice.responded(Response::Voice, self.patience.response_s(now_s));
        }
        self.onset_s = Some(onset_s);
        self.cues_given = 0;
        self.patience.heard(now_s);
        if let Some(Work::Voiced { max_break_s, min_hold_s: min_s, glide, .. }) = practice.step().map(|step| step.work.clone()) {
            practice.listen(listening::HOLDING, VoiceTask::Hold(HoldSettings { min_s, max_break_s, glide }));
        }
    }

    /// A voice is held.
    pub fn is_under_way(&self) -> bool {
        self.onset_s.is_some()
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        let Some(onset_s) = self.onset_s else {
            return practice.wait_kindly(&mut self.patience, Response::Voice, REMINDERS);
        };
        let held_s = (practice.now_s - onset_s).max(0.0);
        // Nobody holds a vowel that long: something hums, and nobody is there.
        if held_s >= practice.routine.no_answer.give_up_after_s {
            return Turn::Go(NextAction::GiveUp);
        }
        practice.show_figure(&format!("{:.0}", held_s.floor()));
        self.cue_in_hold(practice, held_s);
        Turn::Stay
    }

    /// Brief cues inside the hold, only where the routine asks for them.
    fn cue_in_hold(&mut self, practice: &mut Practice, held_s: f64) {
        let Some(Work::Voiced { cues_at_s, .. }) = practice.step().map(|step| &step.work) else { return };
        if cues_at_s.get(self.cues_given).is_some_and(|&at_s| held_s >= at_s) {
            practice.say("hold-cue", &[]);
            self.cues_given += 1;
        }
    }

    /// The trial is over and measured.
    pub fn ended(&self, practice: &mut Practice, hold: &Hold) -> Turn {
        let mut fact = hold.fact(practice.exercise_id(), true);
        let step = ladder::climb(practice, hold, &mut fact);
        practice.record(fact);
        mark_in_noise(practice, hold);
        if practice.is_loud() {
            practice.loud_s += hold.duration_s;
        }
        practice.did(Amount { times: 1, seconds: hold.duration_s });
        // The holds of a ladder differ on purpose.
        if step.is_none() {
            practice.trials.untold += 1;
            watch_for_tiring(practice, hold);
        }
        practice.repetition_complete();
        practice.listen(listening::READY, VoiceTask::Idle);
        let shown = step.as_ref().and_then(ladder::shown).unwrap_or_else(|| line("resting-shown"));
        practice.show_prompt_with(shown, &[Command::Skip, Command::Stop], &format!("{:.1}", hold.duration_s));
        let last = match practice.say_trial_result() {
            Some(last) => last,
            None => practice.say("trial-over", &[]),
        };
        practice.after(last, 0.0, NextAction::AfterRepetition).into()
    }

    /// A command ends the trial; its figures come when the voice ear has closed the hold.
    pub fn cut(&self, practice: &mut Practice) {
        if self.onset_s.is_some() {
            practice.cut_hold = Some((practice.exercise_id(), practice.here));
        }
    }
}

/// The voice ear has closed a hold while no trial is open: it is the one that a command cut off, or none of ours.
pub(super) fn ended_late(practice: &mut Practice, hold: &Hold) {
    if let Some((exercise, position)) = practice.cut_hold.take() {
        if !is_soft(&exercise) {
            practice.loud_s += hold.duration_s;
        }
        practice.did_of(exercise.clone(), Amount { times: 1, seconds: hold.duration_s });
        practice.record_due(true);
        practice.record_of(Some(position), hold.fact(exercise, false));
    }
}

/// Marks a hold that hardly stood out from the room.
fn mark_in_noise(practice: &mut Practice, hold: &Hold) {
    if hold.over_room_db < LOUD_ROOM_DB {
        let here: Position = practice.here;
        practice.record_of(Some(here), Fact::HoldInNoise { exercise: practice.exercise_id(), over_room_db: hold.over_room_db });
    }
}

/// Compares the trial with those before it; where it shows that the client tires, a rest is offered behind it.
fn watch_for_tiring(practice: &mut Practice, hold: &Hold) {
    let level_db = if practice.troubles.levels_compare() { hold.level_mean_db } else { f64::NAN };
    let exercise = practice.exercise_id();
    let past = practice.context.past.by_exercise.get(&exercise);
    let noticed = practice.trials.add(Trial { duration_s: hold.duration_s, level_db }, past);
    if let Some(Noticed { of, reference, latest, usual }) = noticed {
        practice.record(Fact::FallNoticed { exercise, of, reference, latest, usual });
    }
}
