//! The network, run by rten.

use super::WordSpotter;
use super::folder::{CLASSES, FOLDER_VARIABLE, NETWORK, folder, phrases_of};
use super::mel::{BANDS, MelPicture};
use super::window::FRAMES;
use crate::CommandEarError;
use rten::{Model, RunOptions, ThreadPool};
use rten_tensor::prelude::*;
use rten_tensor::{NdTensor, NdTensorView};
use std::path::Path;
use std::sync::Arc;

/// The second ear as it comes with the program.
pub(crate) struct SecondEar {
    picture: MelPicture,
    model: Model,
    phrases: Vec<String>,
    options: RunOptions,
}

impl SecondEar {
    /// Loads it from the folder that the environment names, else from this one, else the one that comes with the program; nothing where the
    /// environment says so.
    ///
    /// # Errors
    /// A file is missing or damaged. The text names it and what to do.
    pub fn from_folder(named: Option<&Path>) -> Result<Option<Self>, CommandEarError> {
        folder(named).map(|folder| Self::open(&folder)).transpose()
    }

    /// Loads it from a folder.
    ///
    /// # Errors
    /// As [`SecondEar::from_folder`].
    pub fn open(folder: &Path) -> Result<Self, CommandEarError> {
        let fault = |name: &str, what: String| {
            CommandEarError(format!(
                "{}: the second ear {what}; unpack the program's folder models/second-ear anew, or name one with {FOLDER_VARIABLE}=DIR",
                folder.join(name).display()
            ))
        };
        let phrases = phrases_of(folder).map_err(|e| fault(CLASSES, format!("cannot be read: {e}")))?;
        let network = std::fs::read(folder.join(NETWORK)).map_err(|e| fault(NETWORK, format!("cannot be read: {e}")))?;
        let model = Model::load(network).map_err(|e| fault(NETWORK, format!("is damaged: {e}")))?;
        // One thread: the sound thread needs the others more.
        let options = RunOptions::default().with_thread_pool(Some(Arc::new(ThreadPool::with_num_threads(1))));
        let mut ear = Self { picture: MelPicture::new(), model, phrases, options };
        let scores = ear.scores(&vec![0; super::WINDOW]).map_err(|e| fault(NETWORK, format!("does not run: {e}")))?;
        if scores.len() != ear.phrases.len() + 1 {
            return Err(fault(CLASSES, format!("has {} names for {} scores", ear.phrases.len() + 1, scores.len())));
        }
        Ok(ear)
    }

    fn scores(&mut self, window: &[i16]) -> Result<Vec<f32>, Box<dyn std::error::Error>> {
        let picture = NdTensor::try_from_data([1, FRAMES, BANDS], self.picture.of(window))?;
        let scores = self.model.run_one(picture.view().into(), Some(self.options.clone()))?;
        let scores: NdTensorView<f32, 2> = scores.as_view().try_into()?;
        Ok(scores.iter().copied().collect())
    }
}

impl WordSpotter for SecondEar {
    fn phrases(&self) -> &[String] {
        &self.phrases
    }

    fn hear(&mut self, window: &[i16]) -> Vec<f64> {
        let Ok(scores) = self.scores(window) else { return Vec::new() };
        let most = scores.iter().copied().fold(f32::NEG_INFINITY, f32::max);
        let weights: Vec<f64> = scores.iter().map(|score| f64::from(score - most).exp()).collect();
        let sum: f64 = weights.iter().sum();
        weights.iter().map(|w| w / sum).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_comes_with_the_program_loads_and_gives_probabilities() {
        let mut ear = SecondEar::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/second-ear")).unwrap();
        assert!(["stop", "i'm ready", "go"].iter().all(|phrase| ear.phrases().iter().any(|p| p == phrase)));
        let window: Vec<i16> = (0..super::super::WINDOW).map(|i| ((i * 7919) % 4001) as i16 - 2000).collect();
        let heard = ear.hear(&window);
        assert_eq!(heard.len(), ear.phrases().len() + 1);
        assert!(
            (heard.iter().sum::<f64>() - 1.0).abs() < 1e-9 && heard.last().is_some_and(|&other| other > 0.5),
            "noise is nobody's command"
        );
    }

    #[test]
    fn a_missing_or_damaged_file_is_named_with_the_remedy() {
        let folder = tempfile::tempdir().unwrap();
        let fault = || SecondEar::open(folder.path()).map(|_| ()).unwrap_err().0;
        assert!(fault().contains(CLASSES) && fault().contains("models/second-ear"), "{}", fault());
        std::fs::write(folder.path().join(CLASSES), "stop\n(other)\n").unwrap();
        assert!(fault().contains(NETWORK), "{}", fault());
        std::fs::write(folder.path().join(NETWORK), "no network").unwrap();
        assert!(fault().contains("damaged"), "{}", fault());
    }
}
