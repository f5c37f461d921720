//! The attendant's ear: a gate that is always there, and the command path only behind it.

use std::collections::VecDeque;

use crate::attend::gate::SpeechGate;
use crate::command_path::CommandPath;
use crate::party::Block;
use crate::playback::Playback;
use audio::AudioError;
use command_ear::CommandEvent;

/// Blocks kept from before the gate opens: 0.7 s, for it opens up to half a second late, where a word begins with a long unvoiced
/// sound ("st"), and the recogniser wants some quiet before a word.
const BEFORE: usize = 70;
/// After our own voice the path goes on for so long, s: the echo canceller needs the end of the echo.
const AFTERMATH_S: f64 = 1.0;

/// Hears what is said, at next to no cost where nobody speaks.
#[derive(Default)]
pub struct Ear {
    speech: SpeechGate,
    /// The last blocks and when they began, s.
    before: VecDeque<(f64, Vec<f32>)>,
    /// So many of them, counted from the newest, the path has not heard.
    unheard: usize,
    feeding: bool,
}

impl Ear {
    /// Hears a block. `attentive`: whatever the gate says, for a short answer is waited for.
    ///
    /// # Errors
    /// A block of another length than 10 ms.
    pub fn hear(
        &mut self,
        path: &mut CommandPath,
        playback: &Playback,
        block: Block<'_>,
        attentive: bool,
    ) -> Result<Vec<CommandEvent>, AudioError> {
        let ours = block.start_s < playback.heard_until_s() + AFTERMATH_S;
        // The gate follows the room: our own voice is none of it.
        let speech = if playback.masks(block.start_s) { self.feeding } else { self.speech.push(block.mic) };
        self.keep(block.mic, block.start_s);
        let feeding = ours || speech || attentive;
        let mut heard = Vec::new();
        if feeding {
            let first = self.before.len().saturating_sub(self.unheard);
            for (at_s, mic) in self.before.iter().skip(first) {
                heard.extend(path.hear(mic, *at_s, block.delay_s, playback.main_path_is_open(*at_s))?);
            }
            self.unheard = 0;
        } else {
            if self.feeding {
                path.pause();
            }
            heard.extend(path.poll());
        }
        self.feeding = feeding;
        Ok(heard)
    }

    fn keep(&mut self, mic: &[f32], block_s: f64) {
        let mut block = if self.before.len() >= BEFORE { self.before.pop_front().map(|old| old.1).unwrap_or_default() } else { Vec::new() };
        block.clear();
        block.extend_from_slice(mic);
        self.before.push_back((block_s, block));
        self.unheard = (self.unheard + 1).min(BEFORE);
    }

    /// Sound was lost on its way from the microphone.
    pub fn skip(&mut self) {
        self.before.clear();
        self.unheard = 0;
    }

    /// Somebody other than ourselves speaks now.
    pub fn talks(&self) -> bool {
        self.speech.talks()
    }
}
