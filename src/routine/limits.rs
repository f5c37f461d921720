//! Within which limits a number must lie, and where each limit comes from.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::catalogue::CatalogueEntry;
use super::limit::Limit;

static GENERAL: LazyLock<BTreeMap<String, Limit>> = LazyLock::new(|| {
    // Embedded with the program; that it can be read is tested.
    toml::from_str(include_str!("catalogue/limits.toml")).unwrap_or_default()
});

/// The limit of a field: the exercise's own, else the general one. None: the field is no number.
#[must_use]
pub fn limit_of<'a>(entry: Option<&'a CatalogueEntry>, field: &str) -> Option<&'a Limit> {
    entry.and_then(|entry| entry.limits.get(field)).or_else(|| GENERAL.get(field))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_limit_can_be_read_and_is_in_order() {
        let read: Result<BTreeMap<String, Limit>, _> = toml::from_str(include_str!("catalogue/limits.toml"));
        let read = read.expect("limits.toml");
        assert!(read.len() > 15);
        for (field, limit) in read {
            assert!(limit.min < limit.max, "{field}");
            assert!(!limit.why.is_empty(), "{field}");
            assert!(!limit.allows(f64::NAN));
        }
    }
}
