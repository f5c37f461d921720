//! Works out beside the sound thread what takes longer than a block: the quality of holds, and the words of what was told. Nothing that
//! is said or led waits for it, the journal alone does: the entry, and those behind it, are held back for the tenths of a second until the
//! figures are there, or the seconds until the words are.

use std::collections::VecDeque;
use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};
use std::time::Duration;

use hear::{Held, VoiceQuality};
use session::{Entry, Fact};

/// Words that have not come by then are not waited for at the end.
const WORDS_WITHIN: Duration = Duration::from_secs(60);

type Figures = Receiver<VoiceQuality>;

/// What an entry waits for.
enum Awaited {
    Nothing,
    Figures(Figures),
    Words(Receiver<Option<String>>),
}

/// Entries of the journal, in order.
#[derive(Default)]
pub struct QualityWorker {
    /// Holds that are being worked on, by their onset.
    work: Vec<(f64, Figures)>,
    /// What is being written down for the next entry that tells of it.
    words: Option<Receiver<Option<String>>>,
    waiting: VecDeque<(Entry, Awaited)>,
}

impl QualityWorker {
    /// Takes the sound of a hold's steady part, if it has one, to a thread of its own. Without a thread the hold goes without.
    pub fn work_on(&mut self, hold: &mut Held) {
        let Some(steady) = hold.steady.take() else { return };
        let (done, figures) = sync_channel(1);
        let work = move || {
            // Nobody waits any more where the hold was of no step.
            let _ = done.send(steady.quality());
        };
        if std::thread::Builder::new().name("voice quality".to_owned()).spawn(work).is_ok() {
            // Of holds that no step asked for the figures are dropped with the next one.
            self.work.retain(|(onset_s, _)| hold.onset_s - onset_s < 60.0);
            self.work.push((hold.onset_s, figures));
        }
    }

    /// Has something written down on a thread of its own; the entry that tells of it is taken next. Without a thread it goes without.
    pub fn write_down(&mut self, job: impl FnOnce() -> Option<String> + Send + 'static) {
        let (done, words) = sync_channel(1);
        let work = move || {
            // Nobody waits any more where the practice has ended.
            let _ = done.send(job());
        };
        if std::thread::Builder::new().name("writing down".to_owned()).spawn(work).is_ok() {
            self.words = Some(words);
        }
    }

    /// Takes an entry for the journal.
    pub fn take(&mut self, entry: Entry) {
        let awaited = match &entry.fact {
            Fact::HoldMeasured { onset_s, .. } => match self.work.iter().position(|(known_s, _)| known_s == onset_s) {
                Some(at) => Awaited::Figures(self.work.remove(at).1),
                None => Awaited::Nothing,
            },
            Fact::MomentTold { .. } => self.words.take().map_or(Awaited::Nothing, Awaited::Words),
            _ => Awaited::Nothing,
        };
        self.waiting.push_back((entry, awaited));
    }

    /// The next entry whose turn it is. `wait`: for its figures and words too, so that a replay always gives the same journal.
    pub fn next(&mut self, wait: bool) -> Option<Entry> {
        let (mut figures, mut words) = (None, None);
        match &self.waiting.front()?.1 {
            Awaited::Nothing => {}
            Awaited::Figures(found) if wait => figures = found.recv().ok(),
            Awaited::Figures(found) => match found.try_recv() {
                Err(TryRecvError::Empty) => return None,
                found => figures = found.ok(),
            },
            Awaited::Words(found) if wait => words = found.recv_timeout(WORDS_WITHIN).ok().flatten(),
            Awaited::Words(found) => match found.try_recv() {
                Err(TryRecvError::Empty) => return None,
                found => words = found.ok().flatten(),
            },
        }
        let (mut entry, _) = self.waiting.pop_front()?;
        match &mut entry.fact {
            Fact::HoldMeasured { quality, .. } => *quality = figures,
            Fact::MomentTold { text, .. } => *text = words,
            _ => {}
        }
        Some(entry)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hear::voice_file::analyse_voice;
    use std::f64::consts::PI;

    #[test]
    fn what_was_told_gets_its_words_and_what_was_taken_back_gets_none() {
        let entry = |from_s| Entry { at_s: 9.0, fact: Fact::MomentTold { from_s, until_s: from_s, text: None }, position: None };
        let mut worker = QualityWorker::default();
        worker.write_down(|| Some("i sang in the choir".to_owned()));
        worker.take(entry(Some(2.0)));
        worker.take(entry(None));
        let text = |worker: &mut QualityWorker| match worker.next(true).unwrap().fact {
            Fact::MomentTold { text, .. } => text,
            other => panic!("{other:?}"),
        };
        assert_eq!((text(&mut worker), text(&mut worker)), (Some("i sang in the choir".to_owned()), None));
    }

    #[test]
    fn entries_keep_their_order_and_a_hold_gets_its_figures() {
        let buzz: Vec<f32> = (0..40_000)
            .map(|k| {
                let t = f64::from(k) / 16_000.0;
                // No voice keeps its pitch like a machine.
                let t = t + 3e-4 * (2.0 * PI * 5.0 * t).sin();
                let on = (0.3..2.2).contains(&t);
                if on {
                    (1..=12).map(|h| 0.1 / f64::from(h) * (2.0 * PI * 150.0 * f64::from(h) * t).sin()).sum::<f64>() as f32
                } else {
                    0.0
                }
            })
            .collect();
        let mut hold = analyse_voice(&buzz, 16_000).1.remove(0);
        let mut worker = QualityWorker::default();
        worker.work_on(&mut hold);
        assert!(hold.steady.is_none());
        let entry = |fact| Entry { at_s: 1.0, fact, position: None };
        let measured = Fact::HoldMeasured {
            exercise: "long-ah".into(),
            onset_s: hold.onset_s,
            offset_s: hold.offset_s,
            duration_s: hold.duration_s,
            f0_median_hz: 150.0,
            f0_span_st: 0.0,
            level_mean_db: -20.0,
            level_fall_db: 0.0,
            level_weighting: "A".into(),
            level_calibrated: false,
            f0_sd_st: None,
            level_slope_db_per_s: None,
            level_terms: None,
            quality: None,
            climb: None,
            breaks: 0,
            masked_s: 0.0,
            complete: true,
        };
        worker.take(entry(measured));
        worker.take(entry(Fact::Rested { duration_s: 2.0 }));
        let first = worker.next(true).unwrap();
        assert!(matches!(&first.fact, Fact::HoldMeasured { quality: Some(q), .. } if q.hnr_db > 20.0), "{first:?}");
        assert!(matches!(worker.next(false).unwrap().fact, Fact::Rested { .. }));
        assert!(worker.next(true).is_none());
    }
}
