//! The household of whoever wrote none: everybody for whom a package was taken on this computer.

use std::path::Path;

/// A household file as it would be written by hand, with every routine of every package in force; none where none was taken.
/// Paths in it are relative to the data folder.
#[must_use]
pub fn household_of_packages(data: &Path) -> Option<String> {
    let mut persons = Vec::new();
    for client in names(&data.join("clients")) {
        let package = data.join("clients").join(&client).join("package");
        let routines: Vec<String> = names(&package).into_iter().filter(|file| is_routine(&package.join(file))).collect();
        if routines.is_empty() {
            continue;
        }
        let settings = crate::packages::settings::of(data, &client);
        let mut person = toml::Table::new();
        person.insert("name".into(), client.clone().into());
        if let Some(pronoun) = settings.household.pronoun {
            person.insert("pronoun".into(), pronoun.into());
        }
        let entries = routines.into_iter().map(|file| {
            toml::Value::Table(toml::Table::from_iter([("file".to_owned(), format!("clients/{client}/package/{file}").into())]))
        });
        person.insert("routine".into(), toml::Value::Array(entries.collect()));
        persons.push(toml::Value::Table(person));
    }
    let household = toml::Table::from_iter([("person".to_owned(), toml::Value::Array(persons.clone()))]);
    if persons.is_empty() { None } else { toml::to_string(&household).ok() }
}

/// Routines have steps; settings and word packs have none.
fn is_routine(file: &Path) -> bool {
    let text = std::fs::read_to_string(file).unwrap_or_default();
    file.extension().is_some_and(|ending| ending == "toml")
        && toml::from_str::<toml::Table>(&text).is_ok_and(|table| table.contains_key("step"))
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        std::fs::read_dir(folder).into_iter().flatten().flatten().filter_map(|entry| entry.file_name().into_string().ok()).collect();
    names.sort();
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packages_make_a_household_and_nothing_makes_none() {
        let data = tempfile::tempdir().expect("a folder");
        assert_eq!(household_of_packages(data.path()), None);
        let package = data.path().join("clients/grandpa/package");
        std::fs::create_dir_all(&package).expect("a folder");
        std::fs::write(package.join("evening.toml"), "title = \"Evening routine\"\n[[step]]\nexercise = \"long-ah\"\n").expect("writes");
        std::fs::write(package.join("opposites.toml"), "title = \"x\"\nkind = \"opposite\"\n").expect("writes");
        std::fs::write(package.join("settings.toml"), "[household]\npronoun = \"he\"\n").expect("writes");
        let text = household_of_packages(data.path()).expect("a household");
        let read: toml::Table = toml::from_str(&text).expect("TOML");
        let person = read["person"][0].as_table().expect("a person");
        assert_eq!((person["name"].as_str(), person["pronoun"].as_str()), (Some("grandpa"), Some("he")));
        let routines = person["routine"].as_array().expect("routines");
        assert_eq!(routines.len(), 1);
        assert_eq!(routines[0]["file"].as_str(), Some("clients/grandpa/package/evening.toml"));
    }
}
