use super::*;
use std::os::unix::fs::PermissionsExt;

fn mode(path: &Path) -> u32 {
    std::fs::symlink_metadata(path).expect("is there").permissions().mode() & 0o7777
}

fn open_to_all(path: &Path, mode: u32) {
    std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).expect("sets");
}

#[test]
fn what_is_made_is_for_its_owner_alone() {
    let dir = tempfile::tempdir().expect("a folder");
    let inner = dir.path().join("a/b");
    folder(&inner).expect("makes");
    drop(create_new(&inner.join("new")).expect("makes"));
    drop(create(&inner.join("whole")).expect("makes"));
    drop(append(&inner.join("lines"), true).expect("makes"));
    assert_eq!((mode(&inner), mode(&dir.path().join("a"))), (0o700, 0o700));
    for name in ["new", "whole", "lines"] {
        assert_eq!(mode(&inner.join(name)), 0o600, "{name}");
    }
    assert!(create_new(&inner.join("new")).is_err(), "it is there already");
}

#[test]
fn what_was_open_is_closed_before_anything_is_written() {
    let dir = tempfile::tempdir().expect("a folder");
    let (whole, lines) = (dir.path().join("whole"), dir.path().join("lines"));
    for path in [&whole, &lines] {
        std::fs::write(path, "older and longer").expect("writes");
        open_to_all(path, 0o664);
    }
    write(&whole, b"new").expect("writes");
    append(&lines, false).expect("opens").write_all(b" and more").expect("writes");
    assert_eq!((mode(&whole), mode(&lines)), (0o600, 0o600));
    assert_eq!(std::fs::read(&whole).expect("reads"), b"new");
    assert_eq!(std::fs::read(&lines).expect("reads"), b"older and longer and more");
}

#[test]
fn a_device_keeps_its_mode() {
    let before = mode(Path::new("/dev/null"));
    write(Path::new("/dev/null"), b"x").expect("takes everything");
    assert_eq!(mode(Path::new("/dev/null")), before);
}

#[test]
fn a_data_folder_is_closed_with_all_that_is_ours_in_it() {
    let dir = tempfile::tempdir().expect("a folder");
    let data = dir.path().join("data");
    std::fs::create_dir_all(data.join("sound/deep")).expect("makes");
    std::fs::create_dir_all(data.join("sound.before-restore-1")).expect("makes");
    std::fs::create_dir_all(data.join("project")).expect("makes");
    let files = ["practice.sqlite", "practice.sqlite-wal", "evening.toml", "sound/1.flac", "sound/deep/2.flac", "project/other"];
    for name in files {
        std::fs::write(data.join(name), "x").expect("writes");
        open_to_all(&data.join(name), 0o644);
    }
    for name in ["", "sound", "sound/deep", "sound.before-restore-1", "project"] {
        open_to_all(&data.join(name), 0o755);
    }
    let outside = dir.path().join("outside");
    std::fs::write(&outside, "x").expect("writes");
    open_to_all(&outside, 0o644);
    std::os::unix::fs::symlink(&outside, data.join("link")).expect("links");

    let mended = mend(&data, "practice.sqlite", &["sound"]);
    assert_eq!((mended.closed, mended.left.len()), (9, 0));
    for name in ["", "sound", "sound/deep", "sound.before-restore-1"] {
        assert_eq!(mode(&data.join(name)), 0o700, "{name}");
    }
    for name in ["practice.sqlite", "practice.sqlite-wal", "evening.toml", "sound/1.flac", "sound/deep/2.flac"] {
        assert_eq!(mode(&data.join(name)), 0o600, "{name}");
    }
    assert_eq!((mode(&outside), mode(&data.join("project/other"))), (0o644, 0o644), "what is not ours stays");
    let notice = mended.notice(&data).expect("told");
    assert!(notice.contains("9 files and folders") && notice.contains("Now only you can"), "{notice}");
    assert_eq!(mend(&data, "practice.sqlite", &["sound"]).notice(&data), None, "a second time there is nothing to tell");
}

#[test]
fn a_folder_that_many_share_stays_open_and_the_record_in_it_is_closed() {
    let dir = tempfile::tempdir().expect("a folder");
    open_to_all(dir.path(), 0o1777);
    for name in ["practice.sqlite", "other"] {
        std::fs::write(dir.path().join(name), "x").expect("writes");
        open_to_all(&dir.path().join(name), 0o644);
    }
    assert_eq!(mend(dir.path(), "practice.sqlite", &[]).closed, 1);
    assert_eq!((mode(dir.path()), mode(&dir.path().join("practice.sqlite")), mode(&dir.path().join("other"))), (0o1777, 0o600, 0o644));
}

#[test]
fn what_cannot_be_closed_is_named() {
    let mended = Mended { closed: 1, left: vec!["/data/a".into(), "/data/b".into()] };
    let notice = mended.notice(Path::new("/data")).expect("told");
    assert!(notice.contains("a file or folder in /data") && notice.contains("/data/a and one more"), "{notice}");
}
