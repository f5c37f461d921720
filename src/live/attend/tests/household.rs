use std::collections::BTreeSet;

use attend::household::{Articles, Checks, check_bytes};
use attend::{Household, Pronoun, Said};
use files::households::wordings;
use routine::{Faults, Hearing, Prescription, check_text};

const ROUTINE: &str =
    "title = \"Evening routine\"\nplan = [{ days = [\"wednesday\"], at = \"18:30\" }]\n[[step]]\nexercise = \"rest\"\nlength_s = 5\n";

fn check(text: &str) -> Result<Household, Faults> {
    let words = speak::Words::english().unwrap();
    let known = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../models/en/graph/words.txt")).unwrap();
    let known: BTreeSet<&str> = known.lines().filter_map(|line| line.split_whitespace().next()).collect();
    let knows = |word: &str| known.contains(word);
    let commands = files::load::command_words(&words);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() };
    let load = |file: &str| -> Result<Prescription, Faults> {
        match file {
            "evening.toml" | "other.toml" => check_text(file, ROUTINE, hearing),
            "bad.toml" => check_text(file, "title = \"Bad\"\n[[step]]\nexercise = \"hovering\"\n", hearing),
            _ => Err(Faults::of_file(file, "cannot be read", "Check the file's name.")),
        }
    };
    let say = |household: &Household, said: &Said| wordings(&words, household, said);
    let spoken = |text: &str| text.to_lowercase();
    check_bytes(
        "household.toml",
        text.as_bytes(),
        Checks { hearing, load: &load, spoken_form: &spoken, wordings: &say, articles: &Articles::default() },
    )
}

#[test]
fn a_household_is_read_with_its_routines_and_plans() {
    let household = check(
        "[[person]]\nname = \"grandpa\"\npronoun = \"he\"\n[[person.routine]]\nfile = \"evening.toml\"\n\
         [[person]]\nname = \"grandma\"\nsummary_after = true\n[[person.routine]]\nfile = \"evening.toml\"\ncalled = [\"my voice\", \"singing\"]\n",
    )
    .unwrap_or_else(|faults| panic!("{faults}"));
    let [grandpa, grandma] = &household.persons[..] else { panic!("{household:?}") };
    assert_eq!((grandpa.pronoun, grandma.pronoun, grandma.summary_after), (Pronoun::He, Pronoun::They, true));
    assert_eq!(grandpa.routines[0].called, ["evening routine"]);
    assert_eq!(grandma.routines[0].called, ["my voice", "singing"]);
    assert_eq!(grandpa.routines[0].plan[0].at_min, 1110);
    assert_eq!((household.the((0, 0)), household.the((1, 0))), ("the evening routine".to_owned(), "my voice".to_owned()));
}

#[test]
fn every_fault_is_told_at_once_with_line_and_remedy() {
    let faults = check(
        "[[person]]\nname = \"blorptown\"\npronoun = \"it\"\nage = 80\n[[person.routine]]\nfile = \"bad.toml\"\n\
         [[person]]\npronoun = 3\n[[person.routine]]\nfile = \"gone.toml\"\ncalled = [\"stop it now please stop\"]\n",
    )
    .unwrap_err();
    let text = faults.to_string();
    for expected in [
        "household.toml:2: `name`: the recogniser does not know the word \"blorptown\"",
        "household.toml:3: `pronoun` cannot be \"it\"",
        "household.toml:4: `person` knows no key `age`",
        "household.toml:6: bad.toml, line 3: unknown exercise \"hovering\"",
        "household.toml:7: `person` has no `name`",
        "household.toml:8: `pronoun` is a whole number",
        "household.toml:10: gone.toml, line 1: cannot be read",
        "household.toml:11: `called` holds",
    ] {
        assert!(text.contains(expected), "{expected}\nis not in\n{text}");
    }
    assert!(faults.list.iter().all(|fault| !fault.remedy.is_empty()));
}

#[test]
fn what_could_be_taken_for_something_else_is_refused() {
    let two = |one: &str, other: &str| {
        format!(
            "[[person]]\nname = \"{one}\"\n[[person.routine]]\nfile = \"evening.toml\"\n[[person]]\nname = \"{other}\"\n[[person.routine]]\nfile = \"other.toml\"\n"
        )
    };
    assert!(check(&two("grandpa", "grandma")).is_ok(), "one call name of two persons is asked about");
    assert!(check(&two("grandpa", "Grandpa")).unwrap_err().to_string().contains("two persons are called"));
    let like = check(&two("grandpa", "grandpa joe")).map(|_| ()).unwrap_err().to_string();
    assert!(like.contains("too like"), "{like}");
    let routine = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\ncalled = [\"my practice\"]\n";
    assert!(check(routine).unwrap_err().to_string().contains("\"start my practice\" is too like"));
    let twice = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n[[person.routine]]\nfile = \"other.toml\"\n";
    assert!(check(twice).unwrap_err().to_string().contains("two routines of grandpa are called \"evening routine\""));
}

#[test]
fn an_empty_or_broken_file_is_told() {
    assert!(check("").unwrap_err().to_string().contains("the household has no `person`"));
    assert!(check("[[person]\nname = 3").unwrap_err().to_string().contains("this is not TOML"));
    assert!(check("person = []").unwrap_err().to_string().contains("0 persons"));
}

const GRANDPA: &str = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n";

#[test]
fn what_is_arranged_for_the_place_is_read_and_its_phrase_starts_a_practice() {
    let text = format!(
        "{GRANDPA}[home]\nmicrophone = \"desk\"\nstart_phrase = \"begin our work\"\nquiet_from = \"21:30\"\nquiet_to = \"07:00\"\n\
         tell_faults_to = \"your daughter\"\n"
    );
    let household = check(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!((household.home.microphone.as_deref(), household.home.loudspeaker.as_deref()), (Some("desk"), None));
    assert!(household.home.is_quiet_at(0) && !household.home.is_quiet_at(720));
    let words = speak::Words::english().unwrap();
    let all = wordings(&words, &household, &Said::StartMine);
    assert_eq!(all.first().map(String::as_str), Some("start my practice"));
    assert_eq!(all.last().map(String::as_str), Some("begin our work"));
    assert!(!wordings(&words, &household, &Said::NotNow).contains(&"begin our work".to_owned()));
}

#[test]
fn what_cannot_be_arranged_is_told() {
    for (line, told) in [
        ("start_phrase = \"begin\"", "one word"),
        ("start_phrase = \"begin our blorptown\"", "does not know the word \"blorptown\""),
        ("start_phrase = \"start for grandpa\"", "means something else"),
        ("quiet_from = \"21:30\"", "need both"),
        ("quiet_from = \"25:30\"\nquiet_to = \"07:00\"", "no time of day"),
        ("louder = 3", "knows no key `louder`"),
    ] {
        let faults = check(&format!("{GRANDPA}[home]\n{line}\n")).expect_err(line).to_string();
        assert!(faults.contains(told), "{line}: {faults}");
    }
}
