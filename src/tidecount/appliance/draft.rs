//! The household file as it grows. What stands in it and is not asked for stays as it is.

use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, value};

/// A household file under way.
#[derive(Debug, Clone)]
pub struct Draft(DocumentMut);

impl Draft {
    /// The text of a household file, or nothing.
    ///
    /// # Errors
    /// It is no TOML; where and why.
    pub fn of(text: &str) -> Result<Self, String> {
        text.parse().map(Self).map_err(|why: toml_edit::TomlError| why.to_string())
    }

    /// As it would be written.
    #[must_use]
    pub fn text(&self) -> String {
        self.0.to_string()
    }

    /// Who practises here.
    #[must_use]
    pub fn persons(&self) -> Vec<String> {
        let name = |person: &dyn toml_edit::TableLike| person.get("name").and_then(Item::as_str).map(|name| name.trim().to_owned());
        match self.0.get("person") {
            Some(Item::ArrayOfTables(tables)) => tables.iter().filter_map(|table| name(table)).collect(),
            Some(item) => {
                let inline = item.as_array().into_iter().flatten();
                inline.filter_map(toml_edit::Value::as_inline_table).filter_map(|table| name(table)).collect()
            }
            None => Vec::new(),
        }
    }

    /// With one more who practises.
    #[must_use]
    pub fn with_person(mut self, name: &str, routine: &str) -> Self {
        let mut entry = Table::new();
        entry.insert("file", value(routine));
        let mut routines = ArrayOfTables::new();
        routines.push(entry);
        let mut person = Table::new();
        person.insert("name", value(name));
        person.insert("routine", Item::ArrayOfTables(routines));
        let mut persons = match self.0.remove("person").map(Item::into_array_of_tables) {
            Some(Ok(persons)) => persons,
            _ => ArrayOfTables::new(),
        };
        persons.push(person);
        self.0.insert("person", Item::ArrayOfTables(persons));
        self
    }

    /// What stands under `key`: `emergency_number`, or one of `[home]`.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&str> {
        let item = if key == "emergency_number" { self.0.get(key) } else { self.0.get("home").and_then(|home| home.get(key)) };
        item.and_then(Item::as_str).map(str::trim).filter(|text| !text.is_empty())
    }

    /// With another value there, or none.
    #[must_use]
    pub fn with(mut self, key: &str, text: Option<&str>) -> Self {
        if key == "emergency_number" {
            set(self.0.as_table_mut(), key, text);
            return self;
        }
        if text.is_none() && self.0.get("home").is_none() {
            return self;
        }
        if self.0.get("home").is_none_or(|home| !home.is_table_like()) {
            self.0.insert("home", Item::Table(Table::new()));
        }
        if let Some(home) = self.0.get_mut("home").and_then(Item::as_table_like_mut) {
            set(home, key, text);
        }
        self
    }
}

fn set(table: &mut dyn toml_edit::TableLike, key: &str, text: Option<&str>) {
    match text {
        Some(text) => drop(table.insert(key, value(text))),
        None => drop(table.remove(key)),
    }
}

#[cfg(test)]
#[path = "tests/draft.rs"]
mod tests;
