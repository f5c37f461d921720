//! A room too loud to measure in: kept, and said once.

use super::Trouble;
use super::engine::Engine;
use model::{Entry, Fact, Position};
use model::{Hold, LOUD_ROOM_DB};

impl Engine {
    /// Keeps it each time, and has it told the first time: once is help, twice is nagging.
    pub(super) fn room_loud(&mut self, loud: bool, room_db: f64) {
        self.record(Fact::RoomLoud { loud, room_db });
        if loud && self.troubles_known.insert(Trouble::RoomTooLoud) {
            self.troubles_to_tell.push(Trouble::RoomTooLoud);
        }
    }

    /// Marks a hold that hardly stood out from the room.
    pub(super) fn mark_hold_in_noise(&mut self, exercise: String, hold: &Hold, position: Option<Position>) {
        if hold.over_room_db < LOUD_ROOM_DB {
            let fact = Fact::HoldInNoise { exercise, over_room_db: hold.over_room_db };
            self.effect(model::Effect::Record(Entry { at_s: self.now_s, fact, position }));
        }
    }
}
