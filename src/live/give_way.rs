//! We get softer while somebody speaks over us, as people do.

/// We stay softer for so long after the last that was heard: longer than a pause between two words, s.
const STAYS_S: f64 = 0.8;

/// Whether we give way to whoever speaks over us, and until when.
#[derive(Debug)]
pub struct GivesWay {
    /// Never, as in a class, where somebody always speaks.
    pub never: bool,
    until_s: f64,
}

impl Default for GivesWay {
    fn default() -> Self {
        Self { never: false, until_s: f64::NEG_INFINITY }
    }
}

impl GivesWay {
    /// Takes whether somebody speaks over us at this time; true while we are to be softer.
    pub fn hear(&mut self, now_s: f64, spoken_over: bool) -> bool {
        if spoken_over {
            self.until_s = now_s + STAYS_S;
        }
        !self.never && now_s < self.until_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn we_are_softer_from_the_first_word_to_the_pause_after_the_last_and_never_in_a_class() {
        let mut gives_way = GivesWay::default();
        let softer: Vec<bool> = (0..40).map(|n| gives_way.hear(f64::from(n) * 0.1, (10..15).contains(&n) || n == 20)).collect();
        assert_eq!((softer.iter().position(|s| *s), softer.iter().rposition(|s| *s)), (Some(10), Some(27)));
        assert!(softer[10..=27].iter().all(|s| *s), "a pause between two words is no end");
        assert!(!GivesWay { never: true, ..GivesWay::default() }.hear(1.0, true));
    }
}
