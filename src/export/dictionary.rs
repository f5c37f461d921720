//! The data dictionary of the tables: as a plain table, and as metadata for programs (W3C "CSV on the Web", csv-metadata.json).

use serde_json::{Map, Value, json};

use super::columns::TABLES;
use super::table::{BETWEEN, Column, Holds, Row, Table, Writer};

/// The columns of the dictionary itself.
pub static DICTIONARY: Table = Table {
    name: "data-dictionary",
    meaning: "One row for each column of each table",
    key: &["table", "column"],
    columns: &[
        Column::required("table", Holds::Text, "The table"),
        Column::required("column", Holds::Text, "The column"),
        Column::required("meaning", Holds::Text, "What stands in it"),
        Column::new("unit", Holds::Text, "", "Unit, UCUM code"),
        Column::required("type", Holds::Text, "What its cells hold"),
        Column::new("allowed", Holds::Texts, "", "The words that can stand in it"),
        Column::required("required", Holds::Boolean, "True where it is never empty"),
    ],
};

/// The dictionary as a table of its own, CSV.
///
/// # Errors
/// None but want of memory; the writer's type says otherwise.
pub fn as_table() -> Result<Vec<u8>, csv::Error> {
    let mut bytes = Vec::new();
    let mut writer = Writer::new(&DICTIONARY, &mut bytes)?;
    for (table, column) in TABLES.iter().flat_map(|table| table.columns.iter().map(move |column| (table, column))) {
        let mut row = Row::of(&DICTIONARY);
        row.word("table", table.name);
        row.word("column", column.name);
        row.word("meaning", column.meaning);
        row.word("unit", column.unit);
        row.word("type", type_of(column.holds));
        if let Holds::One(words) = column.holds {
            row.word("allowed", &words.join(BETWEEN));
        }
        row.boolean("required", column.required);
        writer.row(&row)?;
    }
    writer.finish()?;
    Ok(bytes)
}

fn type_of(holds: Holds) -> &'static str {
    match holds {
        Holds::Text => "text",
        Holds::Texts => "texts, parted by ' | '",
        Holds::Uuid => "UUID",
        Holds::Integer => "integer",
        Holds::Decimal => "decimal",
        Holds::Boolean => "true or false",
        Holds::Date => "ISO 8601 date",
        Holds::Time => "ISO 8601 date and time with milliseconds and offset from UTC",
        Holds::One(_) => "one of the allowed words",
    }
}

/// The metadata of the tables as they lie in one folder, to be kept there as `csv-metadata.json`, where readers look for it
/// (W3C, "Metadata Vocabulary for Tabular Data", 2015, section 5; "Model for Tabular Data", section 5.3).
#[must_use]
pub fn as_csvw() -> Value {
    let tables: Vec<Value> = TABLES.iter().map(|table| csvw_table(table)).collect();
    json!({
        "@context": ["http://www.w3.org/ns/csvw", {"@language": "en"}],
        "dc:title": "Practices kept by tidecount",
        "dc:description": format!(
            "An empty cell was not measured or does not apply. Times are local, with their offset from UTC. Text that a spreadsheet would take for a formula has an apostrophe before it. Version {}",
            env!("CARGO_PKG_VERSION")
        ),
        "dialect": {"encoding": "utf-8", "delimiter": ",", "quoteChar": "\"", "doubleQuote": true, "header": true, "lineTerminators": ["\r\n"]},
        "tables": tables,
    })
}

fn csvw_table(table: &Table) -> Value {
    let columns: Vec<Value> = table.columns.iter().map(csvw_column).collect();
    let mut schema = Map::new();
    schema.insert("columns".into(), columns.into());
    // A primary key may hold no empty cell.
    if table.key.iter().all(|key| table.column(key).is_some_and(|column| column.required)) {
        schema.insert("primaryKey".into(), json!(table.key));
    }
    if table.name != "practices" && table.column("practice").is_some() {
        schema.insert(
            "foreignKeys".into(),
            json!([{"columnReference": "practice", "reference": {"resource": "practices.csv", "columnReference": "practice"}}]),
        );
    }
    json!({"url": table.file(), "dc:description": table.meaning, "tableSchema": schema})
}

fn csvw_column(column: &Column) -> Value {
    let mut value = Map::new();
    value.insert("name".into(), column.name.into());
    value.insert("titles".into(), column.name.into());
    value.insert("dc:description".into(), column.meaning.into());
    if !column.unit.is_empty() {
        // schema.org's unitText takes a code of any system; the dictionary's are UCUM.
        value.insert("schema:unitText".into(), column.unit.into());
    }
    let datatype = match column.holds {
        Holds::Text | Holds::Texts => json!("string"),
        Holds::Uuid => json!({"base": "string", "format": "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"}),
        Holds::Integer => json!("integer"),
        Holds::Decimal => json!("decimal"),
        Holds::Boolean => json!({"base": "boolean", "format": "true|false"}),
        Holds::Date => json!("date"),
        Holds::Time => json!("dateTimeStamp"),
        Holds::One(words) => json!({"base": "string", "format": words.join("|")}),
    };
    value.insert("datatype".into(), datatype);
    if column.holds == Holds::Texts {
        value.insert("separator".into(), BETWEEN.into());
    }
    if column.required {
        value.insert("required".into(), true.into());
    }
    Value::Object(value)
}
