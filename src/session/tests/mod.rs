//! Behaviour of the engine, by feeding events.

mod any_time;
mod doses;
mod leading;
mod looking_back;
mod rig;
mod roll_call;
mod silence;
mod sound;
mod talking;
mod unheard;
mod whole;
