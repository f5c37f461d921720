use super::super::report::{on_terminal, to_send};
use super::*;

fn secret(text: &str) -> Private {
    Private(format!("SECRET {text}"))
}

fn heard() -> Listened {
    let device = secret("usb-microphone-4711");
    Listened { device, rate_hz: 48_000, peak_dbfs: -30.0, rms_dbfs: -50.0, constant: false, lost_frames: 0 }
}

fn there() -> Folder {
    Folder::There { path: secret("/home/somebody"), writable: true, open_to_others: false, files_open_to_others: 0 }
}

fn well() -> Facts {
    Facts {
        version: "1.2.3",
        system: "A system, x86_64".to_owned(),
        microphone: Ok(heard()),
        loudspeaker: Played::Works { device: secret("loudspeaker"), rate_hz: 48_000 },
        clock: Clock { year: 2027, synchronised: Some(true), record_doubts: false },
        room_bytes: Ok(50_000_000_000),
        model: Ok(()),
        voice: Ok((secret("voice"), Some(4.0))),
        folder: there(),
        record: Record::Looked { practices: 3, encrypted: false, faults: Vec::new() },
        household: House::Read { persons: 2, planned: 7, start_phrase: StartPhrase::Heard },
    }
}

/// Everything that can be wrong or worth a note, one at a time, and the check that says so.
fn ailing() -> Vec<(Facts, &'static str, Standing)> {
    use Standing::{Note, Wrong};
    let ear = |change: &dyn Fn(&mut Listened)| {
        let mut heard = heard();
        change(&mut heard);
        Facts { microphone: Ok(heard), ..well() }
    };
    let clock = |year, synchronised, record_doubts| Facts { clock: Clock { year, synchronised, record_doubts }, ..well() };
    let folder = |writable, open_to_others, files_open_to_others| Facts {
        folder: Folder::There { path: secret("/home/somebody"), writable, open_to_others, files_open_to_others },
        ..well()
    };
    vec![
        (Facts { microphone: Err(secret("no such microphone")), ..well() }, "Microphone", Wrong),
        (ear(&|heard| heard.constant = true), "Microphone", Wrong),
        (ear(&|heard| heard.peak_dbfs = 0.0), "Microphone", Wrong),
        (ear(&|heard| heard.lost_frames = 480), "Microphone", Wrong),
        (ear(&|heard| heard.rms_dbfs = -20.0), "Microphone", Note),
        (ear(&|heard| heard.rms_dbfs = -90.0), "Microphone", Note),
        (Facts { loudspeaker: Played::Fails(secret("no loudspeaker")), ..well() }, "Loudspeaker", Wrong),
        (Facts { loudspeaker: Played::NotTried, ..well() }, "Loudspeaker", Note),
        (Facts { voice: Err(secret("no voice")), ..well() }, "Voice", Wrong),
        (Facts { voice: Ok((secret("voice"), Some(0.0))), ..well() }, "Voice", Wrong),
        (Facts { model: Err(secret("/home/somebody/model")), ..well() }, "Recogniser", Wrong),
        (clock(1970, Some(true), false), "Clock", Wrong),
        (clock(2027, Some(true), true), "Clock", Wrong),
        (clock(2027, Some(false), false), "Clock", Note),
        (clock(2027, None, false), "Clock", Note),
        (Facts { room_bytes: Ok(19_999_999), ..well() }, "Disk", Wrong),
        (Facts { room_bytes: Ok(150_000_000), ..well() }, "Disk", Note),
        (Facts { room_bytes: Err(secret("/home/somebody")), ..well() }, "Disk", Note),
        (folder(false, false, 0), "Data folder", Wrong),
        (folder(true, true, 0), "Data folder", Wrong),
        (folder(true, false, 2), "Data folder", Note),
        (Facts { folder: Folder::Missing(secret("/home/somebody")), ..well() }, "Data folder", Note),
        (Facts { folder: Folder::Unknown(secret("/home/somebody")), ..well() }, "Data folder", Wrong),
        (Facts { record: Record::None, ..well() }, "Record", Note),
        (Facts { record: Record::Fails(secret("of grandpa")), ..well() }, "Record", Wrong),
        (Facts { record: Record::Looked { practices: 1, encrypted: true, faults: vec![secret("of grandpa")] }, ..well() }, "Record", Wrong),
        (Facts { household: House::None, ..well() }, "Household", Note),
        (Facts { household: House::Faults { count: 2, told: secret("grandpa") }, ..well() }, "Household", Wrong),
        (Facts { household: House::Unknown(secret("/home/somebody")), ..well() }, "Household", Note),
        (
            Facts { household: House::Read { persons: 1, planned: 0, start_phrase: StartPhrase::Unknown(secret("grandpa")) }, ..well() },
            "Start phrase",
            Wrong,
        ),
        (
            Facts {
                household: House::Read { persons: 1, planned: 0, start_phrase: StartPhrase::NotInThisLanguage { commands: true } },
                ..well()
            },
            "Start phrase",
            Note,
        ),
    ]
}

#[test]
fn where_nothing_is_wrong_all_is_well() {
    let found = findings(&well());
    assert!(found.iter().all(|finding| finding.standing == Standing::Well && finding.remedy.is_none()), "{found:?}");
    assert!(all_is_well(&found));
    assert!(on_terminal(&found).ends_with("\nAll is well.\n"));
}

#[test]
fn whatever_is_wrong_is_told_with_its_remedy_and_only_that_makes_it_not_well() {
    for (facts, about, standing) in ailing() {
        let found = findings(&facts);
        let finding = found.iter().find(|finding| finding.about == about).expect("a finding");
        assert_eq!(finding.standing, standing, "{finding:?}");
        assert!(finding.remedy.is_some_and(|remedy| remedy.ends_with('.')) && finding.what.ends_with('.'), "{finding:?}");
        assert_eq!(all_is_well(&found), standing == Standing::Note, "{finding:?}");
        let others = found.iter().filter(|finding| finding.about != about).all(|finding| finding.standing != Standing::Wrong);
        assert!(others, "{found:?}");
    }
}

#[test]
fn what_leaves_the_house_holds_nothing_private_and_the_terminal_shows_it() {
    for (facts, about, _) in ailing() {
        let found = findings(&facts);
        let sent = to_send(&facts, &found);
        assert!(!sent.contains("SECRET") && !sent.contains("somebody") && !sent.contains("grandpa"), "{about}: {sent}");
        assert!(sent.starts_with("tidecount 1.2.3, A system, x86_64\n"), "{sent}");
        assert!(on_terminal(&found).contains("SECRET"), "{about}");
    }
}

#[test]
fn a_report_reads_as_plain_lines() {
    let facts = Facts { household: House::None, record: Record::Fails(secret("x")), ..well() };
    let sent = to_send(&facts, &findings(&facts));
    assert!(sent.contains("well   Microphone: It works (48000 Hz, mean level -50 dBFS, peak -30 dBFS).\n"), "{sent}");
    assert!(sent.contains("WRONG  Record: It cannot be opened.\n       -> `tidecount record check` says more.\n"), "{sent}");
    assert!(sent.ends_with("\nOne thing is wrong.\n"), "{sent}");
}
