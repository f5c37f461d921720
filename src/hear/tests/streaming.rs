//! The same samples in any portions give the same output; nothing that comes in upsets it.

use super::synth::Vowel;
use crate::voice_file::FILE_SETTINGS;
use crate::{VoiceEar, VoiceEvent, VoiceOutput, VoiceTask, analyse_voice};
use proptest::prelude::*;

fn output(samples: &[f32], rate_hz: u32, portions: &[usize]) -> Vec<VoiceOutput> {
    let mut ear = VoiceEar::new(rate_hz);
    ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
    let mut all = Vec::new();
    let mut rest = samples;
    for portion in portions.iter().cycle() {
        let (now, later) = rest.split_at((*portion).min(rest.len()));
        ear.push(now, false, &mut |o| all.push(o));
        rest = later;
        if rest.is_empty() {
            break;
        }
    }
    ear.finish(&mut |o| all.push(o));
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn portions_do_not_matter(portions in prop::collection::vec(1usize..3000, 1..20), pick in 0usize..3) {
        let rate_hz = [11_025, 16_000, 44_100][pick];
        let sound = Vowel { offset_s: 1.9, total_s: 2.4, ..Vowel::default() }.sound(rate_hz);
        let whole = output(&sound, rate_hz, &[sound.len()]);
        prop_assert!(whole.iter().any(|o| matches!(o, VoiceOutput::Event(VoiceEvent::Offset(_)))));
        prop_assert_eq!(whole, output(&sound, rate_hz, &portions));
    }

    #[test]
    fn nothing_upsets_it(samples in prop::collection::vec(any::<f32>(), 0..4000), rate_hz in 4000u32..50_000) {
        let (frames, holds) = analyse_voice(&samples, rate_hz);
        prop_assert!(frames.iter().all(|f| f.level_db.is_finite() && f.f0_hz.is_finite() && f.periodicity.is_finite()));
        prop_assert!(holds.iter().all(|h| h.duration_s.is_finite() && h.level_fall_db.is_finite()));
    }
}

#[test]
fn lost_samples_are_time() {
    let rate_hz = 16_000;
    let sound = Vowel { onset_s: 0.5, offset_s: 2.0, total_s: 3.0, ..Vowel::default() }.sound(rate_hz);
    for lost_s in [1u64, 400] {
        let mut ear = VoiceEar::new(rate_hz);
        ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
        let (mut holds, mut last_s) = (Vec::new(), -1.0);
        let mut keep = |o| match o {
            VoiceOutput::Event(VoiceEvent::Offset(hold)) => holds.push(hold),
            VoiceOutput::Frame(frame) => {
                assert!(frame.t_s > last_s);
                last_s = frame.t_s;
            }
            VoiceOutput::Event(_) => {}
        };
        ear.push(&sound, false, &mut keep);
        ear.skip(lost_s * u64::from(rate_hz), &mut keep);
        ear.push(&sound, false, &mut keep);
        ear.finish(&mut keep);
        assert_eq!(holds.len(), 2, "{holds:?}");
        assert!((holds[1].onset_s - holds[0].onset_s - 3.0 - lost_s as f64).abs() < 0.01, "{holds:?}");
        assert!((holds[1].offset_s - holds[0].offset_s - 3.0 - lost_s as f64).abs() < 0.01, "{holds:?}");
    }
}

#[test]
fn a_new_task_closes_the_hold_under_way() {
    let rate_hz = 16_000;
    let sound = Vowel { onset_s: 0.5, offset_s: 3.5, total_s: 4.0, ..Vowel::default() }.sound(rate_hz);
    let mut ear = VoiceEar::new(rate_hz);
    ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
    let mut holds = Vec::new();
    let mut keep = |o| {
        if let VoiceOutput::Event(VoiceEvent::Offset(hold)) = o {
            holds.push(hold);
        }
    };
    ear.push(&sound[..32_000], false, &mut keep);
    ear.set_task(VoiceTask::Idle);
    ear.push(&sound[32_000..], false, &mut keep);
    ear.finish(&mut keep);
    assert_eq!(holds.len(), 1);
    assert!((holds[0].onset_s - 0.5).abs() < 0.02 && (holds[0].offset_s - 2.0).abs() < 0.05, "{holds:?}");
}

#[test]
fn nothing_and_next_to_nothing() {
    for samples in [vec![], vec![0.5], vec![f32::NAN; 3]] {
        let (frames, holds) = analyse_voice(&samples, 16_000);
        assert_eq!(frames.len(), usize::from(!samples.is_empty()));
        assert!(holds.is_empty());
    }
}
