//! Promise: docs/cautions.md says what the catalogue says about who must leave an exercise out, what to look out for, and where each
//! of these comes from.

use std::path::Path;

use routine::{catalogue, cautions, exclusions, origin};
use session::Line;
use speak::Words;

const HEAD: &str = "# Cautions and who should leave an exercise out

Written from the catalogue by `UPDATE_SCHEMAS=1 cargo test --test promises cautions_page`; do not edit it by hand. *Seen*: it was read in
the source, usually its abstract. *Seen at second hand*: a page that quotes another. *From memory*: to be verified. The client's own
clinician has the last word on each.
";

fn page() -> String {
    let words = Words::english().expect("the catalogue of words");
    let say = |key: String| words.text(&Line { key, args: Vec::new() }).unwrap_or_else(|why| panic!("{why}"));
    let mut page = HEAD.to_owned();
    page += "\n## Said once, before the first practice\n\n| exercise | words |\n| --- | --- |\n";
    for entry in catalogue().iter().filter(|entry| entry.needs_agreement) {
        page += &format!("| {} | {} |\n", entry.id, say(format!("ex-{}-before", entry.id)));
    }
    page += "\n## Said every time\n\n| exercise | words |\n| --- | --- |\n";
    for entry in catalogue().iter().filter(|entry| entry.has_care()) {
        page += &format!("| {} | {} |\n", entry.id, say(format!("ex-{}-care", entry.id)));
    }
    let exercises = |key: &str, of: fn(&routine::CatalogueEntry) -> &[String]| {
        let ids = catalogue().iter().filter(|entry| of(entry).iter().any(|one| one == key)).map(|entry| entry.id.as_str());
        ids.collect::<Vec<_>>().join(", ")
    };
    page += "\n## Who should leave an exercise out, unless their own clinician says otherwise\n\n";
    page += "| who | exercises | where it comes from |\n| --- | --- | --- |\n";
    for exclusion in exclusions() {
        let (who, origin) = (say(format!("notfor-{}", exclusion.key)), origin(exclusion.source.as_deref(), exclusion.status));
        page += &format!("| {who} | {} | {origin} |\n", exercises(&exclusion.key, |entry| &entry.not_for));
    }
    page += "\n## What to look out for\n\n| what | exercises | every time | where it comes from |\n| --- | --- | --- | --- |\n";
    for caution in cautions() {
        let (what, origin) = (say(format!("caution-{}", caution.key)), origin(caution.source.as_deref(), caution.status));
        let every_time = if caution.every_time { "yes" } else { "" };
        let ids = match caution.key.as_str() {
            "stand-safely" => "those that may be done standing, when they are".to_owned(),
            key => exercises(key, |entry| &entry.cautions),
        };
        page += &format!("| {what} | {ids} | {every_time} | {origin} |\n");
    }
    page
}

#[test]
fn the_page_is_the_catalogues() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/cautions.md");
    if std::env::var_os("UPDATE_SCHEMAS").is_some() {
        std::fs::write(&path, page()).expect("writes");
    }
    let stored = std::fs::read_to_string(&path).expect("docs/cautions.md");
    assert!(stored == page(), "docs/cautions.md is stale: run this test once with UPDATE_SCHEMAS=1");
}
