use super::*;

fn put(folder: &Path, name: &str, text: &str) {
    let path = folder.join(name);
    std::fs::create_dir_all(path.parent().expect("a folder")).expect("makes");
    std::fs::write(path, text).expect("writes");
}

#[test]
fn every_file_that_holds_something_of_the_client_is_cleared_and_no_other() {
    let dir = tempfile::tempdir().expect("a folder");
    let folder = dir.path();
    put(folder, "clients/grandpa/package/evening.toml", "title = \"x\"\nclient = \"grandpa\"\n[[step]]\n");
    put(folder, "clients/grandma/package/evening.toml", "title = \"x\"\n[[step]]\n");
    put(folder, "grandpa.toml", "title = \"x\"\nclient = \"grandpa\"\n[[step]]\nexercise = \"rest\"\n");
    put(folder, "shared.toml", "title = \"x\"\n[[step]]\nexercise = \"rest\"\n");
    put(folder, "voice-cache/01.wav", "Hello grandpa");
    let lines = [
        r#"{"at":"t","person":"grandpa","notice":"n","text":"Time for your practice.","what":"said"}"#,
        r#"{"at":"t","person":"grandma","notice":"n","text":"Time for your practice.","what":"said"}"#,
        r#"{"at":"t","person":null,"notice":"n","text":"Grandpa's practice is due.","what":"said"}"#,
        r#"{"at":"t","person":null,"notice":"n","text":"The microphone is gone.","what":"said"}"#,
        "half a li",
    ];
    put(folder, NOTICES_NAME, &lines.join("\n"));
    let beside = delete_beside(folder, "grandpa", true).expect("deletes");
    assert_eq!(beside.left, Vec::<String>::new());
    assert_eq!(beside.gone.len(), 4, "{:?}", beside.gone);
    assert!(!folder.join("clients/grandpa").exists() && folder.join("clients/grandma/package/evening.toml").exists());
    assert!(!folder.join("grandpa.toml").exists() && folder.join("shared.toml").exists() && !folder.join("voice-cache").exists());
    assert_eq!(std::fs::read_to_string(folder.join(NOTICES_NAME)).expect("reads"), [lines[1], lines[3], lines[4]].join("\n"));
    assert_eq!(delete_beside(folder, "grandpa", false).expect("deletes"), Beside::default());
}

#[test]
fn a_strange_name_reaches_no_other_folder_and_nobody_clears_nothing() {
    let dir = tempfile::tempdir().expect("a folder");
    put(dir.path(), "data/voice-cache/01.wav", "x");
    put(dir.path(), "outside/file", "x");
    for name in ["../../outside", "..", "", "/", "nobody"] {
        assert_eq!(delete_beside(&dir.path().join("data"), name, false).expect("deletes"), Beside::default(), "{name}");
    }
    assert!(dir.path().join("outside/file").exists() && dir.path().join("data/voice-cache/01.wav").exists());
}

#[test]
fn a_name_counts_as_words_of_its_own() {
    assert!(has_word("Grandpa's practice", "grandpa") && has_word("for grandpa.", "grandpa") && has_word("Grandpa", "grandpa"));
    assert!(!has_word("two clients", "client") && !has_word("anything", "") && !has_word("the annex", "ann"));
}
