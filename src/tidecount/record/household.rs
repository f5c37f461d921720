//! Takes a person out of the household file, and leaves everything else in it as it was written, remarks included.

use std::path::Path;

use crate::record::beside::Beside;
use files::error::Failure;
use record::{replace_file, wipe_file};

const NAME: &str = "household.toml";

/// Removes the person's part of the household file; where nobody is left in it, the file.
pub fn without(folder: &Path, client: &str, beside: &mut Beside) -> Result<(), Failure> {
    let path = folder.join(NAME);
    let Ok(text) = std::fs::read_to_string(&path) else { return Ok(()) };
    let Ok(table) = toml::from_str::<toml::Table>(&text) else {
        if text.contains(client) {
            beside.left.push(format!("{NAME} cannot be understood and names {client}: take the name out yourself"));
        }
        return Ok(());
    };
    let mut wanted = table.clone();
    let persons = wanted.get_mut("person").and_then(toml::Value::as_array_mut);
    let Some(persons) = persons.filter(|persons| persons.iter().any(|person| is_called(person, client))) else { return Ok(()) };
    persons.retain(|person| !is_called(person, client));
    if persons.is_empty() {
        wanted.remove("person");
    }
    if wanted.is_empty() {
        wipe_file(&path);
        beside.gone.push(NAME.to_owned());
        return Ok(());
    }
    match cut(&text, client).filter(|left| toml::from_str::<toml::Table>(left).is_ok_and(|left| left == wanted)) {
        Some(left) => {
            replace_file(&path, left.as_bytes())?;
            beside.gone.push(format!("the part of {client} in {NAME}"));
        }
        None => beside.left.push(format!("{NAME} names {client} in a way that the program cannot take out: take the person out yourself")),
    }
    Ok(())
}

fn is_called(person: &toml::Value, client: &str) -> bool {
    person.get("name").and_then(toml::Value::as_str) == Some(client)
}

/// The text without the `[[person]]` of this name, and what belongs to it; none where there is no such part.
fn cut(text: &str, client: &str) -> Option<String> {
    let mut parts: Vec<(bool, String)> = vec![(false, String::new())];
    for line in text.split_inclusive('\n') {
        let bare: String = line.split('#').next().unwrap_or_default().chars().filter(|c| !c.is_whitespace()).collect();
        let begins = bare.starts_with('[') && !bare.starts_with("[person.") && !bare.starts_with("[[person.");
        if begins {
            parts.push((bare == "[[person]]", String::new()));
        }
        if let Some((_, part)) = parts.last_mut() {
            part.push_str(line);
        }
    }
    let theirs = |(is_person, part): &(bool, String)| {
        *is_person
            && toml::from_str::<toml::Table>(part)
                .is_ok_and(|table| table.get("person").and_then(|persons| persons.get(0)).is_some_and(|person| is_called(person, client)))
    };
    let found = parts.iter().any(theirs);
    found.then(|| parts.iter().filter(|part| !theirs(part)).map(|(_, part)| part.as_str()).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOUSE: &str = "# Our house\n[[person]]\nname = \"grandpa\" # he\n[[person.routine]]\nfile = \"a.toml\"\n\n# Hers\n[[person]]\nname = \"grandma\"\n[[person.routine]]\nfile = \"b.toml\"\n";

    #[test]
    fn a_person_is_cut_out_and_the_rest_stays_as_it_was_written() {
        let left = cut(HOUSE, "grandpa").expect("was there");
        assert_eq!(left, "# Our house\n[[person]]\nname = \"grandma\"\n[[person.routine]]\nfile = \"b.toml\"\n");
        assert_eq!(cut(HOUSE, "nobody"), None);
    }

    #[test]
    fn the_last_person_takes_the_file_along_and_a_strange_form_is_told() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join(NAME);
        let go = |text: &str, client: &str| {
            std::fs::write(&path, text).expect("writes");
            let mut beside = Beside::default();
            without(dir.path(), client, &mut beside).expect("works");
            (beside, std::fs::read_to_string(&path).ok())
        };
        let (beside, left) = go(HOUSE, "grandma");
        assert!(beside.gone.len() == 1 && left.is_some_and(|text| text.contains("grandpa") && !text.contains("grandma")));
        let (beside, left) = go("[[person]]\nname = \"grandpa\"\n", "grandpa");
        assert_eq!((beside.gone.as_slice(), left), (&[NAME.to_owned()][..], None));
        let inline = "person = [{ name = \"grandpa\" }, { name = \"grandma\" }]\n";
        let (beside, left) = go(inline, "grandpa");
        assert!(beside.left.len() == 1 && left.as_deref() == Some(inline));
        let (beside, _) = go(HOUSE, "somebody");
        assert_eq!(beside, Beside::default());
    }
}
