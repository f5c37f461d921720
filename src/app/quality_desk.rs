//! Works out the quality of holds beside the sound thread. What the voice ear says keeps its order: behind a hold whose figures
//! are not there yet, the rest waits.

use std::collections::VecDeque;
use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};

use crate::hear::{VoiceEvent, VoiceQuality};

enum Waiting {
    Ready(VoiceEvent),
    Worked(VoiceEvent, Receiver<VoiceQuality>),
}

/// Events of the voice ear, in order.
#[derive(Default)]
pub(super) struct QualityDesk {
    waiting: VecDeque<Waiting>,
}

impl QualityDesk {
    /// Takes an event; a hold with a steady part goes to a thread of its own, which lasts some tens of milliseconds.
    pub fn take(&mut self, event: VoiceEvent) {
        let steady = match &event {
            VoiceEvent::Offset(hold) => hold.steady.clone(),
            _ => None,
        };
        let work = steady.and_then(|steady| {
            let (done, figures) = sync_channel(1);
            let work = move || {
                // Nobody waits any more where the practice has ended.
                let _ = done.send(steady.quality());
            };
            // Without a thread the hold goes without these figures.
            std::thread::Builder::new().name("voice quality".to_owned()).spawn(work).ok().map(|_| figures)
        });
        self.waiting.push_back(match work {
            Some(figures) => Waiting::Worked(event, figures),
            None => Waiting::Ready(event),
        });
    }

    /// The next event whose turn it is. `wait`: for its figures too, so that a replay always runs the same.
    pub fn next(&mut self, wait: bool) -> Option<VoiceEvent> {
        let figures = match self.waiting.front()? {
            Waiting::Ready(_) => None,
            Waiting::Worked(_, figures) if wait => figures.recv().ok(),
            Waiting::Worked(_, figures) => match figures.try_recv() {
                Err(TryRecvError::Empty) => return None,
                figures => figures.ok(),
            },
        };
        let (Waiting::Ready(mut event) | Waiting::Worked(mut event, _)) = self.waiting.pop_front()?;
        if let VoiceEvent::Offset(hold) = &mut event {
            hold.quality = figures;
            hold.steady = None;
        }
        Some(event)
    }
}
