//! Voiced trials: from voice onset to offset, led in silence.

use super::engine::{Engine, State, Then};
use super::patience::{Patience, Silence};
use super::{Command, Effect, Entry, Fact, LevelTerms, Line, listening};
use model::{Hold, HoldSettings, VoiceTask};
use routine::Work;

/// Why a step with voice is left, in the journal.
pub(super) const LOUD_LIMIT: &str = "loud-time limit";

/// One voiced trial under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct VoicedRun {
    pub patience: Patience,
    /// Onset of the hold, once it is sure, s.
    onset_s: Option<f64>,
    /// How many brief cues have been given in this hold.
    cues_given: usize,
}

impl Engine {
    pub(super) fn cue_voiced(&mut self) {
        self.listen(listening::BEFORE_ONSET, VoiceTask::Idle);
        let last = self.say_cue();
        let prompt = match self.routine.cue_words.clone() {
            Some(words) => Line { key: "cue-words-shown".into(), args: vec![("words", super::Arg::Text(words))] },
            None => Line { key: self.exercise_key("cue"), args: Vec::new() },
        };
        self.show_prompt(prompt, &[Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_voiced(&mut self, max_break_s: f64, min_s: f64, glide: bool) {
        self.listen(listening::BEFORE_ONSET, VoiceTask::Hold(HoldSettings { min_s, max_break_s, glide }));
        self.state = State::Voiced(VoicedRun { patience: Patience::opened(self.now_s), onset_s: None, cues_given: 0 });
    }

    pub(super) fn voice_began(&mut self, onset_s: f64) {
        let now_s = self.now_s;
        if matches!(&self.state, State::Voiced(run) if run.onset_s.is_none()) {
            self.responded();
        }
        let State::Voiced(run) = &mut self.state else { return };
        run.onset_s = Some(onset_s);
        run.cues_given = 0;
        run.patience.heard(now_s);
        if let Some(Work::Voiced { max_break_s, min_hold_s, glide, .. }) = self.step().map(|step| step.work.clone()) {
            self.listen(listening::HOLDING, VoiceTask::Hold(HoldSettings { min_s: min_hold_s, max_break_s, glide }));
        }
    }

    pub(super) fn tick_voiced(&mut self, run: VoicedRun) {
        if let Some(onset_s) = run.onset_s {
            let held_s = (self.now_s - onset_s).max(0.0);
            // Nobody holds a vowel that long: something hums, and nobody is there.
            if held_s >= self.routine.no_answer.give_up_after_s {
                self.give_up();
                return;
            }
            self.show_figure(&format!("{:.0}", held_s.floor()));
            self.cue_in_hold(run.cues_given, held_s);
            return;
        }
        if self.is_speaking() {
            return;
        }
        self.wait_kindly("voice-again", "voice-once-more", "wait-for-ready");
    }

    /// Takes the silence of a client whose turn it is: asks again, once more, then says what it waits for.
    pub(super) fn wait_kindly(&mut self, again: &str, once_more: &str, wait: &str) {
        match self.silence() {
            Silence::Wait => {}
            Silence::AskAgain(1) => self.remind(again, &[]),
            Silence::AskAgain(_) => self.remind(once_more, &[]),
            Silence::WaitForReady | Silence::StillHere => self.remind(wait, &[]),
            Silence::GiveUp => self.give_up(),
        }
    }

    /// Brief cues inside the hold, only where the routine asks for them.
    fn cue_in_hold(&mut self, given: usize, held_s: f64) {
        let Some(Work::Voiced { cues_at_s, .. }) = self.step().map(|step| &step.work) else { return };
        if cues_at_s.get(given).is_some_and(|&at_s| held_s >= at_s) {
            self.say("hold-cue", &[]);
            if let State::Voiced(run) = &mut self.state {
                run.cues_given += 1;
            }
        }
    }

    pub(super) fn voice_ended(&mut self, hold: &Hold) {
        if !matches!(self.state, State::Voiced(_)) {
            if let Some((exercise, position)) = self.cut_hold.take() {
                self.loud_s += hold.duration_s;
                let fact = measured(exercise, hold, false);
                self.record_due(true);
                self.effect(Effect::Record(Entry { at_s: self.now_s, fact, position: Some(position) }));
            }
            return;
        }
        let fact = measured(self.exercise_id(), hold, true);
        self.record(fact);
        self.mark_hold_in_noise(self.exercise_id(), hold, Some(self.here));
        self.loud_s += hold.duration_s;
        self.trials_untold += 1;
        self.weigh_trial(hold);
        self.repetition_complete();
        self.listen(listening::READY, VoiceTask::Idle);
        let rest = Line { key: "resting-shown".into(), args: Vec::new() };
        self.show_prompt_with(rest, &[Command::Skip, Command::Stop], &format!("{:.1}", hold.duration_s));
        match self.say_trial_result() {
            Some(last) => self.after(last, 0.0, Then::AfterRepetition),
            None => {
                let last = self.say("trial-over", &[]);
                self.after(last, 0.0, Then::AfterRepetition);
            }
        }
    }

    /// True where one more hold would go past the loud time that the routine allows in one practice.
    pub(super) fn is_loud_enough(&self, target_s: Option<f64>) -> bool {
        !self.start.class && self.loud_s > 0.0 && self.loud_s + target_s.unwrap_or(0.0) > self.routine.loud_limit_s
    }

    /// That was enough loud voice: the step ends here, kept as far as it went.
    pub(super) fn leave_loud(&mut self) {
        self.record(Fact::LoudLimitReached { loud_s: self.loud_s, limit_s: self.routine.loud_limit_s });
        self.cut_short(LOUD_LIMIT);
        let last = self.say("loud-enough", &[]);
        self.listen(listening::READY, VoiceTask::Idle);
        self.next_step(Some(last));
    }

    /// A command ends the trial; its figures come when the voice ear has closed the hold.
    pub(super) fn cut_voiced(&mut self, run: &VoicedRun) {
        if run.onset_s.is_some() {
            self.cut_hold = Some((self.exercise_id(), self.here));
        }
    }
}

fn measured(exercise: String, hold: &Hold, complete: bool) -> Fact {
    Fact::HoldMeasured {
        exercise,
        onset_s: hold.onset_s,
        offset_s: hold.offset_s,
        duration_s: hold.duration_s,
        f0_median_hz: hold.f0_median_hz,
        f0_span_st: hold.f0_span_st,
        level_mean_db: hold.level_mean_db,
        level_fall_db: hold.level_fall_db,
        level_weighting: "A".into(),
        level_calibrated: false,
        f0_sd_st: Some(hold.f0_sd_st).filter(|x| x.is_finite()),
        level_slope_db_per_s: Some(hold.level_slope_db_per_s).filter(|x| x.is_finite()),
        level_terms: Some(LevelTerms { clipped_s: hold.clipped_s, ..LevelTerms::default() }),
        quality: None,
        breaks: hold.breaks,
        masked_s: hold.masked_s,
        complete,
    }
}
