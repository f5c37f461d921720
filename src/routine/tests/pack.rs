use super::*;

fn check(text: &str) -> Result<Pack, Faults> {
    let commands = [("stop".to_owned(), vec!["stop".to_owned()]), ("skip".to_owned(), vec!["skip".to_owned()])];
    let knows = |word: &str| word != "zyzzyva";
    check_pack("garden.toml", text.as_bytes(), Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() })
}

const HEAD: &str = "title = \"Garden\"\nkind = \"definition\"\n";

#[test]
fn a_whole_item_is_taken() {
    let pack = check(&format!(
        "{HEAD}[[item]]\nclue = \"You dig with it.\"\nanswers = [\"spade\", \"a spade\"]\nnear = [\"shovel\"]\nhint = \"Also a card.\"\n"
    ))
    .expect("well");
    assert_eq!((pack.kind, pack.questions.len()), (PackKind::Definition, 1));
    assert_eq!(pack.questions[0].near, ["shovel"]);
}

#[test]
fn every_fault_is_named_with_its_line() {
    let text = format!(
        "{HEAD}[[item]]\nclue = \"Dig with a spade.\"\nanswers = [\"spade\", \"zyzzyva\"]\nnear = [\"Spade\"]\nhint = \"x\"\n[[item]]\nclue = \"Skip it\"\nanswers = [\"skip\"]\n"
    );
    let faults = check(&text).expect_err("faults");
    let said = faults.to_string();
    for part in ["garden.toml:4: the clue holds the answer", "lexicon", "stands twice", "command skip", "has no `hint`"] {
        assert!(said.contains(part), "{part}: {said}");
    }
}

#[test]
fn an_odd_one_out_stands_in_its_clue() {
    let item = |clue: &str| {
        format!("title = \"Odd\"\nkind = \"odd-one-out\"\n[[item]]\nclue = \"{clue}\"\nanswers = [\"spade\"]\nhint = \"A tool.\"\n")
    };
    assert!(check(&item("Rose, lily, spade or tulip?")).is_ok());
    assert!(check(&item("Rose, lily or tulip?")).expect_err("not named").to_string().contains("does not name the answer"));
}

#[test]
fn a_category_counts_each_member_once() {
    let text = |members: &str| {
        format!(
            "title = \"Names\"\nkind = \"category\"\n[[item]]\nclue = \"Name flowers.\"\ncategory = \"flowers\"\nmembers = [{members}]\n"
        )
    };
    assert_eq!(check(&text("\"rose | roses\", \"tulip\"")).expect("well").categories[0].members.len(), 2);
    assert!(check(&text("\"rose | roses\", \"Roses\"")).expect_err("twice").to_string().contains("stands twice"));
}

#[test]
fn nothing_comes_back_before_everything_was_there() {
    let asked = BTreeMap::from([("a".to_owned(), 2), ("b".to_owned(), 1)]);
    let mut items = vec!["a", "b", "c", "d"];
    fresh_first(&mut items, &asked, |item| item);
    assert_eq!(items, ["c", "d", "b", "a"]);
    assert_eq!(in_turn(vec![vec![1, 2, 3], vec![10], vec![20, 21]]), [1, 10, 20, 2, 21, 3]);
}
