//! The per-frame path takes nothing from the heap once it is warm, and does not grow. Only an event may take memory: a hold
//! that is over carries its sound.

use super::synth::{Noise, Vowel};
use crate::voice_file::FILE_SETTINGS;
use crate::{VoiceEar, VoiceOutput, VoiceTask};
use foreign::counting::{allocations, growth};

/// Nine seconds: quiet, a vowel, quiet, a voice that is never steady, quiet, all in soft noise.
fn sound(rate_hz: u32) -> Vec<f32> {
    let mut noise = Noise(9);
    let mut vowel = Vowel { onset_s: 1.0, offset_s: 3.0, total_s: 4.5, ..Vowel::default() }.sound(rate_hz);
    let wild = |t_s: f64| 140.0 + 60.0 * (9.0 * t_s).sin() + 30.0 * (23.0 * t_s).sin();
    vowel.extend(Vowel { onset_s: 0.5, offset_s: 3.0, total_s: 4.5, f0_hz: wild, ..Vowel::default() }.sound(rate_hz));
    vowel.iter().map(|x| x + 1e-3 * noise.next() as f32).collect()
}

#[test]
fn the_voice_ear_allocates_nothing_between_events() {
    for rate_hz in [16_000, 44_100, 48_000] {
        let sound = sound(rate_hz);
        for task in [VoiceTask::Idle, VoiceTask::Hold(FILE_SETTINGS), VoiceTask::Speech { end_pause_s: 1.0 }] {
            let mut ear = VoiceEar::new(rate_hz);
            ear.set_task(task);
            for round in 0..4 {
                for (n, block) in sound.chunks(rate_hz as usize / 100).enumerate() {
                    let mut events = 0;
                    let mut take = |output| events += u32::from(matches!(output, VoiceOutput::Event(_)));
                    let taken = allocations(|| ear.push(block, n % 300 > 250, &mut take));
                    assert!(
                        round < 2 || events > 0 || taken == 0,
                        "{rate_hz} Hz, {task:?}: block {n} of round {round} took memory {taken} times"
                    );
                }
            }
        }
    }
}

#[test]
fn the_voice_ear_does_not_grow() {
    let rate_hz = 16_000;
    let sound = sound(rate_hz);
    let mut ear = VoiceEar::new(rate_hz);
    ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
    let mut minutes = |n: usize| (0..n * 10).for_each(|_| ear.push(&sound, false, &mut |_| {}));
    minutes(1);
    assert_eq!(growth(|| minutes(3)), 0, "bytes in three minutes");
}
