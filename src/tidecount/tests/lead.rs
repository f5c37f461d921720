use super::*;
use routine::{Called, Participant};

#[test]
fn before_a_class_the_clinician_reads_who_does_what_otherwise_in_this_routine() {
    let text = "title = \"Stretches\"\n[[step]]\nexercise = \"shoulder-rolls\"\n[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\n";
    let routine = routine::check_text("x", text, routine::Hearing::default()).unwrap_or_else(|faults| panic!("{faults}")).routine;
    let ids = |list: &[&str]| list.iter().map(|id| (*id).to_owned()).collect();
    let one = |called, leaves_out: &[&str], seated: &[&str], reason: Option<&str>| Participant {
        called,
        leaves_out: ids(leaves_out),
        seated: ids(seated),
        reason: reason.map(str::to_owned),
        heard: None,
    };
    let participants = vec![
        one(Called::Name("Plum".into()), &["neck-turns", "long-ah"], &["shoulder-rolls"], Some("neck")),
        one(Called::Number(7), &["long-ah"], &[], Some("voice")),
    ];
    let list = ClassList { title: "Thursday class".into(), participants };
    let told = otherwise(&list, &routine, &str::to_owned);
    assert_eq!(told, "\nOf Thursday class:\n  Plum: leaves out neck-turns; seated for shoulder-rolls (neck)\n");
    assert_eq!(otherwise(&ClassList { participants: list.participants[1..].to_vec(), ..list }, &routine, &str::to_owned), "");
}
