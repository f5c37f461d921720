//! Who takes part in the loop.

use crate::stage::Stage;
use audio::{AudioError, AudioIo, Captured};
use command_ear::{CommandEvent, HeardPhrase};
use session::LineId;

/// 10 ms of the raw microphone.
#[derive(Debug, Clone, Copy)]
pub struct Block<'a> {
    pub mic: &'a [f32],
    /// When it began, s.
    pub start_s: f64,
    /// How late what we play is heard, s.
    pub delay_s: f64,
}

/// What a practice, an attendant or an enrolment does with what happens. The [`crate::conductor`] calls each of these in the order in
/// which they stand here, once a block.
pub trait Party: Send {
    /// The microphone and the loudspeaker, which the party brings along.
    fn devices(&mut self) -> &mut dyn AudioIo;

    /// Before the first block.
    fn begin(&mut self, _stage: &mut Stage) {}

    /// Somebody at the machine wants it to end.
    fn interrupt(&mut self, stage: &mut Stage);

    /// A block came from the microphone; frames lost before it have passed on the clock.
    fn captured(&mut self, stage: &mut Stage, mic: &[f32], captured: Captured);

    /// Hears the block: gives what the command path decided on.
    ///
    /// # Errors
    /// A block of another length than 10 ms.
    fn hear(&mut self, stage: &mut Stage, block: Block<'_>) -> Result<Vec<CommandEvent>, AudioError>;

    /// A phrase was heard that is not our own voice.
    fn phrase(&mut self, stage: &mut Stage, heard: &HeardPhrase);

    /// The recogniser was restarted, and `lost_s` went unheard.
    fn recogniser_restarted(&mut self, stage: &mut Stage, lost_s: f64) {
        stage.warn(&format!("the recogniser was restarted; {lost_s:.1} s went unheard"));
    }

    /// The recogniser cannot go on.
    fn recogniser_failed(&mut self, stage: &mut Stage, message: &str) {
        stage.warn(message);
    }

    /// The block has passed on the clock and was heard.
    fn tick(&mut self, stage: &mut Stage);

    /// The first frame of a line left for the loudspeaker.
    fn line_began(&mut self, _stage: &mut Stage, _id: LineId, _at_s: f64) {}

    /// A line ended, was hushed or could not be spoken.
    fn line_ended(&mut self, stage: &mut Stage, id: LineId, at_s: f64);

    /// The lines of this block have begun and ended.
    fn settle(&mut self, _stage: &mut Stage) {}

    /// It is over with this block.
    fn is_over(&self, stage: &Stage) -> bool;

    /// Microphone or loudspeaker failed for good.
    fn devices_failed(&mut self, _stage: &mut Stage, _why: &AudioError) {}

    /// It is over, one way or the other; what waits must be delivered now.
    fn close(&mut self, _stage: &mut Stage) {}
}
