use super::*;
use crate::{Client, Did, Echo, Heard, RehearsedIo, RoomSpec, Script};
use audio::AudioIo;
use session::Line;

const RATE: u32 = 16_000;

fn rehearsed(delay_s: f64) -> (RehearsedIo, crate::Rehearsal) {
    let script = "reaction_s = [0.5, 0.5]\nvoice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n[[rule]]\non = \"cue\"\ndoes = [{ hold = { f0_hz = 120.0, length_s = 1.0 } }]";
    let client = Client::new(Script::parse("c.toml", script).unwrap(), RATE).unwrap();
    let echo = Echo { delay_s: 0.02, level_db: -6.0, low_hz: 100.0, high_hz: 7_500.0, drive: 0.0 };
    let room = RoomSpec { noise_db: -200.0, direct_to_reverberant_db: 40.0, echo: Some(echo), ..RoomSpec::living_room(RATE) };
    RehearsedIo::new(client, &room, delay_s).unwrap()
}

#[test]
fn what_is_played_comes_back_after_the_stated_delay() {
    for delay_s in [0.0, 0.01, 0.04] {
        let (mut io, _) = rehearsed(delay_s);
        assert!((io.playback_delay_s() - delay_s).abs() < 1e-9 && io.is_offline());
        let mut mic = vec![0.0; 160];
        let mut heard = Vec::new();
        let mut handed_over_s = 0.0;
        for n in 0..30 {
            io.read(&mut mic).unwrap();
            heard.extend_from_slice(&mic);
            let mut block = vec![0.0; 160];
            if n == 5 {
                handed_over_s = heard.len() as f64 / f64::from(RATE);
                block[0] = 0.8;
            }
            io.write(&block).unwrap();
        }
        let (first, _) = sounding(&heard, RATE, -45.0);
        assert!((first - (handed_over_s + delay_s + 0.02)).abs() < 0.002, "{first} for {handed_over_s} + {delay_s}");
    }
}

#[test]
fn a_hold_reaches_the_microphone_when_the_log_says_so_and_both_sides_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("both.wav");
    let (mut io, rehearsal) = rehearsed(0.02);
    io.write_wav(&path).unwrap();
    let line = Line { key: "cue".into(), args: vec![] };
    let mut mic = vec![0.0; 160];
    let mut heard = Vec::new();
    for n in 0..300 {
        io.read(&mut mic).unwrap();
        heard.extend_from_slice(&mic);
        if n == 50 {
            rehearsal.hears(0.5, Heard::Ended { line: &line, text: "aah" });
        }
        io.write(&vec![if n < 10 { 0.25 } else { 0.0 }; 160]).unwrap();
    }
    io.finish().unwrap();
    let log = rehearsal.log();
    assert_eq!(log[0].kind, Did::Held);
    let (first, last) = sounding(&heard[8_000..], RATE, -50.0);
    assert!((first + 0.5 - log[0].onset_s).abs() < 0.005 && (last + 0.5 - log[0].offset_s).abs() < 0.03, "{first} {last} {log:?}");

    let mut wav = hound::WavReader::open(&path).unwrap();
    assert_eq!((wav.spec().channels, wav.spec().sample_rate), (2, RATE));
    let samples: Vec<i16> = wav.samples().map(Result::unwrap).collect();
    assert_eq!(samples.len(), 2 * heard.len());
    // Left is the microphone; right what was played, from the third block on (one block, two of delay).
    assert!(samples.iter().step_by(2).zip(&heard).all(|(s, h)| (f32::from(*s) / 32_767.0 - h).abs() < 1e-4));
    let right: Vec<i16> = samples.iter().skip(1).step_by(2).copied().collect();
    assert!(right[..480].iter().all(|s| *s == 0) && right[480..2_080].iter().all(|s| *s == 8_192) && right[2_080] == 0);
}

#[test]
fn a_wav_that_cannot_be_written_is_named() {
    let (mut io, _) = rehearsed(0.0);
    let said = io.write_wav(std::path::Path::new("no-such-folder/x.wav")).unwrap_err().to_string();
    assert!(said.contains("no-such-folder"), "{said}");
}

#[test]
fn a_loudspeaker_at_another_rate_is_refused() {
    let (mut io, _) = rehearsed(0.0);
    let script =
        "reaction_s = [0.5, 0.5]\nvoice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n[[rule]]\non = \"cue\"\ndoes = [\"nothing\"]";
    let client = Client::new(Script::parse("c.toml", script).unwrap(), 48_000).unwrap();
    let (other, _) = RehearsedIo::new(client, &RoomSpec::living_room(48_000), 0.0).unwrap();
    assert!(io.aloud(Box::new(other)).unwrap_err().to_string().contains("48000"));
}
