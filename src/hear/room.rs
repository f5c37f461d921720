//! Whether the room is too loud to measure in.

use super::{LOUD_ROOM_DB, VoiceEvent};

/// While no voice was heard yet, one of this level is expected, dB: a soft voice at 30 cm with the microphone's gain at
/// a usual setting (common practice, no source).
const EXPECTED_VOICE_DB: f64 = -30.0;
/// The room is quiet again when it stands this much lower than it had to stand to be loud, dB.
const HYSTERESIS_DB: f64 = 3.0;
/// It must be so for this long, s.
const LASTS_S: f64 = 1.0;

/// Follows the room's level beside the voice's.
#[derive(Debug, Clone, Default)]
pub(crate) struct Room {
    voice_db: Option<f64>,
    loud: bool,
    /// Since when the room is other than was said.
    other_since_s: Option<f64>,
}

impl Room {
    /// A voice of this level was measured.
    pub fn voice(&mut self, level_db: f64) {
        self.voice_db = Some(self.voice_db.map_or(level_db, |before| 0.5 * (before + level_db)));
    }

    /// The room's level at an instant; says when it has become too loud or quiet enough again.
    pub fn look(&mut self, at_s: f64, room_db: f64) -> Option<VoiceEvent> {
        let limit_db = self.voice_db.unwrap_or(EXPECTED_VOICE_DB) - LOUD_ROOM_DB;
        let loud = room_db > if self.loud { limit_db - HYSTERESIS_DB } else { limit_db };
        if loud == self.loud {
            self.other_since_s = None;
            return None;
        }
        let since_s = *self.other_since_s.get_or_insert(at_s);
        if at_s - since_s < LASTS_S {
            return None;
        }
        self.other_since_s = None;
        self.loud = loud;
        Some(VoiceEvent::RoomLoud { at_s, loud, room_db })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(room: &mut Room, from_s: f64, to_s: f64, room_db: f64) -> Vec<VoiceEvent> {
        let frames = ((to_s - from_s) * 100.0) as usize;
        (0..frames).filter_map(|k| room.look(from_s + k as f64 / 100.0, room_db)).collect()
    }

    #[test]
    fn a_loud_room_is_told_once_and_so_is_its_end() {
        let mut room = Room::default();
        assert!(told(&mut room, 0.0, 5.0, -60.0).is_empty());
        // A slammed door is no loud room.
        assert!(told(&mut room, 5.0, 5.5, -20.0).is_empty());
        let loud = told(&mut room, 6.0, 16.0, -35.0);
        assert!(matches!(loud[..], [VoiceEvent::RoomLoud { loud: true, at_s, .. }] if at_s < 8.0), "{loud:?}");
        // A little softer is not yet quiet.
        assert!(told(&mut room, 16.0, 18.0, -41.0).is_empty());
        let quiet = told(&mut room, 18.0, 22.0, -60.0);
        assert!(matches!(quiet[..], [VoiceEvent::RoomLoud { loud: false, .. }]), "{quiet:?}");
    }

    #[test]
    fn what_is_too_loud_depends_on_the_voice() {
        let mut room = Room::default();
        room.voice(-50.0);
        assert_eq!(told(&mut room, 0.0, 3.0, -55.0).len(), 1);
        let mut room = Room::default();
        room.voice(-15.0);
        assert!(told(&mut room, 0.0, 3.0, -35.0).is_empty());
    }
}
