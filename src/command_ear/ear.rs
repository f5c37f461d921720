//! Both paths on one stream of sound.

use super::batch::GAP_S;
use super::cues::Candidate;
use super::decoder::Decoder;
use super::level::Meter;
use super::listener::Listener;
use super::path::{Decided, seconds};
use super::{HeardPhrase, Path};

/// Hears the main grammar and the fast one.
pub(crate) struct Ear<D> {
    meter: Meter,
    main: Option<Listener<D>>,
    fast: Option<Listener<D>>,
    /// The main path heard the last batch.
    main_open: bool,
    now_s: f64,
    /// Some of this recording was heard.
    begun: bool,
    /// End of the last phrase reported: what overlaps it is the same utterance by the other path.
    told_until_s: f64,
}

impl<D: Decoder> Ear<D> {
    pub fn new() -> Self {
        Self {
            meter: Meter::default(),
            main: None,
            fast: None,
            main_open: false,
            now_s: 0.0,
            begun: false,
            told_until_s: f64::NEG_INFINITY,
        }
    }

    /// Replaces what a path listens for; what it had half heard is dropped.
    pub fn listen(&mut self, path: Path, listener: Option<Listener<D>>) {
        match path {
            Path::Main => self.main = listener,
            Path::Fast => self.fast = listener,
        }
    }

    /// Takes one batch; `main` says whether the main path hears it, `own_db` how loud our own voice may be in it. Gives what was decided; tags are left empty.
    pub fn hear(&mut self, start_s: f64, samples: &[i16], main: bool, own_db: f32) -> Vec<HeardPhrase> {
        let mut heard = Vec::new();
        let gap = (start_s - self.now_s).abs() > GAP_S;
        if gap {
            self.finish_path(Path::Fast, &mut heard);
        }
        if self.main_open && (gap || !main) {
            self.finish_path(Path::Main, &mut heard);
        }
        if start_s < self.now_s - GAP_S {
            // Another recording.
            self.meter = Meter::default();
            self.begun = false;
            self.told_until_s = f64::NEG_INFINITY;
        }
        if !self.begun {
            self.begun = true;
            [&mut self.main, &mut self.fast].into_iter().flatten().for_each(Listener::begin);
        }
        self.main_open = main;
        self.now_s = start_s + seconds(samples.len());
        let level = self.meter.measure(samples, own_db);
        [&mut self.main, &mut self.fast].into_iter().flatten().for_each(|listener| listener.over_own_voice(own_db > f32::NEG_INFINITY));
        if let Some(decided) = self.fast.as_mut().and_then(|l| l.hear(start_s, samples, level)) {
            self.tell(Path::Fast, decided, &mut heard);
        }
        match &mut self.main {
            Some(listener) if !main => listener.overhear(samples, level),
            Some(listener) => {
                let decided = listener.hear(start_s, samples, level);
                let further = listener.take_further();
                for decided in decided.into_iter().chain(further) {
                    self.tell(Path::Main, decided, &mut heard);
                }
            }
            None => {}
        }
        heard
    }

    /// The sound is over: decides on what is still open.
    pub fn finish(&mut self) -> Vec<HeardPhrase> {
        let mut heard = Vec::new();
        self.finish_path(Path::Fast, &mut heard);
        self.finish_path(Path::Main, &mut heard);
        heard
    }

    /// Everything before this instant on the clock has been dealt with, s.
    pub fn settled_s(&self) -> f64 {
        [&self.main, &self.fast].into_iter().flatten().filter_map(Listener::open_since_s).fold(self.now_s, f64::min)
    }

    /// Takes what both paths considered since the last call.
    pub fn take_candidates(&mut self) -> Vec<(Path, Candidate)> {
        let main = self.main.iter_mut().flat_map(|l| l.take_candidates()).map(|c| (Path::Main, c));
        let fast = self.fast.iter_mut().flat_map(|l| l.take_candidates()).map(|c| (Path::Fast, c));
        main.chain(fast).collect()
    }

    fn finish_path(&mut self, path: Path, heard: &mut Vec<HeardPhrase>) {
        let listener = match path {
            Path::Main => &mut self.main,
            Path::Fast => &mut self.fast,
        };
        let Some(listener) = listener.as_mut() else { return };
        let decided = listener.finish();
        let further = listener.take_further();
        for decided in decided.into_iter().chain(further) {
            self.tell(path, decided, heard);
        }
    }

    fn tell(&mut self, path: Path, decided: Decided, heard: &mut Vec<HeardPhrase>) {
        let Decided { phrase, decided_s } = decided;
        if phrase.start_s < self.told_until_s - 0.05 {
            return;
        }
        self.told_until_s = phrase.end_s;
        heard.push(HeardPhrase {
            tag: String::new(),
            text: phrase.text,
            start_s: phrase.start_s,
            end_s: phrase.end_s,
            decided_s,
            confidence: phrase.confidence,
            path,
        });
    }
}
