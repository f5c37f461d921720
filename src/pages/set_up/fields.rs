//! What a form sent: names and values in their order.

/// The fields of a form, or of an address.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Fields(pub Vec<(String, String)>);

impl Fields {
    /// The first value of that name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&str> {
        self.0.iter().find(|(own, _)| own == name).map(|(_, value)| value.as_str())
    }

    /// The value of that name, trimmed; empty where it is missing.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.get(name).unwrap_or_default().trim()
    }

    /// Whether a box was checked.
    #[must_use]
    pub fn on(&self, name: &str) -> bool {
        self.get(name) == Some("on")
    }

    /// Names of the fields that begin so.
    pub fn beginning(&self, with: &str) -> impl Iterator<Item = &str> {
        self.0.iter().map(|(name, _)| name.as_str()).filter(move |name| name.starts_with(with))
    }
}
