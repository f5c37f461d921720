//! How silence is taken: ask again kindly, then wait, then end with everything kept.

use routine::NoAnswer;

/// Whoever was heard so shortly ago may still be speaking, s.
const SPEAKING_S: f64 = 3.0;
/// Talk delays the asking up to this many times its time.
const LONGEST: f64 = 2.0;
/// Whatever stirred so shortly ago may be a breath in before a voice, s: a full breath before a long vowel takes about as long (common
/// practice, no source).
const STIRS_S: f64 = 1.0;
/// Stirring delays the asking by this much at most, s: a room is never quite still.
const LISTENS_S: f64 = 3.0;
/// How often it says that it is still there, s.
const STILL_HERE_S: f64 = 60.0;

/// What to do about the silence now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Silence {
    /// Nothing yet.
    Wait,
    /// Ask for the n-th time again, counted from 1.
    AskAgain(u32),
    /// All asking is done: say once that it waits for "ready".
    WaitForReady,
    /// Another minute of waiting is over.
    StillHere,
    /// Nobody answered for so long that the session ends.
    GiveUp,
}

/// Watches one question, or one cue, that awaits the client.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patience {
    /// When the waiting began, s.
    began_s: f64,
    /// The silence counts from here, s: the end of what we said last.
    quiet_since_s: f64,
    /// The end of the first thing we said, s: the client's answer is timed from here.
    asked_s: Option<f64>,
    asked: u32,
    waiting: bool,
    /// When somebody was last heard to speak, s.
    spoke_s: f64,
    /// When something last began to stand out from the room, s.
    stirred_s: f64,
    /// Somebody spoke since the question, and no word of it was understood: so often.
    unclear: u32,
}

impl Patience {
    /// Starts while our own line is being said.
    pub fn new(now_s: f64) -> Self {
        Self {
            began_s: now_s,
            quiet_since_s: now_s,
            asked_s: None,
            asked: 0,
            waiting: false,
            spoke_s: f64::NEG_INFINITY,
            stirred_s: f64::NEG_INFINITY,
            unclear: 0,
        }
    }

    /// Starts at the moment our own line ended.
    pub fn opened(now_s: f64) -> Self {
        Self { asked_s: Some(now_s), ..Self::new(now_s) }
    }

    /// Our own line ended just now; the client's time counts from here.
    pub fn spoke(&mut self, now_s: f64) {
        self.quiet_since_s = now_s;
        self.asked_s.get_or_insert(now_s);
    }

    /// Seconds from the end of our first line to now; none while that is still being said.
    pub fn response_s(&self, now_s: f64) -> Option<f64> {
        self.asked_s.map(|asked_s| now_s - asked_s)
    }

    /// The client did something: begin anew.
    pub fn heard(&mut self, now_s: f64) {
        *self = Self::opened(now_s);
    }

    /// Somebody begins to speak: whoever answers is not talked over, yet talk in the room delays the asking only for a while.
    pub fn speaks(&mut self, now_s: f64) {
        self.spoke_s = now_s;
    }

    /// Something begins to stand out from the room: listen a moment before speaking.
    pub fn stirs(&mut self, now_s: f64) {
        self.stirred_s = now_s;
    }

    /// What was said is over, and held no word that is listened for.
    pub fn not_understood(&mut self, now_s: f64) {
        self.spoke_s = now_s;
        self.unclear += 1;
    }

    /// How often somebody spoke who was not understood.
    pub fn unclear(&self) -> u32 {
        self.unclear
    }

    /// Seconds since we last spoke or the client was last heard.
    pub fn quiet_for_s(&self, now_s: f64) -> f64 {
        now_s - self.quiet_since_s
    }

    /// How many times it has asked again.
    pub fn asked(&self) -> u32 {
        self.asked
    }

    /// True once it has said that it waits for "ready".
    pub fn is_waiting(&self) -> bool {
        self.waiting
    }

    /// Nobody has answered for as long as is waited at all.
    pub fn is_over(&self, now_s: f64, limits: NoAnswer) -> bool {
        now_s - self.began_s >= limits.give_up_after_s
    }

    /// Call at each tick while nothing is being said. Each answer but `Wait` comes once.
    pub fn look(&mut self, now_s: f64, limits: NoAnswer) -> Silence {
        if self.is_over(now_s, limits) {
            return Silence::GiveUp;
        }
        // Once all asking was in vain, it says each minute that it is still there.
        let after_s = if self.waiting { limits.ask_again_after_s.max(STILL_HERE_S) } else { limits.ask_again_after_s };
        let waited_s = now_s - self.quiet_since_s;
        let speaks = now_s - self.spoke_s < SPEAKING_S && waited_s < LONGEST * after_s;
        let stirs = now_s - self.stirred_s < STIRS_S && waited_s < after_s + LISTENS_S;
        if waited_s < after_s || speaks || stirs {
            return Silence::Wait;
        }
        self.quiet_since_s = now_s;
        if self.waiting {
            return Silence::StillHere;
        }
        if self.asked < limits.asks {
            self.asked += 1;
            Silence::AskAgain(self.asked)
        } else {
            self.waiting = true;
            Silence::WaitForReady
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LIMITS: NoAnswer = NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 };

    #[test]
    fn asks_twice_then_waits_and_says_so_each_minute_then_ends() {
        let mut patience = Patience::new(0.0);
        let mut seen = Vec::new();
        for tick in 0..=60_000 {
            let now_s = f64::from(tick) * 0.01;
            match patience.look(now_s, LIMITS) {
                Silence::Wait => {}
                other => seen.push((now_s, other)),
            }
        }
        assert_eq!(
            seen,
            vec![
                (12.0, Silence::AskAgain(1)),
                (24.0, Silence::AskAgain(2)),
                (36.0, Silence::WaitForReady),
                (96.0, Silence::StillHere),
                (156.0, Silence::StillHere),
                (216.0, Silence::StillHere),
                (276.0, Silence::StillHere),
                (336.0, Silence::StillHere),
                (396.0, Silence::StillHere),
                (456.0, Silence::StillHere),
                (516.0, Silence::StillHere),
                (576.0, Silence::StillHere),
                (600.0, Silence::GiveUp),
            ]
        );
    }

    #[test]
    fn whoever_draws_breath_is_not_talked_over_and_a_restless_room_is_talked_into_all_the_same() {
        let mut patience = Patience::new(0.0);
        patience.stirs(11.6);
        assert_eq!(patience.look(12.0, LIMITS), Silence::Wait);
        assert_eq!(patience.look(12.5, LIMITS), Silence::Wait);
        assert_eq!(patience.look(12.6, LIMITS), Silence::AskAgain(1), "it was nothing");
        for tick in 0..30 {
            patience.stirs(24.6 + f64::from(tick) * 0.1);
            assert_eq!(patience.look(24.6 + f64::from(tick) * 0.1, LIMITS), Silence::Wait);
        }
        patience.stirs(27.6);
        assert_eq!(patience.look(27.7, LIMITS), Silence::AskAgain(2), "no longer than this");
    }

    #[test]
    fn a_sign_of_the_client_begins_anew() {
        let mut patience = Patience::new(0.0);
        assert_eq!(patience.look(12.0, LIMITS), Silence::AskAgain(1));
        patience.heard(20.0);
        assert_eq!(patience.look(31.9, LIMITS), Silence::Wait);
        assert_eq!(patience.look(32.0, LIMITS), Silence::AskAgain(1));
        assert_eq!(patience.asked(), 1);
    }
}
