//! A whole recording through the same ear that listens live.

use super::{Held, HoldSettings, VoiceEar, VoiceEvent, VoiceFrame, VoiceOutput, VoiceTask};

/// How holds are told in recordings nobody described: longer than a spoken word, breaks of a quarter second bridged
/// (common practice, no source).
pub const FILE_SETTINGS: HoldSettings = HoldSettings { min_s: 0.8, max_break_s: 0.25, glide: false };

/// Frames and holds of a recording at `rate_hz`.
pub fn analyse_voice(samples: &[f32], rate_hz: u32) -> (Vec<VoiceFrame>, Vec<Held>) {
    analyse_voice_as(samples, rate_hz, FILE_SETTINGS)
}

/// The same where it is known what a hold is.
pub fn analyse_voice_as(samples: &[f32], rate_hz: u32, settings: HoldSettings) -> (Vec<VoiceFrame>, Vec<Held>) {
    let mut ear = VoiceEar::new(rate_hz);
    ear.set_task(VoiceTask::Hold(settings));
    let (mut frames, mut holds) = (Vec::with_capacity(samples.len() / 80), Vec::new());
    let mut keep = |output| match output {
        VoiceOutput::Frame(frame) => frames.push(frame),
        VoiceOutput::Event(VoiceEvent::Offset(hold)) => holds.push(hold),
        VoiceOutput::Event(_) => {}
    };
    ear.push(samples, false, &mut keep);
    ear.finish(&mut keep);
    (frames, holds)
}
