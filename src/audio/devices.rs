//! Which microphones and loudspeakers there are, and whether they work.

use super::host::{Direction, default_device, host};
use super::{AudioError, Health, LiveMic, LiveSpeaker, MicSource, SpeakerSink};
use cpal::traits::{DeviceTrait, HostTrait};
use cpal::{Device, Host};

/// ALSA's names for things that are no device of their own: converters, mixers, ways to other servers.
const PSEUDO: [&str; 21] = [
    "null",
    "default",
    "sysdefault",
    "lavrate",
    "samplerate",
    "speexrate",
    "speex",
    "jack",
    "oss",
    "pulse",
    "pipewire",
    "upmix",
    "vdownmix",
    "dmix",
    "dsnoop",
    "dshare",
    "usbstream",
    "front",
    "surround",
    "iec958",
    "modem",
];

/// One microphone or loudspeaker.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listed {
    /// What to give to `--mic` or `--speaker`.
    pub name: String,
    /// What a person calls it.
    pub description: String,
    /// Chosen where nothing or `default` is given.
    pub is_default: bool,
}

/// All that can be used.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Devices {
    /// "PulseAudio" (also for PipeWire) or "ALSA".
    pub system: String,
    pub microphones: Vec<Listed>,
    pub loudspeakers: Vec<Listed>,
}

/// Lists microphones and loudspeakers without opening them for sound.
///
/// # Errors
/// The sound system cannot be asked.
pub fn list() -> Result<Devices, AudioError> {
    let host = host();
    Ok(Devices {
        system: host.id().name().to_owned(),
        microphones: listed(&host, Direction::Input)?,
        loudspeakers: listed(&host, Direction::Output)?,
    })
}

/// Those that are no pseudo-devices, and the one of exactly that name whatever it is. Pseudo-devices are left out before
/// anything is asked of them: the way to JACK, for one, then complains on standard error that no JACK is running.
fn all(host: &Host, direction: Direction, named: &str) -> Result<Vec<Device>, AudioError> {
    let devices =
        host.devices().map_err(|e| AudioError::Device(format!("the sound system ({}) cannot list its devices: {e}", host.id().name())))?;
    let wanted = |device: &Device| id(device).is_some_and(|name| name == named || !is_pseudo(host, &name));
    let able = |device: &Device| match direction {
        Direction::Input => device.supports_input(),
        Direction::Output => device.supports_output(),
    };
    Ok(devices.filter(|device| wanted(device) && able(device)).collect())
}

fn listed(host: &Host, direction: Direction) -> Result<Vec<Listed>, AudioError> {
    let default = default_device(host, direction).and_then(|d| id(&d));
    let mut found: Vec<Listed> = all(host, direction, "")?
        .iter()
        .filter_map(|device| {
            let name = id(device)?;
            config_error(device, direction).is_none().then(|| Listed {
                description: device.to_string().lines().next().unwrap_or_default().to_owned(),
                is_default: default.as_ref() == Some(&name),
                name,
            })
        })
        .collect();
    // ALSA's default is one of the names left out above, but it is what most people want.
    if let Some(device) = default_device(host, direction)
        && !found.iter().any(|l| l.is_default)
        && config_error(&device, direction).is_none()
    {
        found.push(Listed { name: "default".to_owned(), description: "the system's default".to_owned(), is_default: true });
    }
    // Real microphones before what only records a loudspeaker.
    found.sort_by_key(|l| (!l.is_default, l.name.ends_with(".monitor")));
    Ok(found)
}

/// The sound system and the exact name of the microphone that `name` means ("default", a name or an unmistakable part).
///
/// # Errors
/// There is none such.
pub fn microphone(name: &str) -> Result<(String, String), AudioError> {
    let host = host();
    let device = find(&host, Direction::Input, name)?;
    Ok((host.id().name().to_owned(), id(&device).unwrap_or_else(|| name.to_owned())))
}

fn config_error(device: &Device, direction: Direction) -> Option<cpal::Error> {
    match direction {
        Direction::Input => device.default_input_config().err(),
        Direction::Output => device.default_output_config().err(),
    }
}

pub(super) fn id(device: &Device) -> Option<String> {
    device.id().ok().map(|id| id.id().to_owned())
}

