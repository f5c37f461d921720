//! Who practises what: the household file, read and changed by small steps under the same checks as `tidecount attend` makes.

use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, Value};

use crate::set_up::files::write_whole;
use crate::set_up::site::{PageError, Site};
use crate::set_up::toml_rows::{forget_places, inline, push_row, remove_row, rows};
use files::households::check_household;
use files::packages::household::household_of_packages;

/// The persons of the household file with the routines that they practise.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Residents(Vec<(String, Vec<String>)>);

impl Residents {
    pub fn names(&self) -> Vec<String> {
        self.0.iter().map(|(name, _)| name.clone()).collect()
    }

    pub fn who_practises(&self, file: &str) -> Vec<String> {
        self.0.iter().filter(|(_, files)| files.iter().any(|own| own == file)).map(|(name, _)| name.clone()).collect()
    }

    /// The files of one person.
    pub fn files_of(&self, name: &str) -> Vec<String> {
        self.0.iter().find(|(own, _)| own == name).map_or(Vec::new(), |(_, files)| files.clone())
    }

    fn of(document: &DocumentMut) -> Self {
        let text = |item: Option<&Item>| item.and_then(Item::as_str).map(str::trim).map(str::to_owned);
        let person = |row: &dyn toml_edit::TableLike| {
            let files = rows(row.get("routine")).into_iter().filter_map(|routine| text(routine.get("file"))).collect();
            Some((text(row.get("name"))?, files))
        };
        Self(rows(document.get("person")).into_iter().filter_map(person).collect())
    }
}

/// Reads who lives here; nobody where there is no file.
///
/// # Errors
/// The file is there and cannot be understood, in words.
pub fn read(site: &Site) -> Result<Residents, String> {
    document(site).map(|document| Residents::of(&document))
}

fn document(site: &Site) -> Result<DocumentMut, String> {
    let path = &site.place.household;
    let text = match std::fs::read_to_string(path) {
        Ok(text) => text,
        // Whoever wrote no household file is led by the packages that were taken here.
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => household_of_packages(&site.place.data).unwrap_or_default(),
        Err(error) => return Err(format!("{}: {error}", path.display())),
    };
    let mut document: DocumentMut = text.parse().map_err(|error: toml_edit::TomlError| format!("{}: {error}", path.display()))?;
    if let Some(Ok(mut tables)) = document.get("person").filter(|item| item.as_array().is_some()).cloned().map(Item::into_array_of_tables) {
        forget_places(&mut tables);
        document.insert("person", Item::ArrayOfTables(tables));
    }
    Ok(document)
}

/// Lets a person practise a routine; a person who is not known yet is added.
///
/// # Errors
/// The household would have faults, or cannot be written.
pub fn add_routine(site: &Site, name: &str, file: &str) -> Result<(), PageError> {
    if name.is_empty() {
        return Err(PageError::bad(site.s("page-person-missing")));
    }
    let mut document = document(site).map_err(PageError::bad)?;
    let known = Residents::of(&document);
    if known.files_of(name).iter().any(|own| own == file) {
        return Ok(());
    }
    if document.get("person").and_then(Item::as_array_of_tables).is_none() {
        document.insert("person", Item::ArrayOfTables(ArrayOfTables::new()));
    }
    let Some(persons) = document.get_mut("person").and_then(Item::as_array_of_tables_mut) else { return Ok(()) };
    if !known.names().iter().any(|own| own == name) {
        let mut person = Table::new();
        person.insert("name", toml_edit::value(name));
        person.insert("routine", Item::ArrayOfTables(ArrayOfTables::new()));
        persons.push(person);
    }
    if let Some(person) = persons.iter_mut().find(|person| is_called(person, name)) {
        push_row(person, "routine", inline([("file", Value::from(file))]));
    }
    write(site, &document)
}

/// Takes a routine from a person. Who has none left is taken out.
///
/// # Errors
/// Nobody would be left, the household would have faults, or it cannot be written.
pub fn forget_routine(site: &Site, name: &str, file: &str) -> Result<(), PageError> {
    let mut document = document(site).map_err(PageError::bad)?;
    let known = Residents::of(&document);
    let others = known.0.iter().any(|(own, files)| files.iter().any(|other| own != name || other != file));
    if !others {
        return Err(PageError::bad(site.s("page-person-last")));
    }
    let Some(persons) = document.get_mut("person").and_then(Item::as_array_of_tables_mut) else { return Ok(()) };
    for person in persons.iter_mut().filter(|person| is_called(person, name)) {
        let places =
            rows(person.get("routine")).into_iter().enumerate().filter(|(_, row)| row.get("file").and_then(Item::as_str) == Some(file));
        let places: Vec<usize> = places.map(|(place, _)| place).collect();
        places.into_iter().rev().for_each(|place| remove_row(person, "routine", place));
    }
    persons.retain(|person| person.contains_key("routine"));
    write(site, &document)
}

fn is_called(person: &Table, name: &str) -> bool {
    person.get("name").and_then(Item::as_str).map(str::trim) == Some(name)
}

fn write(site: &Site, document: &DocumentMut) -> Result<(), PageError> {
    let (path, text) = (&site.place.household, document.to_string());
    let Some(lexicon) = site.lexicon() else { return Err(PageError::bad(site.s("page-no-model"))) };
    if let Err(why) = check_household(&path.display().to_string(), path, text.as_bytes(), &site.words, lexicon) {
        return Err(PageError::bad(format!("{} {why}", site.s("page-household-faults"))));
    }
    let failed = |why: String| PageError::bad(format!("{}: {why}", path.display()));
    if let Some(folder) = path.parent() {
        record::create_folder(folder).map_err(|why| failed(why.to_string()))?;
    }
    if let Ok(before) = std::fs::read(path) {
        write_whole(&path.with_extension("toml.before"), &before).map_err(|why| failed(why.to_string()))?;
    }
    write_whole(path, text.as_bytes()).map_err(|why| failed(why.to_string()))
}
