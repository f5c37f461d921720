//! `tidecount devices`: lists microphones and loudspeakers and tries each.

use audio::AudioError;
use audio::devices::{Listed, Trial, list, try_loudspeaker, try_microphone};
use std::process::ExitCode;

/// Lists and tries all devices on standard output. Exit code 1 where there is none or the sound system fails.
#[must_use]
pub fn run() -> ExitCode {
    let devices = match list() {
        Ok(devices) => devices,
        Err(error) => {
            eprintln!("{error}");
            return ExitCode::FAILURE;
        }
    };
    if devices.microphones.is_empty() && devices.loudspeakers.is_empty() {
        println!(
            "No microphone or loudspeaker was found (sound system: {}).\n\
             Plug one in or switch it on, then try again. Recordings work without one:\n  \
             tidecount practise ROUTINE.toml --mic RECORDING.wav --speaker OUTPUT.wav",
            devices.system
        );
        return ExitCode::FAILURE;
    }
    println!("Sound system: {}", devices.system);
    println!("\nMicrophones (for --mic); each is listened to for one second, nothing is kept:");
    show(&devices.microphones, try_microphone);
    println!("\nLoudspeakers (for --speaker); each is opened, nothing is played:");
    show(&devices.loudspeakers, try_loudspeaker);
    ExitCode::SUCCESS
}

fn show(devices: &[Listed], attempt: impl Fn(&str) -> Result<Trial, AudioError>) {
    if devices.is_empty() {
        println!("  none");
    }
    for device in devices {
        let default = if device.is_default { " (default)" } else { "" };
        println!("  {}{default}", device.name);
        if device.description != device.name {
            println!("      {}", device.description);
        }
        match attempt(&device.name) {
            Ok(trial) => println!("      {}", describe(&trial)),
            Err(error) => println!("      does not work: {error}"),
        }
    }
}

fn describe(trial: &Trial) -> String {
    let mut text = format!("{} Hz, {} channel{}", trial.rate_hz, trial.channels, if trial.channels == 1 { "" } else { "s" });
    if let (Some(peak), Some(rms)) = (trial.peak_dbfs, trial.rms_dbfs) {
        text += &if peak.is_finite() { format!(", peak {peak:.0} dBFS, mean {rms:.0} dBFS") } else { ", silent".to_owned() };
    }
    let (smallest, largest) = trial.callback_frames;
    if largest > 0 {
        text += &format!(", {smallest} to {largest} frames at once");
    }
    if trial.problems.is_empty() { text + ": works" } else { format!("{text}; check: {}", trial.problems.join("; ")) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_trial_reads_as_one_plain_line() {
        let mut trial = Trial {
            rate_hz: 48_000,
            channels: 2,
            peak_dbfs: Some(-20.4),
            rms_dbfs: Some(-41.6),
            callback_frames: (480, 960),
            problems: vec![],
        };
        assert_eq!(describe(&trial), "48000 Hz, 2 channels, peak -20 dBFS, mean -42 dBFS, 480 to 960 frames at once: works");
        trial.peak_dbfs = Some(f64::NEG_INFINITY);
        trial.problems = vec!["is it muted?".to_owned()];
        assert_eq!(describe(&trial), "48000 Hz, 2 channels, silent, 480 to 960 frames at once; check: is it muted?");
    }
}
