//! The voice joined to the loudspeaker: lines in, blocks of sound and their begins and ends out.

use session::LineId;
use speak::{MixEvent, Mixer, Renderer, SpeakError, SystemEvent, SystemSpeaker};

/// What became of a line. Times are seconds on the sample clock.
#[derive(Debug)]
pub enum TalkEvent {
    Began {
        id: LineId,
        at_s: f64,
    },
    Ended {
        id: LineId,
        at_s: f64,
    },
    /// The line could not be spoken; it has ended.
    Failed {
        id: LineId,
        why: SpeakError,
    },
}

/// A voice that talks. Called by the sound thread once a block, never from a device callback.
pub trait Talker: Send {
    /// True where what is spoken is handed over as samples, so that the echo canceller knows it.
    fn gives_samples(&self) -> bool;
    /// False where a line only stands on the page: nothing of it is in the microphone.
    fn is_heard(&self) -> bool {
        true
    }
    /// Speaks a line; on a beat it begins exactly then, else behind those under way.
    fn say(&mut self, id: LineId, text: &str, on_beat_s: Option<f64>);
    /// Silence at once; every line not yet ended gets its end from the next `block`.
    fn hush(&mut self);
    fn change_volume(&mut self, change_db: f64);
    /// Somebody speaks over us, or no longer: gets softer meanwhile, but for what stands on a beat.
    fn give_way(&mut self, spoken_over: bool);
    /// Slower (above 1) or faster (below 1) by this factor, from the next line on.
    fn change_rate(&mut self, factor: f64);
    /// Time passed that no block stands for (lost microphone frames).
    fn skip(&mut self, lost_s: f64);
    /// Fills the next block for the loudspeaker.
    fn block(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>);
}

/// A voice that gives samples: counts on the beat, an exact gate, a reference for the echo canceller.
pub struct PcmTalker {
    renderer: Renderer,
    mixer: Mixer,
    rate_hz: f64,
    /// What the sample clock is ahead of the mixer's frames, s.
    skipped_s: f64,
    /// Beats of lines that are being rendered.
    beats: Vec<(LineId, f64)>,
    mixed: Vec<MixEvent>,
    failed: Vec<(LineId, SpeakError)>,
    dropped: Vec<LineId>,
}

impl PcmTalker {
    pub fn new(renderer: Renderer, rate_hz: u32) -> Self {
        Self {
            renderer,
            mixer: Mixer::new(rate_hz),
            rate_hz: f64::from(rate_hz),
            skipped_s: 0.0,
            beats: Vec::new(),
            mixed: Vec::new(),
            failed: Vec::new(),
            dropped: Vec::new(),
        }
    }

    fn at_s(&self, frame: u64) -> f64 {
        frame as f64 / self.rate_hz + self.skipped_s
    }

    fn take_rendered(&mut self) {
        while let Some(rendered) = self.renderer.poll() {
            let beat = self.beats.iter().position(|beat| beat.0 == rendered.id).map(|index| self.beats.swap_remove(index).1);
            let placed = rendered.line.and_then(|line| match beat {
                Some(beat_s) => {
                    let frame = ((beat_s - self.skipped_s) * self.rate_hz).round().max(0.0) as u64;
                    self.mixer.at(rendered.id, line, frame)
                }
                None => self.mixer.queue(rendered.id, line),
            });
            if let Err(why) = placed {
                self.failed.push((rendered.id, why));
            }
        }
    }
}

impl Talker for PcmTalker {
    fn gives_samples(&self) -> bool {
        true
    }

    fn say(&mut self, id: LineId, text: &str, on_beat_s: Option<f64>) {
        if let Some(beat_s) = on_beat_s {
            self.beats.push((id, beat_s));
        }
        self.renderer.request(id, text);
    }

    fn hush(&mut self) {
        self.dropped.extend(self.renderer.drop_pending());
        self.beats.clear();
        self.mixer.hush();
    }

    fn change_volume(&mut self, change_db: f64) {
        self.mixer.set_gain_db(self.mixer.gain_db() + change_db);
    }

    fn give_way(&mut self, spoken_over: bool) {
        self.mixer.duck(spoken_over);
    }

    fn change_rate(&mut self, factor: f64) {
        self.renderer.change_rate(factor);
    }

    fn skip(&mut self, lost_s: f64) {
        self.skipped_s += lost_s;
    }

    fn block(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>) {
        self.take_rendered();
        let from_s = self.at_s(self.mixer.frame());
        events.extend(self.dropped.drain(..).map(|id| TalkEvent::Ended { id, at_s: from_s }));
        events.extend(self.failed.drain(..).map(|(id, why)| TalkEvent::Failed { id, why }));
        self.mixed.clear();
        self.mixer.next_block(speaker, &mut self.mixed);
        for mixed in &self.mixed {
            events.push(match *mixed {
                MixEvent::Began { id, frame } => TalkEvent::Began { id, at_s: self.at_s(frame) },
                MixEvent::Ended { id, frame } => TalkEvent::Ended { id, at_s: self.at_s(frame) },
            });
        }
    }
}

/// The system's own voice: it plays by itself and gives no samples, so beats are only kept to a block and its sound
/// cannot be taken out of the microphone's.
pub struct SystemTalker {
    speaker: SystemSpeaker,
    blocks: u64,
    skipped_s: f64,
    /// Lines to begin at a time, with their texts.
    scheduled: Vec<(LineId, String, f64)>,
    dropped: Vec<LineId>,
}

impl SystemTalker {
    pub fn new(speaker: SystemSpeaker) -> Self {
        Self { speaker, blocks: 0, skipped_s: 0.0, scheduled: Vec::new(), dropped: Vec::new() }
    }

    fn now_s(&self) -> f64 {
        self.blocks as f64 * 0.01 + self.skipped_s
    }
}

impl Talker for SystemTalker {
    fn gives_samples(&self) -> bool {
        false
    }

    fn say(&mut self, id: LineId, text: &str, on_beat_s: Option<f64>) {
        match on_beat_s {
            Some(beat_s) => self.scheduled.push((id, text.to_owned(), beat_s)),
            None => self.speaker.speak(id, text),
        }
    }

    fn hush(&mut self) {
        self.dropped.extend(self.scheduled.drain(..).map(|line| line.0));
        self.speaker.stop();
    }

    /// The system's voice keeps its own volume.
    fn change_volume(&mut self, _change_db: f64) {}

    /// While it speaks, too.
    fn give_way(&mut self, _spoken_over: bool) {}

    /// And its own speed.
    fn change_rate(&mut self, _factor: f64) {}

    fn skip(&mut self, lost_s: f64) {
        self.skipped_s += lost_s;
    }

    fn block(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>) {
        speaker.fill(0.0);
        self.blocks += 1;
        let at_s = self.now_s();
        let due: Vec<_> = self.scheduled.extract_if(.., |line| line.2 <= at_s).collect();
        for (id, text, _) in due {
            self.speaker.speak(id, &text);
        }
        events.extend(self.dropped.drain(..).map(|id| TalkEvent::Ended { id, at_s }));
        while let Some(event) = self.speaker.poll() {
            events.push(match event {
                SystemEvent::Began(id) => TalkEvent::Began { id, at_s },
                SystemEvent::Ended(id) => TalkEvent::Ended { id, at_s },
            });
        }
    }
}
