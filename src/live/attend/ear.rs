//! The attendant's ear: a gate that is always there, and the command path only behind it.

use std::collections::VecDeque;

use crate::attend::gate::SpeechGate;
use crate::command_path::CommandPath;
use audio::AudioError;
use audio::gate::Gate;
use command_ear::{CommandEvent, HeardPhrase};

/// Blocks kept from before the gate opens: 0.7 s, for it opens up to half a second late, where a word begins with a long unvoiced
/// sound ("st"), and the recogniser wants some quiet before a word.
const BEFORE: usize = 70;
/// After our own voice the path goes on for so long, s: the echo canceller needs the end of the echo.
const AFTERMATH_S: f64 = 1.0;

/// Hears what is said, at next to no cost where nobody speaks.
pub struct Ear {
    pub path: CommandPath,
    speech: SpeechGate,
    /// Our own voice in the microphone.
    own: Gate,
    /// The last blocks and when they began, s.
    before: VecDeque<(f64, Vec<f32>)>,
    /// So many of them, counted from the newest, the path has not heard.
    unheard: usize,
    feeding: bool,
    /// Our own voice was last given out, s.
    spoke_s: f64,
}

impl Ear {
    pub fn new(path: CommandPath) -> Self {
        Self {
            path,
            speech: SpeechGate::default(),
            own: Gate::default(),
            before: VecDeque::new(),
            unheard: 0,
            feeding: false,
            spoke_s: f64::NEG_INFINITY,
        }
    }

    /// Our own voice begins, or ends, with the block handed over at `at_s`, heard `delay_s` later.
    pub fn line_began(&mut self, at_s: f64, delay_s: f64) {
        self.own.line_began(at_s, delay_s);
        self.spoke_s = f64::INFINITY;
    }

    pub fn line_ended(&mut self, at_s: f64, delay_s: f64) {
        self.own.line_ended(at_s, delay_s);
        self.spoke_s = at_s + delay_s;
    }

    /// Hears 10 ms that begin at `block_s`. `attentive`: whatever the gate says, for a short answer is waited for.
    ///
    /// # Errors
    /// A block of another length than 10 ms.
    pub fn hear(&mut self, mic: &[f32], block_s: f64, delay_s: f64, attentive: bool) -> Result<Vec<CommandEvent>, AudioError> {
        let ours = block_s < self.spoke_s + AFTERMATH_S;
        // The gate follows the room: our own voice is none of it.
        let speech = if self.own.masks(block_s) { self.feeding } else { self.speech.push(mic) };
        self.keep(mic, block_s);
        let feeding = ours || speech || attentive;
        let mut heard = Vec::new();
        if feeding {
            let first = self.before.len().saturating_sub(self.unheard);
            for (at_s, block) in self.before.iter().skip(first) {
                heard.extend(self.path.hear(block, *at_s, delay_s, self.own.is_open(*at_s))?);
            }
            self.unheard = 0;
        } else {
            if self.feeding {
                self.path.pause();
            }
            heard.extend(self.path.poll());
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
        self.path.skip();
    }

    /// Somebody other than ourselves speaks now.
    pub fn talks(&self) -> bool {
        self.speech.talks()
    }

    /// The phrase is not our own voice, as far as can be told.
    pub fn is_not_ours(&self, heard: &HeardPhrase) -> bool {
        let over_own_voice = self.own.masks(heard.start_s) || self.own.masks(heard.end_s);
        !over_own_voice || self.path.stands_out(heard)
    }
}
