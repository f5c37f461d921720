//! Whether a device is still the one that was opened. A sound server does not end the stream of a device that is pulled: it moves it on to
//! another one, perhaps to what the loudspeaker plays, and nobody is told.

use super::AudioError;
use super::callback::Shared;
use super::devices::{find, id};
use super::host::{Direction, host};
use super::stream::{Format, format};
use cpal::Device;
use std::sync::atomic::Ordering::SeqCst;
use std::sync::{Arc, Weak};
use std::time::Duration;

/// Time between two looks: short enough that what is gone can be told of within 2 s.
const LOOK: Duration = Duration::from_millis(600);

/// What a device is known by. One that comes back under its name between two looks, after a change of its rate, is another one.
type Known = (Option<String>, Option<Format>);

fn known(device: &Device, direction: Direction) -> Known {
    (id(device), format(device, direction).ok())
}

/// Looks again and again whether `name` still means the device that was opened, for as long as the stream lives; marks the stream as dead
/// once it does not. On a thread of its own: a server may take its time to answer. Where no server is in between, the stream ends by itself.
pub(super) fn watch_over(direction: Direction, name: &str, device: &Device, stream: &Arc<Shared>) {
    let (name, opened, stream) = (name.to_owned(), known(device, direction), Arc::downgrade(stream));
    if host().id().name() == "ALSA" {
        return;
    }
    // Without a thread it is noticed later, by its silence.
    let _ = std::thread::Builder::new().name("presence".to_owned()).spawn(move || look(direction, &name, &opened, &stream));
}

fn look(direction: Direction, name: &str, opened: &Known, stream: &Weak<Shared>) {
    let mut asked = host();
    loop {
        std::thread::sleep(LOOK);
        if stream.strong_count() == 0 {
            return;
        }
        let there = match find(&asked, direction, name) {
            Ok(device) => known(&device, direction) == *opened,
            Err(AudioError::NoDevice(_)) => false,
            // It could not be asked, which says nothing of the device.
            Err(_) => {
                asked = host();
                true
            }
        };
        if !there {
            if let Some(stream) = stream.upgrade() {
                stream.dead.store(true, SeqCst);
            }
            return;
        }
    }
}
