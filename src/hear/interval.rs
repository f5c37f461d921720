//! Musical intervals, the scale on which pitch is compared.

/// The interval from `reference_hz` up to `f_hz` in semitones, 12·log2(f/f_ref): equal temperament, twelve to the octave.
/// Both must be over 0 Hz; anything else gives NaN or an infinity.
#[must_use]
pub fn semitones(f_hz: f64, reference_hz: f64) -> f64 {
    12.0 * (f_hz / reference_hz).log2()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 16:1975 sets A4 to 440 Hz; the other notes are equal temperament's published frequencies to 0.01 Hz (from
    /// memory, as printed in tables of note frequencies).
    #[test]
    fn notes_of_equal_temperament_lie_whole_semitones_from_the_standard_pitch() {
        const A4_HZ: f64 = 440.0;
        for (note, f_hz, from_a4) in [
            ("C2", 65.41, -33.0),
            ("A2", 110.00, -24.0),
            ("E3", 164.81, -17.0),
            ("C4", 261.63, -9.0),
            ("G#4", 415.30, -1.0),
            ("A4", 440.00, 0.0),
            ("C5", 523.25, 3.0),
            ("G5", 783.99, 10.0),
        ] {
            // 0.005 Hz of rounding is 0.0013 semitones at 65 Hz.
            assert!((semitones(f_hz, A4_HZ) - from_a4).abs() < 0.002, "{note}");
        }
    }

    /// Intervals between published mean F0s (Shipp & Hollien 1972, doi 10.1121/1.1981297, and others), computed by hand
    /// with 39.8631·lg(f2/f1), the other form of the definition.
    #[test]
    fn both_forms_of_the_definition_agree() {
        for (from_hz, to_hz, st) in [
            (110.0, 220.0, 12.0),
            (100.0, 150.0, 7.020),
            (180.0, 650.0, 22.229),
            (75.0, 600.0, 36.0),
            (120.0, 107.0, -1.985),
            (120.0, 146.0, 3.395),
            (225.0, 205.0, -1.612),
            (120.0, 158.0, 4.763),
        ] {
            assert!((semitones(to_hz, from_hz) - st).abs() < 0.0006, "{from_hz} to {to_hz}");
        }
    }
}
