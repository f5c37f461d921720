use super::*;
use command_ear::SecondEarFiles;

#[test]
fn a_second_of_a_recording_is_judged_by_its_samples() {
    let dir = tempfile::tempdir().expect("a folder");
    let wav = |name: &str, sample: &dyn Fn(u32) -> f32| {
        let path = dir.path().join(name);
        let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 32, sample_format: hound::SampleFormat::Float };
        let mut writer = hound::WavWriter::create(&path, spec).expect("a file");
        (0..32_000).for_each(|n| writer.write_sample(sample(n)).expect("writes"));
        writer.finalize().expect("closes");
        path.display().to_string()
    };
    let tone = wav("tone.wav", &|n| (n as f32 * std::f32::consts::TAU / 160.0).sin() * 0.1);
    let heard = listen(&tone).expect("is read");
    assert!((heard.peak_dbfs + 20.0).abs() < 0.1 && (heard.rms_dbfs + 23.0).abs() < 0.1, "{heard:?}");
    assert!(!heard.constant && heard.lost_frames == 0);
    assert!(listen(&wav("silence.wav", &|_| 0.0)).expect("is read").constant);
    assert!(listen("nowhere.wav").is_err());
}

#[cfg(unix)]
#[test]
fn a_folder_that_others_can_look_into_is_found_with_its_files() {
    use std::os::unix::fs::PermissionsExt;
    let dir = tempfile::tempdir().expect("a folder");
    let set = |path: &Path, mode: u32| std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).expect("its mode");
    let (folder_path, inner) = (dir.path().join("data"), dir.path().join("data/reports"));
    std::fs::create_dir_all(&inner).expect("folders");
    std::fs::write(inner.join("a"), "x").expect("writes");
    std::fs::write(folder_path.join("b"), "x").expect("writes");
    set(&inner.join("a"), 0o644);
    set(&folder_path.join("b"), 0o600);
    set(&folder_path, 0o755);
    let Folder::There { writable, open_to_others, files_open_to_others, .. } = folder(&folder_path) else { panic!("it is there") };
    assert!(writable && open_to_others);
    assert_eq!(files_open_to_others, 1);
    set(&folder_path, 0o700);
    assert!(matches!(folder(&folder_path), Folder::There { open_to_others: false, .. }));
    assert!(matches!(folder(&dir.path().join("none")), Folder::Missing(_)));
    assert!(room_bytes(&dir.path().join("none/deeper")).expect("a disk") > 0);
}

#[test]
fn no_household_and_no_record_are_no_faults() {
    let dir = tempfile::tempdir().expect("a folder");
    let words = Words::english().expect("words");
    assert_eq!(house(&dir.path().join("household.toml"), None, &words).0, House::None);
    assert_eq!(record(dir.path(), &ZonedDateTime::now()), (Record::None, false));
}

/// A Spanish household can be started by a phrase only with a model.
#[test]
fn what_a_second_ear_never_learnt_starts_nothing() {
    let dir = tempfile::tempdir().expect("a folder");
    let phrases = |list: &str| {
        std::fs::write(dir.path().join("classes.txt"), list).expect("writes");
        let choices = vec![Choice { tag: "0".into(), wordings: vec!["empezar mi práctica".into(), "mi práctica".into()] }];
        let model = Models { vosk: None, second_ear: SecondEarFiles::Folder(dir.path().to_owned()) };
        let lexicon = Lexicon::of(&model).expect("no model is needed");
        start_phrase(&model, &lexicon, &Grammar { choices, ..Grammar::default() })
    };
    assert_eq!(phrases("parar\n(other)\n"), StartPhrase::NotInThisLanguage { commands: true });
    assert_eq!(phrases("parar\nmi práctica\n(other)\n"), StartPhrase::Heard);
    let lexicon = Lexicon::of(&Models::none()).expect("no model is needed");
    let nothing = start_phrase(&Models::none(), &lexicon, &Grammar::default());
    assert_eq!(nothing, StartPhrase::NotInThisLanguage { commands: false });
}

#[test]
fn the_demo_household_is_read_and_can_be_started() {
    let words = Words::english().expect("words");
    let (found, household) = house(&Path::new(env!("CARGO_MANIFEST_DIR")).join("demo/household.toml"), None, &words);
    assert!(matches!(found, House::Read { persons: 2, start_phrase: StartPhrase::Heard, .. }), "{found:?}");
    assert!(starts(&household.expect("a household"), &words).choices.len() > 4);
}
