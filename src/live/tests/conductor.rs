use super::*;
use crate::clock::Clock;
use crate::give_way::GivesWay;
use crate::observe::Observer;
use crate::speech::Speech;
use crate::talk::Talker;
use audio::{AudioIo, Captured};
use command_ear::HeardPhrase;
use session::{Line, LineId};
use speak::Words;
use std::sync::{Arc, Mutex};

const RATE_HZ: u32 = 16_000;

type Log = Arc<Mutex<Vec<String>>>;

fn put(log: &Log, what: impl Into<String>) {
    log.lock().unwrap().push(what.into());
}

/// Loses frames before its third block; is unplugged after so many.
struct Devices(Log, u32, u32);

impl AudioIo for Devices {
    fn mic_rate_hz(&self) -> u32 {
        RATE_HZ
    }
    fn speaker_rate_hz(&self) -> u32 {
        2 * RATE_HZ
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        assert_eq!(mic.len(), 160);
        self.1 += 1;
        if self.1 > self.2 {
            return Err(AudioError::Device("unplugged".into()));
        }
        Ok(Captured { lost_frames: if self.1 == 3 { 80 } else { 0 }, ..Captured::default() })
    }
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        put(&self.0, format!("write {} {}", speaker.len(), speaker[0]));
        Ok(())
    }
    fn playback_delay_s(&self) -> f64 {
        0.05
    }
    fn is_offline(&self) -> bool {
        true
    }
    fn finish(&mut self) -> Result<(), AudioError> {
        put(&self.0, "finish");
        Ok(())
    }
}

/// Says a line in one block.
#[derive(Default)]
struct OneBlock(Vec<LineId>);

impl Talker for OneBlock {
    fn gives_samples(&self) -> bool {
        true
    }
    fn say(&mut self, id: LineId, _text: &str, _on_beat_s: Option<f64>) {
        self.0.push(id);
    }
    fn hush(&mut self) {}
    fn change_volume(&mut self, _change_db: f64) {}
    fn change_rate(&mut self, _factor: f64) {}
    fn give_way(&mut self, _spoken_over: bool) {}
    fn skip(&mut self, _lost_s: f64) {}
    fn block(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>) {
        speaker.fill(if self.0.is_empty() { 0.0 } else { 0.5 });
        for id in self.0.drain(..) {
            events.extend([TalkEvent::Began { id, at_s: 1.0 }, TalkEvent::Ended { id, at_s: 2.0 }]);
        }
    }
}

struct Everything {
    log: Log,
    devices: Devices,
    over_after: u64,
}

impl Party for Everything {
    fn devices(&mut self) -> &mut dyn AudioIo {
        &mut self.devices
    }
    fn begin(&mut self, _stage: &mut Stage) {
        put(&self.log, "begin");
    }
    fn interrupt(&mut self, _stage: &mut Stage) {
        put(&self.log, "interrupt");
    }
    fn captured(&mut self, stage: &mut Stage, _mic: &[f32], captured: Captured) {
        put(&self.log, format!("captured {} at {:.3}", captured.lost_frames, stage.now_s()));
    }
    fn hear(&mut self, stage: &mut Stage, block: Block<'_>) -> Result<Vec<CommandEvent>, AudioError> {
        put(&self.log, format!("hear {:.3} to {:.3}, {}", block.start_s, stage.now_s(), block.delay_s));
        Ok(vec![CommandEvent::Restarted { lost_s: 0.5 }])
    }
    fn phrase(&mut self, _stage: &mut Stage, _heard: &HeardPhrase) {}
    fn recogniser_restarted(&mut self, _stage: &mut Stage, lost_s: f64) {
        put(&self.log, format!("restarted {lost_s}"));
    }
    fn tick(&mut self, stage: &mut Stage) {
        put(&self.log, "tick");
        assert!(stage.say(LineId(1), Line { key: "help".into(), args: Vec::new() }, None));
    }
    fn line_began(&mut self, stage: &mut Stage, _id: LineId, at_s: f64) {
        assert!(stage.speech.playback.masks(stage.now_s() + 0.06));
        put(&self.log, format!("began {at_s}"));
    }
    fn line_ended(&mut self, stage: &mut Stage, _id: LineId, at_s: f64) {
        assert!(stage.speech.is_idle());
        put(&self.log, format!("ended {at_s}"));
    }
    fn settle(&mut self, _stage: &mut Stage) {
        put(&self.log, "settle");
    }
    fn is_over(&self, stage: &Stage) -> bool {
        stage.blocks >= self.over_after
    }
    fn devices_failed(&mut self, _stage: &mut Stage, why: &AudioError) {
        put(&self.log, format!("failed: {why}"));
    }
    fn close(&mut self, _stage: &mut Stage) {
        put(&self.log, "close");
    }
}

