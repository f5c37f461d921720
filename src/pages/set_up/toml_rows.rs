//! Small changes to a TOML document that leave everything else as it was written: comments, order, spacing.

use toml_edit::{Array, ArrayOfTables, InlineTable, Item, Table, TableLike, Value};

/// Sets a key, or takes it out. A value that says the same already stays as it is written; one that is replaced keeps what
/// stands around it.
pub fn set(table: &mut dyn TableLike, key: &str, new: Option<Value>) {
    let Some(new) = new else {
        // An empty text that stands in the file was not typed here: the check names it.
        if table.get(key).and_then(Item::as_str) != Some("") {
            table.remove(key);
        }
        return;
    };
    match table.get_mut(key).and_then(Item::as_value_mut) {
        Some(old) if same(old, &new) => {}
        Some(old) => replace(old, new),
        None => {
            table.insert(key, Item::Value(new));
        }
    }
}

fn replace(old: &mut Value, new: Value) {
    let decor = old.decor().clone();
    *old = new;
    *old.decor_mut() = decor;
}

/// Whether two values say the same; 10 and 10.0 do.
fn same(one: &Value, other: &Value) -> bool {
    let number = |value: &Value| value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64));
    match (number(one), number(other)) {
        (Some(one), Some(other)) => one == other,
        (None, None) => match (one, other) {
            (Value::String(one), Value::String(other)) => one.value() == other.value(),
            (Value::Boolean(one), Value::Boolean(other)) => one.value() == other.value(),
            (Value::Array(one), Value::Array(other)) => {
                one.len() == other.len() && one.iter().zip(other.iter()).all(|(one, other)| same(one, other))
            }
            _ => false,
        },
        _ => false,
    }
}

/// Sets a list of plain values; an empty one takes the key out. Values that stay keep their comments.
pub fn set_list(table: &mut dyn TableLike, key: &str, new: Vec<Value>, one_a_line: bool) {
    if new.is_empty() {
        if !table.get(key).and_then(Item::as_array).is_some_and(Array::is_empty) {
            table.remove(key);
        }
        return;
    }
    let Some(old) = table.get_mut(key).and_then(Item::as_array_mut) else {
        let mut array: Array = new.into_iter().collect();
        if one_a_line {
            break_lines(&mut array);
        }
        table.insert(key, Item::Value(Value::Array(array)));
        return;
    };
    let before = old.len();
    while old.len() > new.len() {
        old.remove(old.len() - 1);
    }
    let broken = old
        .iter()
        .last()
        .and_then(|last| last.decor().prefix())
        .is_some_and(|prefix| prefix.as_str().is_some_and(|text| text.contains('\n')));
    for (index, value) in new.into_iter().enumerate() {
        match old.get_mut(index) {
            Some(kept) if same(kept, &value) => {}
            Some(kept) => replace(kept, value),
            None if broken => old.push_formatted(value.decorated("\n    ", "")),
            None => old.push(value),
        }
    }
    if before == 0 && one_a_line {
        break_lines(old);
    }
}

/// Each value on a line of its own.
fn break_lines(array: &mut Array) {
    for value in array.iter_mut() {
        value.decor_mut().set_prefix("\n    ");
        value.decor_mut().set_suffix("");
    }
    array.set_trailing("\n");
    array.set_trailing_comma(true);
}

/// The tables of a list, however they are written.
pub fn rows(item: Option<&Item>) -> Vec<&dyn TableLike> {
    match item {
        Some(Item::ArrayOfTables(tables)) => tables.iter().map(|table| table as &dyn TableLike).collect(),
        Some(Item::Value(Value::Array(array))) => {
            array.iter().filter_map(|value| value.as_inline_table().map(|table| table as &dyn TableLike)).collect()
        }
        _ => Vec::new(),
    }
}

/// As [`rows`], to be changed.
pub fn rows_mut(item: Option<&mut Item>) -> Vec<&mut dyn TableLike> {
    match item {
        Some(Item::ArrayOfTables(tables)) => tables.iter_mut().map(|table| table as &mut dyn TableLike).collect(),
        Some(Item::Value(Value::Array(array))) => {
            array.iter_mut().filter_map(|value| value.as_inline_table_mut().map(|table| table as &mut dyn TableLike)).collect()
        }
        _ => Vec::new(),
    }
}

