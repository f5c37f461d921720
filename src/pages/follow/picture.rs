//! Which picture belongs to what the page says. Pure.

use pictures::{Picture, find, of_phase};
use routine::{Posture, Step};

/// The picture beside this prompt; none where a phrase or a clue is read, where something is asked, and in a halt. `step` is the step
/// that the heading names.
pub fn picture_of(prompt: &str, step: Option<&Step>) -> Option<Picture> {
    if prompt.starts_with("rise-") {
        return find(prompt);
    }
    let step = step?;
    let id = step.exercise.id.as_str();
    if prompt == "resting-shown" {
        return step.posture.and_then(|posture| find(posture.name()));
    }
    if let Some(phase) = prompt.strip_prefix("paced-") {
        return of_phase(id, phase);
    }
    if prompt == "cue-words-shown" {
        return find(id);
    }
    let part = prompt.strip_prefix("ex-")?.strip_prefix(id)?.strip_prefix('-')?;
    if part == "short" && step.posture == Some(Posture::Standing) {
        return find(Posture::Standing.name());
    }
    match part.strip_prefix("phase-") {
        Some(phase) => of_phase(id, phase),
        None => find(id),
    }
}

#[cfg(test)]
#[path = "tests/picture.rs"]
mod tests;
