//! Others in the room: when they talk, how loud, and that the log tells.

use super::*;
use crate::{Did, Household, RoomSpec, Script, ScriptRoom};

const RATE: u32 = 16_000;

fn room(text: &str) -> ScriptRoom {
    let head =
        "reaction_s = [1.0, 2.0]\nvoice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n[[rule]]\non = \"x\"\ndoes = [\"nothing\"]\n";
    Script::parse("c.toml", &format!("{head}{text}")).unwrap().room
}

/// So long in this room; `speaks` tells when the tool does.
fn hear(room: &ScriptRoom, seed: u64, length_s: f64, speaks: impl Fn(f64) -> bool) -> (Vec<f32>, Household) {
    let mut household = Household::new(room, &RoomSpec::living_room(RATE), seed).unwrap();
    let mut mic = vec![0.0; (length_s * f64::from(RATE)) as usize];
    for (n, block) in mic.chunks_mut(160).enumerate() {
        household.add_to(block, speaks(n as f64 / 100.0));
    }
    (mic, household)
}

const TALK: &str = "[[room.talk]]\nvoice = \"awb\"\nspeed = 1.0\nlevel_db = -40.0\ngap_s = [0.5, 2.0]\nsentences = [\"are you ready\", \"wait a moment\"]\n";

#[test]
fn they_talk_in_turns_at_their_level_and_the_log_tells() {
    let (mic, household) = hear(&room(TALK), 3, 20.0, |_| false);
    let log = household.log();
    assert!(log.len() >= 5 && log.iter().all(|said| said.kind == Did::Overheard && said.on == "household"), "{log:?}");
    for pair in log.windows(2) {
        assert_ne!(pair[0].words, pair[1].words);
        let gap_s = pair[1].onset_s - pair[0].offset_s;
        assert!((0.49..=2.03).contains(&gap_s), "{gap_s}");
    }
    let level = level_db(part(&mic, RATE, log[0].onset_s, log[0].offset_s));
    // As much again comes from the walls (+3 dB); pauses of speech take some away.
    assert!((-42.0..-34.0).contains(&level), "{level}");
    assert!(level_db(part(&mic, RATE, 0.0, log[0].onset_s)) < -150.0);
    let (again, _) = hear(&room(TALK), 3, 20.0, |_| false);
    assert_eq!(mic, again);
    let (other, _) = hear(&room(TALK), 4, 20.0, |_| false);
    assert_ne!(mic, other);
}

#[test]
fn whoever_is_polite_begins_only_when_the_tool_is_silent() {
    let speaks = |at_s: f64| at_s % 6.0 < 4.0;
    let (_, polite) = hear(&room(TALK), 3, 60.0, speaks);
    assert!(polite.log().len() >= 5, "{:?}", polite.log().len());
    assert!(polite.log().iter().all(|said| !speaks(said.onset_s)), "{:?}", polite.log());
    let (_, rude) = hear(&room(&format!("{TALK}over = true\n")), 3, 60.0, speaks);
    assert!(rude.log().iter().any(|said| speaks(said.onset_s)));
}

#[test]
fn music_has_its_level() {
    let mut music = crate::music::Music::new(-45.0, 8_000, 3);
    let sound: Vec<f32> = (0..8_000 * 90).map(|_| music.next()).collect();
    let level = level_db(&sound);
    assert!((level + 45.0).abs() < 0.5, "{level}");
}

#[test]
fn music_comes_and_goes() {
    let (mic, household) =
        hear(&room("[room.television]\nmusic_db = -45.0\nmusic_s = [10.0, 20.0]\ngap_s = [2.0, 4.0]\n"), 8, 90.0, |_| false);
    let pieces: Vec<_> = household.log().iter().filter(|entry| entry.kind == Did::Music && entry.offset_s < 90.0).collect();
    assert!(pieces.len() >= 3, "{pieces:?}");
    let playing: Vec<f32> = pieces.iter().flat_map(|p| part(&mic, RATE, p.onset_s, p.offset_s).to_vec()).collect();
    let level = level_db(&playing);
    // The room's tail adds 3 dB on the average of all pitches, more or less at one.
    assert!((level + 42.0).abs() < 3.0, "{level}");
    for pair in pieces.windows(2) {
        assert!(level_db(part(&mic, RATE, pair[0].offset_s + 0.5, pair[1].onset_s)) < -80.0);
    }
}
