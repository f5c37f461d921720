//! What a practice measures: the voice ear, what its levels mean, and the quality of holds.

use std::collections::VecDeque;

use crate::levels::Levels;
use crate::note_writer::NoteWriter;
use crate::observe::Observer;
use crate::quality_worker::QualityWorker;
use hear::voice_ear::{VoiceEar, VoiceOutput};
use hear::{VoiceEvent, VoiceTask};
use session::{Entry, Event, Fact, Trouble};

/// From the raw microphone to the entries of the journal.
pub struct Measures {
    ear: VoiceEar,
    levels: Levels,
    worker: QualityWorker,
    /// Where what a client tells is written down.
    notes: Option<NoteWriter>,
    /// The figures of a hold are waited for, as in a replay.
    waits: bool,
    clipping_reported: bool,
    gain_reported: bool,
}

impl Measures {
    pub fn new(mic_rate_hz: u32, levels: Levels, waits: bool) -> Self {
        Self {
            ear: VoiceEar::new(mic_rate_hz),
            levels,
            worker: QualityWorker::default(),
            notes: None,
            waits,
            clipping_reported: false,
            gain_reported: false,
        }
    }

    /// From now on what a client tells is written down.
    pub fn write_down(&mut self, writer: NoteWriter) {
        self.notes = Some(writer);
    }

    /// What the voice ear attends to.
    pub fn set_task(&mut self, task: VoiceTask) {
        self.ear.set_task(task);
    }

    /// Frames were lost.
    pub fn skip(&mut self, frames: u64, events: &mut VecDeque<Event>) {
        if let Some(notes) = &mut self.notes {
            notes.skip(frames);
        }
        let worker = &mut self.worker;
        self.ear.skip(frames, &mut |output| events.extend(voice_event(output, 0.0, worker)));
    }

    /// The voice ear reads the raw microphone; what we play ourselves is marked, never removed.
    pub fn hear(&mut self, mic: &[f32], masked: bool, now_s: f64, observers: &mut [Box<dyn Observer>], events: &mut VecDeque<Event>) {
        if let Some(notes) = &mut self.notes {
            notes.push(mic);
        }
        let (worker, scale) = (&mut self.worker, self.levels.scale());
        self.ear.push(mic, masked, &mut |output| {
            if let VoiceOutput::Frame(frame) = &output {
                observers.iter_mut().for_each(|observer| observer.voice(frame, scale));
            }
            events.extend(voice_event(output, now_s, worker));
        });
    }

    /// What bears on the levels of `events` and was not reported yet.
    pub fn new_troubles(&mut self, events: &VecDeque<Event>) -> Vec<Trouble> {
        let mut found = Vec::new();
        let clipped = |event: &Event| matches!(event, Event::Offset { hold, .. } if hold.clipped_s > 0.0);
        if events.iter().any(clipped) && !std::mem::replace(&mut self.clipping_reported, true) {
            found.push(Trouble::MicrophoneClips);
        }
        if self.ear.auto_gain_found() && !std::mem::replace(&mut self.gain_reported, true) {
            self.levels.set_auto_gain();
            found.push(Trouble::MicrophoneGain);
        }
        found
    }

    /// The exact name of the microphone that it hears with from here on; see [`Levels::hears_with`].
    pub fn hears_with(&mut self, microphone: &str) {
        self.levels.hears_with(microphone);
    }

    /// The microphone, once, at the beginning.
    pub fn microphone_used(&mut self) -> Option<Fact> {
        self.levels.microphone_used()
    }

    /// What is to be told and kept of the microphone now: what kind of note, and the words.
    pub fn notes(&mut self) -> Vec<(String, String)> {
        self.levels.notes()
    }

    /// Takes an entry for the journal, its levels put on the scale that holds now.
    pub fn take(&mut self, mut entry: Entry, observers: &mut [Box<dyn Observer>]) {
        self.levels.apply_calibration(&mut entry.fact);
        if let (Some(notes), Fact::MomentTold { from_s: Some(from_s), until_s: Some(until_s), .. }) = (&self.notes, &entry.fact) {
            self.worker.write_down(notes.job(*from_s, *until_s));
        }
        self.worker.take(entry);
        self.deliver(false, observers);
    }

    /// Lets the observers have the entries whose figures are there, in order. `all`: waits for those that are not.
    pub fn deliver(&mut self, all: bool, observers: &mut [Box<dyn Observer>]) {
        while let Some(entry) = self.worker.next(all || self.waits) {
            observers.iter_mut().for_each(|observer| observer.kept(&entry));
        }
    }
}

/// What the engine cares about of what the voice ear gives.
fn voice_event(output: VoiceOutput, now_s: f64, worker: &mut QualityWorker) -> Option<Event> {
    let VoiceOutput::Event(event) = output else { return None };
    Some(match event {
        VoiceEvent::Onset { onset_s, sure_s } => Event::Onset { at_s: now_s.max(sure_s), onset_s },
        VoiceEvent::Offset(mut held) => {
            worker.work_on(&mut held);
            let hold = held.hold;
            Event::Offset { at_s: now_s.max(hold.offset_s), hold }
        }
        VoiceEvent::SpeechBegan { onset_s } => Event::SpeechBegan { at_s: now_s.max(onset_s), onset_s },
        VoiceEvent::Knocked { at_s } => Event::Knocked { at_s: now_s.max(at_s) },
        VoiceEvent::RoomLoud { at_s, loud, room_db } => Event::RoomLoud { at_s: now_s.max(at_s), loud, room_db },
        VoiceEvent::Spoken(utterance) => Event::Spoken { at_s: now_s.max(utterance.offset_s), utterance },
    })
}