fn is_pseudo(host: &Host, name: &str) -> bool {
    host.id().name() == "ALSA" && (alsa_pseudo(name) || name.starts_with("hw:"))
}

/// `name` up to the colon or a speaker count is one of the pseudo-devices.
fn alsa_pseudo(name: &str) -> bool {
    let base = name.split(':').next().unwrap_or(name).trim_end_matches(|c: char| c.is_ascii_digit());
    PSEUDO.contains(&base)
}

/// The device the user means: its exact name, its description, or a part of either that only one has.
pub(super) fn find(host: &Host, direction: Direction, name: &str) -> Result<Device, AudioError> {
    if name == "default" {
        // ALSA names a default device even where there is none.
        return default_device(host, direction)
            // Where the last microphone is gone, a server offers what the loudspeaker plays in its place: we would hear ourselves.
            .filter(|d| direction == Direction::Output || !id(d).is_some_and(|id| id.ends_with(".monitor")))
            .filter(|d| !config_error(d, direction).is_some_and(|e| e.kind() == cpal::ErrorKind::DeviceNotAvailable))
            .ok_or_else(|| none_there(host, direction, name));
    }
    let devices = all(host, direction, name)?;
    if let Some(at) = choose(&devices.iter().map(|d| (id(d).unwrap_or_default(), d.to_string())).collect::<Vec<_>>(), name)
        && let Some(device) = devices.into_iter().nth(at)
    {
        return Ok(device);
    }
    Err(none_there(host, direction, name))
}

/// Place of the one that is meant among (name, description).
fn choose(devices: &[(String, String)], wanted: &str) -> Option<usize> {
    if let Some(at) = devices.iter().position(|(name, _)| name == wanted) {
        return Some(at);
    }
    let wanted = wanted.to_lowercase();
    let lower: Vec<(String, String)> = devices.iter().map(|(n, d)| (n.to_lowercase(), d.to_lowercase())).collect();
    if let Some(at) = lower.iter().position(|(_, description)| *description == wanted) {
        return Some(at);
    }
    let mut hits = lower.iter().enumerate().filter(|(_, (n, d))| n.contains(&wanted) || d.contains(&wanted)).map(|(at, _)| at);
    match (hits.next(), hits.next()) {
        (Some(at), None) if !wanted.is_empty() => Some(at),
        _ => None,
    }
}

fn none_there(host: &Host, direction: Direction, name: &str) -> AudioError {
    let known = listed(host, direction).unwrap_or_default();
    let names: Vec<String> = known.iter().map(|l| format!("\"{}\"", l.name)).collect();
    let noun = direction.noun();
    AudioError::NoDevice(if names.is_empty() {
        format!("no {noun} was found: plug one in or switch it on, or give a recording or WAV file to {} instead", direction.option())
    } else {
        format!("there is no {noun} \"{name}\", or more than one fits; give one of {} to {}", names.join(", "), direction.option())
    })
}

/// What trying a device showed.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    pub rate_hz: u32,
    pub channels: u16,
    /// Highest and mean level of one second, dB re full scale; minus infinity for digital silence. None for loudspeakers.
    pub peak_dbfs: Option<f64>,
    pub rms_dbfs: Option<f64>,
    /// Smallest and largest number of frames the device gave or took at once.
    pub callback_frames: (u32, u32),
    /// What a person should look at, in plain words.
    pub problems: Vec<String>,
}

/// Records one second from a microphone. Nothing of it is kept.
///
/// # Errors
/// The device is not there or refuses.
pub fn try_microphone(name: &str) -> Result<Trial, AudioError> {
    let mut mic = LiveMic::open(name)?;
    let mut block = vec![0.0; (mic.rate_hz() / 100) as usize];
    let mut samples = Vec::with_capacity(block.len() * 100);
    for _ in 0..100 {
        mic.read(&mut block)?;
        samples.extend_from_slice(&block);
    }
    let (peak_dbfs, rms_dbfs) = levels_dbfs(&samples);
    let mut problems = faults(mic.health());
    problems.extend(level_problem(peak_dbfs));
    Ok(Trial {
        rate_hz: mic.rate_hz(),
        channels: mic.channels(),
        peak_dbfs: Some(peak_dbfs),
        rms_dbfs: Some(rms_dbfs),
        callback_frames: mic.callback_frames(),
        problems,
    })
}

