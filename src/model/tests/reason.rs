use super::*;

#[test]
fn what_is_written_stays_and_older_spellings_are_read() {
    for (read, written) in [("no answer", "no answer"), ("no-answer", "no answer"), ("skipped", "skipped"), ("of tomorrow", "of tomorrow")]
    {
        assert_eq!(StepReason::from(read).as_str(), written);
    }
    for (read, written) in [("no answer", "no-answer"), ("no-answer", "no-answer"), ("no agreement", "no-agreement")] {
        assert_eq!(EndReason::from(read).as_str(), written);
    }
    assert_eq!(StepReason::from("no-answer"), StepReason::NoAnswer);
    assert_eq!(EndReason::from("no answer"), EndReason::NoAnswer);
    assert_eq!(Symptom::from("seasick"), Symptom::Other("seasick".to_owned()));
}

#[test]
fn a_word_stands_in_json_as_text() {
    let json = serde_json::to_string(&EndedBy::NextCue).expect("writes");
    assert_eq!(json, "\"next cue\"");
    assert_eq!(serde_json::from_str::<EndedBy>(&json).expect("reads"), EndedBy::NextCue);
    assert_eq!(serde_json::from_str::<EndedBy>("\"bell\\u0021\"").expect("reads"), EndedBy::Other("bell!".to_owned()));
}
