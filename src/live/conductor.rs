//! The one loop: a block of the microphone in, through the ears to whoever takes part, and through the voice a block for the
//! loudspeaker out. The same for devices, recordings and rehearsals; only the devices that the party brings differ.

use crate::clock::{BLOCK_S, block_frames};
use crate::party::{Block, Party};
use crate::playback::Handed;
use crate::service_manager::SignsOfLife;
use crate::stage::Stage;
use crate::talk::TalkEvent;
use audio::{AudioError, Sent};
use command_ear::CommandEvent;

/// Observers are asked to draw after so many blocks: every tenth of a second.
const OBSERVED_BLOCKS: u64 = 10;

/// A session under way.
pub struct Conductor<P> {
    pub stage: Stage,
    pub party: P,
    mic: Vec<f32>,
    speaker: Vec<f32>,
    talked: Vec<TalkEvent>,
    signs: SignsOfLife,
}

impl<P: Party> Conductor<P> {
    pub fn new(stage: Stage, party: P) -> Self {
        Self { stage, party, mic: Vec::new(), speaker: Vec::new(), talked: Vec::new(), signs: SignsOfLife::from_environment() }
    }

    /// Leads it from its first block to its end and closes the devices. `interrupted` is asked once a block.
    ///
    /// # Errors
    /// Microphone or loudspeaker failed for good; what was done is kept.
    pub fn lead(&mut self, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        self.party.begin(&mut self.stage);
        let outcome = self.run(interrupted);
        if let Err(why) = &outcome {
            self.party.devices_failed(&mut self.stage, why);
        }
        self.party.close(&mut self.stage);
        self.party.devices().finish()?;
        outcome
    }

    /// Goes on block by block until the party is over; it can be gone on with afterwards.
    ///
    /// # Errors
    /// Microphone or loudspeaker failed for good.
    pub fn run(&mut self, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        loop {
            self.step(&interrupted)?;
            if self.party.is_over(&self.stage) {
                return Ok(());
            }
        }
    }

    /// One block.
    ///
    /// # Errors
    /// As [`Conductor::run`].
    pub fn step(&mut self, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        let Self { stage, party, mic, .. } = self;
        let rate_hz = party.devices().mic_rate_hz();
        mic.resize(block_frames(rate_hz), 0.0);
        let captured = party.devices().read(mic)?;
        if interrupted() {
            party.interrupt(stage);
        }
        if captured.lost_frames > 0 {
            let goes_on = party.devices().sent().is_some();
            pass_lost(stage, captured.lost_frames as f64 / f64::from(rate_hz), goes_on);
        }
        party.captured(stage, mic, captured);
        let start_s = stage.now_s();
        stage.clock.pass_block();
        // A microphone that came back may have another rate; then its block is heard from the next one on.
        if mic.len() == block_frames(party.devices().mic_rate_hz()) {
            self.hear(start_s)?;
        }
        self.party.tick(&mut self.stage);
        self.talk(start_s);
        self.let_observers_draw();
        self.party.devices().write(&self.speaker)?;
        let sent = self.party.devices().sent().unwrap_or(Sent::whole(self.speaker.len()));
        if let Some(path) = &mut self.stage.path
            && path.speaker_rate_hz() == self.stage.speech.rate_hz()
        {
            path.play(&self.speaker, sent);
        }
        self.signs.block_done();
        Ok(())
    }

    fn hear(&mut self, start_s: f64) -> Result<(), AudioError> {
        let Self { stage, party, mic, .. } = self;
        let delay_s = party.devices().playback_delay_s();
        for event in party.hear(stage, Block { mic, start_s, delay_s })? {
            match event {
                CommandEvent::Heard(heard) if stage.is_not_ours(&heard) => party.phrase(stage, &heard),
                CommandEvent::Heard(_) => {}
                CommandEvent::Restarted { lost_s } => party.recogniser_restarted(stage, lost_s),
                CommandEvent::Failed { message } => party.recogniser_failed(stage, &message),
            }
        }
        Ok(())
    }

    /// Fills the block to play; what leaves in it closes and opens the ears.
    fn talk(&mut self, block_s: f64) {
        let Self { stage, party, speaker, talked, .. } = self;
        speaker.resize(block_frames(stage.speech.rate_hz()), 0.0);
        stage.speech.fill(speaker, talked);
        // What is handed over now is heard after this block at the earliest.
        let at = Handed { block_s, delay_s: party.devices().playback_delay_s() + BLOCK_S };
        for event in talked.drain(..) {
            let (id, at_s) = match event {
                TalkEvent::Began { id, at_s } => {
                    if stage.line_began(id, at_s, at) {
                        party.line_began(stage, id, at_s);
                    }
                    continue;
                }
                TalkEvent::Ended { id, at_s } => (id, at_s),
                TalkEvent::Failed { id, why } => {
                    stage.warn(&why.to_string());
                    (id, block_s)
                }
            };
            if stage.line_ended(id, at_s, at) {
                party.line_ended(stage, id, at_s);
            }
        }
        stage.speech.add_tone(speaker, at);
        party.settle(stage);
    }

    fn let_observers_draw(&mut self) {
        let stage = &mut self.stage;
        stage.blocks += 1;
        if !stage.blocks.is_multiple_of(OBSERVED_BLOCKS) {
            return;
        }
        stage.notify(|observer, now_s| {
            observer.tick();
            observer.passes(now_s);
        });
        let notices: Vec<String> = stage.observers.iter_mut().filter_map(|observer| observer.notice()).collect();
        notices.iter().for_each(|notice| stage.warn(notice));
    }
}

/// Sound was lost on its way from the microphone, s. `goes_on`: what waits for the loudspeaker was played meanwhile.
fn pass_lost(stage: &mut Stage, lost_s: f64, goes_on: bool) {
    stage.clock.skip(lost_s);
    stage.speech.skip(lost_s);
    if let Some(path) = &mut stage.path {
        path.skip(if goes_on { lost_s } else { 0.0 });
    }
}

#[cfg(test)]
#[path = "tests/conductor.rs"]
mod tests;