/// Opens a loudspeaker for half a second of silence; nothing is heard.
///
/// # Errors
/// The device is not there or refuses.
pub fn try_loudspeaker(name: &str) -> Result<Trial, AudioError> {
    let mut speaker = LiveSpeaker::open(name)?;
    let block = vec![0.0; (speaker.rate_hz() / 100) as usize];
    let began = std::time::Instant::now();
    for n in 0..50_u32 {
        let due = std::time::Duration::from_millis(10) * n;
        std::thread::sleep(due.saturating_sub(began.elapsed()));
        speaker.write(&block)?;
    }
    let callback_frames = speaker.callback_frames();
    let mut problems = faults(speaker.health());
    if callback_frames.1 == 0 {
        problems.push("it takes no sound".to_owned());
    }
    Ok(Trial { rate_hz: speaker.rate_hz(), channels: speaker.channels(), peak_dbfs: None, rms_dbfs: None, callback_frames, problems })
}

fn levels_dbfs(samples: &[f32]) -> (f64, f64) {
    let peak = samples.iter().fold(0.0_f64, |p, s| p.max(f64::from(s.abs())));
    let power = samples.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / samples.len().max(1) as f64;
    (20.0 * peak.log10(), 10.0 * power.log10())
}

fn level_problem(peak_dbfs: f64) -> Option<String> {
    if peak_dbfs == f64::NEG_INFINITY {
        Some("it gives nothing but silence: is it muted or switched off?".to_owned())
    } else if peak_dbfs > -0.5 {
        Some("it is overdriven: turn its level down".to_owned())
    } else {
        None
    }
}

fn faults(health: Health) -> Vec<String> {
    let mut problems = Vec::new();
    if health.lost_frames > 0 {
        problems.push(format!("{} frames were lost", health.lost_frames));
    }
    if health.xruns + health.errors > 0 {
        problems.push(format!("the sound system reported {} faults", health.xruns + health.errors));
    }
    problems
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_device_is_found_by_name_description_or_an_unmistakable_part() {
        let devices: Vec<(String, String)> = [("mic_usb", "Desk Microphone"), ("mic_card", "Built-in"), ("card", "Card")]
            .into_iter()
            .map(|(n, d)| (n.to_owned(), d.to_owned()))
            .collect();
        assert_eq!(choose(&devices, "mic_card"), Some(1));
        assert_eq!(choose(&devices, "card"), Some(2), "an exact name goes before a part");
        assert_eq!(choose(&devices, "desk microphone"), Some(0));
        assert_eq!(choose(&devices, "built"), Some(1));
        assert_eq!(choose(&devices, "mic_"), None, "two fit");
        assert_eq!(choose(&devices, ""), None);
        assert_eq!(choose(&devices, "cellar"), None);
    }

    #[test]
    fn alsa_converters_are_no_devices() {
        for name in ["null", "lavrate", "pulse", "surround51:CARD=PCH,DEV=0", "sysdefault:CARD=PCH", "front:CARD=PCH,DEV=0"] {
            assert!(alsa_pseudo(name), "{name}");
        }
        for name in ["plughw:CARD=PCH,DEV=0", "hw:CARD=1,DEV=0", "mic"] {
            assert!(!alsa_pseudo(name), "{name}");
        }
    }

    #[test]
    fn levels_are_those_of_the_definition() {
        // A full-scale square wave has 0 dBFS peak and RMS; a sine of amplitude 0.5 −6.02 and −9.03 dBFS.
        let (peak, rms) = levels_dbfs(&[1.0, -1.0, 1.0, -1.0]);
        assert!(peak.abs() < 1e-9 && rms.abs() < 1e-9);
        let sine: Vec<f32> = (0..48_000).map(|n| (n as f32 * std::f32::consts::TAU / 480.0).sin() * 0.5).collect();
        let (peak, rms) = levels_dbfs(&sine);
        assert!((peak + 6.02).abs() < 0.01 && (rms + 9.03).abs() < 0.01, "{peak} {rms}");
        assert!(level_problem(levels_dbfs(&[0.0; 10]).0).is_some_and(|p| p.contains("muted")));
        assert!(level_problem(-0.1).is_some() && level_problem(-20.0).is_none());
    }
}
