//! Pa-ta-ka trains of known count and rate.

use crate::set::Set;
use figures::{Spread, figure_of};
use hear::{VoiceEar, VoiceEvent, VoiceOutput, VoiceTask};
use std::error::Error;

pub fn run(set: &Set) -> Result<(), Box<dyn Error>> {
    for noise in ["quiet", "dishes"] {
        let (mut exact, mut near, mut files) = (0.0, 0.0, 0.0);
        let (mut rates, mut irregularities) = (Vec::new(), Vec::new());
        for row in set.rows("trains/truth.tsv")? {
            let [file, count, rate, irregularity, group, in_noise] = &row[..] else { continue };
            if group != set.group || in_noise != noise {
                continue;
            }
            let (count, rate, irregularity): (u32, f64, f64) = (count.parse()?, rate.parse()?, irregularity.parse()?);
            let (samples, rate_hz) = set.sound(file)?;
            let mut ear = VoiceEar::new(rate_hz);
            ear.set_task(VoiceTask::Speech { end_pause_s: 0.8 });
            let mut found = Vec::new();
            let mut keep = |o| {
                if let VoiceOutput::Event(VoiceEvent::Spoken(u)) = o {
                    found.push(u);
                }
            };
            ear.push(&samples, false, &mut keep);
            ear.finish(&mut keep);
            files += 1.0;
            let Some(best) = found.iter().max_by_key(|u| u.syllables) else { continue };
            exact += f64::from(u8::from(best.syllables == count));
            near += f64::from(u8::from(best.syllables.abs_diff(count) <= 1));
            rates.push(100.0 * (best.syllable_rate_hz / rate - 1.0));
            irregularities.push(best.syllable_irregularity_pct - irregularity);
            if set.verbose && best.syllables != count {
                println!(
                    "{file}: {} of {count}, {:.2} of {rate:.2} Hz, {:.1} of {irregularity:.1} %",
                    best.syllables, best.syllable_rate_hz, best.syllable_irregularity_pct
                );
            }
        }
        let (rate, irregularity) = (Spread::of_sizes(&rates), Spread::of_sizes(&irregularities));
        println!(
            "syllables, {noise}, {files} trains of 3 to 7.5 Hz: count exact {:.0} %, rate off by {:.1} % median",
            100.0 * exact / files,
            rate.at(0.5)
        );
        figure_of(&format!("syllables.{noise}.near"), 100.0 * near / files, files as usize);
        figure_of(&format!("syllables.{noise}.rate"), rate.at(0.95), files as usize);
        figure_of(&format!("syllables.{noise}.irregularity"), irregularity.at(0.5), files as usize);
    }
    Ok(())
}
