//! `tidecount record sound`.

use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::record::args::SoundOrder;
use crate::record::check::present;
use files::error::Failure;
use record::{SoundConsent, SoundSide, Store, StoredSound, create_folder};

pub fn run(folder: &Path, order: &SoundOrder, now: &ZonedDateTime, text: &mut String) -> Result<ExitCode, Failure> {
    let mut store = present(folder)?;
    store.tidy(now)?;
    match order {
        SoundOrder::List { client } => list(&store, client, text)?,
        SoundOrder::Export { client, out } => export(&store, client, out, text)?,
        SoundOrder::Off { client } => match store.sound_consent(client)? {
            SoundConsent::Never | SoundConsent::Withdrawn { .. } => {
                let _ = writeln!(text, "No sound of {client} was being stored.");
            }
            _ => {
                store.withdraw_sound(client, SoundSide::Command, now)?;
                let _ = writeln!(
                    text,
                    "From now on no sound of {client} is stored. What is already stored goes when it expires, or at once with: tidecount record sound delete {client}"
                );
            }
        },
        SoundOrder::Delete { client } => {
            let deleted = store.delete_sounds(client)?;
            let _ = writeln!(text, "{deleted} files of sound were deleted.");
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn day(time: &str) -> &str {
    time.split('T').next().unwrap_or(time)
}

/// How a client's wish stands, in words.
pub fn consent_text(consent: &SoundConsent) -> String {
    match consent {
        SoundConsent::Never => "Storing sound was never asked for: none is stored.".to_owned(),
        SoundConsent::Asked { days, by_page_at } => {
            format!(
                "The page asked on {} to keep sound for {days} days; the voice will be asked at the start of the next practice.",
                day(by_page_at)
            )
        }
        SoundConsent::Refused { by_voice_at, .. } => {
            format!("The voice said no on {}: no sound is stored until the page asks again.", day(by_voice_at))
        }
        SoundConsent::Given { days, by_page_at, by_voice_at } => {
            format!("Sound is kept for {days} days: by page since {}, by voice since {}.", day(by_page_at), day(by_voice_at))
        }
        SoundConsent::Withdrawn { at, by } => format!("Withdrawn on {} by {}: no sound is stored.", day(at), by.as_str()),
    }
}

fn list(store: &Store, client: &str, text: &mut String) -> Result<(), Failure> {
    let _ = writeln!(text, "{}", consent_text(&store.sound_consent(client)?));
    for sound in store.stored_sounds(client)? {
        let _ = writeln!(
            text,
            "practice {}, part {}: {:.1} to {:.1} s, {} Hz, until {}  {}",
            sound.session.0,
            sound.part,
            sound.from_s,
            sound.to_s(),
            sound.rate_hz,
            day(&sound.expires_at),
            sound.file
        );
    }
    Ok(())
}

/// "practice-12-part-1-at-0.00.flac": what a person can find again beside the history.
fn name(sound: &StoredSound) -> String {
    format!("practice-{}-part-{}-at-{:.2}.flac", sound.session.0, sound.part, sound.from_s)
}

fn export(store: &Store, client: &str, out: &Path, text: &mut String) -> Result<(), Failure> {
    let sounds = store.stored_sounds(client)?;
    if sounds.is_empty() {
        let _ = writeln!(text, "No sound of {client} is stored.");
        return Ok(());
    }
    create_folder(out)?;
    for sound in &sounds {
        let path = out.join(name(sound));
        if path.exists() {
            return Err(Failure::file(path, "this file already exists and was left as it is; name another folder with --out DIR"));
        }
        disk::private::write(&path, &store.sound_flac(sound)?)
            .map_err(|error| Failure::file(&path, format!("cannot be written ({error}); make sure the disk has room")))?;
        let _ = writeln!(text, "{}", path.display());
    }
    let _ = writeln!(text, "These files are not encrypted and do not expire: delete them when they are no longer needed.");
    Ok(())
}
