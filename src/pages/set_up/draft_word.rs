//! The clinician's word of a routine or a step, as a form holds it.

use toml_edit::{InlineTable, Item, Table, TableLike, Value};

use crate::set_up::field_labels::label;
use crate::set_up::fields::Fields;
use crate::set_up::toml_rows::{set, text_of, typed};
use crate::web::pages::{Field, Kind, Texts};

/// What a clinician's word tells.
const WORD: [&str; 2] = ["who", "why"];

/// Its fields. `prefix` is that of the step, or nothing for the practice as a whole.
pub fn word_fields(table: &dyn TableLike, prefix: &str, texts: Texts<'_>) -> [Field; 2] {
    let word = table.get("clinician_word").and_then(Item::as_table_like);
    WORD.map(|name| {
        let value = typed(word.and_then(|word| word.get(name)));
        let field = Field::new(format!("{prefix}clinician_word-{name}"), label(name, texts), Kind::Line, value);
        field.hint(texts.s(if prefix.is_empty() { "page-hint-word" } else { "page-hint-word-step" }))
    })
}

/// Takes over what was typed: who said it, and why. Both left empty: no word.
pub fn take_word(table: &mut Table, prefix: &str, form: &Fields) {
    let typed = WORD.map(|name| Some((name, text_of(form.get(&format!("{prefix}clinician_word-{name}"))?))));
    if typed.iter().all(Option::is_none) {
        return;
    }
    let stands = table.contains_key("clinician_word");
    if typed.iter().flatten().all(|(_, value)| value.is_none()) {
        // A word that says nothing was not typed here: the check names it.
        let word = table.get("clinician_word").and_then(Item::as_table_like);
        let says = word.is_some_and(|word| word.iter().any(|(_, said)| said.as_str() != Some("")));
        if says {
            table.remove("clinician_word");
        }
        return;
    }
    if !stands {
        table.insert("clinician_word", Item::Value(Value::InlineTable(InlineTable::new())));
    }
    let Some(word) = table.get_mut("clinician_word").and_then(Item::as_table_like_mut) else { return };
    for (name, value) in typed.into_iter().flatten() {
        set(word, name, value);
    }
}