/// Takes one of the tables of a list out; the key goes with the last one.
pub fn remove_row(table: &mut dyn TableLike, key: &str, index: usize) {
    match table.get_mut(key) {
        Some(Item::ArrayOfTables(tables)) if index < tables.len() => {
            tables.remove(index);
        }
        Some(Item::Value(Value::Array(array))) => {
            let places: Vec<usize> =
                array.iter().enumerate().filter(|(_, value)| value.is_inline_table()).map(|(place, _)| place).collect();
            if let Some(&place) = places.get(index) {
                array.remove(place);
            }
        }
        _ => {}
    }
    if rows(table.get(key)).is_empty() {
        table.remove(key);
    }
}

/// Adds a table to a list, in the way in which the list is written; a new list is one of inline tables, a line each.
pub fn push_row(table: &mut dyn TableLike, key: &str, row: InlineTable) {
    match table.get_mut(key) {
        Some(Item::ArrayOfTables(tables)) => {
            let mut new: Table = row.into_table();
            new.set_position(None);
            tables.push(new);
        }
        Some(Item::Value(Value::Array(array))) => {
            array.push(row);
            break_lines(array);
        }
        _ => {
            let mut array = Array::new();
            array.push(row);
            break_lines(&mut array);
            table.insert(key, Item::Value(Value::Array(array)));
        }
    }
}

/// An inline table of these values.
pub fn inline(values: impl IntoIterator<Item = (&'static str, Value)>) -> InlineTable {
    let mut table = InlineTable::new();
    for (key, value) in values {
        table.insert(key, value);
    }
    table
}

/// Lets every table below stand where the order of the document puts it, not where it once stood.
pub fn forget_places(tables: &mut ArrayOfTables) {
    tables.iter_mut().for_each(forget_place);
}

fn forget_place(table: &mut Table) {
    table.set_position(None);
    for (_, item) in table.iter_mut() {
        match item {
            Item::Table(inner) => forget_place(inner),
            Item::ArrayOfTables(inner) => forget_places(inner),
            _ => {}
        }
    }
}

/// What was typed into a field of a number: a number where it is one, else the text, so that the check can say what is wrong.
pub fn number_of(typed: &str) -> Option<Value> {
    let typed = typed.trim();
    if typed.is_empty() {
        return None;
    }
    if let Ok(whole) = typed.parse::<i64>() {
        return Some(Value::from(whole));
    }
    match typed.parse::<f64>() {
        Ok(number) if number.is_finite() => Some(Value::from(number)),
        _ => Some(Value::from(typed)),
    }
}

/// What was typed into a field of one line; nothing where it is empty.
pub fn text_of(typed: &str) -> Option<Value> {
    let typed = typed.trim();
    (!typed.is_empty()).then(|| Value::from(typed))
}

/// A value as it is typed into a field.
pub fn typed(value: Option<&Item>) -> String {
    match value.and_then(Item::as_value) {
        Some(Value::String(text)) => text.value().clone(),
        Some(Value::Integer(number)) => number.value().to_string(),
        Some(Value::Float(number)) => number.value().to_string(),
        Some(Value::Boolean(yes)) => yes.value().to_string(),
        Some(Value::Array(array)) => array.iter().map(value_text).collect::<Vec<_>>().join(", "),
        _ => String::new(),
    }
}

fn value_text(value: &Value) -> String {
    match value {
        Value::String(text) => text.value().clone(),
        Value::Integer(number) => number.value().to_string(),
        Value::Float(number) => number.value().to_string(),
        other => other.to_string().trim().to_owned(),
    }
}

/// A list of texts, one a line.
pub fn typed_lines(value: Option<&Item>) -> String {
    let array = value.and_then(Item::as_array);
    array.map_or(String::new(), |array| array.iter().map(value_text).collect::<Vec<_>>().join("\n"))
}

/// Lines of a field, without those that are empty.
pub fn lines_of(text: &str) -> Vec<Value> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).map(Value::from).collect()
}
