use super::*;
use crate::templates::mel::BANDS;
use crate::templates::{EnrolledVoice, OwnWord, Take};

/// A picture of a made-up word: a ridge of energy that moves from one band to another, stretched by `stretch`.
fn picture(path: &[f32], stretch: f32, seed: u32) -> Take {
    let frames = (path.len() as f32 * 10.0 * stretch) as usize;
    let mut state = seed.wrapping_mul(2_654_435_761).wrapping_add(1);
    let frames = (0..frames).map(|i| {
        let at = i as f32 / frames as f32 * (path.len() - 1) as f32;
        let (low, share) = (at.floor() as usize, at.fract());
        let ridge = path[low] * (1.0 - share) + path[(low + 1).min(path.len() - 1)] * share;
        std::array::from_fn(|band| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let noise = (state >> 28) as f32 * 0.5;
            (60.0 + noise + (60.0 - 12.0 * (band as f32 - ridge).abs()).max(0.0)) as u8
        })
    });
    Take { frames: frames.collect(), noise: [62; BANDS] }
}

const RISING: [f32; 5] = [3.0, 5.0, 9.0, 14.0, 18.0];
const FALLING: [f32; 5] = [19.0, 15.0, 9.0, 5.0, 2.0];
const STEADY: [f32; 5] = [8.0, 8.0, 2.0, 8.0, 8.0];

fn own(words: &[(&str, &[f32])]) -> EnrolledVoice {
    let word = |(n, (wording, path)): (usize, &(&str, &[f32]))| OwnWord {
        wording: (*wording).to_owned(),
        costly: false,
        takes: (0..3).map(|i| picture(path, 0.9 + 0.1 * i as f32, (10 * n + i) as u32)).collect(),
    };
    EnrolledVoice { words: words.iter().enumerate().map(word).collect() }
}

#[test]
fn a_new_saying_is_like_its_own_word_at_any_speed_and_loudness() {
    let mut matcher = Matcher::new(&own(&[("a", &RISING), ("b", &FALLING), ("c", &STEADY)]));
    for (word, path) in [&RISING, &FALLING, &STEADY].into_iter().enumerate() {
        for stretch in [0.8, 1.0, 1.25] {
            let mut take = picture(path, stretch, 99);
            take.frames.iter_mut().flatten().chain(&mut take.noise).for_each(|b| *b -= 20);
            let found = matcher.likenesses(&take);
            assert_eq!(found.first().map(|l| l.word), Some(word), "{found:?}");
            assert!(misfit(&found) < 0.15, "{stretch}: {found:?}");
        }
    }
}

#[test]
fn another_word_and_one_of_another_length_do_not_fit() {
    let mut matcher = Matcher::new(&own(&[("a", &RISING), ("b", &FALLING)]));
    let other = matcher.likenesses(&picture(&[12.0, 2.0, 20.0, 2.0, 12.0], 1.0, 7));
    assert!(misfit(&other) > 0.2, "{other:?}");
    let long = matcher.likenesses(&picture(&RISING, 3.0, 7));
    assert_eq!(misfit(&long), f32::INFINITY);
    assert_eq!(misfit(&[]), f32::INFINITY);
}

#[test]
fn a_take_unlike_the_others_and_one_near_another_word_are_doubted() {
    let words = [("a", &RISING[..]), ("b", &FALLING[..]), ("c", &STEADY[..])];
    let mut good = Matcher::new(&own(&words));
    assert_eq!([good.doubt(0), good.doubt(1), good.doubt(2)], [None; 3]);
    let mut unlike = own(&words);
    unlike.words[0].takes[1] = picture(&[12.0, 2.0, 20.0, 2.0, 12.0], 1.0, 5);
    assert_eq!(Matcher::new(&unlike).doubt(0), Some(Doubt::Unlike { take: 1 }));
    let mut near = own(&words);
    near.words[1].takes = near.words[0].takes.clone();
    assert!(matches!(Matcher::new(&near).doubt(1), Some(Doubt::Near { word: 0, .. })));
    assert_eq!(Matcher::new(&EnrolledVoice::default()).doubt(0), None);
}

#[test]
fn bytes_come_back_and_torn_ones_do_not() {
    let whole = own(&[("go on", &RISING), ("no", &STEADY)]);
    let bytes = whole.to_bytes();
    assert_eq!(EnrolledVoice::from_bytes(&bytes), Some(whole));
    assert_eq!(EnrolledVoice::from_bytes(&[]), None);
    assert_eq!(EnrolledVoice::from_bytes(&[9]), None);
    for cut in [2, 20, bytes.len() - 1] {
        assert_eq!(EnrolledVoice::from_bytes(&bytes[..cut]), None, "{cut}");
    }
    assert_eq!(Take::from_bytes(&[0; BANDS]), None);
    assert_eq!(Take::from_bytes(&[0; BANDS + 1]), None);
}