/// Draws, and has something to report once.
struct Onlooker(Log, Option<String>);

impl Observer for Onlooker {
    fn tick(&mut self) {
        put(&self.0, "draw");
    }
    fn notice(&mut self) -> Option<String> {
        self.1.take()
    }
    fn told(&mut self, _at_s: f64, warning: &str) {
        put(&self.0, format!("told {warning}"));
    }
}

fn conductor(over_after: u64, unplugged_after: u32) -> (Conductor<Everything>, Log) {
    let log = Log::default();
    let stage = Stage {
        clock: Clock::of_frames(RATE_HZ),
        words: Words::english().unwrap(),
        speech: Speech::new(Box::new(OneBlock::default()), 2 * RATE_HZ, Vec::new()),
        observers: vec![Box::new(Onlooker(log.clone(), Some("the disk is full".into())))],
        path: None,
        blocks: 0,
        gives_way: GivesWay::default(),
    };
    let devices = Devices(log.clone(), 0, unplugged_after);
    (Conductor::new(stage, Everything { log: log.clone(), devices, over_after }), log)
}

#[test]
fn a_block_is_heard_acted_on_answered_and_handed_over_in_this_order() {
    let (mut conductor, log) = conductor(1, 9);
    conductor.lead(|| true).unwrap();
    let expected = [
        "begin",
        "interrupt",
        "captured 0 at 0.000",
        "hear 0.000 to 0.010, 0.05",
        "restarted 0.5",
        "tick",
        "began 1",
        "ended 2",
        "settle",
        "write 320 0.5",
        "close",
        "finish",
    ];
    assert_eq!(*log.lock().unwrap(), expected);
}

#[test]
fn lost_frames_pass_on_the_clock_before_the_party_hears_of_them() {
    let (mut conductor, log) = conductor(3, 9);
    conductor.lead(|| false).unwrap();
    let log = log.lock().unwrap();
    assert!(log.contains(&"captured 80 at 0.025".to_owned()), "{log:?}");
    assert!(log.contains(&"hear 0.025 to 0.035, 0.05".to_owned()), "{log:?}");
}

#[test]
fn a_device_that_fails_ends_it_with_everything_delivered() {
    let (mut conductor, log) = conductor(99, 2);
    assert!(conductor.lead(|| false).is_err());
    let log = log.lock().unwrap();
    let [.., failed, close, finish] = &log[..] else { panic!("{log:?}") };
    assert!(failed.contains("unplugged"), "{log:?}");
    assert_eq!((close.as_str(), finish.as_str()), ("close", "finish"));
}

#[test]
fn observers_draw_every_tenth_of_a_second_and_what_they_notice_is_told_to_all() {
    let (mut conductor, log) = conductor(25, 99);
    conductor.lead(|| false).unwrap();
    let log = log.lock().unwrap();
    assert_eq!(log.iter().filter(|what| *what == "draw").count(), 2);
    assert_eq!(log.iter().filter(|what| *what == "told the disk is full").count(), 1);
}
