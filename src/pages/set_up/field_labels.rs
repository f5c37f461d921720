//! What a field of the form is called, and what may stand in it.

use crate::web::pages::Texts;
use routine::{CatalogueEntry, limit_of};
use session::Arg;

/// "1 to 10. Left empty: 3."
pub fn number_hint(entry: Option<&CatalogueEntry>, field: &str, usual: Option<&str>, texts: Texts<'_>) -> String {
    let limit = limit_of(entry, field).map(|limit| {
        texts.with("page-hint-limits", vec![("from", Arg::Text(limit.min.to_string())), ("to", Arg::Text(limit.max.to_string()))])
    });
    let usual = match usual {
        Some(usual) => Some(texts.text("page-hint-default", "value", usual)),
        None => Some(texts.s("page-hint-optional")),
    };
    limit.into_iter().chain(usual).collect::<Vec<_>>().join(" ")
}

/// The field's name on the form.
pub fn label(field: &str, texts: Texts<'_>) -> String {
    texts.s(&format!("page-field-{field}"))
}
