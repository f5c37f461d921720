//! How far the system has turned a microphone up, where it can be asked. A calibration holds for one gain only.

use std::process::{Command, Stdio};

/// Gain as text, compared letter by letter; "unknown" where the system does not tell.
pub const UNKNOWN: &str = "unknown";

/// The gain of the PulseAudio or PipeWire source or ALSA card of that name.
#[must_use]
pub fn gain_of(system: &str, device: &str) -> String {
    let found = match system {
        "PulseAudio" => pulse(device),
        "ALSA" => alsa(device),
        _ => None,
    };
    found.unwrap_or_else(|| UNKNOWN.to_owned())
}

/// A program's standard output in the C locale; nothing where it is missing or fails.
fn ask(program: &str, arguments: &[&str]) -> Option<String> {
    let out = Command::new(program).args(arguments).env("LC_ALL", "C").stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    out.status.success().then(|| String::from_utf8_lossy(&out.stdout).into_owned())
}

fn pulse(device: &str) -> Option<String> {
    let named = if device == "default" { ask("pactl", &["get-default-source"])?.trim().to_owned() } else { device.to_owned() };
    read_pulse(&ask("pactl", &["list", "sources"])?, &named)
}

/// Volume of the source `named` in what `pactl list sources` prints. Whether it is muted changes no gain.
fn read_pulse(listing: &str, named: &str) -> Option<String> {
    let block = listing.split("\n\n").find(|block| field(block, "Name:") == Some(named))?;
    let volume = field(block, "Volume:")?;
    // "front-left: 65536 / 100% / 0.00 dB,   front-right: …": the raw steps are exact, the percent are for people.
    let mut steps = Vec::new();
    for channel in volume.split(',') {
        let (_, value) = channel.split_once(':')?;
        let mut parts = value.split('/').map(str::trim);
        steps.push(format!("{} ({})", parts.next()?, parts.next()?));
    }
    steps.dedup();
    Some(steps.join(", "))
}

fn field<'a>(block: &'a str, name: &str) -> Option<&'a str> {
    block.lines().find_map(|line| line.trim().strip_prefix(name)).map(str::trim)
}

fn alsa(device: &str) -> Option<String> {
    // "plughw:CARD=PCH,DEV=0", "sysdefault:CARD=Mic": the mixer belongs to the card.
    let card = device.split("CARD=").nth(1).map(|rest| rest.split(',').next().unwrap_or(rest));
    let mut arguments = vec!["-M"];
    if let Some(card) = card {
        arguments.extend(["-c", card]);
    }
    read_alsa(&ask("amixer", &arguments)?)
}

/// Every capture volume and switch in what `amixer` prints, one after the other.
fn read_alsa(listing: &str) -> Option<String> {
    let mut found = Vec::new();
    let mut control = "";
    for line in listing.lines() {
        if let Some(name) = line.strip_prefix("Simple mixer control ") {
            control = name.trim_matches(['\'', ',', '0']);
        } else if let Some((_, value)) = line.trim().split_once(": ")
            && let Some(value) = value.strip_prefix("Capture ")
            && value.starts_with(|c: char| c.is_ascii_digit())
        {
            found.push(format!("{control} {value}"));
        } else if control.contains("Boost")
            && let Some((channel, value)) = line.trim().split_once(": ")
            && matches!(channel, "Mono" | "Front Left" | "Front Right")
            && value.starts_with(|c: char| c.is_ascii_digit())
        {
            found.push(format!("{control} {value}"));
        }
    }
    found.dedup();
    (!found.is_empty()).then(|| found.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pulse_tells_the_volume() {
        let listing = "Source #0\n\tState: IDLE\n\tName: out.monitor\n\tMute: no\n\tVolume: mono: 65536 / 100% / 0.00 dB\n\n\
                       Source #1\n\tState: IDLE\n\tName: mic_usb\n\tMute: yes\n\tVolume: front-left: 52428 /  80% / -5.81 dB,   front-right: 52428 /  80% / -5.81 dB\n\t        balance 0.00\n\tBase Volume: 65536 / 100% / 0.00 dB\n";
        assert_eq!(read_pulse(listing, "mic_usb").as_deref(), Some("52428 (80%)"));
        assert_eq!(read_pulse(listing, "out.monitor").as_deref(), Some("65536 (100%)"));
        assert_eq!(read_pulse(listing, "other"), None);
    }

    #[test]
    fn alsa_gives_capture_and_boost() {
        let listing = "Simple mixer control 'Master',0\n  Mono: Playback 60 [69%] [on]\nSimple mixer control 'Capture',0\n  Front Left: Capture 46 [73%] [on]\n  Front Right: Capture 46 [73%] [on]\n\
                       Simple mixer control 'Mic Boost',0\n  Front Left: 1 [33%]\n  Front Right: 1 [33%]\n";
        assert_eq!(read_alsa(listing).as_deref(), Some("Capture 46 [73%] [on]; Mic Boost 1 [33%]"));
        assert_eq!(read_alsa("Simple mixer control 'Master',0\n  Mono: Playback 60 [69%] [on]\n"), None);
    }
}
