use super::*;
use crate::words::Direction;

/// The English words as a pack of another language, some lines replaced or left out.
fn changed(change: impl Fn(&str, &str) -> String) -> Vec<String> {
    let english = Language::find("en").unwrap();
    let files = english.files.iter().map(|(name, text)| (name.clone(), change(name, text))).collect();
    let about = "tag = \"qps\"\nname = \"Made up\"\nvoices = [\"en-gb\"]\n";
    let pack = Arc::new(Language::of("pack.toml", about, files).unwrap());
    let untranslated = |fault: &LanguageFault| fault.what.ends_with("is still English");
    faults(&pack).unwrap().into_iter().filter(|fault| !untranslated(fault)).map(|fault| fault.to_string()).collect()
}

#[test]
fn every_built_in_language_is_whole() {
    for language in Language::built_in().unwrap() {
        let found: Vec<String> = faults(language).unwrap().iter().map(ToString::to_string).collect();
        assert!(found.is_empty(), "{}: {} faults\n{}", language.tag, found.len(), found.join("\n"));
    }
}

#[test]
fn each_sort_of_fault_is_found_with_its_place_and_remedy() {
    let one = |faults: &[String], parts: &[&str]| {
        assert!(faults.iter().any(|fault| parts.iter().all(|part| fault.contains(part))), "{parts:?}: {faults:#?}");
    };
    let replaced =
        |pairs: &[(&str, &str)]| changed(|_, text| pairs.iter().fold(text.to_owned(), |text, (old, new)| text.replace(old, new)));
    let found = replaced(&[
        ("cmd-skip = ", "cmd-skp = "),
        ("\nresumed = Let's go on with { $name }.", "\nresumed = On with { $exercise }."),
        ("\nwent-back = Back to { $name }.", "\nwent-back = Back."),
    ]);
    one(&found, &["commands.ftl: the message cmd-skip is missing", "Add `cmd-skip = …`"]);
    one(&found, &["commands.ftl, line ", "nothing asks for the message cmd-skp"]);
    one(&found, &["asks for $exercise", "It is given $name."]);
    one(&found, &["session.ftl, line ", "resumed leaves out $name"]);
    one(&found, &["went-back leaves out $name"]);
    let found = replaced(&[
        ("cmd-skip = skip |", "cmd-skip = again | all finish now | Skip! |"),
        ("\nskipped = Leaving", "\nskipped = Please stop, leaving"),
        ("\nhelp-shown = Help", "\nhelp-shown = { no-such }"),
    ]);
    one(&found, &["\"again\" stands for two commands", "cmd-again"]);
    one(&found, &["holds \"finish\"", "cmd-finish"]);
    one(&found, &["\"Skip!\"", "not spoken"]);
    one(&found, &["message skipped says \"stop\"", "other words"]);
    one(&found, &["help-shown cannot be put together"]);
}

#[test]
fn what_was_not_translated_is_told() {
    let english = Language::find("en").unwrap();
    let about = "tag = \"qps\"\nname = \"Made up\"\nvoices = [\"en-gb\"]\n";
    let pack = Arc::new(Language::of("pack.toml", about, english.files.clone()).unwrap());
    assert!(faults(&pack).unwrap().len() > 500);
}

#[test]
fn a_folder_that_is_no_pack_is_told_with_file_line_and_remedy() {
    let dir = tempfile::tempdir().unwrap();
    let told = |text: &str| {
        std::fs::write(dir.path().join("pack.toml"), text).unwrap();
        Language::open(dir.path()).unwrap_err().to_string()
    };
    assert!(Language::open(dir.path()).unwrap_err().to_string().contains("docs/languages.md"));
    assert!(Language::open(std::path::Path::new("/nowhere/at/all")).unwrap_err().to_string().contains("cannot be read"));
    assert!(told("tag = \"de\"\nnme = \"x\"\n").contains("line 2"));
    assert!(told("tag = \"a language\"\nname = \"x\"\nvoices = [\"de\"]\n").contains("line 1"));
    assert!(told("tag = \"de\"\nname = \"x\"\nvoices = []\n").contains("line 3"));
    assert!(told("tag = \"de\"\nname = \"x\"\nvoices = [\"de\"]\ndecimal = \"x\"\n").contains("line 4"));
    std::fs::write(dir.path().join("pack.toml"), "tag = \"he\"\nname = \"x\"\nvoices = [\"he\"]\ndirection = \"rtl\"\n").unwrap();
    assert_eq!(Language::open(dir.path()).unwrap().direction, Direction::Rtl);
}

#[test]
fn languages_are_found_by_their_tags_and_unknown_ones_list_those_there_are() {
    assert_eq!(Language::find("DE_at").unwrap().tag, "de");
    let unknown = Language::find("xx").unwrap_err().to_string();
    assert!(unknown.contains("Deutsch") && unknown.contains("Español") && unknown.contains("--language-pack"), "{unknown}");
}
