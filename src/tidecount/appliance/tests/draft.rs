use super::*;

const FILE: &str =
    "# ours\nemergency_number = \"112\"\n\n[[person]]\nname = \"grandpa\" # he\n[[person.routine]]\nfile = \"evening.toml\"\n";

#[test]
fn what_is_not_asked_for_stays_as_it_is() {
    let draft = Draft::of(FILE).expect("TOML");
    assert_eq!(draft.text(), FILE);
    assert_eq!((draft.persons(), draft.get("emergency_number")), (vec!["grandpa".to_owned()], Some("112")));
    let text = draft.with("quiet_from", Some("21:30")).with("microphone", None).text();
    assert!(text.starts_with(FILE) && text.contains("[home]\nquiet_from = \"21:30\"\n"), "{text}");
}

#[test]
fn persons_are_added_to_those_there_are() {
    let from_nothing = Draft::of("").expect("TOML").with_person("granny", "voice.toml");
    assert_eq!(from_nothing.text(), "[[person]]\nname = \"granny\"\n\n[[person.routine]]\nfile = \"voice.toml\"\n");
    let second = Draft::of(FILE).expect("TOML").with("start_phrase", Some("begin our work")).with_person("granny", "voice.toml");
    assert_eq!(second.persons(), ["grandpa", "granny"]);
    let read: toml::Table = second.text().parse().expect("TOML");
    assert_eq!(read["person"][0]["routine"][0]["file"].as_str(), Some("evening.toml"));
    assert_eq!(read["person"][1]["routine"][0]["file"].as_str(), Some("voice.toml"));
    assert_eq!(read["home"]["start_phrase"].as_str(), Some("begin our work"));
}

#[test]
fn persons_in_one_line_are_kept_too() {
    let draft = Draft::of("person = [{ name = \"grandpa\", routine = [{ file = \"a.toml\" }] }]\n").expect("TOML");
    assert_eq!(draft.persons(), ["grandpa"]);
    let both: toml::Table = draft.with_person("granny", "b.toml").text().parse().expect("TOML");
    assert_eq!(both["person"].as_array().map(Vec::len), Some(2));
    assert_eq!(both["person"][0]["name"].as_str(), Some("grandpa"));
}

#[test]
fn a_value_is_replaced_and_taken_out() {
    let draft = Draft::of("[home]\nmicrophone = \"desk\"\n").expect("TOML");
    assert_eq!(draft.clone().with("microphone", Some("shelf")).get("microphone"), Some("shelf"));
    assert_eq!(draft.with("microphone", None).get("microphone"), None);
    assert!(Draft::of("[home\n").is_err());
}
