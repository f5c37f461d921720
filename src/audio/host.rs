//! The sound system that is used: its host, its default devices, and the two directions of sound.

use cpal::traits::HostTrait;
use cpal::{Device, Host};

/// Microphone or loudspeaker.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Direction {
    Input,
    Output,
}

impl Direction {
    pub fn noun(self) -> &'static str {
        match self {
            Self::Input => "microphone",
            Self::Output => "loudspeaker",
        }
    }
    pub fn option(self) -> &'static str {
        match self {
            Self::Input => "--mic",
            Self::Output => "--speaker",
        }
    }
}

/// The sound server where one can be reached, otherwise ALSA.
pub(super) fn host() -> Host {
    quiet_alsa();
    cpal::default_host()
}

/// ALSA's library prints what it tries to standard error. Its messages of this thread go to a buffer instead.
fn quiet_alsa() {
    #[cfg(target_os = "linux")]
    let _ = alsa::Output::local_error_handler();
}

/// The default device of a host.
pub(super) fn default_device(host: &Host, direction: Direction) -> Option<Device> {
    match direction {
        Direction::Input => host.default_input_device(),
        Direction::Output => host.default_output_device(),
    }
}
