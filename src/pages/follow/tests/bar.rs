use super::*;
use session::LevelCalibration;

fn frame(n: u32, level_db: f64, f0_hz: f64) -> VoiceFrame {
    VoiceFrame { t_s: f64::from(n) * 0.01, level_db, f0_hz, periodicity: 0.9, voiced: f0_hz > 0.0, masked: false }
}

fn text(line: &Line) -> String {
    let number = line.args.first().map(|(_, arg)| format!("{arg:?}")).unwrap_or_default();
    format!("{} {number}", line.key).trim().to_owned()
}

/// After two seconds of the same.
fn settled(bar: &mut LiveBar, level_db: f64, f0_hz: f64, scale: LevelScale) -> Meter {
    for n in 0..200 {
        bar.takes_scale(scale);
        bar.hear(&frame(n, level_db, f0_hz));
    }
    bar.meter(&text)
}

const RELATIVE: LevelScale = LevelScale { offset_db: 0.0, calibration: LevelCalibration::None, auto_gain: false };

#[test]
fn a_level_stands_against_what_is_usual_for_this_person() {
    let usual = UsualVoice { level_db: Some(-30.0), ..UsualVoice::default() };
    let mut bar = LiveBar::new(BarKind::Level, usual, None, false);
    let meter = settled(&mut bar, -26.0, 120.0, RELATIVE);
    assert_eq!(bar.bar(true, &text).goal, Some(0.5));
    assert_eq!((meter.at, meter.words.as_str()), (Some(0.6), "page-louder-shown Number(4.0)"));
    bar.again();
    assert_eq!(settled(&mut bar, -29.0, 120.0, RELATIVE).words, "page-as-usual-shown");
    assert_eq!(settled(&mut bar, -90.0, 120.0, RELATIVE).at, Some(0.0));
}

#[test]
fn what_cannot_be_compared_gets_no_goal() {
    let usual = UsualVoice { level_db: Some(72.0), calibration: LevelCalibration::Meter, f0_hz: None };
    let mut bar = LiveBar::new(BarKind::Level, usual, None, false);
    let meter = settled(&mut bar, -30.0, 120.0, RELATIVE);
    assert_eq!((bar.bar(true, &text).goal, meter.words.as_str()), (None, "page-voice-heard-shown"), "another scale");
    let meter_scale = LevelScale { offset_db: 100.0, calibration: LevelCalibration::Meter, auto_gain: true };
    assert_eq!(settled(&mut bar, -30.0, 120.0, meter_scale).words, "page-level-shown Number(70.0)");
    assert_eq!(bar.bar(true, &text).goal, None, "the microphone changes its own volume");
    let mut nothing_known = LiveBar::new(BarKind::Level, UsualVoice::default(), None, false);
    settled(&mut nothing_known, -30.0, 120.0, RELATIVE);
    assert_eq!(nothing_known.bar(true, &text).goal, None);
}

#[test]
fn our_own_voice_and_noise_move_nothing() {
    let mut bar = LiveBar::new(BarKind::Level, UsualVoice::default(), None, false);
    for n in 0..100 {
        bar.hear(&VoiceFrame { masked: true, ..frame(n, -20.0, 200.0) });
    }
    assert_eq!(bar.meter(&text), Meter::default());
    assert_eq!(settled(&mut bar, -20.0, 0.0, RELATIVE), Meter::default());
}

/// Twelve semitones are an octave: twice the frequency.
#[test]
fn pitch_counts_semitones_from_the_usual_voice_or_from_the_first_note() {
    let usual = UsualVoice { f0_hz: Some(240.0), ..UsualVoice::default() };
    let mut bar = LiveBar::new(BarKind::Pitch, usual, Some(120.0), false);
    let meter = settled(&mut bar, -30.0, 240.0, RELATIVE);
    let drawn = bar.bar(true, &text);
    assert_eq!((meter.at, meter.words.as_str()), (drawn.goal, "page-semitones-higher-shown Number(12.0)"));
    assert_eq!((drawn.base, drawn.base_label.as_str()), (Some(0.333), "page-usual-voice-shown"));

    let mut glide = LiveBar::new(BarKind::Pitch, UsualVoice::default(), None, true);
    settled(&mut glide, -30.0, 100.0, RELATIVE);
    let high = settled(&mut glide, -30.0, 200.0, RELATIVE);
    assert_eq!(high.words, "page-semitones-higher-shown Number(12.0)");
    let back = settled(&mut glide, -30.0, 100.0, RELATIVE);
    assert!(back.top > Some(0.66) && back.at == Some(0.333), "{back:?}");
    glide.again();
    assert_eq!(glide.meter(&text), Meter::default());
    assert_eq!(glide.bar(true, &text).base_label, "page-first-note-shown");
}

#[test]
fn words_change_slowly_though_the_voice_trembles() {
    let usual = UsualVoice { level_db: Some(-30.0), ..UsualVoice::default() };
    let mut bar = LiveBar::new(BarKind::Level, usual, None, false);
    let mut seen = Vec::new();
    for n in 0..1000 {
        bar.hear(&frame(n, if n % 20 < 10 { -20.0 } else { -40.0 }, 120.0));
        let words = bar.meter(&text).words;
        if seen.last() != Some(&words) {
            seen.push(words);
        }
    }
    assert!(seen.len() <= 22, "{} changes in ten seconds: {seen:?}", seen.len());
}
