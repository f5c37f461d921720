use super::*;
use symphonia::core::codecs::audio::AudioDecoderOptions;
use symphonia::core::formats::FormatOptions;
use symphonia::core::io::MediaSourceStream;
use symphonia::core::meta::MetadataOptions;

/// Samples of a FLAC file as an independent decoder (symphonia) gives them, 16 bits.
pub(crate) fn decoded(bytes: Vec<u8>) -> (u32, Vec<i16>) {
    let stream = MediaSourceStream::new(Box::new(std::io::Cursor::new(bytes)), Default::default());
    let mut format = symphonia::default::get_probe()
        .probe(&Default::default(), stream, FormatOptions::default(), MetadataOptions::default())
        .expect("is FLAC");
    let track = format.tracks().first().expect("a track").clone();
    let params = track.codec_params.as_ref().and_then(|params| params.audio()).expect("audio").clone();
    let options = AudioDecoderOptions::default().verify(true);
    let mut decoder = symphonia::default::get_codecs().make_audio_decoder(&params, &options).expect("a decoder");
    let mut samples = Vec::new();
    while let Some(packet) = format.next_packet().expect("reads") {
        let decoded = decoder.decode(&packet).expect("decodes");
        let mut block: Vec<i16> = Vec::new();
        decoded.copy_to_vec_interleaved(&mut block);
        samples.extend(block);
    }
    assert_ne!(decoder.finalize().verify_ok, Some(false), "the sum of the samples is wrong");
    (params.sample_rate.expect("a rate"), samples)
}

fn encoded(rate_hz: u32, sound: &[f32], block: usize) -> Vec<u8> {
    let mut encoder = Encoder::new(rate_hz).expect("a rate");
    let mut frames = Vec::new();
    for part in sound.chunks(block) {
        encoder.push(part, &mut frames).expect("encodes");
    }
    encoder.finish(&mut frames).expect("encodes");
    assert_eq!(encoder.samples(), sound.len() as u64);
    [encoder.header().bytes().to_vec(), frames].concat()
}

fn sound(samples: usize) -> Vec<f32> {
    let mut state = 7_u32;
    (0..samples)
        .map(|n| {
            // Numerical Recipes' "quick and dirty" generator; constants from memory.
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let noise = (f64::from(state >> 8) / f64::from(1 << 24) - 0.5) * 0.02;
            ((0.4 * (n as f64 * 0.05).sin() + noise) * 32_768.0).round() as f32 / 32_768.0
        })
        .collect()
}

#[test]
fn what_is_encoded_comes_back_to_the_sample_in_blocks_of_any_size() {
    for (rate_hz, samples, block) in [(48_000, 30_000, 480), (44_100, 4096, 441), (16_000, 4097, 160), (8_000, 3, 80), (96_000, 8192, 5000)]
    {
        let sound = sound(samples);
        let (rate, back) = decoded(encoded(rate_hz, &sound, block));
        let wanted: Vec<i16> = sound.iter().map(|x| (x * 32_768.0) as i16).collect();
        assert_eq!((rate, back.len()), (rate_hz, samples));
        assert!(back == wanted, "{rate_hz} Hz, {samples} samples");
    }
}

#[test]
fn loud_and_senseless_samples_are_clipped_and_silence_is_small() {
    let (_, back) = decoded(encoded(16_000, &[1.0, -1.0, 2.0, -2.0, f32::NAN, f32::INFINITY, f32::NEG_INFINITY, 0.0], 8));
    assert_eq!(back, [32_767, -32_768, 32_767, -32_768, 0, 32_767, -32_768, 0]);
    let silence = encoded(48_000, &vec![0.0; 480_000], 480);
    assert!(silence.len() < 5_000, "{} bytes", silence.len());
}

/// RFC 9639, section 8.2: 16 bits smallest and largest block, 24 smallest and largest frame, 20 rate, 3 channels − 1, 5 bits − 1, 36 samples.
#[test]
fn the_header_is_that_of_the_standard() {
    let bytes = Header { rate_hz: 48_000, samples: 0x1_2345_6789, md5: [9; 16] }.bytes();
    assert_eq!(&bytes[..8], b"fLaC\x80\x00\x00\x22");
    assert_eq!(&bytes[8..12], [0x10, 0x00, 0x10, 0x00]);
    assert_eq!(&bytes[12..18], [0; 6]);
    // 48000 = 0x0BB80; mono 0; 15 = 0b01111.
    assert_eq!(&bytes[18..26], [0x0B, 0xB8, 0x00, 0xF1, 0x23, 0x45, 0x67, 0x89]);
    assert_eq!(&bytes[26..], [9; 16]);
}
