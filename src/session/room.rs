//! A room too loud to measure in: kept, and said once.

use super::engine::{Engine, State};
use super::event::{Entry, Fact, Position};
use crate::hear::{Hold, LOUD_ROOM_DB};

/// What the engine knows of the room.
#[derive(Debug, Clone, Default)]
pub(super) struct RoomNotice {
    /// It is loud, and that has not been said.
    untold: bool,
    /// It has been said in this practice: once is help, twice is nagging.
    told: bool,
}

impl Engine {
    pub(super) fn room_loud(&mut self, loud: bool, room_db: f64) {
        self.record(Fact::RoomLoud { loud, room_db });
        self.room.untold = loud && !self.room.told;
    }

    /// Says it where nobody holds, counts or answers: while the client is asked or rests.
    pub(super) fn tell_of_room(&mut self) {
        let at_leisure = matches!(self.state, State::Asking { .. } | State::Resting { .. });
        if self.room.untold && at_leisure && !self.is_speaking() {
            self.room.untold = false;
            self.room.told = true;
            self.say("room-loud", &[]);
        }
    }

    /// Marks a hold that hardly stood out from the room.
    pub(super) fn mark_hold_in_noise(&mut self, exercise: String, hold: &Hold, position: Option<Position>) {
        if hold.over_room_db < LOUD_ROOM_DB {
            let fact = Fact::HoldInNoise { exercise, over_room_db: hold.over_room_db };
            self.effect(super::event::Effect::Record(Entry { at_s: self.now_s, fact, position }));
        }
    }
}
